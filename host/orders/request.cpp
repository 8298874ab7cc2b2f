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
#include "host/orders/enquiry.hpp"
#include "host/orders/enquiry_words.hpp"
#include "host/orders/request_keys.hpp"
#include "host/orders/route_reader.hpp"
#include "host/orders/style_reader.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::orders {

namespace {

template <typename T>
std::vector<std::string> codes_of(const std::vector<T>& things) {
    std::vector<std::string> codes;
    for (const auto& thing : things) codes.push_back(thing.code);
    return codes;
}

std::vector<std::string> ids_of(const std::vector<plant::ModelSettings>& models) {
    std::vector<std::string> ids;
    for (const auto& model : models) ids.push_back(model.id);
    return ids;
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

std::vector<plant::ModelSettings> read_extras(const fields::Field& map, const plant::Plant& plant) {
    std::vector<plant::ModelSettings> result;
    for (const auto& entry : map.entries()) {
        const bool is_known = std::any_of(plant.models.begin(), plant.models.end(),
                                          [&](const plant::ModelSettings& model) { return model.id == entry.key(); });
        if (!is_known) entry.about_key().complain_unknown("model", entry.key(), ids_of(plant.models));
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
        field.complain("not the number of a saved quote: found " + base::shown(number) +
                       ", expected one like `Q000001`");
    return number;
}

// `field` is where it is complained of that nobody knows a share: at the key that asks for one, else at the board.
plant::TrimPolicy resolved_trim(const fields::Field& field, const plant::AskedTrim& asked, const plant::Plant& plant,
                                const plant::Board& board, base::Date day) {
    if (asked.way != plant::AskedTrim::Way::by_ledger) return asked.numbers;
    plant::TrimFinding finding{std::nullopt, plant::twelve_months_before(board.code, day), ""};
    if (plant.trim_source) finding = plant.trim_source(board.code, day);
    if (finding.policy) return *finding.policy;
    plant::TrimPolicy result = plant.trim ? plant.trim->numbers : plant::TrimPolicy();
    if (!result.share)
        field.complain(
            fmt::format("no share of trim is known: {}, expected {} of either; post them, or give numbers "
                        "such as `trim: {{share: 0.03, changes: 0.6}}`",
                        plant::found_text(finding), plant::enough_runs));
    result.origin = std::move(finding.looked_at);
    return result;
}

// Sheets that are bought have no trim to share.
void leave_out_trim(fields::MapReader& form, const plant::Board& board, Request& request) {
    if (!form.has("trim")) return;
    request.doubts.push_back(
        {base::place_text(form.field("trim").place()),
         fmt::format("trim: has no effect: board {} is bought as sheets; take it out", base::shown(board.code))});
}

// A typed line says it in per cent, a file as a share.
double read_margin(const fields::Field& field) {
    fields::QuantityRange range = fields::range::share;
    if (field.place().file.text() == enquiry_name)
        range.expected = "a margin from 0% to below 100% of the price, as in 18%";
    return field.number("1", range);
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
    // Missed where neither the request nor the plant has one.
    if (form.has("margin") || !plant.pricing.has_margin(request.customer))
        request.margin = read_margin(form.field("margin"));
    if (form.has("colours")) request.colours = form.field("colours").number("1", fields::range::count);
    if (form.has("trim") || plant.trim) {
        const auto asked = form.has("trim") ? plant::read_asked_trim(form.field("trim")) : *plant.trim;
        const auto field = form.has("trim") ? form.field("trim") : board_field;
        if (board != nullptr && board->is_bought())
            leave_out_trim(form, *board, request);
        else if (board != nullptr && day)
            request.trim = resolved_trim(field, asked, plant, *board, *day);
    }
    if (form.has("route")) read_route(form.field("route"), plant, style, request);
    if (form.has("extras")) request.extras = read_extras(form.field("extras"), plant);
    if (form.has("copied_from")) request.copied_from = read_copied_from(form.field("copied_from"));
    if (form.has("tolerance")) request.tolerance = plant::read_tolerance(form.field("tolerance"));
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
        fields::Reading reading{complaints_, plant::unit_words(plant_)};
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

}  // namespace

// A map without keys is asked for all of them.
std::vector<std::string> keys_that_are_read(const plant::Plant& plant) {
    base::Diagnostics unheard;
    fields::Reading reading{unheard, plant::unit_words(plant)};
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

const std::optional<GivenRoute>& Request::route_of(std::size_t piece) const {
    return piece < piece_routes.size() ? piece_routes[piece] : route;
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

void check_allowance(const fields::Field& field, const plant::Plant& plant, const plant::Board& board,
                     const box_styles::Style& style) {
    if (!style.uses_allowances || plant.find_allowance(board.flutes, style.code) != nullptr) return;
    field.complain(fmt::format("no allowances for flute {}: board {} cannot make style {}; add them to flutes.yaml",
                               base::shown(board.flutes), base::shown(board.code), base::shown(style.code)));
}

void check_liners(const fields::Field& field, const plant::Board& board, const box_styles::Style& style) {
    if (board.is_closed() || !style.is_folded()) return;
    field.complain(
        fmt::format("a board of one liner, which cannot be creased and folded: found {} for style {}, "
                    "expected a board with a liner on both sides",
                    base::shown(board.code), base::shown(style.code)));
}

void check_prices(const fields::Field& field, const plant::Plant& plant, const plant::Board& board, base::Date day) {
    std::vector<std::size_t> told;
    for (const auto& ply : board.plies) {
        const auto& paper = plant.paper(ply.paper);
        if (paper.price_on(day) != nullptr || std::find(told.begin(), told.end(), ply.paper) != told.end()) continue;
        told.push_back(ply.paper);
        const std::string what =
            board.is_bought() ? "board " + base::shown(board.code)
                              : fmt::format("paper {} of board {}", base::shown(paper.code), base::shown(board.code));
        field.complain(fmt::format("no price on {}: {} is priced from {} on", base::to_string(day), what,
                                   base::to_string(paper.prices.front().from)));
    }
}

}  // namespace flutebook::orders
