/// Who works in the laboratory: a code, a role that says what they may do, and the skills that say
/// which stages they may start. Names are kept elsewhere, if at all.
#pragma once

#include <algorithm>
#include <span>
#include <vector>

#include "domain/base/codes.h"
#include "domain/base/id.h"
#include "domain/route/skill.h"

namespace domain {

enum class Role : std::uint8_t { Manager, Technician, Inspector, Viewer };
template <>
inline constexpr std::array<EnumCode<Role>, 4> enumCodes<Role>{{
    {Role::Manager, "manager"},
    {Role::Technician, "technician"},
    {Role::Inspector, "inspector"},
    {Role::Viewer, "viewer"},
}};

/// What may be allowed or not: one for each sort of command.
enum class Permission : std::uint8_t {
    LogOrders,
    AcceptOrders,
    RecordAnswers,
    WorkStages,
    AskQuestions,
    RedoStages,
    OrderRemakes,
    TakeReturns,
    IssueStatements,
    SendWorkOut,
    KeepLots,
    TakeResponsibility,
    KeepPeople,
    KeepWorkshop,
    PrintPapers,
    TraceLots,
    Look,
};
template <>
inline constexpr std::array<EnumCode<Permission>, 17> enumCodes<Permission>{{
    {Permission::LogOrders, "log-orders"},
    {Permission::AcceptOrders, "accept-orders"},
    {Permission::RecordAnswers, "record-answers"},
    {Permission::WorkStages, "work-stages"},
    {Permission::AskQuestions, "ask-questions"},
    {Permission::RedoStages, "redo-stages"},
    {Permission::OrderRemakes, "order-remakes"},
    {Permission::TakeReturns, "take-returns"},
    {Permission::IssueStatements, "issue-statements"},
    {Permission::SendWorkOut, "send-work-out"},
    {Permission::KeepLots, "keep-lots"},
    {Permission::TakeResponsibility, "take-responsibility"},
    {Permission::KeepPeople, "keep-people"},
    {Permission::KeepWorkshop, "keep-workshop"},
    {Permission::PrintPapers, "print-papers"},
    {Permission::TraceLots, "trace-lots"},
    {Permission::Look, "look"},
}};

/// Whether a role may do a sort of thing. Managers may do everything; viewers only look and print.
bool may(Role role, Permission permission) noexcept;
/// "manager, inspector": the roles that may, for refusals.
std::string rolesThatMay(Permission permission);

struct Person {
    Role role{};
    std::vector<Skill> skills{};
    bool left{};  ///< works here no more; the code is never given to another
    /// Chosen by themselves, so that they can sign in and prove it is they; one that a manager gave
    /// does not count before it has been replaced.
    bool hasOwnPassword{};

    bool has(Skill skill) const { return std::ranges::count(skills, skill) > 0; }
    friend bool operator==(const Person&, const Person&) = default;
};

}  // namespace domain
