// delivery: the pallets that boxes leave on, and the freight to the customer.
//
//   volume  = quantity x box area x board caliper: boxes travel flat, so a pile of them is as high as their board
//   mass    = quantity x box area x board grammage
//   pallets = ceil(max(volume / pallet_volume, mass / pallet_load))
//   freight = distance x max(mass, volume x freight_density) x freight_price: board is light, so a carrier charges
//             bulky loads as if they weighed freight_density kg a m3
//   loads   = deliveries x ceil(what each fills of a lorry, by pallets or by mass); 0 where a lorry has no limit
//   freight.drop = once a delivery;   freight.further = each lorry more;   freight.lorry = loads x distance x
//   lorry_price
// An order that is called off in several deliveries has its pallets and lorries by delivery. Nothing is charged until
// the plant gives pallets and prices and the request a distance: all are 0 unless they do. Source: common practice, no
// published source; the usual ranges are from memory.
#include <flutebook/plugin.hpp>
#include <flutebook/run.hpp>

#include <algorithm>

using namespace flutebook;

namespace {

constexpr Range price{0, 1e9};
constexpr double kg_per_tonne = 1000;

struct Delivery : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<order> box_area = need("box.area", "m2", "net area of one box");
    Need<order> caliper = need("board.caliper", "m", "thickness of the board");
    Need<order> grammage = need("board.grammage", "g/m2", "combined board, adhesive included");

    Setting<by_plant> pallet_volume =
        setting("pallet_volume", "m3", 0, {0, 100}, "boxes that a pallet holds, by volume; 0: no limit").usual({0, 4});
    Setting<by_plant> pallet_load =
        setting("pallet_load", "kg", 0, {0, 1e5}, "boxes that a pallet holds, by mass; 0: no limit").usual({0, 1500});
    Setting<by_plant> pallet_price =
        setting("pallet_price", "money", 0, price, "one pallet, with its top and wrap").usual({1, 60});
    Setting<by_request> distance = setting("distance", "km", 0, {0, 1e5}, "road to the customer").usual({0, 2500});
    Setting<by_plant> freight_price =
        setting("freight_price", "money/t/km", 0, price, "freight by tonne and km").usual({0.02, 1});
    Setting<by_plant> freight_density =
        setting("freight_density", "kg/m3", 0, {0, 1e4}, "least that a m3 is charged as; 0: by mass alone")
            .usual({0, 400});
    Setting<by_plant> drop_price =
        setting("drop_price", "money", 0, price, "one delivery, whatever its load").usual({0, 250});

    Setting<by_request> deliveries =
        setting("deliveries", "1", 1, {1, 1000}, "deliveries that the order is called off in").usual({1, 60});
    Setting<by_plant> lorry_pallets =
        setting("lorry_pallets", "1", 0, {0, 1e4}, "pallets that a lorry takes; 0: no limit").usual({0, 100});
    Setting<by_plant> lorry_load =
        setting("lorry_load", "kg", 0, {0, 1e6}, "boxes that a lorry takes, by mass; 0: no limit").usual({0, 30000});
    Setting<by_plant> lorry_price =
        setting("lorry_price", "money/km", 0, price, "one lorry by km, however full").usual({0, 5});

    Provide<order> pallet_count = provide("delivery.pallets", "1", "pallets that the order needs; 0 without a limit");
    Provide<order> load_count = provide("delivery.loads", "1", "lorries that the order needs; 0 without a limit");
    Line<step> pallets = line("pallets", "1", material, per_unit, "Pallets");
    Line<step> freight = line("freight", "t km", flutebook::system, per_unit, "Freight");
    Line<step> drop = line("freight.drop", "1", flutebook::system, per_run, "Freight, by delivery");
    Line<step> further = line("freight.further", "1", flutebook::system, per_unit, "Freight, by further lorry");
    Line<step> lorry = line("freight.lorry", "km", flutebook::system, per_unit, "Freight, by lorry");

    // What one limit of a pallet or a lorry asks for, in pallets or lorries; nothing where there is no limit.
    static double filled(double load, double limit) { return limit > 0 ? load / limit : 0; }

    void evaluate(Frame& f) const {
        const double area = f[quantity] * f[box_area];
        const double volume = area * f[caliper];
        const double kg = run::mass(area, f[grammage]);
        const double drops = run::whole_up(f[deliveries]);
        const double pallets_filled = std::max(filled(volume, f[pallet_volume]), filled(kg, f[pallet_load]));
        const double by_delivery = run::whole_up(pallets_filled / drops);
        const double loads =
            drops * run::whole_up(std::max(filled(by_delivery, f[lorry_pallets]), filled(kg / drops, f[lorry_load])));
        f.set(pallet_count, drops * by_delivery);
        f.set(load_count, loads);
        f.charge(pallets, f.dispatch(), drops * by_delivery, f[pallet_price]);
        f.charge(freight, f.dispatch(), f[distance] * std::max(kg, volume * f[freight_density]) / kg_per_tonne,
                 f[freight_price]);
        f.charge(drop, f.dispatch(), f[distance] > 0 ? drops : 0, f[drop_price]);
        f.charge(further, f.dispatch(), f[distance] > 0 ? std::max(loads - drops, 0.0) : 0, f[drop_price]);
        f.charge(lorry, f.dispatch(), loads * f[distance], f[lorry_price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Delivery, "delivery", "1.1.0", "Pallets and freight")
