// Changed plant files, taken while the server serves: nobody is refused, nobody is signed out, and files that are not
// fit change nothing.
#include <atomic>
#include <catch2/catch.hpp>
#include <csignal>
#include <memory>
#include <nlohmann/json.hpp>
#include <thread>

#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook::fixture;
using namespace std::chrono_literals;

namespace {

const std::string draft = "/quotes/new?line=" + encoded("0201 400x300x250 B-140 500 1000 18% 2026-10-15");

struct Reloaded {
    PlantCopy plant;
    Served served{plant.folder()};
    Browser browser{served};

    [[nodiscard]] std::string quoted() { return browser.get(draft, "application/json").body; }
    [[nodiscard]] std::string quoted_by_command() const {
        return ask_at(plant.folder(), {"quote", "0201 400x300x250 B-140 500 1000 18% 2026-10-15", "--json"}).output;
    }
    void change() { plant.replace("papers.yaml", "moisture: 0.08", "moisture: 0.07"); }
    void hang_up() const { REQUIRE(::kill(served.process(), SIGHUP) == 0); }
    /// Asks until the page is another one.
    [[nodiscard]] bool becomes(const std::string& target, const std::string& holds) {
        for (const auto until = std::chrono::steady_clock::now() + 60s; std::chrono::steady_clock::now() < until;
             std::this_thread::sleep_for(20ms))
            if (browser.get(target).body.find(holds) != std::string::npos) return true;
        return false;
    }
};

}  // namespace

TEST_CASE("a keeper reloads the plant: its new files count, the address stays and the person is still signed in") {
    Reloaded one;
    const std::string before = one.quoted(), cookie = one.browser.cookie(), token = one.browser.token();
    const std::string unused = one.served.address();
    one.change();
    const Reply reply = one.browser.post("/reload", {});
    CHECK(reply.status == 303);
    const std::string after = one.quoted();
    CHECK(after != before);
    CHECK(after == one.quoted_by_command());
    CHECK(one.browser.cookie() == cookie);
    CHECK(one.browser.post("/quotes", {{"token", token}, {"line", "0201 400x300x250 B-140 500 18%"}}).status == 303);
    CHECK(one.browser.get("/documents").body.find("papers.yaml changed") == std::string::npos);
    CHECK(one.served.address() == unused);
    Browser other(one.served);
    CHECK(other.get("/quotes").status == 200);
    CHECK(one.served.end(SIGTERM) == 0);
    CHECK(one.served.errors().empty());
}

TEST_CASE("a plant that is not fit is refused with its place, on that page and on every one after it") {
    Reloaded one;
    const std::string before = one.quoted();
    static_cast<void>(one.plant.write("papers.yaml", "nonsense: ["));
    const Reply reply = one.browser.post("/reload", {});
    CHECK(reply.status == 422);
    CHECK(reply.body.find("papers.yaml:") != std::string::npos);
    CHECK(one.browser.get("/documents").body.find("reload: refused: " + one.plant.folder() + "/papers.yaml:") !=
          std::string::npos);
    CHECK(one.browser.get("/documents").body.find("action=\"/reload\"") != std::string::npos);
    CHECK(one.quoted() == before);
    CHECK(one.served.is_alive());
}

TEST_CASE("a document that was looked at before a reload is posted after it") {
    Reloaded one;
    const std::string bales = "ref,date,shift,grade,kg\nB1,2026-10-01,early,4.01.00,512\n";
    const std::string document = one.browser.post_csv("/documents?name=b.csv", bales).header("location");
    one.change();
    CHECK(one.browser.post("/reload", {}).status == 303);
    CHECK(one.browser.post(document, {}).status == 200);
}

TEST_CASE("a file that is saved faulty between trial and new start is refused, and the server goes on") {
    Reloaded one;
    const std::string before = one.quoted();
    // A request that is under way holds the new start back until it is whole.
    Wire held(one.served.port());
    REQUIRE(held.send("GET /session HTTP/1.1\r\n"));
    static_cast<void>(one.browser.get("/quotes"));
    one.change();
    CHECK(one.browser.post("/reload", {}).status == 303);
    static_cast<void>(one.plant.write("boards.yaml", "nonsense: ["));
    REQUIRE(held.send("Host: " + one.browser.origin().substr(7) + "\r\n\r\n"));
    CHECK(held.reply().status == 200);
    CHECK(one.becomes("/documents", "reload: refused: " + one.plant.folder() + "/boards.yaml:"));
    CHECK(one.served.errors().find("reload: refused: " + one.plant.folder() + "/boards.yaml:") != std::string::npos);
    CHECK(one.quoted() == before);
    CHECK(one.served.is_alive());
}

