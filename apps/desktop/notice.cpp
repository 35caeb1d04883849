#include "apps/desktop/notice.h"

#include <QHBoxLayout>
#include <QLabel>

#include "apps/desktop/marks.h"
#include "apps/desktop/models/words.h"

namespace desktop {
namespace {

constexpr int kMarkSize = 20;
constexpr int kMargin = 2 * kStep;

}  // namespace

Notice::Notice(const Look& look, QWidget* parent)
    : QWidget{parent}, look_{look}, sentence_{new QLabel} {
    sentence_->setWordWrap(true);
    sentence_->setTextFormat(Qt::PlainText);
    sentence_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* row = new QHBoxLayout{this};
    row->setContentsMargins(kMarkSize + 2 * kMargin, kMargin, kMargin, kMargin);
    row->addWidget(sentence_);
    beQuiet();
}

void Notice::say(models::Mark mark, const QString& sentence) {
    mark_ = mark;
    sentence_->setText(sentence);
    setAccessibleName(sentence);
    setVisible(!sentence.isEmpty());
    update();
}

void Notice::refuse(const domain::Error& error) {
    say(models::Mark::Refused, models::text(error.message));
}

void Notice::beQuiet() { say(models::Mark::ToDo, {}); }

QString Notice::sentence() const { return sentence_->text(); }

void Notice::paintEvent(QPaintEvent*) {
    QPainter painter{this};
    painter.fillRect(0, 0, 3, height(), look_.of(colourOf(mark_)));
    paintMark(painter, QRectF(2 * kMargin - 4, kMargin, kMarkSize, kMarkSize), mark_, look_);
}

}  // namespace desktop
