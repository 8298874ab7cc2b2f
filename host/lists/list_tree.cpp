// A row as the tree of a request. Codes are quoted texts, numbers bare ones, as in a file; an empty cell gives no key.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "host/base/decimal.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/lists/list_columns.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::lists {

namespace {

using base::Node;
using Kind = ListColumn::Kind;

[[noreturn]] void refuse_cell(const ListCell& cell, const std::string& what) {
    throw InputError(InputError::Whose::request, {fmt::format("{}: {}", base::place_text(cell.place), what)});
}

// 1.500 and 1,500: one reader's thousands are another's thousandths.
bool may_part_thousands(std::string_view text) {
    const std::size_t mark = text.find_first_of(".,");
    return mark != std::string_view::npos && mark >= 1 && mark <= 3 && text.size() - mark == 4 && text.front() != '0';
}

// A number with a point, as the reader of requests wants it; what is no plain number is left to that reader.
std::string number_text(const ListCell& cell, ListNumbers numbers, const std::string& name) {
    std::string text = cell.text;
    const auto decimal = base::read_decimal(text);
    if (numbers == ListNumbers::point_alone || !decimal || decimal->mark == '\0') return text;
    if (may_part_thousands(text))
        refuse_cell(cell, fmt::format("{}: a mark that may separate thousands: found {}; write it without the mark, or "
                                      "with another number of decimals",
                                      name, base::shown(text)));
    std::replace(text.begin(), text.end(), ',', '.');
    return text;
}

Node list_of(Node item) {
    Node list;
    list.kind = Node::Kind::list;
    list.place = item.place;
    list.items.push_back(std::move(item));
    return list;
}

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    return first == std::string_view::npos ? "" : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

// "PR1 > DC1".
Node route_of(const ListCell& cell) {
    Node list;
    list.kind = Node::Kind::list;
    list.place = cell.place;
    std::string_view rest = cell.text;
    while (true) {
        const auto end = std::min(rest.find('>'), rest.size());
        list.items.push_back(base::text_node(std::string(trimmed(rest.substr(0, end))), cell.place, true));
        if (end == rest.size()) return list;
        rest.remove_prefix(end + 1);
    }
}

// A spreadsheet makes 201 of 0201, which is no other style.
std::string style_code(const plant::Plant& plant, const std::string& text) {
    if (text.size() != 3 || text.find_first_not_of("0123456789") != std::string::npos) return text;
    return plant.find_style(text) == nullptr && plant.find_style("0" + text) != nullptr ? "0" + text : text;
}

// Which map the sides of a row stand in: a drawing's, where the row's style is one or it gives the area of one.
std::string map_of_sides(const plant::Plant& plant, const std::string& style, bool has_area) {
    const auto* known = plant.find_style(style);
    return (known != nullptr && known->is_outline) || (known == nullptr && has_area) ? "outline" : "inside";
}

}  // namespace

base::Node ListColumns::tree(const plant::Plant& plant, const ListRow& row, base::Date usual_day) const {
    Node root;
    root.kind = Node::Kind::map;
    root.place = row.place;
    root.entries.reserve(row.cells.size() + 1);  // with the date
    const std::string style = style_code(plant, text(row, "style"));
    const std::string sides = map_of_sides(plant, style, !text(row, "area").empty());
    if (text(row, "date").empty()) add_entry(root, "date", base::text_node(base::to_string(usual_day), row.place));
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        const ListColumn& column = columns_[c];
        const ListCell& cell = row.cells[c];
        if (cell.text.empty()) continue;
        const auto number = [&] { return base::text_node(number_text(cell, numbers_, column.name), cell.place); };
        switch (column.kind) {
            case Kind::code:
                add_entry(root, column.key, base::text_node(cell.text, cell.place, column.key != "date"));
                break;
            case Kind::style:
                add_entry(root, column.key, base::text_node(style, cell.place, true));
                break;
            case Kind::number:
                add_entry(root, column.key, number());
                break;
            case Kind::quantity:
                add_entry(root, "quantities", list_of(number()));
                break;
            case Kind::side:
                add_entry(entry_of(root, column.key == "area" ? "outline" : sides, Node::Kind::map, cell.place),
                          column.key, number());
                break;
            case Kind::measure:
                add_entry(entry_of(root, column.map, Node::Kind::map, cell.place), column.key, number());
                break;
            case Kind::extra:
                add_entry(entry_of(entry_of(root, column.map, Node::Kind::map, cell.place), column.key, Node::Kind::map,
                                   cell.place),
                          column.setting, number());
                break;
            case Kind::route:
                add_entry(root, column.key, route_of(cell));
                break;
            case Kind::price:
            case Kind::price_day:
            case Kind::carried:
            case Kind::answer:
                break;
        }
    }
    return root;
}

std::optional<OldPrice> ListColumns::old_price(const ListRow& row) const {
    OldPrice result{};
    bool is_given = false;
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
        const ListCell& cell = row.cells[c];
        if (cell.text.empty()) continue;
        if (columns_[c].kind == Kind::price) {
            const auto price = base::read_decimal(number_text(cell, numbers_, columns_[c].name));
            if (!price || !(price->value >= 0 && price->value < Money::limit) || price->mark == ',')
                refuse_cell(cell, "price: not a number: found " + base::shown(cell.text) +
                                      ", expected the old price per thousand in plain figures");
            result.per_thousand = price->value;
            is_given = true;
        }
        if (columns_[c].kind == Kind::price_day) {
            result.day = base::parse_date(cell.text);
            if (!result.day)
                refuse_cell(cell, "price_date: not a day: found " + base::shown(cell.text) + ", expected YYYY-MM-DD");
        }
    }
    return is_given ? std::optional(result) : std::nullopt;
}

}  // namespace flutebook::lists
