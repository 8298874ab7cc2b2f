// A size that a style refuses by its own rules is counted and is not an error; its reason is shown if no other size
// could be drawn.
#include "host/plant_reports/style_check_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "host/drawings/shown_units.hpp"
#include "host/reports/building.hpp"

namespace flutebook::plant_reports {

using namespace reports;

namespace {

using plant_answers::CheckedStyle;
using plant_answers::StyleTrial;

constexpr std::size_t most_faults = 12;  // of one style; the others are counted

std::size_t count_drawn(const std::vector<StyleTrial>& trials) {
    return static_cast<std::size_t>(
        std::count_if(trials.begin(), trials.end(), [](const StyleTrial& trial) { return trial.refusal.empty(); }));
}

std::string verdict(const CheckedStyle& style) {
    if (style.holds()) return style.is_folded ? "folds" : "nothing to fold";
    return count_drawn(style.trials) == 0 && style.wrong_boxes.empty() ? "cannot be drawn" : "does not fold";
}

std::vector<const StyleTrial*> wrong_trials(const CheckedStyle& style) {
    std::vector<const StyleTrial*> result;
    for (const auto* list : {&style.trials, &style.wrong_boxes})
        for (const StyleTrial& trial : *list)
            if (!trial.folds() && (trial.refusal.empty() || count_drawn(style.trials) == 0)) result.push_back(&trial);
    return result;
}

ReportSection faults_section(const drawings::ShownUnits& units, const CheckedStyle& style) {
    ReportSection section{fmt::format("{} {}: {}", style.code, style.title, verdict(style))};
    std::vector<std::string> faults;
    for (const StyleTrial* trial : wrong_trials(style)) {
        const std::string where =
            fmt::format("{} on {}: ", units.lengths({trial->inside_mm.begin(), trial->inside_mm.end()}), trial->flutes);
        if (!trial->refusal.empty()) faults.push_back(where + trial->refusal);
        for (const blanks::FoldingFault& fault : trial->proof.faults) faults.push_back(where + fault.text);
    }
    const std::size_t left_out = faults.size() > most_faults ? faults.size() - most_faults : 0;
    faults.resize(faults.size() - left_out);
    if (left_out > 0) faults.push_back(fmt::format("and {} more", left_out));
    for (std::string& fault : faults) section.blocks.emplace_back(Note{std::move(fault), Note::Kind::item, 1});
    return section;
}

}  // namespace

Report style_check_report(const plant::Plant& plant, const plant_answers::StyleCheck& check) {
    const drawings::ShownUnits units(plant);
    const bool has_random = std::any_of(check.styles.begin(), check.styles.end(),
                                        [](const CheckedStyle& style) { return style.random_boxes > 0; });
    ReportTable table{"styles", {text_column("code"), text_column("result"), number_column("sizes")}};
    if (has_random) table.columns.push_back(number_column("random boxes"));
    table.columns.push_back(sentence_column("title"));
    for (const CheckedStyle& style : check.styles) {
        std::vector<Cell> cells = {Code{style.code}, verdict(style),
                                   Number{static_cast<double>(count_drawn(style.trials)), 0}};
        if (has_random) cells.emplace_back(Number{static_cast<double>(style.random_boxes - style.refused_boxes), 0});
        cells.emplace_back(style.title);
        table.add(std::move(cells));
    }
    Report report{"style check", "styles", {}, {{"Styles, folded at several sizes", {table}}}};
    for (const CheckedStyle& style : check.styles)
        if (!style.holds()) report.sections.push_back(faults_section(units, style));
    return report;
}

}  // namespace flutebook::plant_reports
