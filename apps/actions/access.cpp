#include "apps/actions/access.h"

#include "apps/actions/unit_of_work.h"
#include "storage/access_log.h"
#include "storage/digest.h"
#include "storage/files/plain_file.h"

namespace actions {
namespace {

using domain::Done;
using domain::Result;

constexpr std::size_t kMostBytes = std::size_t{256} << 20U;

Result<Done> note(const Laboratory& laboratory, const Who& who, domain::AccessHappening what) {
    const auto noted = perform(laboratory, {.person = who.person, .station = who.station},
                               {.command = commandOf({"note"})},
                               [&](UnitOfWork& unit) { return unit.note(std::move(what)); });
    if (!noted) return noted.error();
    return Done{};
}

}  // namespace

Result<Done> noteViewed(const Laboratory& laboratory, const Who& who,
                        const domain::OrderNumber& number) {
    const auto last = storage::AccessLog{laboratory.records()}.newest(
        number.text(), who.person, domain::AccessKind::IdentityViewed);
    if (!last) return last.error();
    if (*last && (**last).day() == laboratory.today()) return Done{};
    return note(laboratory, who, domain::IdentityViewed{number.text()});
}

Result<Done> notePrinted(const Laboratory& laboratory, const Who& who, const Printed& printed) {
    const auto bytes = storage::readPlainFile(printed.file, {"a paper", kMostBytes});
    if (!bytes) return bytes.error();
    const std::string digest =
        storage::sha256({QByteArrayView{bytes->data(), static_cast<qsizetype>(bytes->size())}});
    return note(laboratory, who,
                domain::PaperPrinted{printed.about, printed.revision, printed.paper, digest});
}

}  // namespace actions
