#include "host/contract/settings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::contract {
namespace {

using base::Place;
using plant::GivenSetting;

std::vector<std::string> setting_names(const Model& model) {
    std::vector<std::string> names;
    for (const Setting& setting : model.settings) names.push_back(setting.name);
    return names;
}

// Whether the order alone decides its value: no ply, no step, and no number that a model may provide.
bool is_known_of_order(const Setting& setting) {
    return axis_of(setting.varies_by) == Axis::order && setting.varies_by != VariesBy::choice && !setting.stepped_over;
}

// Reads what plugins.yaml gives for one model after another.
class PlantSettingsReader {
public:
    explicit PlantSettingsReader(const plant::Plant& plant, PlantCodes codes = PlantCodes::all_known)
        : plant_(plant), reader_(plant, codes) {}

    // Of all models.
    Settings read(const std::vector<Model>& models, const SettingTakers& takers) {
        Settings result;
        for (std::size_t m = 0; m < models.size(); ++m) {
            const auto entry =
                std::find_if(plant_.models.begin(), plant_.models.end(),
                             [&](const plant::ModelSettings& given) { return given.id == models[m].id; });
            result.push_back(read(models[m], *entry, takers[m]));
        }
        return result;
    }

    [[nodiscard]] const base::Diagnostics& faults() const { return reader_.faults(); }
    [[nodiscard]] std::vector<UnusualValue> take_unusual() { return reader_.take_unusual(); }

private:
    std::vector<SettingValues> read(const Model& model, const plant::ModelSettings& entry,
                                    const std::vector<SettingTaker>& takers) {
        refuse_unknown(model, entry);
        std::vector<SettingValues> result;
        for (std::size_t s = 0; s < model.settings.size(); ++s)
            result.push_back(values(model, model.settings[s], entry, takers[s]));
        refuse_late_gaps(model, result, entry, takers);
        return result;
    }

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

    // A choice that only a model, a machine or a need's number decides is known too late to refuse the request.
    void refuse_late_gaps(const Model& model, const std::vector<SettingValues>& values,
                          const plant::ModelSettings& entry, const std::vector<SettingTaker>& takers) {
        for (std::size_t s = 0; s < values.size(); ++s) {
            const Setting& setting = model.settings[s];
            if (setting.varies_by != VariesBy::choice || takers[s] == SettingTaker::nobody) continue;
            const bool is_early =
                takers[*setting.keyed_by] == SettingTaker::model && is_known_of_order(*choice_setting(model, setting));
            if (is_early) continue;
            for (const DatedTable& dated : values[s].tables)
                for (std::size_t k = 0; k < dated.table.keys.size(); ++k)
                    if (dated.table.cells[k].is_empty())
                        reader_.complain(
                            dated.table.place, path_of(entry, setting.name),
                            fmt::format("missing: {} has no default for {}", setting.name, dated.table.keys[k]));
        }
    }

    SettingValues values(const Model& model, const Setting& setting, const plant::ModelSettings& entry,
                         SettingTaker taker) {
        if (setting.varies_by == VariesBy::request) return {};
        const std::string path = path_of(entry, setting.name);
        if (const GivenSetting* given = entry.find(setting.name))
            return reader_.read(plant_, model, setting, *given, path);
        if (setting.is_required() && taker != SettingTaker::nobody)
            reader_.complain(entry.place, path,
                             fmt::format("missing: {} has no default, expected {}: {}", setting.name,
                                         range_text(setting), setting.meaning));
        return SettingReader::values_if_not_given(plant_, model, setting);
    }

