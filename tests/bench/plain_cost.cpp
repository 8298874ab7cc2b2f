#include "tests/bench/plain_cost.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <flutebook/run.hpp>

namespace flutebook::bench {
namespace {

constexpr std::size_t most_steps = 8;

// One converter or the corrugator or dispatch, as the sums need it.
struct Step {
    double fed, hours, lost;
    double run_waste, setup_sheets, setup_min, speed, power, area, colours;
    plant::Hourly hourly;
    bool glues, cuts;
};

double not_negative(double kg) {
    return std::max(kg, 0.0);
}

class Sum {
public:
    Sum(const engine::Row& row, const Prices& prices, const Extras& extras)
        : order_(*row.order),
          candidate_(*row.candidate),
          layout_(*row.order->layout),
          price_(prices),
          extra_(extras),
          last_(row.candidate->route->last_step()),
          grammage_(layout_.board.grammage_gsm),
          box_(layout_.blank.area_m2) {}

    std::optional<Money> cost() {
        set_steps();
        run();
        if (!balances()) return std::nullopt;
        if (candidate_.corrugator->is_supplier)
            charge_board();
        else
            charge_paper_and_heat();
        for (std::size_t k = 0; k <= last_ + 1; ++k) charge_step(k);
        charge_dispatch();
        if (too_large_) return std::nullopt;
        return total_;
    }

private:
    void set_steps() {
        for (std::size_t k = 0; k <= last_ + 1; ++k) step_[k] = Step{};
        const auto& web = *candidate_.corrugator;
        step_[0].run_waste = web.run_waste;
        step_[0].setup_min = web.order_change_min;
        step_[0].power = web.power_kw;
        step_[0].hourly = web.hourly;
        for (std::size_t k = 1; k <= last_; ++k) {
            const plant::Converter& machine = *candidate_.route->converters[k - 1];
            step_[k].run_waste = machine.run_waste;
            step_[k].setup_sheets = machine.setup_sheets;
            step_[k].setup_min = machine.setup_min;
            step_[k].speed = machine.speed_per_h;
            step_[k].power = machine.power_kw;
            step_[k].hourly = machine.hourly;
            step_[k].area = k <= candidate_.route->parting ? candidate_.sheet_area_m2 : box_;
            step_[k].colours = k == candidate_.route->colours_step ? order_.request->colours : 0;
            step_[k].glues = machine.kind == plant::Converter::Kind::folder_gluer;
            step_[k].cuts = machine.kind == plant::Converter::Kind::die_cutter;
        }
        step_[last_ + 1].setup_min = order_.plant->dispatch.minutes;
        step_[last_ + 1].hourly = order_.plant->dispatch.hourly;
    }

    void lose(std::size_t k, double kg) {
        step_[k].lost += kg;
        lost_ += kg;
    }

    void part(std::size_t k, double sheets, double asked) {
        lose(k, not_negative(run::mass(sheets * (candidate_.sheet_area_m2 - candidate_.ups * box_), grammage_)));
        lose(k, not_negative(run::mass((sheets * candidate_.ups - asked) * box_, grammage_)));
    }

    void run() {
        const std::size_t d = candidate_.route->parting;
        double asked = order_.quantity;
        for (std::size_t k = last_; k > 0; --k) {
            Step& step = step_[k];
            const double pieces = k == d ? run::sheets_for(asked, candidate_.ups) : asked;
            step.fed = run::fed(pieces, step.run_waste, step.setup_sheets);
            lose(k, run::mass(step.setup_sheets * step.area, grammage_));
            lose(k, not_negative(run::mass((step.fed - step.setup_sheets - pieces) * step.area, grammage_)));
            if (k == d) part(k, pieces, asked);
            step.hours = step.fed / step.speed;
            asked = step.fed;
        }
        const double sheets = d == 0 ? run::sheets_for(asked, candidate_.ups) : asked;
        combine(sheets);
        if (d == 0) part(0, sheets, asked);
    }

    void combine(double sheets) {
        const auto& web = *candidate_.corrugator;
        const double roll = candidate_.roll_width_mm / 1000;
        const double chop = candidate_.chop_mm / 1000;
        const double good_length = run::cuts(sheets, candidate_.outs) * chop;
        const double length = run::web_length(good_length, web.run_waste, web.order_change_m);
        area_ = length * roll;
        const run::WebLoss loss =
            run::web_loss({roll, roll - candidate_.trim_mm / 1000, candidate_.outs, chop, candidate_.sheet_area_m2},
                          length, web.order_change_m, sheets);
        double paper = 0;
        double glue = 0;
        for (std::size_t p = 0; p < layout_.board.plies.size(); ++p) {
            const geometry::PlyMake& ply = layout_.board.plies[p];
            issued_[p] = run::paper_issued(area_, ply.grammage_gsm, ply.take_up, web.roll_loss);
            paper += issued_[p];
            glue += ply.adhesive_gsm;
        }
        dry_ = run::mass(area_, glue);
        in_ = paper + dry_;
        lose(0, paper * web.roll_loss);
        lose(0, not_negative(run::mass(loss.side_trim, grammage_)));
        lose(0, run::mass(loss.order_change, grammage_));
        lose(0, not_negative(run::mass(loss.run_waste, grammage_)));
        lose(0, run::mass(loss.surplus, grammage_));
        const double speed = layout_.board.media == 1 ? web.speed_single_m_min : web.speed_double_m_min;
        step_[0].hours = web.is_supplier ? 0 : length / (speed * 60);
    }

