#include "host/saved_quotes/changes.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <filesystem>
#include <unordered_map>
#include <utility>

#include "host/answers/figures.hpp"
#include "host/answers/line_changes.hpp"
#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"
#include "host/saved_quotes/saved_quote.hpp"

namespace flutebook::saved_quotes {

namespace {

using answers::ChangedLine;
using Quantity = answers::RequestAnswer::Quantity;
using Piece = answers::RequestAnswer::Piece;
using base::Diagnostics;
using Json = nlohmann::ordered_json;
using base::Node;

std::vector<answers::Leaf> figures_in(const Quantity& answered) {
    if (answered.set) return answers::figures_of(*answered.set);
    return answered.quote ? answers::figures_of(*answered.quote) : answers::figures_of(*answered.unmakeable);
}

bool is_same(const ChangedLine::Figures& was, const ChangedLine::Figures& now) {
    return was.quantity == now.quantity && was.rate == now.rate && was.unit == now.unit && was.amount == now.amount;
}

std::vector<ChangedLine> changed_lines(const answers::Quote& was, const answers::Quote& now) {
    std::vector<ChangedLine> result = answers::lines_beside(was, now);
    std::erase_if(result,
                  [](const ChangedLine& line) { return line.was && line.now && is_same(*line.was, *line.now); });
    return result;
}

std::vector<std::string> limits_of(const answers::Unmakeable& unmakeable) {
    std::vector<std::string> result;
    for (const geometry::Refused& way : unmakeable.refused) result.push_back(way.candidate + ": " + way.limit);
    return result;
}

answers::ChangedQuantity changed_quantity(const Quantity& was, const Quantity* now) {
    answers::ChangedQuantity result{was.quantity(), total_of(was), std::nullopt, {}, {}, {}};
    if (now == nullptr) return result;
    result.now = total_of(*now);
    if (was.is_makeable() == now->is_makeable()) result.figures = differences(figures_in(was), figures_in(*now));
    if (was.quote && now->quote) result.lines = changed_lines(*was.quote, *now->quote);
    if (was.is_makeable() && now->unmakeable) result.limits = limits_of(*now->unmakeable);
    return result;
}

const Piece* find_piece(const std::vector<Piece>& pieces, const std::string& name) {
    const auto found =
        std::find_if(pieces.begin(), pieces.end(), [&](const Piece& piece) { return piece.name == name; });
    return found == pieces.end() ? nullptr : &*found;
}

std::vector<answers::Leaf> leaves(const std::optional<base::Node>& document, const Diagnostics& complaints) {
    complaints.throw_if_any(InputError::Whose::plant);
    return leaves_of(*document);
}

std::vector<answers::Difference> in_file(const ledger::SavedQuote& quote, const plant::Plant& today,
                                         const std::string& name) {
    Diagnostics complaints;
    const std::string file = (std::filesystem::path(today.folder) / name).lexically_normal().string();
    const auto now = leaves(base::parse_document(today.files.at(name), file, complaints), complaints);
    const std::string part = "plant/" + name;
    const std::string saved = fmt::format("{}/{}", quote.number, part);
    const auto was = leaves(base::parse_document(part_of(quote, part), saved, complaints), complaints);
    return differences(was, now);
}

// The style that the quote kept, as today's plant or program has it. Both texts were written by the program, so their
// lines are nowhere a person looks.
std::vector<answers::Difference> in_style(const ledger::SavedQuote& quote, const plant::Plant& today,
                                          const std::string& kept) {
    Diagnostics complaints;
    const auto was = base::parse_document(kept, quote.number + "/" + style_part, complaints);
    const base::Node* styles = was ? was->find("styles") : nullptr;
    const auto* style =
        styles == nullptr || styles->entries.empty() ? nullptr : today.find_style(styles->entries.front().key);
    const auto now = base::parse_document(style == nullptr ? "{}" : style->text, style_part, complaints);
    return differences(leaves(was, complaints), leaves(now, complaints));
}

struct SavedPlugin {
    std::string id;
    answers::ChangedPlugin::File file;
};

// In the order they were kept: that of evaluation.
std::vector<SavedPlugin> plugins_then(const ledger::SavedQuote& quote) {
    try {
        std::vector<SavedPlugin> result;
        for (const Json& json : Json::parse(part_of(quote, "plugins.json")))
            result.push_back({json.at("id"), {json.at("version"), json.at("sha256")}});
        return result;
    } catch (const Json::exception&) {
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("quote {}: its part plugins.json cannot be read; run `flutebook verify`", quote.number));
    }
}

template <typename List>
auto find_id(const List& list, const std::string& id) {
    return std::find_if(list.begin(), list.end(), [&](const auto& item) { return item.id == id; });
}

std::optional<double> number_in(const std::string& text) {
    double result = 0;
    const char* past = text.data() + text.size();
    const auto read = std::from_chars(text.data(), past, result);
    if (read.ec != std::errc{} || read.ptr != past) return std::nullopt;
    return result;
}

std::string under(const std::string& path, const std::string& key) {
    return path.empty() ? key : path + "." + key;
}

// As people write it in one line; nothing where it holds more than plain values.
std::optional<std::string> in_one_line(const Node& node) {
    if (node.kind == Node::Kind::text) return node.text;
    if (node.kind != Node::Kind::list) return std::string();
    std::vector<std::string> texts;
    for (const Node& item : node.items) {
        if (item.kind != Node::Kind::text) return std::nullopt;
        texts.push_back(item.text);
    }
    return fmt::format("[{}]", fmt::join(texts, ", "));
}

std::string name_of_item(const Node& item, std::size_t index) {
    const Node* from = item.find("from");
    if (from != nullptr && from->kind == Node::Kind::text) return from->text;
    return std::to_string(index + 1);
}

void add_leaves(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves);

void add_map(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves) {
    for (const Node::Entry& entry : node.entries) add_leaves(entry.value, under(path, entry.key), leaves);
    // That it is there says something too: a model without settings is loaded.
    if (node.entries.empty()) leaves.push_back({path, "{}", std::nullopt, node.place});
}

void add_list(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves) {
    for (std::size_t i = 0; i < node.items.size(); ++i) {
        const Node& child = node.items[i];
        if (child.kind == Node::Kind::map && child.entries.size() == 1)
            add_map(child, path, leaves);
        else
            add_leaves(child, fmt::format("{}[{}]", path, name_of_item(child, i)), leaves);
    }
}

void add_leaves(const Node& node, const std::string& path, std::vector<answers::Leaf>& leaves) {
    if (node.kind == Node::Kind::map) {
        add_map(node, path, leaves);
    } else if (const auto text = in_one_line(node)) {
        leaves.push_back({path, *text, number_in(*text), node.place});
    } else {
        add_list(node, path, leaves);
    }
}

std::unordered_map<std::string, const answers::Leaf*> by_path(const std::vector<answers::Leaf>& leaves) {
    std::unordered_map<std::string, const answers::Leaf*> result;
    for (const answers::Leaf& leaf : leaves) result.emplace(leaf.path, &leaf);
    return result;
}

}  // namespace

