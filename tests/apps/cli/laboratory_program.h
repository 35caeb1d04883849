/// The program in a laboratory with people, lots and equipment, and files to log in it.
#pragma once

#include <QDate>
#include <QFile>
#include <QTemporaryDir>

#include "apps/actions/system_clock.h"
#include "tests/apps/cli/program.h"
#include "tests/support/people.h"
#include "tests/support/working_laboratory.h"

namespace cli_test {

inline QString prescription(const char* name) {
    return QString{FRAMEWRIGHT_DEMO "/%1.json"}.arg(name);
}

class LaboratoryProgram : public testing::Test {
protected:
    LaboratoryProgram() : floor_{*laboratory_} {}

    QString labFolder() const { return folder_.filePath("lab"); }
    /// As the manager, who is signed in, also with verbs that ask for nobody.
    Ran lab(QStringList words) {
        return run(words << "--lab" << labFolder(), {},
                   QStringList{"FRAMEWRIGHT_AS=MK"} << session(support::kManager));
    }
    /// As one of the people, who is signed in and types their password where it is asked for once
    /// more; the answer is for people.
    Ran told(std::string_view person, QStringList words) {
        const QString code = QString::fromUtf8(person.data(), static_cast<int>(person.size()));
        return run(words << "--as" << code << "--lab" << labFolder(),
                   QByteArray{support::kPassword} + '\n', {session(person)});
    }
    QString session(std::string_view person) {
        return "FRAMEWRIGHT_SESSION=" + QString::fromStdString(floor_.as(person).token);
    }
    /// Likewise; the answer is JSON.
    Ran as(std::string_view person, QStringList words) { return told(person, words << "--json"); }
    Ran change(QStringList words) { return as(support::kManager, std::move(words)); }

    /// The demo's prescriptions with dates that lie around today, whenever the test runs.
    QString today(const char* name, const QByteArray& from = {}, const QByteArray& to = {}) {
        QFile source{prescription(name)};
        EXPECT_TRUE(source.open(QIODevice::ReadOnly));
        QByteArray text = source.readAll();
        text.replace("2026-11-20", QDate::currentDate().addDays(-3).toString(Qt::ISODate).toUtf8());
        text.replace("2026-11-23", QDate::currentDate().addDays(-3).toString(Qt::ISODate).toUtf8());
        text.replace("2026-12-18", QDate::currentDate().addDays(21).toString(Qt::ISODate).toUtf8());
        if (!from.isEmpty()) {
            EXPECT_TRUE(text.contains(from)) << from.constData();
            text.replace(from, to);
        }
        const QString path = folder_.filePath(QString{"%1-%2.json"}.arg(name).arg(++files_));
        QFile file{path};
        EXPECT_TRUE(file.open(QIODevice::WriteOnly) && file.write(text) == text.size());
        return path;
    }

    std::string logged(const QString& file) {
        const Ran ran = change({"log", file});
        EXPECT_EQ(ran.exit, 0) << ran.err;
        return ran.exit == 0 ? ran.json()["order"].get<std::string>() : std::string{};
    }
    std::string accepted(const QString& file) {
        const std::string order = logged(file);
        const Ran ran = change(on("accept", order, {"--reason", "agreed by telephone"}));
        EXPECT_EQ(ran.exit, 0) << ran.err;
        return order;
    }
    static QStringList on(const char* verb, const std::string& order,
                          const QStringList& more = {}) {
        return QStringList{verb, QString::fromStdString(order)} << more;
    }
    static domain::OrderNumber number(const std::string& order) {
        return *domain::OrderNumber::parse(order);
    }

    QTemporaryDir folder_;
    int files_{0};

private:
    actions::SystemClock clock_;
    domain::Result<actions::Laboratory> laboratory_{
        actions::Laboratory::open(labFolder().toStdString(), clock_, storage::HashCost::Light)};

protected:
    support::Floor floor_;
};

}  // namespace cli_test
