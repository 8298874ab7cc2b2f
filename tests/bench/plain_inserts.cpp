#include "tests/bench/plain_inserts.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <memory>

namespace flutebook::bench {

namespace {

using Connection = std::unique_ptr<sqlite3, decltype(&sqlite3_close)>;
using Query = std::unique_ptr<sqlite3_stmt, decltype(&sqlite3_finalize)>;

void expect(int code, int wanted, sqlite3* connection) {
    if (code == wanted) return;
    std::fprintf(stderr, "bench: %s\n", sqlite3_errmsg(connection));
    std::exit(1);
}

Connection connect(const std::string& file) {
    sqlite3* opened = nullptr;
    const int code = sqlite3_open_v2(file.c_str(), &opened,
                                     SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE | SQLITE_OPEN_NOMUTEX, nullptr);
    Connection connection(opened, sqlite3_close);
    expect(code, SQLITE_OK, opened);
    return connection;
}

Query prepare(sqlite3* connection, const std::string& sql) {
    sqlite3_stmt* prepared = nullptr;
    expect(sqlite3_prepare_v2(connection, sql.c_str(), -1, &prepared, nullptr), SQLITE_OK, connection);
    return {prepared, sqlite3_finalize};
}

void run(sqlite3* connection, const std::string& sql) {
    expect(sqlite3_exec(connection, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK, connection);
}

/// The first `count` columns of the bare table, named so that no number of them runs out of letters.
std::string columns(std::size_t count) {
    std::string names;
    for (std::size_t i = 0; i < count; ++i) names += (i > 0 ? ", v" : "v") + std::to_string(i);
    return names;
}

struct Binding {
    sqlite3_stmt* statement;
    int parameter;
    void operator()(std::monostate) const { sqlite3_bind_null(statement, parameter); }
    void operator()(std::int64_t number) const { sqlite3_bind_int64(statement, parameter, number); }
    void operator()(const std::string& text) const {
        sqlite3_bind_text(statement, parameter, text.data(), static_cast<int>(text.size()), SQLITE_STATIC);
    }
};

}  // namespace

PlainRows::PlainRows(const std::string& ledger_file) {
    const auto connection = connect(ledger_file);
    for (const auto* table : {"entry", "movement", "expected", "stock_count"}) {
        const auto query = prepare(connection.get(), std::string("SELECT * FROM ") + table);
        int code = 0;
        while ((code = sqlite3_step(query.get())) == SQLITE_ROW) {
            auto& row = rows_.emplace_back();
            for (int column = 0; column < sqlite3_column_count(query.get()); ++column) {
                const int type = sqlite3_column_type(query.get(), column);
                if (type == SQLITE_INTEGER)
                    row.emplace_back(static_cast<std::int64_t>(sqlite3_column_int64(query.get(), column)));
                else if (type == SQLITE_NULL)
                    row.emplace_back();
                else
                    row.emplace_back(std::string(static_cast<const char*>(sqlite3_column_blob(query.get(), column)),
                                                 static_cast<std::size_t>(sqlite3_column_bytes(query.get(), column))));
            }
        }
        expect(code, SQLITE_DONE, connection.get());
    }
}

void PlainRows::insert_into(const std::string& file) const {
    const auto connection = connect(file);
    std::size_t widest = 0;
    for (const auto& row : rows_) widest = std::max(widest, row.size());
    run(connection.get(),
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA cache_size = -16384; "
        "CREATE TABLE bare (" +
            columns(widest) + ")");
    run(connection.get(), "BEGIN IMMEDIATE");
    std::map<std::size_t, Query> statements;  // by how many values a row has
    for (const auto& row : rows_) {
        auto found = statements.find(row.size());
        if (found == statements.end()) {
            std::string values;
            for (std::size_t i = 0; i < row.size(); ++i) values += i > 0 ? ", ?" : "?";
            const auto sql = "INSERT INTO bare (" + columns(row.size()) + ") VALUES (" + values + ")";
            found = statements.emplace(row.size(), prepare(connection.get(), sql)).first;
        }
        auto* statement = found->second.get();
        for (std::size_t i = 0; i < row.size(); ++i) std::visit(Binding{statement, static_cast<int>(i) + 1}, row[i]);
        expect(sqlite3_step(statement), SQLITE_DONE, connection.get());
        sqlite3_reset(statement);
    }
    run(connection.get(), "COMMIT");
}

std::size_t read_rows(const std::string& file, const std::string& sql) {
    const auto connection = connect(file);
    const auto query = prepare(connection.get(), sql);
    std::size_t rows = 0;
    int code = 0;
    while ((code = sqlite3_step(query.get())) == SQLITE_ROW) ++rows;
    expect(code, SQLITE_DONE, connection.get());
    return rows;
}

}  // namespace flutebook::bench
