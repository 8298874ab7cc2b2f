#include "host/quoting/figure_formulas.hpp"

#include <algorithm>

namespace flutebook::quoting {

namespace {

using answers::CostLine;
using answers::Quote;
using explain::Formula;
using Inputs = std::vector<Formula::Input>;

// The names of the lines that pass, each once.
template <typename Passes>
Inputs lines_that(const Quote& quote, const Passes& passes) {
    Inputs result;
    for (const CostLine& line : quote.lines) {
        const auto is_same = [&](const Formula::Input& input) { return input.name == line.line; };
        if (passes(line) && std::none_of(result.begin(), result.end(), is_same)) result.push_back({line.line});
    }
    return result;
}

bool is_recovery(const CostLine& line) {
    return line.cost_class == contract::CostClass::recovery;
}

Inputs with(Inputs inputs, std::initializer_list<const char*> more) {
    for (const char* name : more) inputs.push_back({name});
    return inputs;
}

Inputs causes(const Quote& quote, std::optional<std::size_t> step) {
    Inputs result;
    for (const answers::MassBalance::Cause& cause : quote.mass.losses) result.push_back({cause.cause, step});
    return result;
}

// What a step's losses cost stands on all that was charged so far.
Inputs charged_until(const Quote& quote, std::size_t step) {
    Inputs result;
    for (const CostLine& line : quote.lines) {
        const auto is_same = [&](const Formula::Input& input) {
            return input.name == line.line && input.step == line.step;
        };
        if (line.step <= step && !is_recovery(line) && std::none_of(result.begin(), result.end(), is_same))
            result.push_back({line.line, line.step});
    }
    return result;
}

class FormulaList {
public:
    explicit FormulaList(const Quote& quote) : quote_(quote) {}

    std::vector<Formula> all() {
        add_costs();
        add_masses();
        add_layout();
        for (std::size_t step = 0; step < quote_.waste_by_step.size(); ++step) add_step(step);
        for (std::size_t step = 0; step < quote_.machine_hours.size(); ++step)
            add_at(step, {"machine_hours",
                          "h",
                          quote_.machine_hours[step],
                          "step.setup_time / 60 + run.hours",
                          {{"step.setup_time", step}, {"run.hours", step}}});
        if (quote_.price_per_thousand != Money{}) add_price();
        return std::move(formulas_);
    }

private:
    void add_costs() {
        const auto every = [](const CostLine&) { return true; };
        add({"cost", "money", quote_.cost.to_double(), "the sum of all lines", lines_that(quote_, every)});
        add({"cost_per_thousand", "money", quote_.cost_per_thousand.to_double(), "cost / order.quantity x 1000",
             with({}, {"cost", "order.quantity"})});
        add({"cost_per_m2", "money", quote_.cost_per_m2.to_double(), "cost / (order.quantity x box.area)",
             with({}, {"cost", "order.quantity", "box.area"})});
        add({"cost_per_tonne", "money", quote_.cost_per_tonne.to_double(), "cost / product x 1000",
             with({}, {"cost", "product"})});
        add({"recovery", "money", quote_.recovery.to_double(), "what the scrap brings: its lines, the sign turned",
             lines_that(quote_, is_recovery)});
        add({"waste_cost", "money", quote_.waste_cost.to_double(), "the sum of step_waste_cost",
             with({}, {"step_waste_cost"})});
    }

    void add_masses() {
        add({"issued", "kg", quote_.mass.issued_kg, "the sum of paper.issued", with({}, {"paper.issued"})});
        add({"product", "kg", quote_.mass.product_kg, "order.quantity x box.area x board.grammage / 1000",
             with({}, {"order.quantity", "box.area", "board.grammage"})});
        add({"loss", "kg", quote_.mass.loss_kg, "the sum of all causes", causes(quote_, std::nullopt)});
    }

    void add_layout() {
        add({"nx", "1", quote_.nx, "layout: boxes along the chop",
             with({}, {"sheet.ups", "blank.length", "sheet.chop"})});
        add({"ny", "1", quote_.ny, "layout: boxes across the web",
             with({}, {"sheet.ups", "blank.width", "sheet.slit"})});
    }

