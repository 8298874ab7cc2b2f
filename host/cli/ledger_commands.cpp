// `close`, `reverse`, `verify`, `backup`: what is done to a ledger beside posting.
#include "host/answers/ledger_answer.hpp"
#include "host/answers/month_answer.hpp"
#include "host/cli/commands.hpp"
#include "host/plant/plant.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/ledger_reports.hpp"
#include "host/services/closing/backup.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/closing/verify.hpp"
#include "host/services/posting/reverse.hpp"

namespace flutebook::cli {

namespace {

using ledger::IfMissing;
using ledger::Store;

constexpr const char* close_footer =
    R"(Posts what counts found, seals the month and prints the head of the ledger's chain: keep it
elsewhere, for `flutebook verify --head`. Months are closed in their order and stay closed.

Exit code: 0 closed; 1 refused: more is unexplained than the plant allows, and nobody said why, or
a stock is below zero.

Examples:
  flutebook close 2026-10
  flutebook close 2026-10 --why "scale of the baler failed from the 12th to the 15th")";

constexpr const char* reverse_footer =
    R"(Posts the mirror of an entry. It is dated like the entry, or, where that month is closed, on the
first day that is open.

Examples:
  flutebook reverse 4711 --why "posted under the wrong order"
  flutebook reverse 4711 --why "posted under the wrong order" --date 2026-11-03)";

constexpr const char* verify_footer =
    R"(Reads the whole ledger, works every hash and every total out again, and names what is wrong.

Exit code: 0 whole; 1 something is wrong.

Examples:
  flutebook verify
  flutebook verify --head 3f5a...)";

constexpr const char* backup_footer =
    R"(Copies the ledger while others may post, proves the copy whole, and only then gives it its name.

Examples:
  flutebook backup /mnt/safe/ledger-2026-10-31.db)";

struct CloseCommand {
    ledger::Month month{};
    std::string why;
    bool is_json = false;
};

struct ReverseCommand {
    std::int64_t entry = 0;
    std::string why;
    std::optional<ledger::Date> date;
    bool is_json = false;
};

struct VerifyCommand {
    std::optional<std::string> head;
    bool is_json = false;
};

struct BackupCommand {
    std::string file;
    bool is_json = false;
};

ExitCode close_month(const CloseCommand& asked, const RunContext& context) {
    const plant::Plant plant = plant::read_plant(context.plant);
    auto store = Store::open_for_writing(context.ledger, IfMissing::refuse);
    const auto answer = services::close(plant, store, {asked.month, asked.why, context.person()});
    context.output.write(asked.is_json ? answers::close_document(answer)
                                       : render::to_text(reports::close_report(answer)));
    return ExitCode::done;
}

ExitCode reverse_entry(const ReverseCommand& asked, const RunContext& context) {
    auto store = Store::open_for_writing(context.ledger, IfMissing::refuse);
    const auto answer = services::reverse(store, {asked.entry, asked.why, context.person(), asked.date});
    context.output.write(asked.is_json ? answers::reverse_document(answer)
                                       : render::to_text(reports::reverse_report(answer)));
    return ExitCode::done;
}

// Each finding is written to standard error too, one sentence a line.
ExitCode verify_ledger(const VerifyCommand& asked, const RunContext& context) {
    const auto proof = services::verify(context.ledger, asked.head);
    context.output.write(asked.is_json ? answers::verify_document(proof)
                                       : render::to_text(reports::verify_report(proof)));
    std::vector<std::string> lines;
    for (const auto& finding : proof.findings) lines.push_back(finding.text);
    complain(lines);
    return proof.holds() ? ExitCode::done : ExitCode::refused;
}

ExitCode back_up_ledger(const BackupCommand& asked, const RunContext& context) {
    const auto proof = services::backup(context.ledger, asked.file);
    context.output.write(asked.is_json ? answers::backup_document(proof, asked.file)
                                       : render::to_text(reports::backup_report(asked.file, proof)));
    return ExitCode::done;
}

}  // namespace

void add_close(Command& program) {
    Command& command = program.add("close", "seal a month for good", close_footer);
    const auto asked = std::make_shared<CloseCommand>();
    command.json_flag(asked->is_json);
    command.argument("YYYY-MM", "the month", read_month(asked->month));
    command.option("--why", "TEXT", "why it is closed though it does not balance", read_text(asked->why));
    command.run_with([asked](const RunContext& context) { return close_month(*asked, context); });
}

void add_reverse(Command& program) {
    Command& command = program.add("reverse", "undo an entry by its mirror", reverse_footer);
    const auto asked = std::make_shared<ReverseCommand>();
    command.json_flag(asked->is_json);
    command.argument("ENTRY", "the entry's number", read_whole_number({"entry's number", 1}, asked->entry));
    command.required_option("--why", "TEXT", "the reason, kept with it", read_text(asked->why));
    command.option("--date", "YYYY-MM-DD", "the day it is dated, in an open month", read_day(asked->date));
    command.run_with([asked](const RunContext& context) { return reverse_entry(*asked, context); });
}

void add_verify(Command& program) {
    Command& command = program.add("verify", "prove the ledger whole", verify_footer);
    const auto asked = std::make_shared<VerifyCommand>();
    command.json_flag(asked->is_json);
    command.option("--head", "HEX", "a head that was kept elsewhere", read_text(asked->head));
    command.run_with([asked](const RunContext& context) { return verify_ledger(*asked, context); });
}

void add_backup(Command& program) {
    Command& command = program.add("backup", "copy the ledger while it is in use", backup_footer);
    const auto asked = std::make_shared<BackupCommand>();
    command.json_flag(asked->is_json);
    command.argument("FILE", "the copy", read_text(asked->file));
    command.run_with([asked](const RunContext& context) { return back_up_ledger(*asked, context); });
}

}  // namespace flutebook::cli
