// The keys of an answer, and their names on a page.
#include "host/reports/figure_names.hpp"
#include "host/reports/labels.hpp"

#include <fmt/format.h>

#include <array>
#include <cstdlib>

namespace flutebook::reports {

namespace {

struct Known {
    const char* key;
    FigureKind kind;
    const char* title;
};

constexpr std::array<Known, 33> known{{{"corrugator", FigureKind::way, "corrugator"},
                                       {"route", FigureKind::way, "route"},
                                       {"roll_width_mm", FigureKind::way, "roll width"},
                                       {"outs", FigureKind::way, "outs"},
                                       {"trim_mm", FigureKind::way, "trim"},
                                       {"ups", FigureKind::way, "boxes a sheet"},
                                       {"nx", FigureKind::way, "boxes along the chop"},
                                       {"ny", FigureKind::way, "boxes across the web"},
                                       {"chop_mm", FigureKind::way, "chop"},
                                       {"slit_mm", FigureKind::way, "slit"},
                                       {"blank.length_mm", FigureKind::way, "blank length"},
                                       {"blank.width_mm", FigureKind::way, "blank width"},
                                       {"blank.area_m2", FigureKind::way, "area of box"},
                                       {"board_grammage", FigureKind::way, "board"},
                                       {"web_length_m", FigureKind::way, "web length"},
                                       {"web_area_m2", FigureKind::way, "web area"},
                                       {"fed", FigureKind::way, "fed, by step"},
                                       {"good", FigureKind::way, "good, by step"},
                                       {"cost", FigureKind::money, net_cost_label},
                                       {"cost_per_thousand", FigureKind::money, cost_per_thousand_label},
                                       {"price_per_thousand", FigureKind::money, price_per_thousand_label},
                                       {"contribution_per_thousand", FigureKind::money, contribution_label},
                                       {"waste_cost", FigureKind::money, "cost of waste"},
                                       {"recovery", FigureKind::money, "recovery"},
                                       {"cost_per_m2", FigureKind::money, "cost per m2 shipped"},
                                       {"cost_per_tonne", FigureKind::money, "cost per tonne shipped"},
                                       {"mass_kg.issued", FigureKind::mass, paper_issued_label},
                                       {"mass_kg.adhesive", FigureKind::mass, dry_adhesive_label},
                                       {"mass_kg.product", FigureKind::mass, "boxes shipped"},
                                       {"candidates", FigureKind::other, "ways that were costed"},
                                       {"not_in_price", FigureKind::other, "not in this price"},
                                       {"plant", FigureKind::other, "plant"},
                                       {"currency", FigureKind::other, "currency"}}};

// Keys within lists, which have an entry for each step or way: "waste_by_step[2].cost".
constexpr std::array<Known, 9> known_in_lists{{{"waste_by_step.step", FigureKind::other, "step"},
                                               {"waste_by_step.name", FigureKind::other, "machine"},
                                               {"waste_by_step.intake_kg", FigureKind::other, "intake"},
                                               {"waste_by_step.loss_kg", FigureKind::other, "lost"},
                                               {"waste_by_step.cost", FigureKind::other, "cost of waste"},
                                               {"runners_up.candidate", FigureKind::other, "way"},
                                               {"runners_up.cost", FigureKind::other, "cost"},
                                               {"runners_up.dearer_by", FigureKind::other, dearer_by_label},
                                               {"refused.limit", FigureKind::other, "limit"}}};

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
    if (name == nullptr) return {FigureKind::other, key};
    const std::string whose = list == "waste_by_step" ? fmt::format("step {}", entry - 1)
                              : list == "runners_up"  ? fmt::format("next best {}", entry)
                                                      : fmt::format("way {}", entry);
    return {name->kind, fmt::format("{}, {}", whose, name->title)};
}

}  // namespace

FigureName figure_name(const std::string& key) {
    static const std::string loss = "mass_kg.loss.";
    if (key.rfind(loss, 0) == 0) return {FigureKind::mass, "lost as " + key.substr(loss.size())};
    if (const std::size_t open = key.find('['); open != std::string::npos) return in_list(key, open);
    const Known* item = find(known, key);
    return item == nullptr ? FigureName{FigureKind::other, key} : FigureName{item->kind, item->title};
}

}  // namespace flutebook::reports
