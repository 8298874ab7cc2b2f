// A report's tables as a spreadsheet file. The one place that knows the library that writes it.
#pragma once

#include <string>

#include "host/render/report.hpp"

namespace flutebook::render {

/// Writes `file`, each table on a sheet of its own; texts are texts, whatever they begin with, and numbers are raw and
/// shown with the places of the report. The same report and year give the same bytes. Answers with what went wrong;
/// empty where nothing did.
[[nodiscard]] std::string write_workbook(const std::string& file, const Report& report, int created_in_year);

}  // namespace flutebook::render
