#include "tests/bench/raw_writes.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <iostream>
#include <map>
#include <memory>
#include <stdexcept>

#include "tests/bench/bench_laboratory.h"
#include "tests/bench/bench_work.h"
#include "tests/bench/many_orders.h"
#include "tests/bench/sqlite_probe.h"

namespace bench {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr int kOrders = 40;
constexpr const char* kRecords = "records.db";

/// The modes the records are kept in; see storage/connection.cpp.
constexpr const char* kModes =
    "PRAGMA trusted_schema=OFF; PRAGMA cell_size_check=ON; PRAGMA mmap_size=0;"
    "PRAGMA foreign_keys=ON; PRAGMA secure_delete=ON; PRAGMA synchronous=FULL;"
    "PRAGMA journal_mode=TRUNCATE;";

struct Closer {
    void operator()(sqlite3* database) const { sqlite3_close(database); }
    void operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }
    void operator()(sqlite3_value* value) const { sqlite3_value_free(value); }
};
using Database = std::unique_ptr<sqlite3, Closer>;
using Prepared = std::unique_ptr<sqlite3_stmt, Closer>;
using Held = std::unique_ptr<sqlite3_value, Closer>;
using Row = std::vector<Held>;

Database opened(const fs::path& folder) {
    sqlite3* database = nullptr;
    const int code = sqlite3_open((folder / kRecords).c_str(), &database);
    Database holder{database};
    if (code != SQLITE_OK) throw std::runtime_error{sqlite3_errmsg(database)};
    return holder;
}

void must(sqlite3* database, bool went) {
    if (!went) throw std::runtime_error{sqlite3_errmsg(database)};
}

Prepared prepared(sqlite3* database, const std::string& sql) {
    sqlite3_stmt* statement = nullptr;
    must(database, sqlite3_prepare_v2(database, sql.c_str(), -1, &statement, nullptr) == SQLITE_OK);
    return Prepared{statement};
}

std::vector<std::string> namesIn(sqlite3* database, const std::string& sql) {
    std::vector<std::string> names;
    const Prepared query = prepared(database, sql);
    while (sqlite3_step(query.get()) == SQLITE_ROW)
        names.emplace_back(reinterpret_cast<const char*>(sqlite3_column_text(query.get(), 0)));
    return names;
}

/// A row as it lies in a database; empty when there is none.
Row rowIn(sqlite3* database, const RowChange& change) {
    const Prepared query = prepared(database, "SELECT * FROM " + change.table + " WHERE rowid = ?");
    sqlite3_bind_int64(query.get(), 1, change.row);
    Row row;
    if (sqlite3_step(query.get()) != SQLITE_ROW) return row;
    for (int i = 0; i < sqlite3_column_count(query.get()); ++i)
        row.emplace_back(sqlite3_value_dup(sqlite3_column_value(query.get(), i)));
    return row;
}

bool isSame(sqlite3_value* one, sqlite3_value* other) {
    if (sqlite3_value_type(one) != sqlite3_value_type(other)) return false;
    const auto bytesOf = [](sqlite3_value* value) {
        const auto* bytes = static_cast<const char*>(sqlite3_value_blob(value));
        return std::string_view{bytes == nullptr ? "" : bytes,
                                static_cast<std::size_t>(sqlite3_value_bytes(value))};
    };
    return bytesOf(one) == bytesOf(other);
}

/// One row to write: the columns that change, with what they will hold.
struct Write {
    std::string sql{};
    std::vector<const Held*> values{};
    std::int64_t row{};  ///< of an update; 0: a new row
};
using Transition = std::vector<Write>;

/// Watches transitions done by the actions, and keeps what each wrote.
class Script {
public:
    /// `pristine`: the rows as they were before the first transition.
    Script(const fs::path& folder, const fs::path& pristine)
        : database_{opened(folder)}, before_{opened(pristine)} {}

