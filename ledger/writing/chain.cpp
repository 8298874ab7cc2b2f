#include "ledger/writing/chain.hpp"

#include <fmt/format.h>

#include <array>

namespace flutebook::ledger {

void ChainText::begin(const Hash& before, std::string_view what) {
    text_.assign(before.data(), before.size());
    text(what);
}

void ChainText::number(std::int64_t value) {
    std::array<char, 8> bytes{};
    auto rest = static_cast<std::uint64_t>(value);
    for (std::size_t i = bytes.size(); i > 0; --i) {
        bytes[i - 1] = static_cast<char>(rest & 0xffU);
        rest >>= 8U;
    }
    text_.append(bytes.data(), bytes.size());
}

void ChainText::text(std::string_view value) {
    const auto size = static_cast<std::uint32_t>(value.size());
    const std::array<char, 4> bytes = {static_cast<char>(size >> 24U), static_cast<char>(size >> 16U),
                                       static_cast<char>(size >> 8U), static_cast<char>(size)};
    text_.append(bytes.data(), bytes.size());
    text_ += value;
}

Hash entry_hash(ChainText& text, const Hash& before, const Draft& draft, const EntryOrigin& origin) {
    text.begin(before, origin.clock ? "entry 2" : "entry 1");
    text.number(origin.number);
    for (const auto* field : {&draft.kind, &draft.ref, &draft.content}) text.text(*field);
    text.number(to_number(draft.date));
    for (const auto* field : {&draft.shift, &draft.centre, &draft.order, &draft.board, &draft.note}) text.text(*field);
    text.text(origin.who);
    text.number(origin.when.time_since_epoch().count());
    text.number(origin.reverses);
    if (origin.clock) text.number(origin.clock->time_since_epoch().count());
    text.number(static_cast<std::int64_t>(draft.movements.size()));
    for (const auto& movement : draft.movements) {
        for (const auto* field : {&movement.from, &movement.to, &movement.material, &movement.cause}) text.text(*field);
        text.number(movement.mass.count());
        text.number(movement.money.ten_thousandths());
    }
    text.number(static_cast<std::int64_t>(draft.expected.size()));
    for (const auto& expected : draft.expected) {
        text.text(expected.cause);
        text.number(expected.mass.count());
    }
    text.number(draft.count ? 1 : 0);
    if (draft.count) {
        text.text(draft.count->account);
        text.text(draft.count->material);
        text.number(draft.count->mass.count());
        text.number(draft.count->value ? 1 : 0);
        if (draft.count->value) text.number(draft.count->value->ten_thousandths());
    }
    return text.hash();
}

std::int64_t to_number(Date date) {
    return int{date.year()} * 10000 + static_cast<int>(unsigned{date.month()} * 100 + unsigned{date.day()});
}

Date date_of(std::int64_t number) {
    return {std::chrono::year(static_cast<int>(number / 10000)),
            std::chrono::month(static_cast<unsigned>(number / 100 % 100)),
            std::chrono::day(static_cast<unsigned>(number % 100))};
}

std::int64_t to_number(Month month) {
    return int{month.year()} * 100 + static_cast<int>(unsigned{month.month()});
}

Month month_of(std::int64_t number) {
    return {std::chrono::year(static_cast<int>(number / 100)), std::chrono::month(static_cast<unsigned>(number % 100))};
}

std::string to_text(Month month) {
    return fmt::format("{:04}-{:02}", int{month.year()}, unsigned{month.month()});
}

std::string to_text(Date date) {
    return fmt::format("{}-{:02}", to_text(date.year() / date.month()), unsigned{date.day()});
}

}  // namespace flutebook::ledger
