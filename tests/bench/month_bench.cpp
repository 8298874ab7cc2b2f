// Measures the page of a month among ten million movements against the command line's own answer for the same month, in
// turns, both by the clock on the wall: what a person waits for. The runs are of no order: what orders spent is not in
// it.
//
//   month_bench PROGRAM PLANT [SHARE] [FILE]     FILE: keeps the ledger there
#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <exception>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "ledger/writing/posting.hpp"
#include "tests/bench/kept_connection.hpp"
#include "tests/bench/served_plant.hpp"
#include "tests/bench/timing.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;

namespace {

constexpr int months = 100;
constexpr double movements_a_month = 100'000;

// A folder that is gone at the end.
class Place {
public:
    Place() {
        if (::mkdtemp(path_.data()) == nullptr) throw std::runtime_error("no folder for the ledger");
    }
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;
    ~Place() { std::filesystem::remove_all(path_); }

    [[nodiscard]] std::string ledger() const { return path_ + "/ledger.db"; }

private:
    std::string path_ = (std::filesystem::temp_directory_path() / "flutebook-bench-XXXXXX").string();
};

Month month_number(int month) {
    return std::chrono::year(2018) / 1 + std::chrono::months(month);
}

void run_command(std::vector<std::string> words) {
    std::vector<char*> pointers;
    for (std::string& word : words) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", 1, 0);
    pid_t id = 0;
    const int fault = posix_spawn(&id, words.front().c_str(), &actions, nullptr, pointers.data(), ::environ);
    posix_spawn_file_actions_destroy(&actions);
    int status = 0;
    if (fault != 0 || ::waitpid(id, &status, 0) != id || !WIFEXITED(status) || WEXITSTATUS(status) != 0)
        throw std::runtime_error("flutebook: a command failed");
}

std::string text_of(Month month) {
    return fmt::format("{:04}-{:02}", int{month.year()}, unsigned{month.month()});
}

// One month's documents, and its machines counted empty at the end of it.
std::int64_t post_month(const std::string& file, Month of, std::int64_t movements, std::int64_t& ref) {
    auto store = Store::open_for_writing(file, IfMissing::create);
    Posting posting(store, "bench");
    fixture::DocumentStream stream(77, 1, ref);
    std::int64_t written = 0;
    for (; written < movements; ++ref) {
        auto draft = stream.next();
        draft.date = Date(of.year(), of.month(), draft.date.day());
        // A run is read again for its order, and nobody took these.
        if (!draft.order.empty()) draft.kind = "scrap";
        draft.order.clear();
        written += static_cast<std::int64_t>(draft.movements.size());
        posting.add(draft);
    }
    for (const auto* machine : {"C1", "C2", "FG1", "FG2", "DC1"}) {
        Draft count = fixture::floor_count(fmt::format("E{}{}", machine, ref), Date(of / std::chrono::last), 0);
        count.centre = count.count->account = machine;
        posting.add(count);
    }
    posting.commit();
    return written;
}

// Every month the same documents, under refs of their own; all are closed but the last, as a person closes them.
std::int64_t fill(const std::vector<std::string>& program, const std::string& file, std::int64_t movements) {
    std::int64_t ref = 1, all = 0;
    for (int month = 0; month < months; ++month) {
        all += post_month(file, month_number(month), movements, ref);
        if (month + 1 == months) break;
        auto close = program;
        for (const auto& word :
             {std::string("close"), text_of(month_number(month)), std::string("--why"), std::string("a bench")})
            close.push_back(word);
        run_command(close);
    }
    return all;
}

void measure(const std::string& program, const std::string& plant, const std::string& ledger, double share) {
    const std::vector<std::string> command_line = {program, "--plant", plant, "--ledger", ledger};
    const std::int64_t all =
        fill(command_line, ledger, std::max<std::int64_t>(200, static_cast<std::int64_t>(movements_a_month * share)));
    const std::string name = text_of(month_number(months - 1));
    bench::ServedPlant served(program, plant, ledger);
    bench::KeptConnection connection(served.port(), served.new_session());
    auto asked = command_line;
    asked.insert(asked.end(), {"month", name});
    std::vector<double> pages, commands;
    for (int run = 0; run <= 2 * bench::runs; ++run) {
        const double page =
            bench::wall_seconds([&] { static_cast<void>(connection.get("/months/" + name, "text/html")); });
        const double command = bench::wall_seconds([&] { run_command(asked); });
        if (run == 0) continue;  // warm-up
        pages.push_back(page);
        commands.push_back(command);
    }
    fmt::print(
        "a month's page / the command line's month   {:.2f}   at most 1.5   ({} movements; {:.0f} and {:.0f} ms)\n",
        bench::median(pages) / bench::median(commands), all, bench::median(pages) * 1e3, bench::median(commands) * 1e3);
}

}  // namespace

int main(int count, char** words) try {
    if (count < 3) {
        fmt::print(stderr, "usage: month_bench PROGRAM PLANT [SHARE] [FILE]\n");
        return 2;
    }
    const Place place;
    measure(words[1], words[2], count > 4 ? words[4] : place.ledger(), count > 3 ? std::atof(words[3]) : 1);
    return 0;
} catch (const std::exception& error) {
    fmt::print(stderr, "month_bench: {}\n", error.what());
    return 1;
}
