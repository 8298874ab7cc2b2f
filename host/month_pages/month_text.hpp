// What the pages of months, causes, entries and orders say alike: masses, differences, shares, and where each figure
// leads.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/month_answers/month_answer.hpp"
#include "host/pages/address.hpp"
#include "host/pages/markup.hpp"
#include "ledger/reading/entry_search.hpp"
#include "ledger/values/mass.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::pages {

/// "105.27 t".
[[nodiscard]] std::string tonnes_text(Grams mass);
/// "105 270.000", to the gram; the column says kg.
[[nodiscard]] std::string kg_text(Grams mass);
/// The same with its sign, "+495.164".
[[nodiscard]] std::string difference_text(Grams mass);
/// "608 kg" or "1.24 t": a mass in a sentence.
[[nodiscard]] std::string mass_words(Grams mass);
/// "9.76 %"; "-" where there is no whole.
[[nodiscard]] std::string share_text(Grams part, Grams whole);
/// "482.51", two places.
[[nodiscard]] std::string coins_text(Money amount);
/// The same with its sign.
[[nodiscard]] std::string coins_difference(Money amount);

/// Amounts with two places, so that they come to that of `whole` as it is shown.
[[nodiscard]] std::vector<std::string> coins_of_parts(const std::vector<Money>& parts, Money whole);
/// Shares of `whole` in per cent with two places, so that they come to that of `all`, which is about their sum.
[[nodiscard]] std::vector<std::string> shares_of_parts(const std::vector<Grams>& parts, Grams all, Grams whole);

/// "October 2026".
[[nodiscard]] std::string month_words(ledger::Month month);
/// A number of the year and the month: "2026-10".
[[nodiscard]] Address month_address(ledger::Month month);
[[nodiscard]] Address cause_address(ledger::Month month, const std::string& cause);
/// Of the list of a month's entries.
[[nodiscard]] Address entries_address(const ledger::EntrySearch& search);
[[nodiscard]] Address entry_address(std::int64_t entry);
[[nodiscard]] Address order_address(const std::string& order);

/// A name, or its replacement if it is empty.
[[nodiscard]] std::string name_or(const std::string& name, const char* none);

/// A figure that leads to what it is made of.
[[nodiscard]] Html walk(const Address& address, const std::string& text);
/// A cell of a table with a difference: worse above nothing, better below.
[[nodiscard]] Html difference_cell(Grams mass, const Address& address);

/// A wide table or chart that scrolls by itself, reached by the keyboard.
[[nodiscard]] Html scrolling(const std::string& name, const Html& inside);
/// A head of a table: names of columns, those from `first_number` to the last but `texts_behind` above numbers.
[[nodiscard]] Html head_row(const std::vector<std::string>& names, std::size_t first_number,
                            std::size_t texts_behind = 0);
[[nodiscard]] Html number_cell(const std::string& text);
[[nodiscard]] Html text_cell(const std::string& text);

}  // namespace flutebook::pages
