// The names of the kinds of converters: as files and documents spell them, and as a sentence says them.
#pragma once

#include <optional>
#include <string_view>

#include "host/plant/plant.hpp"

namespace flutebook::plant {

/// "die-cutter": in plant files, order records and answers.
[[nodiscard]] const char* spelled(Converter::Kind kind);

/// "die cutter": in messages.
[[nodiscard]] const char* in_words(Converter::Kind kind);

/// Of a spelling; nothing where no kind is spelled so.
[[nodiscard]] std::optional<Converter::Kind> converter_kind(std::string_view spelling);

}  // namespace flutebook::plant
