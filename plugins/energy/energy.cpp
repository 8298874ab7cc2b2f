// energy: the heat that bonds and dries the board, and the power of machines and baler.
//
// Heat, over the mass that passes the corrugator (m of each paper with moisture x; water of the adhesive
// mw = dry x (1 / solids - 1)):
//   Q    = sum m [(1 - x) c_fibre + x c_water] (t_bond - t_in) + mw c_water (t_bond - t_in)
//          + (evaporated_share x mw + moisture_drop x sum m) h_evap                              kJ, theoretical need
//   fuel = Q (1 + standing_heat) / 3600 / (boiler_efficiency x distribution_efficiency)          kWh
// and no heat for a board that is bought as sheets.
// Power: kW x hours run + baler kWh a tonne x what the step loses.
// Sources: conservation of energy, the specific heat of a mixture being the mean by mass of its parts; specific heats
// of fibre and water as in the paper-physics table of ForestBioFacts (Paper Engineers' Association), where fibre is
// 1.45; the default of 1.34 for cellulose is from memory. Heat of evaporation at 100 degC: IAPWS-IF97, 2256.5 kJ/kg.
// Efficiencies, the shares of water driven off and the baler's use are a plant's own: their defaults are from memory,
// and so are all usual ranges.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr Range share{0, 1};
constexpr Range efficiency{0.01, 1};
constexpr Range specific_heat{0, 10};
constexpr Range price{0, 1e6};
constexpr double grams_per_kg = 1000;
constexpr double kg_per_tonne = 1000;
constexpr double kj_per_kwh = 3600;

struct Energy : Model {
    Need<order> made_here =
        need("board.made_here", "1", "1 where the board is made here, 0 where it is bought", {0, 1});
    Need<order> web_area = need("web.area", "m2", "board combined over the whole roll width");
    Need<order> dry = need("adhesive.dry", "kg", "dry adhesive used");
    Need<ply> grammage = need("ply.grammage", "g/m2", "grammage of each paper");
    Need<ply> take_up = need("ply.take_up", "1", "metres of paper per metre of board");
    Need<ply> moisture = need("ply.moisture", "1", "water in each paper, share of its mass", share);
    Need<step> power = need("step.power", "kW", "power that each machine draws while it runs");
    Need<step> hours = need("run.hours", "h", "hours that each machine runs");
    Need<step> lost = need("scrap.mass", "kg", "all that each step loses");

    Setting<by_plant> fuel_price =
        setting("fuel_price", "money/kWh", required, price, "fuel, by its heat").usual({0.01, 0.3});
    Setting<by_plant> power_price =
        setting("power_price", "money/kWh", required, price, "electricity").usual({0.02, 1});
    Setting<by_plant> c_fibre =
        setting("c_fibre", "kJ/kg/K", 1.34, specific_heat, "specific heat of dry fibre").usual({1.2, 1.6});
    Setting<by_plant> c_water =
        setting("c_water", "kJ/kg/K", 4.19, specific_heat, "specific heat of water").usual({4.1, 4.3});
    Setting<by_plant> t_in =
        setting("t_in", "degC", 20, {-40, 100}, "temperature of paper and adhesive as they come").usual({0, 50});
    Setting<by_plant> t_bond =
        setting("t_bond", "degC", 95, {0, 250}, "temperature at which the board bonds").usual({70, 130});
    Setting<by_plant> solids =
        setting("solids", "1", 0.25, {0.05, 1}, "dry share of the adhesive as applied").usual({0.15, 0.45});
    Setting<by_plant> evaporated_share =
        setting("evaporated_share", "1", 0.6, share, "share of the adhesive's water that is driven off")
            .usual({0.2, 1});
    Setting<by_plant> moisture_drop =
        setting("moisture_drop", "1", 0.02, share, "water driven off the paper, share of the paper's mass")
            .usual({0, 0.08});
    Setting<by_plant> h_evap =
        setting("h_evap", "kJ/kg", 2257, {0, 4000}, "heat of evaporation of water").usual({2100, 2500});
    Setting<by_plant> boiler_efficiency =
        setting("boiler_efficiency", "1", 0.82, efficiency, "heat of the steam to heat of the fuel").usual({0.6, 1});
    Setting<by_plant> distribution_efficiency =
        setting("distribution_efficiency", "1", 0.80, efficiency, "heat at the machine to heat of the steam")
            .usual({0.5, 1});
    Setting<by_plant> baler_kwh_per_tonne =
        setting("baler_kwh_per_tonne", "kWh/t", 25, {0, 10000}, "power of extraction and baler by tonne of scrap")
            .usual({0, 150});
    Setting<by_plant> standing_heat =
        setting("standing_heat", "1", 0, {0, 100}, "radiated and standing heat as a share of the theoretical need")
            .usual({0, 2});

    Line<step> heat = line("energy.heat", "kWh", energy, per_unit, "Heat");
    Line<step> electricity = line("energy.power", "kWh", energy, per_unit, "Power");
    Reason cools = reason("t_bond is below t_in");

    // The theoretical need, kJ.
    double heat_need(const Frame& f) const {
        const double area = f[web_area] / grams_per_kg;  // so that area x g/m2 is kg
        const double fibre_heat = f[c_fibre];
        const double water_heat = f[c_water];
        double paper = 0;     // kg
        double capacity = 0;  // kJ/K
        for (auto p : f.plies()) {
            const double kg = area * f[grammage][p] * f[take_up][p];
            const double x = f[moisture][p];
            paper += kg;
            capacity += kg * ((1 - x) * fibre_heat + x * water_heat);
        }
        const double water = f[dry] * (1 / f[solids] - 1);
        const double warming = (capacity + water * water_heat) * (f[t_bond] - f[t_in]);
        return warming + (f[evaporated_share] * water + f[moisture_drop] * paper) * f[h_evap];
    }

    void evaluate(Frame& f) const {
        if (f[t_bond] < f[t_in]) f.refuse(cools);
        const double fuel = f[made_here] * heat_need(f) * (1 + f[standing_heat]) / kj_per_kwh /
                            (f[boiler_efficiency] * f[distribution_efficiency]);
        f.charge(heat, corrugator, fuel, f[fuel_price]);
        const double baler = f[baler_kwh_per_tonne] / kg_per_tonne;
        for (auto k : f.steps())
            f.charge(electricity, k, f[power][k] * f[hours][k] + baler * f[lost][k], f[power_price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Energy, "energy", "1.0.0", "Heat and power")
