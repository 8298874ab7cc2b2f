// One customer's enquiry, read from a request file and checked against the plant: every error names the field that asks
// for something the plant cannot do.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/base/diagnostics.hpp"
#include "host/base/yaml/node.hpp"
#include "host/fields/map_reader.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::orders {

struct InsideSize {
    double length_mm, width_mm, height_mm;  // height 0: a sheet
};

/// The customer's drawing: the blank as it lies, its width along the flutes, and the area of board that is the box.
struct Outline {
    double length_mm, width_mm, area_m2;
};

/// Machines in turn: indices into Plant::converters.
using GivenRoute = std::vector<std::size_t>;

struct Request {
    std::string number;
    std::string customer;
    base::Date date;
    std::string style;  // a code of Plant::styles
    std::optional<InsideSize> inside;
    std::optional<InsideSize> outside = {};  // where the request gives it in place of `inside`, which follows from it
    std::vector<std::pair<std::string, double>> measures = {};  // that the style asks for
    bool is_turned = false;                                     // `flutes: along B`
    std::optional<Outline> outline;
    std::size_t board;  // index into Plant::boards
    std::vector<double> quantities;
    std::optional<double> margin;  // nothing where the plant's rules give it: see margin_of()
    double colours = 0;
    plant::TrimPolicy trim = {};      // the request's own, else the plant's
    std::optional<GivenRoute> route;  // of every piece; nothing where the request leaves it out
    /// Where the request gives the route of a set by piece, that of each in their order; nothing where it is left out.
    std::vector<std::optional<GivenRoute>> piece_routes = {};
    std::vector<plant::ModelSettings> extras;  // models' request settings, each model once
    base::Place place;                         // the file
    std::string text;                          // all that stood in it, but for a byte order mark
    base::Places places;
    std::string copied_from = {};  // the saved quote that `quote copy` wrote it from, like Q000001; else empty
    std::vector<base::Warning> doubts = {};          // numbers that are seldom meant as they stand
    std::optional<plant::Tolerance> tolerance = {};  // its own; nothing where the plant's counts

    /// Null where `extras` does not name the model. Lives as long as the request is not changed.
    [[nodiscard]] const plant::ModelSettings* find_extras(const std::string& model) const;
    /// The route that is given for a piece of the style; nothing where it is left out.
    [[nodiscard]] const std::optional<GivenRoute>& route_of(std::size_t piece) const;
};

/// What the models find wrong with the extras of a request that has other faults: it holds stand-ins in their place.
using ExtrasCheck = std::function<base::Diagnostics(const Request&)>;

/// Reads one request against a plant. Throws InputError (request) with every error of the file.
[[nodiscard]] Request read_request(const plant::Plant& plant, const std::string& file);

/// The same as if the file gave another date: prices are those of that day. What `check` finds is told with the errors
/// of the file; where it has none, the models are asked when the order is costed.
[[nodiscard]] Request read_request(const plant::Plant& plant, const std::string& file,
                                   std::optional<base::Date> date_override, const ExtrasCheck& check = {});

/// The same from a text that is kept elsewhere: no file is touched, `file` only names it.
[[nodiscard]] Request read_request(const plant::Plant& plant, const std::string& file, const std::string& text,
                                   std::optional<base::Date> date_override, const ExtrasCheck& check = {});

/// The same from a tree that something else than a file was read into: a line that a person typed, a row of a list.
/// Errors stand at the places of its values, and what is missing at the tree's own, where it has one. `name` is what
/// it came from; `text` is kept as the request's own.
[[nodiscard]] Request read_request(const plant::Plant& plant, const base::Node& root, const std::string& name,
                                   std::string text, std::optional<base::Date> date_override,
                                   const ExtrasCheck& check = {});

/// A style whose sums name allowances needs those of its board's flutes.
void check_allowance(const fields::Field& field, const plant::Plant& plant, const plant::Board& board,
                     const box_styles::Style& style);

/// A style that is folded needs a board with more than one liner.
void check_liners(const fields::Field& field, const plant::Board& board, const box_styles::Style& style);

/// Every paper of the board must have a price on the day.
void check_prices(const fields::Field& field, const plant::Plant& plant, const plant::Board& board, base::Date day);

}  // namespace flutebook::orders
