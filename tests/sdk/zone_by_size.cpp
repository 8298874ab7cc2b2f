// The zone of an order by its size, in place of the choice `zone` of the example `zone_freight`.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr double north = 1, south = 2, abroad = 3;  // the values of `zone`

struct ZoneBySize : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");
    Need<order> asked_for = need("zone_freight.zone", "1", "the zone of the request", {0, abroad});
    Provide<order> zone = provide("zone_freight.zone", "1", "the zone by the boxes ordered", {0, abroad});

    void evaluate(Frame& f) const {
        const double by_size = f[quantity] < 1000 ? north : f[quantity] < 5000 ? south : abroad;
        f.set(zone, f[asked_for] < north ? by_size : f[asked_for]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(ZoneBySize, "zone_by_size", "1.0.0", "Zone by size")
