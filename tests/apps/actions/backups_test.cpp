// Backups as somebody makes them, and the drill: who may, what it compares, what it leaves.
#include "apps/actions/backups.h"

#include <gmock/gmock.h>

#include <QSqlDatabase>
#include <QSqlQuery>

#include "tests/apps/actions/floor_bench.h"

namespace {

namespace fs = std::filesystem;
using actions_tests::saidBy;
using support::kInspector;
using support::kMaker;
using support::kManager;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

class BackupsOfALaboratory : public actions_tests::FloorBench {
protected:
    fs::path safe() const { return safe_.path().toStdString() + "/safe"; }
    fs::path again() const { return safe_.path().toStdString() + "/again"; }

    actions::BackupMade backedUp(const actions::BackupWish& wish = {}) {
        const auto made = actions::backUp(lab(), wish, floor_.as(kManager));
        EXPECT_TRUE(made) << saidBy(made);
        return made ? *made : actions::BackupMade{};
    }
    actions::Drill drilled(std::uint32_t seed = 7) {
        const auto drill = actions::drill(lab(), {}, seed, floor_.as(kManager));
        EXPECT_TRUE(drill) << saidBy(drill);
        return drill ? *drill : actions::Drill{};
    }
    /// How many things lie in the laboratory's folder.
    std::ptrdiff_t things() const {
        return std::distance(fs::directory_iterator{folder()}, fs::directory_iterator{});
    }

    QTemporaryDir safe_;
};

TEST_F(BackupsOfALaboratory, AreForWhoMayKeepTheWorkshop) {
    for (const auto who : {kMaker, kInspector}) {
        const auto backup = actions::backUp(lab(), {.folder = safe()}, floor_.as(who));
        ASSERT_FALSE(backup);
        EXPECT_EQ(backup.error().code, domain::ErrorCode::Refused);
        EXPECT_THAT(backup.error().message, HasSubstr("keep workshop"));
        const auto drill = actions::drill(lab(), {}, 1, floor_.as(who));
        ASSERT_FALSE(drill);
        EXPECT_EQ(drill.error().code, domain::ErrorCode::Refused);
    }
    EXPECT_FALSE(fs::exists(safe()));
    EXPECT_THAT(refusals(), SizeIs(4));
}

TEST_F(BackupsOfALaboratory, GoIntoItsFolderUntilAnotherIsRemembered) {
    EXPECT_EQ(backedUp().backup.file.parent_path(), folder() / "backups");
    EXPECT_EQ(backedUp({.folder = safe()}).backup.file.parent_path(), safe());
    EXPECT_EQ(backedUp().backup.file.parent_path(), folder() / "backups");
    EXPECT_EQ(backedUp({.folder = safe(), .remember = true}).backup.file.parent_path(), safe());
    EXPECT_EQ(backedUp().backup.file.parent_path(), safe());
    EXPECT_EQ(*actions::backupFolder(lab()), safe());
}

TEST_F(BackupsOfALaboratory, RemoveTheSupersededOnlyWhenAsked) {
    for (int i = 0; i < 3; ++i) {
        EXPECT_THAT(backedUp({.folder = safe()}).removed, IsEmpty());
        clock_.letPass(1);
    }
    const auto made = backedUp({.folder = safe(), .removeSuperseded = true});
    // Signing in is no event of the ledger: it is one state, four times.
    EXPECT_THAT(made.removed, SizeIs(3));
    EXPECT_TRUE(fs::exists(made.backup.file));
}

TEST_F(BackupsOfALaboratory, ComeBackWithEverybodyWhoWorksThere) {
    const auto number = castFramework();
    const auto made = backedUp({.folder = safe()});
    const auto restored = actions::restore(made.backup.file, again());
    ASSERT_TRUE(restored) << saidBy(restored);
    ASSERT_TRUE(restored->last);
    EXPECT_EQ(restored->last->subject, number.text());
    const auto back = actions::Laboratory::open(again(), clock_, storage::HashCost::Light);
    ASSERT_TRUE(back) << saidBy(back);
    EXPECT_THAT(actions::verify(*back)->problems, IsEmpty());
    const auto who = support::signedInAs(*back, support::kMaker, support::kPassword);
    EXPECT_TRUE(actions::start(*back, {number}, {}, who));
}

TEST_F(BackupsOfALaboratory, AreDrilledWithStatementsComparedAndNothingLeft) {
    for (int i = 0; i < 2; ++i) floor_.deliver(castFramework());
    castFramework();
    const auto before = things();
    const auto drill = drilled();
    EXPECT_THAT(drill.problems, IsEmpty());
    EXPECT_EQ(drill.statements.issued, 2U);
    EXPECT_EQ(drill.statements.compared, 2U);
    EXPECT_EQ(things(), before) << "nothing of it is left";
    EXPECT_GT(drill.returnTook, 0);
    EXPECT_GT(drill.backupTook, drill.writersWaited);
}

TEST_F(BackupsOfALaboratory, SayWhatWouldBeLostNow) {
    const auto first = drilled();
    EXPECT_EQ(first.lastBackup, std::nullopt);
    EXPECT_EQ(first.entriesSince, first.manifest.entries) << "everything";
    const auto when = lab().now();
    backedUp();
    EXPECT_EQ(drilled().entriesSince, 0);
    clock_.letPass(90);
    castFramework();
    const auto later = drilled();
    EXPECT_EQ(later.lastBackup, when);
    EXPECT_EQ(later.entriesSince, later.manifest.entries - first.manifest.entries);
    EXPECT_GT(later.entriesSince, 0);
}

TEST_F(BackupsOfALaboratory, ShowAStatementThatIsPrintedOtherwise) {
    const auto number = castFramework();
    floor_.deliver(number);
    const auto made = backedUp({.folder = safe()});
    ASSERT_TRUE(actions::restore(made.backup.file, again()));
    const auto issued =
        *domain::newest<domain::StatementIssued>(order(number), domain::Stage::Delivery);
    {
        // Erased in the copy alone, past every rule.
        auto database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), "tamper");
        database.setDatabaseName(QString::fromStdString((again() / "records.db").string()));
        ASSERT_TRUE(database.open());
        QSqlQuery query{database};
        ASSERT_TRUE(query.prepare("UPDATE sealed_text SET ciphertext = NULL WHERE digest = ?"));
        query.bindValue(0, QString::fromStdString(issued.statement.digest));
        ASSERT_TRUE(query.exec());
        ASSERT_EQ(query.numRowsAffected(), 1);
        database.close();
    }
    QSqlDatabase::removeDatabase("tamper");
    const auto back = actions::Laboratory::open(again(), clock_, storage::HashCost::Light);
    ASSERT_TRUE(back) << saidBy(back);
    const auto compared = actions::compareStatements(lab(), *back, 3);
    ASSERT_TRUE(compared) << saidBy(compared);
    EXPECT_EQ(compared->compared, 1U);
    EXPECT_THAT(compared->problems, testing::ElementsAre(AllOf(HasSubstr(number.text()),
                                                               HasSubstr("printed otherwise"))));
}

}  // namespace
