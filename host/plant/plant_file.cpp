// plant.yaml: what the plant is called, counts in, and how its mills pay.
#include <fmt/format.h>

#include <unordered_set>

#include "host/base/quoted_text.hpp"
#include "host/plant/currency.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

std::vector<std::string> read_shifts(const Field& list) {
    std::vector<std::string> shifts;
    std::unordered_set<std::string> named;
    for (const auto& item : list.items_at_least_one()) {
        auto name = item.text();
        if (!name.empty() && !named.insert(name).second)
            item.complain("named twice: found " + base::shown(name) + ", expected each shift once");
        shifts.push_back(std::move(name));
    }
    return shifts;
}

Mill read_mill(const Field& entry) {
    MapReader form(entry);
    Mill mill;
    mill.name = entry.key();
    mill.moisture_limit = form.field("moisture").number("1", range::moisture);
    mill.deduction = form.field("deduction").choice({"dry-matter", "point-for-point"}) == 1U
                         ? Mill::Deduction::point_for_point
                         : Mill::Deduction::dry_matter;
    mill.places = form.places();
    form.finish();
    return mill;
}

}  // namespace

Plant read_plant_file(MapReader file) {
    Plant plant{};
    plant.name = file.field("plant").text();
    const auto currency = file.field("currency");
    plant.currency = currency.text();
    const auto digits = minor_units(plant.currency);
    if (!plant.currency.empty() && !digits)
        currency.complain("unknown currency: found " + base::shown(plant.currency) +
                          ", expected a code of ISO 4217 such as `EUR`");
    plant.currency_minor_units = digits.value_or(0);
    plant.units =
        file.field("units").choice({to_text(Units::metric), to_text(Units::us)}) == 1U ? Units::us : Units::metric;
    plant.shifts = read_shifts(file.field("shifts"));
    plant.balance_tolerance = file.field("balance_tolerance").number("1", range::share);
    for (const auto& entry : file.field("mills").entries()) plant.mills.push_back(read_mill(entry));
    plant.places = file.places();
    file.finish();
    return plant;
}

}  // namespace flutebook::plant
