/// The page over the whole window while nobody is signed in: a badge and its PIN, a name and a
/// password, a password given by somebody else, or the first person of a new laboratory.
#pragma once

#include <QWidget>

#include "apps/desktop/action_button.h"
#include "apps/desktop/desk.h"
#include "apps/desktop/line_field.h"
#include "apps/desktop/notice.h"

class QComboBox;
class QLabel;
class QVBoxLayout;

namespace desktop {

class SignInPage : public QWidget {
    Q_OBJECT

public:
    enum class Way : std::uint8_t { Badge, Name, Replace, SetUp };

    explicit SignInPage(Desk& desk);

    /// Empties what was typed, reads the stations anew, and takes the focus. `why`: the sentence
    /// to begin with, as when somebody was signed out; may be empty.
    void enter(const QString& why);
    /// Asks for the password of this person first.
    void expect(const domain::PersonCode& person);

    Way way() const noexcept { return way_; }

signals:
    /// Desk::who is set.
    void signedIn();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    LineField* makeField(const QString& label, bool secret);
    void makeForm();
    void goOnFrom(const LineField* field);
    void show(Way way);
    void offerStations();
    void onward();
    void back();
    void scanned();
    void byName();
    void replace();
    void setUp();
    /// What came of an attempt; the secrets are wiped whatever it was.
    void took(const domain::Result<actions::Session>& session);
    void forget();
    std::optional<domain::PersonCode> person();
    std::optional<actions::Secret> chosen();
    std::string station() const;

    Desk& desk_;
    Way way_{Way::Badge};
    std::string badge_;  ///< scanned, while its PIN is awaited
    QVBoxLayout* form_;
    std::vector<LineField*> fields_;  ///< in the order they are asked
    QLabel* head_;
    QLabel* house_;
    QComboBox* station_;
    LineField* scan_;
    LineField* name_;
    LineField* password_;
    LineField* fresh_;
    LineField* again_;
    Notice* notice_;
    ActionButton* onward_;
    ActionButton* other_;
    ActionButton* replace_;
};

}  // namespace desktop
