// The machines of a plant as machines.yaml describes them. Plain values; lengths in mm, as in the file.
#pragma once

#include <string>

#include "host/base/places.hpp"
#include "host/box_styles/machine_kind.hpp"
#include "host/fields/quantity.hpp"

namespace flutebook::plant {

struct Hourly {
    double labour, fixed;
};

struct Corrugator {
    std::string code;
    fields::Span roll_width_mm;
    double trim_min_mm;
    double outs_max;
    fields::Span slit_mm, chop_mm;
    double speed_single_m_min, speed_double_m_min;
    double order_change_min, order_change_m;
    double run_waste, roll_loss;
    Hourly hourly;
    double power_kw;
    base::Places places;
    bool is_supplier = false;  // who delivers a board, and is no machine of the plant
};

struct Converter {
    using Kind = box_styles::MachineKind;
    std::string code;
    Kind kind;
    fields::Span length_mm, width_mm;  // of the sheet it takes: along the chop, across the web
    double colours;
    double between_mm = 0, edge_mm = 0;  // die cutters alone
    double ups_max = 1;                  // of what parts blanks from sheets
    bool cuts_flaps = false;             // a folder-gluer that cuts flaps of one row to unequal depth
    double setup_min, setup_sheets;
    double run_waste;
    double speed_per_h;
    Hourly hourly;
    double power_kw;
    base::Places places;
};

struct Dispatch {
    double minutes = 0;
    Hourly hourly{0, 0};
    base::Places places;
};

}  // namespace flutebook::plant
