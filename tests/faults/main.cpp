/// Runs the tests on a disk and with a memory that fail where a test says so.
#include <gtest/gtest.h>

#include <QCoreApplication>

#include "tests/faults/allocations.h"
#include "tests/faults/disk.h"

int main(int count, char** words) {
    faults::installAllocator();
    faults::installDisk();
    testing::InitGoogleTest(&count, words);
    const QCoreApplication application{count, words};
    return RUN_ALL_TESTS();
}
