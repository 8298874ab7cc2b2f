// What must hold for every layout of generated plants and orders.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <flutebook/run.hpp>
#include <optional>
#include <sstream>
#include <tuple>

#include "host/geometry/layout.hpp"
#include "host/geometry/refused.hpp"
#include "tests/support/generated_plants.hpp"

using namespace flutebook;
using geometry::Candidate;
using geometry::lay_out;
using geometry::Layout;
using geometry::Refused;
using geometry::Route;

namespace {

constexpr double hair_mm = 1e-6;

template <typename Property>
void for_generated_orders(std::uint64_t in_full, Property property) {
    for (std::uint64_t seed = 0; seed < fixture::seeds_to_try(in_full); ++seed) {
        const fixture::Generated order = fixture::generated_order(seed);
        CAPTURE(seed);
        property(order, lay_out(order.plant, order.request));
    }
}

template <typename Property>
void for_generated_candidates(std::uint64_t in_full, Property property) {
    for_generated_orders(in_full, [&](const fixture::Generated&, const Layout& layout) {
        for (const Candidate& candidate : layout.candidates) property(candidate, layout);
    });
}

bool keeps(double length_mm, const fields::Span& limits) {
    return length_mm > limits.low - hair_mm && length_mm < limits.high + hair_mm;
}

// One way to make an order, feasible or not.
struct Trial {
    const plant::Corrugator* corrugator;
    double roll_mm;
    const Route* route;
    double nx, ny;
};

// Section by section as a planner would go through it, with no eye to speed: the machines' limits, then the web's.
bool is_feasible(const Trial& trial, const fixture::Generated& order, const blanks::Blank& blank) {
    using Kind = plant::Converter::Kind;
    const auto& machines = trial.route->converters;
    const auto parts = [](const auto* machine) {
        return machine->kind == Kind::die_cutter || machine->kind == Kind::slitter;
    };
    const auto die = std::find_if(machines.begin(), machines.end(), parts);
    const double between = die == machines.end() ? 0 : (*die)->between_mm;
    const double edge = die == machines.end() ? 0 : (*die)->edge_mm;
    const double chop = trial.nx * blank.length_mm + (trial.nx - 1) * between + 2 * edge;
    const double slit = trial.ny * blank.width_mm + (trial.ny - 1) * between + 2 * edge;
    bool parted = false;
    bool has_colours = order.request.colours == 0;
    for (const plant::Converter* machine : machines) {
        if (!keeps(parted ? blank.length_mm : chop, machine->length_mm)) return false;
        if (!keeps(parted ? blank.width_mm : slit, machine->width_mm)) return false;
        const bool is_one_up =
            machine->kind == Kind::folder_gluer || machine->kind == Kind::stitcher || machine->kind == Kind::hand;
        if (!parted && is_one_up && trial.nx * trial.ny > 1) return false;
        parted = parted || parts(machine);
        has_colours = has_colours || machine->colours >= order.request.colours;
    }
    const plant::Corrugator& corrugator = *trial.corrugator;
    return has_colours && keeps(chop, corrugator.chop_mm) && keeps(slit, corrugator.slit_mm) &&
           keeps(trial.roll_mm, corrugator.roll_width_mm) &&
           run::whole_down((trial.roll_mm - corrugator.trim_min_mm) / slit) >= 1;
}

bool all_plies_stocked(const fixture::Generated& order, double roll_mm) {
    const auto& plies = order.plant.boards[order.request.board].plies;
    return std::all_of(plies.begin(), plies.end(), [&](const plant::Board::Ply& ply) {
        const auto& rolls = order.plant.paper(ply.paper).roll_widths_mm;
        return std::find(rolls.begin(), rolls.end(), roll_mm) != rolls.end();
    });
}

std::vector<double> every_roll_width(const plant::Plant& plant) {
    std::vector<double> widths;
    for (const plant::Paper& paper : plant.papers)
        widths.insert(widths.end(), paper.roll_widths_mm.begin(), paper.roll_widths_mm.end());
    std::sort(widths.begin(), widths.end());
    widths.erase(std::unique(widths.begin(), widths.end()), widths.end());
    return widths;
}

// Every sheet on this roll, or, without one, each on a roll as wide as the sheet.
void add_trials(std::vector<Trial>& trials, const Layout& layout, const plant::Corrugator& maker,
                std::optional<double> roll_mm) {
    for (const Route& route : layout.routes) {
        const plant::Converter* parting = route.parting_machine();
        const double most = parting != nullptr ? parting->ups_max : 1;
        const double between = parting != nullptr ? parting->between_mm : 0, edge = parting ? parting->edge_mm : 0;
        for (double nx = 1; nx <= most; ++nx)
            for (double ny = 1; nx * ny <= most; ++ny) {
                const double slit = ny * layout.blank.width_mm + (ny - 1) * between + 2 * edge;
                trials.push_back({&maker, roll_mm.value_or(slit), &route, nx, ny});
            }
    }
}

// Every combination, in the order that decides ties.
std::vector<Trial> every_trial(const fixture::Generated& order, const Layout& layout) {
    std::vector<Trial> trials;
    const plant::Corrugator* supplier = order.plant.supplier_of(order.plant.boards[order.request.board]);
    if (supplier != nullptr) add_trials(trials, layout, *supplier, std::nullopt);
    for (const double roll : every_roll_width(order.plant))
        if (supplier == nullptr && all_plies_stocked(order, roll))
            for (const plant::Corrugator& corrugator : order.plant.corrugators)
                add_trials(trials, layout, corrugator, roll);
    const auto rank = [](const Trial& trial) {
        return std::make_tuple(trial.roll_mm, trial.nx * trial.ny, trial.nx, trial.corrugator, trial.route);
    };
    std::sort(trials.begin(), trials.end(), [&](const Trial& a, const Trial& b) { return rank(a) < rank(b); });
    return trials;
}

bool is_same(const Trial& trial, const Candidate& candidate) {
    return trial.corrugator == candidate.corrugator && trial.roll_mm == candidate.roll_width_mm &&
           trial.route == candidate.route && trial.nx == candidate.nx && trial.ny == candidate.ny;
}

std::vector<std::string> parts_of(const std::string& name) {
    std::vector<std::string> parts;
    for (std::size_t begin = 0; begin <= name.size();) {
        const std::size_t end = std::min(name.find(", ", begin), name.size());
        parts.push_back(name.substr(begin, end - begin));
        begin = end + 2;
    }
    return parts;
}

// "5 or more along the chop", "1 to 3 across the web", "2 along the chop".
bool counts(const std::string& part, double boxes) {
    std::istringstream words(part);
    double first = 0, last = 0;
    std::string second;
    words >> first >> second;
    if (second == "or") return boxes >= first;
    if (second == "to") words >> last;
    return second == "to" ? boxes >= first && boxes <= last : boxes == first;
}

// Whether an entry stands for a combination: each part of its name must fit it.
bool stands_for(const Refused& entry, const Trial& trial, plant::Units units) {
    const std::string roll = "roll " + geometry::length_text(trial.roll_mm, units);
    for (const std::string& part : parts_of(entry.candidate)) {
        if (part == trial.corrugator->code || part == roll || part == name_of(*trial.route)) continue;
        if (part.find("along the chop") != std::string::npos && counts(part, trial.nx)) continue;
        if (part.find("across the web") != std::string::npos && counts(part, trial.ny)) continue;
        if (part == "2 or more on a sheet" && trial.nx * trial.ny > 1) continue;
        return false;
    }
    return true;
}

}  // namespace

