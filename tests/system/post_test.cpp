// `post`: documents from files into the ledger, as people and scripts meet it.
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;
using Words = std::vector<std::string>;
namespace fs = std::filesystem;

namespace {

const std::string bales =
    "ref,date,shift,grade,kg\n"
    "B1,2026-10-01,early,4.01.00,512\n"
    "B2,2026-10-01,late,4.01.00,498.5\n";
const std::string tickets =
    "ref;date;mill;grade;sent;kg;moisture;per_tonne\r\n"
    "T1;2026-10-02;Northweir;4.01.00;1010,5;1000;0,145;80\r\n";

// A plant without a ledger, and documents in files beside it.
class Office {
public:
    [[nodiscard]] std::string write(const std::string& file, const std::string& text) {
        return plant_.write(file, text);
    }

    [[nodiscard]] Ended post(const Words& files, const Words& options = {}) const {
        Words words = {"post"};
        words.insert(words.end(), options.begin(), options.end());
        words.insert(words.end(), files.begin(), files.end());
        return ask_at(plant_.folder(), words);
    }

    [[nodiscard]] bool has_ledger() const { return fs::exists(plant_.folder() + "/ledger.db"); }
    PlantCopy& plant() { return plant_; }

private:
    PlantCopy plant_;
};

std::vector<std::string> keys(const Json& object) {
    std::vector<std::string> result;
    for (const auto& member : object.items()) result.push_back(member.key());
    return result;
}

}  // namespace

TEST_CASE("post creates the ledger in the plant's folder, and prints what it did") {
    Office office;
    const auto file = office.write("bales.csv", bales);
    const auto ended = office.post({file});
    CHECK(ended.exit_code == 0);
    CHECK(ended.errors.empty());
    CHECK(office.has_ledger());
    const auto lines = lines_of(ended.output);
    REQUIRE(lines.size() > 4);
    CHECK(lines[0] == "Posted 2 rows, entries 1 to 2");
    CHECK(ended.output.find("  loose-scrap  bale-yard         1 010.500") != std::string::npos);

    const auto again = office.post({file, office.write("tickets.csv", tickets)});
    CHECK(lines_of(again.output)[0] == "Posted 1 row, entry 3; 2 rows skipped, posted before");
}

TEST_CASE("a dry run says the same and leaves nothing behind") {
    Office office;
    const auto file = office.write("bales.csv", bales);
    const auto dry = office.post({file}, {"--dry-run"});
    CHECK(dry.exit_code == 0);
    CHECK(lines_of(dry.output)[0] == "Would post 2 rows, entries 1 to 2");
    CHECK(lines_of(dry.output).back() == "A dry run: nothing was kept.");
    CHECK_FALSE(office.has_ledger());

    CHECK(office.post({file}).exit_code == 0);
    const auto more = office.post({office.write("tickets.csv", tickets)}, {"--dry-run"});
    CHECK(lines_of(more.output)[0] == "Would post 1 row, entry 3");
    CHECK(lines_of(office.post({file}).output)[0] == "Posted 0 rows; 2 rows skipped, posted before");
}

TEST_CASE("post --json gives rows, files and sums under their keys") {
    Office office;
    const Words files = {office.write("tickets.csv", tickets), office.write("bales.csv", bales)};
    const auto answer = Json::parse(office.post(files, {"--json"}).output);
    CHECK(keys(answer) == Words{"answer", "answer_version", "dry_run", "posted", "skipped", "first_entry", "head",
                                "files", "moved", "warnings"});
    CHECK(answer["dry_run"] == false);
    CHECK(answer["posted"] == 3);
    CHECK(answer["first_entry"] == 1);
    CHECK(answer["head"].get<std::string>().size() == 64);
    CHECK(keys(answer["files"][0]) == Words{"file", "document", "posted", "skipped"});
    CHECK(answer["files"][0]["file"] == files[0]);
    CHECK(answer["files"][0]["document"] == "ticket");
    CHECK(answer["files"][1]["posted"] == 2);
    // 1000 kg of 14.5 % water at a mill that pays dry matter from 10 % on: 950 kg at 80 a tonne.
    const Json paid = {{"from", "mill:Northweir"}, {"to", "revenue"}, {"cause", ""}, {"kg", 950}, {"amount", 76}};
    REQUIRE(answer["moved"].size() == 3);
    CHECK(answer["moved"][2] == paid);

    const auto dry = Json::parse(office.post(files, {"--json", "--dry-run"}).output);
    CHECK(dry["dry_run"] == true);
    CHECK(dry["skipped"] == 3);
    CHECK(dry["first_entry"].is_null());
    CHECK(dry["head"].is_null());
}

