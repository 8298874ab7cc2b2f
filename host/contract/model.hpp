// A model as the host knows it: its description in the host's own values, checked, and the function to call, or who
// calls it somewhere else.
//
// Made by describe() from the plugin's data and never changed afterwards; the plugin stays loaded until the process
// ends, so the function may be called from any thread at any time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <flutebook/plugin.h>

namespace flutebook::contract {

enum class Axis : std::uint32_t { order = FLUTEBOOK_ORDER, ply = FLUTEBOOK_PLY, step = FLUTEBOOK_STEP };
enum class VariesBy : std::uint32_t {
    plant = FLUTEBOOK_BY_PLANT,
    paper = FLUTEBOOK_BY_PAPER,
    flute = FLUTEBOOK_BY_FLUTE,
    machine = FLUTEBOOK_BY_MACHINE,
    request = FLUTEBOOK_BY_REQUEST,
    customer = FLUTEBOOK_BY_CUSTOMER,
    board = FLUTEBOOK_BY_BOARD,
    style = FLUTEBOOK_BY_STYLE,
    choice = FLUTEBOOK_BY_CHOICE
};
enum class CostClass : std::uint32_t {
    material = FLUTEBOOK_MATERIAL,
    energy = FLUTEBOOK_ENERGY,
    system = FLUTEBOOK_SYSTEM,
    waste_management = FLUTEBOOK_WASTE_MANAGEMENT,
    recovery = FLUTEBOOK_RECOVERY
};
enum class Behaviour : std::uint32_t {
    per_unit = FLUTEBOOK_PER_UNIT,
    per_run = FLUTEBOOK_PER_RUN,
    period = FLUTEBOOK_PERIOD
};

[[nodiscard]] Axis axis_of(VariesBy varies);
/// As files, commands and answers spell them: "ply", "machine", "waste-management", "per-unit".
[[nodiscard]] const char* to_text(Axis axis);
[[nodiscard]] const char* to_text(VariesBy varies);
[[nodiscard]] const char* to_text(CostClass cost_class);
[[nodiscard]] const char* to_text(Behaviour behaviour);

/// What the names begin with that are the host's for ever: `step.` of "step.speed".
[[nodiscard]] bool is_name_of_host(const std::string& name);

/// What the names of other models' cost begin with.
inline constexpr const char* cost_prefix = "cost.";

struct Range {
    double low, high;

    [[nodiscard]] bool holds(double value) const { return value >= low && value <= high; }
    [[nodiscard]] bool holds(Range inner) const { return inner.low >= low && inner.high <= high; }
};

/// A need or a provide.
struct Name {
    std::string name, unit, meaning;
    Range range;
    Axis axis;
};

struct Setting {
    std::string name, unit, meaning;
    std::optional<double> initial;  // its default; nothing where it must be given
    Range range;
    std::vector<std::string> choices;  // empty: a plain number
    VariesBy varies_by;
    std::optional<Range> usual{};               // inside `range`; outside it the plant is warned
    std::optional<std::size_t> stepped_over{};  // the need over which its file may give steps
    std::optional<std::size_t> keyed_by{};      // of a setting by choice: the choice setting with its keys

    [[nodiscard]] bool is_required() const { return !initial.has_value(); }
};

struct Line {
    std::string name, unit, title;
    Axis axis;
    CostClass cost_class;
    Behaviour behaviour;
    std::string rate_unit;  // as the model computes its rate: "money/t"
    double rate_scale = 1;  // from there to money per unit, in which the host keeps the rate
};

struct Loss {
    std::string cause, title;
};

class Evaluator;

struct Model {
    std::string file, built_with, id, version, title;
    std::string author, contact;  // empty where the file names none
    std::string sha256;           // of the file, in hex; empty where it was not read from one
    std::vector<Name> needs, provides;
    std::vector<Setting> settings;
    std::vector<Line> lines;
    std::vector<Loss> losses;
    std::vector<std::string> reasons;
    std::uint32_t (*evaluate)(const flutebook_block*) = nullptr;
    std::shared_ptr<Evaluator> elsewhere;  // who evaluates it instead, where it was not loaded into this process

    [[nodiscard]] bool works_elsewhere() const { return elsewhere != nullptr; }

    /// "plugins/varnish.so: model varnish (A. Example, a@example.org)": how every refusal begins that names it.
    [[nodiscard]] std::string where() const;

    /// Whether the model stands on the cost of other models, by a need of its own.
    [[nodiscard]] bool needs_cost() const;
};

/// Which of the models has this id; nothing where none has.
[[nodiscard]] std::optional<std::size_t> find_model(const std::vector<Model>& models, const std::string& id);

}  // namespace flutebook::contract
