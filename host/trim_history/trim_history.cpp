// All masses are those of the rows: what a run combined is what left its corrugator, good sheets and losses, which is
// paper and adhesive issued to it less what stayed on roll ends.
#include "host/trim_history/trim_history.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <memory>
#include <mutex>

#include "host/production/row.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/standing.hpp"
#include "ledger/values/error.hpp"

namespace flutebook::trim_history {

namespace {

using plant::TrimRecord;
using production::DocumentColumn;

// The part of an order change that a row had: none where it went on with a run, its width of a web that it shared.
double changes_of(const ledger::StandingEntry& entry) {
    static const auto& form = production::widest_form(production::Kind::corrugator_run);
    const auto row = production::RowReader::read_posted(form, entry.content);
    if (!row)
        throw LedgerError(
            LedgerError::Kind::unfit,
            fmt::format("order {}: the row of a run can no longer be read; run `flutebook verify`", entry.order));
    if (row->value(DocumentColumn::order_change_metres) <= 0) return 0;
    const auto whole = row->number(DocumentColumn::web);
    return whole ? row->value(DocumentColumn::roll_width) / *whole : 1;
}

TrimRecord record_of(const ledger::StandingEntry& entry) {
    TrimRecord result;
    result.runs = 1;
    result.changes = changes_of(entry);
    for (const auto& [cause, mass] : entry.left) {
        result.board += mass;
        if (cause == "side-trim") result.side_trim += mass;
    }
    return result;
}

void add(TrimRecord& sum, const TrimRecord& part) {
    sum.runs += part.runs;
    sum.changes += part.changes;
    sum.side_trim += part.side_trim;
    sum.board += part.board;
}

// Reads the ledger once for each twelve months that are asked for.
class LedgerTrim {
public:
    explicit LedgerTrim(std::string file) : file_(std::move(file)) {}

    plant::TrimFinding finding(const std::string& board, base::Date day) {
        plant::TrimFinding result{std::nullopt, plant::twelve_months_before(board, day), file_};
        plant::TrimOrigin& origin = result.looked_at;
        const TrimOfMonths& held = months(origin.first, origin.last);
        const auto own = held.boards.find(board);
        if (own != held.boards.end()) origin.board_runs = own->second.runs;
        origin.plant_runs = held.plant.runs;
        if (origin.board_runs >= plant::enough_runs)
            result.policy = policy(origin, plant::TrimOrigin::Of::board, own->second);
        else if (origin.plant_runs >= plant::enough_runs)
            result.policy = policy(origin, plant::TrimOrigin::Of::plant, held.plant);
        return result;
    }

private:
    static plant::TrimPolicy policy(plant::TrimOrigin origin, plant::TrimOrigin::Of of, const TrimRecord& record) {
        plant::TrimPolicy result;
        result.share = record.share();
        result.changes = record.changes_per_order();
        origin.of = of;
        origin.record = record;
        result.origin = std::move(origin);
        return result;
    }

    const TrimOfMonths& months(ledger::Month first, ledger::Month last) {
        const std::lock_guard lock(mutex_);
        const auto known = known_.find(first);
        if (known != known_.end()) return known->second;
        TrimOfMonths held;
        if (std::filesystem::exists(file_)) {
            const auto store = ledger::Store::open_for_reading(file_);
            const ledger::Snapshot moment(store);
            held = reader_.of(store, first, last);
        }
        return known_.emplace(first, std::move(held)).first->second;
    }

    const std::string file_;
    std::mutex mutex_;
    TrimReader reader_;
    std::map<ledger::Month, TrimOfMonths> known_;  // by the first of twelve
};

// A ledger only grows: as long as its newest entry is the same, so is what was read of it.
class GrowingLedgerTrim {
public:
    explicit GrowingLedgerTrim(std::string file) : file_(std::move(file)) {}

    plant::TrimFinding finding(const std::string& board, base::Date day) { return newest()->finding(board, day); }

private:
    std::shared_ptr<LedgerTrim> newest() {
        const std::int64_t entries = newest_entry();
        const std::lock_guard lock(mutex_);
        if (trim_ == nullptr || entries != entries_) trim_ = std::make_shared<LedgerTrim>(file_);
        entries_ = entries;
        return trim_;
    }

    // 0 where there is none.
    [[nodiscard]] std::int64_t newest_entry() const {
        if (!std::filesystem::exists(file_)) return 0;
        const auto head = ledger::head(ledger::Store::open_for_reading(file_));
        return head ? head->entry : 0;
    }

    const std::string file_;
    std::mutex mutex_;
    std::int64_t entries_ = 0;
    std::shared_ptr<LedgerTrim> trim_;
};

}  // namespace

TrimReader::RunsOfBoards TrimReader::runs_in(const ledger::Store& store, ledger::Month month) {
    RunsOfBoards result;
    ledger::visit_standing(store, month, production::name_of(production::Kind::corrugator_run),
                           [&](const ledger::StandingEntry& entry) {
                               Runs& runs = result[entry.board];
                               add(runs.record, record_of(entry));
                               runs.orders.insert(entry.order);
                           });
    return result;
}

TrimOfMonths TrimReader::of(const ledger::Store& store, ledger::Month first, ledger::Month last) {
    RunsOfBoards sum;
    for (ledger::Month month = first; month <= last; month += std::chrono::months(1)) {
        auto known = months_.find(month);
        if (known == months_.end()) known = months_.emplace(month, runs_in(store, month)).first;
        for (const auto& [board, runs] : known->second) {
            add(sum[board].record, runs.record);
            sum[board].orders.insert(runs.orders.begin(), runs.orders.end());
        }
    }
    TrimOfMonths result;
    for (auto& [board, runs] : sum) {
        runs.record.orders = static_cast<std::int64_t>(runs.orders.size());
        add(result.plant, runs.record);
        result.plant.orders += runs.record.orders;  // an order is of one board
        result.boards[board] = runs.record;
    }
    return result;
}

plant::TrimSource trim_source(const std::string& ledger_file) {
    const auto trim = std::make_shared<LedgerTrim>(ledger_file);
    return [trim](const std::string& board, base::Date day) { return trim->finding(board, day); };
}

plant::TrimSource newest_trim_source(const std::string& ledger_file) {
    const auto trim = std::make_shared<GrowingLedgerTrim>(ledger_file);
    return [trim](const std::string& board, base::Date day) { return trim->finding(board, day); };
}

}  // namespace flutebook::trim_history
