#include "host/quoting/explained_figure.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "host/answers/quote_answer.hpp"
#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/quoting/figure_formulas.hpp"

namespace flutebook::quoting {

namespace {

// What the answer's document, and people, call a figure that has another name here.
constexpr std::array<std::pair<const char*, const char*>, 33> other_names = {{
    {"price_per_thousand", "price"},
    {"contribution_per_thousand", "contribution"},
    {"quantity", "order.quantity"},
    {"margin", "order.margin"},
    {"colours", "order.colours"},
    {"roll_width", "web.roll_width"},
    {"roll_width_mm", "web.roll_width"},
    {"outs", "web.outs"},
    {"trim", "web.trim"},
    {"trim_mm", "web.trim"},
    {"web_length_m", "web.length"},
    {"web_area_m2", "web.area"},
    {"ups", "sheet.ups"},
    {"chop", "sheet.chop"},
    {"chop_mm", "sheet.chop"},
    {"slit", "sheet.slit"},
    {"slit_mm", "sheet.slit"},
    {"blank.length_mm", "blank.length"},
    {"blank.width_mm", "blank.width"},
    {"blank.area_m2", "box.area"},
    {"board_grammage", "board.grammage"},
    {"fed", "run.fed"},
    {"good", "run.good"},
    {"adhesive", "adhesive.dry"},
    {"mass_kg.issued", "issued"},
    {"mass_kg.adhesive", "adhesive.dry"},
    {"mass_kg.product", "product"},
    {"mass_kg.loss", "loss"},
    {"losses.kg_by_step", "loss"},
    {"waste_by_step.intake_kg", "intake"},
    {"waste_by_step.loss_kg", "step_loss"},
    {"waste_by_step.cost", "step_waste_cost"},
    {"waste_by_step", "step_waste_cost"},
}};
constexpr std::string_view loss_prefix = "mass_kg.loss.";

std::string name_of(const std::string& asked) {
    if (asked.starts_with(loss_prefix)) return asked.substr(loss_prefix.size());
    for (const auto& [other, name] : other_names)
        if (asked == other) return name;
    return asked;
}

[[noreturn]] void refuse(const std::string& what) {
    throw InputError(InputError::Whose::request, {"--explain: " + what});
}

void refuse_unknown(const engine::Engine& engine, const std::string& name, const std::string& asked) {
    std::vector<std::string> known = explain::figure_names(engine);
    for (const auto& list : {formula_names(), price_formula_names()})
        known.insert(known.end(), list.begin(), list.end());
    if (std::find(known.begin(), known.end(), name) != known.end()) return;
    for (const auto& [other, same] : other_names) known.emplace_back(other);
    if (const auto near = base::nearest(asked, known))
        refuse(fmt::format("unknown figure: found '{}'; did you mean '{}'?", asked, *near));
    std::set<std::string> lines;
    for (const contract::Model& model : engine.graph().models)
        for (const contract::Line& line : model.lines) lines.insert(line.name);
    refuse(fmt::format(
        "unknown figure: found '{}'; name a line ({}), one of {}, {}, a cause of loss, or any "
        "name that `plugin facts` or `plugin list` shows",
        asked, fmt::join(lines, ", "), fmt::join(price_formula_names(), ", "), fmt::join(formula_names(), ", ")));
}

void refuse_unknown_quantity(const orders::Request& request, const answers::FigureAsked& figure) {
    const auto& asked = request.quantities;
    if (figure.quantity && std::find(asked.begin(), asked.end(), *figure.quantity) != asked.end()) return;
    refuse(fmt::format("request {} asks for no such quantity: found '{}' behind @; name one of {:.0f}", request.number,
                       figure.behind, fmt::join(asked, ", ")));
}

}  // namespace

ExplainedFigure explained_figure(const engine::Engine& engine, const orders::Request& request, std::size_t pieces,
                                 const std::string& asked) {
    const answers::FigureAsked figure = answers::figure_asked(asked);
    ExplainedFigure result{name_of(figure.name), figure.quantity};
    refuse_unknown(engine, result.name, figure.name);
    if (figure.name != asked) refuse_unknown_quantity(request, figure);
    const auto& prices = price_formula_names();
    if (pieces > 1 && std::find(prices.begin(), prices.end(), result.name) != prices.end())
        refuse(fmt::format(
            "the {} of a set is computed from the sum of its pieces, which have none: found request {}; ask for "
            "`cost`, which each piece has",
            result.name, request.number));
    return result;
}

}  // namespace flutebook::quoting
