#include "host/plugin_check/generated_order.hpp"

#include <algorithm>
#include <chrono>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/plant/machine_list.hpp"

namespace flutebook::plugin_check {

using namespace std::chrono_literals;
using orders::Request;
using plant::Allowance;
using plant::Board;
using plant::Converter;
using plant::Corrugator;
using plant::Flute;
using plant::Paper;
using plant::Plant;

namespace {

std::string numbered(const char* letters, std::size_t number) {
    return letters + std::to_string(number + 1);
}

// A share of waste or loss: often 0, sometimes `most`.
double share(Draws& draws, double usual, double most) {
    switch (draws.index(8)) {
        case 0:
            return 0;
        case 1:
            return most;
        default:
            return draws.between(0, usual);
    }
}

std::vector<double> stocked_widths(Draws& draws) {
    std::vector<double> widths;
    for (double count = draws.whole(1, 6); count > 0; --count) widths.push_back(draws.length_mm(1250, 2800));
    std::sort(widths.begin(), widths.end());
    widths.erase(std::unique(widths.begin(), widths.end()), widths.end());
    return widths;
}

Paper paper(Draws& draws, std::size_t number, Paper::Use use, const std::vector<double>& widths) {
    Paper result = {numbered("P", number),
                    use,
                    draws.whole(70, 440),
                    draws.between(0.04, 0.12),
                    {},
                    {{2026y / 1 / 1, draws.whole(250, 900), {}}},
                    {}};
    for (const double width : widths)
        if (!draws.one_in(12)) result.roll_widths_mm.push_back(width);
    if (result.roll_widths_mm.empty()) result.roll_widths_mm = {draws.pick(widths)};
    if (draws.one_in(2)) result.prices.push_back({2026y / 9 / 1, draws.between(0, 1200), {}});
    return result;
}

std::vector<Paper> papers(Draws& draws) {
    const std::vector<double> widths = stocked_widths(draws);
    std::vector<Paper> result;
    for (std::size_t i = 0; i < 6; ++i)
        result.push_back(paper(draws, i, i < 4 ? Paper::Use::liner : Paper::Use::medium, widths));
    return result;
}

std::vector<Flute> flutes(Draws& draws) {
    std::vector<Flute> result;
    for (const char* code : {"B", "C", "E"})
        result.push_back({code,
                          draws.one_in(10) ? 1 : draws.between(1.1, 1.6),
                          draws.between(1, 5),
                          draws.between(2, 7),
                          draws.between(2, 7),
                          {}});
    return result;
}

std::vector<Allowance> allowances(Draws& draws) {
    std::vector<Allowance> result;
    for (const char* key : {"B", "C", "E", "B+C", "E+B"})
        result.push_back({key,
                          draws.length_mm(1, 9),
                          draws.length_mm(2, 18),
                          draws.length_mm(0.5, 5),
                          draws.length_mm(0.5, 4),
                          draws.length_mm(20, 45),
                          draws.length_mm(4, 13),
                          {}});
    return result;
}

// Papers 0 to 3 are liners, 4 and 5 mediums; flutes 0 B, 1 C, 2 E.
std::vector<Board> boards(Draws& draws) {
    const auto liner = [&] { return Board::Ply{draws.index(4), std::nullopt, false}; };
    const auto medium = [&](std::size_t flute) { return Board::Ply{4 + draws.index(2), flute, true}; };
    const std::size_t single = draws.index(3);
    const char* const codes[] = {"B", "C", "E"};
    Board::Ply open = medium(0);
    open.has_second_liner = false;
    return {{"single wall", {liner(), medium(single), liner()}, codes[single], {}},
            {"double wall", {liner(), medium(0), liner(), medium(1), liner()}, "B+C", {}},
            {"fine double wall", {liner(), medium(2), liner(), medium(0), liner()}, "E+B", {}},
            {"single face", {liner(), open}, "B", {}}};
}

Corrugator corrugator(Draws& draws, std::size_t number) {
    return {.code = numbered("C", number),
            .roll_width_mm = {draws.whole(500, 1400), draws.whole(2200, 3400)},
            .trim_min_mm = draws.one_in(6) ? 0 : draws.length_mm(5, 60),
            .outs_max = draws.whole(1, 10),
            .slit_mm = {draws.whole(50, 300), draws.whole(1500, 3300)},
            .chop_mm = {draws.whole(200, 600), draws.whole(2000, 6000)},
            .speed_single_m_min = draws.between(60, 350),
            .speed_double_m_min = draws.between(40, 260),
            .order_change_min = draws.between(0, 5),
            .order_change_m = draws.one_in(6) ? 0 : draws.between(2, 60),
            .run_waste = share(draws, 0.06, 0.5),
            .roll_loss = share(draws, 0.04, 0.3),
            .hourly = {draws.between(0, 400), draws.between(0, 700)},
            .power_kw = draws.between(0, 900),
            .places = {}};
}

Converter converter(Draws& draws, std::size_t number, Converter::Kind kind) {
    Converter result = {.code = numbered("M", number),
                        .kind = kind,
                        .length_mm = {draws.whole(100, 350), draws.whole(1800, 3800)},
                        .width_mm = {draws.whole(60, 250), draws.whole(1100, 2400)},
                        .colours = draws.one_in(4) ? 0 : draws.whole(1, 6),
                        .setup_min = draws.between(0, 90),
                        .setup_sheets = draws.one_in(5) ? 0 : draws.whole(1, 200),
                        .run_waste = share(draws, 0.05, 0.5),
                        .speed_per_h = draws.between(500, 15000),
                        .hourly = {draws.between(0, 200), draws.between(0, 300)},
                        .power_kw = draws.between(0, 200),
                        .places = {}};
    if (kind == Converter::Kind::die_cutter) {
        result.between_mm = draws.one_in(3) ? 0 : draws.length_mm(3, 20);
        result.edge_mm = draws.one_in(3) ? 0 : draws.length_mm(5, 25);
    }
    if (box_styles::parts_sheets(kind)) result.ups_max = draws.one_in(4) ? 1 : draws.whole(2, 24);
    return result;
}

std::vector<Converter> converters(Draws& draws) {
    using Kind = Converter::Kind;
    std::vector<Converter> result;
    if (draws.one_in(40)) return result;
    const std::vector<Kind> usual = {Kind::printer, Kind::die_cutter, Kind::folder_gluer};
    const std::vector<Kind> all = {Kind::printer, Kind::die_cutter, Kind::folder_gluer,
                                   Kind::slitter, Kind::stitcher,   Kind::hand};
    const std::size_t more = draws.index(3);
    for (const Kind kind : usual)
        if (!draws.one_in(25)) result.push_back(converter(draws, result.size(), kind));
    for (std::size_t i = 0; i < more; ++i) result.push_back(converter(draws, result.size(), draws.pick(all)));
    return result;
}

std::vector<std::size_t> of_kind(const Plant& plant, Converter::Kind kind) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < plant.converters.size(); ++i)
        if (plant.converters[i].kind == kind) found.push_back(i);
    return found;
}

