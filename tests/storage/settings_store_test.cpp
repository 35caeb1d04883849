#include "storage/settings_store.h"

#include <gtest/gtest.h>

#include "tests/storage/records.h"

namespace {

using storage::SettingsStore;
using storage::Transaction;

TEST(SettingsStore, GivesBackWhatWasSetLast) {
    const support::Folder folder;
    const auto records = support::opened(folder.path());
    const SettingsStore settings{*records};
    EXPECT_EQ(*settings.find("laboratory.name"), std::nullopt);
    for (const std::string value : {"North Bench", "Öst Bench", ""}) {
        Transaction work = *Transaction::begin(*records);
        ASSERT_TRUE(settings.put(work, "laboratory.name", value));
        ASSERT_TRUE(work.commit());
        EXPECT_EQ(**settings.find("laboratory.name"), value);
    }
}

}  // namespace
