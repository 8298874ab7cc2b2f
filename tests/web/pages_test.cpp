// What the pages answer is what the command line answers; and what becomes of them while something fails.
#include <catch2/catch.hpp>
#include <csignal>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <thread>

#include "tests/system/face.hpp"
#include "tests/web/served.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;
using namespace std::chrono_literals;

namespace {

const std::string line = "0201 400x300x250 B-140 500 1000 5000 2c 18%";

const std::string bales =
    "ref,date,shift,grade,kg\n"
    "B1,2026-10-01,early,4.01.00,512\n"
    "B2,2026-10-01,late,4.01.00,498.5\n";

struct Plant {
    PlantCopy copy;
    Served served{copy.folder()};
    Browser browser{served};

    [[nodiscard]] std::string command(const std::vector<std::string>& words) const {
        return ask_at(copy.folder(), words).output;
    }
};

// As many bales as rows.
std::string many_bales(const std::string& name, int rows) {
    std::string text = "ref,date,shift,grade,kg\n";
    for (int i = 0; i < rows; ++i) text += name + std::to_string(i) + ",2026-10-01,early,4.01.00,512\n";
    return text;
}

// A page of a sheet as its file is, which leads nowhere.
std::string without_way_back(std::string page) {
    const std::size_t begin = page.find("<nav class=\"back\"");
    const std::string end = "</nav>\n";
    return page.erase(begin, page.find(end, begin) + end.size() - begin);
}

// Lists a model that misbehaves at 5000 boxes.
void take_model(PlantCopy& plant, const std::string& model) {
    std::filesystem::create_directory(plant.folder() + "/plugins");
    std::filesystem::copy_file(std::string(FLUTEBOOK_UNLUCKY) + "/" + model + ".so",
                               plant.folder() + "/plugins/" + model + ".so");
    plant.replace("plugins.yaml", "  - run: {}", "  - run: {}\n  - " + model + ": {}");
}

}  // namespace

TEST_CASE("a draft, a saved quote and the list answer the documents of the command line") {
    Plant one;
    CHECK(one.browser.get("/quotes", as_document).body.find("\"quotes\": []") != std::string::npos);
    CHECK(one.browser.get("/quotes/new?line=" + encoded(line), as_document).body ==
          one.command({"quote", line, "--json"}));
    const Reply saved = one.browser.post("/quotes", {{"line", line}});
    CHECK(saved.status == 303);
    CHECK(saved.header("location") == "/quotes/Q000001");
    CHECK(one.browser.get("/quotes/Q000001", as_document).body == one.command({"quote", "show", "Q000001", "--json"}));
    CHECK(one.browser.get("/quotes", as_document).body == one.command({"quote", "list", "--json"}));
    CHECK(one.browser.get("/quotes/Q000001/recheck", as_document).body ==
          one.command({"quote", "recheck", "Q000001", "--json"}));
    CHECK(one.browser.get("/models", as_document).body == one.command({"plugin", "list", "--json"}));
    CHECK(one.browser.get("/ledger/proof", as_document).body == one.command({"verify", "--json"}));
}

TEST_CASE("a sheet of a saved quote leads back to the quote, a file of it nowhere") {
    Plant one;
    REQUIRE(one.browser.post("/quotes", {{"line", line}}).status == 303);
    for (const char* address : {"/quotes/Q000001.html", "/quotes/Q000001.html?for=customer"}) {
        CAPTURE(address);
        CHECK(has_part(one.browser.get(address).body, "<a href=\"/quotes/Q000001\">Back to quote Q000001</a>"));
    }
    const std::string offer = one.copy.folder() + "/o.html";
    REQUIRE(ask_at(one.copy.folder(), {"quote", "show", "Q000001", "--offer", offer}).exit_code == 0);
    CHECK_FALSE(has_part(run({{"/bin/cat", offer}}).output, "Back to quote"));
}

TEST_CASE("a saved quote is written as a sheet, as an offer and as a workbook") {
    Plant one;
    REQUIRE(one.browser.post("/quotes", {{"line", line}}).status == 303);
    const std::string sheet = one.copy.folder() + "/s.html", offer = one.copy.folder() + "/o.html";
    REQUIRE(ask_at(one.copy.folder(), {"quote", "show", "Q000001", "--html", sheet, "--offer", offer}).exit_code == 0);
    const auto text = [](const std::string& file) { return run({{"/bin/cat", file}}).output; };
    CHECK(without_way_back(one.browser.get("/quotes/Q000001.html").body) == text(sheet));
    CHECK(without_way_back(one.browser.get("/quotes/Q000001.html?for=customer").body) == text(offer));
    const Reply workbook = one.browser.get("/quotes/Q000001.xlsx");
    CHECK(workbook.status == 200);
    CHECK(workbook.header("content-disposition") == "attachment; filename=\"Q000001.xlsx\"");
    CHECK(workbook.body.substr(0, 2) == "PK");
}