// Print, cut or slit, fold and glue, stitch, pack.
int trade_order(Converter::Kind kind) {
    if (kind == Converter::Kind::printer) return 0;
    if (box_styles::parts_sheets(kind)) return 1;
    return 2 + static_cast<int>(kind);
}

// A machine of the kind that the style needs, with up to two others: mostly in the order of the trade (print, cut,
// fold and glue), sometimes in any order.
std::optional<std::vector<std::size_t>> given_route(Draws& draws, const Plant& plant, Converter::Kind kind) {
    const std::vector<std::size_t> fit = of_kind(plant, kind);
    if (fit.empty() || draws.one_in(2)) return std::nullopt;
    std::vector<std::size_t> route = {draws.pick(fit)};
    for (std::size_t i = 0; i < plant.converters.size(); ++i)
        if (i != route.front() && route.size() < 3 && draws.one_in(2)) route.push_back(i);
    std::stable_sort(route.begin(), route.end(), [&](std::size_t a, std::size_t b) {
        return trade_order(plant.converters[a].kind) < trade_order(plant.converters[b].kind);
    });
    if (route.size() > 1 && draws.one_in(6)) std::swap(route.front(), route.back());
    return route;
}

double quantity(Draws& draws) {
    switch (draws.index(10)) {
        case 0:
            return 1;
        case 1:
            return 10'000'000;
        case 2:
            return draws.whole(1, 30);
        case 3:
            return draws.whole(100'000, 2'000'000);
        default:
            return draws.whole(100, 20'000);
    }
}

void ask_for_box(Draws& draws, const Plant& plant, Request& request) {
    request.style = "0201";
    const double length = draws.length_mm(100, 700);
    request.inside = orders::InsideSize{length, draws.length_mm(90, length), draws.length_mm(50, 550)};
    request.route = given_route(draws, plant, Converter::Kind::folder_gluer);
}

void ask_for_outline(Draws& draws, const Plant& plant, Request& request) {
    request.style = "outline";
    const double length = draws.length_mm(80, 1100);
    const double width = draws.length_mm(80, 800);
    const double net = draws.one_in(5) ? 1 : draws.between(0.4, 1);
    request.outline = orders::Outline{length, width, length * width * 1e-6 * net};
    request.route = given_route(draws, plant, Converter::Kind::die_cutter);
}

void ask_for_sheet(Draws& draws, Request& request) {
    request.style = "0110";
    request.inside = orders::InsideSize{draws.length_mm(200, 1800), draws.length_mm(400, 2600), 0};
    if (draws.one_in(2)) request.route = std::vector<std::size_t>{};
}

Request ordered(Draws& draws, const Plant& plant) {
    Request request = {.number = "R-1",
                       .customer = "",
                       .date = 2026y / 10 / 15,
                       .style = "",
                       .inside = std::nullopt,
                       .outline = std::nullopt,
                       .board = draws.index(plant.boards.size()),
                       .quantities = {},
                       .margin = draws.between(-0.1, 0.6),
                       .colours = 0,
                       .route = std::nullopt,
                       .extras = {},
                       .place = {},
                       .text = {},
                       .places = {}};
    switch (draws.index(4)) {
        case 0:
            ask_for_sheet(draws, request);
            break;
        case 1:
            ask_for_outline(draws, plant, request);
            break;
        default:
            ask_for_box(draws, plant, request);
            break;
    }
    if (request.style != "0110" && draws.one_in(3)) request.colours = draws.whole(1, 3);
    for (double count = draws.whole(1, 4); count > 0; --count) request.quantities.push_back(quantity(draws));
    return request;
}

// Sometimes a roll that the sheets fill exactly: a rounding error would then lose an out.
void fit_a_roll_exactly(Draws& draws, Plant& plant, const Request& request) {
    if (!request.outline || !draws.one_in(4)) return;
    const double exact = request.outline->width_mm * draws.whole(2, 5) + plant.corrugators.front().trim_min_mm;
    for (Paper& result : plant.papers) result.roll_widths_mm.push_back(exact);
    for (Paper& result : plant.papers) std::sort(result.roll_widths_mm.begin(), result.roll_widths_mm.end());
}

// One order in ten is on a board that is bought. Drawn apart, so that every other order is what its seed always gave.
void buy_a_board(std::uint64_t seed, Plant& plant, Request& request) {
    Draws draws(~seed);
    if (!draws.one_in(10)) return;
    Board bought = plant.boards[request.board];
    if (!bought.is_closed()) return;
    bought.code = "bought";
    bought.plies = {{plant.papers.size(), std::nullopt, false}};
    bought.caliper_mm = draws.between(1, 9);
    bought.supplier = 0;
    Corrugator supplier{};
    supplier.code = "S1";
    supplier.is_supplier = true;
    supplier.roll_width_mm = supplier.slit_mm = supplier.chop_mm = {0, 1e6};
    supplier.outs_max = supplier.speed_single_m_min = supplier.speed_double_m_min = 1;
    supplier.run_waste = share(draws, 0.05, 0.4);
    Paper sheet{};
    sheet.code = bought.code;
    sheet.grammage_gsm = draws.between(250, 1200);
    sheet.prices = {{2026y / 1 / 1, draws.whole(400, 1500), {}}};
    plant.suppliers = {std::move(supplier)};
    plant.bought_papers = {std::move(sheet)};
    request.board = plant.boards.size();
    request.trim = {};
    plant.boards.push_back(std::move(bought));
}

}  // namespace

GeneratedOrder make_order(std::uint64_t seed) {
    Draws draws(seed);
    Plant plant{};
    plant.name = "Plant " + std::to_string(seed);
    plant.currency = "EUR";
    plant.currency_minor_units = 2;
    plant.balance_tolerance = 0.005;
    plant.units = draws.one_in(4) ? plant::Units::us : plant::Units::metric;
    plant.papers = papers(draws);
    plant.flutes = flutes(draws);
    plant.allowances = allowances(draws);
    plant.boards = boards(draws);
    plant.corrugators.clear();
    for (double count = draws.whole(1, 3); count > 0; --count)
        plant.corrugators.push_back(corrugator(draws, plant.corrugators.size()));
    plant.converters = converters(draws);
    plant.dispatch = {draws.one_in(2) ? 0 : draws.between(1, 30), {40, 15}, {}};
    Request request = ordered(draws, plant);
    fit_a_roll_exactly(draws, plant, request);
    if (draws.one_in(3)) request.trim = {draws.between(0, 0.2), draws.between(0.2, 1)};
    buy_a_board(seed, plant, request);
    return {std::move(plant), std::move(request)};
}

}  // namespace flutebook::plugin_check
