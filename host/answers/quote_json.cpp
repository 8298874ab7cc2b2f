#include "host/answers/quote_json.hpp"

#include <cstddef>
#include <nlohmann/json.hpp>

#include "host/answers/place_text.hpp"

namespace flutebook::answers {

namespace {

using Json = nlohmann::ordered_json;
using services::Quote;

Json money(Money amount) {
    return amount.to_double();
}

Json by_step(const std::vector<double>& pieces, std::size_t first_step) {
    Json made = Json::array();
    for (std::size_t step = 0; step < pieces.size(); ++step)
        made.push_back(step < first_step ? Json(nullptr) : Json(pieces[step]));
    return made;
}

Json mass_json(const services::MassBalance& mass) {
    Json loss = Json::object();
    for (const auto& cause : mass.losses) loss[cause.cause] = cause.total_kg;
    return {{"issued", mass.issued_kg},
            {"adhesive", mass.adhesive_kg},
            {"product", mass.product_kg},
            {"loss", std::move(loss)}};
}

Json line_json(const services::CostLine& line) {
    return {{"plugin", line.plugin},
            {"line", line.line},
            {"step", line.step},
            {"ply", line.ply ? Json(*line.ply) : Json(nullptr)},
            {"class", contract::to_text(line.cost_class)},
            {"behaviour", contract::to_text(line.behaviour)},
            {"quantity", line.quantity},
            {"unit", line.unit},
            {"rate", line.rate},
            {"amount", money(line.amount)}};
}

Json figure_json(const explain::TracedFigure& figure) {
    static constexpr const char* kinds[] = {"amount", "provided", "fact", "setting"};
    Json places = Json::array();
    for (const base::Place& place : figure.places) places.push_back(place_text(place));
    return {{"kind", kinds[static_cast<std::size_t>(figure.kind)]},
            {"name", figure.name},
            {"where", figure.where},
            {"value", figure.value},
            {"unit", figure.unit},
            {"model", figure.model.empty() ? Json(nullptr) : Json(figure.model)},
            {"meaning", figure.meaning},
            {"places", std::move(places)},
            {"inputs", figure.inputs}};
}

Json trails_json(const std::vector<explain::Trail>& trails) {
    Json made = Json::array();
    for (const explain::Trail& trail : trails) {
        Json figures = Json::array();
        for (const explain::TracedFigure& figure : trail.figures) figures.push_back(figure_json(figure));
        made.push_back({{"quantity", trail.quantity}, {"rate", trail.rate}, {"figures", std::move(figures)}});
    }
    return made;
}

void add_layout(Json& made, const Quote& quote) {
    made["corrugator"] = quote.corrugator;
    made["route"] = quote.route;
    made["roll_width_mm"] = quote.roll_width_mm;
    made["outs"] = quote.outs;
    made["trim_mm"] = quote.trim_mm;
    made["ups"] = quote.ups;
    made["chop_mm"] = quote.chop_mm;
    made["slit_mm"] = quote.slit_mm;
    made["blank"] = {
        {"length_mm", quote.blank.length_mm}, {"width_mm", quote.blank.width_mm}, {"area_m2", quote.blank.area_m2}};
    made["board_grammage"] = quote.board_grammage_gsm;
    made["web_length_m"] = quote.web_length_m;
    made["fed"] = by_step(quote.fed, 1);
    made["good"] = by_step(quote.good, 0);
}

void add_more(Json& made, const Quote& quote) {
    made["cost_per_m2"] = money(quote.cost_per_m2);
    made["cost_per_tonne"] = money(quote.cost_per_tonne);
    made["nx"] = quote.nx;
    made["ny"] = quote.ny;
    made["web_area_m2"] = quote.web_area_m2;
    made["waste_by_step"] = Json::array();
    for (std::size_t step = 0; step < quote.waste_by_step.size(); ++step) {
        const services::StepWaste& own = quote.waste_by_step[step];
        made["waste_by_step"].push_back({{"step", step},
                                         {"name", own.step_name},
                                         {"intake_kg", own.intake_kg},
                                         {"loss_kg", own.loss_kg},
                                         {"cost", money(own.cost)}});
    }
    made["candidates"] = quote.candidates;
    made["runners_up"] = Json::array();
    for (const services::RunnerUp& own : quote.runners_up)
        made["runners_up"].push_back(
            {{"candidate", own.candidate}, {"cost", money(own.cost)}, {"dearer_by", money(own.dearer_by)}});
}

Json quote_json(const Quote& quote, const services::QuoteOptions& asked) {
    Json made;
    made["quantity"] = quote.quantity;
    add_layout(made, quote);
    made["mass_kg"] = mass_json(quote.mass);
    made["lines"] = Json::array();
    for (const services::CostLine& line : quote.lines) made["lines"].push_back(line_json(line));
    made["cost"] = money(quote.cost);
    made["cost_per_thousand"] = money(quote.cost_per_thousand);
    made["price_per_thousand"] = money(quote.price_per_thousand);
    made["contribution_per_thousand"] = money(quote.contribution_per_thousand);
    made["waste_cost"] = money(quote.waste_cost);
    made["recovery"] = money(quote.recovery);
    add_more(made, quote);
    if (asked.explain) made["explain"] = trails_json(quote.trails);
    return made;
}

Json unmakeable_json(const services::Unmakeable& own) {
    Json refused = Json::array();
    for (const geometry::Refused& way : own.refused)
        refused.push_back({{"candidate", way.candidate}, {"limit", way.limit}});
    return {{"quantity", own.quantity}, {"refused", std::move(refused)}};
}

}  // namespace

Json quote_document(const plant::Plant& plant) {
    return {{"plant", plant.name}, {"currency", plant.currency}, {"requests", Json::array()}};
}

Json request_json(const services::RequestAnswer& answer, const services::QuoteOptions& asked) {
    Json made = {{"request", answer.request.number}, {"quotes", Json::array()}};
    for (const auto& own : answer.quantities)
        made["quotes"].push_back(own.quote ? quote_json(*own.quote, asked) : unmakeable_json(*own.unmakeable));
    if (answer.model_fault) made["fault"] = *answer.model_fault;
    return made;
}

}  // namespace flutebook::answers
