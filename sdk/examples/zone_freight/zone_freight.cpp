// zone_freight: freight by the customer's zone and the number of pallets.
//
//   freight = pallets x rate of the zone, for that many pallets
//
// The pallets come from the model `delivery`, and the zone from the request: extras: {zone_freight: {zone: south}}.
// The plant gives the rate a pallet by zone, stepped over the pallets:
//
//   - zone_freight: {rate: {north: {0: 31, 8: 24, 20: 19}, south: {0: 40}, default: 55}}
//
// Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr const char* zones[] = {"collected", "north", "south", "abroad"};

struct ZoneFreight : Model {
    Need<order> pallets = need("delivery.pallets", "1", "pallets of the order");
    Setting<by_request> zone = choice("zone", zones, 0, "where the customer is; collected: no freight");
    Setting<by_choice> rate =
        setting("rate", "money", 0, {0, 1e6}, "freight of one pallet, by zone").keyed_by(zone).stepped_over(pallets);
    Line<order> freight = line("zone_freight", "1", flutebook::system, per_unit, "Freight by zone");

    void evaluate(Frame& f) const { f.charge(freight, f[pallets], f[zone] > 0 ? f[rate] : 0); }
};

}  // namespace
FLUTEBOOK_MODEL(ZoneFreight, "zone_freight", "1.0.0", "Freight by zone and pallets")
