// A production document tried: every row beside what is wrong with it, before anything is written.
#pragma once

#include <cstddef>
#include <string>

#include "host/month_answers/document_trial.hpp"
#include "host/plant/plant.hpp"
#include "ledger/store/store.hpp"

namespace flutebook::services {

/// Of rows without fault or doubt, so many are kept to be shown.
inline constexpr std::size_t most_shown_rows = 500;

/// Tries one file, as post() would post it, whatever `asked` keeps. `name` is what messages call the file. A file that
/// is refused is an answer here. Throws LedgerError.
[[nodiscard]] answers::DocumentTrial try_document(const plant::Plant& plant, ledger::Store& store,
                                                  answers::PostOptions asked, const std::string& name);

}  // namespace flutebook::services
