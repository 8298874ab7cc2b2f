// Reads a map in three steps: each row into cells and signs, the rows into cells that cover rectangles, and what stands
// between two cells into borders.
#include "host/box_styles/style_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "host/base/characters.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::box_styles {

namespace {

// A word or sign of a row, and the byte of the row where it begins.
struct MapToken {
    std::string_view text;
    std::size_t at;
};

std::vector<MapToken> tokens_of_row(std::string_view row) {
    std::vector<MapToken> tokens;
    for (std::size_t at = 0; at < row.size();) {
        if (row[at] == ' ') {
            ++at;
            continue;
        }
        const std::size_t end = std::min(row.find(' ', at), row.size());
        tokens.push_back({row.substr(at, end - at), at});
        at = end;
    }
    return tokens;
}

bool is_between_cells(std::string_view token) {
    return token == "|" || token == "/";
}

// A cell's place in the map. Without a name nothing is there.
struct MapSpot {
    std::string name;
    base::Place place;
    char before = ' ';        // the sign to its left
    bool is_creased = false;  // from the cell above
    base::Place crease_place;
};
using SpotRow = std::vector<MapSpot>;

// Turns the rows of text into spots.
class MapRows {
public:
    MapRows(const fields::Field& map, std::size_t columns, std::size_t rows)
        : map_(map), columns_(columns), rows_(rows) {}

    // Nothing where it complained.
    std::optional<std::vector<SpotRow>> read() {
        for (const auto& item : map_.items_at_least_one()) read_row(item);
        if (crease_row_) crease_row_->complain("a row of creases below the last row of cells: expected cells below it");
        if (map_.is_list() && is_fit_ && spots_.size() != rows_)
            complain(map_, fmt::format("another number of rows than `across` has: found {} rows of cells, expected {}",
                                       spots_.size(), rows_));
        if (!is_fit_ || !map_.is_list()) return std::nullopt;
        return std::move(spots_);
    }

private:
    void complain(const fields::Field& at, const std::string& text) {
        at.complain(text);
        is_fit_ = false;
    }
    // At a byte of a row.
    void complain_at(const fields::Field& row, std::size_t at, const std::string& text) {
        row.complain_at(place_in(row, at), text);
        is_fit_ = false;
    }
    static base::Place place_in(const fields::Field& row, std::size_t at) {
        auto place = row.place();
        place.column += static_cast<int>(at) + (row.node()->quoted ? 1 : 0);
        return place;
    }

    void read_row(const fields::Field& item) {
        const auto given = item.given_text("a row of the map");
        if (!given) {
            is_fit_ = false;
            return;
        }
        const auto tokens = tokens_of_row(item.node()->text);
        const bool has_creases =
            std::any_of(tokens.begin(), tokens.end(), [](const MapToken& token) { return token.text == "--"; });
        const bool is_empty =
            std::all_of(tokens.begin(), tokens.end(), [](const MapToken& token) { return token.text == "."; });
        if (has_creases || is_empty) return read_crease_row(item, tokens);
        read_cell_row(item, tokens);
        crease_row_.reset();
    }

    void read_crease_row(const fields::Field& item, const std::vector<MapToken>& tokens) {
        for (const auto& token : tokens)
            if (token.text != "--" && token.text != ".")
                return complain_at(item, token.at,
                                   fmt::format("an unknown sign: found {} in a row of creases, expected `--` "
                                               "or `.`",
                                               base::shown(token.text)));
        if (tokens.size() != columns_) return complain_count(item, "creases", tokens.size());
        if (!has_cells_above_ || crease_row_)
            return complain(item, "a row of creases that has no row of cells above it: expected cells");
        crease_row_ = item;
        creases_ = tokens;
    }

    void complain_count(const fields::Field& item, const char* what, std::size_t count) {
        complain(item, fmt::format("a row with too {} {}: found {}, expected {} as `along` has",
                                   count < columns_ ? "few" : "many", what, count, columns_));
    }

    void read_cell_row(const fields::Field& item, const std::vector<MapToken>& tokens) {
        has_cells_above_ = true;
        SpotRow row;
        const MapToken* sign = nullptr;
        for (const auto& token : tokens) {
            if (is_between_cells(token.text)) {
                if (sign != nullptr || row.empty() || row.back().name.empty()) return complain_beside(item, token);
                sign = &token;
                continue;
            }
            if (token.text == "." && sign != nullptr) return complain_beside(item, *sign);
            if (token.text != "." && !is_cell_name(token.text))
                return complain_at(item, token.at,
                                   fmt::format("an unknown sign: found {}, expected a cell's name, `.`, `|` or "
                                               "`/`",
                                               base::shown(token.text)));
            row.push_back(spot(item, token, sign));
            sign = nullptr;
        }
        if (sign != nullptr) return complain_beside(item, *sign);
        if (row.size() != columns_) return complain_count(item, "cells", row.size());
        add_row(std::move(row));
    }

    static MapSpot spot(const fields::Field& item, const MapToken& token, const MapToken* sign) {
        MapSpot result;
        if (token.text != ".") result.name = token.text;
        result.place = place_in(item, token.at);
        if (sign != nullptr) result.before = sign->text.front();
        return result;
    }

    void complain_beside(const fields::Field& item, const MapToken& sign) {
        complain_at(item, sign.at,
                    fmt::format("a {} beside nothing: expected a cell on both of its sides", base::shown(sign.text)));
    }

    // The row of creases above belongs to it.
    void add_row(SpotRow row) {
        for (std::size_t i = 0; crease_row_ && !spots_.empty() && i < creases_.size(); ++i) {
            if (creases_[i].text != "--") continue;
            if (row[i].name.empty() || spots_.back()[i].name.empty()) complain_beside(*crease_row_, creases_[i]);
            row[i].is_creased = true;
            row[i].crease_place = place_in(*crease_row_, creases_[i].at);
        }
        spots_.push_back(std::move(row));
    }

