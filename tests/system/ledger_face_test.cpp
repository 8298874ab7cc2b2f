// The ledger under other hands, at the program's face: a closed month that was tampered with, answers that cannot be
// written, files that are in the way, runs that were killed, a copy that is put back, a clock that went back.
#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <spawn.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <thread>

#include "ledger/reading/entries.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/system/face.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
namespace fs = std::filesystem;

namespace {

ledger::Draft paper_row(const std::string& ref, unsigned month, std::int64_t kg) {
    ledger::Draft draft;
    draft.kind = "row";
    draft.ref = draft.content = ref;
    draft.date = std::chrono::year(2026) / std::chrono::month(month) / std::chrono::day(2);
    draft.centre = "C1";
    draft.movements = {{"paper-store", "C1", "KL135", "", Grams::of(kg * 1000), Money::of(650, 1).value()},
                       {"C1", "finished", "KL135", "", Grams::of(kg * 1000), Money()}};
    return draft;
}

// September closed, October open.
class PlantWithClosedMonth : public PlantCopy {
public:
    PlantWithClosedMonth() {
        auto store = ledger::Store::open_for_writing(ledger(), ledger::IfMissing::create);
        static_cast<void>(ledger::post(store, std::vector{paper_row("P1", 9, 1000)}, "mara"));
        static_cast<void>(
            ledger::close_month(store, {std::chrono::year(2026) / std::chrono::month(9), {}, {}, "", "mara"}));
        static_cast<void>(ledger::post(store, std::vector{paper_row("P2", 10, 500)}, "mara"));
    }

    [[nodiscard]] std::string ledger() const { return folder() + "/ledger.db"; }
    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }
    // On a disk that is full.
    [[nodiscard]] Ended ask_in_vain(const std::vector<std::string>& words) const {
        Child child;
        child.words = {FLUTEBOOK_PROGRAM, "--plant", folder()};
        child.words.insert(child.words.end(), words.begin(), words.end());
        child.output = StandardOutput::full_disk;
        return run(child);
    }
    [[nodiscard]] std::string head() const {
        return ledger::head(ledger::Store::open_for_reading(ledger())).value().hash;
    }
};

bool says(const std::string& text, const std::string& what) {
    return text.find(what) != std::string::npos;
}

std::string text_in(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

std::size_t times_said(const std::string& text, const std::string& what) {
    std::size_t count = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
    return count;
}

pid_t start(std::vector<std::string> words) {
    std::vector<char*> pointers;
    for (auto& word : words) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    pid_t child = -1;
    REQUIRE(posix_spawn(&child, FLUTEBOOK_PROGRAM, &actions, nullptr, pointers.data(), environ) == 0);
    posix_spawn_file_actions_destroy(&actions);
    return child;
}

// Runs the command until it is killed while its file has the name that it has until it is finished: that name.
std::string kill_while_it_writes(const std::vector<std::string>& words, const std::string& file) {
    for (int attempt = 0; attempt < 100; ++attempt) {
        const pid_t child = start(words);
        const auto unfinished = fmt::format("{}.part-{}", file, child);
        int status = 0;
        bool has_ended = false;
        while (!fs::exists(unfinished) && !has_ended) has_ended = waitpid(child, &status, WNOHANG) == child;
        if (!has_ended) {
            kill(child, SIGKILL);
            waitpid(child, &status, 0);
        }
        if (WIFSIGNALED(status) && fs::exists(unfinished)) return unfinished;
        fs::remove(file);
    }
    return "";
}

}  // namespace

TEST_CASE("of a closed month with one changed total nothing is printed or written, and the difference is named") {
    const PlantWithClosedMonth plant;
    REQUIRE(plant.ask({"month", "2026-09"}).exit_code == 0);
    run_behind(plant.ledger(), "UPDATE month_flow SET grams = grams - 1000 WHERE month = 202609");
    const auto page = plant.folder() + "/month.html";
    for (const std::vector<std::string>& words : {std::vector<std::string>{"month", "2026-09"},
                                                  {"month", "2026-09", "--json"},
                                                  {"month", "2026-09", "--html", page},
                                                  {"month", "2026-10"}}) {
        INFO(words.back());
        const auto ended = plant.ask(words);
        CHECK(ended.exit_code == 1);
        CHECK(ended.output.empty());
        CHECK(says(ended.errors, "2026-09 is closed, but differs from its seal: nothing of it is shown"));
        CHECK(says(ended.errors, "total of 2026-09, paper-store, C1, KL135: is wrong: found 999000 g"));
        CHECK_FALSE(fs::exists(page));
    }
}

