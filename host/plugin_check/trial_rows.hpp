// The rows that a model is tried with: orders made from a seed, laid out on their plants, in the model's own names and
// units. What only some other model provides is drawn from the range that this one declares for it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/engine/costing/columns.hpp"
#include "host/plugin_check/generated_order.hpp"

namespace flutebook::plugin_check {

/// Everything that a model reads in one row.
struct TrialRow {
    std::size_t order;  // which made order it is of, from 1 on
    std::string name;   // as people are told: "made order 12 of seed 1, 500 by C1, roll 2050 mm, FG1"
    engine::Shape shape;
    std::vector<std::vector<double>> needs, settings;  // in the order of the description, by axis index
    std::vector<std::vector<double>> known;            // as known_values() has them
};

/// Whether settings keep to their defaults (those without one are drawn), are drawn too, never an end of a range, or
/// lie anywhere, often at an end.
enum class Settings { by_default, drawn, anywhere };

/// Rows without end, so many orders at a time: how they are asked for changes none of them. `model` must outlive this
/// object.
class TrialRows {
public:
    TrialRows(const contract::Model& model, std::uint64_t seed, Settings settings);
    ~TrialRows();
    TrialRows(const TrialRows&) = delete;
    TrialRows& operator=(const TrialRows&) = delete;

    /// Of the next orders; each gives up to three rows, none where it fits nowhere or lies outside a range that the
    /// model declares. The same seed, the same rows, on every machine.
    [[nodiscard]] std::vector<TrialRow> next(std::size_t orders);

private:
    class Maker;
    std::unique_ptr<Maker> maker_;
};

/// The first of a TrialRows.
[[nodiscard]] std::vector<TrialRow> make_rows(const contract::Model& model, std::uint64_t seed, std::size_t orders,
                                              Settings settings);

/// Rows of one shape, as one block takes them.
using Group = std::vector<const TrialRow*>;

/// By shape, in the order in which shapes come.
[[nodiscard]] std::vector<Group> by_shape(const std::vector<TrialRow>& rows);

/// A number inside the range, often near its lower end, where most numbers of a plant lie; never an end, if it has any
/// inside.
[[nodiscard]] double inside(Draws& draws, contract::Range range);

/// Where a need's name and axis are known without any plugin, in a unit of its kind: its place among known_names().
[[nodiscard]] std::optional<std::size_t> known_place(const contract::Name& need);

}  // namespace flutebook::plugin_check
