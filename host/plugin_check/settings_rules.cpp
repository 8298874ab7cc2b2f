// The rules of the group `settings`: each setting can be set to every value of its range, and to no other.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <limits>

#include "host/base/errors.hpp"
#include "host/contract/settings.hpp"
#include "host/engine/row.hpp"
#include "host/plugin_check/generated_order.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/row_checks.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;
using contract::Setting;
using contract::VariesBy;

// The number without an exponent, as people write it, with enough digits to be read as the same number.
std::string plain(double number) {
    std::array<char, 800> signs;
    const auto end = std::to_chars(signs.data(), signs.data() + signs.size(), number, std::chars_format::fixed);
    return {signs.data(), end.ptr};
}

// Writes one setting of the model into a plant's files or a request, and reads it as the host does.
class SettingReading {
public:
    SettingReading(const Model& model, std::size_t setting)
        : model_(model), setting_(setting), generated_(make_order(1)) {
        // The others are not given here.
        for (Setting& other : model_.settings)
            if (&other != &model_.settings[setting]) other.initial = contract::value_if_not_given(other);
        generated_.request.extras.clear();
        generated_.plant.models.clear();
        generated_.plant.models.push_back({model_.id, {}, {}});
    }

    // Nothing where the host refuses the value.
    std::optional<double> read(const std::string& text) {
        try {
            return by_request() ? read_in_request(text) : read_in_plant(text);
        } catch (const InputError&) {
            return std::nullopt;
        }
    }

private:
    const Setting& setting() const { return model_.settings[setting_]; }
    bool by_request() const { return setting().varies_by == VariesBy::request; }

    // The setting in a file: one value, or a table in which every key has it.
    plant::GivenSetting given(const std::string& text) const {
        plant::GivenSetting result;
        result.name = setting().name;
        const fields::GivenText value{text, false, {}};
        if (by_request() || setting().varies_by == VariesBy::plant) {
            result.value = value;
            return result;
        }
        plant::GivenCell cell;  // member by member: g++ 12 takes a nested list for uninitialized
        cell.key = "default";
        cell.value = value;
        result.value = plant::GivenTable{cell};
        return result;
    }

    contract::Settings read_plant() const {
        return contract::read_settings(generated_.plant, {model_}, all_by_model()).values;
    }

    contract::SettingTakers all_by_model() const {
        return {std::vector<contract::SettingTaker>(model_.settings.size(), contract::SettingTaker::model)};
    }

    double read_in_request(const std::string& text) {
        plant::ModelSettings extras;
        extras.id = model_.id;
        extras.settings.push_back(given(text));
        generated_.request.extras.assign(1, extras);
        const contract::Settings settings = read_plant();
        return contract::settings_of_order(settings, all_by_model(), {model_}, generated_.plant, generated_.request)
            .requested[settings[0][setting_].request_index]
            .value();
    }

    double read_in_plant(const std::string& text) {
        generated_.plant.models.front().settings = {given(text)};
        return read_plant()[0][setting_].tables.front().table.otherwise.value();
    }

    Model model_;
    std::size_t setting_;
    GeneratedOrder generated_;
};

Violation wrong_choices(SettingReading& reading, const Setting& setting) {
    for (std::size_t i = 0; i < setting.choices.size(); ++i)
        if (reading.read(setting.choices[i]) != static_cast<double>(i))
            return fmt::format(
                "declares the choice {} of {}, which cannot be chosen; give the range 0 to the last "
                "choice, and name each choice once",
                setting.choices[i], setting.name);
    return std::nullopt;
}

Violation wrong_ends(SettingReading& reading, const Setting& setting) {
    constexpr double infinite = std::numeric_limits<double>::infinity();
    for (const double end : {setting.range.low, setting.range.high})
        if (reading.read(plain(end)) != end)
            return fmt::format("declares {} from {} to {}, and {} cannot be set", setting.name, setting.range.low,
                               setting.range.high, end);
    for (const std::string& beyond :
         {plain(std::nextafter(setting.range.low, -infinite)), plain(std::nextafter(setting.range.high, infinite)),
          std::string("nan"), std::string(".nan"), std::string("inf")})
        if (reading.read(beyond))
            return fmt::format("declares {} from {} to {}, and {} can be set", setting.name, setting.range.low,
                               setting.range.high, beyond);
    return std::nullopt;
}

// The rows with one setting at one value.
std::vector<TrialRow> with_setting(const std::vector<TrialRow>& rows, std::size_t setting, double value) {
    std::vector<TrialRow> result = rows;
    for (TrialRow& row : result)
        for (double& item : row.settings[setting]) item = value;
    return result;
}

Violation wrong_at(const Model& model, const std::vector<TrialRow>& rows) {
    for (const Group& group : by_shape(rows)) {
        TrialBlock trial_block(model, group.front()->shape, usual_block, GuardPages::none);
        for (const Group& block : cut(group, usual_block)) {
            if (auto found = wrong_answer(model, trial_block, block)) return found;
            for (std::size_t r = 0; r < block.size(); ++r)
                if (auto found = wrong_number(model, *block[r], trial_block.written(r))) return found;
        }
    }
    return std::nullopt;
}

}  // namespace

Violation try_reading(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    for (std::size_t s = 0; s < model.settings.size(); ++s) {
        const Setting& setting = model.settings[s];
        SettingReading reading(model, s);
        auto found = setting.choices.empty() ? wrong_ends(reading, setting) : wrong_choices(reading, setting);
        if (found) return found;
    }
    return std::nullopt;
}

Violation try_ends(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    for (std::size_t s = 0; s < model.settings.size(); ++s) {
        const Setting& setting = model.settings[s];
        for (const double end : {setting.range.low, setting.range.high})
            if (auto found = wrong_at(model, with_setting(plugin.rows(), s, end)))
                return fmt::format("{}, {} at {}", *found, setting.name, end);
    }
    return std::nullopt;
}

}  // namespace flutebook::plugin_check
