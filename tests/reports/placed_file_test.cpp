// Nothing that lies on the path of a file to be written is lost by it.
#include "reports/placed_file.h"

#include <fcntl.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/file.h>
#include <sys/stat.h>

#include <algorithm>

#include "tests/reports/printed.h"
#include "tests/support/killed_before.h"

namespace {

namespace fs = std::filesystem;
using domain::ErrorCode;
using printed::contentOf;
using printed::Folder;
using reports::Placement;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

void put(const fs::path& file, const std::string& bytes) {
    std::ofstream{file, std::ios::binary | std::ios::trunc} << bytes;
}

/// What may be replaced begins with "ours".
Placement overOurs() {
    return {.keepOut = {},
            .butFor = {},
            .mayReplace = [](std::string_view there) { return there.starts_with("ours"); },
            .replaceable = "one of ours"};
}

domain::Error refusal(const fs::path& file, const Placement& placement = overOurs()) {
    const auto placed = reports::placeFile(file, "ours: new", placement);
    EXPECT_FALSE(placed) << file;
    return placed ? domain::Error{} : placed.error();
}

std::vector<std::string> namesIn(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator{folder})
        names.push_back(entry.path().filename().string());
    std::ranges::sort(names);
    return names;
}

TEST(APlacedFile, IsANewOneOrTakesThePlaceOfOneThatMayGive) {
    const Folder folder;
    EXPECT_TRUE(reports::placeFile(folder / "a", "ours: old", overOurs()));
    EXPECT_TRUE(reports::placeFile(folder / "a", "ours: new", overOurs()));
    EXPECT_EQ(contentOf(folder / "a"), "ours: new");
    EXPECT_FALSE(reports::placeFile(folder / "a", "ours: newer", {}));
    EXPECT_TRUE(reports::placeFile(folder / "a", "ours: new", {})) << "the same bytes";
    EXPECT_EQ(contentOf(folder / "a"), "ours: new");
    EXPECT_THAT(namesIn(folder.path()), ElementsAre("a"));
}

TEST(APlacedFile, NeverTakesThePlaceOfAnythingElse) {
    const Folder folder;
    put(folder / "letter", "not ours");
    put(folder / "empty", "");
    for (const char* name : {"letter", "empty"}) {
        const auto error = refusal(folder / name);
        EXPECT_EQ(error.code, ErrorCode::Conflict);
        EXPECT_THAT(error.message, AllOf(HasSubstr((folder / name).string()),
                                         HasSubstr("a new name or one of ours was expected")));
    }
    EXPECT_EQ(contentOf(folder / "letter"), "not ours");
    EXPECT_EQ(fs::file_size(folder / "empty"), 0U);
}

TEST(APlacedFile, IsNoLinkAndNoDeviceAndNoFolder) {
    const Folder folder;
    put(folder / "records.db", "ours, and precious");
    fs::create_symlink(folder / "records.db", folder / "link");
    fs::create_symlink(folder / "nowhere", folder / "dangling");
    fs::create_hard_link(folder / "records.db", folder / "second");
    fs::create_directory(folder / "inner");
    ASSERT_EQ(::mkfifo((folder / "pipe").c_str(), 0600), 0);
    const std::pair<std::string, std::string> kinds[] = {{"link", "symbolic link"},
                                                         {"dangling", "symbolic link"},
                                                         {"second", "hard link"},
                                                         {"inner", "is a folder"},
                                                         {"pipe", "no plain file"}};
    for (const auto& [name, what] : kinds) {
        const auto error = refusal(folder / name);
        EXPECT_EQ(error.code, ErrorCode::Refused);
        EXPECT_THAT(error.message, AllOf(HasSubstr((folder / name).string()), HasSubstr(what)));
    }
    EXPECT_EQ(contentOf(folder / "records.db"), "ours, and precious");
    EXPECT_FALSE(fs::exists(folder / "nowhere"));
    EXPECT_EQ(namesIn(folder.path()).size(), std::size(kinds) + 1) << "and the records";
    EXPECT_THAT(refusal("/dev/null").message, HasSubstr("/dev/null"));
}

