// A board that a supplier delivers as sheets: `bought: {from, flute, grammage, caliper, waste, price}`.
//
// It is calculated as a board of one paper, whose price by mass follows from the price of a square metre, and its
// supplier as a corrugator that takes no time and strips, trims and changes nothing.
#include <algorithm>
#include <string>
#include <utility>

#include "host/base/quoted_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

constexpr double grams_per_tonne = 1e6;
constexpr double any_length_mm = 1e6;  // a supplier's limits are not known here
constexpr std::size_t most_flutes = 2;

// "B", or "B+C" of a double wall.
std::string read_flutes(const fields::Field& field, const BoardParts& parts) {
    const std::string text = field.text();
    std::size_t flutes = 0;
    for (std::size_t begin = 0; begin <= text.size() && !text.empty(); ++flutes) {
        const std::size_t end = std::min(text.find('+', begin), text.size());
        parts.flute_codes.expect(field, text.substr(begin, end - begin));
        begin = end + 1;
    }
    if (flutes > most_flutes)
        field.complain("too many flutes: found " + base::shown(text) + ", expected one, or two as `B+C`");
    return text;
}

Corrugator supplier_called(std::string name, double waste, const base::Places& places) {
    Corrugator result{};
    result.code = std::move(name);
    result.is_supplier = true;
    result.roll_width_mm = result.slit_mm = result.chop_mm = {0, any_length_mm};
    result.outs_max = 1;
    result.speed_single_m_min = result.speed_double_m_min = 1;  // of no hour: see the fact board.made_here
    result.run_waste = waste;
    result.places = places;
    if (const auto waste_place = places.find("waste"); waste_place != places.end())
        result.places.insert_or_assign("run_waste", waste_place->second);
    return result;
}

Paper paper_of(const std::string& board, double grammage_gsm, const fields::Field& price) {
    Paper result{};
    result.code = board;
    result.use = Paper::Use::liner;
    result.grammage_gsm = grammage_gsm;
    result.prices = read_prices(price, {"per_m2", "money/m2", fields::range::positive});
    for (Paper::Price& each : result.prices) {
        each.per_m2 = each.per_tonne;
        each.per_tonne = each.per_m2 / grammage_gsm * grams_per_tonne;
    }
    return result;
}

}  // namespace

void read_bought(const fields::Field& map, const BoardParts& parts, Board& board, BoardsYaml& result) {
    const auto has_code = [&](const Paper& paper) { return paper.code == board.code; };
    if (std::any_of(parts.papers.begin(), parts.papers.end(), has_code))
        map.complain_of_key("not free as the name of a bought board: a paper is called " + base::shown(board.code) +
                            " too; give the board another name");
    fields::MapReader form(map);
    std::string name = form.field("from").text();
    board.flutes = read_flutes(form.field("flute"), parts);
    const double grammage_gsm = form.field("grammage").number("g/m2", fields::range::positive);
    const auto caliper = form.field("caliper");
    board.caliper_mm = caliper.number("mm", fields::range::positive);
    board.caliper_place = caliper.place();
    const double waste = form.field("waste").number("1", fields::range::share);
    Paper paper = paper_of(board.code, grammage_gsm, form.field("price"));
    paper.places = form.places();
    form.finish();
    board.supplier = result.suppliers.size();
    board.plies = {{parts.papers.size() + result.suppliers.size(), std::nullopt, false}};
    result.suppliers.push_back(supplier_called(std::move(name), waste, paper.places));
    result.papers.push_back(std::move(paper));
}

}  // namespace flutebook::plant
