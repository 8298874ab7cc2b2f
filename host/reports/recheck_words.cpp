#include "host/reports/recheck_words.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdlib>

namespace flutebook::reports {

namespace {

struct Known {
    const char* key;
    FigureKind kind;
    const char *title, *unit;
};

constexpr auto way = FigureKind::way;
constexpr auto money = FigureKind::money;
constexpr auto mass = FigureKind::mass;
constexpr auto other = FigureKind::other;

constexpr std::array<Known, 32> known{{{"corrugator", way, "corrugator", ""},
                                       {"route", way, "route", ""},
                                       {"roll_width_mm", way, "roll width", "mm"},
                                       {"outs", way, "outs", "1"},
                                       {"trim_mm", way, "trim", "mm"},
                                       {"ups", way, "boxes a sheet", "1"},
                                       {"nx", way, "boxes along the chop", "1"},
                                       {"ny", way, "boxes across the web", "1"},
                                       {"chop_mm", way, "chop", "mm"},
                                       {"slit_mm", way, "slit", "mm"},
                                       {"blank.length_mm", way, "blank length", "mm"},
                                       {"blank.width_mm", way, "blank width", "mm"},
                                       {"blank.area_m2", way, "area of box", "m2"},
                                       {"board_grammage", way, "board", "g/m2"},
                                       {"web_length_m", way, "web length", "m"},
                                       {"web_area_m2", way, "web area", "m2"},
                                       {"fed", way, "fed, by step", ""},
                                       {"good", way, "good, by step", ""},
                                       {"cost", money, "cost, net of recovery", "money"},
                                       {"cost_per_thousand", money, "cost per thousand", "money"},
                                       {"price_per_thousand", money, "price per thousand", "money"},
                                       {"contribution_per_thousand", money, "contribution per thousand", "money"},
                                       {"waste_cost", money, "cost of waste", "money"},
                                       {"recovery", money, "recovery", "money"},
                                       {"cost_per_m2", money, "cost per m2 shipped", "money"},
                                       {"cost_per_tonne", money, "cost per tonne shipped", "money"},
                                       {"mass_kg.issued", mass, "paper issued", "kg"},
                                       {"mass_kg.adhesive", mass, "adhesive, dry", "kg"},
                                       {"mass_kg.product", mass, "boxes shipped", "kg"},
                                       {"candidates", other, "ways that were costed", "1"},
                                       {"plant", other, "plant", ""},
                                       {"currency", other, "currency", ""}}};

// What stands in lists, one entry for each step or way: "waste_by_step[2].cost".
constexpr std::array<Known, 9> known_in_lists{{{"waste_by_step.step", other, "step", "1"},
                                               {"waste_by_step.name", other, "machine", ""},
                                               {"waste_by_step.intake_kg", other, "intake", "kg"},
                                               {"waste_by_step.loss_kg", other, "lost", "kg"},
                                               {"waste_by_step.cost", other, "cost of waste", "money"},
                                               {"runners_up.candidate", other, "way", ""},
                                               {"runners_up.cost", other, "cost", "money"},
                                               {"runners_up.dearer_by", other, "dearer by", "money"},
                                               {"refused.limit", other, "limit", ""}}};

template <typename List>
const Known* find(const List& list, const std::string& key) {
    for (const Known& item : list)
        if (key == item.key) return &item;
    return nullptr;
}

// "waste_by_step[2].cost" is entry 2 of a list, from 1.
FigureName in_list(const std::string& key, std::size_t open) {
    const std::string list = key.substr(0, open);
    const long entry = std::strtol(key.c_str() + open + 1, nullptr, 10);
    const std::size_t close = key.find(']', open);
    const Known* name = close == std::string::npos ? nullptr : find(known_in_lists, list + key.substr(close + 1));
    if (name == nullptr) return {other, key, ""};
    const std::string whose = list == "waste_by_step" ? fmt::format("step {}", entry - 1)
                              : list == "runners_up"  ? fmt::format("next best {}", entry)
                                                      : fmt::format("way {}", entry);
    return {name->kind, fmt::format("{}, {}", whose, name->title), name->unit};
}

}  // namespace

FigureName figure_name(const std::string& key) {
    static const std::string loss = "mass_kg.loss.";
    if (key.rfind(loss, 0) == 0) return {mass, "lost as " + key.substr(loss.size()), "kg"};
    if (const std::size_t open = key.find('['); open != std::string::npos) return in_list(key, open);
    const Known* item = find(known, key);
    return item == nullptr ? FigureName{other, key, ""} : FigureName{item->kind, item->title, item->unit};
}

}  // namespace flutebook::reports
