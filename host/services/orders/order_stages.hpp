// An order's five costings, from the quote to what really was, each with one thing more as it was:
//
//   quoted     C0  the quote
//   standard   C1  the quote for the boxes that were made
//   converted  C2  the converters as posted; the corrugator, the quote's own, runs what the quote allows it for the
//                  good sheets that were posted
//   used       C3  the corrugator as posted too
//   paid       C4  at the prices of the days on which the corrugator ran
//
// Machines. Who answers for a difference decides where it falls: another converter than was quoted is yield, another
// corrugator usage. A row's machine stands for the route's step that names it, else for the first of its kind. Where
// several machines ran for one step, all of it is costed at the rates of the one that was fed the most, or ran the most
// metres; what each may lose is its own. Parting and printing stay at their steps. Where runs were cut from other
// rolls, C3 tells models the average roll width, by metres, and the outs of the longest run; paper, adhesive and losses
// are worked out run by run.
//
// Allowances. C2 allows the corrugator what C1 did, so that an order made exactly as its quote allows differs in
// nothing but volume, whatever a plant's own model makes of the allowances. Roll ends are not weighed by order: C3 has
// them at the allowance of each corrugator that ran.
//
// The floor. Pieces that a step made and the next was not fed stand on the floor, as in the month: no loss, and no
// credit for scrap. So do the blanks by which full sheets exceed what the next step takes, which a quote has as
// surplus.
//
// Setups. A run begins with setup sheets, or order-change metres; a row without continues one. Each run is one setup of
// its machine, and a machine that ran at all was set up once.
//
// Prices. Only papers have a price of the day. A ply's is that of its paper in today's files on the days of the
// corrugator's runs, weighted by what each run used of it; the days on which converters ran change no price.
#pragma once

#include <string>
#include <vector>

#include "host/engine/engine.hpp"
#include "host/month_answers/order_answer.hpp"
#include "host/orders/order_record.hpp"
#include "host/plant/plant.hpp"
#include "host/production/order_actual.hpp"
#include "host/saved_quotes/saved_workplace.hpp"

namespace flutebook::services {

/// The order was made: nothing of it is missing.
[[nodiscard]] std::vector<answers::StepRan> steps_ran(const orders::OrderRecord& order,
                                                      const production::OrderActual& actual);

struct StageCostings {
    engine::Costing quoted, standard, converted, used, paid;
};

/// What the other pieces of a set cost, stage by stage.
struct StageCosts {
    engine::ClassCosts quoted{}, standard{}, converted{}, used{}, paid{};
};

/// Adds what a costed piece comes to.
void add_costs(StageCosts& sum, const engine::Graph& graph, const StageCostings& piece);

/// `engine` was started with the quoted plant; `others` counts where the order is the first piece of a set. Throws
/// InputError (plant) where a paper has no price today for a day on which it ran, ModelError, and LedgerError, refused,
/// where a model refuses the order as it was made.
[[nodiscard]] StageCostings cost_stages(const engine::Engine& engine, const saved_quotes::QuotedPlant& quoted,
                                        const orders::OrderRecord& order, const production::OrderActual& actual,
                                        const plant::Plant& today, const StageCosts& others = {});

}  // namespace flutebook::services
