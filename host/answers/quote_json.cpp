#include "host/answers/quote_json.hpp"

#include <cstddef>
#include <nlohmann/json.hpp>
#include <set>
#include <utility>

#include "host/answers/json_parts.hpp"
#include "host/answers/price_rules_json.hpp"
#include "host/answers/request_json.hpp"
#include "host/base/place.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::answers {

namespace {

Json by_step(const std::vector<double>& pieces, std::size_t first_step) {
    Json result = Json::array();
    for (std::size_t step = 0; step < pieces.size(); ++step)
        result.push_back(step < first_step ? Json(nullptr) : Json(pieces[step]));
    return result;
}

Json mass_json(const MassBalance& mass) {
    Json loss = Json::object();
    for (const auto& cause : mass.losses) loss[cause.cause] = cause.total_kg;
    return {{"issued", mass.issued_kg},
            {"adhesive", mass.adhesive_kg},
            {"product", mass.product_kg},
            {"loss", std::move(loss)}};
}

Json losses_json(const MassBalance& mass) {
    Json result = Json::array();
    for (const auto& cause : mass.losses)
        result.push_back({{"cause", cause.cause}, {"title", cause.title}, {"kg_by_step", cause.by_step_kg}});
    return result;
}

Json line_titles_json(const std::vector<CostLine>& lines) {
    Json result = Json::array();
    for (const CostLine& line : lines)
        result.push_back({{"title", line.title}, {"place", line.step_name}, {"paper", line.ply_name}});
    return result;
}

Json line_json(const CostLine& line) {
    return {{"plugin", line.plugin},
            {"line", line.line},
            {"step", line.step},
            {"ply", line.ply ? Json(*line.ply) : Json(nullptr)},
            {"class", contract::to_text(line.cost_class)},
            {"behaviour", contract::to_text(line.behaviour)},
            {"quantity", line.quantity},
            {"unit", line.unit},
            {"rate", line.rate},
            {"amount", amount_json(line.amount)}};
}

Json charge_json(const std::optional<explain::Charge>& charge) {
    if (!charge) return nullptr;
    return {{"quantity", charge->quantity}, {"unit", charge->unit}, {"rate", charge->rate}};
}

Json figure_json(const explain::TracedFigure& figure) {
    Json places = Json::array();
    for (const base::Place& place : figure.places) places.push_back(base::place_text(place));
    return {{"kind", to_text(figure.kind)},
            {"name", figure.name},
            {"where", figure.where},
            {"value", figure.value},
            {"unit", figure.unit},
            {"model", figure.model.empty() ? Json(nullptr) : Json(figure.model)},
            {"meaning", figure.meaning},
            {"places", std::move(places)},
            {"inputs", figure.inputs},
            {"charge", charge_json(figure.charge)},
            {"choice", figure.choice.empty() ? Json(nullptr) : Json(figure.choice)}};
}

Json trails_json(const std::vector<explain::Trail>& trails) {
    Json result = Json::array();
    for (const explain::Trail& trail : trails) {
        Json figures = Json::array();
        for (const explain::TracedFigure& figure : trail.figures) figures.push_back(figure_json(figure));
        const std::optional<explain::Charge> charge = trail.figures.empty() ? std::nullopt : trail.figures[0].charge;
        result.push_back({{"quantity", charge ? Json(charge->quantity) : Json(nullptr)},
                          {"rate", charge ? Json(charge->rate) : Json(nullptr)},
                          {"figures", std::move(figures)}});
    }
    return result;
}

Json provided_json(const std::vector<ProvidedNumber>& numbers) {
    Json result = Json::array();
    for (const ProvidedNumber& number : numbers) {
        const auto at = [&](contract::Axis axis) { return number.axis == axis ? Json(number.index) : Json(nullptr); };
        result.push_back({{"name", number.name},
                          {"step", at(contract::Axis::step)},
                          {"ply", at(contract::Axis::ply)},
                          {"value", number.value},
                          {"unit", number.unit}});
    }
    return result;
}

void add_layout(Json& result, const Quote& quote) {
    result["corrugator"] = quote.corrugator;
    result["route"] = quote.route;
    result["roll_width_mm"] = quote.roll_width_mm;
    result["outs"] = quote.outs;
    result["trim_mm"] = quote.trim_mm;
    result["ups"] = quote.ups;
    result["chop_mm"] = quote.chop_mm;
    result["slit_mm"] = quote.slit_mm;
    result["blank"] = {
        {"length_mm", quote.blank.length_mm}, {"width_mm", quote.blank.width_mm}, {"area_m2", quote.blank.area_m2}};
    result["board_grammage"] = quote.board_grammage_gsm;
    result["web_length_m"] = quote.web_length_m;
    result["fed"] = by_step(quote.fed, 1);
    result["good"] = by_step(quote.good, 0);
}

void add_more(Json& result, const Quote& quote) {
    result["cost_per_m2"] = amount_json(quote.cost_per_m2);
    result["cost_per_tonne"] = amount_json(quote.cost_per_tonne);
    result["nx"] = quote.nx;
    result["ny"] = quote.ny;
    result["web_area_m2"] = quote.web_area_m2;
    result["waste_by_step"] = Json::array();
    for (std::size_t step = 0; step < quote.waste_by_step.size(); ++step) {
        const StepWaste& step_waste = quote.waste_by_step[step];
        result["waste_by_step"].push_back({{"step", step},
                                           {"name", step_waste.step_name},
                                           {"intake_kg", step_waste.intake_kg},
                                           {"loss_kg", step_waste.loss_kg},
                                           {"cost", amount_json(step_waste.cost)}});
    }
    result["candidates"] = quote.candidates;
    result["runners_up"] = Json::array();
    for (const RunnerUp& runner_up : quote.runners_up)
        result["runners_up"].push_back({{"candidate", runner_up.candidate},
                                        {"cost", amount_json(runner_up.cost)},
                                        {"dearer_by", amount_json(runner_up.dearer_by)}});
}

void add_sale(Json& result, const OrderProfit& sale) {
    result["order_value"] = amount_json(sale.order_value);
    result["profit"] = amount_json(sale.profit);
    result["profit_share"] = sale.profit_share;
}

// Nothing of a document that was written before it was known.
void add_cash(Json& result, const std::optional<CashMargin>& cash) {
    if (!cash) return;
    result["per_run_cost"] = amount_json(cash->per_run_cost);
    result["price_less_cash_per_thousand"] = amount_json(cash->price_less_cash_per_thousand);
    result["break_even_quantity"] = cash->break_even ? Json(*cash->break_even) : Json(nullptr);
}

// Nothing of a document that was written before it was known.
void add_not_in_price(Json& result, const std::optional<std::vector<NotInPrice>>& items) {
    if (items) result["not_in_price"] = not_in_price_json(*items);
}

// Which key a quote has only where it is of boxes.
enum class Priced { box, piece };

Json quote_json(const Quote& quote, const QuoteOptions& asked, Priced priced) {
    Json result;
    result["quantity"] = quote.quantity;
    add_layout(result, quote);
    result["mass_kg"] = mass_json(quote.mass);
    result["lines"] = Json::array();
    for (const CostLine& line : quote.lines) result["lines"].push_back(line_json(line));
    result["cost"] = amount_json(quote.cost);
    result["cost_per_thousand"] = amount_json(quote.cost_per_thousand);
    if (priced == Priced::box) {
        result["price_per_thousand"] = amount_json(quote.price_per_thousand);
        result["contribution_per_thousand"] = amount_json(quote.contribution_per_thousand);
    }
    result["waste_cost"] = amount_json(quote.waste_cost);
    result["recovery"] = amount_json(quote.recovery);
    add_more(result, quote);
    result["losses"] = losses_json(quote.mass);
    result["line_titles"] = line_titles_json(quote.lines);
    if (priced == Priced::box) {
        add_sale(result, quote.sale);
        add_price_making(result, quote.making);
    }
    add_not_in_price(result, quote.not_in_price);
    result["machine_hours"] = quote.machine_hours.empty() ? Json(nullptr) : Json(quote.machine_hours);
    add_cash(result, quote.cash);
    if (quote.is_bought) result["bought_from"] = quote.corrugator;
    if (asked.explain) result["explain"] = trails_json(quote.trails);
    if (asked.provided) result["provided"] = provided_json(quote.provided);
    return result;
}

Json set_json(const SetQuote& set) {
    Json result = {{"quantity", set.quantity},
                   {"cost", amount_json(set.cost)},
                   {"cost_per_thousand", amount_json(set.cost_per_thousand)},
                   {"price_per_thousand", amount_json(set.price_per_thousand)},
                   {"contribution_per_thousand", amount_json(set.contribution_per_thousand)},
                   {"waste_cost", amount_json(set.waste_cost)},
                   {"recovery", amount_json(set.recovery)}};
    add_sale(result, set.sale);
    add_price_making(result, set.making);
    add_not_in_price(result, set.not_in_price);
    add_cash(result, set.cash);
    return result;
}

Json unmakeable_json(const Unmakeable& unmakeable) {
    Json refused = Json::array();
    for (const geometry::Refused& way : unmakeable.refused)
        refused.push_back({{"candidate", way.candidate}, {"limit", way.limit}});
    return {{"quantity", unmakeable.quantity}, {"refused", std::move(refused)}};
}

Json quantities_json(const std::vector<RequestAnswer::Quantity>& quantities, const QuoteOptions& asked, Priced priced) {
    Json result = Json::array();
    for (const auto& quantity : quantities) {
        if (quantity.quote)
            result.push_back(quote_json(*quantity.quote, asked, priced));
        else
            result.push_back(quantity.set ? set_json(*quantity.set) : unmakeable_json(*quantity.unmakeable));
    }
    return result;
}

Json pieces_json(const std::vector<RequestAnswer::Piece>& pieces, const QuoteOptions& asked) {
    Json result = Json::array();
    for (const auto& piece : pieces)
        result.push_back({{"piece", piece.name},
                          {"count", piece.count},
                          {"quotes", quantities_json(piece.quantities, asked, Priced::piece)}});
    return result;
}

Json converters_json(const plant::Plant& plant, const RequestAnswer& answer) {
    std::set<std::string> codes;
    const auto add = [&](const std::vector<RequestAnswer::Quantity>& quantities) {
        for (const auto& quantity : quantities)
            if (quantity.quote) codes.insert(quantity.quote->route.begin(), quantity.quote->route.end());
    };
    add(answer.quantities);
    for (const auto& piece : answer.pieces) add(piece.quantities);
    Json result = Json::array();
    for (const std::string& code : codes)
        if (const plant::Converter* converter = plant.find_converter(code))
            result.push_back({{"code", code}, {"kind", box_styles::spelled(converter->kind)}});
    return result;
}

Json way_json(const ForcedWay& way) {
    const auto number = [](const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); };
    return {{"corrugator", way.corrugator ? Json(*way.corrugator) : Json(nullptr)},
            {"roll_width_mm", number(way.roll_width_mm)},
            {"ups", number(way.ups)}};
}

