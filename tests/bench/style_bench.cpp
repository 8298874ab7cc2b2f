// Measures what a style as data costs: whole quotes of slotted boxes whose blank is drawn from the style `0201`,
// against the same quotes whose blank comes from the formula written by hand. Both read the request, lay the box
// out, cost every way at every quantity and work the cheapest out in full. Every figure of the blank and every cost
// must be equal; prints the ratio, never a verdict on a time.
//
//   style_bench PLANT PLUGINS [SHARE]     SHARE of the full size, 0.01 for a quick look
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <string>
#include <vector>

#include "host/quoting/piece_quote.hpp"
#include "tests/bench/plain_blank.hpp"
#include "tests/bench/timing.hpp"

using namespace flutebook;

namespace {

constexpr double longest_ratio = 1.5;

class StyleBench {
public:
    StyleBench(const std::string& folder, const std::string& plugins)
        : plant_(plant::read_plant(folder)), engine_(engine::Engine::start(plant_, plugins)) {}

    // Texts of requests, each of another size.
    [[nodiscard]] std::vector<std::string> requests(std::size_t count) const {
        std::vector<std::string> texts;
        for (std::size_t i = 0; i < count; ++i)
            texts.push_back(fmt::format(
                "request: R-{}\ndate: 2026-10-15\nstyle: \"0201\"\ninside: {{length: {}, width: {}, height: "
                "{}}}\nboard: {}\nquantities: [500, 1000, 5000]\nmargin: 0.18\n",
                i, 300 + i % 200, 220 + i % 70, 150 + i % 90, single_wall().code));
        return texts;
    }

    // The first board that can be creased and folded.
    [[nodiscard]] const plant::Board& single_wall() const {
        return *std::find_if(plant_.boards.begin(), plant_.boards.end(),
                             [](const plant::Board& board) { return board.plies.size() == 3; });
    }

    [[nodiscard]] Money by_data(const std::string& text) const {
        const orders::Request request = orders::read_request(plant_, "R.yaml", text, std::nullopt);
        return cost(request, geometry::lay_out(plant_, request));
    }

    [[nodiscard]] Money by_hand(const std::string& text) const {
        const orders::Request request = orders::read_request(plant_, "R.yaml", text, std::nullopt);
        return cost(request, geometry::lay_out(plant_, request, measured_by_hand(request)));
    }

    // Ends the program where the two blanks differ.
    void expect_same_blank(const std::string& text) const {
        const orders::Request request = orders::read_request(plant_, "R.yaml", text, std::nullopt);
        const blanks::Blank data = blanks::make_blank(plant_, request), hand = measured_by_hand(request).blank;
        const auto expect = [&](const char* what, double one, double other) {
            if (std::abs(one - other) <= 1e-9 * std::abs(other)) return;
            fmt::print("{} of a blank: {} by data, {} by hand\n", what, one, other);
            std::exit(1);
        };
        expect("length", data.length_mm, hand.length_mm);
        expect("width", data.width_mm, hand.width_mm);
        expect("area", data.area_m2, hand.area_m2);
        expect("joint", data.joint_mm, hand.joint_mm);
        expect("crease", data.crease_mm, hand.crease_mm);
        expect("cut", data.cut_mm, hand.cut_mm);
        expect("print area", data.print_area_m2, hand.print_area_m2);
    }

private:
    [[nodiscard]] geometry::MeasuredPiece measured_by_hand(const orders::Request& request) const {
        const plant::Board& board = plant_.boards[request.board];
        const plant::Allowance& allowance = *plant_.find_allowance(board.flutes, request.style);
        return bench::plain_blank(*request.inside, allowance);
    }

    [[nodiscard]] Money cost(const orders::Request& request, const geometry::Layout& layout) const {
        std::vector<engine::Order> orders;
        for (const double quantity : request.quantities)
            orders.push_back(engine_.order(plant_, request, layout, quantity));
        Money sum;
        for (const auto& quantity : quoting::quote_piece(engine_, layout, orders, {1, std::nullopt})) {
            if (!quantity.answered.quote) std::abort();
            sum += quantity.answered.quote->cost;
        }
        return sum;
    }

    plant::Plant plant_;
    engine::Engine engine_;
};

double processor_seconds(const auto& work) {
    const std::clock_t start = std::clock();
    work();
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

void compare(const StyleBench& bench, const std::vector<std::string>& texts) {
    std::vector<double> ratios, data_us, hand_us;
    for (int run = 0; run <= bench::runs; ++run) {
        std::vector<Money> data, hand;
        const double data_s = processor_seconds([&] {
            for (const std::string& text : texts) data.push_back(bench.by_data(text));
        });
        const double hand_s = processor_seconds([&] {
            for (const std::string& text : texts) hand.push_back(bench.by_hand(text));
        });
        if (data != hand) {
            fmt::print("a cost by data differs from that by hand\n");
            std::exit(1);
        }
        if (run == 0) continue;
        ratios.push_back(data_s / hand_s);
        data_us.push_back(data_s * 1e6 / static_cast<double>(texts.size()));
        hand_us.push_back(hand_s * 1e6 / static_cast<double>(texts.size()));
    }
    fmt::print("0201 by data against by hand         {:.2f}   at most {}   ({} whole quotes, every cost equal)\n",
               bench::median(ratios), longest_ratio, texts.size());
    fmt::print("  a quote of three quantities: {:.0f} us by data, {:.0f} us by hand\n", bench::median(data_us),
               bench::median(hand_us));
}

}  // namespace

int main(int count, char** words) {
    if (count < 3) {
        fmt::print(stderr, "usage: style_bench PLANT PLUGINS [SHARE]\n");
        return 2;
    }
    const double share = count > 3 ? std::atof(words[3]) : 1;
    const StyleBench bench(words[1], words[2]);
    const auto texts = bench.requests(static_cast<std::size_t>(std::max(20.0, 2000 * share)));
    for (const std::string& text : texts) bench.expect_same_blank(text);
    compare(bench, texts);
    return 0;
}
