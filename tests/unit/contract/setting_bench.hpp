// A declared model with one setting, in a plant whose plugins.yaml a test writes: what the setting is read as, and what
// an order takes of it.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/contract/settings.hpp"
#include "tests/unit/plant/plant_folder.hpp"

namespace flutebook::contract_test {

using Changes = std::vector<std::pair<std::string, std::string>>;

/// `rate`, in money, 0 to 1000, without a default.
[[nodiscard]] contract::Setting rate_by(contract::VariesBy varies_by);
/// Stepped over the model's need `delivery.pallets`, 0 to 500 h.
[[nodiscard]] contract::Setting over_pallets(contract::Setting setting);

/// The model `freight` with this setting and, by request, the choice `zone` (near, far).
class SettingBench {
public:
    /// `given` stands behind `- freight: ` in plugins.yaml: on line 2, from column 14 on.
    SettingBench(contract::Setting rate, const std::string& given);

    /// The zone that counts is another model's.
    void replace_zone(contract::SettingTaker taker) { zone_taker_ = taker; }

    /// Of plugins.yaml, which then cannot be read.
    [[nodiscard]] fixture::Lines complaints() const;
    /// The same where a table of the plant's codes could not be read.
    [[nodiscard]] fixture::Lines complaints_of_half_a_plant() const;
    [[nodiscard]] std::vector<std::string> unusual() const;
    /// Of R-1001 with other words in its file, which is then refused.
    [[nodiscard]] fixture::Lines order_complaints(const Changes& changes = {}) const;
    /// What R-1001 takes, the need being at `number`; `key` where a ply, a step or a choice decides.
    [[nodiscard]] double value(const Changes& changes = {}, double number = 0, const std::string& key = "") const;

private:
    [[nodiscard]] fixture::Lines without_folder(const std::vector<std::string>& lines) const;
    [[nodiscard]] contract::PlantSettings read(const plant::Plant& plant) const;

    fixture::PlantFolder folder_;
    contract::Model model_;
    contract::SettingTaker zone_taker_ = contract::SettingTaker::model;
};

}  // namespace flutebook::contract_test
