#include "host/web/reload.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <chrono>
#include <sstream>

#include "host/sandbox/build.hpp"
#include "host/sandbox/watch.hpp"
#include "host/web/handlers.hpp"

namespace flutebook::web {

namespace {

using namespace std::chrono_literals;

constexpr sandbox::ChildLimits trial_limits{120s * sandbox::slowness, 120s * sandbox::slowness, std::size_t{4} << 30};

// As the program tells a person, its own name left out.
std::vector<std::string> told_lines(const std::string& printed) {
    const std::string name = "flutebook: ";
    std::vector<std::string> lines;
    std::istringstream stream(printed);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line.rfind(name, 0) == 0 ? line.substr(name.size()) : line);
    return lines;
}

}  // namespace

std::vector<std::string> Reload::take_new_plant() {
    const int nothing = ::open("/dev/null", O_RDONLY | O_CLOEXEC);
    const sandbox::WatchedEnd end = sandbox::run_watched(
        sandbox::own_program(), {"--plant", plant_, "serve", "--try"}, nothing, [](const sandbox::ChildMessage&) {},
        trial_limits);
    ::close(nothing);
    if (end.stopped == sandbox::Stopped::by_itself && end.ended.code == 0 && end.ended.signal == 0) {
        hand_over_();
        return {};
    }
    std::vector<std::string> lines = told_lines(end.printed);
    if (lines.empty())
        lines.push_back("plant: cannot be opened: the program " + sandbox::ending(end.ended) + "; try again");
    watch_.refuse(lines);
    return lines;
}

Outcome reload_plant(const Call& call) {
    auto lines = call.desk.reload.take_new_plant();
    if (lines.empty()) return see_other(pages::Address("/models"));
    lines.push_back("reload: refused; this server goes on with the plant's files as they were");
    // Their places are of files that are not the open ones.
    pages::Frame frame = call.frame(pages::Place::none);
    frame.open_plant = nullptr;
    return refused(call, 422, lines, frame);
}

}  // namespace flutebook::web
