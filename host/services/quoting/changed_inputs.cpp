#include "host/services/quoting/changed_inputs.hpp"

#include <fmt/format.h>

#include <filesystem>

#include "host/base/errors.hpp"
#include "host/plant/yaml/document.hpp"
#include "host/services/quoting/saved_quote.hpp"

namespace flutebook::services {

namespace {

using base::Diagnostics;

std::vector<answers::Leaf> leaves(const std::optional<plant::Node>& document, const Diagnostics& complaints) {
    complaints.throw_if_any(InputError::Whose::plant);
    return leaves_of(*document);
}

std::vector<answers::Difference> in_file(const ledger::SavedQuote& quote, const plant::Plant& today,
                                         const std::string& name) {
    Diagnostics complaints;
    const std::string file = (std::filesystem::path(today.folder) / name).lexically_normal().string();
    const auto now = leaves(plant::parse_document(today.files.at(name), file, complaints), complaints);
    const std::string part = "plant/" + name;
    const std::string saved = fmt::format("{}/{}", quote.number, part);
    const auto was = leaves(plant::parse_document(part_of(quote, part), saved, complaints), complaints);
    return differences(was, now);
}

}  // namespace

std::vector<answers::ChangedKey> changed_keys(const ledger::SavedQuote& quote, const plant::Plant& today) {
    std::vector<answers::ChangedKey> result;
    for (const std::string& name : plant::plant_file_names())
        for (answers::Difference& difference : in_file(quote, today, name))
            result.push_back({name, std::move(difference)});
    return result;
}

}  // namespace flutebook::services
