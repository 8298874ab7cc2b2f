#include "host/plant/converter_kind.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace flutebook::plant {

namespace {

struct KindName {
    const char *spelling, *words;
};

// In the order of Converter::Kind.
constexpr std::array<KindName, 3> kind_names = {
    {{"printer", "printer"}, {"die-cutter", "die cutter"}, {"folder-gluer", "folder-gluer"}}};

}  // namespace

const char* spelled(Converter::Kind kind) {
    return kind_names.at(static_cast<std::size_t>(kind)).spelling;
}

const char* in_words(Converter::Kind kind) {
    return kind_names.at(static_cast<std::size_t>(kind)).words;
}

std::optional<Converter::Kind> converter_kind(std::string_view spelling) {
    const auto found = std::find_if(kind_names.begin(), kind_names.end(),
                                    [&](const KindName& name) { return name.spelling == spelling; });
    if (found == kind_names.end()) return std::nullopt;
    return static_cast<Converter::Kind>(found - kind_names.begin());
}

}  // namespace flutebook::plant
