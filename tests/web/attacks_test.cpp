// What a hostile or broken sender may try: each is answered with its reason, and the server goes on.
#include <catch2/catch.hpp>
#include <fstream>
#include <memory>
#include <sstream>
#include <thread>

#include "host/sandbox/build.hpp"
#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook::fixture;
using namespace std::chrono_literals;

namespace {

constexpr long most_memory_kb = 150'000 + static_cast<long>(flutebook::sandbox::kept_when_freed / 1024);

struct Attacked {
    PlantCopy plant;
    Served served{plant.folder()};
    Browser browser{served};

    [[nodiscard]] std::string host() const { return "Host: 127.0.0.1:" + std::to_string(served.port()) + "\r\n"; }
    [[nodiscard]] int status(const std::string& bytes) const { return ask_raw(served.port(), bytes).status; }
    /// A whole request whose head has these lines too.
    [[nodiscard]] int with(const std::string& lines, const std::string& first = "GET /session HTTP/1.1") const {
        return status(first + "\r\n" + host() + lines + "\r\n");
    }
    [[nodiscard]] bool goes_on() { return browser.get("/quotes").status == 200; }
    [[nodiscard]] long peak_memory_kb() const {
        std::ifstream file("/proc/" + std::to_string(served.process()) + "/status");
        for (std::string line; std::getline(file, line);)
            if (line.rfind("VmHWM:", 0) == 0) return std::stol(line.substr(6));
        return -1;
    }
};

}  // namespace

TEST_CASE("a request for another host is refused, whatever it asks for") {
    Attacked one;
    CHECK(one.status("GET /session HTTP/1.1\r\n\r\n") == 421);
    CHECK(one.status("GET /session HTTP/1.1\r\nHost: elsewhere.example\r\n\r\n") == 421);
    CHECK(one.status("GET /session HTTP/1.1\r\n" + one.host() + one.host() + "\r\n") == 421);
    CHECK(one.with("") == 200);
}

TEST_CASE("a message whose end could be read in two ways is refused") {
    Attacked one;
    CHECK(one.with("Content-Length: 3\r\nContent-Length: 4\r\n", "POST /quotes HTTP/1.1") == 400);
    CHECK(one.with("Content-Length: 3\r\nTransfer-Encoding: chunked\r\n", "POST /quotes HTTP/1.1") == 400);
    CHECK(one.with("Transfer-Encoding: chunked\r\n", "POST /quotes HTTP/1.1") == 411);
    CHECK(one.with("Content-Length: -3\r\n", "POST /quotes HTTP/1.1") == 400);
    CHECK(one.status("GET /session HTTP/1.1\nHost: 127.0.0.1\n\n") == 400);
    CHECK(one.with("X-A: b\r\n c: d\r\n") == 400);
    CHECK(one.with("X-A : b\r\n") == 400);
}

TEST_CASE("a body that is compressed, announced or chunked is not taken") {
    Attacked one;
    CHECK(one.with("Content-Encoding: gzip\r\nContent-Length: 4\r\n", "POST /quotes HTTP/1.1") == 415);
    CHECK(one.with("Expect: 100-continue\r\nContent-Length: 4\r\n", "POST /quotes HTTP/1.1") == 417);
    CHECK(one.with("Content-Length: 5\r\n") == 413);
    const std::string form =
        "Origin: " + one.browser.origin() + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: ";
    CHECK(one.with(form + "18446744073709551615\r\n", "POST /session HTTP/1.1") == 413);
    CHECK(one.with(form + "18446744073709551616\r\n", "POST /session HTTP/1.1") == 400);
}

TEST_CASE("chunks without end, and one that claims to be huge, are refused before they are read") {
    Attacked one;
    const std::string head =
        "POST /quotes HTTP/1.1\r\n" + one.host() + "Content-Type: text/csv\r\nTransfer-Encoding: chunked\r\n\r\n";
    Wire endless(one.served.port());
    bool is_taken = endless.send(head);
    const std::string chunk = "10000\r\n" + std::string(0x10000, 'a') + "\r\n";
    for (int i = 0; i < 1024 && is_taken; ++i) is_taken = endless.send(chunk);
    CHECK(endless.reply().status == 411);
    CHECK_FALSE(is_taken);
    CHECK(one.status(head + "ffffffffffffffff\r\na") == 411);
    CHECK(one.goes_on());
    CHECK(one.peak_memory_kb() < most_memory_kb);
}

