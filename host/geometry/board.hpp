// A board as the calculation uses it: each ply with its take-up, its adhesive and its price on the day.
#pragma once

#include <cstddef>
#include <vector>

#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::geometry {

/// A ply as it enters the sums, with the price of the request's date.
struct PlyMake {
    std::size_t paper;          // as Plant::paper() takes it
    const plant::Flute* flute;  // null for a liner; points into the plant
    double grammage_gsm, take_up, moisture, adhesive_gsm, price_per_kg;
};

struct BoardMake {
    std::vector<PlyMake> plies;  // outside first
    double grammage_gsm;         // combined: papers by take-up, and dry adhesive
    double caliper_mm;           // as the board gives it, else the flutes' heights and its liners
    int media;                   // 1 single wall, 2 double wall
};

/// `plant` must outlive what is returned. Adhesive lies on the medium's ply: both glue lines of its flute, or the
/// single-facer line alone where no second liner follows (single face).
[[nodiscard]] BoardMake make_board(const plant::Plant& plant, const orders::Request& request);

}  // namespace flutebook::geometry