TEST_CASE("a bad row stops all files; every bad row is reported on standard error, and there is no other output") {
    Office office;
    const auto good = office.write("bales.csv", bales);
    const auto bad = office.write("more.csv",
                                  "ref,date,shift,grade,kg\n"
                                  "B3,2026-10-01,noon,4.01.00,512\n"
                                  "B4,2026-10-01,early,4.01.00,512\n"
                                  "B5,2026-10-01,early,4.01.00,\"512,5\"\n");
    const auto ended = office.post({good, bad});
    CHECK(ended.exit_code == 1);
    CHECK(ended.output.empty());
    CHECK(
        lines_of(ended.errors) ==
        Words{bad + ":2: shift: found `noon`, which is no shift of the plant; expected one of `early`, `late`, `night`",
              bad + ":4: kg: found `512,5`; expected a decimal point"});
    CHECK(lines_of(office.post({good}).output)[0] == "Posted 2 rows, entries 1 to 2");
}

TEST_CASE("documents that are refused make no ledger") {
    Office office;
    CHECK(office.post({office.write("bales.csv", bales + "B3,2026-10-01,late,4.01.00,-1\n")}).exit_code == 1);
    CHECK(office.post({office.plant().folder() + "/none.csv"}).exit_code == 1);
    CHECK_FALSE(office.has_ledger());
}

TEST_CASE("no plugin is needed to post") {
    Office office;
    static_cast<void>(office.write("plugins.yaml", "plugins:\n  - nowhere: {}\n"));
    CHECK(office.post({office.write("bales.csv", bales)}).exit_code == 0);
}

TEST_CASE("post without a file is wrong usage, and a plant that is unfit posts nothing") {
    Office office;
    CHECK(office.post({}).exit_code == 2);
    const auto file = office.write("bales.csv", bales);
    office.plant().replace("plant.yaml", "currency: EUR", "currency: EURO");
    CHECK(office.post({file}).exit_code == 3);
    CHECK_FALSE(office.has_ledger());
}

TEST_CASE("the ledger is another file where --ledger names one") {
    Office office;
    const auto file = office.write("bales.csv", bales);
    const auto other = office.plant().folder() + "/other.db";
    CHECK(office.post({file}, {"--ledger", other}).exit_code == 0);
    CHECK(fs::exists(other));
    CHECK_FALSE(office.has_ledger());
}

TEST_CASE("a file that is not a document is refused") {
    Office office;
    const auto picture = office.write("picture.csv", std::string("\x89PNG\r\n\x1A\n\0\0\0", 11));
    const auto ended = office.post({picture, "/no/such.csv", office.plant().folder()});
    CHECK(ended.exit_code == 1);
    CHECK(lines_of(ended.errors) == Words{picture + ":1: found bytes that are not UTF-8; expected text in UTF-8",
                                          "/no/such.csv: no such file",
                                          office.plant().folder() + ": found a folder; expected a file of documents"});
}

TEST_CASE("a row that is likely a slip is posted with a warning, and refused by --strict") {
    Office office;
    const auto file = office.write("scrap.csv", "ref,date,shift,centre,cause,kg\nS1,2972-10-02,early,C1,roll-ends,7\n");
    const auto strict = office.post({file}, {"--strict"});
    CHECK(strict.exit_code == 1);
    CHECK(strict.errors.find("scrap.csv:2: date: found 2972-10-02, a day after today") != std::string::npos);
    const auto posted = office.post({file}, {"--json"});
    CHECK(posted.exit_code == 0);
    CHECK(posted.errors.find("warning: ") == 0);
    CHECK(Json::parse(posted.output)["warnings"].size() == 1);
}
