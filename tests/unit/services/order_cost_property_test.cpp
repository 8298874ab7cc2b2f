// The cost of an order after production, held over generated production of the demo plant's orders: what is told adds
// up, what goes in comes out, and what was made as the quote allows differs in nothing but volume.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <memory>

#include "host/plugin_check/generated_order.hpp"
#include "host/quoting/cost_sheet.hpp"
#include "host/quoting/quote.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/scenario/scenario.hpp"
#include "host/services/orders/order_cost.hpp"
#include "tests/support/property.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
namespace fs = std::filesystem;
using answers::OrderCost;
using engine::Costing;
using plugin_check::Draws;
using services::OrderFile;

namespace {

const std::string demo = FLUTEBOOK_SOURCE_DIR "/config/demo";

// The demo plant and every order that it can make, each as if its quote had been saved.
class DemoOrders {
public:
    DemoOrders()
        : place_{plant::read_plant(demo), engine::Engine::start(plant::read_plant(demo), FLUTEBOOK_PLUGIN_DIR)} {
        std::vector<std::string> files;
        for (const auto& entry : fs::directory_iterator(demo + "/requests")) files.push_back(entry.path().string());
        std::sort(files.begin(), files.end());
        auto store = ledger::Store::in_memory();
        for (const auto& file : files) save(store, file);
    }

    struct Saved {
        ledger::SavedQuote quote;
        saved_quotes::QuotedPlant plant;
        std::vector<orders::OrderRecord> terms;
    };
    [[nodiscard]] const std::vector<std::unique_ptr<Saved>>& all() const { return saved_; }
    [[nodiscard]] const workplace::Workplace& place() const { return place_; }

private:
    void save(ledger::Store& store, const std::string& file) {
        const auto request = orders::read_request(place_.plant, file);
        const answers::QuoteOptions asked;
        const auto answer = quoting::quote(place_.plant, place_.engine, request, asked);
        if (!saved_quotes::can_be_saved(answer)) return;
        auto result = std::make_unique<Saved>();
        for (const auto& item : answer.quantities)
            if (item.quote && item.quote->terms.bought_from.empty()) result->terms.push_back(item.quote->terms);
        if (result->terms.empty()) return;  // on a board that is bought, whose production is not posted
        const auto number = saved_quotes::save_quote(store, place_, {answer, asked}, "ada");
        result->quote = saved_quotes::saved_quote(store, number);
        result->plant = saved_quotes::quoted_plant(result->quote, place_.plant, {});
        saved_.push_back(std::move(result));
    }

    workplace::Workplace place_;
    std::vector<std::unique_ptr<Saved>> saved_;
};

const DemoOrders& orders() {
    static const DemoOrders all;
    return all;
}

ledger::Entry entry(const char* kind, const std::string& day, const std::string& content) {
    ledger::Entry result{};
    result.draft.kind = kind;
    result.draft.date = base::parse_date(day).value();
    result.draft.content = "ref=R1\ndate=" + day + "\nshift=early\n" + content;
    return result;
}

ledger::Entry web_row(const orders::OrderRecord& order, const std::string& day, const std::string& more) {
    return entry("corrugator-run", day, fmt::format("order={}\n{}", order.number, more));
}

// A machine's row as it is allowed to run.
struct Run {
    double fed, setup, rejected, boxes;
};

ledger::Entry piece_row(const orders::OrderRecord& order, std::size_t step, const std::string& machine,
                        const std::string& day, const Run& run) {
    const std::string boxes = step == order.last_step() ? fmt::format("good_boxes={}\n", run.boxes) : "";
    return entry("converter-run", day,
                 fmt::format("converter={}\norder={}\nfed={}\nsetup_sheets={}\nrejected={}\n{}", machine, order.number,
                             run.fed, run.setup, run.rejected, boxes));
}

// One order on its way through the plant: made exactly as its quote allows, until a test spoils it.
struct Production {
    const DemoOrders::Saved* saved;
    orders::OrderRecord order;
    double boxes;
    std::string day = "2026-10-15";
    double metres, change_m, good_sheets;
    double over = 0;        // blanks by which the full sheets exceed what the next step takes
    std::vector<Run> runs;  // steps 1 .. K

    [[nodiscard]] OrderCost cost(const plant::Plant& today) const {
        std::vector<ledger::Entry> entries = {
            web_row(order, day,
                    fmt::format("corrugator={}\nmetres={}\norder_change_metres={}\ngood_sheets={}\n", order.corrugator,
                                metres, change_m, good_sheets))};
        for (std::size_t k = 1; k <= order.last_step(); ++k)
            entries.push_back(piece_row(order, k, order.route[k - 1], day, runs[k - 1]));
        return cost_of(entries, today);
    }

