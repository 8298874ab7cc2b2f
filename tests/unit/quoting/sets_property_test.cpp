// Sets of random counts and sizes, laid out, costed and added up: what holds of every set.
#include <fmt/format.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <string>

#include "host/answers/quote_json.hpp"
#include "host/base/errors.hpp"
#include "host/plugin_check/generated_order.hpp"
#include "host/quoting/quote.hpp"
#include "tests/support/property.hpp"
#include "tests/support/row_source.hpp"
#include "tests/unit/saved_quotes/kept_quote.hpp"

using namespace flutebook;
using answers::Quote;
using answers::RequestAnswer;
using plugin_check::Draws;

namespace {

// A copy of the demo plant whose style SET is written anew for each trial.
class SetFolder {
public:
    SetFolder() : folder_(fmt::format("{}/sets-{}", std::filesystem::temp_directory_path().string(), getpid())) {
        std::filesystem::remove_all(folder_);
        std::filesystem::copy(fixture::demo_folder(), folder_);
    }
    SetFolder(const SetFolder&) = delete;
    SetFolder& operator=(const SetFolder&) = delete;
    ~SetFolder() { std::filesystem::remove_all(folder_); }

    // Two to four pieces: a die-cut tray first, then flat ones.
    [[nodiscard]] plant::Plant with_pieces(Draws& draws) const {
        std::string text =
            "styles:\n  SET:\n    title: A set\n    note: made for a test\n    pieces:\n"
            "      tray:\n        made_by: die-cutter\n        along: [H, L, H]\n        across: [H, B, H]\n"
            "        map:\n          - .   n   .\n          - .   --  .\n          - w | c | e\n"
            "          - .   --  .\n          - .   s   .\n        fold: [w e n s]\n";
        const double more = draws.whole(1, 3);
        for (double p = 0; p < more; ++p)
            text +=
                fmt::format("      part{}: {{count: {}{}, along: [L + {}], across: [B + {}]}}\n", p, draws.whole(1, 6),
                            draws.one_in(2) ? ", made_by: die-cutter" : "", draws.whole(0, 60), draws.whole(0, 60));
        std::ofstream(folder_ + "/styles.yaml") << text;
        return plant::read_plant(folder_);
    }

private:
    std::string folder_;
};

orders::Request drawn_request(const plant::Plant& plant, Draws& draws) {
    const double length = draws.length_mm(510, 900);
    const double width = draws.length_mm(250, 500);
    return orders::read_request(
        plant, "set.yaml",
        fmt::format("request: S\ndate: 2026-10-15\nstyle: SET\ninside: {{length: {}, width: {}, height: {}}}\n"
                    "board: B-140\nquantities: [{}, {}]\nmargin: {}\n",
                    length, width, draws.length_mm(50, 250), draws.whole(1, 2000), draws.whole(2001, 90000),
                    draws.whole(0, 40) / 100),
        std::nullopt);
}

void check_balance(const Quote& quote) {
    const double in = quote.mass.issued_kg + quote.mass.adhesive_kg;
    RC_ASSERT(std::fabs(in - quote.mass.product_kg - quote.mass.loss_kg) <= 1e-9 * in);
    RC_ASSERT(std::fabs(quote.mass.product_kg -
                        quote.quantity * quote.blank.area_m2 * quote.board_grammage_gsm / 1000) <= 1e-9 * in);
}

// Of the set at one of its quantities.
void check_set(const orders::Request& request, const RequestAnswer& answer, std::size_t index) {
    const RequestAnswer::Quantity& item = answer.quantities[index];
    if (!item.set) {
        RC_ASSERT(item.unmakeable.has_value());
        for (const auto& piece : answer.pieces) RC_ASSERT(piece.quantities[index].unmakeable.has_value());
        return;
    }
    Money cost, waste, recovery;
    for (std::size_t p = 0; p < answer.pieces.size(); ++p) {
        const Quote& quote = answer.pieces[p].quantities[index].quote.value();
        RC_ASSERT(quote.quantity == item.set->quantity * answer.pieces[p].count);
        check_balance(quote);
        Money lines;
        for (const answers::CostLine& line : quote.lines) {
            lines += line.amount;
            if (p > 0 && line.step_name == "dispatch") RC_ASSERT(line.behaviour == contract::Behaviour::per_unit);
        }
        RC_ASSERT(lines == quote.cost);
        RC_ASSERT(quote.price_per_thousand == Money{});
        cost += quote.cost;
        waste += quote.waste_cost;
        recovery += quote.recovery;
    }
    RC_ASSERT(cost == item.set->cost);
    RC_ASSERT(waste == item.set->waste_cost);
    RC_ASSERT(recovery == item.set->recovery);
    const double price = cost.to_double() / item.set->quantity * 1000 / (1 - request.margin.value());
    RC_ASSERT(std::fabs(item.set->price_per_thousand.to_double() - price) <= 0.005 * (1 + 1e-9) + 1e-12 * price);
}

}  // namespace

TEST_CASE("of any set the pieces add up to it, each is its count a set, balances, and pays no dispatch but the first") {
    const SetFolder folder;
    const plant::Plant plant = plant::read_plant(fixture::demo_folder());
    const engine::Engine engine = engine::Engine::start(plant, fixture::built_plugins());
    int complete = 0, tried = 0;
    CHECK(fixture::holds_for_seeds(60, [&](std::uint64_t seed) {
        Draws draws(seed);
        ++tried;
        const plant::Plant with_set = folder.with_pieces(draws);
        const orders::Request request = drawn_request(with_set, draws);
        const RequestAnswer answer = quoting::quote(with_set, engine, request, {1, std::nullopt});
        RC_ASSERT(!answer.model_fault.has_value());
        RC_ASSERT(answer.pieces.size() >= 2U);
        for (std::size_t i = 0; i < answer.quantities.size(); ++i) check_set(request, answer, i);
        complete += answer.is_complete() ? 1 : 0;
        const std::string one = answers::quote_text(with_set, answer, {1, std::nullopt});
        const RequestAnswer on_eight = quoting::quote(with_set, engine, request, {8, std::nullopt});
        RC_ASSERT(answers::quote_text(with_set, on_eight, {8, std::nullopt}) == one);
        const RequestAnswer read = answers::read_quote("here", one).answer;
        RC_ASSERT(read.pieces.size() == answer.pieces.size());
    }));
    CHECK(complete > tried / 6);  // the rest is refused, and says why
}