TEST_CASE("a month with a changed total is not closed") {
    const PlantWithClosedMonth plant;
    const auto head = plant.head();
    run_behind(plant.ledger(), "UPDATE month_flow SET grams = grams - 1000 WHERE month = 202610");
    const auto ended = plant.ask({"close", "2026-10", "--why", "as it is"});
    CHECK(ended.exit_code == 1);
    CHECK(says(ended.errors, "2026-10 is not closed: its totals differ from what was posted"));
    CHECK(plant.head() == head);
}

TEST_CASE("the same request with the same answer is saved once, under one number") {
    PlantCopy plant;
    const auto first = ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--save"});
    CHECK(says(first.output, "saved as Q000001"));
    CHECK(ask_at(plant.folder(), {"quote", demo_request("R-1001"), "--save"}).output == first.output);
    plant.write("again.yaml", text_in(demo_request("R-1001")) + "# changed\n");
    CHECK(says(ask_at(plant.folder(), {"quote", plant.folder() + "/again.yaml", "--save"}).output, "saved as Q000002"));
    CHECK(ask_at(plant.folder(), {"verify"}).exit_code == 0);
}

TEST_CASE("a run that saves many quotes and is killed is done again: each has one number") {
    PlantCopy plant;
    std::vector<std::string> words = {FLUTEBOOK_PROGRAM, "--plant", plant.folder(), "quote", "--save"};
    for (int i = 0; i < 40; ++i) {
        const auto number = fmt::format("R-{}", 2000 + i);
        words.push_back(plant.write(number + ".yaml", plain_request(number, "500, 1000")));
    }
    const pid_t child = start(words);
    const auto file = plant.folder() + "/ledger.db";
    const auto saved = [&] {
        try {
            return ledger::quote_numbers(ledger::Store::open_for_reading(file)).size();
        } catch (const LedgerError&) {
            return std::size_t{0};  // not there yet
        }
    };
    for (int wait = 0; wait < 6000 && saved() < 5; ++wait) std::this_thread::sleep_for(std::chrono::milliseconds(10));
    kill(child, SIGKILL);
    int status = 0;
    waitpid(child, &status, 0);
    const auto before = saved();
    CHECK(WIFSIGNALED(status));
    CHECK(before >= 5);
    CHECK(before < 40);
    words.erase(words.begin());
    const auto again = run({[&] {
        std::vector<std::string> all = {FLUTEBOOK_PROGRAM};
        all.insert(all.end(), words.begin(), words.end());
        return all;
    }()});
    CHECK(again.exit_code == 0);
    for (int number = 1; number <= 40; ++number) CHECK(says(again.output, fmt::format("saved as Q{:06}\n", number)));
    CHECK(saved() == 40);
    CHECK(ask_at(plant.folder(), {"verify"}).exit_code == 0);
}

TEST_CASE("the ledger's README restores a copy whole, whatever a killed process left of the old file") {
    const PlantWithClosedMonth plant;
    const auto copy = plant.folder() + "/safe.db";
    REQUIRE(plant.ask({"backup", copy}).exit_code == 0);
    const auto head = plant.head();
    // What a write that was broken off leaves: a log and a journal that belong to the old file.
    for (const auto* end : {"-wal", "-journal"})
        std::ofstream(plant.ledger() + end, std::ios::binary) << text_in(copy).substr(0, 8192);
    const auto readme = text_in(FLUTEBOOK_SOURCE_DIR "/ledger/README.md");
    const auto begin = readme.find("```sh\nmkdir before") + 6;
    REQUIRE(begin > 6);
    auto recipe = readme.substr(begin, readme.find("```", begin) - begin);
    const std::string place = "/mnt/safe/ledger-2026-10-31.db";
    REQUIRE(says(recipe, place));
    recipe.replace(recipe.find(place), place.size(), copy);
    Child shell;
    shell.words = {"/bin/sh", "-ec", recipe};
    shell.folder = plant.folder();
    shell.variables = {{"PATH", fs::path(FLUTEBOOK_PROGRAM).parent_path().string() + ":/usr/bin:/bin"}};
    const auto ended = run(shell);
    INFO(ended.errors);
    CHECK(ended.exit_code == 0);
    CHECK(says(ended.output, head));
    CHECK(plant.head() == head);
    CHECK(fs::exists(plant.folder() + "/before/ledger.db-journal"));
}

