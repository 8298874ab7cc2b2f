#include "host/contract/setting_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <variant>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/quantity.hpp"
#include "host/plant/machine_list.hpp"
#include "host/plant/unusual_numbers.hpp"

namespace flutebook::contract {
namespace {

using base::Place;
using fields::GivenText;
using plant::GivenCell;
using plant::GivenDates;
using plant::GivenSetting;
using plant::GivenTable;
using plant::GivenValue;

// The key of what a table does not name.
constexpr const char* default_key = "default";

const Name* need_stepped_over(const Model& model, const Setting& setting) {
    return setting.stepped_over ? &model.needs[*setting.stepped_over] : nullptr;
}

// The choices whose numbers lie within the setting's range.
std::vector<std::string> open_choices(const Setting& setting) {
    std::vector<std::string> result;
    for (std::size_t i = 0; i < setting.choices.size(); ++i)
        if (setting.range.holds(static_cast<double>(i))) result.push_back(setting.choices[i]);
    return result;
}

template <typename Entries>
std::vector<std::string> codes(const Entries& entries) {
    std::vector<std::string> result;
    for (const auto& entry : entries) result.push_back(entry.code);
    return result;
}

// A bought board is costed as one paper.
std::vector<std::string> paper_codes(const plant::Plant& plant) {
    std::vector<std::string> result = codes(plant.papers);
    for (const plant::Paper& board : plant.bought_papers) result.push_back(board.code);
    return result;
}

// All keys that a table may have; none where it may have any: customers are no list of the plant.
std::vector<std::string> table_keys(const plant::Plant& plant, const Model& model, const Setting& setting) {
    switch (setting.varies_by) {
        case VariesBy::paper:
            return paper_codes(plant);
        case VariesBy::flute:
            return codes(plant.flutes);
        case VariesBy::board:
            return codes(plant.boards);
        case VariesBy::style:
            return codes(plant.styles);
        case VariesBy::choice:
            return choice_setting(model, setting)->choices;
        case VariesBy::machine:
        case VariesBy::plant:
        case VariesBy::request:
        case VariesBy::customer:
            break;
    }
    std::vector<std::string> result;
    if (setting.varies_by == VariesBy::machine)
        for (std::size_t i = 0; i < plant::machine_count(plant); ++i) result.push_back(plant::machine_code(plant, i));
    return result;
}

// Whether every key that an order can bring is known when the plant is read, so that a gap in a table is an error of
// the plant's file. A customer, a board, a style or a choice that lacks its value refuses the request that brings it.
bool must_be_complete(VariesBy varies_by) {
    return varies_by == VariesBy::paper || varies_by == VariesBy::flute || varies_by == VariesBy::machine;
}

// What a key should have been. A code that is nearly another one is still another board's or style's.
std::string known_keys(VariesBy varies_by, const std::string& key, const std::vector<std::string>& keys) {
    if (varies_by == VariesBy::board || varies_by == VariesBy::style)
        return fmt::format("expected one of {}, or {}", fmt::join(keys, ", "), default_key);
    return suggestion(key, keys);
}

// A number of things has no unit to show.
std::string in_unit(double number, const std::string& unit) {
    return unit == "1" ? fmt::format("{}", number) : fmt::format("{} {}", number, unit);
}

bool is_number(const std::string& text) {
    return std::holds_alternative<double>(fields::read_quantity({text, false, {}}, "1", ""));
}

// `{0: 31, 8: 24}` where a table by customer was meant, or steps for all customers: it could be either.
bool may_be_steps(const GivenTable& cells) {
    return !cells.empty() && std::all_of(cells.begin(), cells.end(), [](const GivenCell& cell) {
        return is_number(cell.key) && std::holds_alternative<GivenText>(cell.value);
    });
}

SettingTable empty_table(const std::vector<std::string>& keys, const SteppedValue& otherwise) {
    SettingTable result;
    result.keys = keys;
    result.cells.assign(keys.size(), otherwise);
    result.otherwise = otherwise;
    return result;
}

}  // namespace

const Setting* choice_setting(const Model& model, const Setting& setting) {
    return setting.keyed_by ? &model.settings[*setting.keyed_by] : nullptr;
}

double value_if_not_given(const Setting& setting) {
    return setting.initial.value_or(std::clamp(0.0, setting.range.low, setting.range.high));
}

std::string suggestion(const std::string& word, const std::vector<std::string>& known) {
    if (const auto near = base::nearest(word, known)) return fmt::format("did you mean '{}'?", *near);
    if (known.empty()) return "leave it out";
    return fmt::format("expected one of {}", fmt::join(known, ", "));
}

std::string range_text(const Setting& setting) {
    return fmt::format("{} to {}", setting.range.low, in_unit(setting.range.high, setting.unit));
}

struct SettingReader::Subject {
    const Setting& setting;
    const Name* need;               // that it is stepped over; null where it is not
    std::vector<std::string> keys;  // that its table may have