Json page_json(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked) {
    const orders::Request& request = answer.request;
    Json result = {{"customer", request.customer},
                   {"date", base::to_string(request.date)},
                   {"style", request.style},
                   {"board", plant.boards.at(request.board).code}};
    result["inside_mm"] = nullptr;
    result["outside_mm"] = nullptr;
    if (const auto& inside = request.inside)
        result["inside_mm"] = {inside->length_mm, inside->width_mm, inside->height_mm};
    if (const auto& outline = request.outline) result["outside_mm"] = {outline->length_mm, outline->width_mm};
    result["colours"] = request.colours;
    result["margin"] = request.margin ? Json(*request.margin) : Json(nullptr);
    result["explained"] = asked.explain ? Json(*asked.explain) : Json(nullptr);
    result["converters"] = converters_json(plant, answer);
    if (asked.way.is_any()) result["asked_way"] = way_json(asked.way);
    const auto* supplier = plant.supplier_of(plant.boards.at(request.board));
    if (supplier != nullptr) result["bought_from"] = supplier->code;
    return result;
}

Json quote_document(const plant::Plant& plant, const std::vector<base::Warning>& warnings) {
    return document("quote", {{"plant", plant.name},
                              {"currency", plant.currency},
                              {"currency_decimals", plant.currency_minor_units},
                              {"units", to_text(plant.units)},
                              {"warnings", warnings_json(warnings)},
                              {"requests", Json::array()}});
}

}  // namespace

