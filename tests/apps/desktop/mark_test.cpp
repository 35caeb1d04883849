#include "apps/desktop/models/mark.h"

#include <gtest/gtest.h>

#include <QImage>
#include <set>

#include "apps/desktop/marks.h"

namespace {

using domain::Stage;
using domain::StageStatus;
using models::Mark;
using models::markOf;

TEST(Marks, AStageInHandAtAMachineWaitsAndOneAtThePracticeIsAway) {
    EXPECT_EQ(markOf(Stage::WaxUp, StageStatus::InHand).mark, Mark::InHand);
    EXPECT_EQ(markOf(Stage::Casting, StageStatus::InHand).mark, Mark::Waiting);
    EXPECT_EQ(markOf(Stage::ToothTryIn, StageStatus::InHand).mark, Mark::Away);
    EXPECT_EQ(markOf(Stage::Casting, StageStatus::Done).mark, Mark::Done);
}

TEST(Marks, EveryMarkHasAWord) {
    for (const auto& code : domain::enumCodes<Mark>) EXPECT_FALSE(code.word.empty());
    for (const auto& severity : domain::enumCodes<domain::Severity>)
        EXPECT_FALSE(models::markOf(severity.value).word.isEmpty());
}

TEST(Marks, DifferInShapeEvenWithoutColour) {
    const desktop::Look look{domain::Light::Light};
    std::set<QByteArray> shapes;
    for (const auto& code : domain::enumCodes<Mark>) {
        QImage picture{32, 32, QImage::Format_Grayscale8};
        picture.fill(Qt::white);
        QPainter painter{&picture};
        desktop::paintMark(painter, QRectF{0, 0, 32, 32}, code.value, look);
        painter.end();
        // One bit a pixel: what a black and white printer or a colour-blind reader has.
        const QImage bits = picture.convertToFormat(QImage::Format_Mono, Qt::ThresholdDither);
        shapes.insert(QByteArray{reinterpret_cast<const char*>(bits.constBits()),
                                 static_cast<qsizetype>(bits.sizeInBytes())});
    }
    EXPECT_EQ(shapes.size(), domain::enumCodes<Mark>.size());
}

}  // namespace
