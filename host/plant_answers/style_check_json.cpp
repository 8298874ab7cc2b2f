// Keys in the order that style_json.hpp gives them.
#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/plant_answers/style_json.hpp"

namespace flutebook::plant_answers {

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
        case FoldingFault::Kind::side:
            return "side";
    }
    return "";
}

answers::Json fault_json(const FoldingFault& fault) {
    return {{"kind", kind_text(fault.kind)},
            {"piece", fault.piece.empty() ? answers::Json() : answers::Json(fault.piece)},
            {"step", fault.step ? answers::Json(*fault.step + 1) : answers::Json()},
            {"amount", fault.amount},
            {"text", fault.text}};
}

answers::Json range_json(const std::optional<blanks::InsideRange>& range) {
    return range ? answers::Json{{"pushed_in", range->pushed_in_mm}, {"pushed_out", range->pushed_out_mm}}
                 : answers::Json();
}

answers::Json proved_json(const blanks::PieceProof& piece) {
    answers::Json inside = answers::Json::array(), walls = answers::Json::array();
    for (const auto& range : piece.inside_mm) inside.push_back(range_json(range));
    for (const auto& wall : piece.walls_mm) walls.push_back(wall ? answers::Json(*wall) : answers::Json());
    return {{"inside_mm", inside}, {"walls_mm", walls}};
}

answers::Json trial_json(const StyleTrial& trial) {
    answers::Json pieces = answers::Json::array(), faults = answers::Json::array();
    for (const blanks::PieceProof& piece : trial.proof.pieces) pieces.push_back(proved_json(piece));
    for (const FoldingFault& fault : trial.proof.faults) faults.push_back(fault_json(fault));
    return {{"flutes", trial.flutes},
            {"caliper_mm", trial.caliper_mm},
            {"inside_mm", trial.inside_mm},
            {"refused", trial.refusal.empty() ? answers::Json() : answers::Json(trial.refusal)},
            {"pieces", pieces},
            {"faults", faults}};
}

answers::Json trials_json(const std::vector<StyleTrial>& trials) {
    answers::Json result = answers::Json::array();
    for (const StyleTrial& trial : trials) result.push_back(trial_json(trial));
    return result;
}

answers::Json checked_json(const CheckedStyle& style) {
    return {{"style", style.code},
            {"title", style.title},
            {"note", style.note.empty() ? answers::Json() : answers::Json(style.note)},
            {"folds", style.holds()},
            {"is_folded", style.is_folded},
            {"sizes", trials_json(style.trials)},
            {"random_boxes", style.random_boxes},
            {"refused_boxes", style.refused_boxes},
            {"wrong_boxes", trials_json(style.wrong_boxes)}};
}

}  // namespace

std::string style_check_document(const StyleCheck& check) {
    answers::Json styles = answers::Json::array();
    for (const CheckedStyle& style : check.styles) styles.push_back(checked_json(style));
    return answers::document_text("style check", {{"folds", check.holds()}, {"styles", styles}});
}

}  // namespace flutebook::plant_answers
