// flutes.yaml: the corrugations that the plant's rolls make, and what scoring and joining add to a box's dimensions.
//
// An allowance entry is for flutes ("B"), or for flutes and the styles whose code begins so ("B 04"). The second kind
// gives only what differs: each name that it leaves out counts as in the entry with the next shorter prefix, at last in
// that of the flutes alone.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

Flute read_flute(const fields::Field& entry) {
    if (entry.key().find_first_of("+ ") != std::string::npos)
        entry.complain_of_key("not a flute's name: expected one flute, without `+` or a space");
    fields::MapReader form(entry);
    Flute flute;
    flute.code = entry.key();
    flute.take_up = form.field("take_up").number("1", fields::range::take_up);
    flute.height_mm = form.field("height").number("mm", fields::range::positive);
    auto adhesive = form.form("adhesive");
    flute.single_facer_gsm = adhesive.field("single_facer").number("g/m2", fields::range::not_negative);
    flute.double_backer_gsm = adhesive.field("double_backer").number("g/m2", fields::range::not_negative);
    adhesive.finish();
    flute.places = form.places();
    form.finish();
    return flute;
}

// "B 04": the flutes "B" and the beginning of a style's code.
struct AllowanceKey {
    std::string flutes, style_prefix;
};

AllowanceKey read_key(const fields::Field& entry) {
    const auto& key = entry.key();
    const auto space = key.find(' ');
    if (space == std::string::npos) return {key, ""};
    const auto prefix = key.substr(space + 1);
    if (prefix.starts_with(' '))
        entry.complain_of_key("two spaces in a name: expected flutes, one space, the beginning of a style's code");
    return {key.substr(0, space), prefix};
}

// "B" or "B+C", each a flute of the plant.
void check_flutes(const fields::Field& entry, const std::string& key, const Codes& flutes) {
    const auto plus = key.find('+');
    if (plus != std::string::npos && key.find('+', plus + 1) != std::string::npos) {
        entry.complain_of_key("too many flutes: expected one, or two joined by `+`");
        return;
    }
    const auto named = entry.about_key();
    flutes.expect(named, key.substr(0, plus));
    if (plus != std::string::npos) flutes.expect(named, key.substr(plus + 1));
}

struct NamedAllowance {
    const char* name;
    double Allowance::*mm;
};

constexpr std::array<NamedAllowance, 6> six{{{"panel", &Allowance::panel_mm},
                                             {"depth", &Allowance::depth_mm},
                                             {"flap", &Allowance::flap_mm},
                                             {"joint", &Allowance::joint_mm},
                                             {"tab", &Allowance::tab_mm},
                                             {"slot", &Allowance::slot_mm}}};

// Names that mean something else in the sums of a style.
constexpr std::array<std::string_view, 12> taken{"L", "B", "H",   "t",   "in",    "w",
                                                 "d", "i", "min", "max", "floor", "ceil"};

bool is_word(std::string_view name) {
    const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    const auto is_inner = [&](char c) { return is_letter(c) || (c >= '0' && c <= '9') || c == '_'; };
    return !name.empty() && is_letter(name.front()) && std::all_of(name.begin(), name.end(), is_inner);
}

// A further name that is nearly one of the six, which the entry does not give, is a slip of the pen.
bool is_further_name(const fields::Field& field, const std::vector<std::string>& not_given) {
    const auto& name = field.key();
    if (!is_word(name))
        field.complain_of_key("not a name for an allowance: expected a letter, then letters, digits or `_`");
    else if (std::find(taken.begin(), taken.end(), name) != taken.end())
        field.complain_of_key("not free as an allowance's name: it means something else in the sums of a style");
    else if (const auto meant = base::nearest(name, not_given))
        field.complain_of_key("unknown allowance: did you mean " + base::shown(*meant));
    else
        return true;
    return false;
}

void set_further(Allowance& allowance, const std::string& name, double mm) {
    const auto found = std::find_if(allowance.further.begin(), allowance.further.end(),
                                    [&](const Allowance::Further& further) { return further.name == name; });
    if (found != allowance.further.end())
        found->mm = mm;
    else
        allowance.further.push_back({name, mm});
}

// What the entry gives, over `wider`, which counts for what it leaves out; without one it must give all six.
Allowance read_allowance(const fields::Field& entry, const AllowanceKey& key, const Allowance* wider) {
    fields::MapReader form(entry);
    Allowance allowance = wider != nullptr ? *wider : Allowance{};
    allowance.flutes = key.flutes;
    allowance.style_prefix = key.style_prefix;
    std::vector<std::string> not_given;
    for (const auto& [name, mm] : six) {
        const bool is_given = form.has(name);
        if (!is_given) not_given.emplace_back(name);
        if (is_given || wider == nullptr) allowance.*mm = form.field(name).number("mm", fields::range::not_negative);
    }
    for (const auto& field : entry.entries_if_any()) {
        const auto& name = field.key();
        if (std::any_of(six.begin(), six.end(), [&](const auto& known) { return known.name == name; })) continue;
        form.allow(name);
        if (is_further_name(field, not_given))
            set_further(allowance, name, field.number("mm", fields::range::not_negative));
    }
    for (const auto& [name, place] : form.places()) allowance.places.insert_or_assign(name, place);
    form.finish();
    return allowance;
}

// Of those read so far, the entry for the same flutes whose prefix is the longest that the entry's begins with.
const Allowance* find_wider(const std::vector<Allowance>& allowances, const AllowanceKey& key) {
    const Allowance* wider = nullptr;
    for (const auto& allowance : allowances) {
        if (allowance.flutes != key.flutes || !key.style_prefix.starts_with(allowance.style_prefix)) continue;
        if (wider == nullptr || allowance.style_prefix.size() > wider->style_prefix.size()) wider = &allowance;
    }
    return wider;
}

}  // namespace

std::vector<Flute> read_flutes(const fields::Field& table) {
    std::vector<Flute> flutes;
    for (const auto& entry : table.entries_at_least_one()) flutes.push_back(read_flute(entry));
    return flutes;
}

// Wider entries are read first, wherever they stand.
std::vector<Allowance> read_allowances(const fields::Field& table, const Codes& flutes) {
    struct Named {
        fields::Field entry;
        AllowanceKey key;
    };
    std::vector<Named> entries;
    for (const auto& entry : table.entries()) {
        entries.push_back({entry, read_key(entry)});
        check_flutes(entry, entries.back().key.flutes, flutes);
    }
    std::stable_sort(entries.begin(), entries.end(), [](const Named& a, const Named& b) {
        return a.key.style_prefix.size() < b.key.style_prefix.size();
    });
    std::vector<Allowance> allowances;
    for (const auto& [entry, key] : entries)
        allowances.push_back(read_allowance(entry, key, find_wider(allowances, key)));
    return allowances;
}

}  // namespace flutebook::plant
