#include "reports/paper_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <csignal>

#include "reports/prescription_sheet.h"
#include "tests/reports/printed.h"
#include "tests/support/designs.h"

namespace {

using domain::ErrorCode;
using printed::Folder;
using testing::HasSubstr;
namespace fs = std::filesystem;

reports::Paper paper() {
    return reports::prescriptionSheet(printed::head(), support::upperClassIV(), {}, {}, {}, {});
}

TEST(ThePaperFile, IsTheSameBytesForTheSamePaper) {
    const auto once = reports::pdfOf(paper());
    const auto again = reports::pdfOf(paper());
    ASSERT_TRUE(once && again);
    EXPECT_EQ(*once, *again);
    reports::Paper later = paper();
    later.head.printedAt = domain::Instant::ofMicroseconds(1'795'682'040'000'000);
    EXPECT_NE(*reports::pdfOf(later), *once);
}

TEST(ThePaperFile, HasTheSizeOfTheSheetChosen) {
    reports::Paper letter = paper();
    EXPECT_THAT(*reports::pdfOf(letter), HasSubstr("595"));  // A4: 210 mm are 595.28 points
    letter.head.size = reports::PageSize::UsLetter;
    const Folder folder;
    const auto raster = printed::rasterOf(printed::put(folder, letter), 1, 100);
    EXPECT_NEAR(raster.width, 850, 1);  // 8.5 inches
    EXPECT_NEAR(raster.height, 1100, 1);
}

TEST(ThePaperFile, CanBeReadByItsOwnerAlone) {
    const Folder folder;
    const auto file = printed::put(folder, paper());
    struct stat status{};
    ASSERT_EQ(::stat(file.c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777, 0600u);
}

TEST(ThePaperFile, ReplacesAnOlderOneAndLeavesNothingElseBehind) {
    const Folder folder;
    reports::Paper later = paper();
    later.head.printedAt = domain::Instant::ofMicroseconds(1'795'682'040'000'000);
    const auto file = printed::put(folder, paper());
    printed::put(folder, later);
    EXPECT_EQ(printed::contentOf(file), *reports::pdfOf(later));
    EXPECT_TRUE(printed::isSound(file));
    EXPECT_EQ(std::distance(fs::directory_iterator{folder.path()}, fs::directory_iterator{}), 1);
}

TEST(ThePaperFile, IsRefusedWithTheFoldersNameWhereItCannotBe) {
    const Folder folder;
    const auto nowhere = reports::write(paper(), folder / "missing" / "paper.pdf");
    ASSERT_FALSE(nowhere);
    EXPECT_EQ(nowhere.error().code, ErrorCode::Unavailable);
    EXPECT_THAT(nowhere.error().message, HasSubstr("missing"));
    EXPECT_THAT(nowhere.error().message, HasSubstr("No such file"));
    fs::create_directory(folder / "taken.pdf");
    const auto onFolder = reports::write(paper(), folder / "taken.pdf");
    EXPECT_FALSE(onFolder);
    EXPECT_EQ(std::distance(fs::directory_iterator{folder.path()}, fs::directory_iterator{}), 1);
}

/// No file may grow beyond a few bytes while it lives, which is how a full disk looks from here.
class NoRoom {
public:
    NoRoom() {
        ::getrlimit(RLIMIT_FSIZE, &before_);
        rlimit little = before_;
        little.rlim_cur = 64;
        ::setrlimit(RLIMIT_FSIZE, &little);
        signalBefore_ = std::signal(SIGXFSZ, SIG_IGN);
    }
    ~NoRoom() {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, signalBefore_);
    }
    NoRoom(const NoRoom&) = delete;
    NoRoom& operator=(const NoRoom&) = delete;

private:
    rlimit before_{};
    void (*signalBefore_)(int){};
};

TEST(ThePaperFile, KeepsTheOlderOneWhenThereIsNoRoom) {
    const Folder folder;
    const auto older = printed::put(folder, paper());
    reports::Paper later = paper();
    later.head.printedAt = domain::Instant::ofMicroseconds(1'795'682'040'000'000);
    std::string told;
    {
        const NoRoom noRoom;
        const auto written = reports::write(later, older);
        if (!written) told = written.error().message;
    }
    EXPECT_THAT(told, HasSubstr("cannot write"));
    EXPECT_EQ(printed::contentOf(older), *reports::pdfOf(paper()));
    EXPECT_EQ(std::distance(fs::directory_iterator{folder.path()}, fs::directory_iterator{}), 1);
}

TEST(ThePaperFile, TakesThePlaceOfAPrintOfTheSamePaperOnly) {
    const Folder folder;
    const auto file = printed::put(folder, paper());
    const std::string before = printed::contentOf(file);
    reports::Paper ofAnotherOrder = paper();
    ofAnotherOrder.head.order = "26000013";
    reports::Paper anotherPaper = paper();
    anotherPaper.name = "Ticket";
    for (const auto& other : {ofAnotherOrder, anotherPaper}) {
        const auto written = reports::write(other, file);
        ASSERT_FALSE(written);
        EXPECT_EQ(written.error().code, ErrorCode::Conflict);
        EXPECT_THAT(written.error().message,
                    testing::AllOf(HasSubstr(file.string()), HasSubstr("earlier print")));
        EXPECT_EQ(printed::contentOf(file), before);
    }
    // Words of a PDF file that is not ours, and of one that only speaks of our paper.
    for (const std::string& strange :
         {std::string{"%PDF-1.4\n1 0 obj\nendobj\ntrailer\n<<\n/Root 1 0 R\n>>\n%%EOF\n"},
          "x" + before, std::string{"%PDF-1.4\n"}, std::string{}}) {
        std::ofstream{file, std::ios::binary | std::ios::trunc} << strange;
        EXPECT_FALSE(reports::write(paper(), file));
        EXPECT_EQ(printed::contentOf(file), strange);
    }
}

TEST(ThePaperFile, OfWhatWasIssuedStaysAsItIs) {
    const Folder folder;
    const reports::PaperPlace issued{.records = {}, .papers = {}, .isIssued = true};
    const auto file = folder / "statement.pdf";
    ASSERT_TRUE(reports::write(paper(), file, issued));
    const auto made = fs::last_write_time(file);
    EXPECT_TRUE(reports::write(paper(), file, issued)) << "the same bytes";
    EXPECT_EQ(fs::last_write_time(file), made);
    reports::Paper later = paper();
    later.head.printedBy = "JT";
    const auto changed = reports::write(later, file, issued);
    ASSERT_FALSE(changed);
    EXPECT_EQ(changed.error().code, ErrorCode::Conflict);
    EXPECT_EQ(printed::contentOf(file), *reports::pdfOf(paper()));
}

TEST(ThePaperFile, NeedsAName) {
    const auto unnamed = reports::write(paper(), "/tmp/");
    ASSERT_FALSE(unnamed);
    EXPECT_EQ(unnamed.error().code, ErrorCode::Unusable);
}

}  // namespace
