#include "host/contract/settings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <variant>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/plant/machine_list.hpp"
#include "host/plant/quantity.hpp"

namespace flutebook::contract {
namespace {

using base::Place;
using plant::GivenSetting;
using plant::GivenTable;
using plant::GivenText;

// ", did you mean 'x'?" or the whole list when nothing is near.
std::string suggestion(const std::string& word, const std::vector<std::string>& known) {
    if (const auto near = base::nearest(word, known)) return fmt::format("did you mean '{}'?", *near);
    if (known.empty()) return "leave it out";
    return fmt::format("expected one of {}", fmt::join(known, ", "));
}

// The choices whose numbers lie within the setting's range.
std::vector<std::string> open_choices(const Setting& setting) {
    std::vector<std::string> result;
    for (std::size_t i = 0; i < setting.choices.size(); ++i)
        if (setting.range.holds(static_cast<double>(i))) result.push_back(setting.choices[i]);
    return result;
}

// The default; for a setting without a default, the number in its range that is nearest to 0.
double value_if_not_given(const Setting& setting) {
    return setting.initial.value_or(std::clamp(0.0, setting.range.low, setting.range.high));
}

class SettingReader {
public:
    explicit SettingReader(std::string currency) : currency_(std::move(currency)) {}

    // A value that fits its declaration; otherwise an error is kept, and nothing returned.
    std::optional<double> value(const Setting& setting, const GivenText& given, const std::string& path) {
        if (!setting.choices.empty()) return choice(setting, given, path);
        const auto read = plant::read_quantity(given, setting.unit, currency_);
        if (const auto* problem = std::get_if<plant::Problem>(&read)) {
            complain(given.place, path, problem->text);
            return std::nullopt;
        }
        const double number = std::get<double>(read);
        if (setting.range.holds(number)) return number;
        complain(given.place, path,
                 fmt::format("out of range: found {}, expected {} to {} {}", number, setting.range.low,
                             setting.range.high, setting.unit));
        return std::nullopt;
    }

    // The one value of a setting that has no table.
    std::optional<double> value(const Setting& setting, const GivenSetting& given, const std::string& path) {
        if (const auto* text = std::get_if<GivenText>(&given.value)) return value(setting, *text, path);
        complain(given.place, path, "wrong type: found a table, expected one value");
        return std::nullopt;
    }

    void complain(const Place& place, const std::string& path, const std::string& what) {
        errors_.push_back(fmt::format("{}:{}:{}: {}: {}", place.file, place.line, place.column, path, what));
    }

    [[nodiscard]] std::vector<std::string> errors() && { return std::move(errors_); }

private:
    std::optional<double> choice(const Setting& setting, const GivenText& given, const std::string& path) {
        const std::vector<std::string> open = open_choices(setting);
        const auto found = std::find(open.begin(), open.end(), given.text);
        if (found != open.end()) return setting.range.low + static_cast<double>(found - open.begin());
        complain(given.place, path,
                 fmt::format("unknown choice: found '{}', {}", given.text, suggestion(given.text, open)));
        return std::nullopt;
    }

    std::string currency_;
    std::vector<std::string> errors_;
};

std::vector<std::string> setting_names(const Model& model) {
    std::vector<std::string> names;
    for (const Setting& setting : model.settings) names.push_back(setting.name);
    return names;
}

// The codes of the plant's papers, flutes or machines: the keys of a table of this kind.
std::vector<std::string> table_keys(const plant::Plant& plant, VariesBy varies_by) {
    std::vector<std::string> keys;
    if (varies_by == VariesBy::paper)
        for (const auto& paper : plant.papers) keys.push_back(paper.code);
    if (varies_by == VariesBy::flute)
        for (const auto& flute : plant.flutes) keys.push_back(flute.code);
    if (varies_by == VariesBy::machine)
        for (std::size_t i = 0; i < plant::machine_count(plant); ++i) keys.push_back(plant::machine_code(plant, i));
    return keys;
}

class SettingsReader {
public:
    SettingsReader(const plant::Plant& plant) : plant_(plant), reader_(plant.currency) {}

