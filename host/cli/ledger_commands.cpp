// `close`, `reverse`, `entries`, `verify`, `backup`: the other commands that work on a ledger.
#include <fmt/format.h>

#include "host/cli/commands.hpp"
#include "host/month_answers/ledger_answer.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/month_reports/ledger_reports.hpp"
#include "host/plant/plant.hpp"
#include "host/render/text_report.hpp"
#include "host/services/clock_warning.hpp"
#include "host/services/closing/close.hpp"
#include "host/services/posting/entries.hpp"
#include "host/services/posting/reverse.hpp"

namespace flutebook::cli {

namespace {

using ledger::IfMissing;
using ledger::Store;

constexpr const char* close_footer =
    R"(Posts the differences that counts found, seals the month and prints the head hash of the ledger:
keep it in another place, for `flutebook verify --head`. Months are closed in order and stay closed.

A month can be closed when it is over (by the clock, or because production of a later month is
posted), no month before it is empty or open, no stock is below zero, and each machine whose books
do not end near zero was counted on its last day. `flutebook month` names what is missing.

Exit code: 0 closed; 1 refused: more is unexplained than the plant allows and no reason is given, or
the month still waits for something.

Examples:
  flutebook close 2026-10
  flutebook close 2026-08 --empty-months
  flutebook close 2026-10 --why "scale of the baler failed from the 12th to the 15th")";

constexpr const char* reverse_footer =
    R"(Posts the reversal of an entry: the same movements with the opposite sign. It has the entry's date,
or, where that month is closed, the first open day. The entry is named by its number, or by the ref
of its document; KIND:REF where documents of several kinds have the ref (paper:P1).

Examples:
  flutebook reverse 4711 --why "posted under the wrong order"
  flutebook reverse S-2607-901 --why "640 was keyed for 64"
  flutebook reverse 4711 --why "posted under the wrong order" --date 2026-11-03)";

constexpr const char* entries_footer =
    R"(Lists the entries dated in a month, in the order of posting: number, date, document, who wrote it
and when. An entry that was written while the computer's clock was behind has both times. Entries
that saving quotes and taking orders adds are shown with --saved.

Examples:
  flutebook entries 2026-10
  flutebook entries 2026-10 --saved --json)";

constexpr const char* verify_footer =
    R"(Reads the whole ledger, computes every hash and every total again, and lists what is wrong.

Exit code: 0 all hashes and totals match; 1 something is wrong.

Examples:
  flutebook verify
  flutebook verify --head 3f5a...)";

constexpr const char* backup_footer =
    R"(Copies the ledger while others may post, verifies the copy, and only then gives it its name.

Examples:
  flutebook backup /mnt/safe/ledger-2026-10-31.db)";

struct CloseCommand {
    ledger::Month month{};
    std::string why;
    bool has_empty_months = false, is_json = false;
};

struct ReverseCommand {
    std::string entry;
    std::string why;
    std::optional<ledger::Date> date;
    bool is_json = false;
};

struct EntriesCommand {
    ledger::Month month{};
    bool has_saved = false, is_json = false;
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
    const auto answer =
        services::close(plant, store,
                        {asked.month, asked.why, context.person(), context.today(),
                         asked.has_empty_months ? month::EmptyMonths::accept : month::EmptyMonths::refuse});
    context.output.acknowledge(fmt::format("closed {} with entry {}; head {}", answers::month_name(answer.seal.month),
                                           answer.seal.entry, answer.seal.head));
    warn(services::clock_warnings(store));
    context.output.write(asked.is_json ? answers::close_document(answer)
                                       : render::to_text(month_reports::close_report(answer)));
    return ExitCode::done;
}