TEST_CASE("many ranges, a long path and equal signs in a query are taken for what they are") {
    Attacked one;
    std::string ranges = "Range: bytes=0-0";
    for (int i = 0; i < 1'900; ++i) ranges += ",0-0";
    CHECK(one.with(ranges + "\r\n") == 200);
    const auto begun = std::chrono::steady_clock::now();
    CHECK(one.with("", "GET /quotes/" + std::string(8'000, 'a') + " HTTP/1.1") == 401);
    CHECK(one.with("", "GET /" + std::string(8'000, '/') + " HTTP/1.1") == 400);
    CHECK(std::chrono::steady_clock::now() - begun < 5s);
    CHECK(one.browser.get("/quotes/new?line=a=b=c").body.find("\"a=b=c\"") != std::string::npos);
}

TEST_CASE("nothing that is sent becomes a header of the answer") {
    Attacked one;
    for (const char* target : {"/quotes/Q000001%0d%0aX-Made:%20up", "/quotes?limit=1%0d%0aX-Made:%20up",
                               "/months/2026-10%0d%0aX-Made:%20up/closing", "/quotes/%0d%0aX-Made:%20up.xlsx"}) {
        INFO(target);
        CHECK(one.browser.get(target).header("x-made").empty());
    }
    const Reply dry = one.browser.post_csv("/documents?name=a.csv%0d%0aX-Made:%20up",
                                           "ref,date,shift,grade,kg\nB1,2026-10-01,early,4.01.00,1\n");
    CHECK(dry.header("x-made").empty());
}

TEST_CASE("a target that is no path of ours is refused") {
    Attacked one;
    CHECK(one.with("", "GET http://127.0.0.1/session HTTP/1.1") == 400);
    CHECK(one.with("", "GET /quotes/%2e%2e/%2e%2e/etc HTTP/1.1") == 400);
    CHECK(one.with("", "GET /quotes/%00 HTTP/1.1") == 400);
    CHECK(one.with("", "GET /quotes/%ff HTTP/1.1") == 400);
    CHECK(one.with("", "GET /quotes/%4 HTTP/1.1") == 400);
    CHECK(one.with("", "GET //quotes HTTP/1.1") == 400);
    CHECK(one.with("", "GET /nowhere HTTP/1.1") == 404);
}

TEST_CASE("a method that a page does not have is refused with those that it has") {
    Attacked one;
    CHECK(one.with("", "TRACE /session HTTP/1.1") == 501);
    CHECK(one.with("", "CONNECT 127.0.0.1:80 HTTP/1.1") == 501);
    CHECK(one.with("", "BREW /session HTTP/1.1") == 501);
    const Reply reply = ask_raw(one.served.port(), "DELETE /quotes HTTP/1.1\r\n" + one.host() + "\r\n");
    CHECK(reply.status == 405);
    CHECK(reply.header("allow") == "GET, HEAD, POST");
}

TEST_CASE("a head without end and a body without end are refused before they are kept") {
    Attacked one;
    CHECK(one.status("GET /" + std::string(64'000'000, 'a')) == 431);
    std::string many = "GET /session HTTP/1.1\r\n" + one.host();
    for (int i = 0; i < 300'000; ++i) many += "X-" + std::to_string(i) + ": 1\r\n";
    CHECK(one.status(many + "\r\n") == 431);
    std::string some;
    for (int i = 0; i < 60; ++i) some += "X-" + std::to_string(i) + ": 1\r\n";
    CHECK(one.with(some) == 431);
    const std::string head =
        "Accept: */*\r\nContent-Type: application/x-www-form-urlencoded\r\nOrigin: " + one.browser.origin() + "\r\n";
    CHECK(one.browser.send("POST /quotes", head, std::string(2'000'000, 'a')).status == 413);
    const std::string csv = "Content-Type: text/csv\r\nOrigin: " + one.browser.origin() + "\r\n";
    CHECK(one.browser.send("POST /documents", csv, std::string(17'000'000, 'a')).status == 413);
    CHECK(one.goes_on());
    CHECK(one.peak_memory_kb() < most_memory_kb);
}

TEST_CASE("clients that send a byte a second are cut off, and others are answered meanwhile") {
    Attacked one;
    std::vector<std::unique_ptr<Wire>> slow;
    for (int i = 0; i < 200; ++i) slow.push_back(std::make_unique<Wire>(one.served.port()));
    const auto begun = std::chrono::steady_clock::now();
    const std::string drip = "GET /session HTTP/1.1\r\n";
    bool are_answered = true;
    for (std::size_t second = 0; second < 8; ++second) {
        for (const auto& wire : slow) static_cast<void>(wire->send(drip.substr(second, 1)));
        are_answered = are_answered && one.goes_on();
        std::this_thread::sleep_for(1s);
    }
    CHECK(are_answered);
    std::size_t cut_off = 0;
    for (const auto& wire : slow) {
        const Reply reply = wire->reply(8s);
        cut_off += reply.status == 408 ? 1u : 0u;
    }
    CHECK(cut_off == slow.size());
    CHECK(std::chrono::steady_clock::now() - begun < 30s);
}

TEST_CASE("more connections than the server keeps are told so, and fewer are served again") {
    Attacked one;
    {
        std::vector<std::unique_ptr<Wire>> many;
        for (int i = 0; i < 300; ++i) many.push_back(std::make_unique<Wire>(one.served.port()));
        std::size_t refused = 0;
        for (std::size_t i = 256; i < many.size(); ++i) refused += many[i]->reply().status == 503 ? 1u : 0u;
        CHECK(refused == 44);
    }
    std::this_thread::sleep_for(200ms);
    CHECK(one.goes_on());
}

TEST_CASE("several requests on one connection are answered in turn") {
    Attacked one;
    Wire wire(one.served.port());
    const std::string ask = "GET /session HTTP/1.1\r\n" + one.host() + "\r\n";
    REQUIRE(wire.send(ask + "HEAD /session HTTP/1.1\r\n" + one.host() + "\r\n"));
    const Reply first = wire.reply();
    CHECK(first.status == 200);
    const Reply head = wire.reply(300ms);
    CHECK(head.status == 200);
    CHECK(head.header("content-length") == first.header("content-length"));
    CHECK(head.body.empty());
}

TEST_CASE("every answer carries the policies that keep other sites out") {
    Attacked one;
    for (const Reply& reply : {one.browser.get("/session"), one.browser.get("/quotes"), one.browser.get("/nowhere"),
                               ask_raw(one.served.port(), "nonsense\r\n\r\n")}) {
        CHECK(reply.header("content-security-policy").find("default-src 'none'") == 0);
        CHECK(reply.header("content-security-policy").find("unsafe") == std::string::npos);
        CHECK(reply.header("x-content-type-options") == "nosniff");
        CHECK(reply.header("referrer-policy") == "same-origin");
        CHECK(reply.header("cross-origin-opener-policy") == "same-origin");
        CHECK(reply.header("cross-origin-resource-policy") == "same-origin");
        CHECK(reply.header("cache-control") == "no-store");
    }
}
