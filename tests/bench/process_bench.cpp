// Measures what a person waits for who asks for one quote: the program as a whole process, from its start to its end,
// beside a process that does nothing, in turns, and beside a spreadsheet program that works out the workbook of that
// quote again. Prints medians and their ratio, never a verdict on a time.
//
//   process_bench PROGRAM PLANT [SHARE]     SHARE of the full size: of how often the workbook is worked out
#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <vector>

#include "tests/bench/timing.hpp"

using namespace flutebook;
namespace fs = std::filesystem;

namespace {

constexpr int processes = 40;
constexpr int recalculations = 5;
constexpr const char* office = "/usr/bin/soffice";

struct Times {
    std::vector<double> wall_ms, processor_ms;
};

double milliseconds(const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
}

std::vector<char*> as_arguments(std::vector<std::string>& words) {
    std::vector<char*> result;
    for (std::string& word : words) result.push_back(word.data());
    result.push_back(nullptr);
    return result;
}

// Runs it once, its output thrown away; ends the bench where it does not end well.
void run(std::vector<std::string> words, Times& times, std::vector<std::string> variables = {}) {
    std::vector<char*> arguments = as_arguments(words), environment = as_arguments(variables);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
    if (words.front() == office) posix_spawn_file_actions_addopen(&actions, 2, "/dev/null", O_WRONLY, 0);
    rusage used{};
    int status = -1;
    const double seconds = bench::wall_seconds([&] {
        pid_t child = 0;
        if (posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environment.data()) != 0) return;
        wait4(child, &status, 0, &used);
    });
    posix_spawn_file_actions_destroy(&actions);
    if (status != 0) {
        fmt::print("{}: ended with {}\n", words.front(), status);
        std::exit(1);
    }
    times.wall_ms.push_back(seconds * 1e3);
    times.processor_ms.push_back(milliseconds(used.ru_utime) + milliseconds(used.ru_stime));
}

// A folder of its own, gone with it.
class Folder {
public:
    Folder() {
        std::string name = (fs::temp_directory_path() / "flutebook-bench-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) std::exit(1);
        path_ = name;
    }
    ~Folder() {
        std::error_code none;
        fs::remove_all(path_, none);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

// The spreadsheet program as it starts, loads the quote's workbook, works out every formula and writes one sheet. Its
// profile says that it calculates what it loads, and is made before the clock runs.
class Recalculation {
public:
    explicit Recalculation(std::vector<std::string> quote) {
        const std::string profile = folder_.path() + "/profile";
        fs::create_directories(profile + "/user");
        std::ofstream(profile + "/user/registrymodifications.xcu") << R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>)";
        Times unused;
        quote.insert(quote.end(), {"--xlsx", folder_.path() + "/book.xlsx"});
        run(quote, unused);
        const std::vector<std::string> start = {office, "-env:UserInstallation=file://" + profile, "--headless"};
        std::vector<std::string> first = start;
        first.push_back("--terminate_after_init");
        run(first, unused, variables());
        words_ = start;
        words_.insert(words_.end(), {"--convert-to", "csv", "--outdir", folder_.path(), folder_.path() + "/book.xlsx"});
    }

    void add_to(Times& times) const {
        fs::remove(folder_.path() + "/book.csv");
        run(words_, times, variables());
        if (fs::exists(folder_.path() + "/book.csv")) return;
        fmt::print("{}: worked out no workbook\n", office);
        std::exit(1);
    }

private:
    [[nodiscard]] std::vector<std::string> variables() const {
        return {"PATH=/usr/bin:/bin", "HOME=" + folder_.path()};
    }

    Folder folder_;
    std::vector<std::string> words_;
};

void print_recalculated(const Times& recalculated, double quote_ms) {
    if (recalculated.wall_ms.empty()) {
        fmt::print("its workbook, recalculated / one quote   skipped: no {} on this machine\n", office);
        return;
    }
    const double office_ms = bench::median(recalculated.wall_ms);
    fmt::print(
        "its workbook, recalculated / one quote   {:.0f}   at least 100   ({:.0f} ms by LibreOffice, median of {})\n",
        office_ms / quote_ms, office_ms, recalculated.wall_ms.size());
}

}  // namespace

int main(int count, char** words) {
    if (count != 3 && count != 4) {
        fmt::print(stderr, "usage: process_bench PROGRAM PLANT [SHARE]\n");
        return 2;
    }
    const std::string plant = words[2];
    const double share = count == 4 ? std::atof(words[3]) : 1;
    const std::vector<std::string> quote = {words[1], "--plant", plant, "quote",
                                            plant + "/requests/R-1001-everyday-box.yaml"};
    Times quoted, empty, warm_up, recalculated;
    run(quote, warm_up);
    std::optional<Recalculation> workbook;
    if (fs::exists(office)) workbook.emplace(quote);
    const int every = processes / std::clamp(static_cast<int>(recalculations * share), 1, recalculations);
    for (int i = 0; i < processes; ++i) {
        run(quote, quoted);
        run({"/bin/true"}, empty);
        if (workbook && i % every == every / 2) workbook->add_to(recalculated);
    }
    fmt::print("one quote as a whole process         {:.1f} ms   at most 15   (median of {}; {:.1f} ms of processor)\n",
               bench::median(quoted.wall_ms), processes, bench::median(quoted.processor_ms));
    fmt::print("  a process that does nothing: {:.1f} ms, {:.1f} ms of processor\n", bench::median(empty.wall_ms),
               bench::median(empty.processor_ms));
    print_recalculated(recalculated, bench::median(quoted.wall_ms));
    return 0;
}
