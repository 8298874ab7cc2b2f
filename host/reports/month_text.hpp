// A month's account on a page: masses in kg to the gram, so that every sum adds up as printed.
#pragma once

#include <string>

#include "host/plant/plant.hpp"
#include "host/services/closing/month.hpp"

namespace flutebook::reports {

[[nodiscard]] std::string month_text(const plant::Plant& plant, const services::MonthAnswer& answer);

}  // namespace flutebook::reports