    bool balances() const {
        const double product = order_.quantity * box_ * grammage_ / 1000;
        return std::fabs(in_ - product - lost_) <= 1e-9 * in_;
    }

    void charge(double quantity, double rate) {
        if (quantity == 0 && rate == 0) return;
        const auto amount = Money::of(quantity, rate);
        too_large_ = too_large_ || !amount;
        total_ += amount.value_or(Money{});
    }

    void charge_board() {
        const double kg_per_m2 = layout_.board.plies.front().grammage_gsm / 1000;
        charge(issued_[0] / kg_per_m2, layout_.board.plies.front().price_per_kg * kg_per_m2);
    }

    void charge_paper_and_heat() {
        double paper = 0;
        double capacity = 0;
        for (std::size_t p = 0; p < layout_.board.plies.size(); ++p) {
            const geometry::PlyMake& ply = layout_.board.plies[p];
            charge(issued_[p], ply.price_per_kg);
            const double kg = area_ * ply.grammage_gsm * ply.take_up / 1000;
            paper += kg;
            capacity += kg * ((1 - ply.moisture) * price_.c_fibre + ply.moisture * price_.c_water);
        }
        charge(dry_, price_.starch_share * price_.starch_price + price_.caustic_share * price_.caustic_price +
                         price_.borax_share * price_.borax_price);
        const double water = dry_ * (1 / price_.solids - 1);
        const double warming = (capacity + water * price_.c_water) * (price_.t_bond - price_.t_in);
        const double heat = warming + (price_.evaporated_share * water + price_.moisture_drop * paper) * price_.h_evap;
        charge(heat * (1 + price_.standing_heat) / 3600 / (price_.boiler_efficiency * price_.distribution_efficiency),
               price_.fuel_price);
    }

    void charge_step(std::size_t k) {
        const Step& step = step_[k];
        charge(0 - step.lost, price_.scrap_price / 1000);
        charge(step.lost, price_.handling / 1000);
        const double setup_hours = step.setup_min / 60;
        charge(setup_hours, step.hourly.labour);
        charge(setup_hours, step.hourly.fixed);
        charge(step.hours, step.hourly.labour);
        charge(step.hours, step.hourly.fixed);
        charge(step.power * step.hours + price_.baler_kwh_per_tonne / 1000 * step.lost, price_.power_price);
        if (k >= 1 && k <= last_) charge_consumables_and_tools(k);
    }

    void charge_consumables_and_tools(std::size_t k) {
        const Step& step = step_[k];
        const double length = layout_.blank.joint_mm / 1000 + extra_.joint_length / 1000;
        charge(step.fed * step.area * step.colours * (extra_.coverage * price_.ink_laydown / 1000), price_.ink_price);
        if (step.glues) {
            const double stitches = length > 0 ? run::whole_up(length * 1000 / price_.stitch_spacing) + 1 : 0;
            if (extra_.joint == 0) charge(step.fed * (length * price_.glue_laydown / 1000), price_.glue_price);
            if (extra_.joint == 1) charge(step.fed * (stitches * price_.stitch_wire / 1000), price_.wire_price);
            if (extra_.joint == 2) charge(step.fed * length, price_.tape_price);
        }
        if (step.colours > 0 && extra_.plate_boxes > 0)
            charge(order_.quantity,
                   step.colours * step.area * (extra_.plate_share * price_.plate_price / extra_.plate_boxes));
        if (step.cuts && k == candidate_.route->parting && extra_.die_boxes > 0)
            charge(order_.quantity,
                   (step.area * price_.die_board_price + candidate_.ups * extra_.rule_length * price_.rule_price) /
                       extra_.die_boxes);
    }

    void charge_dispatch() {
        const double bundles = run::whole_up(order_.quantity / std::max(price_.bundle_boxes, 1.0));
        charge(price_.bundle_boxes > 0 ? bundles * price_.strap_length : 0, price_.strap_price);
        const double area = order_.quantity * box_;
        const double volume = area * (layout_.board.caliper_mm / 1000);
        const double kg = run::mass(area, grammage_);
        const double by_volume = price_.pallet_volume > 0 ? volume / price_.pallet_volume : 0;
        const double by_mass = price_.pallet_load > 0 ? kg / price_.pallet_load : 0;
        charge(run::whole_up(std::max(by_volume, by_mass)), price_.pallet_price);
        charge(extra_.distance * std::max(kg, volume * price_.freight_density) / 1000, price_.freight_price);
        charge(extra_.distance > 0 ? 1 : 0, price_.drop_price);
    }

    const engine::Order& order_;
    const geometry::Candidate& candidate_;
    const geometry::Layout& layout_;
    const Prices& price_;
    const Extras& extra_;
    std::size_t last_;
    double grammage_, box_;
    std::array<Step, most_steps> step_;  // those of this route are set
    std::array<double, 5> issued_;
    double area_ = 0, dry_ = 0, in_ = 0, lost_ = 0;
    bool too_large_ = false;
    Money total_;
};

}  // namespace

std::optional<Money> plain_cost(const engine::Row& row, const Prices& prices, const Extras& extras) {
    return Sum(row, prices, extras).cost();
}

}  // namespace flutebook::bench
