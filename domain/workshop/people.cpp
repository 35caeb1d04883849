#include "domain/workshop/person.h"

namespace domain {
namespace {

/// Who may do a thing besides the manager.
struct PermissionRow {
    Permission permission{};
    bool technician{};
    bool inspector{};
    bool viewer{};
};

constexpr std::array<PermissionRow, enumCodes<Permission>.size()> kPermissions{{
    {Permission::LogOrders, false, false, false},
    {Permission::AcceptOrders, false, false, false},
    {Permission::RecordAnswers, false, false, false},
    {Permission::WorkStages, true, true, false},
    {Permission::AskQuestions, true, true, false},
    {Permission::RedoStages, true, true, false},
    {Permission::OrderRemakes, false, false, false},
    {Permission::TakeReturns, true, true, false},
    {Permission::IssueStatements, false, true, false},
    {Permission::SendWorkOut, false, false, false},
    {Permission::KeepLots, true, true, false},
    {Permission::TakeResponsibility, false, false, false},
    {Permission::KeepPeople, false, false, false},
    {Permission::KeepWorkshop, false, false, false},
    {Permission::PrintPapers, true, true, true},
    {Permission::TraceLots, true, true, true},
    {Permission::Look, true, true, true},
}};

}  // namespace

bool may(Role role, Permission permission) noexcept {
    const PermissionRow& row = kPermissions[static_cast<std::size_t>(permission)];
    switch (role) {
        case Role::Manager:
            return true;
        case Role::Technician:
            return row.technician;
        case Role::Inspector:
            return row.inspector;
        case Role::Viewer:
            return row.viewer;
    }
    return false;
}

std::string rolesThatMay(Permission permission) {
    std::string roles;
    for (const auto& code : enumCodes<Role>)
        if (may(code.value, permission)) {
            if (!roles.empty()) roles += ", ";
            roles += code.word;
        }
    return roles;
}

}  // namespace domain
