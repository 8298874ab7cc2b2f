// A number may be right for one plant, and wrong compared with its neighbours: a decimal point that slipped makes a
// paper or an hour of a machine ten times as dear as the others, whatever the currency.
#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "host/plant/unusual_numbers.hpp"

namespace flutebook::plant {

namespace {

// How far from the middle of the others is too far (common practice, no published source): grades of paper differ by a
// factor of two, machines of a kind by three or four, corrugators from converters by more.
constexpr double most_of_papers = 4, most_of_kind = 6, most_of_all = 20;

struct ComparedNumber {
    double number;
    base::Place place;
    std::string path, unit;
    bool is_corrugator = false;
};

struct Comparison {
    double median = 0;  // of the others
    double most = 0;    // times the median that is still usual
};

bool is_named(const std::vector<base::Warning>& named, const base::Place& place) {
    const std::string at = base::place_text(place);
    return std::any_of(named.begin(), named.end(), [&](const base::Warning& warning) { return warning.at == at; });
}

base::Warning too_high(const ComparedNumber& found, double middle, const std::string& currency) {
    return {base::place_text(found.place),
            fmt::format("{}: unusual: found {}, {:.1f} times the {:.6g} {}{} that is the middle of the others; is a "
                        "decimal point missing?",
                        found.path, found.number, found.number / middle, middle, currency, found.unit)};
}

base::Warning too_low(const ComparedNumber& found, double middle, const std::string& currency) {
    return {base::place_text(found.place),
            fmt::format("{}: unusual: found {}, a {:.0f}th of the {:.6g} {}{} that is the middle of the others; is "
                        "it meant?",
                        found.path, found.number, middle / found.number, middle, currency, found.unit)};
}

std::vector<ComparedNumber> paper_prices(const Plant& plant) {
    std::vector<ComparedNumber> result;
    for (const Paper& paper : plant.papers)
        for (const Paper::Price& price : paper.prices)
            result.push_back({price.per_tonne, price.place, "papers." + paper.code + ".price.per_tonne", "/t"});
    return result;
}

// All prices beside each other: between two of one paper lie months, not a factor.
void compare_prices(const Plant& plant, const std::vector<base::Warning>& named, std::vector<base::Warning>& result) {
    const std::vector<ComparedNumber> prices = paper_prices(plant);
    std::vector<double> numbers;
    for (const ComparedNumber& price : prices) numbers.push_back(price.number);
    const double middle = median(std::move(numbers));
    if (plant.papers.size() < 3 || middle <= 0) return;
    for (const ComparedNumber& price : prices) {
        if (is_named(named, price.place)) continue;
        if (price.number > most_of_papers * middle)
            result.push_back(too_high(price, middle, plant.currency));
        else if (price.number > 0 && price.number < middle / most_of_papers)
            result.push_back(too_low(price, middle, plant.currency));
    }
}

void add_rate(std::vector<ComparedNumber>& rates, const base::Places& places, const std::string& entry,
              const std::string& key, double number, bool is_corrugator) {
    const auto place = places.find(key);
    if (place != places.end()) rates.push_back({number, place->second, entry + "." + key, "/h", is_corrugator});
}

std::vector<ComparedNumber> hourly_rates(const Plant& plant, double Hourly::*rate, const std::string& key) {
    std::vector<ComparedNumber> result;
    for (const Corrugator& machine : plant.corrugators)
        add_rate(result, machine.places, "corrugators." + machine.code, key, machine.hourly.*rate, true);
    for (const Converter& machine : plant.converters)
        add_rate(result, machine.places, "converters." + machine.code, key, machine.hourly.*rate, false);
    return result;
}

// With the other corrugators, or the other converters; a machine that stands alone, with all.
Comparison comparison(const std::vector<ComparedNumber>& rates, std::size_t index) {
    std::vector<double> of_kind, of_all;
    for (std::size_t i = 0; i < rates.size(); ++i) {
        if (i == index || rates[i].number <= 0) continue;
        of_all.push_back(rates[i].number);
        if (rates[i].is_corrugator == rates[index].is_corrugator) of_kind.push_back(rates[i].number);
    }
    if (of_kind.empty()) return {median(std::move(of_all)), most_of_all};
    return {median(std::move(of_kind)), most_of_kind};
}

// Upwards alone: a packing table costs a fortieth of a die cutter.
void compare_rates(const std::vector<ComparedNumber>& rates, const std::string& currency,
                   const std::vector<base::Warning>& named, std::vector<base::Warning>& result) {
    for (std::size_t i = 0; i < rates.size(); ++i) {
        const Comparison others = comparison(rates, i);
        if (others.median > 0 && rates[i].number > others.most * others.median && !is_named(named, rates[i].place))
            result.push_back(too_high(rates[i], others.median, currency));
    }
}

}  // namespace

std::vector<base::Warning> numbers_unlike_others(const Plant& plant, const std::vector<base::Warning>& named) {
    std::vector<base::Warning> result;
    compare_prices(plant, named, result);
    compare_rates(hourly_rates(plant, &Hourly::labour, "hourly.labour"), plant.currency, named, result);
    compare_rates(hourly_rates(plant, &Hourly::fixed, "hourly.fixed"), plant.currency, named, result);
    return result;
}

}  // namespace flutebook::plant
