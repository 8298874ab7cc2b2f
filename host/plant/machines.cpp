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

bool is_reserved(const std::string& code) {
    return std::find(reserved.begin(), reserved.end(), code) != reserved.end() || code.starts_with("mill:");
}

Hourly read_hourly(fields::MapReader form) {
    const Hourly hourly{form.field("labour").number("money/h", fields::range::not_negative),
                        form.field("fixed").number("money/h", fields::range::not_negative)};
    form.finish();
    return hourly;
}

Corrugator read_corrugator(const fields::Field& entry) {
    fields::MapReader form(entry);
    Corrugator result;
    result.code = entry.key();
    result.roll_width_mm = form.field("roll_width").span("mm", fields::range::positive);
    result.trim_min_mm = form.field("trim_min").number("mm", fields::range::not_negative);
    result.outs_max = form.field("outs_max").number("1", fields::range::count_from_1);
    result.slit_mm = form.field("slit").span("mm", fields::range::positive);
    result.chop_mm = form.field("chop").span("mm", fields::range::positive);
    auto speed = form.form("speed");
    result.speed_single_m_min = speed.field("single").number("m/min", fields::range::positive);
    result.speed_double_m_min = speed.field("double").number("m/min", fields::range::positive);
    speed.finish();
    auto order_change = form.form("order_change");
    result.order_change_min = order_change.field("minutes").number("min", fields::range::not_negative);
    result.order_change_m = order_change.field("metres").number("m", fields::range::not_negative);
    order_change.finish();
    result.run_waste = form.field("run_waste").number("1", fields::range::share);
    result.roll_loss = form.field("roll_loss").number("1", fields::range::share);
    result.hourly = read_hourly(form.form("hourly"));
    result.power_kw = form.field("power").number("kW", fields::range::not_negative);
    result.places = form.places();
    form.finish();
    return result;
}

std::optional<Converter::Kind> read_kind(const fields::Field& field) {
    const auto chosen = field.choice(box_styles::kind_spellings());
    return chosen ? std::optional(static_cast<Converter::Kind>(*chosen)) : std::nullopt;
}

// Whether an optional key was given and is for this kind of machine. Of an unknown kind its value is read all the same.
bool is_given(fields::MapReader& form, const char* key, bool is_for_kind, const char* for_whom) {
    if (!form.has(key)) return false;
    if (is_for_kind) return true;
    form.field(key).complain_of_key(fmt::format("not for this kind of machine: {}; take it out", for_whom));
    return false;
}

// How blanks lie on a sheet: for what parts them. Other machines make one box a sheet, and a slitter's straight cuts
// leave nothing between two blanks.
void read_sheet_filling(fields::MapReader& form, std::optional<Converter::Kind> kind, Converter& result) {
    const bool may_part = !kind || box_styles::parts_sheets(*kind);
    const bool may_leave_waste = !kind || *kind == Converter::Kind::die_cutter;
    const char* one_up = "only a die cutter or a slitter holds more than one box a sheet";
    const char* waste = may_part ? "only a die cutter leaves board between blanks and at the edge" : one_up;
    if (is_given(form, "between", may_leave_waste, waste))
        result.between_mm = form.field("between").number("mm", fields::range::not_negative);
    if (is_given(form, "edge", may_leave_waste, waste))
        result.edge_mm = form.field("edge").number("mm", fields::range::not_negative);
    if (is_given(form, "ups_max", may_part, one_up))
        result.ups_max = form.field("ups_max").number("1", fields::range::count_from_1);
}

void read_flap_cutting(fields::MapReader& form, std::optional<Converter::Kind> kind, Converter& result) {
    const bool may_cut = !kind || *kind == Converter::Kind::folder_gluer;
    if (!is_given(form, "cuts_flaps", may_cut, "only a folder-gluer cuts the flaps that it folds")) return;
    result.cuts_flaps = form.field("cuts_flaps").choice({"false", "true"}) == 1U;
}

Converter read_converter(const fields::Field& entry) {
    fields::MapReader form(entry);
    Converter result;
    result.code = entry.key();
    const auto kind = read_kind(form.field("kind"));
    result.kind = kind.value_or(Converter::Kind::printer);
    auto sheet = form.form("sheet");
    result.length_mm = sheet.field("length").span("mm", fields::range::positive);
    result.width_mm = sheet.field("width").span("mm", fields::range::positive);
    sheet.finish();
    result.colours = form.has("colours") ? form.field("colours").number("1", fields::range::count) : 0;
    read_sheet_filling(form, kind, result);
    read_flap_cutting(form, kind, result);
    auto setup = form.form("setup");
    result.setup_min = setup.field("minutes").number("min", fields::range::not_negative);
    result.setup_sheets = setup.field("sheets").number("1", fields::range::count);
    setup.finish();
    result.run_waste = form.field("run_waste").number("1", fields::range::share);
    result.speed_per_h = form.field("speed").number("1/h", fields::range::positive);
    result.hourly = read_hourly(form.form("hourly"));
    result.power_kw = form.field("power").number("kW", fields::range::not_negative);
    result.places = form.places();
    form.finish();
    return result;
}

}  // namespace

std::vector<Corrugator> read_corrugators(const fields::Field& table) {
    std::vector<Corrugator> result;
    for (const auto& entry : table.entries_at_least_one()) result.push_back(read_corrugator(entry));
    return result;
}

std::vector<Converter> read_converters(const fields::Field& table) {
    std::vector<Converter> result;
    for (const auto& entry : table.entries()) result.push_back(read_converter(entry));
    return result;
}

Dispatch read_dispatch(const fields::Field& map) {
    fields::MapReader form(map);
    Dispatch dispatch;
    dispatch.minutes = form.field("minutes").number("min", fields::range::not_negative);
    dispatch.hourly = read_hourly(form.form("hourly"));
    dispatch.places = form.places();
    form.finish();
    return dispatch;
}

void check_machine_codes(const fields::Field& corrugators, const fields::Field& converters) {
    const auto check_reserved = [](const fields::Field& entry) {
        if (is_reserved(entry.key()))
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

void check_supplier_names(const Plant& plant, base::Diagnostics& complaints) {
    for (const Board& board : plant.boards) {
        const Corrugator* supplier = plant.supplier_of(board);
        if (supplier == nullptr || supplier->code.empty()) continue;
        const std::string& name = supplier->code;
        const bool is_machine = plant.find_corrugator(name) != nullptr || plant.find_converter(name) != nullptr;
        if (!is_machine && !is_reserved(name)) continue;
        complaints.add(supplier->places.find("from")->second, fmt::format("boards.{}.bought.from", board.code),
                       fmt::format("not free as a supplier's name: {} is {}; give the supplier another name",
                                   base::shown(name), is_machine ? "a machine of the plant" : "an account"));
    }
}

}  // namespace flutebook::plant