    void add_step(std::size_t step) {
        const answers::StepWaste& waste = quote_.waste_by_step[step];
        if (step == 0)
            add_at(0, {"intake", "kg", waste.intake_kg, "paper.issued and adhesive.dry",
                       with({}, {"paper.issued", "adhesive.dry"})});
        else
            add_at(step, {"intake",
                          "kg",
                          waste.intake_kg,
                          "what the step before took in less what it lost",
                          {{"intake", step - 1}, {"step_loss", step - 1}}});
        add_at(step, {"step_loss", "kg", waste.loss_kg, "the causes at this step", causes(quote_, step)});
        Inputs inputs = {{"step_loss", step}, {"intake", step}};
        const Inputs charged = charged_until(quote_, step);
        inputs.insert(inputs.end(), charged.begin(), charged.end());
        add_at(step, {"step_waste_cost", "money", waste.cost.to_double(),
                      "ISO 14051: cost carried to the step and charged there, by its loss over its intake; "
                      "waste management whole",
                      std::move(inputs)});
    }

    void add_price() {
        const std::string by_margin =
            "cost_per_thousand before it is rounded / (1 - order.margin), rounded to the currency's coin";
        add({"price", "money", quote_.price_per_thousand.to_double(),
             quote_.making.rules.size() > 1 ? by_margin + ", then raised by the plant's rules" : by_margin,
             with({}, {"cost_per_thousand", "order.margin"})});
        add({"contribution", "money", quote_.contribution_per_thousand.to_double(),
             "price less the per-unit lines, net of recovery, / order.quantity x 1000",
             with(lines_that(quote_,
                             [](const CostLine& line) {
                                 return line.behaviour == contract::Behaviour::per_unit || is_recovery(line);
                             }),
                  {"price", "order.quantity"})});
        if (quote_.cash) add_cash(*quote_.cash);
        add({"order_value", "money", quote_.sale.order_value.to_double(),
             "price x order.quantity / 1000, rounded to the currency's coin", with({}, {"price", "order.quantity"})});
        add({"profit", "money", quote_.sale.profit.to_double(), "order_value - cost",
             with({}, {"order_value", "cost"})});
        add({"profit_share", "1", quote_.sale.profit_share, "profit / order_value",
             with({}, {"profit", "order_value"})});
    }

    void add_cash(const answers::CashMargin& cash) {
        const auto is_per_run = [](const CostLine& line) {
            return line.behaviour == contract::Behaviour::per_run && !is_recovery(line);
        };
        add({"per_run_cost", "money", cash.per_run_cost.to_double(), "the sum of the per-run lines",
             lines_that(quote_, is_per_run)});
        add({"price_less_cash_per_thousand", "money", cash.price_less_cash_per_thousand.to_double(),
             "contribution less per_run_cost / order.quantity x 1000, rounded once",
             with({}, {"contribution", "per_run_cost", "order.quantity"})});
        if (cash.break_even)
            add({"break_even_quantity", "1", *cash.break_even,
                 "per_run_cost / contribution x 1000, in whole boxes, at least one",
                 with({}, {"per_run_cost", "contribution"})});
    }

    void add(Formula formula) { formulas_.push_back(std::move(formula)); }
    void add_at(std::size_t step, Formula formula) {
        formula.step = step;
        add(std::move(formula));
    }

    const Quote& quote_;
    std::vector<Formula> formulas_;
};

}  // namespace

std::vector<Formula> formulas_of(const Quote& quote) {
    return FormulaList(quote).all();
}

const std::vector<std::string>& formula_names() {
    static const std::vector<std::string> names = {"cost",         "cost_per_thousand",
                                                   "cost_per_m2",  "cost_per_tonne",
                                                   "recovery",     "waste_cost",
                                                   "issued",       "product",
                                                   "loss",         "nx",
                                                   "ny",           "intake",
                                                   "step_loss",    "step_waste_cost",
                                                   "machine_hours"};
    return names;
}

const std::vector<std::string>& price_formula_names() {
    static const std::vector<std::string> names = {
        "price",       "contribution", "per_run_cost", "price_less_cash_per_thousand", "break_even_quantity",
        "order_value", "profit",       "profit_share"};
    return names;
}

}  // namespace flutebook::quoting
