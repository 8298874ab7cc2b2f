// How an order is made: what its quote says of the layout, and the plant's files of board and machines.
#pragma once

#include <string>
#include <vector>

#include "config/demo/history/plan.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::demo {

/// Lengths in m, areas in m2, masses in g/m2.
struct Make {
    struct Ply {
        std::string paper;
        double gsm;  // with its take-up
    };
    std::string quote;  // Q000001
    std::string number;
    Day start;
    const plant::Corrugator* corrugator;
    std::vector<const plant::Converter*> route;
    std::size_t parting;
    double roll_m, outs, chop_m, slit_m, ups, box_m2, gsm;
    double sheets;                // good ones that the quote asks of the corrugator
    std::vector<Ply> papers;      // each paper once
    std::vector<double> rolls_m;  // that all of them are kept in, rising

    [[nodiscard]] double sheet_m2() const { return chop_m * slit_m; }
    [[nodiscard]] double sheet_kg() const { return sheet_m2() * gsm / 1000; }
    [[nodiscard]] double box_kg() const { return box_m2 * gsm / 1000; }
};

/// Each planned order with the quote of its round. `files` are the answers of `quote --save --json`, one a round, over
/// the requests in the plant's own folder. Throws std::runtime_error where a quote is missing.
[[nodiscard]] std::vector<Make> read_makes(const plant::Plant& plant, const std::vector<PlannedOrder>& orders,
                                           const std::vector<std::string>& files);

}  // namespace flutebook::demo
