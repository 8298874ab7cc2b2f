// A style is measured by `inside` or `outside`, an outline by `outline`, never by two of them.
#include "host/orders/style_reader.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <string>

#include "host/base/quoted_text.hpp"

namespace flutebook::orders {

namespace {

using box_styles::Style;
using fields::Field;
using fields::MapReader;

constexpr fields::QuantityRange any_measure{-fields::range::largest, fields::range::largest, false, "a number"};

std::string listed(const std::vector<std::string>& names) {
    std::string list;
    for (const auto& name : names) list += (list.empty() ? "" : ", ") + base::shown(name);
    return list;
}

// The dimensions of a box; of a sheet, its two sides.
InsideSize read_size(MapReader form, const Style& style) {
    InsideSize size{};
    size.length_mm = form.field("length").number("mm", fields::range::positive);
    size.width_mm = form.field("width").number("mm", fields::range::positive);
    if (style.uses_height) {
        size.height_mm = form.field("height").number("mm", fields::range::positive);
    } else if (form.has("height")) {
        const auto height = form.field("height");
        if (height.number("mm", fields::range::not_negative) > 0)
            height.complain("a sheet has no height: leave it out");
    }
    form.finish();
    return size;
}

Outline read_outline(MapReader form) {
    Outline outline{};
    outline.length_mm = form.field("length").number("mm", fields::range::positive);
    outline.width_mm = form.field("width").number("mm", fields::range::positive);
    const auto area = form.field("area");
    outline.area_m2 = area.number("m2", fields::range::positive);
    const double blank_m2 = outline.length_mm * outline.width_mm / 1e6;
    if (outline.area_m2 > blank_m2 * (1 + 1e-9))
        area.complain(fmt::format("larger than the blank: found {} m2, expected at most length x width, {} m2",
                                  outline.area_m2, blank_m2));
    form.finish();
    return outline;
}

// Of an unknown style: whether a measure is a number can still be checked.
void read_numbers_alone(MapReader& request) {
    if (request.has("outline")) static_cast<void>(read_outline(request.form("outline")));
    for (const char* key : {"inside", "outside"}) {
        if (!request.has(key)) continue;
        auto form = request.form(key);
        for (const char* side : {"length", "width", "height"})
            if (form.has(side)) static_cast<void>(form.field(side).number("mm", fields::range::not_negative));
        form.finish();
    }
}

void refuse_key(MapReader& request, const char* key, const Style& style, const char* expected) {
    if (request.has(key))
        request.field(key).complain_of_key(
            fmt::format("not for style {}: expected {} alone", base::shown(style.code), base::shown(expected)));
}

void read_measures(const Field& map, const Style& style, Request& request) {
    std::vector<std::string> names;
    for (const auto& ask : style.asks) names.push_back(ask.name);
    for (const auto& entry : map.entries()) {
        if (style.find_ask(entry.key()) == nullptr)
            entry.complain_of_key(names.empty() ? fmt::format("style {} asks for no measure", base::shown(style.code))
                                                : fmt::format("style {} asks for no such measure, expected {}",
                                                              base::shown(style.code), listed(names)));
        request.measures.emplace_back(entry.key(), entry.number("mm", any_measure));
    }
}

void read_flutes(const Field& field, const Style& style, Request& request) {
    if (!style.may_turn)
        return field.complain_of_key(
            fmt::format("not for style {}: its flutes run as it is drawn", base::shown(style.code)));
    request.is_turned = field.choice({"along L", "along B"}) == 1U;
}

void read_box(MapReader& form, const Style& style, Request& request) {
    refuse_key(form, "outline", style, "inside");
    if (form.has("outside")) {
        if (!style.is_folded())
            form.field("outside").complain_of_key(
                fmt::format("not for style {}, which has no walls: expected `inside`", base::shown(style.code)));
        if (form.has("inside")) form.field("outside").complain_of_key("beside `inside`: expected one of them");
        request.outside = read_size(form.form("outside"), style);
    }
    if (!request.outside || form.has("inside")) request.inside = read_size(form.form("inside"), style);
    if (form.has("measures")) read_measures(form.field("measures"), style, request);
    if (form.has("flutes")) read_flutes(form.field("flutes"), style, request);
}

}  // namespace

const Style* read_style(const Field& field, const plant::Plant& plant) {
    const auto code = field.text();
    const Style* style = plant.find_style(code);
    if (style != nullptr || code.empty()) return style;
    std::vector<std::string> codes;
    for (const auto& known : plant.styles) codes.push_back(known.code);
    field.complain(fmt::format("unknown style: found {}, expected one of {}", base::shown(code), listed(codes)));
    return nullptr;
}

void read_dimensions(MapReader& form, const Style* style, Request& request) {
    for (const char* key : {"inside", "outside", "outline", "measures", "flutes"}) form.allow(key);
    if (style == nullptr) return read_numbers_alone(form);
    if (!style->is_outline) return read_box(form, *style, request);
    for (const char* key : {"inside", "outside", "measures", "flutes"}) refuse_key(form, key, *style, "outline");
    request.outline = read_outline(form.form("outline"));
}

}  // namespace flutebook::orders
