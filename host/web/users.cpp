#include "host/web/users.hpp"

#include <fcntl.h>
#include <fmt/chrono.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <sstream>

#include "host/base/characters.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/handover/texts.hpp"
#include "ledger/store/database.hpp"

namespace flutebook::web {

namespace {

using ledger::Statement;

constexpr std::size_t longest_name = 40, shortest_password = 12, longest_password = 1000;
constexpr int free_failures = 3;  // before the first wait
constexpr std::size_t most_failures = 10'000;

constexpr const char* schema = R"(
CREATE TABLE user(
  name TEXT PRIMARY KEY, hash TEXT NOT NULL,
  role TEXT NOT NULL CHECK(role IN ('reader', 'accountant', 'controller', 'keeper')),
  is_off INTEGER NOT NULL DEFAULT 0 CHECK(is_off IN (0, 1))) STRICT;
CREATE TABLE log(
  number INTEGER PRIMARY KEY, at TEXT NOT NULL, who TEXT NOT NULL, deed TEXT NOT NULL, address TEXT NOT NULL) STRICT;
CREATE TRIGGER log_stays BEFORE DELETE ON log BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;
CREATE TRIGGER log_holds BEFORE UPDATE ON log BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;
CREATE TRIGGER user_stays BEFORE DELETE ON user BEGIN SELECT RAISE(ABORT, 'a user is turned off'); END;
PRAGMA user_version = 1)";

[[noreturn]] void refuse_user(const std::string& line) {
    throw InputError(InputError::Whose::request, {line});
}

std::string file_beside(const std::string& ledger) {
    return (std::filesystem::path(ledger).parent_path() / "users.db").string();
}

void check_password(const Password& password) {
    if (password.text.size() < shortest_password || password.text.size() > longest_password)
        refuse_user(
            fmt::format("password: too short or too long: found {} bytes; take {} or more, several words are "
                        "best",
                        password.text.size(), shortest_password));
}

// For a name that no user has: verifying takes as long as for one that a user has.
const std::string& nobodys_hash() {
    static const std::string hash = password_hash({new_secret()});
    return hash;
}

// What is done to users, with its line in the log; undone where it is not finished.
class Deed {
public:
    explicit Deed(ledger::Database& database) : database_(database) { database_.run("BEGIN IMMEDIATE"); }
    Deed(const Deed&) = delete;
    Deed& operator=(const Deed&) = delete;
    ~Deed() { database_.undo(); }  // nothing once it is finished

    void finish() { database_.run("COMMIT"); }

private:
    ledger::Database& database_;
};

}  // namespace

std::optional<pages::Role> role_of(const std::string& text) {
    for (const auto role : {pages::Role::reader, pages::Role::accountant, pages::Role::controller, pages::Role::keeper})
        if (text == pages::role_name(role)) return role;
    return std::nullopt;
}

Users::Users(const std::string& ledger, IfMissing missing) {
    const std::string file = file_beside(ledger);
    if (!std::filesystem::exists(file)) {
        if (missing == IfMissing::refuse)
            refuse_user(
                fmt::format("{}: no users: found no such file; add one with `flutebook user add NAME --role "
                            "keeper`",
                            file));
        // Read by its owner alone, from the first byte on.
        const int made = ::open(file.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
        if (made >= 0) ::close(made);
    }
    database_ = std::make_unique<ledger::Database>(file, ledger::Database::Access::writing);
    database_->run("PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF");
    const auto version = database_->number("PRAGMA user_version");
    if (version == 0) database_->run((std::string("BEGIN IMMEDIATE;") + schema + "; COMMIT").c_str());
    if (version > 1)
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: of a newer version: found {}; use the newer program", file, version));
    static_cast<void>(nobodys_hash());
}

Users::~Users() = default;

std::vector<User> Users::all() {
    const std::lock_guard lock(mutex_);
    std::vector<User> result;
    Statement rows(*database_, "SELECT name, role, is_off FROM user ORDER BY name");
    while (rows.step())
        result.push_back({rows.text(0), role_of(rows.text(1)).value_or(pages::Role::nobody), rows.number(2) != 0});
    return result;
}

std::optional<Users::Kept> Users::find(const std::string& name) {
    Statement row(*database_, "SELECT role, is_off, hash FROM user WHERE name = ?");
    row.bind(1, name);
    if (!row.step()) return std::nullopt;
    const User user{name, role_of(row.text(0)).value_or(pages::Role::nobody), row.number(1) != 0};
    return Kept{user, row.text(2)};
}

std::optional<User> Users::active(const std::string& name) {
    const std::lock_guard lock(mutex_);
    const auto kept = find(name);
    if (!kept || kept->user.is_off) return std::nullopt;
    return kept->user;
}

void Users::expect(const std::string& name) {
    if (!find(name))
        refuse_user(
            fmt::format("user: no user has this name: found {}; `flutebook user list` has all", base::shown(name)));
}

void Users::note(const std::string& who, const std::string& deed, const std::string& address) {
    Statement row(*database_, "INSERT INTO log(at, who, deed, address) VALUES(?, ?, ?, ?)");
    const std::string at = fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(std::time(nullptr)));
    row.bind(1, at).bind(2, who).bind(3, deed).bind(4, address);
    row.run();
}

