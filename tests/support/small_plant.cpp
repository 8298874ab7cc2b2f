#include "tests/support/small_plant.hpp"

#include <cstdlib>
#include <optional>

namespace flutebook::fixture {

using base::Date;
using base::Place;
using base::Places;
using orders::Request;
using plant::Allowance;
using plant::Board;
using plant::Converter;
using plant::Corrugator;
using plant::Flute;
using plant::ModelSettings;
using plant::Paper;
using plant::Plant;

namespace {

// A place for every key, one line each, as if somebody had written the entry in a file.
Places written(const std::string& file, int first_line, const std::vector<std::string>& keys) {
    Places places;
    for (std::size_t i = 0; i < keys.size(); ++i)
        places.insert_or_assign(keys[i], {file, first_line + static_cast<int>(i), 5});
    return places;
}

const std::vector<double> all_rolls = {1850, 2050, 2250, 2450};

Paper paper(int line, const std::string& code, Paper::Use use, double grammage_gsm, double per_tonne,
            const std::vector<double>& rolls_mm = all_rolls) {
    const double moisture = use == Paper::Use::liner ? 0.08 : 0.085;
    return {code,
            use,
            grammage_gsm,
            moisture,
            rolls_mm,
            {{date(2026, 1, 1), per_tonne, {"papers.yaml", line + 4, 9}},
             {date(2026, 9, 1), per_tonne + 24, {"papers.yaml", line + 5, 9}}},
            written("papers.yaml", line, {"use", "grammage", "moisture", "roll_widths", "price"})};
}

std::vector<Paper> papers() {
    using Use = Paper::Use;
    return {paper(10, "KL140", Use::liner, 140, 640), paper(20, "TL125", Use::liner, 125, 520),
            paper(30, "SC127", Use::medium, 127, 560), paper(40, "WM105", Use::medium, 105, 470, {1850, 2050, 2250}),
            paper(50, "WT135", Use::liner, 135, 760, {2100})};
}

Flute flute(int line, const std::string& code, double take_up, double height_mm, double single_gsm, double double_gsm) {
    return {code,
            take_up,
            height_mm,
            single_gsm,
            double_gsm,
            written("flutes.yaml", line, {"take_up", "height", "adhesive.single_facer", "adhesive.double_backer"})};
}

std::vector<Flute> flutes() {
    return {flute(2, "B", 1.32, 2.5, 4.5, 5.5), flute(8, "C", 1.43, 3.6, 5, 6), flute(14, "E", 1.25, 1.2, 3.5, 4.5)};
}

Allowance allowance(int line, const std::string& key, double panel_mm, double depth_mm, double flap_mm, double joint_mm,
                    double tab_mm, double slot_mm) {
    return {
        key,      panel_mm, depth_mm, flap_mm,
        joint_mm, tab_mm,   slot_mm,  written("flutes.yaml", line, {"panel", "depth", "flap", "joint", "tab", "slot"})};
}

std::vector<Allowance> allowances() {
    return {allowance(30, "B", 3, 6, 1.5, 2, 30, 6), allowance(40, "C", 4, 8, 2, 2, 30, 7),
            allowance(50, "E", 2, 3, 1, 1, 25, 5), allowance(60, "B+C", 7, 14, 3.5, 3, 35, 9)};
}

Board::Ply liner(std::size_t paper) {
    return {paper, std::nullopt, false};
}
Board::Ply medium(std::size_t paper, std::size_t flute) {
    return {paper, flute, true};
}
Board::Ply open_medium(std::size_t paper, std::size_t flute) {
    return {paper, flute, false};
}

// Papers by index: 0 KL140, 1 TL125, 2 SC127, 3 WM105, 4 WT135; flutes: 0 B, 1 C, 2 E.
std::vector<Board> boards() {
    return {{"B-140", {liner(0), medium(2, 0), liner(1)}, "B", {"boards.yaml", 2, 3}},
            {"C-140", {liner(0), medium(2, 1), liner(1)}, "C", {"boards.yaml", 3, 3}},
            {"E-125", {liner(1), medium(3, 2), liner(1)}, "E", {"boards.yaml", 4, 3}},
            {"BC-370", {liner(0), medium(3, 0), liner(1), medium(2, 1), liner(1)}, "B+C", {"boards.yaml", 5, 3}},
            {"SF-B", {liner(1), open_medium(3, 0)}, "B", {"boards.yaml", 6, 3}},
            {"W-135", {liner(4), medium(2, 0), liner(4)}, "B", {"boards.yaml", 7, 3}}};
}

const std::vector<std::string> corrugator_keys = {"roll_width",
                                                  "trim_min",
                                                  "outs_max",
                                                  "slit",
                                                  "chop",
                                                  "speed.single",
                                                  "speed.double",
                                                  "order_change.minutes",
                                                  "order_change.metres",
                                                  "run_waste",
                                                  "roll_loss",
                                                  "hourly.labour",
                                                  "hourly.fixed",
                                                  "power"};

std::vector<Corrugator> corrugators() {
    return {{.code = "C1",
             .roll_width_mm = {1400, 2500},
             .trim_min_mm = 30,
             .outs_max = 6,
             .slit_mm = {150, 2420},
             .chop_mm = {450, 4500},
             .speed_single_m_min = 220,
             .speed_double_m_min = 160,
             .order_change_min = 1.5,
             .order_change_m = 25,
             .run_waste = 0.018,
             .roll_loss = 0.012,
             .hourly = {240, 380},
             .power_kw = 420,
             .places = written("machines.yaml", 3, corrugator_keys)},
            {.code = "C2",
             .roll_width_mm = {1200, 2100},
             .trim_min_mm = 25,
             .outs_max = 4,
             .slit_mm = {180, 2050},
             .chop_mm = {500, 3600},
             .speed_single_m_min = 150,
             .speed_double_m_min = 110,
             .order_change_min = 2.5,
             .order_change_m = 18,
             .run_waste = 0.022,
             .roll_loss = 0.015,
             .hourly = {190, 210},
             .power_kw = 300,
             .places = written("machines.yaml", 23, corrugator_keys)}};
}

const std::vector<std::string> converter_keys = {"kind",          "sheet.length", "sheet.width", "colours",
                                                 "setup.minutes", "setup.sheets", "run_waste",   "speed",
                                                 "hourly.labour", "hourly.fixed", "power"};

Converter printer() {
    return {.code = "PR1",
            .kind = Converter::Kind::printer,
            .length_mm = {400, 2200},
            .width_mm = {300, 1700},
            .colours = 4,
            .setup_min = 30,
            .setup_sheets = 35,
            .run_waste = 0.01,
            .speed_per_h = 7000,
            .hourly = {80, 110},
            .power_kw = 60,
            .places = written("machines.yaml", 43, converter_keys)};
}

Converter die_cutter() {
    Converter die = {.code = "DC1",
                     .kind = Converter::Kind::die_cutter,
                     .length_mm = {500, 2000},
                     .width_mm = {400, 1600},
                     .colours = 2,
                     .between_mm = 8,
                     .edge_mm = 12,
                     .ups_max = 12,
                     .setup_min = 40,
                     .setup_sheets = 60,
                     .run_waste = 0.02,
                     .speed_per_h = 6000,
                     .hourly = {90, 150},
                     .power_kw = 90,
                     .places = written("machines.yaml", 63, converter_keys)};
    die.places.insert_or_assign("between", {"machines.yaml", 74, 5});
    die.places.insert_or_assign("edge", {"machines.yaml", 75, 5});
    die.places.insert_or_assign("ups_max", {"machines.yaml", 76, 5});
    return die;
}

Converter folder_gluer() {
    return {.code = "FG1",
            .kind = Converter::Kind::folder_gluer,
            .length_mm = {300, 2400},
            .width_mm = {250, 1150},
            .colours = 3,
            .setup_min = 25,
            .setup_sheets = 40,
            .run_waste = 0.012,
            .speed_per_h = 9000,
            .hourly = {95, 120},
            .power_kw = 75,
            .places = written("machines.yaml", 83, converter_keys)};
}

Converter large_folder_gluer() {
    return {.code = "FG2",
            .kind = Converter::Kind::folder_gluer,
            .length_mm = {500, 3400},
            .width_mm = {300, 1700},
            .colours = 1,
            .setup_min = 35,
            .setup_sheets = 30,
            .run_waste = 0.015,
            .speed_per_h = 4500,
            .hourly = {95, 140},
            .power_kw = 95,
            .places = written("machines.yaml", 103, converter_keys)};
}

std::vector<ModelSettings> models() {
    return {model_entry("run"),
            model_entry("scrap", {{"scrap_price", "85"}, {"handling", "18"}}),
            model_entry("paper"),
            model_entry("starch", {{"starch_price", "0.55"},
                                   {"caustic_price", "0.60"},
                                   {"borax_price", "1.10"},
                                   {"starch_share", "0.955"},
                                   {"caustic_share", "0.025"},
                                   {"borax_share", "0.020"}}),
            model_entry("setup"),
            model_entry("running"),
            model_entry("energy", {{"fuel_price", "0.06"}, {"power_price", "0.17"}})};
}

Request request(const std::string& number, const std::string& style, std::size_t board,
                const std::vector<double>& quantities) {
    return {.number = number,
            .customer = "Quoin Pottery",
            .date = date(2026, 10, 15),
            .style = style,
            .inside = std::nullopt,
            .outline = std::nullopt,
            .board = board,
            .quantities = quantities,
            .margin = 0.18,
            .colours = 0,
            .route = std::nullopt,
            .extras = {},
            .place = {number + ".yaml", 1, 1},
            .text = {},
            .places = written(number + ".yaml", 1,
                              {"request", "customer", "date", "style", "inside", "board", "quantities", "margin"})};
}

template <typename Entries>
std::size_t index_of(const Entries& entries, const std::string& code) {
    for (std::size_t i = 0; i < entries.size(); ++i)
        if (entries[i].code == code) return i;
    std::abort();
}

}  // namespace

Plant small_plant() {
    Plant plant{};
    plant.name = "Fernhollow Board";
    plant.currency = "EUR";
    plant.currency_minor_units = 2;
    plant.units = plant::Units::metric;
    plant.shifts = {"early", "late"};
    plant.balance_tolerance = 0.005;
    plant.mills = {
        {"Weirside", 0.10, plant::Mill::Deduction::dry_matter, written("plant.yaml", 8, {"moisture", "deduction"})}};
    plant.papers = papers();
    plant.flutes = flutes();
    plant.allowances = allowances();
    plant.boards = boards();
    plant.corrugators = corrugators();
    plant.converters = {printer(), die_cutter(), folder_gluer(), large_folder_gluer()};
    plant.dispatch = {6, {40, 15}, written("machines.yaml", 123, {"minutes", "hourly.labour", "hourly.fixed"})};
    plant.models = models();
    return plant;
}

Request box_request(const Plant& plant) {
    Request box = request("R-1", "0201", board_index(plant, "B-140"), {500, 5000});
    box.inside = orders::InsideSize{400, 300, 250};
    box.colours = 2;
    return box;
}

Request double_wall_request(const Plant& plant) {
    Request box = request("R-2", "0201", board_index(plant, "BC-370"), {1200});
    box.inside = orders::InsideSize{600, 400, 400};
    return box;
}

Request sheet_request(const Plant& plant) {
    Request sheet = request("R-3", "0110", board_index(plant, "C-140"), {3000});
    sheet.inside = orders::InsideSize{1200, 800, 0};
    return sheet;
}

Request outline_request(const Plant& plant) {
    Request blank = request("R-4", "outline", board_index(plant, "E-125"), {10000});
    blank.outline = orders::Outline{420, 310, 0.11};
    blank.colours = 1;
    return blank;
}

Request long_route_request(const Plant& plant) {
    Request blank = outline_request(plant);
    blank.number = "R-5";
    blank.route = route_of(plant, {"PR1", "DC1", "FG1"});
    return blank;
}

std::size_t board_index(const Plant& plant, const std::string& code) {
    return index_of(plant.boards, code);
}
std::size_t converter_index(const Plant& plant, const std::string& code) {
    return index_of(plant.converters, code);
}
std::size_t paper_index(const Plant& plant, const std::string& code) {
    return index_of(plant.papers, code);
}

std::vector<std::size_t> route_of(const Plant& plant, const std::vector<std::string>& codes) {
    std::vector<std::size_t> route;
    for (const std::string& code : codes) route.push_back(converter_index(plant, code));
    return route;
}

ModelSettings model_entry(const std::string& id, const std::vector<std::pair<std::string, std::string>>& settings) {
    ModelSettings entry = {id, {"plugins.yaml", 2, 5}, {}};
    int line = 3;
    for (const auto& [name, text] : settings) {
        plant::GivenSetting& setting = entry.settings.emplace_back();
        setting.name = name;
        setting.name_place = {"plugins.yaml", line, 7};
        setting.place = {"plugins.yaml", line, 20};
        setting.value = fields::GivenText{text, false, setting.place};
        ++line;
    }
    return entry;
}

Date date(int year, unsigned month, unsigned day) {
    return std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{day};
}

}  // namespace flutebook::fixture
