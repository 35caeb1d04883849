/// Records in a temporary folder, and orders written into them the way the actions do it.
#pragma once

#include <QSqlDatabase>
#include <QTemporaryDir>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "domain/production/decide.h"
#include "storage/connection.h"
#include "storage/ledger_pass.h"
#include "storage/transaction.h"

namespace support {

class Folder {
public:
    std::filesystem::path path() const { return folder_.path().toStdString(); }
    std::filesystem::path file() const { return path() / "records.db"; }

private:
    QTemporaryDir folder_;
};

/// Opens records that must open.
std::unique_ptr<storage::Connection> opened(const std::filesystem::path& folder);
/// What opening says when it refuses.
domain::Error refusalToOpen(const std::filesystem::path& folder);

/// The same file through a door of its own, as with a database shell: no mode set, no check.
class Shell {
public:
    explicit Shell(const std::filesystem::path& file);
    Shell(const Shell&) = delete;
    Shell& operator=(const Shell&) = delete;
    ~Shell();

    const QSqlDatabase& database() const { return database_; }
    /// Whether the statement ran.
    bool run(const std::string& sql) const;
    /// The first column of the first row.
    QVariant value(const std::string& sql) const;
    /// The first column of every row.
    std::vector<QVariant> column(const std::string& sql) const;

private:
    QString name_;
    QSqlDatabase database_;
};

/// The guards of a file taken away, as somebody does who means to alter what they protect; put back
/// as they were at the end.
class WithoutGuards {
public:
    explicit WithoutGuards(const Shell& shell);
    WithoutGuards(const WithoutGuards&) = delete;
    WithoutGuards& operator=(const WithoutGuards&) = delete;
    ~WithoutGuards();

private:
    const Shell& shell_;
    std::vector<std::string> guards_;
};

domain::PersonCode person(std::string_view code);
domain::OrderNumber orderNumber(int count);
/// `count` minutes into the morning of 2026-11-25.
domain::Instant minute(int count);

/// On the floor of the tests, with nothing lacking by law.
domain::Occasion occasion(domain::Instant at, const domain::PersonCode& who, std::string key);

/// Few fields, so that what is derived from it stays small.
domain::Prescription smallPrescription();
/// A revision as the ledger may hold it, with an identity of its own sealed.
domain::Revision sealedRevision(storage::Transaction& work,
                                const domain::Prescription& prescription);

/// Decides, appends, updates the register and commits, in one transaction.
domain::Result<domain::Order> carryOut(storage::Connection& records,
                                       const domain::OrderNumber& number,
                                       const domain::Command& command,
                                       const domain::Occasion& occasion);
/// Logs a prescription under the next number.
domain::Result<domain::Order> receive(storage::Connection& records,
                                      const domain::Prescription& prescription,
                                      const domain::Occasion& occasion);

/// Two orders: one accepted, worked on, recorded with a lot, flagged, answered with a new revision;
/// one incomplete and only received.
void writeTwoOrders(storage::Connection& records);
/// The floor's own events.
void writeFloor(storage::Connection& records);

/// Everything that is proved when records are verified.
std::vector<std::string> problemsOf(storage::Connection& records);
/// What one check finds, or what is wrong with the ledger it reads.
std::vector<std::string> problemsOf(storage::Connection& records,
                                    std::unique_ptr<storage::TableCheck> check);
/// Every order as the ledger leaves it, by number.
std::vector<domain::Order> ordersIn(storage::Connection& records);

}  // namespace support
