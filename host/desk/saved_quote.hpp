// Quotes that are kept: saved whole, with all they stood on, and shown for ever as they were.
//
// The parts of a saved quote, by name:
//   request.yaml            the request's file
//   date.txt                the day whose prices it was costed at, which need not be the file's own
//   plant/plant.yaml …      the plant's six files
//   plugins.json            [{"id", "version", "file", "sha256"}...]
//   answer.txt, answer.json the answer as it was shown, for people and for scripts
//   terms/QUANTITY.json     for each quantity that could be made, the record that an order of it starts from
#pragma once

#include <array>
#include <string>
#include <vector>

#include "host/desk/quote.hpp"
#include "host/desk/workplace.hpp"
#include "ledger/quotes.hpp"

namespace flutebook::desk {

/// Kept under "plant/", each by its name.
inline constexpr std::array<const char*, 6> plant_files = {"plant.yaml",  "papers.yaml",   "flutes.yaml",
                                                           "boards.yaml", "machines.yaml", "plugins.yaml"};

/// A request's answer, and how each form of it was shown.
struct QuoteToSave {
    const RequestAnswer& answer;
    std::string text, json;
};

/// Whether an answer holds anything that can be kept: at least one quantity, and no model at fault.
[[nodiscard]] bool can_be_saved(const RequestAnswer& answer);

/// Saves one quote and answers with its number. Throws LedgerError, and InputError (plant) where a file that the quote
/// stands on can no longer be read.
[[nodiscard]] std::string save_quote(ledger::Store& store, const Workplace& workplace, const QuoteToSave& quote,
                                     const std::string& who);

/// The part of a saved quote; throws LedgerError, unfit, where it is not there.
[[nodiscard]] const std::string& part_of(const ledger::SavedQuote& quote, const std::string& name);

/// Throws LedgerError, refused, where there is no such quote.
[[nodiscard]] ledger::SavedQuote saved_quote(const ledger::Store& store, const std::string& number);

/// The name of the part that holds a quantity's terms.
[[nodiscard]] std::string terms_part(double quantity);

}  // namespace flutebook::desk
