#include "host/workbooks/run_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace flutebook::workbooks {

namespace {

using Columns = std::vector<std::pair<RunShape, const answers::Quote*>>;

constexpr std::size_t rows_above = 2;  // the head, and what makes it

struct NameOfOrder {
    const char *name, *unit;
};
constexpr std::array<NameOfOrder, 12> given_of_order = {{{"order.quantity", "1"},
                                                         {"box.area", "m2"},
                                                         {"sheet.area", "m2"},
                                                         {"sheet.chop", "m"},
                                                         {"sheet.ups", "1"},
                                                         {"board.grammage", "g/m2"},
                                                         {"web.roll_width", "m"},
                                                         {"web.trim", "m"},
                                                         {"web.outs", "1"},
                                                         {"web.share", "1"},
                                                         {"web.order_change", "m"},
                                                         {"web.roll_loss", "1"}}};

RunShape widest_of(const Columns& columns) {
    RunShape result{0, 0, 0};
    for (const auto& [shape, quote] : columns) {
        result.last_converter = std::max(result.last_converter, shape.last_converter);
        result.plies = std::max(result.plies, shape.plies);
    }
    return result;
}

std::string step_text(std::size_t step) {
    return fmt::format("step {}", step);
}

std::string ply_text(std::size_t ply) {
    return fmt::format("ply {}", ply + 1);
}

bool loses(const answers::Quote& quote, const std::string& cause, std::size_t step) {
    return std::any_of(quote.mass.losses.begin(), quote.mass.losses.end(), [&](const auto& loss) {
        return loss.cause == cause && step < loss.by_step_kg.size() && loss.by_step_kg[step] != 0;
    });
}

// Those of the arithmetic first, then what another model of the run adds.
std::vector<std::string> causes_at(const Columns& columns, std::size_t step) {
    std::vector<std::string> result;
    const auto add = [&](const std::string& cause) {
        if (std::find(result.begin(), result.end(), cause) == result.end()) result.push_back(cause);
    };
    for (const auto& [shape, quote] : columns)
        for (const std::string& cause : known_causes(shape, step)) add(cause);
    for (const auto& column : columns)
        for (const auto& loss : column.second->mass.losses)
            if (loses(*column.second, loss.cause, step)) add(loss.cause);
    return result;
}

}  // namespace

std::vector<std::string> known_causes(const RunShape& shape, std::size_t step) {
    if (step > shape.last_converter) return {};
    std::vector<std::string> result = {"setup", "rejects"};
    if (step == 0) result = {"roll-ends", "side-trim", "order-change", "corrugator-run", "surplus"};
    if (step == shape.parting) result.push_back("cut-out");
    if (step == shape.parting && step > 0) result.push_back("surplus");
    return result;
}

RunRows::RunRows(const Columns& columns) {
    const RunShape widest = widest_of(columns);
    add_given(widest);
    add_pieces(widest);
    add_web(widest);
    add_losses(columns, widest);
    for (const char* total : {"mass.product", "mass.loss", "balance"}) add({total}, "", "kg");
}

void RunRows::add(const RunKey& key, const std::string& where, const std::string& unit) {
    labels_.push_back({said(key.name), said(where), said(unit)});
    rows_of_keys_[key] = rows_above + labels_.size();
}

void RunRows::add_given(const RunShape& widest) {
    for (const NameOfOrder& given : given_of_order) add({given.name}, "", given.unit);
    add({"step.run_waste", 0}, step_text(0), "1");
    for (std::size_t k = 1; k <= widest.last_converter; ++k) {
        add({"step.run_waste", k}, step_text(k), "1");
        add({"step.setup_sheets", k}, step_text(k), "1");
        add({"step.piece_area", k}, step_text(k), "m2");
    }
    for (std::size_t p = 0; p < widest.plies; ++p) {
        add({"ply.grammage", p}, ply_text(p), "g/m2");
        add({"ply.take_up", p}, ply_text(p), "1");
        add({"ply.adhesive", p}, ply_text(p), "g/m2");
    }
}

// Backwards, as they follow from one another.
void RunRows::add_pieces(const RunShape& widest) {
    for (std::size_t k = widest.last_converter; k > 0; --k) {
        add({"run.good", k}, step_text(k), "1");
        add({"run.fed", k}, step_text(k), "1");
    }
    add({"run.good", 0}, step_text(0), "1");
}

void RunRows::add_web(const RunShape& widest) {
    add({"web.cuts"}, "", "1");
    add({"web.good_length"}, "", "m");
    add({"web.length"}, "", "m");
    add({"web.area"}, "", "m2");
    for (std::size_t p = 0; p < widest.plies; ++p) add({"paper.issued", p}, ply_text(p), "kg");
    add({"mass.issued"}, "", "kg");
    add({"adhesive.dry"}, "", "kg");
}

void RunRows::add_losses(const Columns& columns, const RunShape& widest) {
    first_loss_ = rows_above + labels_.size() + 1;
    for (std::size_t k = 0; k <= widest.last_converter; ++k)
        for (const std::string& cause : causes_at(columns, k)) add({cause, k}, step_text(k), "kg");
    last_loss_ = rows_above + labels_.size();
    for (std::size_t k = 0; k <= widest.last_converter; ++k) add({"scrap.mass", k}, step_text(k), "kg");
}

}  // namespace flutebook::workbooks
