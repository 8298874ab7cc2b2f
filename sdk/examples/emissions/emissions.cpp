// emissions: the greenhouse gases that an order causes in the plant, in kg CO2e, for a customer who asks, and their
// cost where the plant pays for carbon. Every factor is a setting whose description names its source and year: factors
// change much from year to year, so a figure is meaningless without the set that it comes from.
//
//   emissions.paper[p] = issued kg of ply p / 1000 x paper_factor
//   emissions.fuel     = area combined x fuel_by_area x fuel_factor         the plant's gas meter, divided by area
//   emissions.power[k] = kW x hours run x power_factor
//   emissions.scrap[k] = scrap kg / 1000 x scrap_factor
//   carbon[k]          = tonnes CO2e of step k x carbon_price               paper and fuel at step 0; nothing without
//                                                                           a price
// The default of scrap_factor covers the transport to the mill only: what recycling saves is not part of it, and the
// factor must not be used to compare ways of disposal. Sources of the defaults (only EEA's was seen in the original):
// UK Government conversion factors for company reporting (material use: transcribed in public code, year of the set not
// stated; fuels 2025: quoted on other pages; waste disposal 2026: copied by others); European Environment Agency,
// indicator ENER 038, 281 g CO2e/kWh for the EU-27 in 2018.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double kg_per_tonne = 1000;
constexpr Range by_tonne{0, 1e5};  // kg CO2e a tonne
constexpr Range by_kwh{0, 10};     // kg CO2e a kWh
constexpr Range price{0, 1e6};

struct Emissions : Model {
    Need<order> boxes = need("order.quantity", "1", "boxes ordered", {1, 1e7});
    Need<order> area = need("web.area", "m2", "board combined over the whole roll width");
    Need<ply> issued = need("paper.issued", "kg", "paper issued for each ply");
    Need<step> draw = need("step.power", "kW", "power that each machine draws while it runs");
    Need<step> hours = need("run.hours", "h", "hours that each machine runs");
    Need<step> lost = need("scrap.mass", "kg", "all that each step loses");

    Setting<by_paper> paper_factor = setting(
        "paper_factor", "kg/t", 1199.72542, by_tonne,
        "kg CO2e a tonne of paper; default: board from primary material, UK Government conversion factors, material "
        "use, year of the set not stated, seen second-hand; from recovered paper the same set has 1098.11442");
    Setting<by_plant> fuel_by_area = setting("fuel_by_area", "kWh/m2", required, {0, 1000},
                                             "fuel by area combined: a month's gas meter over the month's board");
    Setting<by_plant> fuel_factor = setting(
        "fuel_factor", "kg/kWh", 0.18231, by_kwh,
        "kg CO2e a kWh of fuel, by gross calorific value; default: natural gas, UK Government conversion factors 2025, "
        "seen second-hand");
    Setting<by_plant> power_factor =
        setting("power_factor", "kg/kWh", 0.281, by_kwh,
                "kg CO2e a kWh of electricity; default: EU-27 grid of 2018, European Environment Agency, ENER 038");
    Setting<by_plant> scrap_factor =
        setting("scrap_factor", "kg/t", 4.65358, by_tonne,
                "kg CO2e a tonne of scrap; default: transport of board to recycling, UK Government conversion factors "
                "2026, waste disposal, closed loop, seen second-hand");
    Setting<by_plant> carbon_price =
        setting("carbon_price", "money/t", 0, price, "what a tonne CO2e costs the plant; 0 where it pays nothing");

    Provide<ply> of_paper = provide("emissions.paper", "kg", "CO2e of each ply's paper");
    Provide<order> of_fuel = provide("emissions.fuel", "kg", "CO2e of the heat");
    Provide<step> of_power = provide("emissions.power", "kg", "CO2e of each machine's electricity");
    Provide<step> of_scrap = provide("emissions.scrap", "kg", "CO2e of each step's scrap");
    Provide<order> total = provide("emissions.total", "kg", "CO2e of the order");
    Provide<order> per_box = provide("emissions.per_box", "kg", "CO2e of one box");
    Line<step> carbon = line("emissions.carbon", "t", system, per_unit, "Carbon price");

    // Paper and heat, which belong to the corrugator.
    double combine(Frame& f) const {
        const double fuel = f[area] * f[fuel_by_area] * f[fuel_factor];
        f.set(of_fuel, fuel);
        double kg = fuel;
        for (auto p : f.plies()) {
            const double paper = f[issued][p] / kg_per_tonne * f[paper_factor][p];
            f.set(of_paper, p, paper);
            kg += paper;
        }
        return kg;
    }

    void evaluate(Frame& f) const {
        const double combined = combine(f);
        double sum = 0;
        for (auto k : f.steps()) {
            const double power = f[draw][k] * f[hours][k] * f[power_factor];
            const double scrap = f[lost][k] / kg_per_tonne * f[scrap_factor];
            f.set(of_power, k, power);
            f.set(of_scrap, k, scrap);
            const double kg = power + scrap + (k == corrugator ? combined : 0);
            sum += kg;
            if (f[carbon_price] > 0) f.charge(carbon, k, kg / kg_per_tonne, f[carbon_price]);
        }
        f.set(total, sum);
        f.set(per_box, sum / f[boxes]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Emissions, "emissions", "1.0.0", "Greenhouse gases")
