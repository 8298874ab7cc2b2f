#include "host/geometry/route.hpp"

#include <flutebook/plugin.h>

#include <algorithm>
#include <cassert>
#include <utility>

namespace flutebook::geometry {

using orders::Request;
using plant::Converter;
using plant::Plant;

namespace {

static_assert(orders::most_converters + 2 == FLUTEBOOK_MOST_STEPS, "the corrugator and dispatch stand around them");

std::size_t first_die_cutter(const std::vector<const Converter*>& converters) {
    for (std::size_t i = 0; i < converters.size(); ++i)
        if (converters[i]->kind == Converter::Kind::die_cutter) return i + 1;
    return 0;
}

std::size_t first_with_colours(const std::vector<const Converter*>& converters, double colours) {
    if (colours <= 0) return 0;
    for (std::size_t i = 0; i < converters.size(); ++i)
        if (converters[i]->colours >= colours) return i + 1;
    return 0;
}

Route make_route(std::vector<const Converter*> converters, const Request& request) {
    const std::size_t die_cutter = first_die_cutter(converters);
    const std::size_t colours_step = first_with_colours(converters, request.colours);
    const std::size_t parting = die_cutter != 0 ? die_cutter : converters.size();
    return {.converters = std::move(converters), .parting = parting, .colours_step = colours_step};
}

Route given_route(const Plant& plant, const Request& request) {
    std::vector<const Converter*> converters;
    converters.reserve(request.route->size());
    for (const std::size_t index : *request.route) converters.push_back(&plant.converters[index]);
    return make_route(std::move(converters), request);
}

}  // namespace

const Converter* Route::die_cutter() const {
    if (parting == 0 || converters[parting - 1]->kind != Converter::Kind::die_cutter) return nullptr;
    return converters[parting - 1];
}

std::vector<Route> make_routes(const Plant& plant, const Request& request, std::size_t piece) {
    std::vector<Route> routes;
    if (request.route) {
        routes.push_back(given_route(plant, request));
        return routes;
    }
    const plant::Style* style = plant.find_style(request.style);
    assert(style && "a request is read only in a style that is there");
    const plant::Stage* makers = orders::first_stage(*style, piece);
    if (makers == nullptr) {
        routes.push_back(make_route({}, request));
        return routes;
    }
    for (const Converter& converter : plant.converters)
        if (std::find(makers->begin(), makers->end(), converter.kind) != makers->end())
            routes.push_back(make_route({&converter}, request));
    return routes;
}

std::string name_of(const Route& route) {
    if (route.converters.empty()) return "no converter";
    std::string name;
    for (const Converter* converter : route.converters) {
        if (!name.empty()) name += " > ";
        name += converter->code;
    }
    return name;
}

}  // namespace flutebook::geometry
