// A request is read field by field, then checked against the plant: what it asks for must be there on that day.
#include "host/orders/request.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <unordered_set>
#include <utility>

#include "host/base/near_spellings.hpp"
#include "host/base/quoted_text.hpp"
#include "host/base/yaml/document.hpp"
#include "host/base/yaml/file.hpp"
#include "host/fields/map_reader.hpp"
#include "host/orders/enquiry_words.hpp"
#include "host/orders/request_keys.hpp"
#include "host/orders/style_reader.hpp"
#include "host/plant/machine_list.hpp"

namespace flutebook::orders {

namespace {

template <typename T>
std::vector<std::string> codes_of(const std::vector<T>& things) {
    std::vector<std::string> codes;
    for (const auto& thing : things) codes.push_back(thing.code);
    return codes;
}

std::vector<double> read_quantities(const fields::Field& list) {
    std::vector<double> quantities;
    std::unordered_set<double> known;  // of what is no number nothing is kept
    for (const auto& item : list.items_at_least_one()) {
        const double quantity = item.number("1", fields::range::ordered);
        if (!std::isnan(quantity) && !known.insert(quantity).second)
            item.complain(fmt::format("asked for twice: found {}, expected each quantity once", quantity));
        quantities.push_back(quantity);
    }
    return quantities;
}

// `[2,500]` for 2500: nothing stands between two quantities but the sign of a list, the first is of a digit or two, and
// the second of three.
std::vector<base::Warning> thousands_set_apart(const fields::Field& list) {
    std::vector<base::Warning> doubts;
    const auto is_whole = [](const base::Node& node) { return is_whole_number(node.text); };
    const std::vector<base::Node> none;
    const auto& items = list.is_list() ? list.node()->items : none;
    for (std::size_t next = 1; next < items.size(); ++next) {
        const base::Node& first = items[next - 1];
        const base::Node& second = items[next];
        const bool is_beside = first.place.line == second.place.line &&
                               second.place.column == first.place.column + static_cast<int>(first.text.size()) + 1;
        if (!is_beside || !is_whole(first) || !is_whole(second) || first.text.size() > 2 || second.text.size() != 3)
            continue;
        doubts.push_back({base::place_text(first.place),
                          fmt::format("quantities: unusual: found {} and {}; if one number was meant, write {}{}",
                                      first.text, second.text, first.text, second.text)});
    }
    return doubts;
}

class RouteReader {
public:
    explicit RouteReader(const plant::Plant& plant)
        : plant_(plant), converters_(codes_of(plant.converters)), corrugators_(codes_of(plant.corrugators)) {}

    std::vector<std::size_t> read(const fields::Field& list, const box_styles::Style* style) const {
        std::vector<std::size_t> route;
        bool is_known = style != nullptr && list.is_list();
        for (const auto& item : list.items()) {
            const auto machine = read_machine(item);
            is_known = is_known && machine.has_value();
            if (!machine) continue;
            if (std::find(route.begin(), route.end(), *machine) != route.end())
                item.complain("a machine twice: found " + base::shown(item.text()) +
                              ", expected each machine at most once");
            else
                route.push_back(*machine);
        }
        if (is_known) check_route(list, route, plant_, *style);
        return route;
    }

private:
    std::optional<std::size_t> read_machine(const fields::Field& item) const {
        const auto code = item.text();
        const auto found = std::find(converters_.begin(), converters_.end(), code);
        if (found != converters_.end()) return static_cast<std::size_t>(found - converters_.begin());
        if (std::find(corrugators_.begin(), corrugators_.end(), code) != corrugators_.end())
            item.complain("a corrugator: found " + base::shown(code) +
                          ", expected converters only; every route starts at a corrugator");
        else
            item.complain_unknown_code("converter", code, converters_);
        return std::nullopt;
    }