    [[nodiscard]] OrderCost cost_of(const std::vector<ledger::Entry>& entries, const plant::Plant& today) const {
        const OrderFile file{order, production::actual_of(order, entries), saved->quote};
        return services::order_cost(orders().place().engine, saved->plant, file, today);
    }
};

Production as_allowed(Draws& draws) {
    Production result{};
    result.saved = draws.pick(orders().all()).get();
    result.order = draws.pick(result.saved->terms);
    result.order.number = "26-0417";
    result.order.quote = result.saved->quote.number;
    result.boxes = std::max(1.0, std::ceil(result.order.quantity * draws.between(0.4, 1.6)));
    result.day = base::to_string(result.saved->plant.request.date);
    const auto& engine = orders().place().engine;
    const auto& saved = result.saved->plant;
    const Costing allowed =
        scenario::Scenario(engine, {saved.plant, saved.request, result.order}, {result.boxes}).cost();
    result.metres = allowed.web_length_m;
    result.change_m = allowed.allowances.order_change_m;
    result.good_sheets = allowed.good[0];
    for (std::size_t k = 1; k <= result.order.last_step(); ++k) {
        const double setup = allowed.allowances.setup_sheets[k];
        const double good = allowed.good[k];
        result.runs.push_back({allowed.fed[k], setup, allowed.fed[k] - setup - good, result.boxes});
    }
    if (const auto d = result.order.parting; d > 0 && d < result.order.last_step())
        result.over = allowed.good[d] * result.order.ups - allowed.fed[d + 1];
    return result;
}

// The same, with another day's rolls, machines and losses, in several rows.
OrderCost spoiled(Draws& draws) {
    Production result = as_allowed(draws);
    const auto& order = result.order;
    std::vector<ledger::Entry> entries;
    const double parts = draws.whole(1, 3);
    for (double part = 0; part < parts; ++part) {
        const auto day = fmt::format("2026-{:02.0f}-1{:.0f}", draws.whole(8, 11), draws.whole(0, 9));
        const std::string roll =
            draws.one_in(3) ? fmt::format("roll_width={}\nouts={}\n", order.roll_width_mm + 200, order.outs) : "";
        entries.push_back(web_row(order, day,
                                  fmt::format("corrugator={}\n{}metres={}\norder_change_metres={}\ngood_sheets={}\n",
                                              draws.one_in(4) ? draws.pick(order.corrugators).code : order.corrugator,
                                              roll, result.metres / parts * draws.between(1, 1.1),
                                              part > 0 && draws.one_in(2) ? 0 : result.change_m / 4,
                                              std::floor(result.good_sheets / parts * draws.between(0.95, 1)))));
    }
    for (std::size_t k = 1; k <= order.last_step(); ++k) {
        Run run = result.runs[k - 1];
        run.setup = std::floor(run.setup * draws.between(0, 1.5));
        run.rejected = std::floor(run.rejected * draws.between(0, 1.5));
        const double good = std::max(0.0, run.fed - run.setup - run.rejected);
        run.fed = run.setup + run.rejected + good;
        run.boxes = std::floor((k == order.parting ? good * order.ups : good) * draws.between(0.97, 1));
        entries.push_back(piece_row(order, k, order.route[k - 1], result.day, run));
    }
    return result.cost_of(entries, orders().place().plant);
}

bool adds_up(const OrderCost& answer) {
    answers::Stages lines, inputs;
    for (const auto& line : answer.lines) lines += line.cost;
    for (const auto& input : answer.inputs) inputs += input.cost;
    inputs += answer.other_cost();
    return lines == answer.cost && inputs == answer.cost &&
           answers::variances_of(answer.cost).total() == answer.cost.paid - answer.cost.quoted;
}

bool balances(const answers::OrderMass::Masses& mass) {
    const double in = mass.issued + mass.adhesive;
    double out = mass.product + mass.floor;
    for (const double loss : mass.losses) out += loss;
    return std::abs(in - out) <= 1e-9 * in;
}

// What papers and adhesive cost is told by their own variances; nothing but a hair of rounding is left for others.
bool is_told_by_inputs(const OrderCost& answer) {
    answers::Stages charged, told;
    for (const auto& line : answer.lines)
        if (line.plugin == "paper" || line.plugin == "starch") charged += line.cost;
    for (const auto& input : answer.inputs) told += input.cost;
    const auto differs = [](Money left, Money right) { return std::abs((left - right).ten_thousandths()) > 5; };
    return !differs(charged.quoted, told.quoted) && !differs(charged.standard, told.standard) &&
           !differs(charged.converted, told.converted) && !differs(charged.used, told.used) &&
           !differs(charged.paid, told.paid);
}

// The only difference there is, or none.
bool is_all(Money one, const OrderCost& answer) {
    return one == answer.cost.paid - answer.cost.quoted;
}

}  // namespace

