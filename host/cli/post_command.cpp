// `post`: posts files of production documents to the ledger.
#include <fmt/format.h>

#include "host/cli/commands.hpp"
#include "host/month_answers/ledger_answer.hpp"
#include "host/month_reports/ledger_reports.hpp"
#include "host/render/text_report.hpp"
#include "host/services/posting/post.hpp"

namespace flutebook::cli {

namespace {

using Doubtful = answers::PostOptions::Doubtful;
using Keep = answers::PostOptions::Keep;

constexpr const char* post_footer =
    R"(Posts files of production documents to the ledger: each row once, all files or none. The header row
says the kind of document. Every refused row is listed with its file, line and column. Rows that
were posted before are skipped.

  ref,date,shift,corrugator,paper,kg                     paper issued; returned if kg is negative
  ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets
                                                         with roll_width,outs before metres where
                                                         they differ from the order's; ,web at the
                                                         end (mm, the whole roll) where it is shared
  ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes
  ref,date,shift,centre,cause,kg                         scrap, weighed
  ref,date,shift,grade,kg                                a bale
  ref,date,mill,grade,sent,kg,moisture,per_tonne         a mill's ticket; sent may be left out
  ref,date,centre,class,amount                           a centre's cost of a month
  ref,date,account,of,kg,amount                          a count
Each may end in ,note.

A row that is likely a slip is posted with a warning: a day after today, another year than the rows
around it, a cause one letter away from a known one, roll ends at a converter, a bale or a load five
times the usual, the same figures under a new ref. With --strict it is refused.

Examples:
  flutebook post 2026-10/*.csv --dry-run
  flutebook post 2026-10/*.csv)";

struct PostCommand {
    std::vector<std::string> files;
    bool is_dry_run = false, is_strict = false, is_json = false;
};

std::string posted_deed(const answers::PostAnswer& answer) {
    std::string deed = fmt::format("posted {} row{}", answer.posted, answer.posted == 1 ? "" : "s");
    if (answer.posted == 1) deed += fmt::format(", entry {}", answer.first_entry);
    if (answer.posted > 1)
        deed += fmt::format(", entries {} to {}", answer.first_entry, answer.first_entry + answer.posted - 1);
    return deed + fmt::format("; {} posted before; head {}", answer.skipped, answer.head);
}

ExitCode post_documents(const PostCommand& asked, const RunContext& context) {
    const plant::Plant plant = plant::read_plant(context.plant);
    const Keep keep = asked.is_dry_run ? Keep::nothing : Keep::all;
    const auto doubtful = asked.is_strict ? Doubtful::refuse : Doubtful::warn;
    const auto answer =
        services::post(plant, context.ledger, {asked.files, context.person(), keep, context.today(), doubtful});
    if (keep == Keep::all) context.output.acknowledge(posted_deed(answer));
    std::vector<std::string> warnings;
    for (const auto& text : answer.warnings) warnings.push_back("warning: " + text);
    complain(warnings);
    context.output.write(asked.is_json ? answers::post_document(answer, keep)
                                       : render::to_text(month_reports::post_report(plant, answer, keep)));
    return ExitCode::done;
}

}  // namespace

void add_post(Command& program) {
    Command& command = program.add("post", "post production documents to the ledger", post_footer);
    const auto asked = std::make_shared<PostCommand>();
    command.json_flag(asked->is_json);
    command.arguments("FILE", "production documents, CSV", asked->files);
    command.flag("--dry-run", "show what would be posted, and post nothing", asked->is_dry_run);
    command.flag("--strict", "refuse rows that are likely a slip, instead of warning", asked->is_strict);
    command.run_with([asked](const RunContext& context) { return post_documents(*asked, context); });
}

}  // namespace flutebook::cli
