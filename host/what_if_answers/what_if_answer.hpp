// The answer to "what if": a request as the plant is, and as it would be with other numbers. Plain values, and the
// document that `quote --with … --json` writes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/answers/json_text.hpp"
#include "host/answers/recheck_answer.hpp"
#include "host/base/place.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "host/what_if_answers/changed_number.hpp"

namespace flutebook::what_if_answers {

/// A quantity of boxes or sets, before and after; or of one piece of a set, behind its set.
struct QuantityBeside {
    double quantity;
    std::string piece;                        // of a set; it has no price
    std::optional<answers::Total> was, now;   // nothing where it cannot be made
    std::string made_on, now_made_on;         // "C1 > FG1"; empty of a set, and where it cannot be made
    std::vector<answers::ChangedLine> lines;  // all; none of a set, nor where one side cannot be made
    std::vector<std::string> limits;          // of the side that cannot be made: "WAY: LIMIT"
};

struct WhatIf {
    orders::Request request;
    std::vector<ChangedNumber> changed;
    std::vector<QuantityBeside> quantities;
    std::vector<base::Warning> warnings;  // that the plant as it is does not raise
};

/// The document of many requests, like QuoteStream:
///
/// {"answer": "quote-with", "answer_version", "plant", "currency", "with": [text...] (as asked), "requests": [R...]}
/// R = {"request", "changed": [{"path", "was", "now"}...] (texts as files have them), "quantities": [Q...],
///  "warnings": [{"at", "text"}...]}
/// Q = {"quantity", "before": T, "after": T, "difference": T, "made_on", "now_made_on", "lines": [L...],
///  "limits": ["WAY: LIMIT"...]}, behind a quantity of a set its pieces, each with "piece", its name
/// T = {"cost", "cost_per_thousand", "price_per_thousand"}, null where it cannot be made; the lines' differences add
/// up to that of the cost.
/// L = {"plugin", "line", "title", "step", "ply", "before", "after", "difference"}, amounts.
class WhatIfStream {
public:
    WhatIfStream(const plant::Plant& plant, const std::vector<std::string>& asked);

    [[nodiscard]] const std::string& begin() const { return list_.begin(); }
    [[nodiscard]] std::string add(const WhatIf& answer);
    [[nodiscard]] std::string end() const { return list_.end(); }

private:
    answers::JsonListStream list_;
};

}  // namespace flutebook::what_if_answers
