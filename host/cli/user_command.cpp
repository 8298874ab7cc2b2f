// `user`: who may sign in at the plant's server.
#include <fmt/format.h>
#include <termios.h>
#include <unistd.h>

#include <iostream>

#include "host/base/quoted_text.hpp"
#include "host/cli/commands.hpp"
#include "host/web/users.hpp"

namespace flutebook::cli {

namespace {

using web::Users;

constexpr const char* user_footer =
    R"(Users sign in where `flutebook serve` runs behind a proxy. The file users.db beside the ledger holds
their names and roles, only a hash of each password, and a log of sign-ins and changes.

  reader      sees quotes, months, models and the plant's files
  accountant  also saves and marks quotes, takes orders
  controller  also posts documents, reverses entries, closes months
  keeper      also sees the users, reloads changed plant files

A password is typed without being shown, or read from standard input if that is not a terminal.

Examples:
  flutebook user add "M. Example" --role controller
  flutebook user role "M. Example" reader
  flutebook user password "M. Example" < new-password
  flutebook user off "M. Example"
  flutebook user list)";

struct UserCommand {
    std::string name;
    pages::Role role = pages::Role::reader;
};

// The terminal shows nothing of what is typed while this lives.
class NoEcho {
public:
    NoEcho() : is_terminal_(::tcgetattr(STDIN_FILENO, &before_) == 0) {
        termios silent = before_;
        silent.c_lflag &= ~static_cast<tcflag_t>(ECHO);
        if (is_terminal_) ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &silent);
    }
    NoEcho(const NoEcho&) = delete;
    NoEcho& operator=(const NoEcho&) = delete;
    ~NoEcho() {
        if (!is_terminal_) return;
        ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &before_);
        complain({""});
    }

    [[nodiscard]] bool is_terminal() const { return is_terminal_; }

private:
    termios before_{};
    bool is_terminal_;
};

web::Password read_password() {
    const NoEcho silence;
    if (silence.is_terminal()) complain({"password:"});
    web::Password password;
    std::getline(std::cin, password.text);
    return password;
}

Reader read_role(pages::Role& value) {
    return [&value](const std::string& text) -> std::string {
        const auto role = web::role_of(text);
        if (!role)
            return fmt::format("is not a role: {}; write reader, accountant, controller or keeper", base::shown(text));
        value = *role;
        return {};
    };
}

ExitCode list_users(const RunContext& context) {
    for (const web::User& user : Users(context.ledger, Users::IfMissing::refuse).all())
        context.output.write(
            fmt::format("{:<11}{}{}\n", pages::role_name(user.role), user.name, user.is_off ? " (off)" : ""));
    return ExitCode::done;
}

using Deed = std::string (*)(Users&, const UserCommand&, const std::string& who);

struct SubcommandHelp {
    const char *name, *help, *example;
};

// One subcommand that changes a user; `deed` answers with what was done.
Command& add_deed(Command& user, const SubcommandHelp& help, const std::shared_ptr<UserCommand>& asked,
                  Users::IfMissing missing, Deed deed) {
    Command& command = user.add(help.name, help.help, std::string("Examples:\n  flutebook user ") + help.example);
    command.argument("NAME", "the person's name, as the ledger keeps it", read_line(asked->name));
    command.run_with([asked, missing, deed](const RunContext& context) {
        Users users(context.ledger, missing);
        context.output.write(deed(users, *asked, context.person()) + "\n");
        return ExitCode::done;
    });
    return command;
}

}  // namespace

void add_user(Command& program) {
    Command& user = program.add("user", "say who may sign in at the server", user_footer);
    user.require_subcommand();
    const auto asked = std::make_shared<UserCommand>();
    add_deed(user, {"add", "add a user", "add \"M. Example\" --role controller"}, asked, Users::IfMissing::create,
             [](Users& users, const UserCommand& one, const std::string& who) {
                 users.add(one.name, one.role, read_password(), who);
                 return fmt::format("added {} as {}", one.name, pages::role_name(one.role));
             })
        .option("--role", "ROLE", "reader, accountant, controller or keeper; reader where it is not given",
                read_role(asked->role));
    add_deed(user, {"role", "give a user another role, also one that is off", "role \"M. Example\" reader"}, asked,
             Users::IfMissing::refuse,
             [](Users& users, const UserCommand& one, const std::string& who) {
                 users.set_role(one.name, one.role, who);
                 return fmt::format("{} is {} now", one.name, pages::role_name(one.role));
             })
        .argument("ROLE", "reader, accountant, controller or keeper", read_role(asked->role));
    add_deed(user, {"password", "give a user another password", "password \"M. Example\" < new-password"}, asked,
             Users::IfMissing::refuse, [](Users& users, const UserCommand& one, const std::string& who) {
                 users.set_password(one.name, read_password(), who);
                 return fmt::format("{} has another password now", one.name);
             });
    add_deed(user, {"off", "stop a user from signing in", "off \"M. Example\""}, asked, Users::IfMissing::refuse,
             [](Users& users, const UserCommand& one, const std::string& who) {
                 users.turn_off(one.name, who);
                 return fmt::format("{} can no longer sign in", one.name);
             });
    user.add("list", "list the users", "Examples:\n  flutebook user list").run_with(list_users);
}

}  // namespace flutebook::cli
