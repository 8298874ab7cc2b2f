// `month`: shows the account of a month. Opens the files to write before it reads anything, so that a file that cannot
// be written ends the command at once.
#include <fmt/format.h>

#include "host/base/quoted_text.hpp"
#include "host/cli/commands.hpp"
#include "host/command_line/whole_file.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/month_reports/month_report.hpp"
#include "host/render/html_report.hpp"
#include "host/render/text_exports.hpp"
#include "host/render/text_report.hpp"
#include "host/render/workbook_report.hpp"
#include "host/services/closing/month.hpp"

namespace flutebook::cli {

namespace {

constexpr const char* month_footer =
    R"(Accounts for every tonne of a month: what each machine took in, made and lost; each cause of loss
with its actual and its expected loss and its cost; and the income from scrap. The account of an
open month may still change.

Examples:
  flutebook month 2026-10
  flutebook month 2026-10 --by machine
  flutebook month 2026-10 --export 2026-10.xlsx
  flutebook month 2026-10 --html 2026-10.html)";

struct MonthCommand {
    ledger::Month month{};
    std::optional<ledger::Axis> by;
    std::string export_file;  // empty: none
    std::string html_file;    // empty: none
    bool is_replacing = false, is_json = false;
};

Reader read_axis(std::optional<ledger::Axis>& value) {
    return [&value](const std::string& text) {
        value = services::axis_of(text);
        return value ? std::string()
                     : fmt::format("cannot be broken down by {}; choose machine, shift, board or order",
                                   base::shown(text));
    };
}

Reader read_export_file(std::string& value) {
    return [&value](const std::string& text) {
        value = text;
        return ends_in(text, ".xlsx") || ends_in(text, ".csv")
                   ? std::string()
                   : fmt::format("is not a file to export to: {}; end it in .xlsx or .csv", base::shown(text));
    };
}

void write_export(WholeFile& file, const render::Report& report, int year) {
    if (ends_in(file.name(), ".csv"))
        file.write(render::to_csv(report));
    else
        file.write_with(
            [&](const std::string& unfinished) { return render::write_workbook(unfinished, report, year); });
}

ExitCode show_month(const MonthCommand& asked, const RunContext& context) {
    using Trend = services::MonthOptions::Trend;
    const plant::Plant plant = plant::read_plant(context.plant);
    std::optional<WholeFile> exported, html;
    if (!asked.export_file.empty()) exported.emplace(asked.export_file, if_there(asked.is_replacing));
    if (!asked.html_file.empty()) html.emplace(asked.html_file, if_there(asked.is_replacing));
    const bool prints_text = !asked.is_json && !html;
    const bool needs_report = prints_text || exported || html;
    const auto store = ledger::Store::open_for_reading(context.ledger);
    const auto answer = services::month(
        plant, store, {asked.month, asked.by, needs_report ? Trend::twelve_months : Trend::none, context.today()});
    if (needs_report) {
        const render::Report report = month_reports::month_report(plant, answer);
        if (exported) write_export(*exported, report, static_cast<int>(asked.month.year()));
        if (html) html->write(render::to_html({report}));
        if (prints_text) context.output.write(render::to_text(report));
    }
    if (asked.is_json) context.output.write(answers::month_document(answer));
    return ExitCode::done;
}

}  // namespace

void add_month(Command& program) {
    Command& command = program.add("month", "show the account of a month", month_footer);
    const auto asked = std::make_shared<MonthCommand>();
    command.json_flag(asked->is_json);
    command.argument("YYYY-MM", "the month", read_month(asked->month));
    command.option("--by", "WHAT", "break it down by machine, shift, board or order", read_axis(asked->by));
    command.option("--export", "FILE", "also write it to this file, .xlsx or .csv",
                   read_export_file(asked->export_file));
    command.option("--html", "FILE", html_help, read_page_file(asked->html_file));
    command.flag("--replace", replace_help, asked->is_replacing);
    command.run_with([asked](const RunContext& context) { return show_month(*asked, context); });
}

}  // namespace flutebook::cli
