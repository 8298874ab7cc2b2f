// Reports on a page: a section as a panel, whose id lets a script replace it alone.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "host/pages/markup.hpp"
#include "host/render/html_blocks.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

/// The blocks of a section, without its title. Ids in it begin with `prefix`.
[[nodiscard]] Html blocks_html(const render::ReportSection& section, const std::string& prefix,
                               const render::FigureWalk* walk = nullptr);

/// With files of the plant by their names alone: whoever reads a page need not know where they lie.
[[nodiscard]] render::ReportSection without_folder(render::ReportSection section, const std::string& folder);

/// A panel with a title; `aside` stands small beside it.
[[nodiscard]] Html panel(std::string_view id, std::string_view title, const Html& aside, const Html& inside);

/// A section as a panel. Where it has no blocks, nothing that is seen, but its place.
[[nodiscard]] Html section_panel(std::string_view id, const render::ReportSection& section,
                                 const render::FigureWalk* walk = nullptr);

/// The place of a part that is not there now.
[[nodiscard]] Html no_part(std::string_view id);

/// Heading and sections of a whole report, a panel each; a part opens with a heading of its own.
[[nodiscard]] Html report_html(const render::Report& report, const std::string& prefix,
                               const render::FigureWalk* walk = nullptr);

}  // namespace flutebook::pages
