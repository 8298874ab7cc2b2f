// What `quote` was asked, and its run over requests.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/date.hpp"
#include "host/cli/beside_options.hpp"
#include "host/cli/quote_input.hpp"
#include "host/command_line/run_context.hpp"
#include "host/reports/quote_report.hpp"
#include "host/workplace/workplace.hpp"

namespace flutebook::cli {

struct QuoteCommand {
    std::vector<std::string> files;
    std::optional<std::string> explain, provided;
    reports::ShownSheets sheets = reports::ShownSheets::none();
    std::optional<base::Date> date;
    unsigned threads = usual_threads();
    std::string html_file, offer_file, workbook_file;  // empty: none
    std::string list_file;                             // the answer of a list; empty: none
    bool is_replacing = false;
    bool is_saved = false, is_json = false;
    std::optional<std::string> approver;  // of what is saved
    beside::Asked beside;
};

/// Costs the requests one after the other; answers with the highest exit code. Throws what ends the whole run.
[[nodiscard]] ExitCode run_quotes(const workplace::Workplace& workplace, const QuoteCommand& asked,
                                  const RunContext& context);

}  // namespace flutebook::cli
