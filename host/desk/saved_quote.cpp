#include "host/desk/saved_quote.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "host/catalogue/date.hpp"
#include "host/errors.hpp"
#include "host/review/order_record_json.hpp"

namespace flutebook::desk {

namespace {

std::string bytes_of(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    std::ostringstream bytes;
    bytes << stream.rdbuf();
    if (!stream)
        throw InputError(InputError::Whose::plant,
                         {fmt::format("{}: cannot be read again to be kept with the quote; quote once more", file)});
    return bytes.str();
}

std::string plugins_json(const engine::Graph& graph) {
    auto list = nlohmann::ordered_json::array();
    for (const engine::Model& model : graph.models)
        list.push_back({{"id", model.id}, {"version", model.version}, {"file", model.file}, {"sha256", model.sha256}});
    return list.dump(2) + "\n";
}

}  // namespace

bool can_be_saved(const RequestAnswer& answer) {
    return !answer.model_fault && std::any_of(answer.quantities.begin(), answer.quantities.end(),
                                              [](const auto& own) { return own.quote.has_value(); });
}

std::string terms_part(double quantity) {
    return fmt::format("terms/{:.0f}.json", quantity);
}

std::string save_quote(ledger::Store& store, const Workplace& workplace, const QuoteToSave& quote,
                       const std::string& who) {
    const RequestAnswer& answer = quote.answer;
    ledger::QuoteDraft draft{answer.request.number, {{"request.yaml", bytes_of(answer.request.place.file)}}};
    draft.parts.push_back({"date.txt", catalogue::to_string(answer.request.date) + "\n"});
    for (const char* name : plant_files)
        draft.parts.push_back(
            {fmt::format("plant/{}", name), bytes_of((std::filesystem::path(workplace.plant.folder) / name).string())});
    draft.parts.push_back({"plugins.json", plugins_json(workplace.engine.graph())});
    draft.parts.push_back({"answer.txt", quote.text});
    draft.parts.push_back({"answer.json", quote.json});
    for (const auto& own : answer.quantities)
        if (own.quote) draft.parts.push_back({terms_part(own.quote->quantity), review::to_json(own.quote->terms)});
    return ledger::save_quotes(store, {&draft, 1}, who).front();
}

ledger::SavedQuote saved_quote(const ledger::Store& store, const std::string& number) {
    auto found = ledger::find_quote(store, number);
    if (!found)
        throw LedgerError(LedgerError::Kind::refused,
                          fmt::format("{}: no such quote: found '{}'; name one that `quote --save` gave, like Q000001",
                                      store.file(), number));
    return std::move(*found);
}

const std::string& part_of(const ledger::SavedQuote& quote, const std::string& name) {
    const auto found = std::find_if(quote.parts.begin(), quote.parts.end(),
                                    [&](const ledger::Part& part) { return part.name == name; });
    if (found == quote.parts.end())
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("quote {}: its part {} is missing; run `flutebook verify`", quote.number, name));
    return found->content;
}

}  // namespace flutebook::desk
