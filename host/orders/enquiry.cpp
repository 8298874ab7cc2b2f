#include "host/orders/enquiry.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "host/base/characters.hpp"
#include "host/base/diagnostics.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/written_number.hpp"
#include "host/orders/enquiry_words.hpp"
#include "host/orders/request_text.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::orders {

namespace {

using base::Node;

template <typename T>
std::string codes_text(const std::vector<T>& things) {
    std::string result;
    for (const auto& thing : things) result += (result.empty() ? "" : ", ") + thing.code;
    return result;
}

bool is_a_key(const std::string& name) {
    static const std::vector<std::string> keys = {"request", "customer", "margin", "colours", "flutes", "date"};
    return std::find(keys.begin(), keys.end(), name) != keys.end();
}

class EnquiryReader {
public:
    EnquiryReader(const plant::Plant& plant, const std::string& line) : plant_(plant) {
        root_.kind = Node::Kind::map;
        root_.place = {enquiry_name, 1, 1};
        words_ = enquiry_words(line);
    }

    Node read(base::Date today) {
        if (words_.empty())
            complain(root_.place,
                     "an empty enquiry: found an empty line; write a style, sizes, a board, quantities "
                     "and a margin, as in `0201 400x300x250 B-140 500 18%`");
        for (std::size_t at = 0; at < words_.size(); ++at) {
            if (const std::size_t groups = groups_behind(at); groups > 0) {
                complain_of_groups(at, groups);
                at += groups;
            } else {
                read_word(words_[at]);
            }
        }
        complaints_.throw_if_any(InputError::Whose::request);
        if (root_.find("date") == nullptr) add("date", base::to_string(today), root_.place);
        if (root_.find("request") == nullptr) add("request", number(), root_.place, true);
        return std::move(root_);
    }

private:
    // How many words behind this one go on with its number: `000` behind `1`. No other number begins with a nought.
    [[nodiscard]] std::size_t groups_behind(std::size_t at) const {
        if (!is_whole_number(words_[at].text) || words_[at].text.size() > 3) return 0;
        std::size_t groups = 0;
        bool has_nought = false;
        for (std::size_t next = at + 1; next < words_.size() && is_group(words_[next].text); ++next) {
            ++groups;
            has_nought = has_nought || words_[next].text.front() == '0';
        }
        return has_nought ? groups : 0;
    }

    static bool is_group(const std::string& text) {
        return text.size() == 3 && text.find_first_not_of("0123456789") == std::string::npos;
    }

    void complain_of_groups(std::size_t at, std::size_t groups) {
        std::string spaced = words_[at].text;
        std::string joined = words_[at].text;
        for (std::size_t next = at + 1; next <= at + groups; ++next) {
            spaced += " " + words_[next].text;
            joined += words_[next].text;
        }
        complain(place_of(words_[at]), "a space within a number: found " + base::shown(spaced) + "; write " + joined);
    }

    static base::Place place_of(const EnquiryWord& word) { return {enquiry_name, 1, word.column}; }

    void read_word(const EnquiryWord& word) {
        const base::Place place = place_of(word);
        if (plant_.find_style(word.text) != nullptr) return add_once("style", word, place, true);
        if (plant_.find_board(word.text) != nullptr) return add_once("board", word, place, true);
        if (const auto lengths = lengths_of(word.text)) return read_size(*lengths, word, place);
        if (is_whole_number(word.text)) return add_item("quantities", word, place, false);
        if (share_of(word.text)) return add_once("margin", {margin_text(word.text), word.column}, place, false);
        if (base::parse_date(word.text)) return add_once("date", word, place, false);
        if (is_machine(word.text)) return add_item("route", word, place, true);
        if (is_colours(word.text))
            return add_once("colours", {word.text.substr(0, word.text.size() - 1), word.column}, place, false);
        if (const auto equals = word.text.find('='); equals != std::string::npos && equals > 0)
            return read_named(word.text.substr(0, equals), word.text.substr(equals + 1), place);
        if (word.text.find_first_of(",'_") != std::string::npos)
            if (const std::string meant = fields::number_meant(word.text); !meant.empty())
                return complain(place, "not understood: found " + base::shown(word.text) + meant);
        complain(place, "not understood: found " + base::shown(word.text) +
                            fmt::format(
                                ", expected a style (`style list` has all), sizes such as 400x300x250, a board ({}), a "
                                "quantity, colours such as 2c, a margin such as 18%, a machine ({}), a day such as "
                                "2026-10-15, or NAME=VALUE such as customer=\"Ashlar Tiles\"",
                                codes_text(plant_.boards), codes_text(plant_.converters)));
    }

    // A share, as files have it; as it was typed where it is none, so that it is refused so.
    static std::string margin_text(const std::string& typed) {
        const auto share = share_of(typed);
        return share && share->front() == '0' ? *share : typed;
    }

    void read_size(const std::vector<std::string>& lengths, const EnquiryWord& word, const base::Place& place) {
        if (root_.find("inside") != nullptr) return complain_again("inside", word.text, place);
        static const char* const names[] = {"length", "width", "height"};
        Node& inside = entry_of(root_, "inside", Node::Kind::map, place);
        for (std::size_t i = 0; i < lengths.size(); ++i)
            add_entry(inside, names[i], base::text_node(with_unit(lengths[i]), place));
    }

