// outside-work: what others do to the boxes for money: foil, windows, packing.
//
//   outside.order    = once an order
//   outside.thousand = quantity / 1000 x the price of a thousand
// Nothing is charged until the request says so. Source: common practice, no published source.
#include <flutebook/plugin.hpp>

using namespace flutebook;

namespace {

constexpr Range price{0, 1e9};
constexpr double thousand_boxes = 1000;

struct OutsideWork : Model {
    Need<order> quantity = need("order.quantity", "1", "boxes ordered");

    Setting<by_request> order_price = setting("order_price", "money", 0, price, "outside work, once an order");
    Setting<by_request> thousand_price =
        setting("thousand_price", "money", 0, price, "outside work on a thousand boxes");

    Line<step> once = line("outside.order", "1", flutebook::system, per_run, "Work outside, by the order");
    Line<step> each = line("outside.thousand", "1", flutebook::system, per_unit, "Work outside, by the thousand");

    void evaluate(Frame& f) const {
        f.charge(once, f.dispatch(), 1, f[order_price]);
        f.charge(each, f.dispatch(), f[quantity] / thousand_boxes, f[thousand_price]);
    }
};

}  // namespace
FLUTEBOOK_MODEL(OutsideWork, "outside-work", "1.0.0", "Work done outside")
