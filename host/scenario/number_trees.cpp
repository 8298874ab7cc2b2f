// Whoever adds an entry to a tree may move its neighbours: numbers that are written are changed first, what is not
// written yet is added last, each by a walk of its own.
#include "host/scenario/number_trees.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/scenario/number_leaves.hpp"

namespace flutebook::scenario {

namespace {

using base::Node;
using contract::Setting;
using contract::VariesBy;

constexpr const char* default_key = "default";

[[noreturn]] void refuse(const NumberChange& change, const std::string& why) {
    throw InputError(InputError::Whose::request, {fmt::format("{}: {}", change.label(), why)});
}

bool is_table(const Setting& setting) {
    return setting.varies_by != VariesBy::plant && setting.varies_by != VariesBy::request;
}

Node* value_in(Node& map, const std::string& key) {
    for (Node::Entry& entry : map.entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

// `- energy: {…}`
Node* listed_model(plant::FileTrees& files, const std::string& id) {
    Node* list = value_in(files.at("plugins.yaml"), "plugins");
    if (list == nullptr) return nullptr;
    for (Node& item : list->items)
        if (Node* settings = value_in(item, id)) return settings;
    return nullptr;
}

Node* extras_of(Node& request, const std::string& id) {
    Node* extras = value_in(request, "extras");
    return extras == nullptr ? nullptr : value_in(*extras, id);
}

// Keys that an entry may leave out, with numbers behind them; whether this one may have it, its file's reader says.
bool may_be_left_out(const std::string& key) {
    static const std::array<std::string_view, 5> keys = {"between", "caliper", "colours", "edge", "ups_max"};
    return std::find(keys.begin(), keys.end(), key) != keys.end();
}

bool ends_part(std::string_view rest) {
    return rest.empty() || rest.front() == '.' || rest.front() == '[';
}

std::string_view first_part(std::string_view rest) {
    return rest.substr(0, std::max<std::size_t>(rest.find_first_of(".[", 1), 1));
}

}  // namespace

// A place in the trees to which a path leads.
struct NumberTrees::Spot {
    enum class Kind { value, machines, plugins, extras, model, extras_of_model };
    Kind kind;
    std::string name, path;
    Node* node = nullptr;                    // null of what is not written
    const contract::Model* model = nullptr;  // whose setting it is
    const Setting* setting = nullptr;        // of a setting, and of what is below it
    std::string key = "";                    // of a table's entry that is not written
    Node* map = nullptr;                     // in which a key that an entry may leave out is not written
};

struct NumberTrees::Search {
    std::vector<Spot> found;
    std::string unknown;  // the first part that is not there, and what is
};

NumberTrees::NumberTrees(const plant::Plant& plant, const std::vector<contract::Model>& models, Node request)
    : files_(plant::trees_of(plant)), models_(models), request_(std::move(request)) {}

std::vector<NumberTrees::Spot> NumberTrees::roots() {
    using Kind = Spot::Kind;
    std::vector<Spot> result;
    for (auto& [file, tree] : files_)
        for (Node::Entry& entry : tree.entries)
            result.push_back(
                {entry.key == "plugins" ? Kind::plugins : Kind::value, entry.key, entry.key, &entry.value});
    result.push_back({Kind::machines, "machines", "machines"});
    result.push_back({Kind::value, "request", "request", &request_});
    for (const contract::Model& model : models_)
        result.push_back({Kind::model, model.id, "plugins." + model.id, nullptr, &model});
    return result;
}

// What a model declares, written or not. A choice is no number.
void NumberTrees::add_settings(const Spot& of_model, std::vector<Spot>& result) {
    Node* given = listed_model(files_, of_model.model->id);
    Node* extras = extras_of(request_, of_model.model->id);
    for (const Setting& setting : of_model.model->settings) {
        const bool is_requested = setting.varies_by == VariesBy::request;
        if (!setting.choices.empty() || (!is_requested && of_model.kind == Spot::Kind::extras_of_model)) continue;
        Node* from = is_requested ? extras : given;
        const std::string path =
            fmt::format("{}.{}.{}", is_requested ? "request.extras" : "plugins", of_model.model->id, setting.name);
        result.push_back({Spot::Kind::value, setting.name, path,
                          from == nullptr ? nullptr : value_in(*from, setting.name), of_model.model, &setting});
    }
}

std::vector<NumberTrees::Spot> NumberTrees::children(const Spot& spot) {
    using Kind = Spot::Kind;
    std::vector<Spot> result;
    const auto add_entries = [&](Node& map, const std::string& path) {
        for (Node::Entry& entry : map.entries)
            result.push_back({entry.key == "extras" && path == "request" ? Kind::extras : Kind::value, entry.key,
                              path + "." + entry.key, &entry.value, spot.model, spot.setting});
    };
    switch (spot.kind) {
        case Kind::machines:
            for (const char* key : {"corrugators", "converters"})
                if (Node* table = value_in(files_.at("machines.yaml"), key)) add_entries(*table, key);
            result.push_back({Kind::value, "dispatch", "dispatch", value_in(files_.at("machines.yaml"), "dispatch")});
            return result;
        case Kind::plugins:
        case Kind::extras:
            for (const contract::Model& model : models_)
                result.push_back({spot.kind == Kind::extras ? Kind::extras_of_model : Kind::model, model.id,
                                  spot.path + "." + model.id, nullptr, &model});
            return result;
        case Kind::model:
        case Kind::extras_of_model:
            add_settings(spot, result);
            return result;
        case Kind::value:
            break;
    }
    if (spot.node == nullptr) return result;
    add_entries(*spot.node, spot.path);
    for (std::size_t i = 0; i < spot.node->items.size(); ++i) {
        Node& item = spot.node->items[i];
        for (const std::string& name : names_of_item(item, i))
            result.push_back({Kind::value, name, spot.path + name, &item, spot.model, spot.setting});
    }
    if (spot.path == "request" && value_in(request_, "extras") == nullptr)
        result.push_back({Kind::extras, "extras", "request.extras"});
    return result;
}

void NumberTrees::find(const Spot& at, std::string_view rest, Search& search) {
    if (rest.empty()) return search.found.push_back(at);
    if (rest.front() == '.') rest.remove_prefix(1);
    find_child(at, children(at), rest, search);
}

void NumberTrees::find_child(const Spot& at, const std::vector<Spot>& known, std::string_view rest, Search& search) {
    if (rest.starts_with('*') && ends_part(rest.substr(1))) {
        for (const Spot& child : known) find(child, rest.substr(1), search);
        return;
    }
    const Spot* longest = nullptr;
    for (const Spot& child : known)
        if (rest.starts_with(child.name) && ends_part(rest.substr(child.name.size())) &&
            (longest == nullptr || child.name.size() > longest->name.size()))
            longest = &child;
    if (longest != nullptr) return find(*longest, rest.substr(longest->name.size()), search);
    const std::string part(first_part(rest));
    if (at.setting != nullptr && is_table(*at.setting) && part == rest &&
        (at.node == nullptr || at.node->kind == Node::Kind::map)) {
        search.found.push_back({Spot::Kind::value, part, at.path + "." + part, nullptr, at.model, at.setting, part});
        return;
    }
    if (at.setting == nullptr && part == rest && may_be_left_out(part) && at.node != nullptr &&
        at.node->kind == Node::Kind::map) {
        search.found.push_back({Spot::Kind::value, part, at.path + "." + part});
        search.found.back().map = at.node;
        return;
    }
    if (!search.unknown.empty()) return;
    std::vector<std::string> names;
    for (const Spot& child : known) names.push_back(child.name);
    const std::string where = at.path.empty() ? "the plant" : at.path;
    const bool is_value = at.node != nullptr && at.node->kind == Node::Kind::text;
    search.unknown = names.empty() ? fmt::format("found {} below {}, which is {}; leave it out", base::shown(part),
                                                 where, is_value ? "one value" : "empty")
                                   : fmt::format("found {} in {}{}", base::shown(part), where, base::one_of(names));
}

// The node of a setting, or of an entry of its table, which is made with what leads to it.
Node& NumberTrees::made(const Spot& spot) {
    constexpr auto map = Node::Kind::map;
    const base::Place place{};
    const std::string& name = spot.setting->name;
    if (spot.setting->varies_by == VariesBy::request)
        return base::entry_of(
            base::entry_of(base::entry_of(request_, "extras", map, place), spot.model->id, map, place), name,
            Node::Kind::text, place);
    Node& settings = *listed_model(files_, spot.model->id);
    if (!is_table(*spot.setting)) return base::entry_of(settings, name, Node::Kind::text, place);
    return base::entry_of(base::entry_of(settings, name, map, place), spot.key.empty() ? default_key : spot.key,
                          Node::Kind::text, place);
}

namespace {

// What counts for a setting, or for an entry of its table, that is not written: the table's own default, else the
// model's.
std::optional<std::string> unwritten_value(plant::FileTrees& files, const contract::Model& model,
                                           const Setting& setting) {
    if (is_table(setting))
        if (Node* given = listed_model(files, model.id))
            if (Node* table = value_in(*given, setting.name))
                if (Node* rest = value_in(*table, default_key); rest != nullptr && rest->kind == Node::Kind::text)
                    return rest->text;
    if (!setting.initial) return std::nullopt;
    return moved_text({*setting.initial, ""}, 0);
}

// Numbers that one value may replace: what they are is one thing, by day, by key or by step.
bool is_one_number(const Node& node, const Setting* setting) {
    if (node.kind == Node::Kind::text || setting != nullptr) return true;
    return node.kind == Node::Kind::list && !node.items.empty() &&
           std::all_of(node.items.begin(), node.items.end(),
                       [](const Node& item) { return item.find("from") != nullptr; });
}

// Of a table, or of each day's: what it does not name gets the value too.
void add_default(Node& node, const std::string& value, const base::Place& place) {
    for (Node& item : node.items)
        if (Node* dated = value_in(item, "value")) add_default(*dated, value, place);
    if (node.kind == Node::Kind::map && value_in(node, default_key) == nullptr)
        base::add_entry(node, default_key, base::text_node(value, place));
}

}  // namespace

// Numbers that are written.
void NumberTrees::move_written(const NumberChange& change, const Spot& spot, std::vector<MovedNumber>& moved) {
    const base::Place place{change.label(), 0, 0};
    std::vector<NumberLeaf> leaves = number_leaves(*spot.node, spot.path);
    if (leaves.empty())
        refuse(change,
               fmt::format("not a number: found {} at {}; name a number of the plant",
                           spot.node->kind == Node::Kind::text ? base::shown(spot.node->text) : "none", spot.path));
    if (!change.percent && !is_one_number(*spot.node, spot.setting))
        refuse(change, fmt::format("several numbers: found {} in {}; name one of them, or move them all by per cent",
                                   leaves.size(), spot.path));
    for (const NumberLeaf& leaf : leaves) {
        std::string now = change.value;
        if (change.percent) now = *change.percent == 0 ? leaf.node->text : moved_text(leaf.number, *change.percent);
        moved.push_back({leaf.path, leaf.node->text, now});
        leaf.node->text = std::move(now);
        leaf.node->quoted = leaf.node->quoted && change.percent;
        leaf.node->place = place;
    }
    if (!change.percent && spot.setting != nullptr && is_table(*spot.setting))
        add_default(*spot.node, change.value, place);
}

// A setting, an entry of its table, or a key that its entry may leave out: not written.
void NumberTrees::write_new(const NumberChange& change, const Spot& spot, std::vector<MovedNumber>& moved) {
    const auto was = spot.setting == nullptr ? std::nullopt : unwritten_value(files_, *spot.model, *spot.setting);
    const auto number = was ? written_number(*was) : std::nullopt;
    if (change.percent && !number)
        refuse(change, fmt::format("no value to move: {} is not given and has no default; write its value", spot.path));
    const std::string now = change.percent ? moved_text(*number, *change.percent) : change.value;
    moved.push_back({spot.path, was.value_or("-"), now});
    base::Node node = base::text_node(now, {change.label(), 0, 0});
    if (spot.map != nullptr)
        base::add_entry(*spot.map, spot.name, std::move(node));
    else
        made(spot) = std::move(node);
}

// What is written of all machines, of a model or of what a request gives models.
void NumberTrees::add_written(const Spot& spot, std::vector<Spot>& result) {
    if (spot.kind == Spot::Kind::value) {
        if (spot.node != nullptr) result.push_back(spot);
        return;
    }
    for (const Spot& child : children(spot)) add_written(child, result);
}

std::vector<MovedNumber> NumberTrees::change(const NumberChange& change) {
    Search search;
    find_child({Spot::Kind::value, "", ""}, roots(), change.path, search);
    if (search.found.empty()) refuse(change, "no such number: " + search.unknown);
    std::vector<Spot> written;
    for (const Spot& spot : search.found) {
        if (!change.percent && spot.kind != Spot::Kind::value)
            refuse(change, fmt::format("several numbers: found the whole of {}; name one of them", spot.path));
        add_written(spot, written);
    }
    // Among many, what is no number is passed over, and what another path led to before.
    std::set<const Node*> known;
    const auto has_new = [&](const Spot& spot) {
        bool result = false;
        for (const NumberLeaf& leaf : number_leaves(*spot.node, spot.path)) result |= known.insert(leaf.node).second;
        return result;
    };
    if (search.found.size() > 1) std::erase_if(written, [&](const Spot& spot) { return !has_new(spot); });
    std::vector<MovedNumber> result;
    for (const Spot& spot : written) move_written(change, spot, result);
    for (const Spot& spot : search.found)
        if (spot.node == nullptr && (spot.setting != nullptr || spot.map != nullptr)) write_new(change, spot, result);
    if (result.empty())
        refuse(change, fmt::format("not a number: found none at {}; name a number of the plant", change.path));
    return result;
}

std::map<std::string, std::string> NumberTrees::paths_by_place() const {
    std::map<std::string, std::string> result;
    for (const auto& [file, tree] : files_) add_paths(tree, "", result);
    add_paths(request_, "request", result);
    return result;
}

}  // namespace flutebook::scenario
