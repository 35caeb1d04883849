/// What the access log stores of every part of an entry: frozen, as event_fields.h is and by the
/// same rules.
#pragma once

#include "domain/prescription/fields.h"
#include "domain/workshop/access_entry.h"

namespace storage {

void fields(auto& coder, domain::Is<domain::SignedIn> auto& part) {
    coder.field("session", part.session);
}
void fields(auto& coder, domain::Is<domain::SignedOut> auto& part) {
    coder.field("session", part.session);
    coder.field("why", part.why);
}
void fields(auto& coder, domain::Is<domain::SessionFound> auto& part) {
    coder.field("session", part.session);
    coder.field("opened", part.opened);
    coder.field("ended", part.ended);
}
void fields(auto& coder, domain::Is<domain::AttemptsCounted> auto& part) {
    coder.field("failures", part.failures);
    coder.field("locked-until", part.lockedUntil);
}
void fields(auto& coder, domain::Is<domain::AccessDenied> auto& part) {
    coder.field("command", part.command);
    coder.field("why", part.why);
}
void fields(auto& coder, domain::Is<domain::IdentityViewed> auto& part) {
    coder.field("order", part.order);
}
void fields(auto& coder, domain::Is<domain::PaperPrinted> auto& part) {
    coder.field("about", part.about);
    coder.field("revision", part.revision);
    coder.field("paper", part.paper);
    coder.field("digest", part.digest);
    coder.added("name", part.name);
}
void fields(auto& coder, domain::Is<domain::Exported> auto& part) {
    coder.field("what", part.what);
    coder.field("digest", part.digest);
}

}  // namespace storage
