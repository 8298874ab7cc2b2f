// boards.yaml: combinations of papers, outside first. A liner, then a fluted medium and the liner that it is glued to,
// once or twice; the last liner may be left out (single face). A board may say how thick it was measured, and how much
// a strip of it bears on its edge. One that a supplier delivers as sheets says that in the place of its papers.
#include <fmt/format.h>

#include <string>

#include "host/base/quoted_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

constexpr std::size_t most_media = 2;

// The ply's paper, where it is known and meant for this use.
std::size_t read_paper(const fields::Field& field, Paper::Use use, const BoardParts& parts) {
    const auto code = field.text();
    const auto paper = parts.paper_codes.find(field, code);
    if (!paper || *paper >= parts.papers.size()) return 0;
    if (parts.papers[*paper].use != use)
        field.complain(use == Paper::Use::liner
                           ? "a medium as a liner: found " + base::shown(code) +
                                 "; write `{flute: ..., paper: ...}` or name a liner"
                           : "a liner as a medium: found " + base::shown(code) + "; name a medium");
    return *paper;
}

Board::Ply read_ply(const fields::Field& item, const BoardParts& parts) {
    if (!item.is_map()) return {read_paper(item, Paper::Use::liner, parts), std::nullopt, false};
    fields::MapReader form(item);
    const auto flute_field = form.field("flute");
    const auto flute = parts.flute_codes.find(flute_field, flute_field.text());
    const auto paper = read_paper(form.field("paper"), Paper::Use::medium, parts);
    form.finish();
    return {paper, flute.value_or(0), false};
}

// Counted by what was written, whether or not the paper is known.
void check_order(const fields::Field& list, const std::vector<fields::Field>& items,
                 const std::vector<Board::Ply>& plies) {
    std::size_t media = 0;
    // What was refused may have been either.
    for (const auto& item : items)
        if (item.node()->kind == base::Node::Kind::refused) return;
    for (std::size_t i = 0; i < plies.size(); ++i) {
        const bool is_medium = plies[i].flute.has_value();
        media += is_medium ? 1 : 0;
        if (is_medium == (i % 2 == 1)) continue;
        items[i].complain(is_medium
                              ? "a medium out of turn: expected a liner here; liner and medium alternate, a liner first"
                              : "a liner out of turn: expected a medium here, as `{flute: ..., paper: ...}`");
        return;
    }
    if (media == 0 || media > most_media)
        list.complain(fmt::format("not a board: found {} fluted media, expected 1 or 2", media));
}

std::string joined_flutes(const std::vector<Board::Ply>& plies, const BoardParts& parts) {
    std::string joined;
    for (const auto& ply : plies)
        if (ply.flute && *ply.flute < parts.flutes.size())
            joined += (joined.empty() ? "" : "+") + parts.flutes[*ply.flute].code;
    return joined;
}

void read_plies(const fields::Field& list, const BoardParts& parts, Board& board) {
    const auto items = list.items_at_least_one();
    for (const auto& item : items) board.plies.push_back(read_ply(item, parts));
    if (!items.empty()) check_order(list, items, board.plies);
    for (std::size_t i = 0; i + 1 < board.plies.size(); ++i)
        board.plies[i].has_second_liner = board.plies[i].flute.has_value();
    board.flutes = joined_flutes(board.plies, parts);
}

// What a board is made of, or who delivers it.
void read_origin(fields::MapReader& form, const BoardParts& parts, Board& board, BoardsYaml& result) {
    if (!form.has("bought")) return read_plies(form.field("plies"), parts, board);
    const auto bought = form.field("bought");
    if (form.has("plies"))
        bought.complain_of_key("both `plies` and `bought` are given: a board is run here or bought; take one out");
    if (form.has("caliper"))
        form.field("caliper").complain_of_key("not beside `bought`, which says how thick the sheets are; take it out");
    read_bought(bought, parts, board, result);
}

Board read_board(const fields::Field& entry, const BoardParts& parts, BoardsYaml& result) {
    fields::MapReader form(entry);
    Board board;
    board.code = entry.key();
    board.place = entry.key_place();
    read_origin(form, parts, board, result);
    if (!board.is_bought() && form.has("caliper")) {
        const auto caliper = form.field("caliper");
        board.caliper_mm = caliper.number("mm", fields::range::positive);
        board.caliper_place = caliper.place();
    }
    if (form.has("ect")) {
        const auto ect = form.field("ect");
        board.ect_kn_m = ect.number("kN/m", fields::range::positive);
        board.ect_place = ect.place();
    }
    form.finish();
    return board;
}

}  // namespace

BoardsYaml read_boards(const fields::Field& table, const BoardParts& parts) {
    BoardsYaml result;
    for (const auto& entry : table.entries_at_least_one()) result.boards.push_back(read_board(entry, parts, result));
    return result;
}

}  // namespace flutebook::plant
