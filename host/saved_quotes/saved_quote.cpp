#include "host/saved_quotes/saved_quote.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "host/orders/order_record_json.hpp"
#include "host/saved_quotes/quote_attributes.hpp"

namespace flutebook::saved_quotes {

namespace {

constexpr const char* asked_part = "asked.json";
constexpr const char* request_part = "request.yaml";
constexpr const char* answer_part = "answer.json";

std::string plugins_json(const engine::Graph& graph) {
    auto list = nlohmann::ordered_json::array();
    for (const contract::Model& model : graph.models)
        list.push_back({{"id", model.id}, {"version", model.version}, {"file", model.file}, {"sha256", model.sha256}});
    return list.dump(2) + "\n";
}

std::string asked_json(const workplace::Workplace& workplace, const QuoteToSave& quote) {
    nlohmann::ordered_json result;
    result["plant"] = workplace.plant.folder;
    result["request"] = quote.answer.request.place.file.text();
    result["date"] = base::to_string(quote.answer.request.date);
    if (quote.asked.explain)
        result["explain"] = *quote.asked.explain;
    else
        result["explain"] = nullptr;
    // A folder's name may be any bytes; what is no UTF-8 cannot be kept as it is.
    return result.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

// By quantity, then by piece, in the order of the set.
void add_terms(ledger::QuoteDraft& draft, const answers::RequestAnswer& answer) {
    const auto add = [&](const answers::RequestAnswer::Quantity& item) {
        if (item.quote) draft.parts.push_back({terms_part(item.quote->terms), orders::to_json(item.quote->terms)});
    };
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        add(answer.quantities[i]);
        for (const auto& piece : answer.pieces) add(piece.quantities[i]);
    }
}

SavedOptions read_asked(const nlohmann::ordered_json& tree) {
    SavedOptions result{tree.at("plant"), tree.at("request"),
                        base::parse_date(tree.at("date").get_ref<const std::string&>()), std::nullopt};
    if (!tree.at("explain").is_null()) result.explain = tree.at("explain").get<std::string>();
    return result;
}

// The plant's own file of styles, where it has one, and the whole of the style that the quote is for.
void add_styles(ledger::QuoteDraft& draft, const plant::Plant& plant, const std::string& code) {
    const auto file = plant.files.find(plant::styles_file_name);
    if (file != plant.files.end()) draft.parts.push_back({"plant/" + file->first, file->second});
    const box_styles::Style* style = plant.find_style(code);
    if (style != nullptr && !style->is_outline) draft.parts.push_back({style_part, style->text});
}

}  // namespace

bool can_be_saved(const answers::RequestAnswer& answer) {
    return !answer.model_fault && std::any_of(answer.quantities.begin(), answer.quantities.end(),
                                              [](const auto& item) { return item.is_makeable(); });
}

std::string terms_part(const orders::OrderRecord& terms) {
    if (terms.piece.empty()) return fmt::format("terms/{:.0f}.json", terms.quantity);
    return fmt::format("terms/{:.0f}/{}.json", terms.sets, terms.piece);
}

std::string save_quote(ledger::Store& store, const workplace::Workplace& workplace, const QuoteToSave& quote,
                       const std::string& who) {
    const answers::RequestAnswer& answer = quote.answer;
    ledger::QuoteDraft draft{answer.request.number,
                             {{asked_part, asked_json(workplace, quote)}, {request_part, answer.request.text}},
                             {request_part, answer_part}};
    for (const std::string& name : plant::plant_file_names())
        draft.parts.push_back({"plant/" + name, workplace.plant.files.at(name)});
    add_styles(draft, workplace.plant, answer.request.style);
    draft.parts.push_back({"plugins.json", plugins_json(workplace.engine.graph())});
    draft.parts.push_back({answer_part, answers::quote_text(workplace.plant, answer, {1, quote.asked.explain})});
    add_terms(draft, answer);
    draft.attributes = attributes_of(workplace.plant, answer);
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

answers::QuoteDocument saved_document(const ledger::SavedQuote& quote) {
    return answers::read_quote("quote " + quote.number, part_of(quote, answer_part));
}

SavedOptions saved_options(const ledger::SavedQuote& quote) {
    const auto part = std::find_if(quote.parts.begin(), quote.parts.end(),
                                   [](const ledger::QuotePart& quote_part) { return quote_part.name == asked_part; });
    if (part == quote.parts.end()) return {quote.number + "/plant", quote.number + "/request.yaml", {}, {}};
    try {
        return read_asked(nlohmann::ordered_json::parse(part->content));
    } catch (const nlohmann::ordered_json::exception&) {
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("quote {}: its part {} cannot be read; run `flutebook verify`", quote.number, asked_part));
    }
}

const std::string* find_part(const ledger::SavedQuote& quote, const std::string& name) {
    const auto found = std::find_if(quote.parts.begin(), quote.parts.end(),
                                    [&](const ledger::QuotePart& part) { return part.name == name; });
    return found == quote.parts.end() ? nullptr : &found->content;
}

const std::string& part_of(const ledger::SavedQuote& quote, const std::string& name) {
    if (const std::string* part = find_part(quote, name)) return *part;
    throw LedgerError(LedgerError::Kind::unfit,
                      fmt::format("quote {}: its part {} is missing; run `flutebook verify`", quote.number, name));
}

}  // namespace flutebook::saved_quotes