TEST_CASE("a hang-up reloads the plant, and tells a faulty one on standard error and on every page") {
    Reloaded one;
    static_cast<void>(one.plant.write("boards.yaml", "nonsense: ["));
    one.hang_up();
    CHECK(one.becomes("/documents", "reload: refused: " + one.plant.folder() + "/boards.yaml:"));
    CHECK(one.served.errors().find("reload: refused: " + one.plant.folder() + "/boards.yaml:") != std::string::npos);
    const PlantCopy fresh;
    one.plant.write("boards.yaml", run({{"/bin/cat", fresh.folder() + "/boards.yaml"}}).output);
    one.plant.replace("plant.yaml", "\nplant: ", "\nplant: Renamed ");
    one.hang_up();
    CHECK(one.becomes("/documents", "Renamed"));
    CHECK(one.browser.get("/documents").body.find("reload: refused") == std::string::npos);
}

TEST_CASE("all requests that are sent during reloads are answered, on new connections and on kept ones") {
    Reloaded one;
    constexpr int senders = 4;
    std::atomic<bool> is_over{false};
    std::atomic<int> asked{0}, answered{0};
    std::vector<std::thread> threads;
    for (int i = 0; i < senders; ++i)
        threads.emplace_back([&, own = one.browser]() mutable {
            while (!is_over) {
                ++asked;
                if (own.get("/quotes").status == 200) ++answered;
            }
        });
    // Nothing was asked on these before the reload, or one request was.
    std::vector<std::unique_ptr<Wire>> kept;
    const std::string ask = "GET /session HTTP/1.1\r\nHost: " + one.browser.origin().substr(7) + "\r\n\r\n";
    for (int i = 0; i < 20; ++i) {
        kept.push_back(std::make_unique<Wire>(one.served.port()));
        if (i % 2 == 0) continue;
        REQUIRE(kept.back()->send(ask));
        REQUIRE(kept.back()->reply().status == 200);
    }
    for (int round = 0; round < 3; ++round) {
        const std::string name = "Round" + std::to_string(round);
        one.plant.replace("plant.yaml", "\nplant: ", "\nplant: " + name + " ");
        CHECK(one.browser.post("/reload", {}).status == 303);
        CHECK(one.browser.get("/quotes").body.find(name) != std::string::npos);
    }
    for (const auto& wire : kept) {
        REQUIRE(wire->send(ask));
        CHECK(wire->reply().status == 200);
    }
    while (asked < 100) std::this_thread::sleep_for(1ms);
    is_over = true;
    for (std::thread& thread : threads) thread.join();
    CHECK(answered == asked);
}

TEST_CASE("what is being posted when the plant is reloaded is posted and acknowledged") {
    Reloaded one;
    std::string bales = "ref,date,shift,grade,kg\n";
    for (int i = 0; i < 2000; ++i) bales += "B" + std::to_string(i) + ",2026-10-01,early,4.01.00,512\n";
    const std::string document = one.browser.post_csv("/documents?name=b.csv", bales).header("location");
    static_cast<void>(one.browser.token());
    int status = 0;
    std::thread sender([&, own = one.browser]() mutable { status = own.post(document, {}).status; });
    CHECK(one.browser.post("/reload", {}).status == 303);
    sender.join();
    CHECK(status == 200);
    const auto proof = nlohmann::json::parse(ask_at(one.plant.folder(), {"verify", "--json"}).output);
    CHECK(proof["holds"] == true);
}

TEST_CASE("a plant is tried as it would be served, and nothing is served") {
    PlantCopy plant;
    const Ended fit = ask_at(plant.folder(), {"serve", "--try"});
    CHECK(fit.exit_code == 0);
    CHECK(fit.output.empty());
    static_cast<void>(plant.write("papers.yaml", "nonsense: ["));
    const Ended unfit = ask_at(plant.folder(), {"serve", "--try"});
    CHECK(unfit.exit_code == 3);
    CHECK(unfit.errors.find("papers.yaml:") != std::string::npos);
}
