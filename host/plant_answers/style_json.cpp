// Keys in the order that the header gives them.
#include "host/plant_answers/style_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::plant_answers {

namespace {

constexpr double mm_per_m = 1000, one_mm2_in_m2 = 1e-6;

answers::Json named_or_null(const std::string& text) {
    return text.empty() ? answers::Json() : answers::Json(text);
}

answers::Json stages_json(const std::vector<box_styles::Stage>& stages) {
    answers::Json result = answers::Json::array();
    for (const box_styles::Stage& stage : stages) result.push_back(stage_text(stage));
    return result;
}

answers::Json listed_json(const ListedStyle& style) {
    answers::Json pieces = answers::Json::array(), measures = answers::Json::array();
    for (const std::string& piece : style.pieces)
        if (!piece.empty()) pieces.push_back(piece);
    for (const box_styles::AskedMeasure& measure : style.asks)
        measures.push_back({{"name", measure.name},
                            {"default", measure.initial.text},
                            {"low", measure.low.text},
                            {"high", measure.high.text},
                            {"says", measure.says}});
    return {{"code", style.code},
            {"title", style.title},
            {"note", named_or_null(style.note)},
            {"made_by", style.made_by.empty() ? answers::Json::array() : stages_json(style.made_by.front())},
            {"pieces", pieces},
            {"measures", measures}};
}

answers::Json piece_json(const ShownPiece& piece) {
    const blanks::FlatMeasures& measures = piece.measures;
    return {{"piece", named_or_null(piece.blank.piece)},
            {"count", piece.blank.count},
            {"made_by", stages_json(piece.made_by)},
            {"length_mm", piece.blank.length_mm},
            {"width_mm", piece.blank.width_mm},
            {"area_m2", measures.area_mm2 * one_mm2_in_m2},
            {"cut_m", measures.cut_mm / mm_per_m},
            {"crease_m", measures.crease_mm / mm_per_m},
            {"joint_mm", measures.joint_mm},
            {"print_area_m2", measures.print_area_mm2 * one_mm2_in_m2},
            {"scores", {{"along_mm", measures.scores.along_mm}, {"across_mm", measures.scores.across_mm}}}};
}

}  // namespace

std::string stage_text(const box_styles::Stage& stage) {
    std::string result;
    for (const plant::Converter::Kind kind : stage)
        result += (result.empty() ? "" : " or ") + std::string(box_styles::spelled(kind));
    return result;
}

std::string style_list_document(const StyleListAnswer& list) {
    answers::Json styles = answers::Json::array();
    for (const ListedStyle& style : list.styles) styles.push_back(listed_json(style));
    return answers::document_text("style list", {{"styles", styles}});
}

std::string style_document(const ShownStyle& style) {
    answers::Json pieces = answers::Json::array();
    for (const ShownPiece& piece : style.pieces) pieces.push_back(piece_json(piece));
    return answers::document_text(
        "style",
        {{"style", style.code}, {"title", style.title}, {"note", named_or_null(style.note)}, {"pieces", pieces}});
}

}  // namespace flutebook::plant_answers
