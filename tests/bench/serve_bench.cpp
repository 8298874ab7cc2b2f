// Measures what the pages cost: quotes asked of `flutebook serve` on one kept connection, beside the same quotes worked
// out in this process, in turns, both by processor time; and how much memory the server has with many sessions. Prints
// ratios, never a verdict on a time; ends with 1 where an answer is not the one that is worked out here.
//
//   serve_bench PROGRAM PLANT [SHARE]
#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <exception>
#include <memory>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

#include "host/answers/quote_json.hpp"
#include "host/orders/enquiry.hpp"
#include "host/orders/request_text.hpp"
#include "host/quoting/quote.hpp"
#include "host/workplace/workplace.hpp"
#include "tests/bench/kept_connection.hpp"
#include "tests/bench/served_plant.hpp"
#include "tests/bench/timing.hpp"

using namespace flutebook;

namespace {

constexpr const char* enquiry = "0201 400x300x250 B-140 500 1000 5000 2c 18% 2026-10-15";
constexpr const char* address = "/quotes/new?line=0201+400x300x250+B-140+500+1000+5000+2c+18%25+2026-10-15";
constexpr double quotes_a_run = 1000;
constexpr std::size_t idle_sessions = 200;
constexpr std::size_t busy_sessions = 50;
constexpr double megabyte = 1 << 20;

double own_processor_seconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) / 1e9;
}

std::string worked_out_here(const workplace::Workplace& workplace) {
    using namespace std::chrono_literals;
    const base::Node tree = orders::read_enquiry(workplace.plant, enquiry, 2026y / 10 / 15);
    const orders::Request request =
        orders::read_request(workplace.plant, tree, orders::enquiry_name, orders::request_text(tree), std::nullopt,
                             workplace.engine.extras_check(workplace.plant));
    const answers::QuoteOptions asked;
    const answers::RequestAnswer answer = quoting::quote(workplace.plant, workplace.engine, request, asked);
    answers::QuoteStream document(workplace.plant, workplace.warnings, asked);
    std::string text = document.begin();
    text += document.add(answer, "", orders::enquiry_in_words(tree));
    return text + document.end();
}

void compare_answers(bench::KeptConnection& connection, const workplace::Workplace& workplace) {
    if (connection.get(address, "application/json") == worked_out_here(workplace)) return;
    fmt::print("serve_bench: {} is answered otherwise than it is worked out here\n", address);
    std::exit(1);
}

void measure_quotes(bench::ServedPlant& plant, const workplace::Workplace& workplace, int count) {
    bench::KeptConnection connection(plant.port(), plant.new_session());
    compare_answers(connection, workplace);
    std::vector<double> served, here;
    for (int run = 0; run < bench::runs; ++run) {
        const double before = plant.processor_seconds();
        for (int i = 0; i < count; ++i) static_cast<void>(connection.get(address, "application/json"));
        served.push_back(plant.processor_seconds() - before);
        const double begun = own_processor_seconds();
        for (int i = 0; i < count; ++i) static_cast<void>(worked_out_here(workplace));
        here.push_back(own_processor_seconds() - begun);
    }
    fmt::print(
        "quotes in process / over HTTP, one kept connection   {:.2f}   at least 0.5   (median of {}; {:.3f} and "
        "{:.3f} ms of processor a quote)\n",
        bench::median(here) / bench::median(served), bench::runs, bench::median(here) / count * 1e3,
        bench::median(served) / count * 1e3);
}

// All at once: each session has a connection of its own, and those that quote do it side by side.
void measure_memory(bench::ServedPlant& plant, int count) {
    std::vector<std::unique_ptr<bench::KeptConnection>> idle, busy;
    const auto add_to = [&](auto& sessions) {
        sessions.push_back(std::make_unique<bench::KeptConnection>(plant.port(), plant.new_session()));
        static_cast<void>(sessions.back()->get("/quotes", "text/html"));
    };
    while (busy.size() < busy_sessions) add_to(busy);
    while (idle.size() < idle_sessions) add_to(idle);
    std::atomic<int> failed{0};
    std::vector<std::thread> people;
    for (auto& session : busy)
        people.emplace_back([&failed, &session, count] {
            try {
                for (int i = 0; i < count; ++i) static_cast<void>(session->get(address, "text/html"));
            } catch (const std::exception&) {
                ++failed;
            }
        });
    for (auto& one : people) one.join();
    if (failed > 0) throw std::runtime_error(fmt::format("{} sessions were not served to their end", failed.load()));
    fmt::print("memory of the server at most, {} idle sessions and {} that quote at once   {:.0f} MB   under 150\n",
               idle_sessions, busy_sessions, plant.peak_resident_bytes() / megabyte);
}

}  // namespace

int main(int count, char** words) try {
    if (count < 3) {
        fmt::print(stderr, "usage: serve_bench PROGRAM PLANT [SHARE]\n");
        return 2;
    }
    const double share = count > 3 ? std::atof(words[3]) : 1;
    const int quotes = std::max(10, static_cast<int>(quotes_a_run * share));
    const workplace::Workplace workplace = workplace::open(words[2]);
    bench::ServedPlant plant(words[1], words[2]);
    measure_quotes(plant, workplace, quotes);
    measure_memory(plant, std::max(5, quotes / 10));
    return 0;
} catch (const std::exception& error) {
    fmt::print(stderr, "serve_bench: {}\n", error.what());
    return 1;
}
