// Files are opened before anything is read: one that cannot be written stops the command at once.
#include "host/cli/month_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/month_json.hpp"
#include "host/cli/whole_file.hpp"
#include "host/render/csv_report.hpp"
#include "host/render/html_report.hpp"
#include "host/render/text_report.hpp"
#include "host/render/workbook_report.hpp"
#include "host/reports/month_report.hpp"
#include "host/services/closing/month.hpp"

namespace flutebook::cli {

namespace {

void write_export(WholeFile& file, const render::Report& report, int year) {
    if (ends_in(file.name(), ".csv"))
        file.write(render::to_csv(report));
    else
        file.write_with(
            [&](const std::string& unfinished) { return render::write_workbook(unfinished, report, year); });
}

}  // namespace

ExitCode run_month(const plant::Plant& plant, const std::string& ledger, const MonthCommand& asked, Output& output) {
    using Trend = services::MonthOptions::Trend;
    std::optional<WholeFile> exported, html;
    if (!asked.export_file.empty()) exported.emplace(asked.export_file);
    if (!asked.html_file.empty()) html.emplace(asked.html_file);
    const bool prints_text = asked.form == OutputFormat::text && !html;
    const bool needs_report = prints_text || exported || html;
    const auto store = ledger::Store::open_for_reading(ledger);
    const auto answer =
        services::month(plant, store, {asked.month, asked.by, needs_report ? Trend::twelve_months : Trend::none});
    if (needs_report) {
        const render::Report report = reports::month_report(plant, answer);
        if (exported) write_export(*exported, report, static_cast<int>(asked.month.year()));
        if (html) html->write(render::to_html({report}));
        if (prints_text) output.write(render::to_text(report));
    }
    if (asked.form == OutputFormat::json) output.write(answers::document_text("month", answers::month_json(answer)));
    return ExitCode::done;
}

}  // namespace flutebook::cli
