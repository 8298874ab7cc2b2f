#include "host/engine/facts.hpp"

#include <algorithm>
#include <chrono>

namespace flutebook::engine {
namespace {

using plant::Converter;

// The loop over rows stands here once; Value is inlined into it.
template <double (*Value)(const Row&, std::size_t)>
void fill(std::span<const Row> rows, std::size_t index, double* column) {
    for (std::size_t r = 0; r < rows.size(); ++r) column[r] = Value(rows[r], index);
}

// What all rows of an order have: made once for those that stand together.
template <double (*Value)(const Row&, std::size_t)>
void by_order(std::span<const Row> rows, std::size_t index, double* column) {
    const Order* order = nullptr;
    double value = 0;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (rows[r].order != order) {
            order = rows[r].order;
            value = Value(rows[r], index);
        }
        column[r] = value;
    }
}

double metres(double mm) {
    return mm / 1000;
}

const blanks::Blank& blank(const Row& row) {
    return row.order->layout->blank;
}
const geometry::BoardMake& board(const Row& row) {
    return row.order->layout->board;
}
const geometry::PlyMake& ply(const Row& row, std::size_t index) {
    return board(row).plies[index];
}
const plant::Corrugator& web(const Row& row) {
    return *row.candidate->corrugator;
}

// The converter of a step, or nothing for the corrugator and dispatch.
const Converter* converter(const Row& row, std::size_t step) {
    const auto& converters = row.candidate->route->converters;
    return step >= 1 && step <= converters.size() ? converters[step - 1] : nullptr;
}

double inside(const Row& row, double orders::InsideSize::*dimension) {
    const auto& given = row.order->request->inside;
    return given ? metres((*given).*dimension) : 0;
}

double quantity(const Row& row, std::size_t) {
    return row.order->quantity;
}
double colours(const Row& row, std::size_t) {
    return row.colours();
}
double margin(const Row& row, std::size_t) {
    return margin_of(row).share;
}
double date(const Row& row, std::size_t) {
    return static_cast<double>(std::chrono::sys_days(row.order->request->date).time_since_epoch().count());
}
double piece(const Row& row, std::size_t) {
    return static_cast<double>(row.order->piece.index + 1);
}
double pieces(const Row& row, std::size_t) {
    return static_cast<double>(row.order->piece.pieces);
}
double inside_length(const Row& row, std::size_t) {
    return inside(row, &orders::InsideSize::length_mm);
}
double inside_width(const Row& row, std::size_t) {
    return inside(row, &orders::InsideSize::width_mm);
}
double inside_height(const Row& row, std::size_t) {
    return inside(row, &orders::InsideSize::height_mm);
}
double blank_length(const Row& row, std::size_t) {
    return metres(blank(row).length_mm);
}
double blank_width(const Row& row, std::size_t) {
    return metres(blank(row).width_mm);
}
double box_area(const Row& row, std::size_t) {
    return blank(row).area_m2;
}
double box_joint(const Row& row, std::size_t) {
    return metres(blank(row).joint_mm);
}
double blank_cut(const Row& row, std::size_t) {
    return metres(blank(row).cut_mm);
}
double blank_crease(const Row& row, std::size_t) {
    return metres(blank(row).crease_mm);
}
double box_print_area(const Row& row, std::size_t) {
    return blank(row).print_area_m2;
}
double sheet_chop(const Row& row, std::size_t) {
    return metres(row.candidate->chop_mm);
}
double sheet_slit(const Row& row, std::size_t) {
    return metres(row.candidate->slit_mm);
}
double sheet_area(const Row& row, std::size_t) {
    return row.candidate->sheet_area_m2;
}
double sheet_ups(const Row& row, std::size_t) {
    return row.candidate->ups;
}
double board_grammage(const Row& row, std::size_t) {
    return board(row).grammage_gsm;
}
double board_caliper(const Row& row, std::size_t) {
    return metres(board(row).caliper_mm);
}
double made_here(const Row& row, std::size_t) {
    return web(row).is_supplier ? 0 : 1;
}
double roll_width(const Row& row, std::size_t) {
    return metres(row.candidate->roll_width_mm);
}
double trim(const Row& row, std::size_t) {
    return metres(row.candidate->trim_mm);
}
double outs(const Row& row, std::size_t) {
    return row.candidate->outs;
}
double web_share(const Row& row, std::size_t) {
    const geometry::Candidate& way = *row.candidate;
    return plant::web_share(row.order->trim, way.roll_width_mm - way.trim_mm, way.roll_width_mm);
}
double order_change(const Row& row, std::size_t) {
    return web(row).order_change_m * row.order->trim.changes;
}
double roll_loss(const Row& row, std::size_t) {
    return web(row).roll_loss;
}
double web_speed(const Row& row, std::size_t) {
    return board(row).media == 1 ? web(row).speed_single_m_min : web(row).speed_double_m_min;
}
double parting(const Row& row, std::size_t) {
    return static_cast<double>(row.candidate->route->parting);
}

double ply_grammage(const Row& row, std::size_t p) {
    return ply(row, p).grammage_gsm;
}
double ply_adhesive(const Row& row, std::size_t p) {
    return ply(row, p).adhesive_gsm;
}
double ply_take_up(const Row& row, std::size_t p) {
    return ply(row, p).take_up;
}
double ply_moisture(const Row& row, std::size_t p) {
    return ply(row, p).moisture;
}
double ply_price(const Row& row, std::size_t p) {
    return ply(row, p).price_per_kg;
}

double ply_kind(const Row& row, std::size_t p) {
    return ply(row, p).flute == nullptr ? 0 : 1;
}

double step_kind(const Row& row, std::size_t k) {
    if (k == 0) return 0;
    const Converter* machine = converter(row, k);
    if (machine == nullptr) return 4;
    switch (machine->kind) {
        case Converter::Kind::printer:
            return 1;
        case Converter::Kind::die_cutter:
            return 2;
        case Converter::Kind::folder_gluer:
            return 3;
        case Converter::Kind::slitter:
            return 5;
        case Converter::Kind::stitcher:
            return 6;
        case Converter::Kind::hand:
            return 7;
    }
    return 0;
}
double step_run_waste(const Row& row, std::size_t k) {
    const Converter* machine = converter(row, k);
    return k == 0 ? web(row).run_waste : machine != nullptr ? machine->run_waste : 0;
}
double step_setup_sheets(const Row& row, std::size_t k) {
    const Converter* machine = converter(row, k);
    return machine != nullptr ? machine->setup_sheets : 0;
}
double step_colours(const Row& row, std::size_t k) {
    return k != 0 && k == row.candidate->route->colours_step ? row.colours() : 0;
}
double step_setup_time(const Row& row, std::size_t k) {
    const Converter* machine = converter(row, k);
    return k == 0               ? web(row).order_change_min * row.order->trim.changes
           : machine != nullptr ? machine->setup_min
                                : row.order->plant->dispatch.minutes;
}
double step_speed(const Row& row, std::size_t k) {
    const Converter* machine = converter(row, k);
    return machine != nullptr ? machine->speed_per_h : 0;
}
double step_power(const Row& row, std::size_t k) {
    const Converter* machine = converter(row, k);
    return k == 0 ? web(row).power_kw : machine != nullptr ? machine->power_kw : 0;
}
const plant::Hourly& hourly(const Row& row, std::size_t k) {
    const Converter* machine = converter(row, k);
    return k == 0 ? web(row).hourly : machine != nullptr ? machine->hourly : row.order->plant->dispatch.hourly;
}
double step_labour_rate(const Row& row, std::size_t k) {
    return hourly(row, k).labour;
}
double step_fixed_rate(const Row& row, std::size_t k) {
    return hourly(row, k).fixed;
}
double piece_area(const Row& row, std::size_t k) {
    return k <= row.candidate->route->parting ? row.candidate->sheet_area_m2 : blank(row).area_m2;
}

constexpr contract::Range any_size{0, 1e9};
constexpr contract::Range share{0, 1};

constexpr bool fixed = false;
constexpr bool replaceable = true;

std::vector<Fact> order_facts() {
    using enum contract::Axis;
    return {
        {{"order.quantity",
          "1",
          "boxes ordered (sheets, where nothing converts them); of a piece of a set, the sets times its count",
          {1, 1e7},
          order},
         fixed,
         by_order<quantity>},
        {{"order.colours", "1", "colours asked for", {0, 100}, order}, fixed, fill<colours>},
        {{"order.margin", "1", "share of the price that is to be kept", {-1e3, 1}, order}, fixed, fill<margin>},
        {{"order.date", "d", "day of the request, counted from 1970-01-01", {-1e6, 1e6}, order}, fixed, by_order<date>},
        {{"order.piece", "1", "which piece of a set it is, from 1; 1 of a box of one piece", {1, 100}, order},
         fixed,
         by_order<piece>},
        {{"order.pieces", "1", "different pieces that make the box", {1, 100}, order}, fixed, by_order<pieces>},
        {{"inside.length", "m", "inside length of the box; 0 if none", any_size, order},
         fixed,
         by_order<inside_length>},
        {{"inside.width", "m", "inside width of the box; 0 if none", any_size, order}, fixed, by_order<inside_width>},
        {{"inside.height", "m", "inside height of the box; 0 if none", any_size, order},
         fixed,
         by_order<inside_height>},
        {{"blank.length", "m", "the box laid flat, along the web", any_size, order}, fixed, by_order<blank_length>},
        {{"blank.width", "m", "the box laid flat, along the flutes", any_size, order}, fixed, by_order<blank_width>},
        {{"box.area", "m2", "board in one finished box", any_size, order}, fixed, by_order<box_area>},
        {{"box.joint", "m", "length of the maker's joint; 0 if none", any_size, order}, fixed, by_order<box_joint>},
        {{"blank.cut", "m", "edges of the blank that are cut; 0 of an outline", any_size, order},
         fixed,
         by_order<blank_cut>},
        {{"blank.crease", "m", "creases of the blank; 0 of an outline", any_size, order},
         fixed,
         by_order<blank_crease>},
        {{"box.print_area", "m2", "the box's area that may be printed", any_size, order},
         fixed,
         by_order<box_print_area>},
    };
}

std::vector<Fact> board_facts() {
    using enum contract::Axis;
    return {
        {{"sheet.chop", "m", "the sheet along the web", any_size, order}, fixed, fill<sheet_chop>},
        {{"sheet.slit", "m", "the sheet across the web", any_size, order}, fixed, fill<sheet_slit>},
        {{"sheet.area", "m2", "board in one sheet off the corrugator", any_size, order}, fixed, fill<sheet_area>},
        {{"sheet.ups", "1", "boxes on a sheet", {1, 1e6}, order}, fixed, fill<sheet_ups>},
        {{"board.grammage", "g/m2", "combined board: papers by take-up, and dry adhesive", any_size, order},
         fixed,
         by_order<board_grammage>},
        {{"board.caliper", "m", "thickness: the board's own, else the flutes' heights and the liners", any_size, order},
         fixed,
         by_order<board_caliper>},
        {{"board.made_here", "1", "1 where the board is made here, 0 where it is bought as sheets", share, order},
         fixed,
         fill<made_here>},
        {{"web.roll_width", "m", "width of the rolls that are run", any_size, order}, fixed, fill<roll_width>},
        {{"web.trim", "m", "roll width less the sheets side by side", any_size, order}, fixed, fill<trim>},
        {{"web.outs", "1", "sheets side by side on the web", {1, 1e6}, order}, fixed, fill<outs>},
        {{"web.share", "1", "the part of its web that the order pays; 1 unless trim is shared", any_size, order},
         fixed,
         fill<web_share>},
        {{"web.order_change", "m", "web lost at the order change", any_size, order}, replaceable, fill<order_change>},
        {{"web.roll_loss", "1", "share of issued paper that never reaches the web", share, order},
         replaceable,
         fill<roll_loss>},
        {{"web.speed", "m/min", "corrugator speed for this board", any_size, order}, replaceable, fill<web_speed>},
        {{"step.parting", "1", "the step where boxes part from the sheet", {0, 1000}, order}, fixed, fill<parting>},
    };
}

std::vector<Fact> ply_facts() {
    using enum contract::Axis;
    return {
        {{"ply.grammage", "g/m2", "air-dry mass of the ply's paper", any_size, ply}, fixed, by_order<ply_grammage>},
        {{"ply.adhesive", "g/m2", "dry adhesive of the flute's glue lines, on its medium", any_size, ply},
         fixed,
         by_order<ply_adhesive>},
        {{"ply.take_up", "1", "metres of the ply per metre of board", {1, 2}, ply}, fixed, by_order<ply_take_up>},
        {{"ply.moisture", "1", "water in the ply's paper", share, ply}, fixed, by_order<ply_moisture>},
        {{"ply.kind", "1", "0 liner, 1 medium", {0, 1}, ply}, fixed, by_order<ply_kind>},
        {{"ply.price", "money/kg", "the paper's price on the request's date", any_size, ply},
         replaceable,
         by_order<ply_price>},
    };
}

std::vector<Fact> step_facts() {
    using enum contract::Axis;
    return {
        {{"step.kind",
          "1",
          "0 corrugator, 1 printer, 2 die cutter, 3 folder-gluer, 4 dispatch, 5 slitter, 6 stitcher, 7 hand",
          {0, 7},
          step},
         fixed,
         fill<step_kind>},
        {{"step.run_waste", "1", "share of what is fed that is lost while running", share, step},
         replaceable,
         fill<step_run_waste>},
        {{"step.setup_sheets", "1", "pieces spent on setting the machine", any_size, step},
         replaceable,
         fill<step_setup_sheets>},
        {{"step.colours", "1", "the colours asked for, at the machine that prints them", {0, 100}, step},
         fixed,
         fill<step_colours>},
        {{"step.setup_time", "min", "setting the machine; the order change at step 0", any_size, step},
         replaceable,
         fill<step_setup_time>},
        {{"step.speed", "1/h", "pieces an hour; 0 for the corrugator and dispatch", any_size, step},
         replaceable,
         fill<step_speed>},
        {{"step.power", "kW", "electrical power while running", any_size, step}, replaceable, fill<step_power>},
        {{"step.labour_rate", "money/h", "crew, by the hour", any_size, step}, replaceable, fill<step_labour_rate>},
        {{"step.fixed_rate", "money/h", "the machine's plant cost, by the hour", any_size, step},
         replaceable,
         fill<step_fixed_rate>},
        {{"step.piece_area", "m2", "one piece: the sheet up to the parting step, the box after it", any_size, step},
         fixed,
         fill<piece_area>},
    };
}

// Of all models that need none of these.
std::vector<Fact> cost_facts() {
    static constexpr std::array<const char*, cost_names.size()> meanings = {
        "material charged by other models",    "energy charged by other models",
        "system cost charged by other models", "waste management charged by other models",
        "what scrap brings, negative",         "the sum of the five other costs"};
    constexpr contract::Range any_money{-1e12, 1e12};
    std::vector<Fact> result;
    for (std::size_t i = 0; i < cost_names.size(); ++i)
        result.push_back({{cost_names[i], "money", meanings[i], any_money, contract::Axis::step}, fixed, nullptr});
    return result;
}

std::vector<Fact> make_facts() {
    std::vector<Fact> result = order_facts();
    for (auto& more : {board_facts(), ply_facts(), step_facts(), cost_facts()})
        result.insert(result.end(), more.begin(), more.end());
    return result;
}

}  // namespace

const std::vector<Fact>& facts() {
    static const std::vector<Fact> all = make_facts();
    return all;
}

std::size_t fact_index(std::string_view name) {
    const auto& all = facts();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Fact& fact) { return fact.name.name == name; });
    return static_cast<std::size_t>(found - all.begin());
}

}  // namespace flutebook::engine