ExitCode reverse_entry(const ReverseCommand& asked, const RunContext& context) {
    auto store = Store::open_for_writing(context.ledger, IfMissing::refuse);
    const auto answer =
        services::reverse(store, {services::entry_number(store, asked.entry), asked.why, context.person(), asked.date});
    context.output.acknowledge(fmt::format("reversed entry {} with entry {}; head {}", answer.reversal.reverses.value(),
                                           answer.reversal.number, answer.reversal.hash));
    warn(services::clock_warnings(store));
    context.output.write(asked.is_json ? answers::reverse_document(answer)
                                       : render::to_text(month_reports::reverse_report(answer)));
    return ExitCode::done;
}

ExitCode list_entries(const EntriesCommand& asked, const RunContext& context) {
    using services::SavedEntries;
    const auto answer = services::entries(Store::open_for_reading(context.ledger), asked.month,
                                          asked.has_saved ? SavedEntries::show : SavedEntries::leave_out);
    context.output.write(asked.is_json ? answers::entries_document(answer)
                                       : render::to_text(month_reports::entries_report(answer)));
    return ExitCode::done;
}

// Writes each finding to standard error as well, one sentence a line.
ExitCode verify_ledger(const VerifyCommand& asked, const RunContext& context) {
    const auto proof = services::verify(context.ledger, asked.head);
    context.output.write(asked.is_json ? answers::verify_document(proof)
                                       : render::to_text(month_reports::verify_report(proof)));
    std::vector<std::string> lines;
    for (const auto& finding : proof.findings) lines.push_back(finding.text);
    complain(lines);
    return proof.holds() ? ExitCode::done : ExitCode::refused;
}

ExitCode back_up_ledger(const BackupCommand& asked, const RunContext& context) {
    const auto proof = services::backup(context.ledger, asked.file);
    context.output.acknowledge(fmt::format("copied {} entries to {}; head {}", proof.entries, asked.file, proof.head));
    context.output.write(asked.is_json ? answers::backup_document(proof, asked.file)
                                       : render::to_text(month_reports::backup_report(asked.file, proof)));
    std::vector<std::string> lines;
    for (const auto& name : proof.cleared)
        lines.push_back(name + ": was left by an interrupted backup, and is removed");
    complain(lines);
    return ExitCode::done;
}

}  // namespace

void add_close(Command& program) {
    Command& command = program.add("close", "close a month permanently", close_footer);
    const auto asked = std::make_shared<CloseCommand>();
    command.json_flag(asked->is_json);
    command.argument("YYYY-MM", "the month", read_month(asked->month));
    command.option("--why", "TEXT", "the reason why it is closed without balancing", read_line(asked->why));
    command.flag("--empty-months", "nothing ran in the months in which nothing is posted", asked->has_empty_months);
    command.run_with([asked](const RunContext& context) { return close_month(*asked, context); });
}

void add_reverse(Command& program) {
    Command& command = program.add("reverse", "undo an entry by posting its reversal", reverse_footer);
    const auto asked = std::make_shared<ReverseCommand>();
    command.json_flag(asked->is_json);
    command.argument("ENTRY", "the entry's number, or its document's ref", read_line(asked->entry));
    command.required_option("--why", "TEXT", "the reason, stored with the reversal", read_line(asked->why));
    command.option("--date", "YYYY-MM-DD", "the date of the reversal, in an open month", read_day(asked->date));
    command.run_with([asked](const RunContext& context) { return reverse_entry(*asked, context); });
}

void add_entries(Command& program) {
    Command& command = program.add("entries", "list the entries of a month", entries_footer);
    const auto asked = std::make_shared<EntriesCommand>();
    command.json_flag(asked->is_json);
    command.argument("YYYY-MM", "the month", read_month(asked->month));
    command.flag("--saved", "also the entries that saving quotes and taking orders adds", asked->has_saved);
    command.run_with([asked](const RunContext& context) { return list_entries(*asked, context); });
}

void add_verify(Command& program) {
    Command& command = program.add("verify", "verify all hashes and totals of the ledger", verify_footer);
    const auto asked = std::make_shared<VerifyCommand>();
    command.json_flag(asked->is_json);
    command.option("--head", "HEX", "a head hash that was kept in another place", read_line(asked->head));
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
