#include "host/box_styles/machine_kind.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace flutebook::box_styles {

namespace {

struct KindName {
    const char *spelling, *words;
};

// In the order of MachineKind.
constexpr std::array<KindName, 6> kind_names = {{{"printer", "printer"},
                                                 {"die-cutter", "die cutter"},
                                                 {"folder-gluer", "folder-gluer"},
                                                 {"slitter", "slitter"},
                                                 {"stitcher", "stitcher"},
                                                 {"hand", "hand station"}}};

}  // namespace

const char* spelled(MachineKind kind) {
    return kind_names.at(static_cast<std::size_t>(kind)).spelling;
}

const char* in_words(MachineKind kind) {
    return kind_names.at(static_cast<std::size_t>(kind)).words;
}

std::string in_words(const Stage& stage) {
    std::string words;
    for (const MachineKind kind : stage) words += (words.empty() ? "" : " or ") + std::string(in_words(kind));
    return words;
}

std::string in_words(const std::vector<Stage>& stages) {
    std::string words;
    for (const Stage& stage : stages) words += (words.empty() ? "" : ", then ") + in_words(stage);
    return words;
}

const std::vector<std::string>& kind_spellings() {
    static const std::vector<std::string> spellings = [] {
        std::vector<std::string> result;
        for (const KindName& name : kind_names) result.emplace_back(name.spelling);
        return result;
    }();
    return spellings;
}

bool parts_sheets(MachineKind kind) {
    return kind == MachineKind::die_cutter || kind == MachineKind::slitter;
}

std::optional<MachineKind> converter_kind(std::string_view spelling) {
    const auto found = std::find_if(kind_names.begin(), kind_names.end(),
                                    [&](const KindName& name) { return name.spelling == spelling; });
    if (found == kind_names.end()) return std::nullopt;
    return static_cast<MachineKind>(found - kind_names.begin());
}

}  // namespace flutebook::box_styles