    const plant::Plant& plant_;
    std::vector<std::string> converters_, corrugators_;
};

std::vector<plant::ModelSettings> read_extras(const fields::Field& map, const plant::Plant& plant) {
    std::vector<plant::ModelSettings> result;
    std::vector<std::string> models;
    for (const auto& model : plant.models) models.push_back(model.id);
    for (const auto& entry : map.entries()) {
        if (std::find(models.begin(), models.end(), entry.key()) == models.end())
            entry.about_key().complain_unknown("model", entry.key(), models);
        result.push_back(plant::read_model_extras(entry));
    }
    return result;
}

// People write it, since other places ask for it; a request has no say in it.
void refuse_ups(fields::MapReader& form) {
    const auto* map = form.map().node();
    if (map != nullptr && map->find("ups") != nullptr)
        form.field("ups").complain_of_key(
            "not for a request: the layout chooses the boxes on a sheet, and a folder-gluer makes one; take it out");
}

// How the ledger writes the number of a quote.
std::string read_copied_from(const fields::Field& field) {
    auto number = field.text();
    const bool is_number =
        number.size() >= 7 && number[0] == 'Q' && number.find_first_not_of("0123456789", 1) == std::string::npos;
    if (!number.empty() && !is_number)
        field.complain("no number of a saved quote: found " + base::shown(number) + ", expected one like `Q000001`");
    return number;
}

Request read_fields(fields::MapReader& form, const plant::Plant& plant, std::optional<base::Date> date_override) {
    Request request{};
    request.number = form.field("request").text();
    if (form.has("customer")) request.customer = form.field("customer").text();
    const auto date = form.field("date");
    const auto own_date = date.date();
    const auto day = date_override ? date_override : own_date;
    request.date = day.value_or(base::Date{});
    const auto style_field = form.field("style");
    const auto* style = read_style(style_field, plant);
    if (style != nullptr) request.style = style->code;
    read_dimensions(form, style, request);
    const auto board_field = form.field("board");
    const auto board_code = board_field.text();
    const auto* board = plant.find_board(board_code);
    if (board == nullptr) board_field.complain_unknown_code("board", board_code, codes_of(plant.boards));
    if (board != nullptr) {
        request.board = static_cast<std::size_t>(board - plant.boards.data());
        if (style != nullptr) check_allowance(board_field, plant, *board, *style);
        if (style != nullptr) check_liners(board_field, *board, *style);
        if (day) check_prices(date, plant, *board, *day);
    }
    request.quantities = read_quantities(form.field("quantities"));
    request.doubts = thousands_set_apart(form.field("quantities"));
    request.margin = form.field("margin").number("1", fields::range::share);
    if (form.has("colours")) request.colours = form.field("colours").number("1", fields::range::count);
    if (form.has("route")) request.route = RouteReader(plant).read(form.field("route"), style);
    if (form.has("extras")) request.extras = read_extras(form.field("extras"), plant);
    if (form.has("copied_from")) request.copied_from = read_copied_from(form.field("copied_from"));
    refuse_ups(form);
    return request;
}

// Reads trees, and tells what is wrong with one at once, its extras included.
class RequestReader {
public:
    RequestReader(const plant::Plant& plant, std::optional<base::Date> date_override, const ExtrasCheck& check)
        : plant_(plant), date_override_(date_override), check_(check) {}

    Request read_file(const std::string& file) {
        auto text = base::read_text_file(file, complaints_);
        complaints_.throw_if_any(InputError::Whose::request);
        return read_text(file, *text);
    }

    Request read_text(const std::string& file, const std::string& text) {
        const auto document = base::parse_document(text, file, complaints_);
        if (!document) complaints_.throw_if_any(InputError::Whose::request);
        return read_tree(*document, {file, 1, 1}, text);
    }