void Users::add(const std::string& name, pages::Role role, const Password& password, const std::string& who) {
    if (name.empty() || name.size() > longest_name || !base::is_plain_line(name) || name.front() == ' ' ||
        name.back() == ' ')
        refuse_user(fmt::format("user: is not a name: found {}; take at most {} plain characters", base::shown(name),
                                longest_name));
    check_password(password);
    const std::string hash = password_hash(password), text = pages::role_name(role);
    const std::lock_guard lock(mutex_);
    if (find(name))
        refuse_user(fmt::format("user: the name is taken: found {}; take another, or change its role or password",
                                base::shown(name)));
    Deed deed(*database_);
    Statement row(*database_, "INSERT INTO user(name, hash, role) VALUES(?, ?, ?)");
    row.bind(1, name).bind(2, hash).bind(3, text);
    row.run();
    note(who, fmt::format("added {} as {}", name, text), "");
    deed.finish();
}

void Users::change(const std::string& name, const char* sql, const std::string& value) {
    expect(name);
    Statement row(*database_, sql);
    row.bind(1, value).bind(2, name);
    row.run();
}

void Users::set_role(const std::string& name, pages::Role role, const std::string& who) {
    const std::string text = pages::role_name(role);
    const std::lock_guard lock(mutex_);
    Deed deed(*database_);
    change(name, "UPDATE user SET role = ?, is_off = 0 WHERE name = ?", text);
    note(who, fmt::format("made {} {}", name, text), "");
    deed.finish();
}

void Users::set_password(const std::string& name, const Password& password, const std::string& who) {
    check_password(password);
    const std::string hash = password_hash(password);
    const std::lock_guard lock(mutex_);
    Deed deed(*database_);
    change(name, "UPDATE user SET hash = ? WHERE name = ?", hash);
    note(who, fmt::format("gave {} another password", name), "");
    deed.finish();
}

void Users::turn_off(const std::string& name, const std::string& who) {
    const std::lock_guard lock(mutex_);
    Deed deed(*database_);
    expect(name);
    Statement row(*database_, "UPDATE user SET is_off = 1 WHERE name = ?");
    row.bind(1, name);
    row.run();
    note(who, fmt::format("turned {} off", name), "");
    deed.finish();
}

std::chrono::seconds Users::wait_left(const std::string& key) const {
    const auto found = failures_.find(key);
    const auto now = std::chrono::steady_clock::now();
    if (found == failures_.end() || found->second.until <= now) return std::chrono::seconds(0);
    return std::chrono::ceil<std::chrono::seconds>(found->second.until - now);
}

// Twice as long each time, to a quarter of an hour.
void Users::count_failure(const std::string& key) {
    if (failures_.size() >= most_failures) failures_.clear();
    Failures& failures = failures_[key];
    ++failures.count;
    if (failures.count < free_failures) return;
    const int doublings = std::min(failures.count - free_failures, 10);
    failures.until =
        std::chrono::steady_clock::now() + std::min(std::chrono::seconds(1 << doublings), std::chrono::seconds(900));
}

// Who, how often and until when, in turn; the clock is the machine's, the same in every process.
std::string Users::failures_in_bytes() {
    const std::lock_guard lock(mutex_);
    std::vector<std::string> texts;
    for (const auto& [key, failures] : failures_) {
        texts.push_back(key);
        texts.push_back(fmt::format("{} {}", failures.count, failures.until.time_since_epoch().count()));
    }
    return handover::in_bytes(texts);
}

void Users::take_failures(const std::string& bytes) {
    const std::vector<std::string> texts = handover::texts_of(bytes);
    const std::lock_guard lock(mutex_);
    for (std::size_t i = 0; i + 1 < texts.size(); i += 2) {
        std::istringstream numbers(texts[i + 1]);
        Failures failures;
        std::chrono::steady_clock::rep until = 0;
        if (!(numbers >> failures.count >> until)) handover::fail_to_read();
        failures.until = std::chrono::steady_clock::time_point(std::chrono::steady_clock::duration(until));
        failures_[texts[i]] = failures;
    }
}

std::variant<User, Users::Wrong, Users::Wait> Users::sign_in(const std::string& name, const Password& password,
                                                             const std::string& address) {
    const std::string by_name = "n" + name, by_address = "a" + address;
    const std::string& of_nobody = nobodys_hash();  // made for whoever comes first, whether or not the name is known
    std::optional<Kept> kept;
    {
        const std::lock_guard lock(mutex_);
        if (const auto left = std::max(wait_left(by_name), wait_left(by_address)); left.count() > 0) return Wait{left};
        kept = find(name);
    }
    const bool is_right = is_password_of(kept ? kept->hash : of_nobody, password) && kept && !kept->user.is_off;
    const std::lock_guard lock(mutex_);
    note(base::is_plain_line(name) ? name.substr(0, longest_name) : "?", is_right ? "signed in" : "failed to sign in",
         address);
    if (!is_right) {
        count_failure(by_name);
        count_failure(by_address);
        return Wrong{};
    }
    failures_.erase(by_name);
    failures_.erase(by_address);
    return kept->user;
}

}  // namespace flutebook::web