    const plant::Plant& plant_;
    SettingReader reader_;
};

void refuse_unknown_settings(const plant::ModelSettings& extra, const Model& model, SettingReader& reader) {
    for (const auto& given : extra.settings) {
        const bool is_known = std::any_of(model.settings.begin(), model.settings.end(), [&](const Setting& setting) {
            return setting.varies_by == VariesBy::request && setting.name == given.name;
        });
        if (is_known) continue;
        std::vector<std::string> known;
        for (const Setting& setting : model.settings)
            if (setting.varies_by == VariesBy::request) known.push_back(setting.name);
        reader.complain(
            given.name_place, fmt::format("extras.{}.{}", extra.id, given.name),
            fmt::format("no setting of {} that varies by request, {}", model.id, suggestion(given.name, known)));
    }
}

// Whether the reader of the request has said which models of its extras are not loaded.
enum class UnknownModels : char { untold, told_already };

void refuse_unknown_extras(const orders::Request& request, const std::vector<Model>& models, SettingReader& reader,
                           UnknownModels unknown) {
    for (const auto& extra : request.extras) {
        const auto found = find_model(models, extra.id);
        if (!found) {
            if (unknown == UnknownModels::told_already) continue;
            std::vector<std::string> ids;
            for (const Model& known : models) ids.push_back(known.id);
            reader.complain(extra.place, "extras." + extra.id, "no such model is loaded, " + suggestion(extra.id, ids));
            continue;
        }
        refuse_unknown_settings(extra, models[*found], reader);
    }
}

const GivenSetting* given_in_request(const orders::Request& request, const Model& model, const Setting& setting) {
    const plant::ModelSettings* extra = request.find_extras(model.id);
    return extra == nullptr ? nullptr : extra->find(setting.name);
}

// All request settings, in the order of the models.
std::vector<SteppedValue> read_extras(const orders::Request& request, const std::vector<Model>& models,
                                      SettingReader& reader, UnknownModels unknown) {
    refuse_unknown_extras(request, models, reader, unknown);
    std::vector<SteppedValue> result;
    for (const Model& model : models)
        for (const Setting& setting : model.settings) {
            if (setting.varies_by != VariesBy::request) continue;
            const auto path = [&] { return fmt::format("extras.{}.{}", model.id, setting.name); };
            const GivenSetting* given = given_in_request(request, model, setting);
            if (given == nullptr && setting.is_required())
                reader.complain(request.place, path(),
                                fmt::format("missing: {} has no default: {}", setting.name, setting.meaning));
            result.push_back(given == nullptr ? SteppedValue(value_if_not_given(setting), Place{})
                                              : reader.read(model, setting, *given, path()));
        }
    return result;
}

// Chooses what one order takes of the plant's settings; complains of every setting that has no value for it.
class OrderSettingsChooser {
public:
    OrderSettingsChooser(const std::vector<Model>& models, const plant::Plant& plant, const orders::Request& request,
                         SettingReader& reader)
        : models_(models), plant_(plant), request_(request), reader_(reader) {}

    OrderSettings choose(const Settings& settings, const SettingTakers& takers) {
        OrderSettings result;
        result.chosen.reserve(models_.size());
        result.requested = read_extras(request_, models_, reader_, UnknownModels::untold);
        for (std::size_t m = 0; m < models_.size(); ++m) {
            auto& chosen = result.chosen.emplace_back(models_[m].settings.size());
            for (std::size_t s = 0; s < chosen.size(); ++s)
                if (takers[m][s] != SettingTaker::nobody)
                    chosen[s] = choose(models_[m], models_[m].settings[s], settings[m][s]);
            for (std::size_t s = 0; s < chosen.size(); ++s)
                if (takers[m][s] != SettingTaker::nobody && models_[m].settings[s].varies_by == VariesBy::choice)
                    check_choice(models_[m], s, chosen, settings[m], result.requested);
        }
        return result;
    }

private:
    OrderSetting choose(const Model& model, const Setting& setting, const SettingValues& values) {
        OrderSetting result;
        if (setting.varies_by == VariesBy::request) return result;
        result.table = values.on(request_.date);
        if (result.table == nullptr) {
            complain("date",
                     fmt::format("{}.{} has no value on {}: its first value counts from {}; date the request later, or "
                                 "give an earlier value",
                                 model.id, setting.name, base::to_string(request_.date),
                                 base::to_string(values.tables.front().from)));
            return result;
        }
        if (setting.varies_by == VariesBy::plant) result.value = &result.table->otherwise;
        if (setting.varies_by == VariesBy::customer)
            result.value = by_key(model, setting, *result.table, request_.customer);
        if (setting.varies_by == VariesBy::board)
            result.value = by_key(model, setting, *result.table, plant_.boards[request_.board].code);
        if (setting.varies_by == VariesBy::style) result.value = by_key(model, setting, *result.table, request_.style);
        return result;
    }