    Request read_tree(const base::Node& root, const base::Place& place, std::string text) {
        fields::Reading reading{complaints_, plant_.currency};
        fields::MapReader form(fields::Field(root, place, reading));
        auto request = read_fields(form, plant_, date_override_);
        request.place = place;
        request.text = std::move(text);
        request.places = form.places();
        form.finish();
        if (!complaints_.empty() && check_) complaints_.add_all(check_(request));
        complaints_.throw_if_any(InputError::Whose::request);
        return request;
    }

private:
    const plant::Plant& plant_;
    std::optional<base::Date> date_override_;
    const ExtrasCheck& check_;
    base::Diagnostics complaints_;
};

bool has_kind(const plant::Plant& plant, const box_styles::Stage& stage, std::size_t machine) {
    return std::find(stage.begin(), stage.end(), plant.converters[machine].kind) != stage.end();
}

// The first stage that no machine makes behind those of the stages before it.
std::optional<std::size_t> missing_stage(const plant::Plant& plant, const std::vector<box_styles::Stage>& stages,
                                         const std::vector<std::size_t>& route) {
    std::size_t stage = 0;
    for (const std::size_t machine : route)
        if (stage < stages.size() && has_kind(plant, stages[stage], machine)) ++stage;
    return stage < stages.size() ? std::optional(stage) : std::nullopt;
}

std::string why_missing(const plant::Plant& plant, const std::vector<box_styles::Stage>& stages, std::size_t missing,
                        const std::vector<std::size_t>& route) {
    const auto words = box_styles::in_words(stages[missing]);
    const auto early = std::find_if(route.begin(), route.end(),
                                    [&](std::size_t machine) { return has_kind(plant, stages[missing], machine); });
    if (early == route.end()) return fmt::format("the route has no {}", words);
    return fmt::format("{} stands too early: put a {} behind the {}", plant.converters[*early].code, words,
                       box_styles::in_words(stages[missing - 1]));
}

}  // namespace

// A map without keys is asked for all of them.
std::vector<std::string> keys_that_are_read(const plant::Plant& plant) {
    base::Diagnostics unheard;
    fields::Reading reading{unheard, plant.currency};
    base::Node nothing;
    nothing.kind = base::Node::Kind::map;
    fields::MapReader form(fields::Field(nothing, base::Place{}, reading));
    static_cast<void>(read_fields(form, plant, std::nullopt));
    return form.asked();
}

const plant::ModelSettings* Request::find_extras(const std::string& model) const {
    const auto found = std::find_if(extras.begin(), extras.end(),
                                    [&](const plant::ModelSettings& settings) { return settings.id == model; });
    return found == extras.end() ? nullptr : &*found;
}

Request read_request(const plant::Plant& plant, const std::string& file) {
    return read_request(plant, file, std::nullopt);
}

Request read_request(const plant::Plant& plant, const std::string& file, std::optional<base::Date> date_override,
                     const ExtrasCheck& check) {
    return RequestReader(plant, date_override, check).read_file(file);
}

Request read_request(const plant::Plant& plant, const std::string& file, const std::string& text,
                     std::optional<base::Date> date_override, const ExtrasCheck& check) {
    return RequestReader(plant, date_override, check).read_text(file, text);
}

Request read_request(const plant::Plant& plant, const base::Node& root, const std::string& name, std::string text,
                     std::optional<base::Date> date_override, const ExtrasCheck& check) {
    const base::Place place = root.place.file.empty() ? base::Place{name, 1, 1} : root.place;
    return RequestReader(plant, date_override, check).read_tree(root, place, std::move(text));
}

const std::vector<box_styles::Stage>& stages_of(const box_styles::Style& style, std::size_t piece) {
    static const std::vector<box_styles::Stage> of_drawing{{plant::Converter::Kind::die_cutter}};
    return style.is_outline ? of_drawing : style.pieces.at(piece).made_by;
}

std::optional<std::string> route_fault(const plant::Plant& plant, const std::vector<box_styles::Stage>& stages,
                                       const std::string& what, const std::vector<std::size_t>& route) {
    const auto missing = missing_stage(plant, stages, route);
    if (!missing) return std::nullopt;
    const auto expected = fmt::format("expected a {} for {}", box_styles::in_words(stages), what);
    if (route.empty()) return "an empty route for a box: " + expected;
    if (stages.size() == 1) return "a route that cannot make the box: " + expected;
    return fmt::format("a route that cannot make the box: {}; {}", expected,
                       why_missing(plant, stages, *missing, route));
}

void check_route(const fields::Field& field, const std::vector<std::size_t>& route, const plant::Plant& plant,
                 const box_styles::Style& style) {
    if (route.size() > most_converters)
        field.complain(fmt::format("too long: found {} machines, expected at most {}", route.size(), most_converters));
    for (std::size_t piece = 0; piece < std::max<std::size_t>(style.pieces.size(), 1); ++piece) {
        std::string what = "style " + base::shown(style.code);
        if (style.pieces.size() > 1) what += ", piece " + base::shown(style.pieces[piece].name);
        if (const auto fault = route_fault(plant, stages_of(style, piece), what, route)) return field.complain(*fault);
    }
}

void check_allowance(const fields::Field& field, const plant::Plant& plant, const plant::Board& board,
                     const box_styles::Style& style) {
    if (!style.uses_allowances || plant.find_allowance(board.flutes, style.code) != nullptr) return;
    field.complain(fmt::format("no allowances for flute {}: board {} cannot make style {}; add them to flutes.yaml",
                               base::shown(board.flutes), base::shown(board.code), base::shown(style.code)));
}

void check_liners(const fields::Field& field, const plant::Board& board, const box_styles::Style& style) {
    const auto liners = std::count_if(board.plies.begin(), board.plies.end(),
                                      [](const plant::Board::Ply& ply) { return !ply.flute.has_value(); });
    if (liners > 1 || !style.is_folded()) return;
    field.complain(
        fmt::format("a board of one liner, which cannot be creased and folded: found {} for style {}, "
                    "expected a board with a liner on both sides",
                    base::shown(board.code), base::shown(style.code)));
}

void check_prices(const fields::Field& field, const plant::Plant& plant, const plant::Board& board, base::Date day) {
    std::vector<std::size_t> told;
    for (const auto& ply : board.plies) {
        const auto& paper = plant.papers[ply.paper];
        if (paper.price_on(day) != nullptr || std::find(told.begin(), told.end(), ply.paper) != told.end()) continue;
        told.push_back(ply.paper);
        field.complain(fmt::format("no price on {}: paper {} of board {} is priced from {} on", base::to_string(day),
                                   base::shown(paper.code), base::shown(board.code),
                                   base::to_string(paper.prices.front().from)));
    }
}

}  // namespace flutebook::orders
