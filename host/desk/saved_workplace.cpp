#include "host/desk/saved_workplace.hpp"

#include <fmt/format.h>

#include <utility>
#include <vector>

#include "host/desk/saved_quote.hpp"
#include "host/errors.hpp"

namespace flutebook::desk {

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

catalogue::FileTexts kept_files(const ledger::SavedQuote& quote) {
    catalogue::FileTexts made;
    for (const std::string& name : catalogue::plant_file_names()) made[name] = part_of(quote, "plant/" + name);
    return made;
}

}  // namespace

catalogue::Plant saved_plant(const ledger::SavedQuote& quote, const std::string& folder) {
    return as_saved(quote, [&] {
        catalogue::Plant plant = catalogue::read_plant(asked_then(quote).plant, kept_files(quote));
        plant.folder = folder;
        return plant;
    });
}

Workplace open_saved(const ledger::SavedQuote& quote, const std::string& folder) {
    catalogue::Plant plant = saved_plant(quote, folder);
    return as_saved(quote, [&] { return open(std::move(plant)); });
}

catalogue::Request saved_request(const ledger::SavedQuote& quote, const catalogue::Plant& plant) {
    const AskedThen asked = asked_then(quote);
    return as_saved(quote, [&] {
        return catalogue::read_request(plant, asked.request, part_of(quote, "request.yaml"), asked.date);
    });
}

}  // namespace flutebook::desk