TEST_CASE("what is not understood is told in full, in the form that was asked for") {
    Plant one;
    const Reply page = one.browser.get("/quotes/new?line=" + encoded("0201 400x300 <b>"));
    CHECK(page.body.find("<b>") == page.body.find("<b>Flutebook"));
    CHECK(page.body.find("&lt;b&gt;") != std::string::npos);
    const Reply reply = one.browser.get("/quotes?limit=none&state=perhaps", as_document);
    CHECK(reply.status == 422);
    CHECK(Json::parse(reply.body)["errors"].size() == 2);
    CHECK(one.browser.get("/quotes/Q000009", as_document).status == 404);
    CHECK(one.browser.get("/months/2026-13", as_document).status == 422);
    CHECK(one.browser.get("/orders/none/cost", as_document).status == 404);
}

TEST_CASE("a quote is marked and taken as an order by forms") {
    Plant one;
    REQUIRE(one.browser.post("/quotes", {{"line", line}}).status == 303);
    CHECK(one.browser.post("/quotes/Q000001/mark", {{"state", "lost"}}, as_document).status == 409);
    CHECK(one.browser.post("/quotes/Q000001/mark", {{"state", "won"}}).status == 303);
    const Reply order = one.browser.post("/quotes/Q000001/order", {{"quantity", "500"}, {"as", "26-1"}}, as_document);
    CHECK(order.status == 200);
    CHECK(order.body.find("26-1") != std::string::npos);
    CHECK(one.browser.post("/quotes/Q000001/order", {{"quantity", "none"}}, as_document).status == 422);
}

TEST_CASE("a share of trim that the ledger cannot say yet is said once its runs are posted, by the server that runs") {
    PlantCopy copy;
    REQUIRE(ask_at(copy.folder(), {"quote", demo_request("R-1001"), "--save"}).exit_code == 0);
    REQUIRE(ask_at(copy.folder(), {"order", "Q000001", "5000", "--as", "26-1"}).exit_code == 0);
    copy.replace("plant.yaml", "\ncurrency:", "\ntrim: share\ncurrency:");
    Served served{copy.folder()};
    Browser browser{served};
    const std::string draft = "/quotes/new?line=" + encoded(line + " 2026-11-02");
    CHECK(browser.get(draft, as_document).body.find("found 0 corrugator runs") != std::string::npos);
    std::string runs = "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n";
    for (int i = 0; i < 30; ++i) runs += "W" + std::to_string(i) + ",2026-10-12,early,C1,26-1,1900,25,5040\n";
    const auto posted = ask_at(copy.folder(), {"post", copy.write("runs.csv", runs)});
    INFO(posted.errors);
    REQUIRE(posted.exit_code == 0);
    const Json trim = Json::parse(browser.get(draft, as_document).body)["requests"][0]["trim"];
    CHECK(trim["origin"]["of"] == "board");
}

TEST_CASE("a document is shown dry, and then that very text is posted once") {
    Plant one;
    const Reply dry = one.browser.post_csv("/documents?name=bales.csv", bales);
    REQUIRE(dry.status == 200);
    CHECK(Json::parse(dry.body)["dry_run"] == true);
    CHECK(Json::parse(dry.body)["files"][0]["file"] == "bales.csv");
    CHECK_FALSE(std::filesystem::exists(one.copy.folder() + "/ledger.db"));
    const std::string digest = dry.header("location");
    REQUIRE(digest.size() == std::string("/documents/").size() + 64);
    const Reply posted = one.browser.post(digest, {}, as_document);
    REQUIRE(posted.status == 200);
    CHECK(Json::parse(posted.body)["posted"] == 2);
    CHECK(Json::parse(one.browser.post(digest, {}, as_document).body)["skipped"] == 2);
    CHECK(one.browser.get("/months/2026-10", as_document).body == one.command({"month", "2026-10", "--json"}));
    CHECK(one.browser.get("/entries?month=2026-10", as_document).body == one.command({"entries", "2026-10", "--json"}));
    CHECK(one.browser.post("/documents/" + std::string(64, '0'), {}, as_document).status == 404);
}

