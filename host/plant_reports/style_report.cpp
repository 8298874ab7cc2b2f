// Lengths are shown in the plant's units; a style's note stands under its title, since it says whether the
// construction may be relied on.
#include "host/plant_reports/style_report.hpp"

#include <fmt/format.h>

#include "host/drawings/blank_drawings.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/plant_answers/style_json.hpp"
#include "host/render/number_text.hpp"
#include "host/reports/building.hpp"

namespace flutebook::plant_reports {

using namespace reports;

namespace {

using plant_answers::ListedStyle;
using plant_answers::ShownPiece;
using plant_answers::ShownStyle;

std::string stages_words(const std::vector<box_styles::Stage>& stages) {
    std::string result;
    for (const box_styles::Stage& stage : stages)
        result += (result.empty() ? "" : ", then ") + plant_answers::stage_text(stage);
    return result.empty() ? "the corrugator alone" : result;
}

// Pieces that the same machines make are told once.
std::string makers_words(const ListedStyle& style) {
    if (style.made_by.empty()) return "by the customer's drawing";
    std::string result;
    for (std::size_t i = 0; i < style.made_by.size(); ++i) {
        if (i > 0 && style.made_by[i] == style.made_by[i - 1]) continue;
        result += (result.empty() ? "" : "; ") + stages_words(style.made_by[i]);
    }
    return result;
}

std::string places_words(const drawings::ShownUnits& units, const std::vector<double>& places_mm) {
    std::string result;
    for (const double place : places_mm) result += (result.empty() ? "" : ", ") + units.length_number(place);
    return result.empty() ? "none" : result + " " + units.length_unit;
}

Facts piece_facts(const drawings::ShownUnits& units, const ShownPiece& piece) {
    const blanks::FlatMeasures& measures = piece.measures;
    const drawings::ShownUnit length = units.of("m");
    const auto lengths = [&](double mm) { return render::number_text(length(mm / 1000), 3) + " " + length.name; };
    return {{"blank", {units.lengths({piece.blank.length_mm, piece.blank.width_mm})}},
            {"net area", {units.area.text(measures.area_mm2 / 1e6)}},
            {"print face", {units.area.text(measures.print_area_mm2 / 1e6)}},
            {"cut", {lengths(measures.cut_mm)}},
            {"crease", {lengths(measures.crease_mm)}},
            {"joint", {measures.joint_mm > 0 ? units.length(measures.joint_mm) : "none"}},
            {"scores along", {places_words(units, measures.scores.along_mm)}},
            {"scores across", {places_words(units, measures.scores.across_mm)}},
            {"made by", {stages_words(piece.made_by)}}};
}

ReportSection piece_section(const drawings::ShownUnits& units, const ShownPiece& piece) {
    const std::string count = piece.blank.count == 1 ? "" : fmt::format(", {} to a box", piece.blank.count);
    ReportSection section{piece.blank.piece.empty() ? "Blank" + count : piece.blank.piece + count};
    section.blocks.emplace_back(piece_facts(units, piece));
    section.blocks.emplace_back(drawings::blank_drawings(units, {piece.blank}));
    return section;
}

// Where a construction comes from, and what its note says besides.
struct Construction {
    std::string source, remark;
};

Construction construction_of(const std::string& note) {
    const std::string source = "from memory";
    if (note.rfind(source, 0) != 0) return {"", note};
    const std::size_t more = note.find_first_not_of(" ;,", source.size());
    return {source, more == std::string::npos ? "" : note.substr(more)};
}

Facts asked_style(const drawings::ShownUnits& units, const ShownStyle& style) {
    Facts facts = {{"inside", {units.lengths(style.inside_mm)}}, {"board", {style.board}}};
    for (const auto& [name, value] : style.measures) facts.push_back({name, {render::brief_number(value, 6)}});
    return facts;
}

}  // namespace

Report style_list_report(const plant_answers::StyleListAnswer& list) {
    ReportTable table{
        "styles", {text_column("code"), text_column("made by"), text_column("construction"), sentence_column("title")}};
    for (const ListedStyle& style : list.styles) {
        const Construction construction = construction_of(style.note);
        table.add({Code{style.code}, makers_words(style), construction.source, style.title});
        if (!construction.remark.empty()) table.rows.back().notes.push_back({construction.remark});
    }
    return {"styles", "styles", {}, {{"Styles", {table}}}};
}

Report style_report(const plant::Plant& plant, const ShownStyle& style) {
    const drawings::ShownUnits units(plant);
    Report report{
        "style", style.code, ReportHeading{style.code + " " + style.title, plant.name, asked_style(units, style)}, {}};
    if (!style.note.empty()) report.sections.push_back({"", {Note{"Construction: " + style.note}}});
    for (const ShownPiece& piece : style.pieces) report.sections.push_back(piece_section(units, piece));
    return report;
}

render::Drawings style_drawings(const plant::Plant& plant, const ShownStyle& style) {
    std::vector<blanks::FlatBlank> blanks;
    for (const ShownPiece& piece : style.pieces) blanks.push_back(piece.blank);
    return drawings::blank_drawings(drawings::ShownUnits(plant), blanks);
}

}  // namespace flutebook::plant_reports
