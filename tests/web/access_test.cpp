// Who may do what: keys, sessions, users, roles, and forms that stand on pages of others.
#include <catch2/catch.hpp>
#include <chrono>
#include <csignal>
#include <fstream>
#include <thread>
#include <type_traits>

#include "host/web/routes.hpp"
#include "host/web/users.hpp"
#include "ledger/store/database.hpp"
#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

const std::string host = "flutebook.example", password = "three plain words";

void add_user(const std::string& plant, const std::string& name, pages::Role role) {
    web::Users(plant + "/ledger.db", web::Users::IfMissing::create).add(name, role, {password}, "test");
}

// A plant's server behind a proxy, with a user of each role, called like it.
struct Proxied {
    PlantCopy plant;
    std::unique_ptr<Served> served;

    Proxied() {
        for (const auto role :
             {pages::Role::reader, pages::Role::accountant, pages::Role::controller, pages::Role::keeper})
            add_user(plant.folder(), pages::role_name(role), role);
        const std::string port = std::to_string(19500 + ::getpid() % 12000);
        served = std::make_unique<Served>(plant.folder(),
                                          std::vector<std::string>{"--port", port, "--host", host, "--behind-proxy"});
    }

    [[nodiscard]] Browser nobody() const { return Browser(served->port(), host); }
    [[nodiscard]] Browser signed_in(const std::string& name) const {
        Browser browser = nobody();
        REQUIRE(browser.post("/session", {{"name", name}, {"password", password}}).status == 303);
        return browser;
    }
};

// A path that the route matches; what stands in its places is there nowhere.
std::string path_of(const web::Route& route) {
    std::string path(route.pattern);
    for (std::size_t at = path.find("{}"); at != std::string::npos; at = path.find("{}")) path.replace(at, 2, "none");
    return path;
}

int status_for(Browser& browser, const web::Route& route) {
    return route.method == "GET" ? browser.get(path_of(route), "application/json").status
                                 : browser.post(path_of(route), {}, "application/json").status;
}

}  // namespace

TEST_CASE("every route refuses who has too small a role, and lets in who has the least that it asks for") {
    const Proxied one;
    Browser nobody = one.nobody();
    for (const web::Route& route : web::routes()) {
        INFO(route.method << " " << route.pattern);
        if (route.least != pages::Role::nobody) CHECK(status_for(nobody, route) == 401);
    }
    for (const auto role :
         {pages::Role::reader, pages::Role::accountant, pages::Role::controller, pages::Role::keeper}) {
        Browser browser = one.signed_in(pages::role_name(role));
        for (const web::Route& route : web::routes()) {
            if (route.pattern.substr(0, 8) == "/session") continue;
            INFO(pages::role_name(role) << ": " << route.method << " " << route.pattern);
            const int status = status_for(browser, route);
            CHECK((status == 403) == (role < route.least));
            CHECK(status != 401);
        }
    }
}

TEST_CASE("each route's table entry is fit: what changes something needs a role, a token and a form") {
    for (const web::Route& route : web::routes()) {
        INFO(route.method << " " << route.pattern);
        const bool changes = route.method == "POST";
        CHECK(changes == (route.proof != web::Route::Proof::none));
        CHECK(changes == (route.most_bytes > 0));
        if (changes && route.pattern != "/session") CHECK(route.least > pages::Role::nobody);
        if (route.method == "GET" && route.least == pages::Role::nobody)
            CHECK((route.pattern == "/" || route.pattern == "/session" || route.pattern == "/assets/{}"));
    }
}

TEST_CASE("the address that the terminal shows works once, and another takes its place") {
    const PlantCopy plant;
    Served served(plant.folder());
    const std::string first = served.address();
    Browser browser(served);
    CHECK(browser.get("/quotes").status == 200);
    Browser other(served.port(), "127.0.0.1:" + std::to_string(served.port()));
    CHECK(other.get(first.substr(first.find("/session"))).status == 401);
    CHECK(other.get("/quotes").status == 401);
    CHECK(served.address() != first);
    Browser second(served);
    CHECK(second.get("/quotes").status == 200);
    CHECK(browser.get("/quotes").status == 200);
}

