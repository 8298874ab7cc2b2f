// Reads every file twice: first to know what the documents say of each other, then row by row into the ledger. Nothing
// of a row is kept but sums.
#include "host/services/posting/post.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <tuple>
#include <utility>
#include <variant>

#include "host/production/accounts.hpp"
#include "host/production/entry_from_row.hpp"
#include "host/production/row.hpp"
#include "host/production/row_validation.hpp"
#include "host/services/clock_warning.hpp"
#include "host/services/orders/order.hpp"
#include "host/services/posting/posted_rows.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/writing/posting.hpp"

namespace flutebook::services {

namespace {

using production::Document;
using production::DocumentRow;
using production::ReadLine;
using production::RowErrors;

// What is wrong is told when the rows are posted.
void look_ahead(PostBook& book, production::Plausibility& plausibility, const answers::PostOptions& asked) {
    for (const auto& file : asked.files) {
        auto opened = Document::open(file);
        auto* document = std::get_if<Document>(&opened);
        if (document == nullptr) continue;
        while (const auto line = document->next())
            if (const auto* row = std::get_if<DocumentRow>(&line->outcome)) {
                book.foresee(*row);
                plausibility.note(asked.name_of(file), *row);
            }
        plausibility.note_end_of_file();
    }
}

constexpr std::size_t most_warnings = 20;

// One posting: the files one after the other, and the sums of what they moved.
class PostRun {
public:
    PostRun(const plant::Plant& plant, ledger::Store& store, const answers::PostOptions& asked)
        : plant_(plant),
          store_(store),
          asked_(asked),
          book_(plant, store),
          rows_(store),
          plausibility_(asked.today.value_or(base::Date()), plant, rows_),
          posting_(store, asked.who) {}

    answers::PostAnswer run() {
        look_ahead(book_, plausibility_, asked_);
        for (const auto& file : asked_.files) post_file(file);
        refusals_.throw_if_any();
        answers::PostAnswer answer{};
        if (asked_.keep == answers::PostOptions::Keep::all) answer.head = posting_.commit().head;
        for (const auto& file : files_) {
            answer.posted += file.posted;
            answer.skipped += file.skipped;
        }
        answer.first_entry = first_entry_;
        answer.warnings = warnings();
        for (const auto& warning : clock_warnings(store_)) answer.warnings.push_back(warning.at + ": " + warning.text);
        answer.files = std::move(files_);
        for (auto& [path, flow] : flows_) answer.flows.push_back(std::move(flow));
        return answer;
    }

private:
    void post_file(const std::string& path) {
        auto opened = Document::open(path);
        const std::string& file = asked_.name_of(path);
        if (const auto* none = std::get_if<Document::UnreadableDocument>(&opened)) {
            refusals_.add(file, none->line, "", none->why);
            return;
        }
        auto& document = std::get<Document>(opened);
        files_.push_back({file, document.kind(), 0, 0});
        while (const auto line = document.next()) {
            const auto* row = std::get_if<DocumentRow>(&line->outcome);
            if (row != nullptr)
                post_row(files_.back(), *row);
            else
                refuse(file, line->number, std::get<RowErrors>(line->outcome));
        }
    }

    void post_row(answers::PostedFile& file, const DocumentRow& row) {
        const auto entry_from_row = production::entry_from_row(row, plant_, book_);
        if (const auto* objections = std::get_if<RowErrors>(&entry_from_row)) {
            // The plant may have changed since it was posted; that is no matter of the row's.
            if (was_posted(row))
                ++file.skipped;
            else
                refuse(file.file, row.line, *objections);
            return;
        }
        const auto& draft = std::get<ledger::Draft>(entry_from_row);
        // Before the books have the row itself.
        const auto doubts = asked_.today ? plausibility_.doubts(file.file, row) : RowErrors();
        const auto added = posting_.add(draft);
        if (const auto* posted = std::get_if<ledger::Posted>(&added)) {
            ++file.posted;
            if (first_entry_ == 0) first_entry_ = posted->number;
            sum_up(draft);
            tell_doubts(file.file, row, doubts);
        } else if (std::holds_alternative<ledger::AlreadyPosted>(added)) {
            ++file.skipped;
        } else if (const auto* taken = std::get_if<ledger::KnownRef>(&added)) {
            refuse_ref(file.file, row, taken->number);
        } else {
            const auto& closed = std::get<ledger::MonthClosed>(added).last_closed;
            refusals_.add(file.file, row.line, "date",
                          fmt::format("found {}, in a month that is closed; expected a day after {}-{:02}, and a note "
                                      "that says why it is late",
                                      row.text(production::DocumentColumn::date), static_cast<int>(closed.year()),
                                      static_cast<unsigned>(closed.month())));
        }
    }

