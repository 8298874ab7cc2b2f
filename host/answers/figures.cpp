#include "host/answers/figures.hpp"

#include <fmt/format.h>

namespace flutebook::answers {

namespace {

constexpr const char* no_unit = "";  // of a text

class FigureList {
public:
    void text(const std::string& key, const std::string& value) { add(key, value, std::nullopt, no_unit); }
    void number(const std::string& key, double value, const char* unit) {
        add(key, fmt::format("{}", value), value, unit);
    }
    void amount(const std::string& key, Money value) { number(key, value.to_double(), "money"); }
    [[nodiscard]] std::vector<Leaf> take() { return std::move(list_); }

private:
    void add(const std::string& key, const std::string& value, std::optional<double> number, const char* unit) {
        Leaf& leaf = list_.emplace_back();
        leaf.path = key;
        leaf.text = value;
        leaf.number = number;
        leaf.unit = unit;
    }

    std::vector<Leaf> list_;
};

// "[null, 547]": entries before the first step have no meaning and are null.
std::string steps_text(const std::vector<double>& pieces, std::size_t first_step) {
    std::vector<std::string> texts;
    for (std::size_t step = 0; step < pieces.size(); ++step)
        texts.push_back(step < first_step ? "null" : fmt::format("{}", pieces[step]));
    return fmt::format("[{}]", fmt::join(texts, ", "));
}

void add_layout(FigureList& figures, const Quote& quote) {
    figures.text("corrugator", quote.corrugator);
    figures.text("route", fmt::format("[{}]", fmt::join(quote.route, ", ")));
    figures.number("roll_width_mm", quote.roll_width_mm, "mm");
    figures.number("outs", quote.outs, "1");
    figures.number("trim_mm", quote.trim_mm, "mm");
    figures.number("ups", quote.ups, "1");
    figures.number("chop_mm", quote.chop_mm, "mm");
    figures.number("slit_mm", quote.slit_mm, "mm");
    figures.number("blank.length_mm", quote.blank.length_mm, "mm");
    figures.number("blank.width_mm", quote.blank.width_mm, "mm");
    figures.number("blank.area_m2", quote.blank.area_m2, "m2");
    figures.number("board_grammage", quote.board_grammage_gsm, "g/m2");
    figures.number("web_length_m", quote.web_length_m, "m");
    figures.text("fed", steps_text(quote.fed, 1));
    figures.text("good", steps_text(quote.good, 0));
}

void add_mass(FigureList& figures, const MassBalance& mass) {
    figures.number("mass_kg.issued", mass.issued_kg, "kg");
    figures.number("mass_kg.adhesive", mass.adhesive_kg, "kg");
    figures.number("mass_kg.product", mass.product_kg, "kg");
    for (const auto& cause : mass.losses) figures.number("mass_kg.loss." + cause.cause, cause.total_kg, "kg");
}

// The contribution is no figure of its own: it is the price less lines, and all of these are compared.
template <typename QuoteOrSet>
void add_totals(FigureList& figures, const QuoteOrSet& quote) {
    figures.amount("cost", quote.cost);
    figures.amount("cost_per_thousand", quote.cost_per_thousand);
    figures.amount("price_per_thousand", quote.price_per_thousand);
    figures.amount("waste_cost", quote.waste_cost);
    figures.amount("recovery", quote.recovery);
    // The request's own margin is no rule that may have changed.
    for (const PriceRule& rule : quote.making.rules)
        if (rule.kind != PriceRule::Kind::request_margin)
            figures.number(fmt::format("price_rules.{}", to_text(rule.kind)), rule.value, "1");
    if (quote.making.second)
        figures.number("second_currency.price_per_thousand", quote.making.second->price_per_thousand.to_double(),
                       quote.making.second->currency.c_str());
}

// What the price leaves out, where the document says it.
void add_not_in_price(FigureList& figures, const std::optional<std::vector<NotInPrice>>& items) {
    if (!items) return;
    std::vector<std::string> texts;
    for (const NotInPrice& item : *items)
        texts.push_back(item.plugin + "." + item.line + (item.setting ? " by " + *item.setting : "") +
                        (item.amount ? fmt::format(" {}", item.amount->to_double()) : ""));
    figures.text("not_in_price", fmt::format("[{}]", fmt::join(texts, ", ")));
}

void add_amounts(FigureList& figures, const Quote& quote) {
    add_totals(figures, quote);
    figures.amount("cost_per_m2", quote.cost_per_m2);
    figures.amount("cost_per_tonne", quote.cost_per_tonne);
}

void add_steps(FigureList& figures, const std::vector<StepWaste>& steps) {
    for (std::size_t step = 0; step < steps.size(); ++step) {
        const std::string entry = fmt::format("waste_by_step[{}].", step + 1);
        figures.number(entry + "step", static_cast<double>(step), "1");
        figures.text(entry + "name", steps[step].step_name);
        figures.number(entry + "intake_kg", steps[step].intake_kg, "kg");
        figures.number(entry + "loss_kg", steps[step].loss_kg, "kg");
        figures.amount(entry + "cost", steps[step].cost);
    }
}

void add_runners_up(FigureList& figures, const std::vector<RunnerUp>& ways) {
    for (std::size_t i = 0; i < ways.size(); ++i) {
        const std::string entry = fmt::format("runners_up[{}].", i + 1);
        figures.text(entry + "candidate", ways[i].candidate);
        figures.amount(entry + "cost", ways[i].cost);
        figures.amount(entry + "dearer_by", ways[i].dearer_by);
    }
}

}  // namespace

std::vector<Leaf> figures_of(const Quote& quote) {
    FigureList figures;
    add_layout(figures, quote);
    add_mass(figures, quote.mass);
    add_amounts(figures, quote);
    figures.number("nx", quote.nx, "1");
    figures.number("ny", quote.ny, "1");
    figures.number("web_area_m2", quote.web_area_m2, "m2");
    add_steps(figures, quote.waste_by_step);
    figures.number("candidates", static_cast<double>(quote.candidates), "1");
    add_runners_up(figures, quote.runners_up);
    add_not_in_price(figures, quote.not_in_price);
    return figures.take();
}

std::vector<Leaf> figures_of(const SetQuote& set) {
    FigureList figures;
    add_totals(figures, set);
    add_not_in_price(figures, set.not_in_price);
    return figures.take();
}

std::vector<Leaf> figures_of(const Unmakeable& unmakeable) {
    FigureList figures;
    for (std::size_t i = 0; i < unmakeable.refused.size(); ++i) {
        const std::string entry = fmt::format("refused[{}].", i + 1);
        figures.text(entry + "candidate", unmakeable.refused[i].candidate);
        figures.text(entry + "limit", unmakeable.refused[i].limit);
    }
    return figures.take();
}

std::vector<Leaf> heading_figures(const plant::Plant& plant) {
    FigureList figures;
    figures.text("plant", plant.name);
    figures.text("currency", plant.currency);
    return figures.take();
}

}  // namespace flutebook::answers
