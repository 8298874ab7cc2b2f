// The keys of a blank in turn. Cells are known by their index in the map until the creases hang them up.
#include "host/box_styles/piece_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "host/base/quoted_text.hpp"
#include "host/box_styles/style_map.hpp"

namespace flutebook::box_styles {

namespace {

constexpr std::size_t most_corners = 60;

// "a or b or c", "a b c": the words between separators, without spaces.
std::vector<std::string> words_between(const std::string& text, const std::string& separator) {
    std::vector<std::string> words;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find(separator, begin), text.size());
        std::string word = text.substr(begin, end - begin);
        word.erase(0, std::min(word.find_first_not_of(' '), word.size()));
        word.erase(word.find_last_not_of(' ') + 1);
        if (!word.empty()) words.push_back(std::move(word));
        begin = end + separator.size();
    }
    return words;
}

Stage read_stage(const fields::Field& field) {
    Stage stage;
    for (const auto& word : words_between(field.text(), " or ")) {
        if (const auto kind = converter_kind(word))
            stage.push_back(*kind);
        else
            field.complain("unknown kind of machine: found " + base::shown(word) +
                           ", expected kinds with `or` between them, such as `die-cutter`");
    }
    return stage;
}

class PieceReader {
public:
    PieceReader(fields::MapReader& form, const SumScope& scope) : form_(form), scope_(scope) {}

    StylePiece read() {
        piece_.place = form_.map().key_place();
        read_grid();
        if (form_.has("slot")) piece_.slot = scope_.read(form_.field("slot"), SumUse::length);
        if (form_.has("cells")) read_cells(form_.field("cells"));
        if (form_.has("fold")) read_fold(form_.field("fold"));
        if (form_.has("join")) read_joins(form_.field("join"));
        if (form_.has("inside")) read_inside(form_.form("inside"));
        read_size();
        read_cover();
        if (form_.has("count")) piece_.count = scope_.read(form_.field("count"), SumUse::number);
        if (form_.has("walls")) read_walls(form_.form("walls"));
        if (has_map_ && hang_cells(form_.field(form_.has("map") ? "map" : "along"), piece_)) check_root();
        return std::move(piece_);
    }

private:
    void read_grid() {
        piece_.along = read_lengths(form_.field("along"));
        piece_.across = read_lengths(form_.field("across"));
        if (!form_.has("map")) {
            if (piece_.along.size() == 1 && piece_.across.size() == 1) {
                take_map(sheet_map(piece_.place));
            } else if (!piece_.along.empty() && !piece_.across.empty()) {
                form_.field("map").complain("missing: expected the map of a blank of more than one column or row");
            }
            return;
        }
        if (piece_.along.empty() || piece_.across.empty()) return;
        if (auto map = read_style_map(form_.field("map"), piece_.along.size(), piece_.across.size()))
            take_map(std::move(*map));
    }

    void take_map(StyleMap map) {
        piece_.cells = std::move(map.cells);
        piece_.borders = std::move(map.borders);
        has_map_ = true;
    }

    std::vector<Sum> read_lengths(const fields::Field& list) {
        std::vector<Sum> lengths;
        const auto items = list.items_at_least_one();
        if (items.size() > most_lines_in_map)
            list.complain(fmt::format("too many: found {}, expected at most {}", items.size(), most_lines_in_map));
        for (const auto& item : items) lengths.push_back(scope_.read(item, SumUse::positive_length));
        return lengths;
    }

    // Nothing where the map is not known, or where it complained.
    std::optional<std::size_t> find_cell(const fields::Field& field, const std::string& name) const {
        if (!has_map_ || name.empty()) return std::nullopt;
        const auto found = std::find_if(piece_.cells.begin(), piece_.cells.end(),
                                        [&](const StyleCell& cell) { return cell.name == name; });
        if (found != piece_.cells.end()) return static_cast<std::size_t>(found - piece_.cells.begin());
        field.complain("a cell that the map lacks: found " + base::shown(name) + ", expected one of the map");
        return std::nullopt;
    }

    void read_cells(const fields::Field& map) {
        for (const auto& entry : map.entries()) {
            const auto index = find_cell(entry.about_key(), entry.key());
            // What stands there is read all the same.
            StyleCell unknown{};
            read_cell(entry, index ? piece_.cells[*index] : unknown);
        }
    }

