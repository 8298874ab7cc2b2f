// Fields of a map: one message for each error, worded in one place.
#include "host/fields/map_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <utility>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/quantity.hpp"

namespace flutebook::fields {

namespace {

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

const char* name_of(base::Node::Kind kind) {
    switch (kind) {
        case base::Node::Kind::text:
            return "a text";
        case base::Node::Kind::list:
            return "a list";
        case base::Node::Kind::map:
            return "a map";
        case base::Node::Kind::empty:
            return "nothing";
        case base::Node::Kind::refused:
            break;
    }
    return "something refused";
}

std::string expected_number(const std::string& unit, const QuantityRange& range) {
    return unit == "1" ? range.expected : fmt::format("{} in {}", range.expected, base::shown(unit));
}

}  // namespace

const base::Place Field::nowhere;

Field::Field(const base::Node& root, const std::string& file, Reading& reading)
    : Field(root, base::Place{file, 1, 1}, reading) {}

Field::Field(const base::Node& root, const base::Place& place, Reading& reading)
    : node_(&root), place_of_whole_(std::make_shared<const base::Place>(place)), reading_(&reading) {
    place_ = key_place_ = place_of_whole_.get();
}

Field Field::child(const base::Node* node, const base::Place& key_place, const std::string& key) const {
    Field result;
    result.node_ = node;
    result.place_ = node == nullptr ? &key_place : &node->place;
    result.key_place_ = &key_place;
    result.place_of_whole_ = place_of_whole_;
    result.path_ = path_;
    if (!key.starts_with('[') && !path_.empty()) result.path_ += '.';
    result.path_ += base::shortened(key);
    result.key_ = key;
    result.reading_ = reading_;
    return result;
}

void Field::complain(const std::string& text) const {
    complain_at(*place_, text);
}

void Field::complain_at(const base::Place& place, const std::string& text) const {
    if (reading_ != nullptr) reading_->complaints.add(place, path_, text);
}

Field Field::about_key() const {
    Field result = *this;
    result.place_ = key_place_;
    return result;
}

Field Field::with_value(const base::Node::Entry& entry) const {
    return child(&entry.value, entry.key_place, entry.key);
}

void Field::complain_unknown(const std::string& what, const std::string& name,
                             const std::vector<std::string>& known) const {
    if (reading_ == nullptr || name.empty()) return;
    const auto hint = reading_->complaints.too_many() ? "" : base::did_you_mean(name, known);
    complain(fmt::format("unknown {}: found {}{}", what, base::shown(name), hint));
}

void Field::complain_unknown_code(const std::string& what, const std::string& code,
                                  const std::vector<std::string>& known) const {
    if (reading_ == nullptr || code.empty()) return;
    const auto list = reading_->complaints.too_many() ? "" : base::one_of(known);
    complain(fmt::format("unknown {}: found {}{}", what, base::shown(code), list));
}

bool Field::is(base::Node::Kind kind, const std::string& expected) const {
    if (reading_ == nullptr) return false;
    if (node_ == nullptr) {
        complain("missing: expected " + expected);
        return false;
    }
    if (node_->kind == kind) return true;
    if (node_->kind != base::Node::Kind::refused)
        complain(fmt::format("wrong type: found {}, expected {}", name_of(node_->kind), expected));
    return false;
}

std::optional<GivenText> Field::given_text(const std::string& expected) const {
    if (!is(base::Node::Kind::text, expected)) return std::nullopt;
    return GivenText{node_->text, node_->quoted, node_->place};
}

std::string Field::text() const {
    if (!is(base::Node::Kind::text, "a text")) return "";
    if (node_->text.find_first_not_of(' ') == std::string::npos) complain("an empty text: expected a name");
    return node_->text;
}

double Field::number(const std::string& unit, const QuantityRange& range) const {
    const bool is_text = node_ != nullptr && node_->kind == base::Node::Kind::text;
    const auto given = given_text(is_text ? "" : expected_number(unit, range));
    if (!given) return no_number;
    const auto read = read_quantity(*given, unit, reading_->words);
    if (const auto* problem = std::get_if<Problem>(&read)) {
        complain(problem->text);
        return no_number;
    }
    const double value = std::get<double>(read);
    if (range.holds(value)) return value;
    complain(
        fmt::format("out of range: found {}, expected {}", base::shortened(given->text), expected_number(unit, range)));
    return no_number;
}

Span Field::span(const std::string& unit, const QuantityRange& range) const {
    const auto expected = "two numbers, [low, high], each " + expected_number(unit, range);
    if (!is(base::Node::Kind::list, expected)) return {no_number, no_number};
    const auto ends = items();
    if (ends.size() != 2) {
        complain(fmt::format("wrong type: found a list of {}, expected {}", ends.size(), expected));
        return {no_number, no_number};
    }
    const Span result{ends[0].number(unit, range), ends[1].number(unit, range)};
    if (result.low > result.high)
        complain(fmt::format("low above high: found {} and {}, expected [low, high]",
                             base::shortened(ends[0].node()->text), base::shortened(ends[1].node()->text)));
    return result;
}

std::optional<base::Date> Field::date() const {
    const std::string expected = "a day of the calendar as YYYY-MM-DD";
    if (!is(base::Node::Kind::text, expected)) return std::nullopt;
    auto day = base::parse_date(node_->text);
    if (!day) complain(fmt::format("not a date: found {}, expected {}", base::shown(node_->text), expected));
    return day;
}

std::optional<std::size_t> Field::choice(const std::vector<std::string>& names) const {
    std::string list;
    for (const auto& name : names) list += (list.empty() ? "" : ", ") + base::shown(name);
    if (!is(base::Node::Kind::text, "one of " + list)) return std::nullopt;
    const auto found = std::find(names.begin(), names.end(), node_->text);
    if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
    complain(fmt::format("not a choice: found {}, expected one of {}", base::shown(node_->text), list));
    return std::nullopt;
}

std::vector<Field> Field::items() const {
    std::vector<Field> result;
    if (!is(base::Node::Kind::list, "a list")) return result;
    for (const auto& item : node_->items)
        result.push_back(child(&item, item.place, fmt::format("[{}]", result.size() + 1)));
    return result;
}

std::vector<Field> Field::entries() const {
    if (!is(base::Node::Kind::map, "a map")) return {};
    auto result = entries_if_any();
    for (const auto& entry : result)
        if (entry.key_.front() == ' ' || entry.key_.back() == ' ')
            entry.complain_of_key("a space at the end of a name: expected none");
    return result;
}

std::vector<Field> Field::entries_if_any() const {
    std::vector<Field> result;
    if (!is_map()) return result;
    for (const auto& entry : node_->entries) result.push_back(child(&entry.value, entry.key_place, entry.key));
    return result;
}

std::vector<Field> Field::items_at_least_one() const {
    auto result = items();
    if (is_list() && result.empty()) complain("an empty list: expected at least one entry");
    return result;
}

std::vector<Field> Field::entries_at_least_one() const {
    auto result = entries();
    if (is_map() && result.empty()) complain("an empty map: expected at least one entry");
    return result;
}

MapReader::MapReader(const Field& map) {
    if (!map.is(base::Node::Kind::map, "a map")) return;
    map_ = map;
    constexpr std::size_t usual_keys = 24;
    asked_.reserve(usual_keys);
}

void MapReader::allow(const std::string& key) {
    // Most often it is the last one: a reader asks whether a field is there, and then for it.
    if (std::find(asked_.rbegin(), asked_.rend(), key) == asked_.rend()) asked_.push_back(key);
}

bool MapReader::has(const std::string& key) {
    allow(key);
    return map_.node_ != nullptr && map_.node_->find(key) != nullptr;
}

Field MapReader::field(const std::string& key) {
    allow(key);
    if (map_.node_ == nullptr) return {};
    for (const auto& entry : map_.node_->entries)
        if (entry.key == key) return map_.child(&entry.value, entry.key_place, key);
    return map_.child(nullptr, *map_.key_place_, key);
}

base::Places MapReader::places() const {
    return map_.node_ == nullptr ? base::Places{} : base::places_of(*map_.node_);
}

void MapReader::finish() const {
    if (map_.node_ == nullptr) return;
    for (const auto& entry : map_.node_->entries) {
        if (std::find(asked_.begin(), asked_.end(), entry.key) != asked_.end()) continue;
        const auto unknown = map_.child(&entry.value, entry.key_place, entry.key);
        const auto hint = map_.reading_->complaints.too_many() ? "" : base::did_you_mean(entry.key, asked_);
        unknown.complain_of_key("unknown key" + hint);
    }
}

}  // namespace flutebook::fields
