// flutes.yaml: the corrugations that the plant's rolls make, and what scoring and joining add to a box's dimensions.
#include <fmt/format.h>

#include <string>

#include "host/base/quoted_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

Flute read_flute(const Field& entry) {
    if (entry.key().find('+') != std::string::npos)
        entry.complain_of_key("not a flute's name: expected one flute, without `+`");
    MapReader form(entry);
    Flute flute;
    flute.code = entry.key();
    flute.take_up = form.field("take_up").number("1", range::take_up);
    flute.height_mm = form.field("height").number("mm", range::positive);
    auto adhesive = form.form("adhesive");
    flute.single_facer_gsm = adhesive.field("single_facer").number("g/m2", range::not_negative);
    flute.double_backer_gsm = adhesive.field("double_backer").number("g/m2", range::not_negative);
    adhesive.finish();
    flute.places = form.places();
    form.finish();
    return flute;
}

// "B" or "B+C", each a flute of the plant.
void check_flutes(const Field& entry, const Codes& flutes) {
    const auto& key = entry.key();
    const auto plus = key.find('+');
    if (plus != std::string::npos && key.find('+', plus + 1) != std::string::npos) {
        entry.complain_of_key("too many flutes: expected one, or two joined by `+`");
        return;
    }
    const auto named = entry.about_key();
    flutes.expect(named, key.substr(0, plus));
    if (plus != std::string::npos) flutes.expect(named, key.substr(plus + 1));
}

Allowance read_allowance(const Field& entry) {
    MapReader form(entry);
    const auto mm = [&](const char* key) { return form.field(key).number("mm", range::not_negative); };
    Allowance allowance;
    allowance.flutes = entry.key();
    allowance.panel_mm = mm("panel");
    allowance.depth_mm = mm("depth");
    allowance.flap_mm = mm("flap");
    allowance.joint_mm = mm("joint");
    allowance.tab_mm = mm("tab");
    allowance.slot_mm = mm("slot");
    allowance.places = form.places();
    form.finish();
    return allowance;
}

}  // namespace

std::vector<Flute> read_flutes(const Field& table) {
    std::vector<Flute> flutes;
    for (const auto& entry : table.entries_at_least_one()) flutes.push_back(read_flute(entry));
    return flutes;
}

std::vector<Allowance> read_allowances(const Field& table, const Codes& flutes) {
    std::vector<Allowance> allowances;
    for (const auto& entry : table.entries()) {
        check_flutes(entry, flutes);
        allowances.push_back(read_allowance(entry));
    }
    return allowances;
}

}  // namespace flutebook::plant
