// Costs the rows of a list a window at a time. The output file gets its name only when it is complete.
#include "host/cli/list_command.hpp"

#include <fmt/format.h>

#include <memory>
#include <utility>

#include "host/answers/list_json.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/cli/open_workplace.hpp"
#include "host/command_line/output.hpp"
#include "host/command_line/whole_file.hpp"
#include "host/lists/list_run.hpp"
#include "host/lists/list_writer.hpp"

namespace flutebook::cli {

namespace {

// One run over one list.
class ListQuoteRun {
public:
    ListQuoteRun(const workplace::Workplace& workplace, lists::ListSource& source, const ListQuote& asked,
                 Output& output)
        : asked_(asked),
          output_(output),
          source_(source),
          run_(workplace, source, {asked.threads, asked.date, RunContext::today()}),
          json_(workplace.plant, workplace.warnings) {}

    // Into this file, if any. Empty, or why it could not be written.
    std::string answer_all(const std::string& file) {
        std::unique_ptr<lists::ListWriter> writer;
        if (!file.empty()) writer = writer_of(file);
        if (asked_.is_json) output_.write(json_.begin());
        try {
            answer_rows(writer.get());
        } catch (...) {
            // What ends the run leaves a document of what was done.
            if (asked_.is_json) output_.write(json_.end());
            throw;
        }
        if (asked_.is_json) output_.write(json_.end());
        return writer ? writer->close() : "";
    }

    [[nodiscard]] ExitCode worst() const { return worst_; }

private:
    void answer_rows(lists::ListWriter* writer) {
        for (auto rows = run_.next(); !rows.empty() && goes_on(writer); rows = run_.next()) {
            for (const lists::AnsweredRow& row : rows) show(row, writer);
            rows_ += rows.size();
            show_share();
        }
        if (progress_.was_shown()) show_progress("");
    }

    // By the name that the file will have.
    [[nodiscard]] std::unique_ptr<lists::ListWriter> writer_of(const std::string& file) const {
        const std::vector<std::string> header = lists::table_header(run_.columns());
        if (ends_in(asked_.answer_file, ".xlsx"))
            return lists::workbook_list_writer(file, int(RunContext::today().year()), header);
        return lists::csv_list_writer(file, source_.numbers(), header);
    }

    [[nodiscard]] bool goes_on(const lists::ListWriter* writer) const {
        return writer != nullptr ? writer->fault().empty() : output_.is_open();
    }

    void show(const lists::AnsweredRow& row, lists::ListWriter* writer) {
        using State = lists::CostedItem::State;
        if (!row.item.errors.empty()) complain(row.item.errors);
        if (row.item.state == State::refused) worst_ = worse(worst_, ExitCode::refused);
        if (row.item.state == State::unfit) worst_ = worse(worst_, ExitCode::unfit);
        if (asked_.is_json) output_.write(json_.add(lists::listed_item(run_.columns(), row)));
        if (writer != nullptr) writer->write(lists::table_row(run_.columns(), row));
    }

    void show_share() {
        if (!is_terminal_error()) return;
        if (const auto line = progress_.share_line(rows_, source_.share_read(), Progress::Clock::now()))
            show_progress(*line);
    }

    const ListQuote& asked_;
    Output& output_;
    lists::ListSource& source_;
    lists::ListRun run_;
    answers::ListStream json_;
    Progress progress_{0, Progress::Clock::now()};
    std::size_t rows_ = 0;
    ExitCode worst_ = ExitCode::done;
};

}  // namespace

bool is_list_file(const std::string& file) {
    return ends_in(file, ".csv") || ends_in(file, ".xlsx");
}

ExitCode quote_list(const ListQuote& asked, const RunContext& context) {
    if (asked.answer_file.empty() && !asked.is_json) {
        complain({fmt::format("{}: a list is answered in a file: found no -o; add -o OUT.csv, or --json",
                              base::shown(asked.file))});
        return ExitCode::misused;
    }
    const workplace::Workplace workplace = open_workplace(context);
    if (!asked.is_json) warn(workplace.warnings);
    const std::unique_ptr<lists::ListSource> source =
        ends_in(asked.file, ".xlsx") ? lists::open_workbook_list(asked.file) : lists::open_csv_list(asked.file);
    ListQuoteRun run(workplace, *source, asked, context.output);
    if (asked.answer_file.empty()) {
        static_cast<void>(run.answer_all(""));
    } else {
        WholeFile file(asked.answer_file, if_there(asked.is_replacing));
        file.write_with([&](const std::string& unfinished) { return run.answer_all(unfinished); });
    }
    return run.worst();
}

}  // namespace flutebook::cli
