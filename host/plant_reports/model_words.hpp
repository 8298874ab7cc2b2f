// Words that every page about a model shares.
#pragma once

#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/render/report.hpp"

namespace flutebook::plant_reports {

/// "varnish 1.0.0  Varnish from the printer's last deck".
[[nodiscard]] std::string model_title(const contract::Model& model);

/// "0 to 40", "0 or more", "any number".
[[nodiscard]] std::string range_words(const contract::Range& range);

/// "0 to 40, usually 3 to 8".
[[nodiscard]] std::string range_words(const contract::Setting& setting);

/// "glue, stitch or tape"; of a setting that is no choice, its range with its unit: "0 to 40 g/m2".
[[nodiscard]] std::string allowed_words(const contract::Setting& setting);

/// "0.25", "glue", "must be given".
[[nodiscard]] std::string default_words(const contract::Setting& setting);

/// "one", "by machine", "by zone, in steps of delivery.pallets".
[[nodiscard]] std::string varies_words(const contract::Model& model, const contract::Setting& setting);

/// "one for the order", "one for each ply".
[[nodiscard]] std::string axis_words(contract::Axis axis);

/// A table of names with units, ranges and meanings. A page may have columns of its own before the meaning.
[[nodiscard]] render::ReportTable name_table(const std::string& table);
[[nodiscard]] std::vector<render::Cell> name_cells(const contract::Name& name,
                                                   const std::vector<std::string>& before_meaning);

}  // namespace flutebook::plant_reports
