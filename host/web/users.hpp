// Who may use the pages of a plant's server: names, password hashes and roles, in users.db beside the ledger and not in
// it: an auditor's copy must hold no hashes. What was done to it, and who signed in, stays in its log.
#pragma once

#include <chrono>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "host/pages/frame.hpp"
#include "host/web/secrets.hpp"

namespace flutebook::ledger {
class Database;
}

namespace flutebook::web {

struct User {
    std::string name;
    pages::Role role;
    bool is_off;
};

/// "reader" ... "keeper"; nothing where it is no role that a user has.
[[nodiscard]] std::optional<pages::Role> role_of(const std::string& text);

/// Any thread. What it refuses is thrown as InputError (request), what fails on the disk as LedgerError. A deed of
/// `who` is done and in the log, or neither.
class Users {
public:
    enum class IfMissing { refuse, create };
    /// `ledger` is the ledger's file.
    Users(const std::string& ledger, IfMissing missing);
    ~Users();

    [[nodiscard]] std::vector<User> all();
    /// Nothing where there is none, or where it is off.
    [[nodiscard]] std::optional<User> active(const std::string& name);

    void add(const std::string& name, pages::Role role, const Password& password, const std::string& who);
    void set_role(const std::string& name, pages::Role role, const std::string& who);
    void set_password(const std::string& name, const Password& password, const std::string& who);
    /// The person can no longer sign in; what was done under the name stays.
    void turn_off(const std::string& name, const std::string& who);

    /// Takes as long whether the name, the password or neither is right. Tries that failed make the next one wait: by
    /// name, and by address.
    struct Wait {
        std::chrono::seconds left;
    };
    struct Wrong {};
    [[nodiscard]] std::variant<User, Wrong, Wait> sign_in(const std::string& name, const Password& password,
                                                          const std::string& address);

    /// Who has to wait for how long, for another process of this machine.
    [[nodiscard]] std::string failures_in_bytes();
    /// Throws std::runtime_error where another wrote it.
    void take_failures(const std::string& bytes);

private:
    struct Kept {
        User user;
        std::string hash;  // of the password
    };
    struct Failures {
        int count = 0;
        std::chrono::steady_clock::time_point until{};
    };
    void expect(const std::string& name);
    void note(const std::string& who, const std::string& deed, const std::string& address);
    void change(const std::string& name, const char* sql, const std::string& value);
    [[nodiscard]] std::optional<Kept> find(const std::string& name);
    [[nodiscard]] std::chrono::seconds wait_left(const std::string& key) const;
    void count_failure(const std::string& key);

    std::mutex mutex_;
    std::unique_ptr<ledger::Database> database_;
    std::map<std::string, Failures> failures_;
};

}  // namespace flutebook::web
