#include "tests/unit/contract/setting_bench.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"

namespace flutebook::contract_test {
namespace {

using contract::Setting;
using contract::VariesBy;

using contract::SettingTaker;

Setting zone() {
    Setting result;
    result.name = "zone";
    result.unit = "1";
    result.initial = 0;
    result.range = {0, 1};
    result.choices = {"near", "far"};
    result.varies_by = VariesBy::request;
    return result;
}

}  // namespace

Setting rate_by(VariesBy varies_by) {
    Setting result;
    result.name = "rate";
    result.unit = "money";
    result.meaning = "money a pallet";
    result.range = {0, 1000};
    result.varies_by = varies_by;
    if (varies_by == VariesBy::choice) result.keyed_by = 1;
    return result;
}

Setting over_pallets(Setting setting) {
    setting.stepped_over = 0;
    return setting;
}

SettingBench::SettingBench(Setting rate, const std::string& given) {
    model_.id = "freight";
    model_.needs = {{"delivery.pallets", "h", "", {0, 500}, contract::Axis::order}};
    model_.settings = {std::move(rate), zone()};
    folder_.write("plugins.yaml", "plugins:\n  - freight: " + given + "\n");
    folder_.change("r.yaml", "extras: {scrap: {note: 2}}\n", "extras: {}\n");
}

fixture::Lines SettingBench::without_folder(const std::vector<std::string>& lines) const {
    fixture::Lines result;
    for (std::string line : lines) {
        for (auto at = line.find(folder_.path() + "/"); at != std::string::npos; at = line.find(folder_.path() + "/"))
            line.erase(at, folder_.path().size() + 1);
        result.push_back(std::move(line));
    }
    return result;
}

contract::PlantSettings SettingBench::read(const plant::Plant& plant) const {
    return contract::read_settings(plant, {model_}, {{SettingTaker::model, zone_taker_}});
}

fixture::Lines SettingBench::complaints() const {
    try {
        static_cast<void>(read(folder_.read()));
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::plant);
        return without_folder(error.lines());
    }
    return {};
}

fixture::Lines SettingBench::complaints_of_half_a_plant() const {
    return without_folder(contract::setting_faults(folder_.read(), {model_}, {{SettingTaker::model, zone_taker_}},
                                                   contract::PlantCodes::some_unknown)
                              .lines());
}

std::vector<std::string> SettingBench::unusual() const {
    std::vector<std::string> lines;
    for (const auto& value : read(folder_.read()).unusual)
        lines.push_back(base::place_text(value.place) + ": " + value.text);
    return without_folder(lines);
}

fixture::Lines SettingBench::order_complaints(const Changes& changes) const {
    try {
        static_cast<void>(value(changes));
    } catch (const InputError& error) {
        CHECK(error.whose() == InputError::Whose::request);
        return without_folder(error.lines());
    }
    return {};
}

double SettingBench::value(const Changes& changes, double number, const std::string& key) const {
    for (const auto& [was, is] : changes) folder_.change("r.yaml", was, is);
    const plant::Plant plant = folder_.read();
    const contract::PlantSettings settings = read(plant);
    const orders::Request request = folder_.read_request();
    const auto order =
        contract::settings_of_order(settings.values, {{SettingTaker::model, zone_taker_}}, {model_}, plant, request);
    if (model_.settings[0].varies_by == VariesBy::request) return order.requested.at(0).at(number).value;
    const contract::OrderSetting& chosen = order.chosen[0][0];
    return (chosen.value != nullptr ? *chosen.value : chosen.table->of(key)).at(number).value;
}

}  // namespace flutebook::contract_test
