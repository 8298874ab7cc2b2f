// Reads what quote_json writes, and what release 1.0.0 wrote: its version 0 has the same figures without the page's
// texts.
#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <limits>
#include <nlohmann/json.hpp>

#include "host/answers/price_rules_json.hpp"
#include "host/answers/quote_json.hpp"
#include "host/base/date.hpp"
#include "host/plant/machine_list.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::answers {

namespace {

// Amounts are written with four places at most, so the nearest ten-thousandth is the same amount again.
Money amount_in(const Json& tree, const char* key) {
    constexpr int written_decimals = 4;
    return Money::rounded(tree.at(key).get<double>(), written_decimals).value();
}

std::optional<std::vector<NotInPrice>> not_in_price_in(const Json& json) {
    if (!json.contains("not_in_price")) return std::nullopt;
    std::vector<NotInPrice> result;
    for (const Json& entry : json.at("not_in_price")) {
        NotInPrice& item = result.emplace_back();
        item.plugin = entry.at("plugin");
        item.line = entry.at("line");
        item.title = entry.at("title");
        if (!entry.at("setting").is_null()) item.setting = entry.at("setting").get<std::string>();
        item.meaning = entry.at("meaning");
        if (!entry.at("amount").is_null()) item.amount = amount_in(entry, "amount");
        item.colours = entry.at("colours");
    }
    return result;
}

std::optional<CashMargin> cash_in(const Json& json) {
    if (!json.contains("break_even_quantity")) return std::nullopt;
    CashMargin result;
    result.per_run_cost = amount_in(json, "per_run_cost");
    result.price_less_cash_per_thousand = amount_in(json, "price_less_cash_per_thousand");
    if (const Json& quantity = json.at("break_even_quantity"); !quantity.is_null())
        result.break_even = quantity.get<double>();
    return result;
}

// A number that is not finite is written as null.
double number_or_nan(const Json& value) {
    return value.is_null() ? std::numeric_limits<double>::quiet_NaN() : value.get<double>();
}

std::string text_or_empty(const Json& tree, const char* key) {
    const auto found = tree.find(key);
    return found == tree.end() || found->is_null() ? std::string() : found->get<std::string>();
}

// The choice with this name. Throws the library's exception for an unknown word.
template <typename Choice, std::size_t count>
Choice choice_of(const std::array<Choice, count>& choices, const Json& word) {
    for (const Choice choice : choices)
        if (word == to_text(choice)) return choice;
    throw Json::other_error::create(599, fmt::format("unknown word {}", word.dump()), &word);
}

std::vector<double> by_step(const Json& pieces) {
    std::vector<double> result;
    for (const Json& json : pieces) result.push_back(json.is_null() ? 0 : json.get<double>());
    return result;
}

MassBalance mass_in(const Json& quote) {
    const Json& mass = quote.at("mass_kg");
    MassBalance result{mass.at("issued"), mass.at("adhesive"), mass.at("product"), {}, 0};
    for (const auto& loss : mass.at("loss").items()) {
        result.losses.push_back({loss.key(), "", {}, loss.value()});
        result.loss_kg += result.losses.back().total_kg;
    }
    if (!quote.contains("losses")) return result;
    const Json& losses = quote.at("losses");
    for (std::size_t i = 0; i < result.losses.size(); ++i) {
        result.losses[i].title = losses.at(i).at("title");
        result.losses[i].by_step_kg = losses.at(i).at("kg_by_step").get<std::vector<double>>();
    }
    return result;
}

CostLine line_in(const Json& json) {
    using contract::Behaviour;
    using contract::CostClass;
    static constexpr std::array classes = {CostClass::material, CostClass::energy, CostClass::system,
                                           CostClass::waste_management, CostClass::recovery};
    static constexpr std::array behaviours = {Behaviour::per_unit, Behaviour::per_run, Behaviour::period};
    CostLine line{};
    line.plugin = json.at("plugin");
    line.line = json.at("line");
    line.unit = json.at("unit");
    line.cost_class = choice_of(classes, json.at("class"));
    line.behaviour = choice_of(behaviours, json.at("behaviour"));
    line.step = json.at("step");
    if (!json.at("ply").is_null()) line.ply = json.at("ply").get<std::size_t>();
    line.quantity = json.at("quantity");
    line.rate = json.at("rate");
    line.amount = amount_in(json, "amount");
    return line;
}

std::vector<CostLine> lines_in(const Json& quote) {
    std::vector<CostLine> result;
    for (const Json& json : quote.at("lines")) result.push_back(line_in(json));
    if (!quote.contains("line_titles")) return result;
    for (std::size_t i = 0; i < result.size(); ++i) {
        const Json& titles = quote.at("line_titles").at(i);
        result[i].title = titles.at("title");
        result[i].step_name = titles.at("place");
        result[i].ply_name = titles.at("paper");
    }
    return result;
}

base::Place place_in(const std::string& text) {
    const auto number_after = [&](std::size_t colon) { return std::atoi(text.c_str() + colon + 1); };
    const std::size_t last = text.rfind(':');
    const std::size_t before = last == std::string::npos || last == 0 ? last : text.rfind(':', last - 1);
    if (last == std::string::npos || before == std::string::npos || number_after(before) == 0) return {text};
    return {text.substr(0, before), number_after(before), number_after(last)};
}

explain::TracedFigure figure_in(const Json& json) {
    using Kind = explain::TracedFigure::Kind;
    static constexpr std::array kinds = {Kind::amount, Kind::provided, Kind::fact, Kind::setting, Kind::formula};
    explain::TracedFigure result{};
    result.kind = choice_of(kinds, json.at("kind"));
    result.name = json.at("name");
    result.where = json.at("where");
    result.value = number_or_nan(json.at("value"));
    result.unit = json.at("unit");
    result.model = text_or_empty(json, "model");
    result.meaning = json.at("meaning");
    for (const Json& place : json.at("places")) result.places.push_back(place_in(place));
    result.inputs = json.at("inputs").get<std::vector<std::size_t>>();
    result.choice = text_or_empty(json, "choice");
    if (json.contains("charge") && !json.at("charge").is_null())
        result.charge = explain::Charge{number_or_nan(json["charge"].at("quantity")),
                                        number_or_nan(json["charge"].at("rate")), json["charge"].at("unit")};
    return result;
}

// Earlier releases keep what a line charges beside the figures of its trail.
void add_charge(explain::TracedFigure& amount, const Json& trail, const Json& lines) {
    if (amount.kind != explain::TracedFigure::Kind::amount || amount.charge) return;
    amount.charge = explain::Charge{number_or_nan(trail.at("quantity")), number_or_nan(trail.at("rate")), "1"};
    for (const Json& line : lines)
        if (line.at("line") == amount.name && line.at("plugin") == amount.model) amount.charge->unit = line.at("unit");
}

std::vector<explain::Trail> trails_in(const Json& quote) {
    std::vector<explain::Trail> result;
    if (!quote.contains("explain")) return result;
    for (const Json& json : quote.at("explain")) {
        explain::Trail trail;
        for (const Json& figure : json.at("figures")) trail.figures.push_back(figure_in(figure));
        if (!trail.figures.empty()) add_charge(trail.figures[0], json, quote.at("lines"));
        result.push_back(std::move(trail));
    }
    return result;
}

void read_layout(const Json& json, Quote& quote) {
    quote.quantity = json.at("quantity");
    quote.corrugator = json.at("corrugator");
    quote.is_bought = json.contains("bought_from");
    quote.route = json.at("route").get<std::vector<std::string>>();
    quote.roll_width_mm = json.at("roll_width_mm");
    quote.outs = json.at("outs");
    quote.trim_mm = json.at("trim_mm");
    quote.nx = json.at("nx");
    quote.ny = json.at("ny");
    quote.ups = json.at("ups");
    quote.chop_mm = json.at("chop_mm");
    quote.slit_mm = json.at("slit_mm");
    const Json& blank = json.at("blank");
    quote.blank = {blank.at("length_mm"), blank.at("width_mm"), blank.at("area_m2"), 0};
    quote.board_grammage_gsm = json.at("board_grammage");
    quote.web_length_m = json.at("web_length_m");
    quote.web_area_m2 = json.at("web_area_m2");
    quote.fed = by_step(json.at("fed"));
    quote.good = by_step(json.at("good"));
}

void read_amounts(const Json& json, Quote& quote) {
    quote.cost = amount_in(json, "cost");
    quote.cost_per_thousand = amount_in(json, "cost_per_thousand");
    if (json.contains("price_per_thousand")) {
        quote.price_per_thousand = amount_in(json, "price_per_thousand");
        quote.contribution_per_thousand = amount_in(json, "contribution_per_thousand");
    }
    quote.cost_per_m2 = amount_in(json, "cost_per_m2");
    quote.cost_per_tonne = amount_in(json, "cost_per_tonne");
    quote.waste_cost = amount_in(json, "waste_cost");
    quote.recovery = amount_in(json, "recovery");
    for (const Json& step : json.at("waste_by_step"))
        quote.waste_by_step.push_back(
            {step.at("name"), step.at("intake_kg"), step.at("loss_kg"), amount_in(step, "cost")});
    quote.candidates = json.at("candidates");
    for (const Json& way : json.at("runners_up"))
        quote.runners_up.push_back({way.at("candidate"), amount_in(way, "cost"), amount_in(way, "dearer_by"), {}, {}});
}

std::optional<Unmakeable> unmakeable_in(const Json& json) {
    if (!json.contains("refused")) return std::nullopt;
    Unmakeable result{json.at("quantity"), {}};
    for (const Json& way : json.at("refused")) result.refused.push_back({way.at("candidate"), way.at("limit")});
    return result;
}

RequestAnswer::Quantity quantity_in(const Json& json) {
    if (auto unmakeable = unmakeable_in(json)) return {std::nullopt, std::move(unmakeable)};
    Quote quote{};
    read_layout(json, quote);
    quote.mass = mass_in(json);
    quote.lines = lines_in(json);
    read_amounts(json, quote);
    quote.making = price_making_in(json);
    quote.not_in_price = not_in_price_in(json);
    quote.cash = cash_in(json);
    if (json.contains("machine_hours") && !json.at("machine_hours").is_null())
        quote.machine_hours = json.at("machine_hours").get<std::vector<double>>();
    quote.trails = trails_in(json);
    return {std::move(quote), std::nullopt};
}

// Of a set, which is the sum of its pieces.
RequestAnswer::Quantity set_in(const Json& json) {
    if (auto unmakeable = unmakeable_in(json)) return {std::nullopt, std::move(unmakeable)};
    SetQuote set{json.at("quantity"),
                 amount_in(json, "cost"),
                 amount_in(json, "cost_per_thousand"),
                 amount_in(json, "price_per_thousand"),
                 amount_in(json, "contribution_per_thousand"),
                 amount_in(json, "waste_cost"),
                 amount_in(json, "recovery")};
    set.making = price_making_in(json);
    set.not_in_price = not_in_price_in(json);
    set.cash = cash_in(json);
    return {std::nullopt, std::nullopt, std::move(set)};
}

RequestAnswer::Piece piece_in(const Json& json) {
    RequestAnswer::Piece result{json.at("piece"), json.at("count"), {}};
    for (const Json& quote : json.at("quotes")) result.quantities.push_back(quantity_in(quote));
    return result;
}

void read_converters(const Json& page, plant::Plant& plant) {
    for (const Json& json : page.at("converters")) {
        plant::Converter converter{};
        converter.code = json.at("code");
        const auto kind = box_styles::converter_kind(json.at("kind").get<std::string>());
        if (!kind) throw Json::other_error::create(599, "unknown kind of converter", &json);
        converter.kind = *kind;
        plant.converters.push_back(std::move(converter));
    }
}

void read_page(const Json& page, QuoteDocument& document) {
    orders::Request& request = document.answer.request;
    request.customer = page.at("customer");
    if (const auto date = base::parse_date(page.at("date").get_ref<const std::string&>())) request.date = *date;
    request.style = page.at("style");
    plant::Board board{};
    board.code = page.at("board");
    if (page.contains("bought_from")) {
        board.supplier = 0;
        document.plant.suppliers.emplace_back().code = page.at("bought_from");
    }
    document.plant.boards.push_back(std::move(board));
    if (const Json& inside = page.at("inside_mm"); !inside.is_null())
        request.inside = {inside.at(0), inside.at(1), inside.at(2)};
    if (const Json& outside = page.at("outside_mm"); !outside.is_null())
        request.outline = {outside.at(0), outside.at(1), 0};
    request.colours = page.at("colours");
    if (!page.at("margin").is_null()) request.margin = page.at("margin").get<double>();
    if (!page.at("explained").is_null()) document.asked.explain = page.at("explained").get<std::string>();
    read_converters(page, document.plant);
}

// Follows from the price and the cost, so it is worked out of documents that were written before they had it as well.
template <typename QuoteOrSet>
void add_sale(QuoteOrSet& quote, int minor_units) {
    quote.sale = order_profit(quote.price_per_thousand, quote.cost, quote.quantity, minor_units).value();
}

void add_sales(QuoteDocument& document) {
    const int minor_units = document.plant.currency_minor_units;
    for (RequestAnswer::Quantity& quantity : document.answer.quantities) {
        if (quantity.quote) add_sale(*quantity.quote, minor_units);
        if (quantity.set) add_sale(*quantity.set, minor_units);
    }
}

QuoteDocument document_in(const Json& tree, int version) {
    QuoteDocument result{};
    result.version = version;
    result.plant.name = tree.at("plant");
    result.plant.currency = tree.at("currency");
    const Json& request = tree.at("requests").at(0);
    result.answer.request.number = request.at("request");
    const bool is_set = request.contains("pieces");
    for (const Json& json : request.at("quotes")) {
        result.answer.quantities.push_back(is_set ? set_in(json) : quantity_in(json));
        result.answer.request.quantities.push_back(json.at("quantity"));
    }
    if (is_set)
        for (const Json& json : request.at("pieces")) result.answer.pieces.push_back(piece_in(json));
    if (version == 0) return result;
    result.plant.currency_minor_units = tree.at("currency_decimals");
    static constexpr std::array units = {plant::Units::metric, plant::Units::us};
    result.plant.units = choice_of(units, tree.at("units"));
    if (request.contains("fault")) result.answer.model_fault = request.at("fault").get<std::string>();
    if (request.contains("trim")) result.answer.trim = trim_answers::shared_trim_in(request.at("trim"));
    if (request.contains("warnings"))
        for (const Json& json : request.at("warnings"))
            result.answer.warnings.push_back({json.at("at"), json.at("text")});
    read_offer_terms(request, result.answer);
    result.answer.strength = strength_in(request);
    read_page(request.at("page"), result);
    add_sales(result);
    return result;
}

}  // namespace

QuoteDocument read_quote(const std::string& where, const std::string& text) {
    try {
        const Json tree = Json::parse(text);
        const Json version = tree.value("answer_version", Json(0));
        if (version != 0 && version != document_version)
            throw LedgerError(
                LedgerError::Kind::unfit,
                fmt::format("{}: the version of its answer is unknown: found {}; use the release that saved it, or a "
                            "later one: this one reads versions 0 to {}",
                            where, version.dump(), document_version));
        return document_in(tree, version.get<int>());
    } catch (const Json::exception&) {
        throw LedgerError(LedgerError::Kind::unfit,
                          fmt::format("{}: its part answer.json cannot be read; run `flutebook verify`", where));
    } catch (const std::bad_optional_access&) {
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("{}: an amount in its part answer.json is too large; run `flutebook verify`", where));
    }
}

}  // namespace flutebook::answers
