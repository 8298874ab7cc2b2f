// The graph of the models. Connects every name that a model needs to the fact or the model that gives it, checks units
// and axes on the way, and orders the models so that each is evaluated after all it needs.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/fields/units.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::engine {

/// Where a number comes from: a fact (`index` into facts()), a model's provide, or a model's setting.
struct Source {
    enum class Kind { fact, provided, setting };
    Kind kind;
    std::size_t model;  // of provided and setting
    std::size_t index;
    friend bool operator==(const Source&, const Source&) = default;
};

/// A link: the source of a number, and how its unit becomes the unit of the model that takes it.
struct Link {
    Source source;
    fields::Conversion conversion;
};

/// What the host itself takes from the models: a run that its balance, its answer and its reports stand on.
struct HostLinks {
    Link fed, good, web_length, web_area, issued, adhesive;
    // What the order is allowed to lose, by the plant's files or by whatever model replaces them.
    Link run_waste, setup_sheets, order_change, roll_loss;
};

struct Graph {
    std::vector<contract::Model> models;                     // in order of evaluation, ties by id
    std::vector<std::vector<Link>> needs;                    // by model, then by need
    std::vector<std::vector<std::optional<Link>>> settings;  // by model, then by setting: what replaces it, if anything
    HostLinks host;
    std::size_t shedder;  // the model that provides run.good and sheds the losses
    /// The first of the late models, which stand last: those that need what others charge, and those that need them.
    std::size_t first_late;
};

/// Throws ModelError with every joint that cannot be made: names needed and not given (with the nearest spelling),
/// given twice, in units or axes that do not fit, circles, and preferences that replace nothing.
[[nodiscard]] Graph join(std::vector<contract::Model> models, const std::vector<plant::Preference>& preferences);

}  // namespace flutebook::engine
