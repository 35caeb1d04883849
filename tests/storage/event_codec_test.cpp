#include "storage/event_codec.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "domain/rules/examine.h"
#include "tests/storage/event_samples.h"
#include "tests/storage/records.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace {

using namespace domain;
using storage::decodeEvent;
using storage::encodeEvent;
using support::everyRecord;
using support::minute;
using support::orderNumber;
using support::orderSamples;
using support::person;
using testing::HasSubstr;

const SealedText kSealed{"T000001", std::string(64, 'a')};

Revision revisionOf(const Prescription& prescription) {
    return {withoutIdentity(prescription),
            {"P00001", "D00001", kSealed},
            examine(prescription, support::examinationDay())};
}

Event eventOf(Happening what) {
    return {.order = orderNumber(1),
            .version = 3,
            .at = minute(5),
            .person = person("MK"),
            .key = "clé-7",
            .what = std::move(what)};
}

std::vector<Prescription> designs() {
    return {support::upperClassIIIMod1(), support::lowerClassI(),      support::upperClassIIMod1(),
            support::lowerClassIIMod1(),  support::upperClassIV(),     support::lowerClassIIIMod1(),
            support::interimUpper(),      support::smallPrescription()};
}

TEST(EventCodec, GivesBackEveryKindOfEvent) {
    for (const Event& event : orderSamples()) {
        const auto again = decodeEvent(encodeEvent(event));
        ASSERT_TRUE(again) << again.error().message;
        EXPECT_EQ(std::get<Event>(*again), event);
    }
}

TEST(EventCodec, IsTriedWithEveryKindOfEventAndOfRecord) {
    std::set<EventKind> kinds;
    for (const Event& event : orderSamples()) kinds.insert(kindOf(event));
    EXPECT_EQ(kinds.size(), enumCodes<EventKind>.size());
    std::set<RecordKind> records;
    for (const StageRecord& record : everyRecord()) records.insert(kindOf(record));
    EXPECT_EQ(records.size(), enumCodes<RecordKind>.size());
}

TEST(EventCodec, GivesBackEveryDesignWithItsFindings) {
    for (const Prescription& design : designs()) {
        const Event event = eventOf(Received{revisionOf(design)});
        const QByteArray bytes = encodeEvent(event);
        const auto again = decodeEvent(bytes);
        ASSERT_TRUE(again) << again.error().message;
        EXPECT_EQ(std::get<Event>(*again), event);
        EXPECT_EQ(encodeEvent(*again), bytes);
    }
}

// The layout in the headers of event_codec.h and tagged_record.h, written out by hand.
TEST(EventCodec, KeepsItsLayout) {
    const Event event{.order = orderNumber(1),
                      .version = 258,
                      .at = Instant::ofMicroseconds(1),
                      .person = person("MK"),
                      .key = "k",
                      .what = StageDone{Stage::WaxUp}};
    const auto piece = [](const QByteArray& bytes) {
        return QByteArray::number(static_cast<int>(bytes.size()), 16).rightJustified(8, '0') +
               bytes.toHex();
    };
    const auto whole = [](char high, char low) {
        QByteArray bytes(8, '\0');
        bytes[6] = high;
        bytes[7] = low;
        return bytes;
    };
    const QByteArray done = QByteArray::fromHex(piece("stage") + piece("wax-up"));
    const QByteArray what = QByteArray::fromHex(piece("stage-done") + piece(done));
    EXPECT_EQ(encodeEvent(event).toHex(),
              piece(whole(0, 4)) + piece("at") + piece(whole(0, 1)) + piece("key") + piece("k") +
                  piece("person") + piece("MK") + piece("subject") +
                  piece(QByteArray::fromStdString(orderNumber(1).text())) + piece("version") +
                  piece(whole(1, 2)) + piece("what") + piece(what));
}

/// Reading altered bytes must refuse, or give an event that is written as exactly these bytes.
void expectStrict(const QByteArray& altered, const Event& original) {
    const auto read = decodeEvent(altered);
    if (!read) {
        EXPECT_EQ(read.error().code, ErrorCode::Unusable);
        return;
    }
    EXPECT_EQ(encodeEvent(*read), altered);
    EXPECT_NE(*read, storage::LedgerEvent{original});
}

TEST(EventCodec, ReadsNoAlteredByteAsTheSameEvent) {
    for (const Event& event : orderSamples()) {
        const QByteArray bytes = encodeEvent(event);
        for (qsizetype at = 0; at < bytes.size(); ++at)
            for (const char mask : {'\x01', '\x20', '\x80'}) {
                QByteArray altered = bytes;
                altered[at] = static_cast<char>(altered[at] ^ mask);
                expectStrict(altered, event);
            }
    }
}

TEST(EventCodec, RefusesBytesThatEndEarlyOrGoOn) {
    for (const Event& event : orderSamples()) {
        const QByteArray bytes = encodeEvent(event);
        for (qsizetype length = 0; length < bytes.size(); ++length)
            EXPECT_FALSE(decodeEvent(bytes.first(length))) << length;
        EXPECT_FALSE(decodeEvent(bytes + '\0'));
        EXPECT_FALSE(decodeEvent(bytes + bytes));
    }
}

TEST(EventCodec, SaysWhatIsWrongWithTheBytes) {
    const auto refusal = [](QByteArray bytes, const char* before, const char* after) {
        const auto read = decodeEvent(bytes.replace(before, after));
        return read ? "was read" : read.error().message;
    };
    const QByteArray bytes = encodeEvent(eventOf(StageDone{Stage::WaxUp}));
    EXPECT_THAT(refusal(bytes, "wax-up", "wax-op"), HasSubstr("\"wax-op\" is none of receipt"));
    EXPECT_THAT(refusal(bytes, "MK", "7K"), HasSubstr("\"7K\" is not the code of a person"));
    EXPECT_THAT(refusal(bytes, "cl\xc3\xa9", "cl\xc3\x28"), HasSubstr("not UTF-8"));
    EXPECT_THAT(refusal(bytes, "260", "270"), HasSubstr("is not an order number"));
    QByteArray newer = bytes;
    newer[11] = 9;
    EXPECT_THAT(decodeEvent(newer).error().message, HasSubstr("format 9"));
}

}  // namespace
