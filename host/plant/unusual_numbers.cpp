// The ranges are common practice from memory, no published source, and wide: a number outside is more often a typing
// error than a real value.
#include "host/plant/unusual_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

namespace flutebook::plant {

namespace {

// Worth between about a half and two euros (from memory).
constexpr std::array<std::string_view, 12> like_a_euro = {"EUR", "USD", "GBP", "CHF", "CAD", "AUD",
                                                          "NZD", "SGD", "BND", "KYD", "XDR", "BAM"};
constexpr double usual_paper_price = 550;  // a tonne of containerboard, in such a currency

struct UsualRange {
    double low, high;
    const char* unit;
};

constexpr UsualRange grammage{60, 450, "g/m2"}, paper_moisture{0.02, 0.15, ""}, roll_width{300, 3600, "mm"},
    paper_price{100, 3000, "money/t"};
constexpr UsualRange take_up{1.1, 1.7, ""}, flute_height{0.3, 10, "mm"}, glue_line{1, 15, "g/m2"};
constexpr UsualRange allowance_of_fold{0, 60, "mm"}, caliper{0.4, 20, "mm"}, board_grammage{200, 2500, "g/m2"},
    board_price{0.1, 5, "money/m2"};
constexpr UsualRange trim_min{0, 150, "mm"}, outs_max{1, 14, ""}, slit{40, 3600, "mm"}, chop{200, 12000, "mm"},
    web_speed{20, 500, "m/min"}, change_minutes{0, 60, "min"}, change_metres{0, 500, "m"}, run_waste{0, 0.2, ""},
    roll_loss{0, 0.1, ""}, corrugator_power{5, 5000, "kW"};
constexpr UsualRange sheet{30, 8000, "mm"}, colours{0, 10, ""}, between{0, 60, "mm"}, edge{0, 80, "mm"},
    ups_max{1, 150, ""}, setup_minutes{0, 300, "min"}, setup_sheets{0, 1000, ""}, speed{10, 40000, "1/h"},
    power{0, 1500, "kW"};
constexpr UsualRange labour{2, 2000, "money/h"}, fixed{0, 5000, "money/h"}, dispatch_minutes{0, 180, "min"};
constexpr UsualRange tolerance{0, 0.05, ""}, mill_moisture{0.04, 0.25, ""}, waste_of_issued{0.02, 0.4, ""};

// Holds numbers against ranges, and says which are outside.
class RangeGuard {
public:
    explicit RangeGuard(const Plant& plant) : currency_(plant.currency), scale_(usual_money_scale(plant)) {}

    void check(const base::Places& places, const std::string& entry, const std::string& key, double number,
               const UsualRange& usual) {
        const auto place = places.find(key);
        if (place != places.end()) check(place->second, joined(entry, key), number, usual);
    }
    void check(const base::Place& place, const std::string& path, double number, const UsualRange& usual) {
        if (!holds(number, usual)) add(place, path, fmt::format("{}", number), usual, "");
    }
    // Two numbers, or one that was written with a decimal comma.
    void check(const base::Places& places, const std::string& entry, const std::string& key, const fields::Span& span,
               const UsualRange& usual) {
        const auto place = places.find(key);
        if (place == places.end() || (holds(span.low, usual) && holds(span.high, usual))) return;
        add(place->second, joined(entry, key), fmt::format("{} to {}", span.low, span.high), usual,
            comma_hint(span.low, span.high));
    }
    // Rising numbers of a list.
    void check_list(const base::Places& places, const std::string& entry, const std::string& key,
                    const std::vector<double>& rising, const UsualRange& usual) {
        const auto place = places.find(key);
        if (place == places.end()) return;
        for (const double number : rising)
            if (!holds(number, usual))
                add(place->second, joined(entry, key), fmt::format("{}", number), usual,
                    rising.size() > 1 ? comma_hint(rising[0], rising[1]) : "");
    }

