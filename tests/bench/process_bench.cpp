// Measures what a person waits for who asks for one quote: the program as a whole process, from its start to its end,
// beside a process that does nothing, in turns. Prints medians, never a verdict on a time.
//
//   process_bench PROGRAM PLANT
#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <array>
#include <cstdlib>
#include <string>
#include <vector>

#include "tests/bench/timing.hpp"

using namespace flutebook;

namespace {

constexpr int processes = 40;

struct Times {
    std::vector<double> wall_ms, processor_ms;
};

double milliseconds(const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
}

// Runs it once, its output thrown away; ends the bench where it does not end well.
void run(std::vector<std::string> words, Times& times) {
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
    std::array<char*, 1> environment{nullptr};
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

}  // namespace

int main(int count, char** words) {
    if (count != 3) {
        fmt::print(stderr, "usage: process_bench PROGRAM PLANT\n");
        return 2;
    }
    const std::string plant = words[2];
    const std::vector<std::string> quote = {words[1], "--plant", plant, "quote",
                                            plant + "/requests/R-1001-everyday-box.yaml"};
    Times quoted, empty, warm_up;
    run(quote, warm_up);
    for (int i = 0; i < processes; ++i) {
        run(quote, quoted);
        run({"/bin/true"}, empty);
    }
    fmt::print("one quote as a whole process         {:.1f} ms   at most 15   (median of {}; {:.1f} ms of processor)\n",
               bench::median(quoted.wall_ms), processes, bench::median(quoted.processor_ms));
    fmt::print("  a process that does nothing: {:.1f} ms, {:.1f} ms of processor\n", bench::median(empty.wall_ms),
               bench::median(empty.processor_ms));
    return 0;
}
