#include "apps/actions/access.h"

#include "apps/actions/unit_of_work.h"
#include "storage/access_log.h"
#include "storage/digest.h"

namespace actions {
namespace {

using domain::Done;
using domain::OrderNumber;
using domain::Result;

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

Result<Done> notePrinted(const Laboratory& laboratory, const Who& who, const Printed& printed,
                         const std::optional<std::string>& name, std::string_view pdf) {
    const std::string digest =
        storage::sha256({QByteArrayView{pdf.data(), static_cast<qsizetype>(pdf.size())}});
    return note(laboratory, who, [&](UnitOfWork& unit) {
        return unit.note(
            domain::PaperPrinted{printed.about, printed.revision, printed.paper, digest, name});
    });
}

Result<Done> noteExported(const Laboratory& laboratory, const Who& who, const std::string& what,
                          const std::string& digest) {
    return note(laboratory, who,
                [&](UnitOfWork& unit) { return unit.note(domain::Exported{what, digest}); });
}

}  // namespace actions