TEST_CASE("a month is written as a sheet, as rows and as a workbook") {
    Plant one;
    const std::string digest = one.browser.post_csv("/documents?name=b.csv", bales).header("location");
    REQUIRE(one.browser.post(digest, {}).body.find("href=\"/months/2026-10\"") != std::string::npos);
    const std::string sheet = one.copy.folder() + "/m.html", rows = one.copy.folder() + "/m.csv";
    REQUIRE(ask_at(one.copy.folder(), {"month", "2026-10", "--html", sheet, "--export", rows}).exit_code == 0);
    const auto text = [](const std::string& file) { return run({{"/bin/cat", file}}).output; };
    CHECK(one.browser.get("/months/2026-10.html").body == text(sheet));
    const Reply csv = one.browser.get("/months/2026-10.csv");
    CHECK(csv.body == text(rows));
    CHECK(csv.header("content-type") == "text/csv; charset=utf-8");
    const Reply workbook = one.browser.get("/months/2026-10.xlsx");
    CHECK(workbook.header("content-disposition") == "attachment; filename=\"2026-10.xlsx\"");
    CHECK(workbook.body.substr(0, 2) == "PK");
    CHECK(one.browser.get("/months/2026-13.xlsx").status == 422);
}

TEST_CASE("a document works by the form alone, without any script") {
    Plant one;
    const Reply dry = one.browser.post("/documents", {{"name", "b.csv"}, {"text", bales}});
    REQUIRE(dry.status == 200);
    const std::size_t form = dry.body.find("action=\"/documents/");
    REQUIRE(form != std::string::npos);
    const Reply posted = one.browser.post(dry.body.substr(form + 8, 11 + 64), {});
    CHECK(posted.status == 200);
    CHECK(one.command({"entries", "2026-10", "--json"}).find("\"B2\"") != std::string::npos);
}

TEST_CASE("a wrong row is told by the document's name, its line and its column, and nothing is posted") {
    Plant one;
    const Reply reply =
        one.browser.post_csv("/documents?name=bales.csv", "ref,date,shift,grade,kg\nB1,2026-10-01,early,4.01.00,x\n");
    CHECK(reply.status == 422);
    const std::string error = Json::parse(reply.body)["errors"][0];
    CHECK(error.rfind("bales.csv:2:", 0) == 0);
    CHECK(error.find("/proc/") == std::string::npos);
    CHECK_FALSE(std::filesystem::exists(one.copy.folder() + "/ledger.db"));
}

TEST_CASE("an entry is reversed with its reason, and a month that waits is not closed") {
    Plant one;
    const std::string digest = one.browser.post_csv("/documents?name=b.csv", bales).header("location");
    REQUIRE(one.browser.post(digest, {}).status == 200);
    CHECK(one.browser.post("/entries/B1/reversal", {}, as_document).status == 422);
    const Reply reversed = one.browser.post("/entries/B1/reversal", {{"why", "weighed twice"}}, as_document);
    CHECK(reversed.status == 200);
    CHECK(one.browser.post("/entries/B1/reversal", {{"why", "again"}}, as_document).status == 409);
    const Reply closing = one.browser.post("/months/2026-10/closing", {}, as_document);
    CHECK(closing.status == 409);
}

TEST_CASE("a file of the plant that changes while it is served is told on every page, and changes no price") {
    Plant one;
    const std::string address = "/quotes/new?line=" + encoded(line);
    const std::string before = one.browser.get(address, as_document).body;
    one.copy.replace("papers.yaml", "moisture: 0.08", "moisture: 0.07");
    std::this_thread::sleep_for(1100ms);
    CHECK(one.browser.get("/documents").body.find("papers.yaml changed at") != std::string::npos);
    CHECK(one.browser.get(address, as_document).body == before);
    static_cast<void>(one.copy.write("papers.yaml", "nonsense: ["));
    std::this_thread::sleep_for(1100ms);
    CHECK(one.browser.get(address, as_document).body == before);
    CHECK(one.browser.get("/documents").body.find("papers.yaml changed at") != std::string::npos);
}

