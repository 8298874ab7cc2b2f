// The kinds of converters, which a style says it is made by: as files and documents spell them and as a sentence says
// them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flutebook::box_styles {

enum class MachineKind { printer, die_cutter, folder_gluer, slitter, stitcher, hand };

/// Kinds of machine of which one makes the stage.
using Stage = std::vector<MachineKind>;

/// "die-cutter": in plant files, order records and answers.
[[nodiscard]] const char* spelled(MachineKind kind);

/// "die cutter": in messages.
[[nodiscard]] const char* in_words(MachineKind kind);

/// Every kind as it is spelled, in the order of MachineKind.
[[nodiscard]] const std::vector<std::string>& kind_spellings();

/// Whether blanks part from the sheet at such a machine: a sheet may hold several.
[[nodiscard]] bool parts_sheets(MachineKind kind);

/// "slitter or die cutter".
[[nodiscard]] std::string in_words(const Stage& stage);

/// "die cutter, then folder-gluer".
[[nodiscard]] std::string in_words(const std::vector<Stage>& stages);

/// Of a spelling; nothing where no kind is spelled so.
[[nodiscard]] std::optional<MachineKind> converter_kind(std::string_view spelling);

}  // namespace flutebook::box_styles
