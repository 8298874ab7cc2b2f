// The small plant with sample models in it: what an author's plugin does in a whole quote.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/plant/plant.hpp"
#include "tests/support/row_source.hpp"
#include "tests/support/small_plant.hpp"

namespace flutebook::sdk_test {

/// The small plant, whose own plugins are the samples of this folder; none of them is listed yet.
[[nodiscard]] plant::Plant sample_plant();

[[nodiscard]] engine::Engine open(const plant::Plant& plant);

/// A setting with one value on a line of a file: its name in column 9, the value in column 20.
[[nodiscard]] plant::GivenSetting written(const std::string& name, const std::string& text, int line,
                                          const std::string& file = "plugins.yaml");

/// A setting in plugins.yaml that is a table, {DC1: 6, FG1: 4}: its name in column 7 of a line, below it a line an
/// entry; keys in column 9, values in column 20.
[[nodiscard]] plant::GivenSetting written_table(const std::string& name,
                                                const std::vector<std::pair<std::string, std::string>>& rows, int line);

/// The text of a setting that has one value.
[[nodiscard]] std::string& text_of(plant::GivenSetting& setting);

/// What every candidate of an order at every quantity comes to, in ten-thousandths.
[[nodiscard]] std::vector<std::int64_t> costs(const plant::Plant& plant, const orders::Request& request);

/// The complaints with which a plant does not open, a line each; nothing where it opens.
[[nodiscard]] std::string refusal(const plant::Plant& plant);

/// The same for a request that a plant takes or does not.
[[nodiscard]] std::string refusal(const plant::Plant& plant, const orders::Request& request);

}  // namespace flutebook::sdk_test