    void beginTransition() { noteRows(); }
    void endTransition() {
        Transition transition;
        for (const RowChange& change : notedRows()) add(transition, change);
        transitions_.push_back(std::move(transition));
    }
    const std::vector<Transition>& transitions() const { return transitions_; }

private:
    void add(Transition& transition, const RowChange& change) {
        rows_.push_back(std::make_unique<Row>(rowIn(database_.get(), change)));
        const Row& row = *rows_.back();
        const auto columns =
            namesIn(database_.get(), "SELECT name FROM pragma_table_info('" + change.table + "')");
        Write write;
        std::string list;
        std::string marks;
        const Row* old = change.isNew ? nullptr : known(change);
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (old != nullptr && isSame(row[i].get(), old->at(i).get())) continue;
            const char* comma = write.values.empty() ? "" : ", ";
            list += comma + columns[i] + (old != nullptr ? " = ?" : "");
            marks += comma + std::string{"?"};
            write.values.push_back(&row[i]);
        }
        last_[{change.table, change.row}] = &row;
        if (write.values.empty()) return;
        write.row = old != nullptr ? change.row : 0;
        write.sql = old != nullptr
                        ? "UPDATE " + change.table + " SET " + list + " WHERE rowid = ?"
                        : "INSERT INTO " + change.table + " (" + list + ") VALUES (" + marks + ")";
        transition.push_back(std::move(write));
    }
    const Row* known(const RowChange& change) {
        const auto found = last_.find({change.table, change.row});
        if (found != last_.end()) return found->second;
        rows_.push_back(std::make_unique<Row>(rowIn(before_.get(), change)));
        return rows_.back()->empty() ? nullptr : rows_.back().get();
    }

    Database database_;
    Database before_;
    std::vector<std::unique_ptr<Row>> rows_{};
    std::map<std::pair<std::string, std::int64_t>, const Row*> last_{};
    std::vector<Transition> transitions_{};
};

/// Carries out a script with statements prepared once, one commit for each transition.
class RawWriter {
public:
    explicit RawWriter(const fs::path& folder) : database_{opened(folder)} {
        must(database_.get(),
             sqlite3_exec(database_.get(), kModes, nullptr, nullptr, nullptr) == SQLITE_OK);
        begin_ = prepared(database_.get(), "BEGIN IMMEDIATE");
        commit_ = prepared(database_.get(), "COMMIT");
    }
    void prepare(const Transition& transition) {
        for (const Write& write : transition)
            if (!statements_.contains(write.sql))
                statements_.emplace(write.sql, prepared(database_.get(), write.sql));
    }
    void carryOut(const Transition& transition) {
        run(begin_.get());
        for (const Write& write : transition) {
            sqlite3_stmt* statement = statements_.find(write.sql)->second.get();
            int place = 0;
            for (const Held* value : write.values)
                sqlite3_bind_value(statement, ++place, value->get());
            if (write.row != 0) sqlite3_bind_int64(statement, ++place, write.row);
            run(statement);
        }
        run(commit_.get());
    }

private:
    void run(sqlite3_stmt* statement) {
        must(database_.get(), sqlite3_step(statement) == SQLITE_DONE);
        sqlite3_reset(statement);
    }

    Database database_;
    Prepared begin_{};
    Prepared commit_{};
    std::map<std::string, Prepared> statements_{};
};

