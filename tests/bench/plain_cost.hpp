// The yardstick: the arithmetic of the ten models as one plain function over a candidate, as somebody would write it
// who had no plugins. It rounds every line by the same function as the engine, totals, and checks the balance of mass.
#pragma once

#include <optional>

#include "host/engine/row.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::bench {

/// What the demo plant's plugins.yaml sets, as plain members; request settings are the order's.
struct Prices {
    double scrap_price, handling;
    double starch_price, caustic_price, borax_price, starch_share, caustic_share, borax_share;
    double fuel_price, power_price, c_fibre, c_water, t_in, t_bond, solids, evaporated_share, moisture_drop, h_evap,
        boiler_efficiency, distribution_efficiency, baler_kwh_per_tonne, standing_heat;
    double ink_laydown, ink_price, glue_laydown, glue_price, stitch_spacing, stitch_wire, wire_price, tape_price,
        bundle_boxes, strap_length, strap_price;
    double plate_price, die_board_price, rule_price;
    double pallet_volume, pallet_load, pallet_price, freight_price, freight_density, drop_price;
};

/// What the request's extras set.
struct Extras {
    double coverage, joint, joint_length, plate_share, plate_boxes, rule_length, die_boxes, distance;
};

/// The cost of one row; nothing where mass does not balance to 1e-9 or an amount is too large.
[[nodiscard]] std::optional<Money> plain_cost(const engine::Row& row, const Prices& prices, const Extras& extras);

}  // namespace flutebook::bench
