#include "host/quoting/formula_losses.hpp"

#include <algorithm>
#include <cmath>
#include <flutebook/run.hpp>
#include <numeric>
#include <string_view>
#include <vector>

namespace flutebook::quoting {

namespace {

constexpr double mm = 1000;  // in a metre

struct CauseLoss {
    std::string_view cause;
    std::vector<double> kg;  // by step
};

// Null where nothing was lost by it.
CauseLoss* find(std::vector<CauseLoss>& losses, std::string_view cause) {
    for (CauseLoss& lost : losses)
        if (lost.cause == cause) return &lost;
    return nullptr;
}

// What the formulas read of a costed row.
class RunFormulas {
public:
    RunFormulas(const engine::Row& row, const engine::Allowances& allowed)
        : way_(*row.candidate),
          allowed_(allowed),
          box_m2_(row.order->layout->blank.area_m2),
          board_(row.order->layout->board),
          quantity_(row.order->quantity),
          trim_(row.order->trim) {}

    [[nodiscard]] std::vector<CauseLoss> losses() {
        const std::size_t parting = way_.route->parting;
        double asked = quantity_;
        for (std::size_t k = way_.route->last_step(); k > 0; --k) {
            const double pieces = k == parting ? part(k, asked) : asked;
            asked = convert(k, pieces, k <= parting ? way_.sheet_area_m2 : box_m2_);
        }
        combine(parting == 0 ? part(0, asked) : asked);
        return std::move(losses_);
    }

private:
    void lose(const char* cause, std::size_t step, double m2) { lose_kg(cause, step, run::mass(m2, grammage())); }

    void lose_kg(const char* cause, std::size_t step, double kg) {
        CauseLoss* lost = find(losses_, cause);
        if (lost == nullptr) {
            lost = &losses_.emplace_back();
            lost->cause = cause;
            lost->kg.resize(way_.route->last_step() + 2);
        }
        lost->kg[step] += kg;
    }

    [[nodiscard]] double grammage() const { return board_.grammage_gsm; }

    // The sheets that hold the boxes asked for.
    double part(std::size_t step, double boxes) {
        const double sheets = run::sheets_for(boxes, way_.ups);
        lose("cut-out", step, sheets * (way_.sheet_area_m2 - way_.ups * box_m2_));
        lose("surplus", step, (sheets * way_.ups - boxes) * box_m2_);
        return sheets;
    }

    // What the converter is fed for so many good pieces.
    double convert(std::size_t step, double pieces, double piece_m2) {
        const double setup = allowed_.setup_sheets[step];
        const double fed = run::fed(pieces, allowed_.run_waste[step], setup);
        lose("setup", step, setup * piece_m2);
        lose("rejects", step, (fed - setup - pieces) * piece_m2);
        return fed;
    }

    void combine(double sheets) {
        const run::WebCut cut{way_.roll_width_mm / mm,
                              (way_.roll_width_mm - way_.trim_mm) / mm,
                              way_.outs,
                              way_.chop_mm / mm,
                              way_.sheet_area_m2,
                              plant::web_share(trim_, way_.roll_width_mm - way_.trim_mm, way_.roll_width_mm)};
        const double metres =
            run::web_length(run::good_length(cut, sheets), allowed_.run_waste[0], allowed_.order_change_m);
        const run::WebLoss lost = run::web_loss(cut, metres, allowed_.order_change_m, sheets);
        lose("side-trim", 0, lost.side_trim);
        lose("order-change", 0, lost.order_change);
        lose("corrugator-run", 0, lost.run_waste);
        lose("surplus", 0, lost.surplus);
        for (const geometry::PlyMake& ply : board_.plies)
            lose_kg("roll-ends", 0,
                    allowed_.roll_loss *
                        run::paper_issued(metres * cut.roll_width, ply.grammage_gsm, ply.take_up, allowed_.roll_loss));
    }

    const geometry::Candidate& way_;
    const engine::Allowances& allowed_;
    double box_m2_;
    const geometry::BoardMake& board_;
    double quantity_;
    const plant::TrimPolicy& trim_;
    std::vector<CauseLoss> losses_;
};

bool are_same(const std::vector<double>& left, const std::vector<double>& right, double hair) {
    return std::equal(left.begin(), left.end(), right.begin(), right.end(),
                      [&](double a, double b) { return std::fabs(a - b) <= hair; });
}

}  // namespace

std::string lost_otherwise_by(const engine::Engine& engine, const engine::Row& row, const engine::Costing& costing) {
    const contract::Model& shedder = engine.graph().models[engine.graph().shedder];
    const double issued_kg = std::accumulate(costing.issued_kg.begin(), costing.issued_kg.end(), costing.adhesive_kg);
    const double hair = 1e-9 * issued_kg;
    const std::vector<double> none(row.steps());
    auto formula = RunFormulas(row, costing.allowances).losses();
    for (std::size_t c = 0; c < shedder.losses.size(); ++c) {
        CauseLoss* found = find(formula, shedder.losses[c].cause);
        if (!are_same(costing.losses[c], found == nullptr ? none : found->kg, hair)) return shedder.id;
        if (found != nullptr) found->kg = none;
    }
    const bool is_all = std::all_of(formula.begin(), formula.end(),
                                    [&](const CauseLoss& lost) { return are_same(lost.kg, none, hair); });
    return is_all ? "" : shedder.id;
}

}  // namespace flutebook::quoting
