#include "host/cli/month_command.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/month_json.hpp"
#include "host/reports/month_export.hpp"
#include "host/reports/month_text.hpp"

namespace flutebook::cli {

ExitCode run_month(const plant::Plant& plant, const std::string& ledger, const MonthCommand& asked, Output& output) {
    using Trend = services::MonthOptions::Trend;
    const bool is_for_people = asked.form == OutputFormat::text;
    const bool is_exported = !asked.export_file.empty();
    const bool needs_trend = is_for_people || is_exported;
    const auto store = ledger::Store::open_for_reading(ledger);
    const auto answer =
        services::month(plant, store, {asked.month, asked.by, needs_trend ? Trend::twelve_months : Trend::none});
    if (is_exported)
        if (const auto failure = reports::write_export(asked.export_file, answer, plant.currency); !failure.empty()) {
            complain({failure});
            return ExitCode::refused;
        }
    output.write(is_for_people ? reports::month_text(plant, answer) : answers::json_text(answers::month_json(answer)));
    return ExitCode::done;
}

}  // namespace flutebook::cli