    std::vector<SettingValues> read(const Model& model, const plant::ModelSettings& entry,
                                    const std::vector<char>& replaced) {
        refuse_unknown(model, entry);
        std::vector<SettingValues> result;
        for (std::size_t s = 0; s < model.settings.size(); ++s)
            result.push_back(values(model.settings[s], entry, replaced[s] != 0));
        return result;
    }

    void finish() && {
        auto errors = std::move(reader_).errors();
        if (!errors.empty()) throw InputError(InputError::Whose::plant, std::move(errors));
    }

private:
    static std::string path_of(const plant::ModelSettings& entry, const std::string& name) {
        return fmt::format("plugins.{}.{}", entry.id, name);
    }

    void refuse_unknown(const Model& model, const plant::ModelSettings& entry) {
        for (const auto& given : entry.settings) {
            const auto known = std::find_if(model.settings.begin(), model.settings.end(),
                                            [&](const Setting& setting) { return setting.name == given.name; });
            if (known == model.settings.end())
                reader_.complain(
                    given.name_place, path_of(entry, given.name),
                    fmt::format("unknown setting of {}, {}", model.id, suggestion(given.name, setting_names(model))));
            else if (known->varies_by == VariesBy::request)
                reader_.complain(given.name_place, path_of(entry, given.name),
                                 fmt::format("varies by request: give it there, as extras: {{{}: {{{}: …}}}}", model.id,
                                             given.name));
        }
    }

    SettingValues values(const Setting& setting, const plant::ModelSettings& entry, bool may_lack) {
        if (setting.varies_by == VariesBy::request) return {};
        const GivenSetting* given = entry.find(setting.name);
        if (given == nullptr && setting.is_required() && !may_lack) {
            reader_.complain(entry.place, path_of(entry, setting.name),
                             fmt::format("missing: {} has no default, expected {} to {} {}: {}", setting.name,
                                         setting.range.low, setting.range.high, setting.unit, setting.meaning));
            return {};
        }
        if (setting.varies_by == VariesBy::plant) return one(setting, entry, given);
        return table(setting, entry, given);
    }

    SettingValues one(const Setting& setting, const plant::ModelSettings& entry, const GivenSetting* given) {
        SettingValues result{{value_if_not_given(setting)}, {Place{}}};
        if (given == nullptr) return result;
        if (const auto number = reader_.value(setting, *given, path_of(entry, setting.name)))
            result.values[0] = *number;
        result.places[0] = given->place;
        return result;
    }

    // Writes a given value and its place at an index.
    void put(SettingValues& result, std::size_t index, const Setting& setting, const GivenText& given,
             const std::string& path) {
        if (const auto number = reader_.value(setting, given, path)) result.values[index] = *number;
        result.places[index] = given.place;
    }

    SettingValues table(const Setting& setting, const plant::ModelSettings& entry, const GivenSetting* given) {
        const std::vector<std::string> keys = table_keys(plant_, setting.varies_by);
        SettingValues result;
        result.of_liner = value_if_not_given(setting);
        result.values.assign(keys.size(), value_if_not_given(setting));
        result.places.assign(keys.size(), Place{});
        if (given == nullptr) return result;
        const std::string path = path_of(entry, setting.name);
        const auto* cells = std::get_if<GivenTable>(&given->value);
        if (cells == nullptr) {
            reader_.complain(given->place, path,
                             fmt::format("wrong type: expected a table by {}, {{{}: …}}", to_text(setting.varies_by),
                                         keys.empty() ? "" : keys.front()));
            return result;
        }
        put_cells(result, keys, setting, *cells, path);
        if (setting.is_required()) refuse_gaps(result, keys, setting, *given, path);
        return result;
    }

    void put_cells(SettingValues& result, const std::vector<std::string>& keys, const Setting& setting,
                   const GivenTable& cells, const std::string& path) {
        for (const auto& item : cells) {
            const std::string item_path = path + "." + item.key;
            const auto key = std::find(keys.begin(), keys.end(), item.key);
            if (key != keys.end())
                put(result, static_cast<std::size_t>(key - keys.begin()), setting, item.value, item_path);
            else
                reader_.complain(item.key_place, item_path,
                                 fmt::format("unknown {}, {}", to_text(setting.varies_by), suggestion(item.key, keys)));
        }
    }