TEST_CASE("if an answer cannot be written, the act stays done, and the message gives its number and head") {
    PlantWithClosedMonth plant;
    const auto expect_told = [&](const Ended& ended, const std::string& deed) {
        INFO(deed << ": " << ended.errors);
        CHECK(ended.exit_code == 1);
        CHECK(says(ended.errors,
                   "standard output: cannot be written: No space left on device; the command itself was "
                   "carried out"));
        CHECK(says(ended.errors, "done and kept: " + deed + "; head " + plant.head() + "\n"));
    };
    expect_told(plant.ask_in_vain({"reverse", "3", "--why", "typed twice"}), "reversed entry 3 with entry 4");
    const auto rows =
        plant.write("paper.csv", "ref,date,shift,corrugator,paper,kg\nN1,2026-10-03,early,C1,KL135,100\n");
    expect_told(plant.ask_in_vain({"post", rows}), "posted 1 row, entry 5; 0 posted before");
    expect_told(plant.ask_in_vain({"quote", demo_request("R-1001"), "--save"}), "request `R-1001` saved as Q000001");
    expect_told(plant.ask_in_vain({"order", "Q000001", "500", "--as", "26-1"}), "order 26-1 taken from quote Q000001");
    const auto copy = plant.folder() + "/safe.db";
    expect_told(plant.ask_in_vain({"backup", copy}), "copied 7 entries to " + copy);
    CHECK(fs::exists(copy));
    // Nothing done, nothing said of it.
    CHECK_FALSE(says(plant.ask_in_vain({"verify"}).errors, "done"));
    CHECK_FALSE(says(plant.ask_in_vain({"post", rows, "--dry-run"}).errors, "done"));
}

TEST_CASE("a closing whose answer cannot be written says that the month is closed, and its head") {
    const PlantWithClosedMonth plant;
    const auto ended = plant.ask_in_vain({"close", "2026-10", "--json"});
    INFO(ended.errors);
    CHECK(ended.exit_code == 1);
    CHECK(says(ended.errors, "done and kept: closed 2026-10 with entry 6; head " + plant.head()));
}

TEST_CASE("a file that is there is replaced only where that was asked, and keeps its rights") {
    PlantWithClosedMonth plant;
    const std::string text = "ref,date,shift,corrugator,paper,kg\n";
    const auto source = plant.write("paper.csv", text);
    REQUIRE(chmod(source.c_str(), 0640) == 0);
    const auto refused = plant.ask({"month", "2026-09", "--export", source});
    CHECK(refused.exit_code == 1);
    CHECK(refused.output.empty());
    CHECK(
        says(refused.errors, "cannot be written: it is there already; name another file, or replace it by --replace"));
    CHECK(text_in(source) == text);
    CHECK(plant.ask({"month", "2026-09", "--export", source, "--replace"}).exit_code == 0);
    CHECK(text_in(source) != text);
    struct stat facts {};
    REQUIRE(stat(source.c_str(), &facts) == 0);
    CHECK((facts.st_mode & 07777) == 0640);
    const auto page = plant.write("page.html", text);
    CHECK(plant.ask({"quote", demo_request("R-1001"), "--html", page}).exit_code == 1);
    CHECK(text_in(page) == text);
}

TEST_CASE("an export is written through no link or FIFO that lies where it would be made") {
    PlantWithClosedMonth plant;
    const auto papers = plant.folder() + "/papers.yaml", page = plant.folder() + "/page.html";
    const auto before = text_in(papers);
    fs::create_symlink("papers.yaml", page + ".part");
    CHECK(plant.ask({"month", "2026-09", "--html", page}).exit_code == 0);
    CHECK(text_in(papers) == before);
    CHECK(fs::is_symlink(page + ".part"));
    fs::create_symlink("papers.yaml", plant.folder() + "/link.html");
    CHECK(plant.ask({"month", "2026-09", "--html", plant.folder() + "/link.html"}).exit_code == 1);
    CHECK(plant.ask({"month", "2026-09", "--html", plant.folder() + "/link.html", "--replace"}).exit_code == 1);
    const auto fifo = plant.folder() + "/fifo.html";
    REQUIRE(mkfifo(fifo.c_str(), 0666) == 0);
    CHECK(plant.ask({"month", "2026-09", "--html", fifo, "--replace"}).exit_code == 1);
    CHECK(text_in(papers) == before);
}

