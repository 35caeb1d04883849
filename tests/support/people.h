/// People for tests of the actions: entered, given a password and signed in, in one call.
///
/// Open the laboratory with storage::HashCost::Light, or every call takes half a second.
#pragma once

#include <gtest/gtest.h>

#include <string_view>
#include <vector>

#include "apps/actions/people.h"

namespace support {

/// Who enters the others; made when a laboratory has nobody yet.
inline constexpr std::string_view kChief = "CHIEF";
inline constexpr const char* kChiefsPassword = "the chief of all benches";
inline constexpr const char* kPassword = "a lamp over every bench";

inline domain::PersonCode codeOfPerson(std::string_view code) {
    return *domain::PersonCode::parse(code);
}

/// Signs in, the password at hand where it is asked once more; fails the test when refused.
inline actions::Who signedInAs(const actions::Laboratory& laboratory, std::string_view code,
                               const char* password, const std::string& station = {}) {
    const auto session =
        actions::signIn(laboratory, codeOfPerson(code), actions::Secret{password}, station);
    EXPECT_TRUE(session) << (session ? "" : session.error().message);
    return actions::proving({.person = codeOfPerson(code),
                             .token = session ? session->token : std::string{},
                             .station = station},
                            actions::Secret{password});
}

/// The manager who enters the others.
inline actions::Who chief(const actions::Laboratory& laboratory) {
    const auto people = actions::people(laboratory);
    EXPECT_TRUE(people) << (people ? "" : people.error().message);
    if (people && people->empty()) {
        const auto made =
            actions::setUp(laboratory, codeOfPerson(kChief), {}, actions::Secret{kChiefsPassword});
        EXPECT_TRUE(made) << (made ? "" : made.error().message);
    }
    return signedInAs(laboratory, kChief, kChiefsPassword);
}

/// A person of this role and these skills, who works with kPassword from now on. A session rests
/// no longer than the laboratory's limit: after a jump of the clock call this again.
inline actions::Who signedIn(const actions::Laboratory& laboratory, std::string_view code,
                             domain::Role role, const std::vector<domain::Skill>& skills = {}) {
    const auto person = codeOfPerson(code);
    const actions::Who boss = chief(laboratory);
    const auto people = actions::people(laboratory);
    for (const actions::PersonLine& line : *people)
        if (line.code == person && line.person == domain::Person{role, skills, false, true})
            return signedInAs(laboratory, code, kPassword);
    const auto entered = actions::enterPerson(laboratory, person, role, skills, boss);
    EXPECT_TRUE(entered) << (entered ? "" : entered.error().message);
    const auto once = actions::resetPassword(laboratory, person, boss);
    EXPECT_TRUE(once) << (once ? "" : once.error().message);
    if (once) {
        const auto own =
            actions::givePassword(laboratory, person, *once, actions::Secret{kPassword});
        EXPECT_TRUE(own) << (own ? "" : own.error().message);
    }
    return signedInAs(laboratory, code, kPassword);
}

}  // namespace support