std::vector<answers::ChangedQuantity> changed_quantities(const answers::RequestAnswer& was,
                                                         const answers::RequestAnswer* now) {
    std::vector<answers::ChangedQuantity> result;
    for (std::size_t i = 0; i < was.quantities.size(); ++i) {
        result.push_back(changed_quantity(was.quantities[i], now == nullptr ? nullptr : &now->quantities.at(i)));
        for (const auto& piece : was.pieces) {
            const Piece* today = now == nullptr ? nullptr : find_piece(now->pieces, piece.name);
            result.push_back(changed_quantity(piece.quantities.at(i), today ? &today->quantities.at(i) : nullptr));
            result.back().piece = piece.name;
        }
    }
    return result;
}

std::vector<std::optional<answers::Total>> totals_of(const answers::RequestAnswer& answer) {
    std::vector<std::optional<answers::Total>> result;
    for (std::size_t i = 0; i < answer.quantities.size(); ++i) {
        result.push_back(total_of(answer.quantities[i]));
        for (const Piece& piece : answer.pieces) result.push_back(total_of(piece.quantities.at(i)));
    }
    return result;
}

std::vector<answers::ChangedKey> changed_keys(const ledger::SavedQuote& quote, const plant::Plant& today) {
    std::vector<answers::ChangedKey> result;
    for (const std::string& name : plant::plant_file_names())
        for (answers::Difference& difference : in_file(quote, today, name))
            result.push_back({name, std::move(difference)});
    if (const std::string* style = find_part(quote, style_part))
        for (answers::Difference& difference : in_style(quote, today, *style))
            result.push_back({style_part, std::move(difference)});
    return result;
}

std::vector<answers::ChangedPlugin> changed_plugins(const ledger::SavedQuote& quote, const engine::Graph& today) {
    const std::vector<SavedPlugin> then = plugins_then(quote);
    std::vector<answers::ChangedPlugin> result;
    for (const contract::Model& model : today.models) {
        const answers::ChangedPlugin::File now{model.version, model.sha256};
        const auto was = find_id(then, model.id);
        if (was == then.end())
            result.push_back({model.id, std::nullopt, now});
        else if (was->file != now)
            result.push_back({model.id, was->file, now});
    }
    for (const SavedPlugin& saved_plugin : then)
        if (find_id(today.models, saved_plugin.id) == today.models.end())
            result.push_back({saved_plugin.id, saved_plugin.file, std::nullopt});
    return result;
}

std::vector<answers::Leaf> leaves_of(const Node& root) {
    std::vector<answers::Leaf> result;
    add_leaves(root, "", result);
    return result;
}

std::vector<answers::Difference> differences(const std::vector<answers::Leaf>& was,
                                             const std::vector<answers::Leaf>& now) {
    const auto then = by_path(was);
    const auto today = by_path(now);
    std::vector<answers::Difference> result;
    for (const answers::Leaf& leaf : now) {
        const auto before = then.find(leaf.path);
        if (before == then.end())
            result.push_back({leaf.path, std::nullopt, leaf});
        else if (before->second->text != leaf.text)
            result.push_back({leaf.path, *before->second, leaf});
    }
    for (const answers::Leaf& leaf : was)
        if (today.count(leaf.path) == 0) result.push_back({leaf.path, leaf, std::nullopt});
    return result;
}

}  // namespace flutebook::saved_quotes
