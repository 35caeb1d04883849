#include "domain/production/stage_record.h"
#include "domain/teeth/numbering.h"

namespace domain {
namespace {

struct Telling {
    Notation notation;

    std::string operator()(const Ticked& record) const { return "ticked: " + record.item; }
    std::string operator()(const UndercutMeasured& record) const {
        return "undercut of " + nameOf(record.tooth, notation) + ": " + text(record.depth);
    }
    std::string operator()(const TripodMarked&) const { return "tripod marked"; }
    std::string operator()(const LotUsed& record) const {
        return "lot " + record.lot.text() + " (" + wordsOf(record.kind) +
               "): " + amountText(record.kind, record.amount);
    }
    std::string operator()(const NewMetal& record) const {
        return "new metal: " + text(record.share);
    }
    std::string operator()(const CastWeighed& record) const {
        return "casting: " + text(record.mass);
    }
    std::string operator()(const TeethSet& record) const {
        return "teeth: mould " + record.mould + ", " + record.guide + ' ' + record.tab;
    }
    std::string operator()(const CureLogged& record) const {
        return "cure " + record.cycle + (record.kept ? ": kept" : ": NOT kept") + ", log " +
               record.sha256.substr(0, 12);
    }
    std::string operator()(const Disinfected& record) const {
        return "disinfected: " + record.disinfection.agent + ", " +
               text(record.disinfection.contact);
    }
    std::string operator()(const EquipmentUsed& record) const {
        return wordsOf(record.kind) + ' ' + record.equipment.text() +
               (record.responsibility ? ", overdue, responsibility taken" : "");
    }
    std::string operator()(const BenchValue& record) const {
        return record.what + ": " + record.value;
    }
    std::string operator()(const StatementIssued& record) const {
        return "statement issued, " + record.statement.digest.substr(0, 12);
    }
};

}  // namespace

std::string tellRecord(const StageRecord& record, Notation notation) {
    return std::visit(Telling{notation}, record);
}

}  // namespace domain
