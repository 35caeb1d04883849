#include "domain/prescription/prescription.h"

namespace domain {

ToothSet replacedTeeth(const Prescription& prescription) {
    ToothSet teeth;
    for (const Saddle& saddle : prescription.saddles)
        for (const Tooth tooth : saddle.teeth) teeth.add(tooth);
    return teeth;
}

ToothSet abutments(const Prescription& prescription) {
    ToothSet teeth;
    for (const Rest& rest : prescription.rests) teeth.add(rest.tooth);
    for (const Clasp& clasp : prescription.clasps) teeth.add(clasp.tooth);
    for (const GuidePlate& plate : prescription.guidePlates) teeth.add(plate.tooth);
    for (const MinorConnector& connector : prescription.minorConnectors) teeth.add(connector.tooth);
    return teeth;
}

Prescription withoutIdentity(Prescription prescription) {
    prescription.identity = {};
    return prescription;
}

}  // namespace domain