    [[nodiscard]] SteppedValue not_given() const { return {value_if_not_given(setting), Place{}}; }
    // What holds for a key that a table does not name.
    [[nodiscard]] SteppedValue unnamed() const {
        if (setting.is_required() && !must_be_complete(setting.varies_by)) return {};
        return not_given();
    }
};

SettingReader::SettingReader(const plant::Plant& plant, PlantCodes codes)
    : words_(plant::unit_words(plant)), money_scale_(plant::usual_money_scale(plant)), codes_(codes) {}

std::optional<double> SettingReader::choice(const Subject& subject, const GivenText& given, const std::string& path) {
    const std::vector<std::string> open = open_choices(subject.setting);
    const auto found = std::find(open.begin(), open.end(), given.text);
    if (found != open.end()) return subject.setting.range.low + static_cast<double>(found - open.begin());
    complain(given.place, path,
             fmt::format("unknown choice: found '{}', {}", given.text, suggestion(given.text, open)));
    return std::nullopt;
}

std::optional<double> SettingReader::number(const Subject& subject, const GivenText& given, const std::string& path) {
    const Setting& setting = subject.setting;
    if (given.text.empty()) {
        complain_of_nothing(setting, given.place, path);
        return std::nullopt;
    }
    if (!setting.choices.empty()) return choice(subject, given, path);
    const auto read = fields::read_quantity(given, setting.unit, words_);
    if (const auto* problem = std::get_if<fields::Problem>(&read)) {
        complain(given.place, path, problem->text);
        return std::nullopt;
    }
    const double number = std::get<double>(read);
    if (!setting.range.holds(number)) {
        complain(given.place, path, fmt::format("out of range: found {}, expected {}", number, range_text(setting)));
        return std::nullopt;
    }
    hold_against_usual(setting, number, given.place, path);
    return number;
}

void SettingReader::complain_of_nothing(const Setting& setting, const Place& place, const std::string& path) {
    const std::string wanted = setting.choices.empty()
                                   ? range_text(setting)
                                   : fmt::format("one of {}", fmt::join(open_choices(setting), ", "));
    complain(place, path,
             fmt::format("an empty value: expected {}; write it behind the key{}", wanted,
                         setting.is_required() ? "" : ", or take the key out to have its default"));
}

void SettingReader::hold_against_usual(const Setting& setting, double number, const Place& place,
                                       const std::string& path) {
    if (!setting.usual) return;
    const double scale = setting.unit.starts_with("money") ? money_scale_ : 1;
    const Range usual{setting.usual->low * scale, setting.usual->high * scale};
    if (usual.holds(number)) return;
    const auto shown = [&](double bound) {
        return scale == 1 ? fmt::format("{}", bound) : fmt::format("{:.3g}", bound);
    };
    unusual_.push_back({place, fmt::format("{}: unusual: found {}, usually {} to {}{}", path, number, shown(usual.low),
                                           shown(usual.high), setting.unit == "1" ? "" : " " + setting.unit)});
}

SteppedValue SettingReader::stepped(const Subject& subject, const GivenValue& given, const Place& place,
                                    const std::string& path) {
    if (const auto* text = std::get_if<GivenText>(&given)) {
        const auto value = number(subject, *text, path);
        return value ? SteppedValue(*value, text->place) : subject.not_given();
    }
    if (subject.need != nullptr) return steps(subject, std::get<GivenTable>(given), place, path);
    complain(place, path, "wrong type: found a table, expected one value");
    return subject.not_given();
}

// The key of a step, in the need's unit; nothing where it is no number, or stands where it cannot count.
std::optional<double> SettingReader::step_key(const Name& need, const GivenCell& cell,
                                              const std::vector<ValueStep>& before, const std::string& path) {
    const auto read = fields::read_quantity({cell.key, false, cell.key_place}, need.unit, words_);
    if (const auto* problem = std::get_if<fields::Problem>(&read)) {
        complain(cell.key_place, path, fmt::format("no step of {}: {}", need.name, problem->text));
        return std::nullopt;
    }
    const double from = std::get<double>(read);
    const auto refuse = [&](const std::string& what) {
        complain(cell.key_place, path, what);
        return std::nullopt;
    };
    if (before.empty() && from > need.range.low)
        complain(cell.key_place, path,
                 fmt::format("no value below {}: {} can be {}; begin with a step from there", from, need.name,
                             in_unit(need.range.low, need.unit)));
    if (!before.empty() && from <= before.back().from)
        return refuse(fmt::format("out of order: found {} after {}, expected rising steps", from, before.back().from));
    if (from > need.range.high)
        return refuse(fmt::format("never reached: {} is at most {}; leave the step out", need.name,
                                  in_unit(need.range.high, need.unit)));
    return from;
}

SteppedValue SettingReader::steps(const Subject& subject, const GivenTable& given, const Place& place,
                                  const std::string& path) {
    std::vector<ValueStep> result;
    const std::size_t faults_before = faults_.count();
    for (const GivenCell& cell : given) {
        const std::string cell_path = path + "." + cell.key;
        const auto from = step_key(*subject.need, cell, result, cell_path);
        const auto* text = std::get_if<GivenText>(&cell.value);
        if (text == nullptr) complain(cell.key_place, cell_path, "wrong type: found a table, expected one value");
        const auto value = text == nullptr ? std::nullopt : number(subject, *text, cell_path);
        if (from) result.push_back({*from, value.value_or(0), text == nullptr ? Place{} : text->place});
    }
    if (given.empty())
        complain(place, path,
                 fmt::format("an empty table: expected steps over {}, {{{}: …}}", subject.need->name,
                             subject.need->range.low));
    return faults_.count() == faults_before ? SteppedValue(std::move(result)) : subject.not_given();
}

void SettingReader::put_cells(SettingTable& result, const Subject& subject, const GivenTable& cells,
                              const std::string& path) {
    const bool takes_any_key = subject.setting.varies_by == VariesBy::customer;
    for (const GivenCell& cell : cells) {
        const std::string cell_path = path + "." + cell.key;
        const auto known = std::find(result.keys.begin(), result.keys.end(), cell.key);
        if (cell.key == default_key) continue;
        if (known == result.keys.end() && !takes_any_key) {
            if (codes_ == PlantCodes::all_known || subject.setting.varies_by == VariesBy::choice)
                complain(cell.key_place, cell_path,
                         fmt::format("unknown {}, {}", to_text(subject.setting.varies_by),
                                     known_keys(subject.setting.varies_by, cell.key, result.keys)));
            continue;
        }
        SteppedValue value = stepped(subject, cell.value, cell.key_place, cell_path);
        if (known != result.keys.end()) {
            result.cells[static_cast<std::size_t>(known - result.keys.begin())] = std::move(value);
        } else {
            result.keys.push_back(cell.key);
            result.cells.push_back(std::move(value));
        }
    }
}

// A table of a setting without a default must give every key, or a default of its own.
void SettingReader::refuse_gaps(const Subject& subject, const GivenTable& cells, const Place& place,
                                const std::string& path) {
    for (const std::string& key : subject.keys)
        if (std::none_of(cells.begin(), cells.end(), [&](const GivenCell& cell) { return cell.key == key; }))
            complain(place, path, fmt::format("missing: {} has no default for {}", subject.setting.name, key));
}

SettingTable SettingReader::table(const Subject& subject, const GivenValue& given, const Place& place,
                                  const std::string& path) {
    const Setting& setting = subject.setting;
    if (setting.varies_by == VariesBy::plant) return empty_table({}, stepped(subject, given, place, path));
    SettingTable result = empty_table(subject.keys, subject.unnamed());
    result.place = place;
    const auto* cells = std::get_if<GivenTable>(&given);
    if (cells == nullptr) {
        complain(place, path,
                 fmt::format("wrong type: expected a table by {}, {{{}: …}}", to_text(setting.varies_by),
                             subject.keys.empty() ? default_key : subject.keys.front()));
        return result;
    }
    if (setting.varies_by == VariesBy::customer && subject.need != nullptr && may_be_steps(*cells)) {
        complain(place, path,
                 fmt::format("customers or steps: found numbers alone as keys; write steps that count for every "
                             "customer as {{{}: {{…}}}}, those of a customer as {{{}: {{{}: …}}}}",
                             default_key, cells->front().key, subject.need->range.low));
        return result;
    }
    const auto rest =
        std::find_if(cells->begin(), cells->end(), [](const GivenCell& cell) { return cell.key == default_key; });
    if (rest != cells->end())
        result = empty_table(subject.keys, stepped(subject, rest->value, rest->key_place, path + "." + rest->key));
    else if (setting.is_required() && must_be_complete(setting.varies_by))
        refuse_gaps(subject, *cells, place, path);
    result.place = place;
    put_cells(result, subject, *cells, path);
    return result;
}

SettingValues SettingReader::read(const plant::Plant& plant, const Model& model, const Setting& setting,
                                  const GivenSetting& given, const std::string& path) {
    const Subject subject{setting, need_stepped_over(model, setting), table_keys(plant, model, setting)};
    SettingValues result;
    if (const auto* dates = std::get_if<GivenDates>(&given.value)) {
        result.is_dated = true;
        for (const auto& dated : *dates)
            result.tables.push_back({dated.from, table(subject, dated.value, dated.value_place,
                                                       fmt::format("{}[{}]", path, base::to_string(dated.from)))});
        return result;
    }
    const auto* text = std::get_if<GivenText>(&given.value);
    const GivenValue value = text != nullptr ? GivenValue(*text) : GivenValue(std::get<GivenTable>(given.value));
    result.tables.push_back({base::Date{}, table(subject, value, given.place, path)});
    return result;
}

SteppedValue SettingReader::read(const Model& model, const Setting& setting, const GivenSetting& given,
                                 const std::string& path) {
    const Subject subject{setting, need_stepped_over(model, setting), {}};
    if (const auto* cells = std::get_if<GivenTable>(&given.value)) return stepped(subject, *cells, given.place, path);
    if (const auto* text = std::get_if<GivenText>(&given.value)) return stepped(subject, *text, given.place, path);
    // No values by date: a request has none, but for one that its own reader complained of.
    if (!std::get<GivenDates>(given.value).empty())
        complain(given.place, path, "wrong type: found values by date, expected one value: a request has one date");
    return subject.not_given();
}

SettingValues SettingReader::values_if_not_given(const plant::Plant& plant, const Model& model,
                                                 const Setting& setting) {
    SettingValues result;
    if (setting.varies_by == VariesBy::request) return result;
    result.tables.push_back(
        {base::Date{}, empty_table(table_keys(plant, model, setting), {value_if_not_given(setting), Place{}})});
    return result;
}

}  // namespace flutebook::contract
