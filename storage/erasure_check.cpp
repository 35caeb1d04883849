#include "storage/counted_code.h"
#include "storage/ids.h"
#include "storage/kept_check.h"
#include "storage/ledger.h"
#include "storage/statement.h"

namespace storage {
namespace {

using domain::Event;

class ErasureCheck : public KeptCheck {
public:
    explicit ErasureCheck(Connection& connection) : connection_{connection} {}

    void entry(const LedgerEvent& event) override {
        for (const domain::SealedText& sealed : sealedTextsIn(event)) add(takenUp_, sealed);
        const auto* own = std::get_if<Event>(&event);
        if (own == nullptr || !std::holds_alternative<domain::Purged>(own->what)) return;
        const auto events = Ledger{connection_}.eventsOf(own->order);
        if (!events) throw SqlFailure{events.error().message};
        for (const Event& each : *events)
            for (const domain::SealedText& sealed : sealedTextsIn(each)) add(purged_, sealed);
    }
    void compare() override {
        Statement rows{connection_, "sealed_text_states"};
        rows.run();
        while (rows.next()) {
            const std::int64_t id = rows.whole("sealed_text_id");
            const std::string text = "sealed text " + countedCode(kSealedTextCode, id);
            const bool isErased = rows.whole("erased") != 0;
            if (!takenUp_.contains(id))
                found(text + " belongs to no event");
            else if (!isErased && purged_.contains(id))
                found(text + " is there, and its order was purged");
        }
    }

private:
    static void add(Ids& ids, const domain::SealedText& sealed) {
        if (const auto id = countOf(kSealedTextCode, sealed.code)) ids.add(*id);
    }

    Connection& connection_;
    Ids takenUp_;
    Ids purged_;
};

}  // namespace

std::unique_ptr<KeptCheck> erasureCheck(Connection& connection) {
    return std::make_unique<ErasureCheck>(connection);
}

}  // namespace storage