TEST_CASE("every way that keeps to every limit is a candidate, and no other, in the order that decides ties") {
    for_generated_orders(4000, [](const fixture::Generated& order, const Layout& layout) {
        std::size_t next = 0;
        for (const Trial& trial : every_trial(order, layout)) {
            if (!is_feasible(trial, order, layout.blank)) continue;
            REQUIRE(next < layout.candidates.size());
            REQUIRE(is_same(trial, layout.candidates[next]));
            ++next;
        }
        REQUIRE(next == layout.candidates.size());
    });
}

TEST_CASE("the limits reported cover every way that is impossible, and none that is possible") {
    for_generated_orders(2000, [](const fixture::Generated& order, const Layout& layout) {
        const std::vector<Trial> trials = every_trial(order, layout);
        if (trials.empty()) return;
        const std::vector<Refused> told = why_nothing_fits(
            order.plant, order.request, geometry::route_needs(order.plant, order.request), layout.blank, layout.routes);
        for (const Trial& trial : trials) {
            const bool is_told = std::any_of(told.begin(), told.end(), [&](const Refused& entry) {
                return stands_for(entry, trial, order.plant.units);
            });
            CAPTURE(trial.corrugator->code, trial.roll_mm, name_of(*trial.route), trial.nx, trial.ny);
            REQUIRE(is_told != is_feasible(trial, order, layout.blank));
        }
    });
}

