#include "reports/sub_order.h"

#include "domain/drawing/arch_picture.h"
#include "reports/cautions.h"
#include "reports/dispatch.h"
#include "reports/words.h"

namespace reports {

using namespace domain;

Paper subOrder(const PaperHead& head, const SubOrder& order, const Prescription& prescription) {
    Paper paper{.head = head,
                .name = "Laboratory sub-order",
                .patientReference = order.patientCode,
                .blocks = {}};
    const Identity& identity = prescription.identity;
    auto& blocks = paper.blocks;
    blocks.emplace_back(Heading{capital(wordsOf(order.stage)) + ": " + caseText(prescription)});
    blocks.emplace_back(BarcodeBlock{order.number});
    blocks.emplace_back(
        Facts{{fact("To", order.site.name), fact("Address", order.site.address),
               fact("Registration", order.site.registration.empty() ? std::string{"not given"}
                                                                    : order.site.registration),
               fact("From", head.laboratory), fact("Address", head.address),
               fact("Prescriber", given(identity.prescriberName)),
               fact("Licence or registration", given(identity.prescriberRegistration)),
               fact("Issued", given(prescription.issued)), fact("Patient", order.patientCode),
               fact("Wanted back", given(order.wantedBack))}});
    blocks.emplace_back(PictureBlock{
        archPicture(prescription, {}, {.notation = notationOf(prescription), .legend = true})});
    for (const auto& more : {designBlocks(prescription), materialBlocks(prescription)})
        blocks.insert(blocks.end(), more.begin(), more.end());
    blocks.emplace_back(Paragraph{.text = "Send back with it: the lots and certificates of every "
                                          "material used, and what was found when it was checked. "
                                          "Nothing may be changed without our written word.",
                                  .quiet = false});
    blocks.emplace_back(disinfectionBlock({}));
    blocks.emplace_back(WriteIn{{"Name in capitals", "Signature", "Date"}});
    blocks.emplace_back(cautionFrame(prescription));
    return paper;
}

}  // namespace reports
