// Whether a quote's profit is high enough to save it without approval, and who may approve it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/quote_answer.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::quoting {

/// By quantity that brings less than a limit of the plant.
[[nodiscard]] std::vector<base::Warning> approval_warnings(const plant::Plant& plant,
                                                           const answers::RequestAnswer& answer);

/// The approval to keep, nothing where the quote needs none; or why it cannot be kept.
struct ApprovalVerdict {
    std::optional<answers::Approval> approval;
    std::vector<std::string> refusals;  // finished sentences; empty: it can be kept
};

/// `name` is who approves of it; nothing where nobody does.
[[nodiscard]] ApprovalVerdict approve(const plant::Plant& plant, const answers::RequestAnswer& answer,
                                      const std::optional<std::string>& name);

}  // namespace flutebook::quoting