TEST(APlacedFile, NeedsAFolderAndAName) {
    const Folder folder;
    for (const fs::path& path : {folder / "", folder / ".", folder / "..", fs::path{}})
        EXPECT_EQ(refusal(path).code, ErrorCode::Unusable) << path;
    EXPECT_THAT(refusal(folder / "missing/a").message, HasSubstr("missing"));
    put(folder / "file", "x");
    EXPECT_EQ(refusal(folder / "file/a").code, ErrorCode::Unavailable);
}

TEST(APlacedFile, KeepsOutOfTheFolderOfTheRecordsHoweverItIsNamed) {
    const Folder folder;
    fs::create_directories(folder / "lab/papers/old");
    fs::create_directories(folder / "lab/sessions");
    fs::create_directories(folder / "other");
    fs::create_symlink(folder / "lab", folder / "alias");
    put(folder / "lab/records.db", "ours, and precious");
    Placement placement = overOurs();
    placement.keepOut = folder / "lab";
    placement.butFor = folder / "lab/papers";
    for (const char* path : {"lab/records.db", "lab/new", "lab/sessions/MK", "alias/records.db",
                             "alias/new", "other/../lab/new", "lab/papers/../new"}) {
        const auto error = refusal(folder / path, placement);
        EXPECT_EQ(error.code, ErrorCode::Refused) << path;
        EXPECT_THAT(error.message, AllOf(HasSubstr("folder of the records"), HasSubstr("papers")));
    }
    EXPECT_EQ(contentOf(folder / "lab/records.db"), "ours, and precious");
    for (const char* path : {"lab/papers/a", "lab/papers/old/a", "alias/papers/b", "other/a", "a"})
        EXPECT_TRUE(reports::placeFile(folder / path, "ours", placement)) << path;
}

TEST(APlacedFile, ClearsAwayWhatAKilledProgramLeftAndNothingElse) {
    const Folder folder;
    const auto abandoned = folder / ".framewright-0123.part";
    const auto living = folder / ".framewright-4567.part";
    put(abandoned, "half");
    put(living, "half");
    put(folder / ".framewright-note", "somebody's");
    put(folder / "target", "somebody's");
    fs::create_symlink(folder / "target", folder / ".framewright-link.part");
    const int held = ::open(living.c_str(), O_RDONLY | O_CLOEXEC);
    ASSERT_EQ(::flock(held, LOCK_EX), 0);
    EXPECT_TRUE(reports::placeFile(folder / "a", "ours", {}));
    EXPECT_FALSE(fs::exists(abandoned));
    EXPECT_EQ(contentOf(living), "half") << "its writer lives";
    EXPECT_THAT(namesIn(folder.path()),
                ElementsAre(".framewright-4567.part", ".framewright-link.part", ".framewright-note",
                            "a", "target"));
    ::close(held);
    EXPECT_TRUE(reports::placeFile(folder / "a", "ours", {}));
    EXPECT_TRUE(reports::placeFile(folder / "b", "ours", {}));
    EXPECT_FALSE(fs::exists(living));
}

// Killed before every call that touches a file.
TEST(APlacedFile, IsTheOldOneOrTheNewOneWheneverTheProgramIsKilled) {
    const std::string old = "ours: " + std::string(100'000, 'o');
    const std::string fresh = "ours: " + std::string(200'000, 'n');
    int kills = 0;
    for (int call = 1; call < 1'000; ++call) {
        const Folder folder;
        put(folder / "a", old);
        const bool killed = support::killedBefore(call, [&] {
            if (!reports::placeFile(folder / "a", fresh, overOurs())) _exit(1);
        });
        if (!killed) break;
        ++kills;
        const std::string content = contentOf(folder / "a");
        EXPECT_TRUE(content == old || content == fresh) << call;
        EXPECT_TRUE(reports::placeFile(folder / "a", fresh + "er", overOurs())) << call;
        EXPECT_THAT(namesIn(folder.path()), ElementsAre("a")) << call;
    }
    EXPECT_GE(kills, 8);
}

}  // namespace
