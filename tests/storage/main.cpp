// The tests of storage; with --write-orders FOLDER COUNT PERSON [PAUSE], a second program that
// writes, and rests so many milliseconds after each order; with --make-backups FOLDER SAFE COUNT,
// one that backs up, made to be killed.
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <QThread>
#include <iostream>

#include "storage/backup.h"
#include "tests/storage/records.h"

namespace {

constexpr qsizetype kWriting = 5;  ///< arguments, the program's own name among them

int writeOrders(const QStringList& arguments) {
    const auto records = support::opened(arguments[2].toStdString());
    if (!records) return 1;
    const std::string who = arguments[4].toStdString();
    for (int i = 0; i < arguments[3].toInt(); ++i) {
        const auto order =
            support::receive(*records, support::smallPrescription(),
                             support::occasion(support::minute(i), support::person(who),
                                               who + "-" + std::to_string(i)));
        if (!order) {
            std::cerr << order.error().message << '\n';
            return 1;
        }
        if (arguments.size() > kWriting) QThread::msleep(arguments[kWriting].toULong());
    }
    return 0;
}

/// Says so once it begins.
int makeBackups(const QStringList& arguments) {
    const auto records = support::opened(arguments[2].toStdString());
    if (!records) return 1;
    std::cout << "begun" << std::endl;
    for (int i = 0; i < arguments[4].toInt(); ++i) {
        const auto backup =
            storage::makeBackup(*records, arguments[3].toStdString(), support::minute(i));
        if (!backup) {
            std::cerr << backup.error().message << '\n';
            return 1;
        }
    }
    return 0;
}

}  // namespace

int main(int count, char** arguments) {
    testing::InitGoogleTest(&count, arguments);
    const QCoreApplication application{count, arguments};
    const QStringList given = QCoreApplication::arguments();
    if (given.size() >= kWriting && given[1] == QStringLiteral("--write-orders"))
        return writeOrders(given);
    if (given.size() == 5 && given[1] == QStringLiteral("--make-backups"))
        return makeBackups(given);
    return RUN_ALL_TESTS();
}
