// A month's account as the document that its close keeps with the seal, and as it is read back: a closed month is shown
// as it was closed, whatever the rules and prices of today.
#pragma once

#include <string>

#include "host/month/account.hpp"

namespace flutebook::answers {

/// One line of JSON: kilograms to the gram, money to its four places, everything that the account says.
[[nodiscard]] std::string account_document(const month::MonthAccount& account);

/// The account that account_document() wrote. Throws LedgerError, unfit, with `where`, for any other text.
[[nodiscard]] month::MonthAccount read_account(const std::string& where, const std::string& text);

}  // namespace flutebook::answers