    const fields::Field& map_;
    std::size_t columns_, rows_;
    bool is_fit_ = true;
    bool has_cells_above_ = false;  // fit or not
    std::vector<SpotRow> spots_;
    std::optional<fields::Field> crease_row_;  // waits for the row of cells below it
    std::vector<MapToken> creases_;
};

StyleCell cell_in_map(const std::string& name, const base::Place& place) {
    StyleCell cell{};
    cell.name = name;
    cell.place = place;
    return cell;
}

// Turns spots into cells and borders.
class CellsOfMap {
public:
    CellsOfMap(const fields::Field& map, const std::vector<SpotRow>& spots) : map_(map), spots_(spots) {}

    std::optional<StyleMap> read() {
        for (std::size_t row = 0; row < spots_.size(); ++row)
            for (std::size_t column = 0; column < spots_[row].size(); ++column) add_spot(row, column);
        check_rectangles();
        if (!is_fit_) return std::nullopt;
        for (std::size_t row = 0; row < spots_.size(); ++row)
            for (std::size_t column = 0; column < spots_[row].size(); ++column) add_borders(row, column);
        if (!is_fit_) return std::nullopt;
        return std::move(result_);
    }

private:
    void complain_at(const base::Place& place, const std::string& text) {
        map_.complain_at(place, text);
        is_fit_ = false;
    }

    void add_spot(std::size_t row, std::size_t column) {
        const auto& spot = spots_[row][column];
        if (spot.name.empty()) return;
        const auto [found, is_new] = index_.emplace(spot.name, result_.cells.size());
        if (is_new) {
            if (result_.cells.size() == most_cells)
                complain_at(spot.place, fmt::format("too many cells: expected at most {}", most_cells));
            auto cell = cell_in_map(spot.name, spot.place);
            cell.first_column = cell.last_column = column;
            cell.first_row = cell.last_row = row;
            result_.cells.push_back(std::move(cell));
            spot_count_.push_back(0);
        }
        auto& cell = result_.cells[found->second];
        cell.first_column = std::min(cell.first_column, column);
        cell.last_column = std::max(cell.last_column, column);
        cell.last_row = row;
        ++spot_count_[found->second];
    }

    void check_rectangles() {
        for (std::size_t i = 0; i < result_.cells.size(); ++i) {
            const auto& cell = result_.cells[i];
            const std::size_t area = (cell.last_column - cell.first_column + 1) * (cell.last_row - cell.first_row + 1);
            if (area != spot_count_[i])
                complain_at(cell.place, fmt::format("cells of one name that form no rectangle: found {} of {} in {} "
                                                    "places, expected each cell to fill its rectangle",
                                                    spot_count_[i], base::shown(cell.name), area));
        }
    }

    // To the left of a spot and above it.
    void add_borders(std::size_t row, std::size_t column) {
        const auto& spot = spots_[row][column];
        if (spot.name.empty()) return;
        if (column > 0)
            add_border(spots_[row][column - 1], spot,
                       spot.before == '|'   ? StyleBorder::Kind::crease
                       : spot.before == '/' ? StyleBorder::Kind::slot
                                            : StyleBorder::Kind::cut,
                       spot.place);
        if (row > 0)
            add_border(spots_[row - 1][column], spot,
                       spot.is_creased ? StyleBorder::Kind::crease : StyleBorder::Kind::cut,
                       spot.is_creased ? spot.crease_place : spot.place);
    }

    void add_border(const MapSpot& before, const MapSpot& after, StyleBorder::Kind kind, const base::Place& place) {
        if (before.name.empty()) return;
        if (before.name == after.name) {
            if (kind != StyleBorder::Kind::cut)
                complain_at(place, fmt::format("a border within one cell: found it in {}, expected none",
                                               base::shown(after.name)));
            return;
        }
        const StyleBorder border{index_.at(before.name), index_.at(after.name), kind};
        const auto same = std::find_if(result_.borders.begin(), result_.borders.end(), [&](const StyleBorder& other) {
            return other.first == border.first && other.second == border.second;
        });
        if (same == result_.borders.end())
            result_.borders.push_back(border);
        else if (same->kind != kind)
            complain_at(place, fmt::format("two kinds of border between {} and {}: expected one along the whole of it",
                                           base::shown(before.name), base::shown(after.name)));
    }

    const fields::Field& map_;
    const std::vector<SpotRow>& spots_;
    StyleMap result_;
    std::map<std::string, std::size_t> index_;
    std::vector<std::size_t> spot_count_;
    bool is_fit_ = true;
};

}  // namespace

bool is_cell_name(std::string_view text) {
    const auto is_letter_of_name = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    return !text.empty() && text.size() <= 40 && text != "rim" && is_letter_of_name(text.front()) &&
           std::all_of(text.begin(), text.end(),
                       [&](char c) { return is_letter_of_name(c) || base::is_digit(c) || c == '_'; });
}

std::vector<std::string> words_of_map(const base::Node& map) {
    std::vector<std::string> words;
    for (const auto& row : map.items)
        for (const auto& token : tokens_of_row(row.text))
            if (is_cell_name(token.text)) words.emplace_back(token.text);
    return words;
}

StyleMap sheet_map(const base::Place& place) {
    StyleMap result;
    result.cells.push_back(cell_in_map("sheet", place));
    return result;
}

std::optional<StyleMap> read_style_map(const fields::Field& map, std::size_t columns, std::size_t rows) {
    const auto spots = MapRows(map, columns, rows).read();
    if (!spots) return std::nullopt;
    return CellsOfMap(map, *spots).read();
}

}  // namespace flutebook::box_styles
