// Answers about styles, made by hand, as documents and reports.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "host/plant_answers/style_json.hpp"
#include "host/plant_reports/style_check_report.hpp"
#include "host/plant_reports/style_report.hpp"
#include "host/render/svg.hpp"
#include "host/render/text_report.hpp"
#include "tests/unit/blanks/drawn_blanks.hpp"

using namespace flutebook;
using Catch::Matchers::Contains;
using Kind = plant::Converter::Kind;

namespace {

plant_answers::ShownPiece piece_of(const std::string& name) {
    plant_answers::ShownPiece piece{{{Kind::die_cutter}, {Kind::folder_gluer}}, fixture::slotted_box().blank, {}};
    piece.blank.piece = name;
    piece.blank.count = 1;
    piece.blank.length_mm = 1440;
    piece.blank.width_mm = 559;
    piece.measures = {790000, 5820, 3810, 256, 770000, {{30, 433}, {151.5}}};
    return piece;
}

plant_answers::ShownStyle shown_style(std::vector<plant_answers::ShownPiece> pieces) {
    return {"0201", "Slotted box", "from memory", "B-140", {400, 300, 250}, {{"deep", 60}}, std::move(pieces)};
}

std::vector<std::string> keys_of(const nlohmann::json& object) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : object.items()) keys.push_back(key);
    return keys;
}

plant_answers::StyleTrial trial_with(const std::string& fault) {
    plant_answers::StyleTrial trial{"B", 3, {400, 300, 250}, "", {}};
    if (!fault.empty()) trial.proof.faults.push_back({blanks::FoldingFault::Kind::cutting, "", 2, {0, 1}, 12.5, fault});
    return trial;
}

}  // namespace

TEST_CASE("the document of a style has the figures of each piece, and null for the name of a style of one") {
    const auto json = nlohmann::json::parse(plant_answers::style_document(shown_style({piece_of("")})));
    CHECK(json["style"] == "0201");
    CHECK(json["title"] == "Slotted box");
    CHECK(json["note"] == "from memory");
    CHECK(json.contains("answer_version"));
    REQUIRE(json["pieces"].size() == 1);
    const auto& piece = json["pieces"][0];
    using Keys = std::vector<std::string>;
    CHECK(keys_of(piece) == Keys{"area_m2", "count", "crease_m", "cut_m", "joint_mm", "length_mm", "made_by", "piece",
                                 "print_area_m2", "scores", "width_mm"});
    CHECK(piece["piece"].is_null());
    CHECK(piece["made_by"] == nlohmann::json{"die-cutter", "folder-gluer"});
    CHECK(piece["cut_m"] == 5.82);
    CHECK(piece["crease_m"] == 3.81);
    CHECK(piece["scores"]["along_mm"] == nlohmann::json{30, 433});
    CHECK(piece["scores"]["across_mm"] == nlohmann::json{151.5});
    const auto set =
        nlohmann::json::parse(plant_answers::style_document(shown_style({piece_of("body"), piece_of("lid")})));
    CHECK(set["pieces"][1]["piece"] == "lid");
}

TEST_CASE("a stage of several kinds is spelled as a file of styles spells it") {
    CHECK(plant_answers::stage_text({Kind::printer, Kind::die_cutter}) == "printer or die-cutter");
}

TEST_CASE("the page of a style names its note, its measures and what makes it, and draws each piece") {
    const plant::Plant plant{};
    const auto style = shown_style({piece_of("body"), piece_of("lid")});
    const std::string text = render::to_text(plant_reports::style_report(plant, style));
    CHECK_THAT(text, Contains("0201 Slotted box") && Contains("Construction: from memory") && Contains("deep 60"));
    CHECK_THAT(text, Contains("die-cutter, then folder-gluer") && Contains("30, 433 mm") && Contains("5.820 m"));
    CHECK(plant_reports::style_drawings(plant, style).items.size() == 6);
    CHECK_THAT(render::svg_file(plant_reports::style_drawings(plant, style)), Contains("lid, half open"));
}

TEST_CASE("the list of styles says what makes each and where its construction comes from") {
    plant_answers::StyleListAnswer list;
    list.styles.push_back({"0110", "Sheet", "", {{}}, {""}, {}});
    list.styles.push_back({"0310",
                           "Tube with two caps",
                           "from memory",
                           {{{Kind::folder_gluer}}, {{Kind::die_cutter}}},
                           {"tube", "cap"},
                           {}});
    list.styles.push_back({"outline", "By a drawing", "", {}, {}, {}});
    const std::string text = render::to_text(plant_reports::style_list_report(list));
    CHECK_THAT(text,
               Contains("the corrugator alone") && Contains("folder-gluer; die-cutter") && Contains("from memory"));
    const auto json = nlohmann::json::parse(plant_answers::style_list_document(list));
    CHECK(json["styles"][0]["note"].is_null());
    CHECK(json["styles"][1]["pieces"] == nlohmann::json{"tube", "cap"});
}

TEST_CASE("the check of styles tells `folds`, or each fault with its size and flutes") {
    const plant::Plant plant{};
    plant_answers::StyleCheck check;
    check.styles.push_back({"0201", "Slotted box", "", true, {trial_with("")}, 0, 0, {}});
    CHECK(check.holds());
    CHECK_THAT(render::to_text(plant_reports::style_check_report(plant, check)),
               Contains("folds") && !Contains("not fold"));
    check.styles.push_back(
        {"X1", "Wrong box", "", true, {trial_with("f1 and f3 pass through one another by 12.5 mm")}, 0, 0, {}});
    const std::string text = render::to_text(plant_reports::style_check_report(plant, check));
    CHECK_THAT(text, Contains("X1 Wrong box: does not fold") &&
                         Contains("400 x 300 x 250 mm on B: f1 and f3 pass through one another by 12.5 mm"));
    const auto json = nlohmann::json::parse(plant_answers::style_check_document(check));
    CHECK(json["folds"] == false);
    CHECK(json["styles"][0]["folds"] == true);
    const auto& fault = json["styles"][1]["sizes"][0]["faults"][0];
    CHECK(fault["kind"] == "cutting");
    CHECK(fault["step"] == 3);
    CHECK(fault["amount"] == 12.5);
}

TEST_CASE("of a style with very many faults the first are told and the others counted") {
    plant_answers::StyleCheck check;
    check.styles.push_back(
        {"X1", "Wrong box", "", true, std::vector<plant_answers::StyleTrial>(30, trial_with("clash")), 0, 0, {}});
    const std::string text = render::to_text(plant_reports::style_check_report(plant::Plant{}, check));
    CHECK_THAT(text, Contains("and 18 more"));
}