    [[nodiscard]] std::vector<base::Warning> take() { return std::move(warnings_); }

private:
    static bool is_money(const UsualRange& usual) { return std::string_view(usual.unit).starts_with("money"); }
    [[nodiscard]] double scale(const UsualRange& usual) const { return is_money(usual) ? scale_ : 1; }
    [[nodiscard]] bool holds(double number, const UsualRange& usual) const {
        return number >= usual.low * scale(usual) && number <= usual.high * scale(usual);
    }
    static std::string joined(const std::string& entry, const std::string& key) {
        return entry.empty() ? key : entry + "." + key;
    }
    // "; was 2500 meant, or 2.5?": a list of a digit or two and of three digits is how `2,500` is read.
    static std::string comma_hint(double first, double second) {
        if (first >= 100 || second < 100 || second > 999) return "";
        return fmt::format("; if `{0:.0f},{1:.0f}` is one number, write {0:.0f}{1:03.0f} or {0:.0f}.{1:03.0f}", first,
                           second);
    }
    void add(const base::Place& place, const std::string& path, const std::string& found, const UsualRange& usual,
             const std::string& hint) {
        std::string unit = usual.unit;
        if (is_money(usual)) unit = currency_ + unit.substr(std::string_view("money").size());
        warnings_.push_back(
            {base::place_text(place),
             fmt::format("{}: unusual: found {}, usually {:.6g} to {:.6g}{}{}{}", path, found, usual.low * scale(usual),
                         usual.high * scale(usual), unit.empty() ? "" : " ", unit, hint)});
    }