TEST_CASE("what a killed export left is cleared away by the next one into that folder, which says so") {
    const PlantWithClosedMonth plant;
    const auto folder = plant.folder() + "/out";
    fs::create_directory(folder);
    const std::vector<std::string> words = {FLUTEBOOK_PROGRAM, "--plant", plant.folder(), "month", "2026-09"};
    std::vector<std::string> left;
    for (const auto& name : std::vector<std::string>{"month.html", "month.csv", "month.xlsx"}) {
        // Each in a folder of its own, where no other run clears it away.
        const auto place = plant.folder() + "/of-" + name;
        fs::create_directory(place);
        auto killed = words;
        killed.insert(killed.end(), {name == "month.html" ? "--html" : "--export", place + "/" + name});
        const auto unfinished = kill_while_it_writes(killed, place + "/" + name);
        REQUIRE_FALSE(unfinished.empty());
        if (name == "month.csv")
            std::ofstream(unfinished) << "\"month\",\"table\",\"row\",\"column\",\"value\"\r\n\"20";
        if (name == "month.xlsx") std::ofstream(unfinished) << "PK\x03\x04";
        left.push_back(folder + "/" + fs::path(unfinished).filename().string());
        fs::rename(unfinished, left.back());
    }
    // Somebody's own, and one that is being made.
    const auto own = folder + "/month.html.part-4711", part = folder + "/cut.xlsx.part-1",
               busy = folder + "/a.csv.part-4712";
    std::ofstream(own) << "my notes";
    std::ofstream(part) << "PK\x03\x04";
    const int maker = open(busy.c_str(), O_RDWR | O_CREAT, 0644);
    REQUIRE(flock(maker, LOCK_EX | LOCK_NB) == 0);
    const auto ended = plant.ask({"month", "2026-09", "--html", folder + "/other.html"});
    close(maker);
    CHECK(ended.exit_code == 0);
    for (const auto& name : left) {
        CAPTURE(name);
        CHECK_FALSE(fs::exists(name));
        CHECK(says(ended.errors, name + ": was left by an interrupted run, and is removed\n"));
    }
    for (const auto& name : {own, part, busy}) CHECK(fs::exists(name));
    CHECK(fs::exists(folder + "/other.html"));
    CHECK(plant.ask({"month", "2026-09", "--html", folder + "/third.html"}).errors ==
          busy + ": was left by an interrupted run, and is removed\n");
}

TEST_CASE("a backup in JSON lists what it cleared") {
    const PlantWithClosedMonth plant;
    const auto copy = plant.folder() + "/safe.db", left = plant.folder() + "/safe.db.part-4711";
    fs::copy_file(plant.ledger(), left);
    const auto first = nlohmann::json::parse(plant.ask({"backup", copy, "--json"}).output);
    CHECK(first.at("cleared") == nlohmann::json({left}));
    CHECK(first.at("file") == copy);
    const auto second = nlohmann::json::parse(plant.ask({"backup", plant.folder() + "/more.db", "--json"}).output);
    CHECK(second.at("cleared") == nlohmann::json::array());
}

TEST_CASE("each command that writes warns once if the clock is behind the newest entry") {
    PlantWithClosedMonth plant;
    {
        const SetClock clock(4'102'444'800);  // 2100
        auto store = ledger::Store::open_for_writing(plant.ledger(), ledger::IfMissing::refuse, clock);
        static_cast<void>(ledger::post(store, std::vector{paper_row("P3", 10, 1)}, "mara"));
    }
    const std::string head_row = "ref,date,shift,corrugator,paper,kg\n";
    const auto rows =
        plant.write("rows.csv", head_row + "N1,2026-10-03,early,C1,KL135,100\nN2,2026-10-03,early,C1,KL135,90\n");
    const auto expect_told_once = [&](const std::vector<std::string>& words) {
        INFO(words.front());
        const auto ended = plant.ask(words);
        INFO(ended.errors);
        CHECK(ended.exit_code == 0);
        CHECK(times_said(ended.errors, "this computer's clock is behind the newest entry: found 20") == 1);
        CHECK(says(ended.errors, "and 2100-01-01 00:00:00 UTC in the ledger; what was written now keeps both times"));
        return ended.output;
    };
    const auto answer = nlohmann::json::parse(expect_told_once({"post", rows, "--json"}));
    CHECK(says(answer.at("warnings").dump(), "clock is behind the newest entry"));
    static_cast<void>(expect_told_once({"reverse", "N1", "--why", "typed twice"}));
    static_cast<void>(expect_told_once({"quote", demo_request("R-1001"), demo_request("R-1002"), "--save"}));
    static_cast<void>(expect_told_once({"order", "Q000001", "500"}));
    CHECK(run_behind(plant.ledger(), "SELECT count(*) FROM entry WHERE clock < written AND id > 4") ==
          std::vector<std::string>{"6"});
    const auto proof = plant.ask({"verify"});
    CHECK(proof.exit_code == 0);
    CHECK(proof.errors.empty());
}
