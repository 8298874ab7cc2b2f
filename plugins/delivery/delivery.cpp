// delivery: the pallets that boxes leave on, and the freight to the customer.
//
//   volume  = quantity x box area x board caliper: boxes travel flat, so a pile of them is as high as their board
//   mass    = quantity x box area x board grammage
//   piles   = bundles side by side on a pallet, all along it, all across it, or some of either, whatever holds most;
//             one where not even one fits. A box that is joined lies folded: half its blank, two boards thick
//   layers  = floor(stack_height / bundle), at least one, and no more than pallet_load allows
//   pallets = ceil(max(volume / pallet_volume, mass / pallet_load, quantity / (piles x bundle_boxes x layers)))
//   freight = distance x max(mass, volume x freight_density) x freight_price: board is light, so a carrier charges
//             bulky loads as if they weighed freight_density kg a m3
//   loads   = deliveries x ceil(what each fills of a lorry, by pallets or by mass); 0 where a lorry has no limit
//   freight.drop = once a delivery;   freight.further = each lorry more;   freight.lorry = loads x distance x
//   lorry_price
// An order that is called off in several deliveries has its pallets and lorries by delivery. Nothing is charged until
// the plant gives pallets and prices and the request a distance: all are 0 unless they do. A plant that gives no
// pallet's length, width and stack height has no pattern, and counts by volume and mass alone. Source: common practice,
// no published source; the usual ranges are from memory, those of a pallet the sizes of ISO 6780 and halves of them.
#include <flutebook/plugin.hpp>
#include <flutebook/run.hpp>

#include <algorithm>

using namespace flutebook;

namespace {

constexpr Range price{0, 1e9};
constexpr double kg_per_tonne = 1000;
constexpr double mm_per_m = 1000;
constexpr double most_side_by_side = 1e6;  // of a bundle of next to no size
constexpr int most_tried = 64;             // columns that lie the other way; more of them gain nothing

// How many of these lie along a length.
double along(double length, double size) {
    return std::min(run::whole_down(length / size), most_side_by_side);
}

// Some columns with their side `a` along the length, the rest of it filled with columns that lie the other way.
double most_in_columns(double length, double width, double a, double b) {
    double most = 0;
    for (int columns = 0; columns <= most_tried && columns <= along(length, a); ++columns)
        most = std::max(most, columns * along(width, b) + along(length - columns * a, b) * along(width, a));
    return most;
}

double piles_on(double length, double width, double a, double b) {
    const double one_way = std::max(along(length, a) * along(width, b), along(length, b) * along(width, a));
    const double both_ways = std::max(most_in_columns(length, width, a, b), most_in_columns(width, length, a, b));
    return std::max({one_way, both_ways, 1.0});
}

struct Delivery : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<order> box_area = need("box.area", "m2", "net area of one box");
    Need<order> caliper = need("board.caliper", "m", "thickness of the board");
    Need<order> grammage = need("board.grammage", "g/m2", "combined board, adhesive included");
    Need<order> blank_length = need("blank.length", "m", "the box laid flat, along the web");
    Need<order> blank_width = need("blank.width", "m", "the box laid flat, along the flutes");
    Need<order> joint = need("box.joint", "m", "length of the maker's joint; 0 where the box has none");