    // A table of a setting without a default must give every key. A key without a place (line 0) was not given.
    void refuse_gaps(const SettingValues& result, const std::vector<std::string>& keys, const Setting& setting,
                     const GivenSetting& given, const std::string& path) {
        for (std::size_t i = 0; i < keys.size(); ++i)
            if (result.places[i].line == 0)
                reader_.complain(given.place, path,
                                 fmt::format("missing: {} has no default for {}", setting.name, keys[i]));
    }

    const plant::Plant& plant_;
    SettingReader reader_;
};

const Model* find_model(const std::vector<Model>& models, const std::string& id) {
    const auto found = std::find_if(models.begin(), models.end(), [&](const Model& model) { return model.id == id; });
    return found == models.end() ? nullptr : &*found;
}

void refuse_unknown_extras(const orders::Request& request, const std::vector<Model>& models, SettingReader& reader) {
    for (const auto& extra : request.extras) {
        const Model* model = find_model(models, extra.id);
        if (model == nullptr) {
            std::vector<std::string> ids;
            for (const Model& known : models) ids.push_back(known.id);
            reader.complain(extra.place, "extras." + extra.id, "no such model is loaded, " + suggestion(extra.id, ids));
            continue;
        }
        for (const auto& given : extra.settings) {
            std::vector<std::string> known;
            for (const Setting& setting : model->settings)
                if (setting.varies_by == VariesBy::request) known.push_back(setting.name);
            if (std::find(known.begin(), known.end(), given.name) == known.end())
                reader.complain(given.name_place, fmt::format("extras.{}.{}", extra.id, given.name),
                                fmt::format("no setting of {} that varies by request, {}", model->id,
                                            suggestion(given.name, known)));
        }
    }
}

const GivenSetting* given_in_request(const orders::Request& request, const Model& model, const Setting& setting) {
    const plant::ModelSettings* extra = request.find_extras(model.id);
    return extra == nullptr ? nullptr : extra->find(setting.name);
}

}  // namespace

Settings read_settings(const plant::Plant& plant, const std::vector<Model>& models, const Replaced& replaced) {
    SettingsReader reader(plant);
    Settings result;
    std::size_t request_index = 0;
    for (std::size_t m = 0; m < models.size(); ++m) {
        const auto entry = std::find_if(plant.models.begin(), plant.models.end(),
                                        [&](const plant::ModelSettings& given) { return given.id == models[m].id; });
        result.push_back(reader.read(models[m], *entry, replaced[m]));
        for (std::size_t s = 0; s < models[m].settings.size(); ++s)
            if (models[m].settings[s].varies_by == VariesBy::request) result[m][s].request_index = request_index++;
    }
    std::move(reader).finish();
    return result;
}

std::vector<double> read_request_settings(const orders::Request& request, const std::string& currency,
                                          const std::vector<Model>& models) {
    SettingReader reader(currency);
    refuse_unknown_extras(request, models, reader);
    std::vector<double> result;
    for (const Model& model : models)
        for (const Setting& setting : model.settings) {
            if (setting.varies_by != VariesBy::request) continue;
            const std::string path = fmt::format("extras.{}.{}", model.id, setting.name);
            const GivenSetting* given = given_in_request(request, model, setting);
            if (given == nullptr && setting.is_required())
                reader.complain(request.place, path,
                                fmt::format("missing: {} has no default: {}", setting.name, setting.meaning));
            const auto number = given == nullptr ? std::nullopt : reader.value(setting, *given, path);
            result.push_back(number.value_or(value_if_not_given(setting)));
        }
    auto errors = std::move(reader).errors();
    if (!errors.empty()) throw InputError(InputError::Whose::request, std::move(errors));
    return result;
}

std::optional<Place> place_in_request(const orders::Request& request, const Model& model, const Setting& setting) {
    const GivenSetting* given = given_in_request(request, model, setting);
    return given == nullptr ? std::nullopt : std::optional(given->place);
}

}  // namespace flutebook::contract