TEST_CASE("a model that crashes while it costs is told on the page, and the server lives") {
    PlantCopy plant;
    take_model(plant, "unlucky_crash");
    Served served(plant.folder());
    Browser browser(served);
    const Reply crashed = browser.get("/quotes/new?line=" + encoded("0201 400x300x250 B-140 5000 18%"));
    CHECK(crashed.status == 500);
    CHECK(crashed.body.find("unlucky_crash") != std::string::npos);
    CHECK(served.is_alive());
    CHECK(browser.get("/quotes/new?line=" + encoded("0201 400x300x250 B-140 500 18%")).status == 200);
}

TEST_CASE("a model that hangs while it costs is told on the page, and others are answered meanwhile") {
    PlantCopy plant;
    take_model(plant, "unlucky_hang");
    Served served(plant.folder());
    Browser browser(served);
    std::atomic<bool> is_over{false};
    Reply hung;
    std::thread sender([&, own = browser]() mutable {
        hung = own.get("/quotes/new?line=" + encoded("0201 400x300x250 B-140 5000 18%"));
        is_over = true;
    });
    CHECK(browser.get("/quotes").status == 200);
    CHECK(browser.get("/quotes/new?line=" + encoded("0201 400x300x250 B-140 500 18%")).status == 200);
    CHECK_FALSE(is_over);
    sender.join();
    CHECK(hung.status == 500);
    CHECK(hung.body.find("unlucky_hang") != std::string::npos);
    CHECK(browser.get("/quotes/new?line=" + encoded("0201 400x300x250 B-140 500 18%")).status == 200);
}

TEST_CASE("the command line writes between the acts of the server") {
    Plant one;
    REQUIRE(one.browser.post("/quotes", {{"line", line}}).status == 303);
    CHECK(one.command({"quote", line + " 300", "--save"}).find("Q000002") != std::string::npos);
    const Reply third = one.browser.post("/quotes", {{"line", line + " 400"}});
    CHECK(third.header("location") == "/quotes/Q000003");
}

TEST_CASE("several browsers that post at once all get their rows, each row once") {
    Plant one;
    std::vector<std::thread> threads;
    std::vector<std::string> digests;
    for (int i = 0; i < 6; ++i)
        digests.push_back(one.browser.post_csv("/documents?name=b.csv", many_bales("R" + std::to_string(i) + "-", 50))
                              .header("location"));
    std::atomic<int> done{0};
    for (const std::string& digest : digests)
        threads.emplace_back([&one, &done, digest] {
            Browser own = one.browser;
            if (own.post(digest, {}, as_document).status == 200) ++done;
        });
    for (std::thread& thread : threads) thread.join();
    CHECK(done == 6);
    CHECK(Json::parse(one.command({"entries", "2026-10", "--json"}))["entries"].size() == 300);
    CHECK(Json::parse(one.command({"verify", "--json"}))["holds"] == true);
}

TEST_CASE("a server that is killed while it posts leaves all of a document or nothing, and what it acknowledged") {
    for (int round = 0; round < 5; ++round) {
        Plant one;
        const std::string first = one.browser.post_csv("/documents?name=a.csv", many_bales("A", 20)).header("location");
        REQUIRE(one.browser.post(first, {}, as_document).status == 200);
        const std::string next =
            one.browser.post_csv("/documents?name=b.csv", many_bales("B", 4000)).header("location");
        const std::string token = one.browser.token();
        std::thread sender([&] {
            Browser own = one.browser;
            static_cast<void>(own.post(next, {}, as_document));
        });
        std::this_thread::sleep_for(std::chrono::milliseconds(30 + 60 * round));
        static_cast<void>(one.served.end(SIGKILL));
        sender.join();
        const std::size_t entries = Json::parse(one.command({"entries", "2026-10", "--json"}))["entries"].size();
        INFO(entries);
        CHECK((entries == 20 || entries == 4020));
        CHECK(Json::parse(one.command({"verify", "--json"}))["holds"] == true);
    }
}

TEST_CASE("a server that is told to end finishes what it began, and ends with 0") {
    for (const int signal : {SIGTERM, SIGINT}) {
        Plant one;
        const std::string next =
            one.browser.post_csv("/documents?name=b.csv", many_bales("B", 2000)).header("location");
        static_cast<void>(one.browser.token());
        int status = 0;
        std::thread sender([&] {
            Browser own = one.browser;
            status = own.post(next, {}, as_document).status;
        });
        std::this_thread::sleep_for(50ms);
        CHECK(one.served.end(signal) == 0);
        sender.join();
        CHECK(status == 200);
        CHECK(one.served.errors() == std::string());
    }
}