    Setting<by_plant> pallet_volume =
        setting("pallet_volume", "m3", 0, {0, 100}, "boxes that a pallet holds, by volume; 0: no limit").usual({0, 4});
    Setting<by_plant> pallet_load =
        setting("pallet_load", "kg", 0, {0, 1e5}, "boxes that a pallet holds, by mass; 0: no limit").usual({0, 1500});
    Setting<by_plant> pallet_length =
        setting("pallet_length", "mm", 0, {0, 10000}, "a pallet's length; 0: boxes are not laid out").usual({0, 1600});
    Setting<by_plant> pallet_width =
        setting("pallet_width", "mm", 0, {0, 10000}, "a pallet's width; 0: boxes are not laid out").usual({0, 1300});
    Setting<by_plant> stack_height = setting("stack_height", "mm", 0, {0, 10000},
                                             "height to which boxes stand on a pallet; 0: they are not laid out")
                                         .usual({0, 2500});
    Setting<by_plant> bundle_boxes =
        setting("bundle_boxes", "1", 1, {1, 1e6}, "boxes in a bundle, as it is laid on a pallet; 1: loose")
            .usual({1, 200});
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
    Provide<order> layer_boxes =
        provide("delivery.layer_boxes", "1", "boxes in one layer of a pallet; 0 where they are not laid out");
    Provide<order> layer_count =
        provide("delivery.layers", "1", "layers of bundles on a full pallet; 0 where they are not laid out");
    Line<step> pallets = line("pallets", "1", material, per_unit, "Pallets");
    Line<step> freight = line("freight", "t km", flutebook::system, per_unit, "Freight");
    Line<step> drop = line("freight.drop", "1", flutebook::system, per_run, "Freight, by delivery");
    Line<step> further = line("freight.further", "1", flutebook::system, per_unit, "Freight, by further lorry");
    Line<step> lorry = line("freight.lorry", "km", flutebook::system, per_unit, "Freight, by lorry");

    // What one limit of a pallet or a lorry asks for, in pallets or lorries; nothing where there is no limit.
    static double filled(double load, double limit) { return limit > 0 ? load / limit : 0; }

    // How a full pallet is laid; nothing where the plant gives no pallet.
    struct Pattern {
        double in_layer = 0, layers = 0;
    };
    Pattern lay_out(const Frame& f) const {
        const double length = f[pallet_length] / mm_per_m, width = f[pallet_width] / mm_per_m;
        const double bundle = std::max(run::whole_down(f[bundle_boxes]), 1.0);
        const double folded = f[joint] > 0 ? 2 : 1;
        const double a = f[blank_length] / folded, b = f[blank_width];
        const double height = bundle * folded * f[caliper];
        if (!(length > 0 && width > 0 && f[stack_height] > 0 && a > 0 && b > 0 && height > 0)) return {};
        Pattern result{piles_on(length, width, a, b) * bundle, along(f[stack_height] / mm_per_m, height)};
        const double layer_kg = run::mass(result.in_layer * f[box_area], f[grammage]);
        if (f[pallet_load] > 0 && layer_kg > 0)
            result.layers = std::min(result.layers, along(f[pallet_load], layer_kg));
        result.layers = std::max(result.layers, 1.0);
        return result;
    }

    void evaluate(Frame& f) const {
        const double area = f[quantity] * f[box_area];
        const double volume = area * f[caliper];
        const double kg = run::mass(area, f[grammage]);
        const double drops = run::whole_up(f[deliveries]);
        const Pattern pattern = lay_out(f);
        const double pallets_filled = std::max({filled(volume, f[pallet_volume]), filled(kg, f[pallet_load]),
                                                filled(f[quantity], pattern.in_layer * pattern.layers)});
        const double by_delivery = run::whole_up(pallets_filled / drops);
        const double loads =
            drops * run::whole_up(std::max(filled(by_delivery, f[lorry_pallets]), filled(kg / drops, f[lorry_load])));
        f.set(pallet_count, drops * by_delivery);
        f.set(load_count, loads);
        f.set(layer_boxes, pattern.in_layer);
        f.set(layer_count, pattern.layers);
        f.charge(pallets, f.dispatch(), drops * by_delivery, f[pallet_price]);
        f.charge(freight, f.dispatch(), f[distance] * std::max(kg, volume * f[freight_density]) / kg_per_tonne,
                 f[freight_price]);
        f.charge(drop, f.dispatch(), f[distance] > 0 ? drops : 0, f[drop_price]);
        f.charge(further, f.dispatch(), f[distance] > 0 ? std::max(loads - drops, 0.0) : 0, f[drop_price]);
        f.charge(lorry, f.dispatch(), loads * f[distance], f[lorry_price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(Delivery, "delivery", "1.2.0", "Pallets and freight")
