// Why nothing here can make a quantity: each limit once, and the ways it stops.
#pragma once

#include <string>

#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

/// Quantities that the same limits stop are told together. Where one limit stops many ways, the first are named and
/// the others counted; --json has them all. Empty where every quantity can be made.
[[nodiscard]] std::string refused_section(const SheetContext& enquiry, const services::RequestAnswer& answer);

}  // namespace flutebook::reports