    void tell_doubts(const std::string& file, const DocumentRow& row, const RowErrors& doubts) {
        if (asked_.doubtful == answers::PostOptions::Doubtful::refuse) return refuse(file, row.line, doubts);
        for (const auto& doubt : doubts)
            if (++doubts_ <= most_warnings)
                warnings_.push_back(production::at_row(file, row.line, doubt.column, doubt.text));
    }

    std::vector<std::string> warnings() {
        if (doubts_ > most_warnings)
            warnings_.push_back(fmt::format("post: {} more rows are likely a slip", doubts_ - most_warnings));
        return std::move(warnings_);
    }

    void refuse_ref(const std::string& file, const DocumentRow& row, std::int64_t entry) {
        const bool is_beside = first_entry_ != 0 && entry >= first_entry_;
        const auto holder = is_beside ? std::string("another row of these documents") : fmt::format("entry {}", entry);
        refusals_.add(file, row.line, "ref",
                      fmt::format("found `{}`, which {} has with other content; expected a ref of its own{}",
                                  row.text(production::DocumentColumn::ref), holder,
                                  is_beside ? "" : ": a posted row is corrected by a reversal"));
    }

    bool was_posted(const DocumentRow& row) const {
        const auto entry =
            ledger::find_entry(store_, production::name_of(row.kind), row.text(production::DocumentColumn::ref));
        return entry && entry->draft.content == row.content;
    }

    void refuse(const std::string& file, std::int64_t line, const RowErrors& objections) {
        for (const auto& objection : objections) refusals_.add(file, line, objection.column, objection.text);
    }

    void sum_up(const ledger::Draft& draft) {
        for (const auto& movement : draft.movements) {
            const auto path = std::tie(movement.from, movement.to, movement.cause);
            auto known = flows_.find(path);
            if (known == flows_.end())
                known =
                    flows_.emplace(path, answers::PostedFlow{movement.from, movement.to, movement.cause, {}, {}}).first;
            known->second.mass += movement.mass;
            known->second.money += movement.money;
        }
    }

    const plant::Plant& plant_;
    ledger::Store& store_;
    const answers::PostOptions& asked_;
    PostBook book_;
    LedgerRows rows_;
    production::Plausibility plausibility_;
    ledger::Posting posting_;
    production::Refusals refusals_;
    std::vector<std::string> warnings_;
    std::size_t doubts_ = 0;
    std::int64_t first_entry_ = 0;
    std::vector<answers::PostedFile> files_;
    std::map<std::tuple<std::string, std::string, std::string>, answers::PostedFlow, std::less<>> flows_;
};

namespace account = production::account;

}  // namespace

answers::PostAnswer post(const plant::Plant& plant, ledger::Store& store, const answers::PostOptions& asked) {
    return PostRun(plant, store, asked).run();
}

answers::PostAnswer post(const plant::Plant& plant, const std::string& ledger, const answers::PostOptions& asked) {
    if (!std::filesystem::exists(ledger)) {
        auto nowhere = ledger::Store::in_memory();
        answers::PostOptions dry = asked;
        dry.keep = answers::PostOptions::Keep::nothing;
        auto tried = post(plant, nowhere, dry);
        if (asked.keep == answers::PostOptions::Keep::nothing) return tried;
    }
    auto store = ledger::Store::open_for_writing(ledger, ledger::IfMissing::create);
    return post(plant, store, asked);
}

const orders::OrderRecord* PostBook::find_order(const std::string& number) {
    auto known = orders_.find(number);
    if (known == orders_.end()) {
        auto order = taken_order(store_, plant_, number);
        if (!order) return nullptr;
        known = orders_.emplace(number, std::move(*order)).first;
    }
    return &known->second;
}

std::optional<double> PostBook::last_issue_price(const std::string& corrugator, const std::string& paper,
                                                 base::Date day) {
    const auto posted = ledger::last_priced(store_, account::paper_store, corrugator, paper, day);
    const auto beside = foresight_.last_issue(corrugator, paper, day);
    if (beside && (!posted || *beside > posted->date)) {
        const auto* item = plant_.find_paper(paper);
        const auto* price = item == nullptr ? nullptr : item->price_on(*beside);
        return price == nullptr ? std::nullopt : std::optional(price->per_tonne / 1000);
    }
    if (!posted) return std::nullopt;
    return posted->money.to_double() / posted->mass.to_kg();
}

bool PostBook::is_unopened(const std::string& account, const std::string& material, base::Date day) {
    const auto moved = foresight_.first_movement(account);
    const auto counted = foresight_.first_count(account);
    if ((moved && *moved <= day) || (counted && *counted < day)) return false;
    if (ledger::has_moved(store_, account, day, account::opening)) return false;
    const auto counts = ledger::counts_of(store_, account);
    return std::none_of(counts.begin(), counts.end(), [&](const ledger::StandingCount& count) {
        return count.date < day || (count.date == day && count.count.material == material);
    });
}

}  // namespace flutebook::services
