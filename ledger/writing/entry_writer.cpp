#include "ledger/writing/entry_writer.hpp"

namespace flutebook::ledger {

EntryWriter::EntryWriter(Database& database)
    : names_(database),
      totals_(database),
      newest_(database, "SELECT id, written, hash FROM entry ORDER BY id DESC LIMIT 1"),
      // OR ROLLBACK: the whole document set is undone at once, and the database need not keep what one row changed.
      entry_(database,
             "INSERT OR ROLLBACK INTO entry (id, kind, ref, content, day, shift, centre, order_, board, note, who, "
             "written, reverses, hash, clock) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      movement_(database, "INSERT OR ROLLBACK INTO movement VALUES (?, ?, ?, ?, ?, ?, ?, ?)"),
      expected_(database, "INSERT OR ROLLBACK INTO expected VALUES (?, ?, ?)"),
      count_(database, "INSERT OR ROLLBACK INTO stock_count VALUES (?, ?, ?, ?, ?, ?)") {}

void EntryWriter::begin() {
    number_ = 0;
    when_ = {};
    head_ = {};
    if (newest_.step()) {
        number_ = newest_.number(0);
        when_ = std::chrono::sys_seconds(std::chrono::seconds(newest_.number(1)));
        head_ = from_bytes(newest_.view(2)).value_or(Hash{});
    }
    newest_.reset();
}

void EntryWriter::forget() {
    names_.forget();
    totals_.forget();
}

Actor EntryWriter::actor(const std::string& who, std::chrono::sys_seconds now) {
    if (now >= when_) return {who, now};
    if (!lag_) lag_ = ClockLag{now, when_};
    return {who, when_, now};
}

std::int64_t EntryWriter::add(const Draft& draft, const Actor& actor, std::int64_t reverses) {
    const auto number = number_ + 1;
    const auto day = to_number(draft.date);
    const EntryKeys keys = {day / 100, names_.number_of(draft.centre), names_.number_of(draft.shift),
                            names_.number_of(draft.board)};
    const auto hash = entry_hash(text_, head_, draft, {number, actor.who, actor.when, reverses, actor.clock});
    add_movements(draft, number, keys);
    add_expected(draft, number, keys);
    add_count(draft, number);
    entry_.bind(1, number)
        .bind(2, names_.number_of(draft.kind))
        .bind(3, draft.ref)
        .bind(4, draft.content)
        .bind(5, day)
        .bind(6, keys.shift)
        .bind(7, keys.centre)
        .bind(8, names_.number_of(draft.order))
        .bind(9, keys.board)
        .bind(10, draft.note)
        .bind(11, names_.number_of(actor.who))
        .bind(12, actor.when.time_since_epoch().count());
    if (reverses != 0)
        entry_.bind(13, reverses);
    else
        entry_.bind_nothing(13);
    if (actor.clock)
        entry_.bind(15, actor.clock->time_since_epoch().count());
    else
        entry_.bind_nothing(15);
    entry_.bind_bytes(14, bytes_of(hash)).run();
    number_ = number;
    when_ = actor.when;
    head_ = hash;
    return number;
}

void EntryWriter::add_movements(const Draft& draft, std::int64_t number, const EntryKeys& keys) {
    const auto day = to_number(draft.date);
    auto line = number * 1000;
    for (const auto& movement : draft.movements) {
        const MovementKeys between = {names_.number_of(movement.from), names_.number_of(movement.to),
                                      names_.number_of(movement.material), names_.number_of(movement.cause)};
        const auto grams = movement.mass.count();
        const auto money = movement.money.ten_thousandths();
        movement_.bind(1, line++)
            .bind(2, between.from)
            .bind(3, between.to)
            .bind(4, between.material)
            .bind(5, between.cause)
            .bind(6, grams)
            .bind(7, money)
            .bind(8, day)
            .run();
        totals_.add(keys, between, grams, money);
    }
}

void EntryWriter::add_expected(const Draft& draft, std::int64_t number, const EntryKeys& keys) {
    auto line = number * 1000;
    for (const auto& expected : draft.expected) {
        const auto cause = names_.number_of(expected.cause);
        expected_.bind(1, line++).bind(2, cause).bind(3, expected.mass.count()).run();
        totals_.add_expected(keys, cause, expected.mass.count());
    }
}

void EntryWriter::add_count(const Draft& draft, std::int64_t number) {
    if (!draft.count) return;
    count_.bind(1, number)
        .bind(2, to_number(draft.date))
        .bind(3, names_.number_of(draft.count->account))
        .bind(4, names_.number_of(draft.count->material))
        .bind(5, draft.count->mass.count());
    if (draft.count->value)
        count_.bind(6, draft.count->value->ten_thousandths());
    else
        count_.bind_nothing(6);
    count_.run();
}

}  // namespace flutebook::ledger
