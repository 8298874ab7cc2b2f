#include "host/plant/machine_list.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace flutebook::plant {

namespace {

struct KindName {
    const char *spelling, *words;
};

// In the order of Converter::Kind.
constexpr std::array<KindName, 6> kind_names = {{{"printer", "printer"},
                                                 {"die-cutter", "die cutter"},
                                                 {"folder-gluer", "folder-gluer"},
                                                 {"slitter", "slitter"},
                                                 {"stitcher", "stitcher"},
                                                 {"hand", "hand station"}}};

}  // namespace

std::size_t machine_count(const Plant& plant) {
    return plant.corrugators.size() + plant.converters.size() + 1;
}

const std::string& machine_code(const Plant& plant, std::size_t machine) {
    static const std::string dispatch = "dispatch";
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].code;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].code : dispatch;
}

const base::Places& machine_places(const Plant& plant, std::size_t machine) {
    if (machine < plant.corrugators.size()) return plant.corrugators[machine].places;
    machine -= plant.corrugators.size();
    return machine < plant.converters.size() ? plant.converters[machine].places : plant.dispatch.places;
}

const char* spelled(Converter::Kind kind) {
    return kind_names.at(static_cast<std::size_t>(kind)).spelling;
}

const char* in_words(Converter::Kind kind) {
    return kind_names.at(static_cast<std::size_t>(kind)).words;
}

std::string in_words(const Stage& stage) {
    std::string words;
    for (const Converter::Kind kind : stage) words += (words.empty() ? "" : " or ") + std::string(in_words(kind));
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

bool parts_sheets(Converter::Kind kind) {
    return kind == Converter::Kind::die_cutter || kind == Converter::Kind::slitter;
}

std::optional<Converter::Kind> converter_kind(std::string_view spelling) {
    const auto found = std::find_if(kind_names.begin(), kind_names.end(),
                                    [&](const KindName& name) { return name.spelling == spelling; });
    if (found == kind_names.end()) return std::nullopt;
    return static_cast<Converter::Kind>(found - kind_names.begin());
}

}  // namespace flutebook::plant
