// A month's account as tables for other programs, and into a file: --export FILE.xlsx or FILE.csv.
#pragma once

#include <string>
#include <vector>

#include "host/render/exported.hpp"
#include "host/services/closing/month.hpp"

namespace flutebook::reports {

/// Everything that the month's page shows: masses in kg, shares as fractions of issued paper, money in `currency`.
[[nodiscard]] std::vector<render::ExportedTable> month_export(const services::MonthAnswer& answer,
                                                              const std::string& currency);

/// Whether the file's name ends in .xlsx or .csv.
[[nodiscard]] bool can_export_to(const std::string& file);

/// Writes the file, over one of that name; a file that could not be written whole is not left behind. Answers with a
/// finished sentence where it failed; empty where it is written.
[[nodiscard]] std::string write_export(const std::string& file, const services::MonthAnswer& answer,
                                       const std::string& currency);

}  // namespace flutebook::reports
