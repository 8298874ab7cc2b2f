// A quote as the ledger hands it over, made of the demo plant's files: what tests of saved quotes begin with.
#pragma once

#include <string>

#include "ledger/reading/quotes.hpp"

namespace flutebook::fixture {

/// The demo plant's folder.
[[nodiscard]] std::string demo_folder();

/// The bytes of a file; it is there, or the test fails.
[[nodiscard]] std::string text_of(const std::string& file);

/// Q000001 of R-1001 with the demo plant's files, asked for in a folder `plant` that is not there.
[[nodiscard]] ledger::SavedQuote kept_quote();

/// The content of one of its parts, to be changed. It is there, or the test fails.
[[nodiscard]] std::string& part(ledger::SavedQuote& quote, const std::string& name);

}  // namespace flutebook::fixture
