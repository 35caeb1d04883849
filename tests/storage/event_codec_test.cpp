#include "storage/event_codec.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "domain/rules/examine.h"
#include "tests/storage/records.h"
#include "tests/support/designs.h"
#include "tests/support/floor.h"

namespace {

using namespace domain;
using storage::decodeEvent;
using storage::encodeEvent;
using support::minute;
using support::orderNumber;
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

Event atStation(Event event) {
    event.station = "WAX-2";
    return event;
}

/// One record of every kind.
std::vector<StageRecord> everyRecord() {
    const ThingCode code = support::thing("AL-204");
    return {Ticked{"seats fully"},
            UndercutMeasured{14_fdi, 250_um},
            TripodMarked{},
            LotUsed{code, LotKind::Alloy, 23'400},
            NewMetal{500'000_ppm},
            CastWeighed{18'400_mg},
            TeethSet{"M-12", "A-D scale", "A3"},
            CureLogged{"long-74", std::string(64, 'b'), true},
            Disinfected{{"sodium hypochlorite 0.5 %", 10_min}},
            EquipmentUsed{code, EquipmentKind::Caster, kSealed},
            BenchValue{"alloy charge", "42.3 g"},
            StatementIssued{kSealed}};
}

/// One of every kind, with and without what may be absent.
std::vector<Event> samples() {
    const Revision small = revisionOf(support::smallPrescription());
    return {
        eventOf(Received{small}),
        eventOf(Accepted{Route::CastFramework, {}, {}}),
        eventOf(Accepted{Route::Reline, {"clasp.rest", "shade.given"}, kSealed}),
        eventOf(StageStarted{Stage::WaxUp}),
        eventOf(StageDone{Stage::Delivery}),
        eventOf(Flagged{FlagReason::Other, {}}),
        eventOf(Flagged{FlagReason::CastDamaged, kSealed}),
        eventOf(Answered{kSealed, {}}),
        eventOf(Answered{{}, small}),
        eventOf(Routed{shippedPlan(Route::Repair, Arch::Lower)}),
        eventOf(Recorded{Stage::Casting, everyRecord()}),
        eventOf(Returned{Stage::ToothTryIn, ReturnVerdict::GoOn, {}, {}, {"agent", 10_min}}),
        eventOf(Returned{
            Stage::ToothTryIn, ReturnVerdict::GoBack, Stage::ToothSetUp, kSealed, {"a", 1_min}}),
        eventOf(Redone{RedoReason::Other, Stage::WaxUp, Stage::Survey, kSealed}),
        eventOf(RemakeOrdered{orderNumber(2), RemakeReason::Lost, {}, {}}),
        eventOf(RemakeOrdered{orderNumber(2), RemakeReason::Lost, Stage::Casting, kSealed}),
        eventOf(RemakeBegun{orderNumber(2)}),
        eventOf(CaseJoined{orderNumber(2)}),
        eventOf(WorkSent{Stage::Casting, support::thing("CAST-SHOP")}),
        eventOf(WorkBack{Stage::Casting, false, kSealed}),
        eventOf(Withdrawn{kSealed}),
        eventOf(Purged{}),
        atStation(eventOf(StageStarted{Stage::WaxUp}))};
}

std::vector<Prescription> designs() {
    return {support::upperClassIIIMod1(), support::lowerClassI(),      support::upperClassIIMod1(),
            support::lowerClassIIMod1(),  support::upperClassIV(),     support::lowerClassIIIMod1(),
            support::interimUpper(),      support::smallPrescription()};
}

TEST(EventCodec, GivesBackEveryKindOfEvent) {
    for (const Event& event : samples()) {
        const auto again = decodeEvent(encodeEvent(event));
        ASSERT_TRUE(again) << again.error().message;
        EXPECT_EQ(std::get<Event>(*again), event);
    }
}

TEST(EventCodec, IsTriedWithEveryKindOfEventAndOfRecord) {
    std::set<EventKind> kinds;
    for (const Event& event : samples()) kinds.insert(kindOf(event));
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

// The layout in the header of event_codec.h, written out by hand: a change of it is a new format.
TEST(EventCodec, KeepsItsLayout) {
    const Event event{.order = orderNumber(1),
                      .version = 258,
                      .at = Instant::ofMicroseconds(1),
                      .person = person("MK"),
                      .key = "k",
                      .what = StageDone{Stage::WaxUp}};
    EXPECT_EQ(encodeEvent(event).toHex().toStdString(),
              "00000008"
              "0000000000000001"  // format 1
              "0000000a"
              "73746167652d646f6e65"  // stage-done
              "00000008" +
                  QByteArray::fromStdString(orderNumber(1).text()).toHex().toStdString() +
                  "00000008"
                  "0000000000000102"  // version 258
                  "00000008"
                  "0000000000000001"  // 1 us
                  "00000002"
                  "4d4b"  // MK
                  "00000001"
                  "6b"  // k
                  "00000006"
                  "7761782d7570");  // wax-up
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
    for (const Event& event : samples()) {
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
    for (const Event& event : samples()) {
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

TEST(EventCodec, RefusesAPrescriptionThatIsNotWrittenCanonically) {
    QByteArray bytes = encodeEvent(eventOf(Received{revisionOf(support::smallPrescription())}));
    // The same field with one blank less before it and one more after: the same length, the same
    // meaning, another spelling.
    ASSERT_TRUE(bytes.contains("\n  \"arch\": "));
    bytes.replace("\n  \"arch\": ", "\n \"arch\":  ");
    const auto read = decodeEvent(bytes);
    ASSERT_FALSE(read);
    EXPECT_THAT(read.error().message, HasSubstr("canonical"));
}

}  // namespace
