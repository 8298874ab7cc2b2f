// The rows that a model is tried with: orders generated from a seed, laid out on their plants, in the model's names and
// units. A need that only another model provides gets a random value in the range that this model declares for it.
//
// The host's facts and the results of a run are known without any plugin, so only the plugin that is tried is needed.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/engine/costing/columns.hpp"
#include "host/engine/row.hpp"
#include "host/plugin_check/generated_order.hpp"

namespace flutebook::plugin_check {

/// The results of the run of an order, in kg, m, m2, h and pieces; vectors by step 0 .. K+1 or by ply.
struct RunNumbers {
    std::vector<double> fed, good, scrap_kg, hours;
    std::vector<double> issued_kg;
    double web_length_m = 0, web_area_m2 = 0, adhesive_kg = 0;
};

[[nodiscard]] RunNumbers run_numbers(const engine::Row& row);

/// A name that has a meaning without any plugin.
struct KnownName {
    std::string name, unit;
    contract::Axis axis;
    contract::Range range;
    bool may_be_provided;  // a model may replace it, or is expected to provide it
};

/// Facts first, in the engine's order.
[[nodiscard]] const std::vector<KnownName>& known_names();

/// The values of all known names in a row, in the order of known_names(); each by its axis index.
[[nodiscard]] std::vector<std::vector<double>> known_values(const engine::Row& row);

/// Everything that a model reads in one row.
struct TrialRow {
    std::size_t order;  // the number of its generated order, from 1 on
    std::string name;   // in messages: "generated order 12 of seed 1, 500 by C1, roll 2050 mm, FG1"
    engine::Shape shape;
    std::vector<std::vector<double>> needs, settings;  // in the order of the description, by axis index
    std::vector<std::vector<double>> known;            // as known_values() gives them
};

/// The values of settings: their defaults (random where there is none), random but never at an end of the range, or
/// random and often at an end.
enum class Settings { by_default, drawn, anywhere };

/// An endless sequence of rows, which does not depend on the number of orders taken at a time. `model` must outlive
/// this object.
class TrialRows {
public:
    TrialRows(const contract::Model& model, std::uint64_t seed, Settings settings);
    ~TrialRows();
    TrialRows(const TrialRows&) = delete;
    TrialRows& operator=(const TrialRows&) = delete;

    /// The rows of the next orders. An order gives up to three rows, none where it fits no machine or is outside a
    /// range that the model declares. The same seed gives the same rows on every machine.
    [[nodiscard]] std::vector<TrialRow> next(std::size_t orders);

private:
    class Generator;
    std::unique_ptr<Generator> generator_;
};

/// The first rows of a TrialRows.
[[nodiscard]] std::vector<TrialRow> make_rows(const contract::Model& model, std::uint64_t seed, std::size_t orders,
                                              Settings settings);

/// Rows of one shape, for the same blocks.
using Group = std::vector<const TrialRow*>;

/// The rows grouped by shape, in the order in which the shapes first occur.
[[nodiscard]] std::vector<Group> by_shape(const std::vector<TrialRow>& rows);

/// A random number inside the range, often near its low end, where most numbers of a plant are. Never an end, unless
/// both ends are equal.
[[nodiscard]] double inside(Draws& draws, contract::Range range);

/// The place in known_names() of a need with the same name, axis and kind of unit; nothing where there is none.
[[nodiscard]] std::optional<std::size_t> known_place(const contract::Name& need);

}  // namespace flutebook::plugin_check