    // A person who reads inches says them: a typed size without a unit is in the unit that sizes are shown in.
    [[nodiscard]] std::string with_unit(const std::string& length) const {
        const bool has_unit = !base::is_digit(length.back());
        return has_unit || plant_.units == plant::Units::metric ? length : length + " in";
    }

    // `consumables.coverage=0.3`, `overlap=30`, `customer="Ashlar Tiles"`.
    void read_named(const std::string& name, const std::string& value, const base::Place& place) {
        if (is_a_key(name)) {
            const bool is_text = name == "customer" || name == "request";
            return add_once(name, {name == "margin" ? margin_text(value) : value, place.column}, place, is_text);
        }
        const auto point = name.find('.');
        Node& map = entry_of(root_, point == std::string::npos ? "measures" : "extras", Node::Kind::map, place);
        Node& holder = point == std::string::npos ? map : entry_of(map, name.substr(0, point), Node::Kind::map, place);
        const std::string key = point == std::string::npos ? name : name.substr(point + 1);
        if (holder.find(key) != nullptr) return complain_again(name, value, place);
        add_entry(holder, key, base::text_node(value, place));
    }

    void add_once(const std::string& key, const EnquiryWord& word, const base::Place& place, bool is_quoted) {
        if (root_.find(key) != nullptr) return complain_again(key, word.text, place);
        add(key, word.text, place, is_quoted);
    }

    void add(const std::string& key, const std::string& text, const base::Place& place, bool is_quoted = false) {
        add_entry(root_, key, base::text_node(text, place, is_quoted));
    }

    void add_item(const std::string& key, const EnquiryWord& word, const base::Place& place, bool is_quoted) {
        entry_of(root_, key, Node::Kind::list, place).items.push_back(base::text_node(word.text, place, is_quoted));
    }

    [[nodiscard]] bool is_machine(const std::string& text) const {
        const auto has_code = [&](const auto& machine) { return machine.code == text; };
        return std::any_of(plant_.converters.begin(), plant_.converters.end(), has_code) ||
               std::any_of(plant_.corrugators.begin(), plant_.corrugators.end(), has_code);
    }

    static bool is_colours(const std::string& text) {
        return text.size() >= 2 && text.size() <= 3 && text.back() == 'c' &&
               text.find_first_not_of("0123456789") == text.size() - 1;
    }

    // The same words make the same number, on any day.
    [[nodiscard]] std::string number() const {
        Node asked = root_;
        asked.entries.erase(std::remove_if(asked.entries.begin(), asked.entries.end(),
                                           [](const Node::Entry& entry) { return entry.key == "date"; }),
                            asked.entries.end());
        return "E-" + ledger::to_hex(ledger::sha256(request_text(asked))).substr(0, 8);
    }

    void complain_again(const std::string& what, const std::string& found, const base::Place& place) {
        complain(place, what + ": given twice: found " + base::shown(found) + " as well; give it once");
    }

    void complain(const base::Place& place, const std::string& text) { complaints_.add(place, "", text); }

    const plant::Plant& plant_;
    std::vector<EnquiryWord> words_;
    Node root_;
    base::Diagnostics complaints_;
};

// The values of a list, or of a map of texts, with `between` them.
std::string values_text(const Node& node, const std::string& between) {
    std::string result;
    for (const Node& item : node.items) result += (result.empty() ? "" : between) + item.text;
    for (const Node::Entry& entry : node.entries) result += (result.empty() ? "" : between) + entry.value.text;
    return result;
}

std::string named_values_text(const Node& map) {
    std::string result;
    for (const Node::Entry& entry : map.entries)
        result += (result.empty() ? "" : ", ") + (entry.value.kind == Node::Kind::map
                                                      ? entry.key + " " + named_values_text(entry.value)
                                                      : entry.key + " " + entry.value.text);
    return result;
}

// One that has its unit is said as it was typed.
std::string margin_in_words(const std::string& text) {
    return text.find_first_not_of("0123456789.") == std::string::npos ? share_in_per_cent(text) + "%" : text;
}

}  // namespace

base::Node read_enquiry(const plant::Plant& plant, const std::string& line, base::Date today) {
    return EnquiryReader(plant, line).read(today);
}

std::string enquiry_in_words(const base::Node& enquiry) {
    std::string result;
    const auto add = [&](const std::string& words) { result += (result.empty() ? "" : ", ") + words; };
    for (const Node::Entry& entry : enquiry.entries) {
        const Node& value = entry.value;
        const std::string key = entry.key == "quantities" ? "quantity" : entry.key;
        if (value.kind == Node::Kind::text)
            add(key + " " + (key == "margin" ? margin_in_words(value.text) : value.text));
        else if (entry.key == "inside")
            add(key + " " + values_text(value, " x ") +
                (value.entries.front().value.text.find(' ') == std::string::npos ? " mm" : ""));
        else if (value.kind == Node::Kind::list)
            add(key + " " + values_text(value, entry.key == "route" ? " > " : " "));
        else
            add(named_values_text(value));
    }
    return result;
}

}  // namespace flutebook::orders