TEST_CASE("lines, materials and the four variances add up to the difference for any production, and masses balance") {
    CHECK(holds_for_seeds(300, [](std::uint64_t seed) {
        Draws draws(seed);
        const auto answer = spoiled(draws);
        RC_ASSERT(adds_up(answer));
        RC_ASSERT(balances(answer.mass.actual));
        RC_ASSERT(balances(answer.mass.allowed));
        RC_ASSERT(is_told_by_inputs(answer));
        RC_ASSERT(answer.cost.quoted == answer.saved_cost);
        RC_ASSERT(answer.plugins.empty());
    }));
}

TEST_CASE("an order made exactly as its quote allows differs by volume alone, whatever was made of it") {
    CHECK(holds_for_seeds(300, [](std::uint64_t seed) {
        Draws draws(seed);
        const auto production = as_allowed(draws);
        const auto answer = production.cost(production.saved->plant.plant);
        const auto item = answers::variances_of(answer.cost);
        const auto over_kg = production.over * production.order.box_area_m2 * production.order.grammage_gsm / 1000;
        RC_ASSERT(std::abs(answer.mass.actual.floor - over_kg) < 1e-9);
        RC_ASSERT(item.usage == Money());
        RC_ASSERT(item.price == Money());
        if (production.over > 0) return;
        RC_ASSERT(item.yield == Money());
        RC_ASSERT(is_all(item.volume, answer));
        RC_ASSERT((production.boxes == production.order.quantity) == (item.volume == Money()));
    }));
}

TEST_CASE("blanks that full sheets hold beyond what the next machine takes stand on the floor: no loss and no credit") {
    bool has_any = false;
    CHECK(holds_for_seeds(300, [&](std::uint64_t seed) {
        Draws draws(seed);
        const auto production = as_allowed(draws);
        if (production.over == 0) return;
        has_any = true;
        const auto answer = production.cost(production.saved->plant.plant);
        Money recovery;
        for (const auto& line : answer.lines) {
            // What scrap brings and costs by the kilogram; nothing else knows of them.
            const bool is_by_scrap = line.plugin == "scrap" || line.plugin == "energy";
            RC_ASSERT((is_by_scrap || line.cost.converted == line.cost.standard));
            if (line.cost_class == contract::CostClass::recovery) recovery += line.cost.converted - line.cost.standard;
        }
        RC_ASSERT(recovery >= Money());
    }));
    CHECK(has_any);
}

TEST_CASE("more metres on the corrugator are usage and nothing else, and dearer") {
    CHECK(holds_for_seeds(100, [](std::uint64_t seed) {
        Draws draws(seed);
        auto production = as_allowed(draws);
        if (production.over > 0) return;
        production.metres *= draws.between(1.01, 1.2);
        const auto answer = production.cost(production.saved->plant.plant);
        const auto item = answers::variances_of(answer.cost);
        RC_ASSERT(is_all(item.volume + item.usage, answer));
        RC_ASSERT(item.yield == Money());
        RC_ASSERT(item.price == Money());
        RC_ASSERT(item.usage > Money());
    }));
}

TEST_CASE("paper that became dearer since is price and nothing else: what was used times what it rose by") {
    CHECK(holds_for_seeds(100, [](std::uint64_t seed) {
        Draws draws(seed);
        const auto production = as_allowed(draws);
        if (production.over > 0) return;
        auto today = production.saved->plant.plant;
        const double rise = draws.between(1, 90);
        for (auto& paper : today.papers)
            for (auto& price : paper.prices) price.per_tonne += rise;
        const auto answer = production.cost(today);
        const auto item = answers::variances_of(answer.cost);
        RC_ASSERT(is_all(item.volume + item.price, answer));
        RC_ASSERT(item.yield == Money());
        RC_ASSERT(item.usage == Money());
        RC_ASSERT(std::abs(item.price.to_double() - answer.mass.actual.issued * rise / 1000) < 0.0005);
    }));
}

TEST_CASE("more rejects at a machine, and the sheets made for them as allowed, are yield and nothing else") {
    CHECK(holds_for_seeds(100, [](std::uint64_t seed) {
        Draws draws(seed);
        auto production = as_allowed(draws);
        if (production.runs.empty()) return;
        const double more = production.order.outs * std::ceil(production.good_sheets * 0.01);
        production.runs.front().fed += more;
        production.runs.front().rejected += more;
        production.good_sheets += more;
        const auto allowed = production.order.find_corrugator(production.order.corrugator);
        production.metres = run::web_length(
            run::cuts(production.good_sheets, production.order.outs) * (production.order.chop_mm / 1000),
            allowed->run_waste, production.change_m);
        const auto answer = production.cost(production.saved->plant.plant);
        const auto item = answers::variances_of(answer.cost);
        RC_ASSERT(is_all(item.volume + item.yield, answer));
        RC_ASSERT(item.usage == Money());
        RC_ASSERT(item.price == Money());
        RC_ASSERT(item.yield > Money());
    }));
}
