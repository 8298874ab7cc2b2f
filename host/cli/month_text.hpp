// A month's account on a page: masses in kg to the gram, so that every sum adds up as printed.
#pragma once

#include <string>

#include "host/catalogue/plant.hpp"
#include "host/desk/month.hpp"

namespace flutebook::cli {

[[nodiscard]] std::string month_text(const catalogue::Plant& plant, const desk::MonthAnswer& answer);

}  // namespace flutebook::cli