    void read_cell(const fields::Field& entry, StyleCell& cell) {
        fields::MapReader form(entry);
        if (form.has("inset")) cell.inset = read_sides(form.field("inset"), CellNames::none);
        if (form.has("depth")) cell.depth = scope_.read(form.field("depth"), SumUse::positive_length, CellNames::width);
        if (form.has("taper")) cell.taper = read_sides(form.field("taper"), CellNames::width_and_depth);
        if (form.has("shape")) {
            cell.shape = read_corners(form.field("shape"), CellNames::width_and_depth);
            if (form.has("taper"))
                form.field("taper").complain_of_key(
                    "beside `shape`: expected one of them, since a shape has its sides");
        }
        if (form.has("holes")) read_holes(form.field("holes"), cell);
        if (form.has("plain")) cell.is_plain = form.field("plain").choice({"true", "false"}) == 0U;
        form.finish();
    }

    // One value for both sides, or a list of both.
    std::array<std::optional<Sum>, 2> read_sides(const fields::Field& field, CellNames names) {
        if (!field.is_list()) {
            const auto both = scope_.read(field, SumUse::length, names);
            return {both, both};
        }
        const auto items = field.items();
        if (items.size() == 2)
            return {scope_.read(items[0], SumUse::length, names), scope_.read(items[1], SumUse::length, names)};
        field.complain(fmt::format("wrong type: found a list of {}, expected one sum, or [first, last]", items.size()));
        return {};
    }

    std::array<Sum, 2> read_pair(const fields::Field& field, CellNames names, const char* expected) {
        const auto items = field.items();
        if (items.size() == 2)
            return {scope_.read(items[0], SumUse::length, names), scope_.read(items[1], SumUse::length, names)};
        if (field.is_list())
            field.complain(fmt::format("wrong type: found a list of {}, expected {}", items.size(), expected));
        return {};
    }

    std::vector<std::array<Sum, 2>> read_corners(const fields::Field& list, CellNames names) {
        std::vector<std::array<Sum, 2>> corners;
        const auto items = list.items();
        if (list.is_list() && (items.size() < 3 || items.size() > most_corners))
            list.complain(fmt::format("no shape: found {} corners, expected 3 to {}", items.size(), most_corners));
        for (const auto& item : items) corners.push_back(read_pair(item, names, "a corner, [u, v]"));
        return corners;
    }

    void read_holes(const fields::Field& list, StyleCell& cell) {
        const auto items = list.items_at_least_one();
        if (items.size() > most_cut_outs_of_cell)
            list.complain(
                fmt::format("too many cut-outs: found {}, expected at most {}", items.size(), most_cut_outs_of_cell));
        for (const auto& item : items) cell.holes.push_back(read_hole(item));
        cut_outs_ += items.size();
        if (cut_outs_ > most_cut_outs_of_blank)
            list.complain(fmt::format("too many cut-outs in one blank: found {} up to here, expected at most {}",
                                      cut_outs_, most_cut_outs_of_blank));
    }

    StyleHole read_hole(const fields::Field& item) {
        fields::MapReader form(item);
        StyleHole hole;
        const bool is_counted = form.has("count");
        const auto names = is_counted ? CellNames::cut_out : CellNames::width_and_depth;
        if (is_counted) hole.count = scope_.read(form.field("count"), SumUse::number, CellNames::width_and_depth);
        if (form.has("points")) {
            hole.corners = read_corners(form.field("points"), names);
        } else {
            const auto at = read_pair(form.field("at"), names, "a place, [u, v]");
            const auto size = read_pair(form.field("size"), names, "a size, [a, b]");
            hole.is_rectangle = true;
            hole.corners = {at, size};
        }
        form.finish();
        return hole;
    }

    void read_fold(const fields::Field& list) {
        std::vector<bool> is_folded(piece_.cells.size());
        for (const auto& item : list.items()) read_step(item, is_folded);
    }

    void read_step(const fields::Field& item, std::vector<bool>& is_folded) {
        std::vector<std::size_t> step;
        std::optional<std::size_t> last;
        bool has_cell = false;
        for (const auto& word : words_between(item.text(), " ")) {
            if (word.front() == '-' || (word.front() >= '0' && word.front() <= '9')) {
                read_angle(item, word, has_cell, last);
                has_cell = false;
                continue;
            }
            last = find_cell(item, word);
            has_cell = true;
            if (!last) continue;
            if (is_folded[*last])
                item.complain("a cell that is folded twice: found " + base::shown(word) + ", expected each once");
            is_folded[*last] = true;
            step.push_back(*last);
        }
        piece_.fold.push_back(std::move(step));
    }

    void read_angle(const fields::Field& item, const std::string& word, bool has_cell,
                    std::optional<std::size_t> cell) {
        double angle = 0;
        const auto [end, failure] =
            std::from_chars(word.data(), word.data() + word.size(), angle, std::chars_format::fixed);
        if (failure != std::errc() || end != word.data() + word.size())
            return item.complain("not an angle: found " + base::shown(word) + ", expected a plain decimal");
        if (!has_cell)
            return item.complain("an angle before any cell: found " + base::shown(word) +
                                 ", expected the cell that it folds before it");
        if (!(angle >= -180 && angle <= 180))
            return item.complain("an angle beyond 180: found " + base::shown(word) + ", expected -180 to 180");
        if (cell) piece_.cells[*cell].angle_deg = angle;
    }

