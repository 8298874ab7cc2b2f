#include "host/what_if_reports/changed_numbers.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/reports/labels.hpp"
#include "host/reports/recheck_report.hpp"

namespace flutebook::what_if_reports {

using namespace reports;

namespace {

constexpr std::size_t most_numbers_shown = 12;

}  // namespace

ReportSection changed_numbers_section(const std::vector<what_if_answers::ChangedNumber>& changed) {
    ReportTable table{"numbers", {name_column("number"), text_column(before_label), text_column(after_label)}};
    const std::size_t shown = std::min(changed.size(), most_numbers_shown);
    for (std::size_t i = 0; i < shown; ++i) table.add({changed[i].path, changed[i].was, changed[i].now});
    ReportSection section{changed_numbers_title, {table}};
    if (shown < changed.size()) section.blocks.emplace_back(Note{fmt::format("and {} more", changed.size() - shown)});
    return section;
}

}  // namespace flutebook::what_if_reports
