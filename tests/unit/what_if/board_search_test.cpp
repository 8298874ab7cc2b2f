// The cheapest board that bears what is asked, against every board costed by hand.
#include "host/what_if/board_search.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "host/base/errors.hpp"
#include "host/plugin_check/generated_order.hpp"
#include "host/quoting/quote.hpp"
#include "tests/support/property.hpp"
#include "tests/support/row_source.hpp"
#include "tests/unit/saved_quotes/kept_quote.hpp"

using namespace flutebook;
using plugin_check::Draws;

namespace {

// The demo plant with an ECT on all boards but the last: heavier boards bear more, not in the order of their prices.
plant::Plant plant_with_ect() {
    plant::FileTexts texts;
    for (const std::string& name : plant::plant_file_names())
        texts[name] = fixture::text_of(fixture::demo_folder() + "/" + name);
    std::string& boards = texts["boards.yaml"];
    const std::vector<std::pair<std::string, std::string>> ects = {
        {"E-110", "3.3"}, {"E-140W", "3.9"}, {"B-110", "3.6"},   {"B-135W", "4.1"}, {"B-140", "4.6"},
        {"C-125", "4.4"}, {"C-175", "6.4"},  {"EC-140W", "6.9"}, {"BC-170", "8.6"}};
    for (const auto& [board, ect] : ects) {
        const std::size_t at = boards.find("  " + board + ":");
        REQUIRE(at != std::string::npos);
        boards.insert(boards.find("]}", at) + 1, ", ect: " + ect);
    }
    return plant::read_plant(fixture::demo_folder(), texts);
}

workplace::Workplace workplace_with_ect() {
    plant::Plant plant = plant_with_ect();
    engine::Engine engine = engine::Engine::start(plant, fixture::built_plugins());
    return {std::move(plant), std::move(engine)};
}

std::string request_text(const std::string& style, const std::string& inside, double quantity,
                         const std::string& board) {
    return fmt::format(
        "request: S\ndate: 2026-10-15\nstyle: \"{}\"\ninside: {}\nboard: {}\nquantities: [{:.0f}]\nmargin: 0.2\n",
        style, inside, board, quantity);
}

orders::Request request_of(const plant::Plant& plant, const std::string& text) {
    return orders::read_request(plant, "s.yaml", text, std::nullopt);
}

// What a thousand-fold simpler hand would do: quote the request on every board, ask each for its strength by the
// formula as it is printed, and take the least cost.
struct ByHand {
    std::optional<std::string> board;
    Money cost;
};

ByHand cheapest_by_hand(const workplace::Workplace& workplace, const std::string& inside, double length, double width,
                        double quantity, const what_if_answers::AskedStrength& asked) {
    ByHand result{};
    for (const plant::Board& board : workplace.plant.boards) {
        if (!board.ect_kn_m) continue;
        const double newtons =
            5.87 * *board.ect_kn_m * std::sqrt(2 * (length + width) * plant::caliper_mm(workplace.plant, board));
        if (asked.ect_kn_m && *board.ect_kn_m < *asked.ect_kn_m) continue;
        if (asked.bct_kn && newtons < *asked.bct_kn * 1000) continue;
        try {
            const auto answer =
                quoting::quote(workplace.plant, workplace.engine,
                               request_of(workplace.plant, request_text("0201", inside, quantity, board.code)), {});
            const auto& quote = answer.quantities.front().quote;
            if (quote && (!result.board || quote->cost < result.cost)) result = {board.code, quote->cost};
        } catch (const InputError&) {
            continue;
        }
    }
    return result;
}

}  // namespace

TEST_CASE("of any box the board that is found is the cheapest that bears what is asked, by costing all of them") {
    const workplace::Workplace workplace = workplace_with_ect();
    int found = 0, tried = 0;
    CHECK(fixture::holds_for_seeds(1000, [&](std::uint64_t seed) {
        Draws draws(seed);
        ++tried;
        const double length = std::round(draws.between(200, 700)), width = std::round(draws.between(120, length));
        const std::string inside =
            fmt::format("{{length: {}, width: {}, height: {}}}", length, width, std::round(draws.between(80, 500)));
        const double quantity = std::round(draws.between(50, 20000));
        what_if_answers::AskedStrength asked;
        if (draws.one_in(2)) asked.ect_kn_m = draws.between(3, 9);
        if (!asked.ect_kn_m || draws.one_in(3)) asked.bct_kn = draws.between(1, 6);
        const auto search = what_if::search_boards(
            workplace, request_of(workplace.plant, request_text("0201", inside, quantity, "B-140")), asked, 1);
        const ByHand by_hand = cheapest_by_hand(workplace, inside, length, width, quantity, asked);
        RC_ASSERT(search.cheapest.front().has_value() == by_hand.board.has_value());
        if (!by_hand.board) return;
        ++found;
        const what_if_answers::BoardOnTrial& board = search.boards[*search.cheapest.front()];
        RC_ASSERT(board.board == *by_hand.board);
        RC_ASSERT(*board.cost_at(0) == by_hand.cost);
    }));
    CHECK(found > tried / 4);  // no board of the plant bears the rest
}

TEST_CASE("a board without an ect, one that is too weak and one that cannot make the box say why") {
    const workplace::Workplace workplace = workplace_with_ect();
    what_if_answers::AskedStrength asked;
    asked.ect_kn_m = 4.5;
    const auto search = what_if::search_boards(
        workplace,
        request_of(workplace.plant, request_text("0201", "{length: 400, width: 300, height: 250}", 1000, "B-140")),
        asked, 1);
    const auto why_not = [&](const std::string& code) {
        for (const auto& board : search.boards)
            if (board.board == code) return board.why_not;
        return std::string("not there");
    };
    CHECK(why_not("BC-205") == "boards.yaml gives no ect for it");
    CHECK(why_not("C-125") == "its ect is below 4.5 kN/m");
    CHECK(why_not("B-140").empty());
}

TEST_CASE("a compression is asked for of slotted boxes alone") {
    const workplace::Workplace workplace = workplace_with_ect();
    what_if_answers::AskedStrength asked;
    asked.bct_kn = 2;
    const auto sheet = request_of(workplace.plant, request_text("0110", "{length: 600, width: 400}", 1000, "B-140"));
    CHECK_THROWS_WITH(what_if::search_boards(workplace, sheet, asked, 1),
                      Catch::Matchers::Contains("s.yaml:3:8: no estimate of the compression: found style `0110`"));
}
