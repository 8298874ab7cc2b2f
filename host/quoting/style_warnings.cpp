// Length is the longer side at the opening. If a person gives it second, the program makes another box, with other
// flaps and another price.
#include "host/quoting/style_warnings.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/geometry/refused.hpp"
#include "host/quoting/quote.hpp"

namespace flutebook::quoting {

namespace {

std::optional<double> first_price(const answers::RequestAnswer& answer) {
    if (answer.quantities.empty()) return std::nullopt;
    const auto& quantity = answer.quantities.front();
    if (quantity.quote) return quantity.quote->price_per_thousand.to_double();
    if (quantity.set) return quantity.set->price_per_thousand.to_double();
    return std::nullopt;
}

std::string price_text(const std::optional<double>& price) {
    return price ? fmt::format("{}", *price) : "no price, since it cannot be made";
}

// Of the first quantity alone.
std::optional<double> price_other_way(const plant::Plant& plant, const engine::Engine& engine,
                                      orders::Request request) {
    std::swap(request.inside->length_mm, request.inside->width_mm);
    request.quantities.resize(1);
    try {
        return first_price(quote(plant, engine, request, {}));
    } catch (const InputError&) {
        return std::nullopt;
    }
}

// Of what is no drawing of the customer's.
bool is_other_way_round(const box_styles::Style& style, const orders::Request& request) {
    return style.is_folded() && request.inside->length_mm < request.inside->width_mm;
}

bool is_from_memory(const box_styles::Style& style) {
    return style.note.find("from memory") != std::string::npos;
}

base::Warning other_way_warning(const plant::Plant& plant, const engine::Engine& engine,
                                const answers::RequestAnswer& answer) {
    const orders::Request& request = answer.request;
    const char* given = request.outside ? "outside" : "inside";
    return {
        base::place_text(request.places, given, request.place),
        fmt::format("length is below width: found {} x {}, and length is the longer side at the opening; a thousand "
                    "at {:.0f} as asked: {}, the other way round: {}",
                    geometry::length_text(request.inside->length_mm, plant.units),
                    geometry::length_text(request.inside->width_mm, plant.units), request.quantities.front(),
                    price_text(first_price(answer)), price_text(price_other_way(plant, engine, request)))};
}

}  // namespace

bool has_style_warning(const plant::Plant& plant, const orders::Request& request) {
    const box_styles::Style* style = plant.find_style(request.style);
    return style != nullptr && !style->is_outline && (is_other_way_round(*style, request) || is_from_memory(*style));
}

std::vector<base::Warning> style_warnings(const plant::Plant& plant, const engine::Engine& engine,
                                          const answers::RequestAnswer& answer) {
    std::vector<base::Warning> warnings;
    const box_styles::Style* style = plant.find_style(answer.request.style);
    if (style == nullptr || style->is_outline) return warnings;
    if (is_other_way_round(*style, answer.request)) warnings.push_back(other_way_warning(plant, engine, answer));
    if (is_from_memory(*style))
        warnings.push_back({base::place_text(style->place),
                            fmt::format("style {} was written from memory: compare it with your own drawing before it "
                                        "is used for a price",
                                        base::shown(style->code))});
    return warnings;
}

}  // namespace flutebook::quoting
