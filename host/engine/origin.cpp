// Where each fact was written, by its name: machines, papers, flutes and the request keep the places of their keys.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "host/base/date.hpp"
#include "host/box_styles/machine_kind.hpp"
#include "host/engine/facts.hpp"
#include "host/geometry/refused.hpp"
#include "host/plant/machine_list.hpp"
#include "host/plant/maker_text.hpp"

namespace flutebook::engine {
namespace {

using base::Place;
using base::Places;

// Each place once: a paper may be in a board twice.
void add(FactOrigin& origin, const Places& places, const std::string& key) {
    const auto found = places.find(key);
    if (found == places.end()) return;
    const auto is_there = [&](const Place& place) {
        return base::place_text(place) == base::place_text(found->second);
    };
    if (std::none_of(origin.places.begin(), origin.places.end(), is_there)) origin.places.push_back(found->second);
}

// The key of a step fact, in the file's words: of the corrugator, of a converter, of dispatch.
struct StepKeys {
    const char *corrugator, *converter, *dispatch;
};

const std::map<std::string, StepKeys>& step_keys() {
    static const std::map<std::string, StepKeys> keys{
        {"step.run_waste", {"run_waste", "run_waste", ""}},
        {"step.setup_sheets", {"", "setup.sheets", ""}},
        {"step.setup_time", {"order_change.minutes", "setup.minutes", "minutes"}},
        {"step.speed", {"", "speed", ""}},
        {"step.power", {"power", "power", ""}},
        {"step.labour_rate", {"hourly.labour", "hourly.labour", "hourly.labour"}},
        {"step.fixed_rate", {"hourly.fixed", "hourly.fixed", "hourly.fixed"}},
    };
    return keys;
}

bool is_bought(const Row& row) {
    return row.candidate->corrugator->is_supplier;
}

const plant::Board& board_of(const Row& row) {
    return row.order->plant->boards[row.order->request->board];
}

// A key of who makes the board's sheets: a corrugator, or a supplier, who has few of them.
FactOrigin of_maker(const std::string& key, const Row& row) {
    const plant::Corrugator& maker = *row.candidate->corrugator;
    FactOrigin result{fmt::format("{} of {}", key, maker.code), {}};
    add(result, maker.places, key);
    if (maker.is_supplier && result.places.empty())
        result.how =
            fmt::format("nothing of the kind here: board {} is {}", board_of(row).code, plant::maker_text(maker));
    return result;
}

FactOrigin of_step(const StepKeys& keys, const Row& row, std::size_t step) {
    const auto machine = machine_index(row, step);
    const bool is_dispatch = step + 1 == row.steps();
    const std::string key = step == 0 ? keys.corrugator : is_dispatch ? keys.dispatch : keys.converter;
    FactOrigin result{"", {}};
    if (key.empty()) {
        result.how = "has no meaning at this step";
        return result;
    }
    if (step == 0) return of_maker(key, row);
    add(result, plant::machine_places(*row.order->plant, machine), key);
    result.how = fmt::format("{} of {}", key, plant::machine_code(*row.order->plant, machine));
    return result;
}

const char* kind_name(const Row& row, std::size_t step) {
    if (step == 0) return is_bought(row) ? "supplier" : "corrugator";
    return step + 1 == row.steps() ? "dispatch" : box_styles::spelled(row.candidate->route->converters[step - 1]->kind);
}

FactOrigin of_kind(const Row& row, std::size_t step) {
    FactOrigin result = of_step({"", "kind", ""}, row, step);
    if (result.places.empty()) result.how = "where the order begins and ends";
    result.choice = kind_name(row, step);
    return result;
}

FactOrigin of_bought_ply(const std::string& name, const Row& row, const plant::Paper& sheet) {
    FactOrigin result{fmt::format("board {} is bought as sheets, and is its own one ply", sheet.code), {}};
    const auto* price = sheet.price_on(row.order->request->date);
    if (name == "ply.price" && price != nullptr) {
        result.how = fmt::format("price of board {} on {}: {} a m2, of {} g", sheet.code,
                                 base::to_string(row.order->request->date), price->per_m2, sheet.grammage_gsm);
        result.places.push_back(price->place);
    }
    if (name == "ply.price" || name == "ply.grammage") add(result, sheet.places, "grammage");
    return result;
}

FactOrigin of_ply(const std::string& name, const Row& row, std::size_t index) {
    const geometry::PlyMake& ply = row.order->layout->board.plies[index];
    const plant::Paper& paper = row.order->plant->paper(ply.paper);
    if (is_bought(row)) return of_bought_ply(name, row, paper);
    FactOrigin result{fmt::format("{} of {}", name.substr(4), paper.code), {}};
    if (name == "ply.kind") {
        result.choice = ply.flute == nullptr ? "liner" : "medium";
        result.how = fmt::format("{} is a {} of the board", paper.code, result.choice);
    } else if (name == "ply.price") {
        if (const auto* price = paper.price_on(row.order->request->date)) result.places.push_back(price->place);
        result.how = fmt::format("price of {} on {}", paper.code, base::to_string(row.order->request->date));
    } else if (name == "ply.grammage" || name == "ply.moisture") {
        add(result, paper.places, name.substr(4));
    } else if (ply.flute != nullptr) {
        result.how = fmt::format("{} of flute {}", name.substr(4), ply.flute->code);
        for (const char* key : {"take_up", "adhesive.single_facer", "adhesive.double_backer"})
            if ((name == "ply.take_up") == (std::string_view(key) == "take_up")) add(result, ply.flute->places, key);
    } else {
        result.how = name == "ply.take_up" ? "a liner runs as it is: 1" : "a liner carries no adhesive";
    }
    return result;
}

FactOrigin of_request(const std::string& key, const Row& row) {
    FactOrigin result{key + " of the request", {}};
    for (const auto& [name, place] : row.order->request->places)
        if (name == key || name.rfind(key + ".", 0) == 0) result.places.push_back(place);
    return result;
}

// What the request asks for, at the first machine of the route that has so many.
FactOrigin of_colours(const Row& row, std::size_t step) {
    const std::size_t printing = row.candidate->route->colours_step;
    if (step != printing || printing == 0)
        return {printing == 0 ? "nothing is printed" : fmt::format("step {} prints", printing), {}};
    FactOrigin result = of_request("colours", row);
    const auto machine = machine_index(row, step);
    add(result, plant::machine_places(*row.order->plant, machine), "colours");
    result.how += fmt::format(", printed at {}", plant::machine_code(*row.order->plant, machine));
    return result;
}

FactOrigin of_quantity(const Row& row) {
    FactOrigin result = of_request("quantities", row);
    const blanks::BlankPiece& piece = row.order->layout->piece;
    if (!piece.name.empty()) result.how += fmt::format(", {} of {} to a set", piece.count, piece.name);
    return result;
}

FactOrigin of_margin(const Row& row) {
    using From = orders::OrderMargin::From;
    const orders::OrderMargin margin = margin_of(row);
    if (margin.from == From::request) return of_request("margin", row);
    return {margin.from == From::customer ? "margin of customer " + row.order->request->customer : "margin by quantity",
            {margin.place}};
}

FactOrigin of_style(const Row& row) {
    FactOrigin result = of_request("style", row);
    result.how = "the pieces of style " + row.order->request->style;
    return result;
}

FactOrigin of_blank(const Row& row) {
    const orders::Request& request = *row.order->request;
    FactOrigin result = of_request(request.outline ? "outline" : "inside", row);
    const plant::Board& board = row.order->plant->boards[request.board];
    result.how = "blank of style " + request.style;
    const auto* allowance = row.order->plant->find_allowance(board.flutes, request.style);
    if (allowance == nullptr || row.order->layout->blank.joint_mm == 0) return result;
    result.how += " with the allowances of " + board.flutes;
    for (const auto& [key, place] : allowance->places) result.places.push_back(place);
    return result;
}

FactOrigin of_sheet(const Row& row) {
    FactOrigin result = of_blank(row);
    const geometry::Candidate& candidate = *row.candidate;
    result.how = fmt::format("layout: {} x {} boxes on a sheet, from the {}", candidate.nx, candidate.ny, result.how);
    if (const plant::Converter* parting = candidate.route->parting_machine())
        for (const char* key : {"between", "edge"}) add(result, parting->places, key);
    return result;
}

FactOrigin of_caliper(const Row& row, const plant::Board& board) {
    if (board.caliper_place) return {"caliper of board " + board.code, {*board.caliper_place}};
    FactOrigin result{"board " + board.code + ": the heights of its flutes, and its liners at 700 g/m2 a mm",
                      {board.place}};
    for (const geometry::PlyMake& ply : row.order->layout->board.plies)
        if (ply.flute != nullptr)
            add(result, ply.flute->places, "height");
        else
            add(result, row.order->plant->paper(ply.paper).places, "grammage");
    return result;
}

FactOrigin of_grammage(const Row& row, const plant::Board& board) {
    if (board.is_bought()) return of_bought_ply("ply.grammage", row, row.order->plant->paper(board.plies[0].paper));
    FactOrigin result{"board " + board.code + ": papers by take-up, and dry adhesive", {board.place}};
    for (const geometry::PlyMake& ply : row.order->layout->board.plies) {
        add(result, row.order->plant->paper(ply.paper).places, "grammage");
        if (ply.flute == nullptr) continue;
        for (const char* key : {"take_up", "adhesive.single_facer", "adhesive.double_backer"})
            add(result, ply.flute->places, key);
    }
    return result;
}

FactOrigin of_making(const Row& row) {
    const plant::Corrugator& maker = *row.candidate->corrugator;
    FactOrigin result{(maker.is_supplier ? "" : "made by ") + plant::maker_text(maker), {}};
    add(result, maker.places, "from");
    return result;
}

// How the order pays for its web, where it says so: in the request, else in the plant's file.
FactOrigin with_trim(FactOrigin result, const Row& row) {
    const plant::TrimPolicy& trim = row.order->trim;
    if (!trim.share) return result;
    const auto told = of_request("trim", row);
    result.how += fmt::format("; trim is shared: {} of the board, {} of an order change", *trim.share, trim.changes);
    result.places.insert(result.places.end(), told.places.begin(), told.places.end());
    if (!told.places.empty()) return result;
    for (const auto& [name, place] : row.order->plant->places)
        if (name.rfind("trim", 0) == 0) result.places.push_back(place);
    return result;
}

FactOrigin of_web(const Row& row) {
    if (is_bought(row)) return of_sheet(row);  // ordered in the size wanted
    FactOrigin result{fmt::format("layout: {} out on a roll of {} at {}", row.candidate->outs,
                                  geometry::length_text(row.candidate->roll_width_mm, row.order->plant->units),
                                  row.candidate->corrugator->code),
                      {}};
    for (const geometry::PlyMake& ply : row.order->layout->board.plies)
        add(result, row.order->plant->paper(ply.paper).places, "roll_widths");
    return result;
}

}  // namespace

FactOrigin origin(const Fact& fact, const Row& row, std::size_t index) {
    const std::string& name = fact.name.name;
    if (const auto keys = step_keys().find(name); keys != step_keys().end()) {
        FactOrigin result = of_step(keys->second, row, index);
        return name == "step.setup_time" && index == 0 ? with_trim(std::move(result), row) : result;
    }
    if (name == "step.kind") return of_kind(row, index);
    if (name == "step.colours") return of_colours(row, index);
    if (name == "step.piece_area" || name.rfind("sheet.", 0) == 0) return of_sheet(row);
    if (name == "step.parting") return {"the step of the route where boxes part from the sheet", {}};
    if (name.rfind("ply.", 0) == 0) return of_ply(name, row, index);
    if (name == "order.quantity") return of_quantity(row);
    if (name == "order.piece" || name == "order.pieces") return of_style(row);
    if (name == "order.margin") return of_margin(row);
    if (name == "order.date") return of_request("date", row);
    if (name.starts_with(contract::cost_prefix)) {
        const bool has_others = row.order->piece.pieces > 1 && index + 1 == row.steps();
        return {has_others ? "added up from the lines of all models that need no cost, the other pieces' among them"
                           : "added up from the lines of all models that need no cost",
                {}};
    }
    if (name == "order.colours") return of_request("colours", row);
    if (name.rfind("inside.", 0) == 0) return of_request("inside", row);
    if (name.rfind("blank.", 0) == 0 || name.rfind("box.", 0) == 0) return of_blank(row);
    if (name.rfind("board.", 0) == 0) {
        const plant::Board& board = board_of(row);
        if (name == "board.made_here") return of_making(row);
        return name == "board.caliper" ? of_caliper(row, board) : of_grammage(row, board);
    }
    if (name == "web.order_change") return with_trim(of_maker("order_change.metres", row), row);
    if (name == "web.share") return with_trim(of_web(row), row);
    if (name == "web.roll_loss") return of_maker("roll_loss", row);
    if (name == "web.speed")
        return of_maker(row.order->layout->board.media == 1 ? "speed.single" : "speed.double", row);
    return of_web(row);
}

}  // namespace flutebook::engine
