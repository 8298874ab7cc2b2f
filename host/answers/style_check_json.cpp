// Keys in the order that style_json.hpp gives them.
#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/style_json.hpp"

namespace flutebook::answers {

namespace {

using blanks::FoldingFault;

const char* kind_text(FoldingFault::Kind kind) {
    switch (kind) {
        case FoldingFault::Kind::landing:
            return "landing";
        case FoldingFault::Kind::cutting:
            return "cutting";
        case FoldingFault::Kind::size:
            return "size";
        case FoldingFault::Kind::reach:
            return "reach";
        case FoldingFault::Kind::cover:
            return "cover";
        case FoldingFault::Kind::joint:
            return "joint";
        case FoldingFault::Kind::fit:
            return "fit";
    }
    return "";
}

Json fault_json(const FoldingFault& fault) {
    return {{"kind", kind_text(fault.kind)},
            {"piece", fault.piece.empty() ? Json() : Json(fault.piece)},
            {"step", fault.step ? Json(*fault.step + 1) : Json()},
            {"amount", fault.amount},
            {"text", fault.text}};
}

Json range_json(const std::optional<blanks::InsideRange>& range) {
    return range ? Json{{"pushed_in", range->pushed_in_mm}, {"pushed_out", range->pushed_out_mm}} : Json();
}

Json proved_json(const blanks::PieceProof& piece) {
    Json inside = Json::array(), walls = Json::array();
    for (const auto& range : piece.inside_mm) inside.push_back(range_json(range));
    for (const auto& wall : piece.walls_mm) walls.push_back(wall ? Json(*wall) : Json());
    return {{"inside_mm", inside}, {"walls_mm", walls}};
}

Json trial_json(const StyleTrial& trial) {
    Json pieces = Json::array(), faults = Json::array();
    for (const blanks::PieceProof& piece : trial.proof.pieces) pieces.push_back(proved_json(piece));
    for (const FoldingFault& fault : trial.proof.faults) faults.push_back(fault_json(fault));
    return {{"flutes", trial.flutes},
            {"caliper_mm", trial.caliper_mm},
            {"inside_mm", trial.inside_mm},
            {"refused", trial.refusal.empty() ? Json() : Json(trial.refusal)},
            {"pieces", pieces},
            {"faults", faults}};
}

Json trials_json(const std::vector<StyleTrial>& trials) {
    Json result = Json::array();
    for (const StyleTrial& trial : trials) result.push_back(trial_json(trial));
    return result;
}

Json checked_json(const CheckedStyle& style) {
    return {{"style", style.code},
            {"title", style.title},
            {"note", style.note.empty() ? Json() : Json(style.note)},
            {"folds", style.holds()},
            {"is_folded", style.is_folded},
            {"sizes", trials_json(style.trials)},
            {"random_boxes", style.random_boxes},
            {"refused_boxes", style.refused_boxes},
            {"wrong_boxes", trials_json(style.wrong_boxes)}};
}

}  // namespace

std::string style_check_document(const StyleCheck& check) {
    Json styles = Json::array();
    for (const CheckedStyle& style : check.styles) styles.push_back(checked_json(style));
    return document_text("style check", {{"folds", check.holds()}, {"styles", styles}});
}

}  // namespace flutebook::answers
