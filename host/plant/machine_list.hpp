// The machines of a plant as one list (corrugators first, then converters, then dispatch), and the names of the kinds
// of converters, as files and documents spell them and as a sentence says them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "host/plant/plant.hpp"

namespace flutebook::plant {

[[nodiscard]] std::size_t machine_count(const Plant& plant);
/// The machine's code, or "dispatch".
[[nodiscard]] const std::string& machine_code(const Plant& plant, std::size_t machine);
[[nodiscard]] const base::Places& machine_places(const Plant& plant, std::size_t machine);

/// "die-cutter": in plant files, order records and answers.
[[nodiscard]] const char* spelled(Converter::Kind kind);

/// "die cutter": in messages.
[[nodiscard]] const char* in_words(Converter::Kind kind);

/// Every kind as it is spelled, in the order of Converter::Kind.
[[nodiscard]] const std::vector<std::string>& kind_spellings();

/// Whether blanks part from the sheet at such a machine: a sheet may hold several.
[[nodiscard]] bool parts_sheets(Converter::Kind kind);

/// "slitter or die cutter".
[[nodiscard]] std::string in_words(const Stage& stage);

/// "die cutter, then folder-gluer".
[[nodiscard]] std::string in_words(const std::vector<Stage>& stages);

/// Of a spelling; nothing where no kind is spelled so.
[[nodiscard]] std::optional<Converter::Kind> converter_kind(std::string_view spelling);

}  // namespace flutebook::plant
