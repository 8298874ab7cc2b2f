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
#include "host/plant/machine_list.hpp"
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
    SettingReading(const Model& model, const Setting& setting) : model_(model), generated_(make_order(1)) {
        model_.settings = {setting};
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
    const Setting& setting() const { return model_.settings.front(); }
    bool by_request() const { return setting().varies_by == VariesBy::request; }

    // The model's settings in a file, where this one alone is given.
    plant::ModelSettings given(std::variant<plant::GivenText, plant::GivenTable> value) const {
        plant::ModelSettings result;
        result.id = model_.id;
        plant::GivenSetting& only = result.settings.emplace_back();
        only.name = setting().name;
        only.value = std::move(value);
        return result;
    }

    double read_in_request(const std::string& text) {
        generated_.request.extras.clear();
        generated_.request.extras.push_back(given(plant::GivenText{text, false, {}}));
        return contract::read_request_settings(generated_.request, generated_.plant.currency, {model_}).front();
    }

    double read_in_plant(const std::string& text) {
        plant::GivenTable table;
        for (const std::string& key : codes()) {
            plant::GivenCell& cell = table.emplace_back();
            cell.key = key;
            cell.value.text = text;
        }
        generated_.plant.models.clear();
        generated_.plant.models.push_back(table.empty() ? given(plant::GivenText{text, false, {}})
                                                        : given(std::move(table)));
        return contract::read_settings(generated_.plant, {model_}, {{0}}).front().front().values.front();
    }

    std::vector<std::string> codes() const {
        std::vector<std::string> result;
        if (setting().varies_by == VariesBy::paper)
            for (const auto& paper : generated_.plant.papers) result.push_back(paper.code);
        if (setting().varies_by == VariesBy::flute)
            for (const auto& flute : generated_.plant.flutes) result.push_back(flute.code);
        if (setting().varies_by == VariesBy::machine)
            for (std::size_t i = 0; i < plant::machine_count(generated_.plant); ++i)
                result.push_back(plant::machine_code(generated_.plant, i));
        return result;
    }

    Model model_;
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
    for (const Setting& setting : model.settings) {
        SettingReading reading(model, setting);
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
