/// The statement that goes with a custom-made device, and what it must say before it is issued.
///
/// Source: Regulation (EU) 2017/745, Annex XIII, section 1, which asks for all of eight items; read
/// in a public copy, so compare with the official text before relying on it. Date, place and
/// signature are good practice and not among the eight.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "domain/base/id.h"
#include "domain/production/required_row.h"

namespace domain {

/// A name and an address, as the law asks for both.
struct Party {
    std::string name{};
    std::string address{};
    friend bool operator==(const Party&, const Party&) = default;
};

/// A place where the device, or part of it, was made; subcontracted casting or printing is one.
struct ManufacturingSite {
    Party party{};
    std::string work{};  ///< what was done there
    friend bool operator==(const ManufacturingSite&, const ManufacturingSite&) = default;
};

/// Who made the prescription.
struct StatedPrescriber {
    std::string name{};
    std::string qualification{};  ///< by which national law authorises, or the registration
    WhereApplicable<std::string> institution{};  ///< the health institution
    friend bool operator==(const StatedPrescriber&, const StatedPrescriber&) = default;
};

/// The product as the prescription asks for it, tied to the revision it was taken from.
struct StatedCharacteristics {
    std::vector<std::string> lines{};
    int revision{};        ///< of the prescription, counted from 1
    std::string digest{};  ///< SHA-256 of that revision: 64 lower-case hexadecimal digits
    friend bool operator==(const StatedCharacteristics&, const StatedCharacteristics&) = default;
};

/// A general safety and performance requirement that is not fully met.
struct ConformityException {
    std::string requirement{};  ///< which one of Annex I
    std::string grounds{};      ///< why not
    friend bool operator==(const ConformityException&, const ConformityException&) = default;
};

/// That the device conforms to Annex I, but for the exceptions.
struct ConformityDeclaration {
    std::vector<ConformityException> exceptions{};
    friend bool operator==(const ConformityDeclaration&, const ConformityDeclaration&) = default;
};

/// The eight items, numbered as the dashes of the section.
struct Statement {
    Party manufacturer{};                               ///< 1
    std::vector<ManufacturingSite> sites{};             ///< 1: all of them
    WhereApplicable<Party> representative{};            ///< 2: the authorised representative
    std::optional<OrderNumber> device{};                ///< 3
    std::string description{};                          ///< 3: of the device
    std::string patientReference{};                     ///< 4: a name, an acronym or a code
    bool exclusiveUse{};                                ///< 4: stated to be for that patient alone
    StatedPrescriber prescriber{};                      ///< 5
    StatedCharacteristics characteristics{};            ///< 6
    std::optional<ConformityDeclaration> conformity{};  ///< 7; nullopt: not declared
    /// 8: what it contains of medicinal substances, blood or plasma derivatives, tissues or cells;
    /// not applicable: it was answered that it contains none.
    WhereApplicable<std::string> substances{};
    friend bool operator==(const Statement&, const Statement&) = default;
};

/// Empty: it may be issued. What was typed is never repeated in a finding.
std::vector<Finding> lackingIn(const Statement& statement);

}  // namespace domain