TEST_CASE("a session that was signed out of is over, and signing in makes another") {
    const Proxied one;
    Browser browser = one.signed_in("reader");
    const std::string before = browser.cookie();
    CHECK(before.rfind("__Host-flutebook=", 0) == 0);
    CHECK(browser.get("/quotes").status == 200);
    REQUIRE(browser.post("/session", {{"name", "reader"}, {"password", password}}).status == 303);
    CHECK(browser.cookie() != before);
    const std::string head = "GET /quotes HTTP/1.1\r\nHost: " + host + "\r\nAccept: application/json\r\nCookie: ";
    CHECK(ask_raw(one.served->port(), head + before + "\r\n\r\n").status == 401);
    const std::string now = browser.cookie();
    CHECK(browser.post("/session/end", {}).status == 303);
    CHECK(ask_raw(one.served->port(), head + now + "\r\n\r\n").status == 401);
}

TEST_CASE("a session's secret that somebody made up is nobody's") {
    const Proxied one;
    const Reply reply = ask_raw(
        one.served->port(), "GET /session HTTP/1.1\r\nHost: " + host + "\r\nCookie: __Host-flutebook=chosen\r\n\r\n");
    CHECK(reply.header("set-cookie").empty());
    CHECK(reply.body.find("Sign out") == std::string::npos);
}

TEST_CASE("a cookie goes to this host alone, by TLS alone, and to no script") {
    const Proxied one;
    Browser browser = one.nobody();
    const Reply reply = browser.post("/session", {{"name", "reader"}, {"password", password}});
    const std::string cookie = reply.header("set-cookie");
    for (const char* part : {"__Host-flutebook=", "; Path=/", "; HttpOnly", "; SameSite=Strict", "; Secure"})
        CHECK(cookie.find(part) != std::string::npos);
    CHECK(cookie.find("Domain") == std::string::npos);
    CHECK_FALSE(reply.header("strict-transport-security").empty());
}

TEST_CASE("a form that stands on a page of another site changes nothing") {
    const PlantCopy plant;
    Served served(plant.folder());
    Browser browser(served);
    const std::string token = browser.token();
    const std::string type = "Content-Type: application/x-www-form-urlencoded\r\n";
    const std::string ours = "Origin: " + browser.origin() + "\r\n";
    const std::string form = "token=" + token + "&line=" + encoded("0201 400x300x250 B-140 500 18%");
    const auto status = [&](const std::string& headers, const std::string& body) {
        return browser.send("POST /quotes", type + headers, body).status;
    };
    CHECK(status("Origin: https://elsewhere.example\r\n", form) == 403);
    CHECK(status("Origin: null\r\n", form) == 403);
    CHECK(status(ours + "Sec-Fetch-Site: cross-site\r\n", form) == 403);
    CHECK(status(ours + "Sec-Fetch-Site: same-site\r\n", form) == 403);
    CHECK(status(ours, "line=0201") == 403);
    CHECK(status(ours, "token=" + std::string(64, '0') + "&line=0201") == 403);
    CHECK(browser.send("POST /quotes", "Content-Type: text/plain\r\n" + ours, form).status == 415);
    CHECK(browser.get("/quotes", "application/json").body.find("Q000001") == std::string::npos);
    CHECK(status(ours, form) == 303);
}

TEST_CASE("a sign-in that does not say where its form stood is refused") {
    const Proxied one;
    Browser browser = one.nobody();
    const std::string form = "name=reader&password=" + encoded(password);
    const std::string type = "Content-Type: application/x-www-form-urlencoded\r\n";
    CHECK(browser.send("POST /session", type, form).status == 403);
    CHECK(browser.send("POST /session", type + "Origin: https://elsewhere.example\r\n", form).status == 403);
    CHECK(browser.cookie().empty());
}

TEST_CASE("wrong passwords make the next try wait, also with the right one") {
    const Proxied one;
    Browser browser = one.nobody();
    for (int i = 0; i < 3; ++i)
        CHECK(browser.post("/session", {{"name", "reader"}, {"password", "a wrong one"}}).status == 401);
    const Reply reply = browser.post("/session", {{"name", "reader"}, {"password", password}});
    CHECK(reply.status == 429);
    CHECK_FALSE(reply.header("retry-after").empty());
    const Reply unknown = browser.post("/session", {{"name", "nobody"}, {"password", "a wrong one"}});
    CHECK(unknown.status == 429);
}

