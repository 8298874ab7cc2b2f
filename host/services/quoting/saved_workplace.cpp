#include "host/services/quoting/saved_workplace.hpp"

#include <fmt/format.h>

#include <utility>
#include <vector>

#include "host/base/errors.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::services {

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
    return result;
}

}  // namespace

plant::Plant saved_plant(const ledger::SavedQuote& quote, const std::string& folder) {
    return as_saved(quote, [&] {
        plant::Plant plant = plant::read_plant(saved_options(quote).plant, kept_files(quote));
        plant.folder = folder;
        return plant;
    });
}

Workplace open_saved(const ledger::SavedQuote& quote, const std::string& folder) {
    plant::Plant plant = saved_plant(quote, folder);
    return as_saved(quote, [&] { return open(std::move(plant)); });
}

orders::Request saved_request(const ledger::SavedQuote& quote, const plant::Plant& plant) {
    const SavedOptions asked = saved_options(quote);
    return as_saved(
        quote, [&] { return orders::read_request(plant, asked.request, part_of(quote, "request.yaml"), asked.date); });
}

}  // namespace flutebook::services