TEST_CASE("an order has candidates or reasons, never both and never neither") {
    for_generated_orders(4000, [](const fixture::Generated&, const Layout& layout) {
        REQUIRE(layout.candidates.empty() != layout.refused.empty());
    });
}

TEST_CASE("outs by slit width, and the trim, are the roll width") {
    for_generated_candidates(3000, [](const Candidate& candidate, const Layout&) {
        REQUIRE(std::abs(candidate.outs * candidate.slit_mm + candidate.trim_mm - candidate.roll_width_mm) < hair_mm);
    });
}

TEST_CASE("trim is never below the corrugator's least, except for rounding") {
    for_generated_candidates(3000, [](const Candidate& candidate, const Layout&) {
        REQUIRE(candidate.trim_mm >= candidate.corrugator->trim_min_mm - 1e-9 * candidate.slit_mm);
    });
}

TEST_CASE("one more out would not fit the roll, or the corrugator has no knife for it") {
    for_generated_candidates(3000, [](const Candidate& candidate, const Layout&) {
        const double left_mm = candidate.trim_mm - candidate.corrugator->trim_min_mm;
        REQUIRE((left_mm < candidate.slit_mm || candidate.outs == candidate.corrugator->outs_max));
    });
}

TEST_CASE("outs are a whole number, at least one and at most the corrugator's") {
    for_generated_candidates(3000, [](const Candidate& candidate, const Layout&) {
        REQUIRE(candidate.outs == std::floor(candidate.outs));
        REQUIRE(candidate.outs >= 1);
        REQUIRE(candidate.outs <= candidate.corrugator->outs_max);
    });
}

TEST_CASE("a sheet's area is its chop by its slit width on every plant") {
    for_generated_candidates(3000, [](const Candidate& candidate, const Layout&) {
        REQUIRE(candidate.sheet_area_m2 == Approx(candidate.chop_mm * candidate.slit_mm / 1e6).epsilon(1e-14));
    });
}

TEST_CASE("the boxes on a sheet never cover more than the sheet") {
    for_generated_candidates(3000, [](const Candidate& candidate, const Layout& layout) {
        REQUIRE(candidate.ups * layout.blank.area_m2 <= candidate.sheet_area_m2 * (1 + 1e-12));
    });
}

TEST_CASE("a box is never more than the rectangle it is cut from") {
    for_generated_orders(3000, [](const fixture::Generated&, const Layout& layout) {
        REQUIRE(layout.blank.area_m2 <= layout.blank.length_mm * layout.blank.width_mm * 1e-6 * (1 + 1e-12));
    });
}

TEST_CASE("boxes along by boxes across are the boxes on a sheet") {
    for_generated_candidates(
        3000, [](const Candidate& candidate, const Layout&) { REQUIRE(candidate.nx * candidate.ny == candidate.ups); });
}

TEST_CASE("no two candidates have one name") {
    for_generated_orders(300, [](const fixture::Generated& order, const Layout& layout) {
        std::vector<std::string> names;
        for (const Candidate& candidate : layout.candidates) names.push_back(name_of(candidate, order.plant.units));
        std::sort(names.begin(), names.end());
        REQUIRE(std::adjacent_find(names.begin(), names.end()) == names.end());
    });
}

TEST_CASE("an order laid out twice is laid out alike") {
    for_generated_orders(500, [](const fixture::Generated& order, const Layout& layout) {
        const Layout again = lay_out(order.plant, order.request);
        REQUIRE(again.candidates.size() == layout.candidates.size());
        for (std::size_t i = 0; i < layout.candidates.size(); ++i)
            REQUIRE(name_of(again.candidates[i]) == name_of(layout.candidates[i]));
    });
}

TEST_CASE("most generated orders can be made, and some cannot") {
    std::size_t result = 0;
    for_generated_orders(
        1000, [&](const fixture::Generated&, const Layout& layout) { result += !layout.candidates.empty(); });
    const double tried = static_cast<double>(fixture::seeds_to_try(1000));
    REQUIRE(static_cast<double>(result) > 0.6 * tried);
    REQUIRE(static_cast<double>(result) < tried);
}