    std::string currency_;
    double scale_;
    std::vector<base::Warning> warnings_;
};

void check_plant_file(RangeGuard& guard, const Plant& plant) {
    guard.check(plant.places, "", "balance_tolerance", plant.balance_tolerance, tolerance);
    if (plant.waste_target) guard.check(plant.places, "", "waste_target", *plant.waste_target, waste_of_issued);
    for (const Mill& mill : plant.mills)
        guard.check(mill.places, "mills." + mill.name, "moisture", mill.moisture_limit, mill_moisture);
}

void check_paper(RangeGuard& guard, const Paper& paper) {
    const std::string entry = "papers." + paper.code;
    guard.check(paper.places, entry, "grammage", paper.grammage_gsm, grammage);
    guard.check(paper.places, entry, "moisture", paper.moisture, paper_moisture);
    guard.check_list(paper.places, entry, "roll_widths", paper.roll_widths_mm, roll_width);
    for (const Paper::Price& price : paper.prices)
        guard.check(price.place, entry + ".price.per_tonne", price.per_tonne, paper_price);
}

void check_flute(RangeGuard& guard, const Flute& flute) {
    const std::string entry = "flutes." + flute.code;
    guard.check(flute.places, entry, "take_up", flute.take_up, take_up);
    guard.check(flute.places, entry, "height", flute.height_mm, flute_height);
    guard.check(flute.places, entry, "adhesive.single_facer", flute.single_facer_gsm, glue_line);
    guard.check(flute.places, entry, "adhesive.double_backer", flute.double_backer_gsm, glue_line);
}

void check_allowance(RangeGuard& guard, const Allowance& allowance) {
    const std::string prefix = allowance.style_prefix.empty() ? "" : " " + allowance.style_prefix;
    const std::string entry = "allowances." + allowance.flutes + prefix;
    guard.check(allowance.places, entry, "panel", allowance.panel_mm, allowance_of_fold);
    guard.check(allowance.places, entry, "depth", allowance.depth_mm, allowance_of_fold);
    guard.check(allowance.places, entry, "flap", allowance.flap_mm, allowance_of_fold);
    guard.check(allowance.places, entry, "joint", allowance.joint_mm, allowance_of_fold);
    guard.check(allowance.places, entry, "tab", allowance.tab_mm, allowance_of_fold);
    guard.check(allowance.places, entry, "slot", allowance.slot_mm, allowance_of_fold);
}

void check_hourly(RangeGuard& guard, const base::Places& places, const std::string& entry, const Hourly& hourly) {
    guard.check(places, entry, "hourly.labour", hourly.labour, labour);
    guard.check(places, entry, "hourly.fixed", hourly.fixed, fixed);
}

void check_corrugator(RangeGuard& guard, const Corrugator& machine) {
    const std::string entry = "corrugators." + machine.code;
    const base::Places& places = machine.places;
    guard.check(places, entry, "roll_width", machine.roll_width_mm, roll_width);
    guard.check(places, entry, "trim_min", machine.trim_min_mm, trim_min);
    guard.check(places, entry, "outs_max", machine.outs_max, outs_max);
    guard.check(places, entry, "slit", machine.slit_mm, slit);
    guard.check(places, entry, "chop", machine.chop_mm, chop);
    guard.check(places, entry, "speed.single", machine.speed_single_m_min, web_speed);
    guard.check(places, entry, "speed.double", machine.speed_double_m_min, web_speed);
    guard.check(places, entry, "order_change.minutes", machine.order_change_min, change_minutes);
    guard.check(places, entry, "order_change.metres", machine.order_change_m, change_metres);
    guard.check(places, entry, "run_waste", machine.run_waste, run_waste);
    guard.check(places, entry, "roll_loss", machine.roll_loss, roll_loss);
    check_hourly(guard, places, entry, machine.hourly);
    guard.check(places, entry, "power", machine.power_kw, corrugator_power);
}

// A board of one or two walls, from memory like all ranges here.
void check_bought(RangeGuard& guard, const Plant& plant, const Board& board) {
    const Paper& paper = plant.paper(board.plies.front().paper);
    const std::string entry = "boards." + board.code + ".bought";
    guard.check(paper.places, entry, "grammage", paper.grammage_gsm, board_grammage);
    guard.check(paper.places, entry, "caliper", *board.caliper_mm, caliper);
    guard.check(paper.places, entry, "waste", plant.supplier_of(board)->run_waste, run_waste);
    for (const Paper::Price& price : paper.prices)
        guard.check(price.place, entry + ".price.per_m2", price.per_m2, board_price);
}

void check_board(RangeGuard& guard, const Plant& plant, const Board& board) {
    if (board.is_bought()) return check_bought(guard, plant, board);
    if (board.caliper_mm && board.caliper_place)
        guard.check(*board.caliper_place, "boards." + board.code + ".caliper", *board.caliper_mm, caliper);
}

void check_converter(RangeGuard& guard, const Converter& machine) {
    const std::string entry = "converters." + machine.code;
    const base::Places& places = machine.places;
    guard.check(places, entry, "sheet.length", machine.length_mm, sheet);
    guard.check(places, entry, "sheet.width", machine.width_mm, sheet);
    guard.check(places, entry, "colours", machine.colours, colours);
    guard.check(places, entry, "between", machine.between_mm, between);
    guard.check(places, entry, "edge", machine.edge_mm, edge);
    guard.check(places, entry, "ups_max", machine.ups_max, ups_max);
    guard.check(places, entry, "setup.minutes", machine.setup_min, setup_minutes);
    guard.check(places, entry, "setup.sheets", machine.setup_sheets, setup_sheets);
    guard.check(places, entry, "run_waste", machine.run_waste, run_waste);
    guard.check(places, entry, "speed", machine.speed_per_h, speed);
    check_hourly(guard, places, entry, machine.hourly);
    guard.check(places, entry, "power", machine.power_kw, power);
}

}  // namespace

double newest_price(const Paper& paper) {
    return paper.prices.empty() ? 0 : paper.prices.back().per_tonne;
}

double median(std::vector<double> numbers) {
    if (numbers.empty()) return 0;
    const auto middle = numbers.begin() + static_cast<std::ptrdiff_t>(numbers.size() / 2);
    std::nth_element(numbers.begin(), middle, numbers.end());
    return *middle;
}

double usual_money_scale(const Plant& plant) {
    if (std::find(like_a_euro.begin(), like_a_euro.end(), plant.currency) != like_a_euro.end()) return 1;
    std::vector<double> prices;
    for (const Paper& paper : plant.papers)
        if (newest_price(paper) > 0) prices.push_back(newest_price(paper));
    return prices.empty() ? 1 : median(std::move(prices)) / usual_paper_price;
}

std::vector<base::Warning> unusual_numbers(const Plant& plant) {
    RangeGuard guard(plant);
    check_plant_file(guard, plant);
    for (const Paper& paper : plant.papers) check_paper(guard, paper);
    for (const Flute& flute : plant.flutes) check_flute(guard, flute);
    for (const Allowance& allowance : plant.allowances) check_allowance(guard, allowance);
    for (const Board& board : plant.boards) check_board(guard, plant, board);
    for (const Corrugator& machine : plant.corrugators) check_corrugator(guard, machine);
    for (const Converter& machine : plant.converters) check_converter(guard, machine);
    guard.check(plant.dispatch.places, "dispatch", "minutes", plant.dispatch.minutes, dispatch_minutes);
    check_hourly(guard, plant.dispatch.places, "dispatch", plant.dispatch.hourly);
    std::vector<base::Warning> result = guard.take();
    for (base::Warning& warning : numbers_unlike_others(plant, result)) result.push_back(std::move(warning));
    return result;
}

}  // namespace flutebook::plant
