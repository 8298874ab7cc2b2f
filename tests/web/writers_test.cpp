// Several who write to one ledger through one server, and a server that dies of it: what was acknowledged is there,
// what was refused is not, and nothing is half.
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <atomic>
#include <catch2/catch.hpp>
#include <csignal>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>
#include <thread>

#include "host/web/users.hpp"
#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;
using namespace std::chrono_literals;

namespace {

constexpr int rows_each = 5, kg_a_row = 10;
const std::string served_name = "flutebook.example", their_password = "three plain words";

// Paper issued to the corrugator, under refs of this name.
std::string paper_issues(const std::string& name, int count) {
    std::string text = "ref,date,shift,corrugator,paper,kg\n";
    for (int i = 0; i < count; ++i)
        text += name + "-" + std::to_string(i) + ",2026-10-20,early,C1,KL135," + std::to_string(kg_a_row) + "\n";
    return text;
}

// What became of a sender's documents, by their names.
struct Sent {
    std::vector<std::string> acknowledged, refused, unanswered;
    std::string last_refusal;
};

// Shown dry and posted, as a person does it; nothing where the server is gone.
void send_one(Browser& browser, const std::string& name, Sent& sent) try {
    Reply reply = browser.post_csv("/documents?name=" + name, paper_issues(name, rows_each));
    if (reply.status == 200) reply = browser.post(reply.header("location"), {}, as_document);
    if (reply.status == 200)
        sent.acknowledged.push_back(name);
    else if (reply.status == 0)
        sent.unanswered.push_back(name);
    else
        sent.refused.push_back(name), sent.last_refusal = reply.body;
} catch (const std::exception&) {
    sent.unanswered.push_back(name);
}

Json asked(const PlantCopy& plant, const std::vector<std::string>& words) {
    return Json::parse(ask_at(plant.folder(), words).output);
}

// How many rows of each document the ledger has.
std::map<std::string, int> rows_by_document(const PlantCopy& plant) {
    std::map<std::string, int> result;
    const Json found = asked(plant, {"entries", "2026-10", "--json"});
    for (const auto& entry : found["entries"]) {
        const std::string ref = entry["ref"];
        ++result[ref.substr(0, ref.rfind('-'))];
    }
    return result;
}

void check_kept(const PlantCopy& plant, const Sent& sent) {
    auto kept = rows_by_document(plant);
    for (const auto& name : sent.acknowledged) CHECK(kept[name] == rows_each);
    for (const auto& name : sent.refused) CHECK(kept[name] == 0);
    for (const auto& name : sent.unanswered) CHECK((kept[name] == 0 || kept[name] == rows_each));
    CHECK(asked(plant, {"verify", "--json"})["holds"] == true);
}

// Keeps the writer's turn waiting, as a reader who may not write does.
class Hold {
public:
    explicit Hold(const std::string& ledger) : lock_(::open((ledger + ".lock").c_str(), O_RDONLY | O_CLOEXEC)) {
        REQUIRE(::flock(lock_, LOCK_SH | LOCK_NB) == 0);
    }
    Hold(const Hold&) = delete;
    Hold& operator=(const Hold&) = delete;
    ~Hold() { ::close(lock_); }

private:
    int lock_;
};

}  // namespace

TEST_CASE("while two controllers post and a third closes the month, each document is posted whole or told refused") {
    const PlantCopy plant;
    const std::vector<std::string> names = {"Ada", "Bo", "Cy"};
    for (const auto& name : names)
        web::Users(plant.folder() + "/ledger.db", web::Users::IfMissing::create)
            .add(name, pages::Role::controller, {their_password}, "test");
    const std::string port = std::to_string(19500 + ::getpid() % 12000);
    Served served(plant.folder(), {"--port", port, "--host", served_name, "--behind-proxy"});
    std::vector<Browser> browsers;
    for (const auto& name : names) {
        browsers.emplace_back(served.port(), served_name);
        REQUIRE(browsers.back().post("/session", {{"name", name}, {"password", their_password}}).status == 303);
    }
    const Reply counted =
        browsers[2].post_csv("/documents", "ref,date,account,of,kg,amount\nN-1,2026-10-31,C1,KL135,0,\n");
    REQUIRE(browsers[2].post(counted.header("location"), {}, as_document).status == 200);
    std::atomic<int> acknowledged{0};
    std::vector<Sent> sent(2);
    std::vector<std::thread> senders;
    for (std::size_t who = 0; who < sent.size(); ++who)
        senders.emplace_back([&, who] {
            for (int i = 0; i < 60 && sent[who].refused.size() < 2; ++i) {
                const std::size_t before = sent[who].acknowledged.size();
                send_one(browsers[who], names[who] + std::to_string(i), sent[who]);
                if (sent[who].acknowledged.size() > before) ++acknowledged;
            }
        });
    while (acknowledged < 6) std::this_thread::sleep_for(1ms);
    const Reply closed = browsers[2].post("/months/2026-10/closing", {{"why", "counted later"}}, as_document);
    for (std::thread& sender : senders) sender.join();
    INFO(closed.body);
    REQUIRE(closed.status == 200);
    double kg = 0;
    for (const Sent& one : sent) {
        CHECK(one.unanswered.empty());
        CHECK(one.refused.size() == 2);
        CHECK(one.last_refusal.find("closed") != std::string::npos);
        check_kept(plant, one);
        kg += static_cast<double>(one.acknowledged.size()) * rows_each * kg_a_row;
    }
    const Json month = asked(plant, {"month", "2026-10", "--json"});
    CHECK(month["centre_kg"]["C1"]["in"] == kg);
    CHECK(month["centre_kg"]["C1"]["close"] == 0.0);
    CHECK(month["unexplained_kg"]["C1"] == kg);
}

