#include "storage/transaction.h"

#include <chrono>
#include <utility>

#include "storage/statement.h"

namespace storage {
namespace {

const char* const kRollback = "ROLLBACK";
const char* const kCommit = "COMMIT";

/// As long as the database itself waits for a lock.
constexpr std::chrono::seconds kLongestWait{5};

/// Gives the turn back unless a transaction took it over.
class Turn {
public:
    explicit Turn(WriterQueue& queue) : queue_{&queue} {}
    Turn(const Turn&) = delete;
    Turn& operator=(const Turn&) = delete;
    ~Turn() {
        if (queue_ != nullptr) queue_->leave();
    }
    void keep() noexcept { queue_ = nullptr; }

private:
    WriterQueue* queue_;
};

/// A destructor's way out: a transaction the database has given up already has nothing to undo.
bool endQuietly(const QSqlDatabase& database, const char* how) noexcept {
    return QSqlQuery{database}.exec(QString::fromUtf8(how));
}

/// For a connection that has none open, as far as it knows: where memory was short, the end of the
/// last one may have failed, and it is ended now.
void beginAnew(const QSqlDatabase& database, const std::string& how) {
    try {
        Statement{database, Sql{how}}.run();
    } catch (const SqlFailure&) {
        if (!endQuietly(database, kRollback)) throw;
        Statement{database, Sql{how}}.run();
    }
}

}  // namespace

domain::Result<Transaction> Transaction::begin(Connection& connection) try {
    if (!connection.queue_.enter(kLongestWait)) throw SqlFailure::busy(connection.file());
    Turn turn{connection.queue_};
    const std::string how{connection.dialect().begin};
    if (connection.inTransaction_)
        Statement{connection.database(), Sql{how}}.run();
    else
        beginAnew(connection.database(), how);
    connection.inTransaction_ = true;
    turn.keep();
    return Transaction{connection};
} catch (const SqlFailure& failure) {
    return failure.error();
}

Transaction::Transaction(Transaction&& other) noexcept
    : connection_{std::exchange(other.connection_, nullptr)} {}

Transaction::~Transaction() {
    if (connection_ == nullptr) return;
    endQuietly(connection_->database(), kRollback);
    connection_->inTransaction_ = false;
    connection_->queue_.leave();
}

domain::Result<domain::Done> Transaction::commit() try {
    Statement{connection_->database(), Sql{kCommit}}.run();
    connection_->inTransaction_ = false;
    ++connection_->commits_;
    connection_->queue_.leave();
    connection_ = nullptr;
    return domain::Done{};
} catch (const SqlFailure& failure) {
    return domain::Error{domain::ErrorCode::Unavailable,
                         std::string{failure.what()} +
                             "; whether it was stored is not known: repeat it with the same key, "
                             "which never takes effect twice"};
}

void Transaction::journalHead() const {
    Statement{connection_->database(), Sql{std::string{connection_->dialect().rewriteHead}}}.run();
}

Snapshot::Snapshot(Connection& connection)
    : connection_{connection}, own_{!connection.inTransaction_} {
    if (own_) beginAnew(connection_.database(), "BEGIN");
    connection_.inTransaction_ = true;
}

Snapshot::~Snapshot() {
    if (!own_) return;
    endQuietly(connection_.database(), kCommit);
    connection_.inTransaction_ = false;
}

}  // namespace storage
