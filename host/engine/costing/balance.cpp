#include "host/engine/costing/balance.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <string>

namespace flutebook::engine {
namespace {

constexpr double hair = 1e-9;  // of what came in

class BlockBalance {
public:
    BlockBalance(const Columns& columns, const Slots& slots, const Graph& graph)
        : columns_(columns), slots_(slots), graph_(graph), losses_(slots.models[graph.shedder].losses) {}

    std::optional<Fault> check(std::size_t rows) {
        add_up(rows);
        for (std::size_t r = 0; r < rows; ++r) {
            if (!(std::fabs(in_[r] - out_[r]) <= hair * in_[r])) return Fault{r, astray(r)};
            if (!(least_loss_[r] >= -hair * in_[r])) return Fault{r, below_zero(r)};
        }
        return std::nullopt;
    }

private:
    double at(Slot slot, std::size_t index, std::size_t row) const { return columns_.column(slot, index)[row]; }
    std::size_t steps() const { return columns_.shape().steps; }

    void add_up(std::size_t rows) {
        const double* quantity = columns_.column(slots_.quantity, 0);
        const double* box = columns_.column(slots_.box_area, 0);
        const double* grammage = columns_.column(slots_.board_grammage, 0);
        const double* adhesive = columns_.column(slots_.adhesive, 0);
        for (std::size_t r = 0; r < rows; ++r) {
            in_[r] = adhesive[r];
            out_[r] = quantity[r] * box[r] * grammage[r] / 1000;
        }
        for (std::size_t p = 0; p < columns_.shape().plies; ++p) {
            const double* issued = columns_.column(slots_.issued, p);
            for (std::size_t r = 0; r < rows; ++r) in_[r] += issued[r];
        }
        for (const Slot loss : losses_)
            for (std::size_t k = 0; k < steps(); ++k) {
                const double* lost = columns_.column(loss, k);
                for (std::size_t r = 0; r < rows; ++r) {
                    out_[r] += lost[r];
                    least_loss_[r] = lost[r] < least_loss_[r] ? lost[r] : least_loss_[r];
                }
            }
    }

    double lost_at(std::size_t step, std::size_t row) const {
        double lost = 0;
        for (const Slot loss : losses_) lost += at(loss, step, row);
        return lost;
    }

    // What leaves a step as good pieces: sheets before the parting step, boxes that are wanted after it.
    double passed_on(std::size_t step, std::size_t row) const {
        const double grammage = at(slots_.board_grammage, 0, row) / 1000;
        const auto parting = static_cast<std::size_t>(at(slots_.parting, 0, row));
        const std::size_t last = steps() - 2;
        if (step < parting) return at(slots_.good, step, row) * at(slots_.sheet_area, 0, row) * grammage;
        const double boxes = step >= last      ? at(slots_.quantity, 0, row)
                             : step == parting ? at(slots_.fed, step + 1, row)
                                               : at(slots_.good, step, row);
        return boxes * at(slots_.box_area, 0, row) * grammage;
    }

    std::string astray(std::size_t row) const {
        std::size_t step = 0;
        double intake = in_[row];
        while (step + 1 < steps() && std::fabs(intake - lost_at(step, row) - passed_on(step, row)) <= hair * in_[row])
            intake = passed_on(step++, row);
        const double missing = intake - lost_at(step, row) - passed_on(step, row);
        return fmt::format(
            "{}: mass does not balance: {:.6g} kg {} at step {} of {:.6g} kg issued; shed what is lost, and only that",
            graph_.models[graph_.shedder].where(), std::fabs(missing), missing > 0 ? "vanish" : "come from nowhere",
            step, in_[row]);
    }

    std::string below_zero(std::size_t row) const {
        for (std::size_t c = 0; c < losses_.size(); ++c)
            for (std::size_t k = 0; k < steps(); ++k)
                if (!(at(losses_[c], k, row) >= -hair * in_[row]))
                    return fmt::format("{}: a loss is below zero: {} kg of {} at step {}; a loss only takes",
                                       graph_.models[graph_.shedder].where(), at(losses_[c], k, row),
                                       graph_.models[graph_.shedder].losses[c].cause, k);
        return {};
    }

    const Columns& columns_;
    const Slots& slots_;
    const Graph& graph_;
    const std::vector<Slot>& losses_;
    std::array<double, block_rows> in_, out_, least_loss_{};
};

}  // namespace

std::optional<Fault> check_balance(const Columns& columns, const Slots& slots, const Graph& graph, std::size_t rows) {
    return BlockBalance(columns, slots, graph).check(rows);
}

}  // namespace flutebook::engine