TEST_CASE("a server that is killed again and again while documents arrive has kept all that it acknowledged") {
    const PlantCopy plant;
    Sent all;
    for (int round = 0; round < 5; ++round) {
        Served served(plant.folder());
        const Browser browser(served);
        std::atomic<int> acknowledged{0};
        std::vector<Sent> sent(2);
        std::vector<std::thread> senders;
        for (std::size_t who = 0; who < sent.size(); ++who)
            senders.emplace_back([&, who] {
                Browser own = browser;
                for (int i = 0; sent[who].unanswered.empty(); ++i) {
                    const auto name = "R" + std::to_string(round) + "W" + std::to_string(who) + "N" + std::to_string(i);
                    send_one(own, name, sent[who]);
                    acknowledged = static_cast<int>(acknowledged) + 1;
                }
            });
        while (acknowledged < 3 + round) std::this_thread::sleep_for(1ms);
        std::this_thread::sleep_for(std::chrono::milliseconds(7 * round));
        CHECK(served.end(SIGKILL) == -SIGKILL);
        for (std::thread& sender : senders) sender.join();
        for (const Sent& one : sent) {
            all.acknowledged.insert(all.acknowledged.end(), one.acknowledged.begin(), one.acknowledged.end());
            all.unanswered.insert(all.unanswered.end(), one.unanswered.begin(), one.unanswered.end());
            CHECK(one.refused.empty());
        }
        check_kept(plant, all);
    }
    CHECK(all.acknowledged.size() >= 15);
}

TEST_CASE("what comes while too much waits to be written is told to try again, and what was taken is written") {
    const PlantCopy plant;
    Served served(plant.folder());
    Browser browser(served);
    constexpr int acts = 75;
    const Reply dry = browser.post_csv("/documents?name=p.csv", paper_issues("P", acts));
    REQUIRE(browser.post(dry.header("location"), {}, as_document).status == 200);
    const std::string form = "token=" + browser.token() + "&why=weighed+twice";
    std::vector<std::unique_ptr<Wire>> wires;
    std::vector<int> statuses(acts, 0);
    {
        const Hold hold(plant.folder() + "/ledger.db");
        for (int i = 0; i < acts; ++i) {
            wires.push_back(std::make_unique<Wire>(served.port()));
            REQUIRE(wires.back()->send("POST /entries/P-" + std::to_string(i) +
                                       "/reversal HTTP/1.1\r\nHost: " + browser.origin().substr(7) +
                                       "\r\nCookie: " + browser.cookie() + "\r\nOrigin: " + browser.origin() +
                                       "\r\nAccept: application/json\r\nContent-Type: "
                                       "application/x-www-form-urlencoded\r\nContent-Length: " +
                                       std::to_string(form.size()) + "\r\n\r\n" + form));
        }
        // The writer waits with one in its hands and 64 behind it; those that find no place are answered meanwhile.
        for (int i = 0; i < acts; ++i) {
            const Reply reply = wires[static_cast<std::size_t>(i)]->reply(i < 65 ? 0ms : 3000ms);
            statuses[static_cast<std::size_t>(i)] = reply.status;
            if (reply.status != 0) CHECK(reply.header("retry-after") == "2");
        }
        CHECK(browser.get("/quotes").status == 200);
    }
    int written = 0, refused = 0;
    for (int i = 0; i < acts; ++i) {
        int& status = statuses[static_cast<std::size_t>(i)];
        if (status == 0) status = wires[static_cast<std::size_t>(i)]->reply().status;
        if (status == 200) ++written;
        if (status == 503) ++refused;
    }
    CHECK(written + refused == acts);
    CHECK((written == 64 || written == 65));
    int reversals = 0;
    const Json found = asked(plant, {"entries", "2026-10", "--json"});
    for (const auto& entry : found["entries"]) reversals += entry["reversed_by"].is_null() ? 0 : 1;
    CHECK(reversals == written);
    PlantCopy office;
    const std::string beside = office.write("beside.csv", paper_issues("S", 2));
    CHECK(ask_at(plant.folder(), {"post", beside}).exit_code == 0);
    CHECK(asked(plant, {"verify", "--json"})["holds"] == true);
}