/// A copy of records, for as long as it is held.
class Copy {
public:
    Copy(const fs::path& source, fs::path folder) : folder_{std::move(folder)} {
        fs::remove_all(folder_);
        fs::create_directories(folder_);
        fs::copy_file(source / kRecords, folder_ / kRecords);
    }
    Copy(const Copy&) = delete;
    Copy& operator=(const Copy&) = delete;
    ~Copy() {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    const fs::path& folder() const noexcept { return folder_; }

private:
    fs::path folder_;
};

/// Stages passed by the actions; seconds. `script`: watches, or nullptr.
double passStages(const fs::path& folder, const Made& made, Script* script) {
    support::HandClock clock;
    clock.goTo(lastDay());
    clock.letPass(std::int64_t{9} * 60);
    const auto laboratory = actions::Laboratory::open(folder, clock, storage::HashCost::Light);
    if (!laboratory) throw std::runtime_error{laboratory.error().message};
    const auto who = signedIn(*laboratory, kTechnicians[0]);
    if (!who) throw std::runtime_error{who.error().message};
    const auto check = [&](const auto& result) {
        if (!result) throw std::runtime_error{result.error().message};
        if (script != nullptr) script->endTransition();
        if (script != nullptr) script->beginTransition();
        clock.letPass(0, 1);
    };
    if (script != nullptr) script->beginTransition();
    const auto begin = Clock::now();
    for (int i = 0; i < kOrders; ++i) {
        const auto& number = made.inWork.at(static_cast<std::size_t>(i));
        const auto started = actions::start(*laboratory, {number}, {}, *who);
        check(started);
        check(recordAll(*laboratory, started->order, *who));
        check(actions::finish(*laboratory, {number}, {}, *who));
    }
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

double writeRaw(const fs::path& folder, const Script& script) {
    RawWriter writer{folder};
    for (const Transition& transition : script.transitions()) writer.prepare(transition);
    const auto begin = Clock::now();
    for (const Transition& transition : script.transitions())
        if (!transition.empty()) writer.carryOut(transition);
    return std::chrono::duration<double>(Clock::now() - begin).count();
}

/// The tables that have another number of rows in the one than in the other.
std::string unlike(const fs::path& one, const fs::path& other) {
    const std::array databases{opened(one), opened(other)};
    std::string list;
    for (const std::string& table :
         namesIn(databases[0].get(), "SELECT name FROM sqlite_schema WHERE type = 'table'")) {
        const auto rows = [&](const Database& database) {
            return namesIn(database.get(), "SELECT COUNT(*) FROM " + table);
        };
        // Signing in before the transitions is not a part of them.
        if (table != "session" && rows(databases[0]) != rows(databases[1])) list += ' ' + table;
    }
    return list;
}

void compareAt(std::vector<Figure>& figures, const fs::path& source, const Made& made,
               const Copy& watched, const Script& script, const Place& place) {
    const Copy raw{source, place.scratch / "raw"};
    const Copy ours{source, place.scratch / "ours"};
    setSyncCost(place.syncCost);
    const double oursTook = passStages(ours.folder(), made, nullptr);
    const double rawTook = writeRaw(raw.folder(), script);
    setSyncCost(0);
    const std::string wrong = unlike(watched.folder(), raw.folder());
    if (!wrong.empty()) throw std::runtime_error{"the raw program did not write the same:" + wrong};
    const double transitions = 3.0 * kOrders;
    const std::string where = "transitions, " + place.name;
    figures.push_back(
        {made.orders, where + ": by the actions", "a second", transitions / oursTook, {}});
    figures.push_back(
        {made.orders, where + ": by the C API", "a second", transitions / rawTook, {}});
    figures.push_back({made.orders, where + ": ratio", "", rawTook / oursTook, place.goal});
}

}  // namespace

double syncTime(const fs::path& folder) {
    constexpr int kTimes = 40;
    const fs::path file = folder / "sync-time";
    const int opened = ::open(file.c_str(), O_CREAT | O_TRUNC | O_WRONLY | O_CLOEXEC, 0600);
    const std::vector<char> page(4096, 'x');
    std::vector<double> times;
    for (int i = 0; i < kTimes; ++i) {
        if (::pwrite(opened, page.data(), page.size(), 0) < 0) break;
        const auto begin = Clock::now();
        ::fsync(opened);
        times.push_back(std::chrono::duration<double, std::micro>(Clock::now() - begin).count());
    }
    ::close(opened);
    fs::remove(file);
    std::ranges::sort(times);
    return times.empty() ? 0 : times[times.size() / 2];
}

std::vector<Figure> compareWithRaw(const fs::path& source, const std::vector<Place>& places) {
    std::vector<Figure> figures;
    try {
        const Made made = readMade(source);
        const Copy watched{source, places.front().scratch / "watched"};
        Script script{watched.folder(), source};
        passStages(watched.folder(), made, &script);
        for (const Place& place : places) compareAt(figures, source, made, watched, script, place);
    } catch (const std::exception& failure) {
        std::cerr << "compared with the C API: " << failure.what() << '\n';
    }
    setSyncCost(0);
    return figures;
}

}  // namespace bench
