#include "host/saved_quotes/saved_workplace.hpp"

#include <fmt/format.h>

#include <utility>

#include "host/base/errors.hpp"
#include "host/saved_quotes/saved_quote.hpp"
#include "host/scenario/plant_overrides.hpp"

namespace flutebook::saved_quotes {

namespace {

// Says of what is wrong whose it is, and lets it go on.
template <typename Work>
auto as_saved(const ledger::SavedQuote& quote, const Work& work) {
    try {
        return work();
    } catch (const InputError& error) {
        std::vector<std::string> lines;
        for (const std::string& line : error.lines())
            lines.push_back(fmt::format("quote {} as it was saved: {}", quote.number, line));
        throw InputError(error.whose(), std::move(lines));
    }
}

plant::FileTexts kept_files(const ledger::SavedQuote& quote) {
    plant::FileTexts result;
    for (const std::string& name : plant::plant_file_names()) result[name] = part_of(quote, "plant/" + name);
    // Quotes of earlier releases have neither: their styles are the program's.
    if (const auto* styles = find_part(quote, std::string("plant/") + plant::styles_file_name))
        result[plant::styles_file_name] = *styles;
    if (const auto* style = find_part(quote, style_part)) result[plant::kept_style_file] = *style;
    return result;
}

// Whatever the ledger says today, the share that was quoted.
plant::TrimSource kept_trim(const ledger::SavedQuote& quote) {
    return [quote](const std::string& board, base::Date day) {
        plant::TrimFinding result{std::nullopt, plant::twelve_months_before(board, day), "the quote"};
        if (const auto kept = saved_document(quote).answer.trim) result.policy = kept->policy;
        return result;
    };
}

// Where the quote's plant lacks a machine, today's is added.
void add_machine(scenario::PlantOverrides& overrides, const plant::Plant& then, const plant::Plant& today,
                 const std::string& code) {
    if (then.find_corrugator(code) != nullptr || then.find_converter(code) != nullptr) return;
    if (const auto* corrugator = today.find_corrugator(code))
        overrides.corrugators.push_back(*corrugator);
    else if (const auto* converter = today.find_converter(code))
        overrides.converters.push_back(*converter);
    else
        throw InputError(InputError::Whose::plant,
                         {fmt::format("{}/machines.yaml: {} is missing: it made a part of the order, and neither the "
                                      "quote's files nor today's have it; put it back",
                                      today.folder, code)});
}

}  // namespace

plant::Plant saved_plant(const ledger::SavedQuote& quote, const std::string& folder) {
    return as_saved(quote, [&] {
        plant::Plant kept =
            scenario::with(plant::read_plant(saved_options(quote).plant, kept_files(quote)), {.folder = folder});
        kept.trim_source = kept_trim(quote);
        return kept;
    });
}

workplace::Workplace open_saved(const ledger::SavedQuote& quote, const std::string& folder) {
    plant::Plant plant = saved_plant(quote, folder);
    return as_saved(quote, [&] { return workplace::open(std::move(plant)); });
}

orders::Request saved_request(const ledger::SavedQuote& quote, const plant::Plant& plant,
                              std::optional<base::Date> day) {
    const SavedOptions asked = saved_options(quote);
    return as_saved(quote, [&] {
        return orders::read_request(plant, asked.request, part_of(quote, "request.yaml"), day ? day : asked.date);
    });
}

QuotedPlant quoted_plant(const ledger::SavedQuote& quote, const plant::Plant& today,
                         const std::vector<std::string>& ran) {
    const plant::Plant then = saved_plant(quote, today.folder);
    scenario::PlantOverrides overrides{.pinned = today.pinned};
    for (const auto& code : ran) add_machine(overrides, then, today, code);
    plant::Plant plant = scenario::with(then, overrides);
    orders::Request request = saved_request(quote, plant);
    return {std::move(plant), std::move(request)};
}

}  // namespace flutebook::saved_quotes
