// A code that the plant does not have is answered by the list of those it has, never by a near one: a near number is
// another box.
#include "host/services/styles/show_style.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"

namespace flutebook::services {

namespace {

[[noreturn]] void refuse_style(const std::string& sentence) {
    throw InputError(InputError::Whose::request, {sentence});
}

template <typename Entries>
std::string codes_of(const Entries& entries) {
    std::string result;
    for (const auto& entry : entries) result += (result.empty() ? "" : ", ") + entry.code;
    return result;
}

const plant::Board& board_of(const plant::Plant& plant, const std::string& code) {
    if (const plant::Board* board = plant.find_board(code)) return *board;
    refuse_style(
        fmt::format("board: no such board: found {}; the boards are {}", base::shown(code), codes_of(plant.boards)));
}

void check_measures(const box_styles::Style& style, const StyleQuestion& question) {
    for (const auto& [name, value] : question.measures) {
        const auto is_asked = [&name = name](const box_styles::AskedMeasure& ask) { return ask.name == name; };
        if (std::any_of(style.asks.begin(), style.asks.end(), is_asked)) continue;
        std::string known;
        for (const box_styles::AskedMeasure& ask : style.asks) known += (known.empty() ? "" : ", ") + ask.name;
        refuse_style(fmt::format("measure: style {} asks for no such measure: found {}; {}", style.code,
                                 base::shown(name), known.empty() ? "it asks for none" : "it asks for " + known));
    }
}

std::vector<box_styles::Stage> made_by(const box_styles::Style& style, std::size_t piece) {
    return piece < style.pieces.size() ? style.pieces[piece].made_by : std::vector<box_styles::Stage>{};
}

std::string in_small_letters(std::string text) {
    for (char& sign : text)
        if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    return text;
}

// A carton, a flat, a large one.
const std::vector<double> usual_sizes_mm[] = {{400, 300, 250}, {400, 300, 80}, {600, 400, 60}, {1180, 780, 900}};

}  // namespace

const box_styles::Style& style_of(const plant::Plant& plant, const std::string& code) {
    if (const box_styles::Style* style = plant.find_style(code)) return *style;
    refuse_style(
        fmt::format("style: no such style: found {}; the styles are {}", base::shown(code), codes_of(plant.styles)));
}

plant_answers::StyleListAnswer list_styles(const plant::Plant& plant) {
    plant_answers::StyleListAnswer result;
    for (const box_styles::Style& style : plant.styles) {
        plant_answers::ListedStyle listed{style.code, style.title, style.note, {}, {}, style.asks};
        for (const box_styles::StylePiece& piece : style.pieces) {
            listed.made_by.push_back(piece.made_by);
            listed.pieces.push_back(piece.name);
        }
        result.styles.push_back(std::move(listed));
    }
    return result;
}

plant_answers::StyleListAnswer found_styles(const plant::Plant& plant, const std::string& wanted) {
    plant_answers::StyleListAnswer list = list_styles(plant);
    std::istringstream words(in_small_letters(wanted));
    for (std::string word; words >> word;)
        std::erase_if(list.styles, [&](const plant_answers::ListedStyle& style) {
            return in_small_letters(style.code + " " + style.title).find(word) == std::string::npos;
        });
    return list;
}

std::optional<plant_answers::ShownStyle> show_style_at_usual_size(const plant::Plant& plant, const std::string& code) {
    if (style_of(plant, code).is_outline) return std::nullopt;
    for (const std::vector<double>& size_mm : usual_sizes_mm)
        for (const plant::Board& board : plant.boards) try {
                return show_style(plant, {code, size_mm, board.code, {}});
            } catch (const InputError&) {
                continue;  // the next one
            }
    return std::nullopt;
}

plant_answers::ShownStyle show_style(const plant::Plant& plant, const StyleQuestion& question) {
    const box_styles::Style& style = style_of(plant, question.code);
    const plant::Board& board = board_of(plant, question.board);
    if (style.is_outline)
        refuse_style(fmt::format("style: {} has no drawing: the request itself gives its blank; ask for another style",
                                 style.code));
    if (style.is_folded() && question.inside_mm.size() < 3)
        refuse_style(fmt::format("inside: a box has three dimensions: found {} of style {}; give LxBxH",
                                 question.inside_mm.size(), style.code));
    check_measures(style, question);
    const double height = question.inside_mm.size() > 2 ? question.inside_mm[2] : 0;
    blanks::StyleSize size{{question.inside_mm.at(0), question.inside_mm.at(1), height},
                           plant::caliper_mm(plant, board),
                           plant.find_allowance(board.flutes, style.code),
                           question.measures};
    size.where = "inside";
    plant_answers::ShownStyle result{style.code,         style.title,       style.note, board.code,
                                     question.inside_mm, question.measures, {}};
    std::vector<blanks::FlatBlank> blanks = blanks::draw_flat(style, size);
    for (std::size_t i = 0; i < blanks.size(); ++i) {
        blanks::FlatMeasures measures = blanks::measure(blanks[i]);
        result.pieces.push_back({made_by(style, i), std::move(blanks[i]), std::move(measures)});
    }
    return result;
}

}  // namespace flutebook::services
