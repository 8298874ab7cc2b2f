// What posting, closing, reversing, listing, verifying and copying a ledger answer.
#pragma once

#include <string>

#include "host/month_answers/ledger_answer.hpp"
#include "host/month_answers/month_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"
#include "ledger/proof/verify.hpp"

namespace flutebook::month_reports {

/// What became of each file's rows, and what they moved.
[[nodiscard]] render::Report post_report(const plant::Plant& plant, const answers::PostAnswer& answer,
                                         answers::PostOptions::Keep keep);
[[nodiscard]] render::Report close_report(const answers::CloseAnswer& answer);
[[nodiscard]] render::Report reverse_report(const answers::ReverseAnswer& answer);
[[nodiscard]] render::Report entries_report(const answers::EntriesAnswer& answer);
[[nodiscard]] render::Report verify_report(const ledger::Proof& proof);
/// `file` is the copy.
[[nodiscard]] render::Report backup_report(const std::string& file, const ledger::Proof& proof);

}  // namespace flutebook::month_reports