QuoteStream::QuoteStream(const plant::Plant& plant, const std::vector<base::Warning>& warnings, QuoteOptions asked)
    : plant_(plant), asked_(std::move(asked)), list_(quote_document(plant, warnings)) {}

Json request_json(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked) {
    Json result = {{"request", answer.request.number},
                   {"quotes", quantities_json(answer.quantities, asked, Priced::box)}};
    if (!answer.pieces.empty()) result["pieces"] = pieces_json(answer.pieces, asked);
    if (answer.model_fault) result["fault"] = *answer.model_fault;
    if (answer.trim) result["trim"] = trim_answers::shared_trim_json(*answer.trim);
    result["warnings"] = warnings_json(answer.warnings);
    add_offer_terms(result, answer);
    add_strength(result, answer.strength);
    result["page"] = page_json(plant, answer, asked);
    return result;
}

std::string QuoteStream::add(const RequestAnswer& answer, const std::string& saved, const std::string& understood) {
    Json result = request_json(plant_, answer, asked_);
    if (!saved.empty()) result["saved"] = saved;
    if (!understood.empty()) result["understood"] = understood;
    return list_.add(result);
}

std::string quote_text(const plant::Plant& plant, const RequestAnswer& answer, const QuoteOptions& asked) {
    QuoteStream stream(plant, {}, asked);
    const std::string quote = stream.add(answer, "");
    return stream.begin() + quote + stream.end();
}

}  // namespace flutebook::answers
