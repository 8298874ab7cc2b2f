// papers.yaml: what the plant buys, by its own code, and what it pays from which day on.
#include <fmt/format.h>

#include <algorithm>

#include "host/base/quoted_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

// Rising, in whatever order they were written.
std::vector<double> read_roll_widths(const fields::Field& list) {
    std::vector<double> widths;
    for (const auto& item : list.items_at_least_one()) {
        const double width = item.number("mm", fields::range::positive);
        if (std::find(widths.begin(), widths.end(), width) != widths.end())
            item.complain("named twice: expected each roll width once");
        widths.push_back(width);
    }
    // A stand-in has no order, and this list then goes nowhere.
    if (std::all_of(widths.begin(), widths.end(), [](double width) { return width > 0; }))
        std::sort(widths.begin(), widths.end());
    return widths;
}

Paper read_paper(const fields::Field& entry) {
    fields::MapReader form(entry);
    Paper paper;
    paper.code = entry.key();
    paper.use = form.field("use").choice({"liner", "medium"}) == 1U ? Paper::Use::medium : Paper::Use::liner;
    paper.grammage_gsm = form.field("grammage").number("g/m2", fields::range::positive);
    paper.moisture = form.field("moisture").number("1", fields::range::moisture);
    paper.roll_widths_mm = read_roll_widths(form.field("roll_widths"));
    paper.prices = read_prices(form.field("price"), {"per_tonne", "money/t", fields::range::not_negative});
    paper.places = form.places();
    form.finish();
    return paper;
}

}  // namespace

std::vector<Paper::Price> read_prices(const fields::Field& list, const PriceKey& key) {
    std::vector<Paper::Price> prices;
    for (const auto& item : list.items_at_least_one()) {
        fields::MapReader form(item);
        const auto from = form.field("from");
        const auto price = form.field(key.name);
        const auto day = from.date();
        const double amount = price.number(key.unit, key.range);
        form.finish();
        if (!day) continue;
        if (!prices.empty() && *day <= prices.back().from)
            from.complain(fmt::format("out of order: found {} after {}, expected rising dates", base::to_string(*day),
                                      base::to_string(prices.back().from)));
        prices.push_back({*day, amount, price.place()});
    }
    return prices;
}

std::vector<Paper> read_papers(const fields::Field& table) {
    std::vector<Paper> papers;
    for (const auto& entry : table.entries_at_least_one()) papers.push_back(read_paper(entry));
    return papers;
}

}  // namespace flutebook::plant