TEST_CASE("wrong passwords before a reload count after it") {
    const Proxied one;
    Browser keeper = one.signed_in("keeper");
    Browser browser = one.nobody();
    const auto status_of_a_try = [&] {
        return browser.post("/session", {{"name", "reader"}, {"password", "a wrong one"}}).status;
    };
    for (int i = 0; i < 3; ++i) CHECK(status_of_a_try() == 401);
    CHECK(keeper.post("/reload", {}).status == 303);
    // Once the wait after the third is over, a failure is the fourth: the next try has to wait at once.
    int status = status_of_a_try();
    for (const auto until = std::chrono::steady_clock::now() + std::chrono::seconds(30);
         status == 429 && std::chrono::steady_clock::now() < until; status = status_of_a_try())
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    CHECK(status == 401);
    CHECK(status_of_a_try() == 429);
}

TEST_CASE("a role that changed, or was taken, counts at the next request") {
    const Proxied one;
    Browser browser = one.signed_in("controller");
    CHECK(browser.get("/documents").status == 200);
    web::Users users(one.plant.folder() + "/ledger.db", web::Users::IfMissing::refuse);
    users.set_role("controller", pages::Role::reader, "test");
    CHECK(browser.get("/documents").status == 403);
    CHECK(browser.get("/quotes").status == 200);
    users.turn_off("controller", "test");
    CHECK(browser.get("/quotes", "application/json").status == 401);
}

TEST_CASE("who saved a quote is the person who signed in") {
    const Proxied one;
    Browser browser = one.signed_in("accountant");
    REQUIRE(browser.post("/quotes", {{"line", "0201 400x300x250 B-140 500 18%"}}).status == 303);
    CHECK(browser.get("/quotes", "application/json").body.find("\"who\": \"accountant\"") != std::string::npos);
}

TEST_CASE("the log of users is only added to") {
    const Proxied one;
    const std::string file = one.plant.folder() + "/users.db";
    const auto shell = [&](const std::string& sql) {
        Child child{{"/usr/bin/sqlite3", file, sql}};
        return run(child);
    };
    CHECK(shell("DELETE FROM log").exit_code != 0);
    CHECK(shell("UPDATE log SET who = 'x'").exit_code != 0);
    CHECK(shell("SELECT count(*) FROM log").output == "4\n");
    CHECK(shell("SELECT hash FROM user").output.rfind("$argon2id$", 0) == 0);
}

TEST_CASE("what cannot be logged is not done to a user") {
    const PlantCopy plant;
    add_user(plant.folder(), "Vera", pages::Role::keeper);
    web::Users users(plant.folder() + "/ledger.db", web::Users::IfMissing::refuse);
    ledger::Database(plant.folder() + "/users.db", ledger::Database::Access::writing)
        .run("CREATE TRIGGER full BEFORE INSERT ON log BEGIN SELECT RAISE(ABORT, 'full'); END");
    CHECK_THROWS_AS(users.turn_off("Vera", "test"), LedgerError);
    CHECK(users.active("Vera").has_value());
}

TEST_CASE("a password is taken for no name, nor a name for a password") {
    using Add = decltype(&web::Users::add);
    CHECK(std::is_invocable_v<Add, web::Users&, std::string, pages::Role, web::Password, std::string>);
    CHECK_FALSE(std::is_invocable_v<Add, web::Users&, web::Password, pages::Role, std::string, std::string>);
}

TEST_CASE("flutebook user takes a password from standard input, and refuses a short one") {
    const PlantCopy plant;
    const auto shell = [&](const std::string& words, const std::string& input) {
        Child child{{"/bin/sh", "-c",
                     "printf '%s\\n' '" + input + "' | '" FLUTEBOOK_PROGRAM "' --plant '" + plant.folder() + "' user " +
                         words}};
        return run(child);
    };
    CHECK(shell("add Vera --role controller", "short").exit_code == 1);
    CHECK(shell("add Vera --role chief", password).exit_code == 2);
    CHECK(shell("add Vera --role controller", password).output == "added Vera as controller\n");
    CHECK(shell("add Vera", password).exit_code == 1);
    CHECK(shell("role Vera keeper", "").output == "Vera is keeper now\n");
    CHECK(shell("off Vera", "").exit_code == 0);
    CHECK(shell("list", "").output == "keeper     Vera (off)\n");
    CHECK(shell("off Vara", "").exit_code == 1);
}

TEST_CASE("behind a proxy without users nobody is served") {
    const PlantCopy plant;
    const Ended ended = ask_at(plant.folder(), {"serve", "--host", host, "--behind-proxy"});
    CHECK(ended.exit_code == 1);
    CHECK(ended.errors.find("flutebook user add") != std::string::npos);
    CHECK(ask_at(plant.folder(), {"serve", "--host", host}).exit_code == 2);
}
