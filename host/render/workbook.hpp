// A spreadsheet file. The one place that knows the library that writes it.
#pragma once

#include <string>
#include <vector>

#include "host/render/exported.hpp"

namespace flutebook::render {

/// Writes `file`, each table on a sheet of its own; texts are texts, whatever they begin with. The same tables and year
/// give the same bytes. Answers with what went wrong; empty where nothing did.
[[nodiscard]] std::string write_workbook(const std::string& file, const std::vector<ExportedTable>& tables,
                                         int created_in_year);

}  // namespace flutebook::render
