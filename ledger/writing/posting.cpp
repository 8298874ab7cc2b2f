#include "ledger/writing/posting.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "ledger/store/connection.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/draft_check.hpp"
#include "ledger/writing/entry_writer.hpp"
#include "ledger/writing/reversal.hpp"
#include "ledger/writing/saved_entry.hpp"

namespace flutebook::ledger {

namespace {

// The entry that already has the draft's kind and ref.
std::optional<Added> find_twin(Connection& connection, const Draft& draft) {
    const auto kind = connection.entry_writer().names().number_of(draft.kind);
    auto found = connection.ask_entries("SELECT id, content FROM entry WHERE kind = ? AND ref = ?");
    found->bind(1, kind).bind(2, draft.ref);
    if (!found->step()) return std::nullopt;
    if (found->view(1) == draft.content) return AlreadyPosted{found->number(0)};
    return KnownRef{found->number(0), found->text(1)};
}

}  // namespace

Posting::Posting(Store& store, std::string who) : connection_(store.connection()), who_(std::move(who)) {
    if (const auto fault = fault_of_name("the writer's name", who_)) connection_.refuse(*fault);
    transaction_ = std::make_unique<Transaction>(connection_);
    record_saved(connection_, who_);
    if (const auto seal = last_seal(store)) last_closed_ = seal->month;
}

Posting::~Posting() = default;

Added Posting::add(const Draft& draft, DraftSource source) {
    if (!transaction_) connection_.refuse("the posting has ended: nothing can be added to it");
    try {
        if (const auto fault = fault_of(draft, source))
            connection_.refuse(fmt::format("{} {}: {}", draft.kind, draft.ref, *fault));
        if (draft.kind == reversal_kind || draft.kind == close_kind || draft.kind == saved_kind)
            connection_.refuse(fmt::format("{} {}: no document may be of this kind", draft.kind, draft.ref));
        return add_examined(draft);
    } catch (const LedgerError&) {
        transaction_.reset();
        throw;
    }
}

Added Posting::add_examined(const Draft& draft) {
    if (auto twin = find_twin(connection_, draft)) {
        (std::holds_alternative<KnownRef>(*twin) ? refused_ : skipped_) += 1;
        return *twin;
    }
    const Month month = draft.date.year() / draft.date.month();
    if (last_closed_ && month <= *last_closed_) {
        ++refused_;
        return MonthClosed{*last_closed_};
    }
    auto& writer = connection_.entry_writer();
    const auto number = writer.add(draft, writer.actor(who_, connection_.clock().now()));
    ++posted_;
    return Posted{number};
}

Receipt Posting::commit() {
    if (!transaction_) connection_.refuse("the posting has ended: nothing is there to be kept");
    const auto ending = std::move(transaction_);
    if (refused_ > 0)
        connection_.refuse(
            fmt::format("nothing was posted: {} rows were refused; correct them and post again", refused_));
    ending->commit();
    const auto& hash = connection_.entry_writer().head();
    return {posted_, skipped_, hash == Hash{} ? std::string() : to_hex(hash)};
}

bool Batch::is_refused() const {
    return std::any_of(added.begin(), added.end(), is_refusal);
}

Batch would_post(Store& store, std::span<const Draft> drafts, const std::string& who) {
    Posting posting(store, who);
    Batch batch;
    for (const auto& draft : drafts) batch.added.push_back(posting.add(draft));
    return batch;
}

Batch post(Store& store, std::span<const Draft> drafts, const std::string& who) {
    Posting posting(store, who);
    Batch batch;
    for (const auto& draft : drafts) batch.added.push_back(posting.add(draft));
    if (!batch.is_refused()) batch.receipt = posting.commit();
    return batch;
}

}  // namespace flutebook::ledger