    const SteppedValue* by_key(const Model& model, const Setting& setting, const SettingTable& table,
                               const std::string& key) {
        const SteppedValue& result = table.of(key);
        if (!result.is_empty()) return &result;
        const char* kind = to_text(setting.varies_by);
        complain(kind,
                 fmt::format("{}.{} has no value for {}: found neither that key nor `default` at {}; add one of them",
                             model.id, setting.name,
                             key.empty() ? fmt::format("an order without a {}", kind) : base::shown(key),
                             base::place_text(table.place)));
        return nullptr;
    }

    // The choice itself is read from its column; here it is seen whether it has a value.
    void check_choice(const Model& model, std::size_t s, const std::vector<OrderSetting>& chosen,
                      const std::vector<SettingValues>& values, const std::vector<SteppedValue>& requested) {
        const Setting& setting = model.settings[s];
        const Setting& choice = *choice_setting(model, setting);
        const OrderSetting& chosen_choice = chosen[*setting.keyed_by];
        const bool is_requested = choice.varies_by == VariesBy::request;
        if (chosen[s].table == nullptr || !is_known_of_order(choice)) return;
        if (!is_requested && chosen_choice.value == nullptr) return;
        const SteppedValue& value =
            is_requested ? requested[values[*setting.keyed_by].request_index] : *chosen_choice.value;
        const std::string& name = choice.choices[static_cast<std::size_t>(value.value())];
        const SettingTable& table = *chosen[s].table;
        if (!table.of(name).is_empty()) return;
        const GivenSetting* given = given_in_request(request_, model, choice);
        reader_.complain(
            given == nullptr ? request_.place : given->place, fmt::format("extras.{}.{}", model.id, choice.name),
            fmt::format("{}.{} has no value for {}: found neither that key nor `default` at {}; add one of them",
                        model.id, setting.name, name, base::place_text(table.place)));
    }

    void complain(const std::string& key, const std::string& what) {
        const auto place = request_.places.find(key);
        reader_.complain(place == request_.places.end() ? request_.place : place->second, key, what);
    }

    const std::vector<Model>& models_;
    const plant::Plant& plant_;
    const orders::Request& request_;
    SettingReader& reader_;
};

}  // namespace

PlantSettings read_settings(const plant::Plant& plant, const std::vector<Model>& models, const SettingTakers& takers) {
    PlantSettingsReader reader(plant);
    PlantSettings result;
    result.values = reader.read(models, takers);
    reader.faults().throw_if_any(InputError::Whose::plant);
    std::size_t request_index = 0;
    for (std::size_t m = 0; m < models.size(); ++m)
        for (std::size_t s = 0; s < models[m].settings.size(); ++s)
            if (models[m].settings[s].varies_by == VariesBy::request)
                result.values[m][s].request_index = request_index++;
    result.unusual = reader.take_unusual();
    return result;
}

base::Diagnostics setting_faults(const plant::Plant& plant, const std::vector<Model>& models,
                                 const SettingTakers& takers, PlantCodes codes) {
    PlantSettingsReader reader(plant, codes);
    static_cast<void>(reader.read(models, takers));
    return reader.faults();
}

OrderSettings settings_of_order(const Settings& settings, const SettingTakers& takers, const std::vector<Model>& models,
                                const plant::Plant& plant, const orders::Request& request) {
    SettingReader reader(plant);
    OrderSettings result = OrderSettingsChooser(models, plant, request, reader).choose(settings, takers);
    result.unusual = reader.take_unusual();
    reader.faults().throw_if_any(InputError::Whose::request);
    return result;
}

base::Diagnostics extras_faults(const std::vector<Model>& models, const plant::Plant& plant,
                                const orders::Request& request) {
    SettingReader reader(plant);
    static_cast<void>(read_extras(request, models, reader, UnknownModels::told_already));
    return reader.faults();
}

}  // namespace flutebook::contract