    void read_joins(const fields::Field& map) {
        for (const auto& entry : map.entries()) {
            const auto cell = find_cell(entry.about_key(), entry.key());
            const auto partner = find_cell(entry, entry.text());
            if (cell && partner && *cell == *partner) entry.complain("joined to itself: expected another cell");
            if (cell && partner) piece_.joins.push_back({*cell, *partner});
        }
    }

    void read_inside(fields::MapReader form) {
        constexpr std::array<const char*, 3> sides = {"L", "B", "H"};
        for (std::size_t i = 0; i < sides.size(); ++i)
            if (form.has(sides[i])) piece_.inside[i] = read_span(form.field(sides[i]));
        form.finish();
    }

    std::optional<InsideSpan> read_span(const fields::Field& field) {
        const auto items = field.items();
        if (field.is_list() && items.size() != 2)
            field.complain(
                fmt::format("wrong type: found a list of {}, expected two cells, or a cell and `rim`", items.size()));
        if (items.size() != 2) return std::nullopt;
        const auto from = find_cell(items[0], items[0].text());
        const auto to_name = items[1].text();
        if (to_name == "rim") return from ? std::optional<InsideSpan>({*from, std::nullopt}) : std::nullopt;
        const auto to = find_cell(items[1], to_name);
        if (!from || !to) return std::nullopt;
        return InsideSpan{*from, to};
    }

    void read_size() {
        for (std::size_t i = 0; i < 3; ++i) piece_.size[i] = {i == 0 ? "L" : i == 1 ? "B" : "H", piece_.place};
        if (!form_.has("size")) return;
        const auto field = form_.field("size");
        const auto items = field.items();
        if (field.is_list() && items.size() != 3)
            field.complain(fmt::format("wrong type: found a list of {}, expected three sums, [L, B, H]", items.size()));
        for (std::size_t i = 0; i < items.size() && i < 3; ++i)
            piece_.size[i] = scope_.read(items[i], SumUse::positive_length);
    }

    void read_cover() {
        constexpr std::array<const char*, 6> faces = {"left", "right", "front", "back", "bottom", "top"};
        for (auto& face : piece_.cover) face = {"1", piece_.place};
        if (!form_.has("cover")) return;
        auto form = form_.form("cover");
        for (std::size_t i = 0; i < faces.size(); ++i)
            if (form.has(faces[i])) piece_.cover[i] = scope_.read(form.field(faces[i]), SumUse::number);
        form.finish();
    }

    void read_walls(fields::MapReader form) {
        constexpr std::array<const char*, 3> sides = {"L", "B", "H"};
        for (std::size_t i = 0; i < sides.size(); ++i)
            if (form.has(sides[i])) piece_.walls[i] = scope_.read(form.field(sides[i]), SumUse::length);
        form.finish();
    }

    // The cell that stays lies where the grid has it.
    void check_root() {
        const auto& root = piece_.cells.front();
        if (root.depth || root.inset[0] || root.taper[0])
            form_.field("cells").complain(
                fmt::format("{} stays and hangs on no crease: expected neither `depth` nor `inset` nor `taper`",
                            base::shown(root.name)));
    }

    fields::MapReader& form_;
    const SumScope& scope_;
    StylePiece piece_{};
    bool has_map_ = false;
    std::size_t cut_outs_ = 0;  // so far, those that are counted once
};

}  // namespace

StylePiece read_piece(fields::MapReader& form, const SumScope& scope) {
    return PieceReader(form, scope).read();
}

std::vector<NamedSum> read_let(fields::MapReader& form, SumScope& scope) {
    std::vector<NamedSum> result;
    if (!form.has("let")) return result;
    for (const auto& entry : form.field("let").entries()) {
        scope.check_new_name(entry);
        NamedSum sum{entry.key(), scope.read(entry, SumUse::number)};
        scope.add(sum);
        result.push_back(std::move(sum));
    }
    return result;
}

std::optional<std::vector<Stage>> read_made_by(fields::MapReader& form) {
    if (!form.has("made_by")) return std::nullopt;
    const auto field = form.field("made_by");
    std::vector<Stage> stages;
    if (field.is_list())
        for (const auto& item : field.items_at_least_one()) stages.push_back(read_stage(item));
    else
        stages.push_back(read_stage(field));
    return stages;
}

}  // namespace flutebook::box_styles
