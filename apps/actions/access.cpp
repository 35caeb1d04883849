#include "apps/actions/access.h"

#include "apps/actions/unit_of_work.h"
#include "storage/access_log.h"
#include "storage/digest.h"
#include "storage/files/plain_file.h"

namespace actions {
namespace {

using domain::Done;
using domain::OrderNumber;
using domain::Result;

constexpr std::size_t kMostBytes = std::size_t{256} << 20U;

template <typename Body>
Result<Done> note(const Laboratory& laboratory, const Who& who, const Body& body) {
    const auto noted = perform(laboratory, {.person = who.person, .station = who.station},
                               {.command = commandOf({"note"})}, body);
    if (!noted) return noted.error();
    return Done{};
}

/// Those whose names the person has not looked at today.
Result<std::vector<OrderNumber>> notSeenToday(const Laboratory& laboratory, const Who& who,
                                              const std::vector<OrderNumber>& numbers) {
    const storage::AccessLog log{laboratory.records()};
    std::vector<OrderNumber> fresh;
    for (const OrderNumber& number : numbers) {
        const auto last = log.newest(number.text(), who.person, domain::AccessKind::IdentityViewed);
        if (!last) return last.error();
        if (!*last || (**last).day() != laboratory.today()) fresh.push_back(number);
    }
    return fresh;
}

}  // namespace

Result<Done> noteViewed(const Laboratory& laboratory, const Who& who,
                        const std::vector<OrderNumber>& numbers) {
    auto fresh = notSeenToday(laboratory, who, numbers);
    if (!fresh) return fresh.error();
    if (fresh->empty()) return Done{};
    return note(laboratory, who, [&](UnitOfWork& unit) -> Result<Done> {
        // Another program of theirs may have noted it meanwhile.
        fresh = notSeenToday(laboratory, who, *fresh);
        if (!fresh) return fresh.error();
        for (const OrderNumber& number : *fresh)
            if (auto noted = unit.note(domain::IdentityViewed{number.text()}); !noted) return noted;
        return Done{};
    });
}

Result<Done> notePrinted(const Laboratory& laboratory, const Who& who, const Printed& printed) {
    const auto bytes = storage::readPlainFile(printed.file, {"a paper", kMostBytes});
    if (!bytes) return bytes.error();
    const std::string digest =
        storage::sha256({QByteArrayView{bytes->data(), static_cast<qsizetype>(bytes->size())}});
    return note(laboratory, who, [&](UnitOfWork& unit) {
        return unit.note(
            domain::PaperPrinted{printed.about, printed.revision, printed.paper, digest});
    });
}

}  // namespace actions
