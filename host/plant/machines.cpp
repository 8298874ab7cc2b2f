// machines.yaml: corrugators, converters, and the dispatch bay.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "host/base/quoted_text.hpp"
#include "host/plant/machine_list.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

// Accounts of material that are no machines (a mill's starts with "mill:"); a machine called so could not be told
// apart.
constexpr std::array<std::string_view, 12> reserved{"dispatch",    "floor",          "loose-scrap", "bale-yard",
                                                    "paper-store", "adhesive-store", "finished",    "opening",
                                                    "costs",       "revenue",        "unexplained", "idle"};

Hourly read_hourly(MapReader form) {
    const Hourly hourly{form.field("labour").number("money/h", range::not_negative),
                        form.field("fixed").number("money/h", range::not_negative)};
    form.finish();
    return hourly;
}

Corrugator read_corrugator(const Field& entry) {
    MapReader form(entry);
    Corrugator result;
    result.code = entry.key();
    result.roll_width_mm = form.field("roll_width").span("mm", range::positive);
    result.trim_min_mm = form.field("trim_min").number("mm", range::not_negative);
    result.outs_max = form.field("outs_max").number("1", range::count_from_1);
    result.slit_mm = form.field("slit").span("mm", range::positive);
    result.chop_mm = form.field("chop").span("mm", range::positive);
    auto speed = form.form("speed");
    result.speed_single_m_min = speed.field("single").number("m/min", range::positive);
    result.speed_double_m_min = speed.field("double").number("m/min", range::positive);
    speed.finish();
    auto order_change = form.form("order_change");
    result.order_change_min = order_change.field("minutes").number("min", range::not_negative);
    result.order_change_m = order_change.field("metres").number("m", range::not_negative);
    order_change.finish();
    result.run_waste = form.field("run_waste").number("1", range::share);
    result.roll_loss = form.field("roll_loss").number("1", range::share);
    result.hourly = read_hourly(form.form("hourly"));
    result.power_kw = form.field("power").number("kW", range::not_negative);
    result.places = form.places();
    form.finish();
    return result;
}

std::optional<Converter::Kind> read_kind(const Field& field) {
    constexpr std::array kinds{Converter::Kind::printer, Converter::Kind::die_cutter, Converter::Kind::folder_gluer};
    const auto chosen = field.choice({spelled(kinds[0]), spelled(kinds[1]), spelled(kinds[2])});
    return chosen ? std::optional(kinds[*chosen]) : std::nullopt;
}

// How boxes lie on a sheet: for die cutters alone. Other machines make one box a sheet.
struct SheetFilling {
    double between_mm, edge_mm, ups_max;
};

SheetFilling read_sheet_filling(MapReader& form, std::optional<Converter::Kind> kind) {
    const auto optional = [&](const char* key, const char* unit, const QuantityRange& range, double initial) {
        if (!form.has(key)) return initial;
        const auto field = form.field(key);
        if (!kind || *kind == Converter::Kind::die_cutter) return field.number(unit, range);
        field.complain_of_key(
            "not for this kind of machine: only a die cutter holds more than one box a sheet; take it out");
        return initial;
    };
    return {optional("between", "mm", range::not_negative, 0), optional("edge", "mm", range::not_negative, 0),
            optional("ups_max", "1", range::count_from_1, 1)};
}

Converter read_converter(const Field& entry) {
    MapReader form(entry);
    Converter result;
    result.code = entry.key();
    const auto kind = read_kind(form.field("kind"));
    result.kind = kind.value_or(Converter::Kind::printer);
    auto sheet = form.form("sheet");
    result.length_mm = sheet.field("length").span("mm", range::positive);
    result.width_mm = sheet.field("width").span("mm", range::positive);
    sheet.finish();
    result.colours = form.has("colours") ? form.field("colours").number("1", range::count) : 0;
    const auto filling = read_sheet_filling(form, kind);
    result.between_mm = filling.between_mm;
    result.edge_mm = filling.edge_mm;
    result.ups_max = filling.ups_max;
    auto setup = form.form("setup");
    result.setup_min = setup.field("minutes").number("min", range::not_negative);
    result.setup_sheets = setup.field("sheets").number("1", range::count);
    setup.finish();
    result.run_waste = form.field("run_waste").number("1", range::share);
    result.speed_per_h = form.field("speed").number("1/h", range::positive);
    result.hourly = read_hourly(form.form("hourly"));
    result.power_kw = form.field("power").number("kW", range::not_negative);
    result.places = form.places();
    form.finish();
    return result;
}

}  // namespace

std::vector<Corrugator> read_corrugators(const Field& table) {
    std::vector<Corrugator> result;
    for (const auto& entry : table.entries_at_least_one()) result.push_back(read_corrugator(entry));
    return result;
}

std::vector<Converter> read_converters(const Field& table) {
    std::vector<Converter> result;
    for (const auto& entry : table.entries()) result.push_back(read_converter(entry));
    return result;
}

Dispatch read_dispatch(const Field& map) {
    MapReader form(map);
    Dispatch dispatch;
    dispatch.minutes = form.field("minutes").number("min", range::not_negative);
    dispatch.hourly = read_hourly(form.form("hourly"));
    dispatch.places = form.places();
    form.finish();
    return dispatch;
}

void check_machine_codes(const Field& corrugators, const Field& converters) {
    const auto check_reserved = [](const Field& entry) {
        if (std::find(reserved.begin(), reserved.end(), entry.key()) != reserved.end() ||
            entry.key().starts_with("mill:"))
            entry.complain_of_key("not free as a machine's code: found " + base::shown(entry.key()) +
                                  "; name it otherwise");
    };
    for (const auto& entry : corrugators.entries_if_any()) check_reserved(entry);
    for (const auto& entry : converters.entries_if_any()) {
        check_reserved(entry);
        if (corrugators.node() != nullptr && corrugators.node()->find(entry.key()) != nullptr)
            entry.complain_of_key("not free as a machine's code: a corrugator is called " + base::shown(entry.key()) +
                                  " too");
    }
}

}  // namespace flutebook::plant
