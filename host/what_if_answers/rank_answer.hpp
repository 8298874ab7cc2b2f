// What moves the price of a request: each number behind it, moved alone by a tenth. Plain values, and the document that
// `quote --rank --json` writes.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "host/answers/json_text.hpp"
#include "host/orders/request.hpp"
#include "host/plant/plant.hpp"
#include "host/what_if_answers/changed_number.hpp"
#include "ledger/values/money.hpp"

namespace flutebook::what_if_answers {

struct RankedNumber {
    /// A tenth less where more is out of range.
    enum class Tenth { more, less };
    std::string path;      // as --with takes it
    std::string was, now;  // texts as files have them; of several numbers, how many
    Tenth tenth = Tenth::more;
    Money price;   // a thousand, with the number moved
    Money change;  // of the price
};

/// A number that cannot be moved by a tenth either way.
struct StuckNumber {
    std::string path, why;
};

struct QuantityRank {
    double quantity;
    std::optional<Money> price;        // a thousand; nothing where it cannot be made
    std::vector<RankedNumber> moved;   // those that move the price, the largest change first, of equals by path
    std::vector<std::string> unmoved;  // paths of those that leave it
    std::vector<StuckNumber> stuck;    // by path
};

struct Rank {
    orders::Request request;
    std::vector<QuantityRank> quantities;
    std::vector<ChangedNumber> changed = {};   // before anything was moved
    std::size_t pieces = 0;                    // of a set; none of a box of one piece
    std::vector<base::Warning> warnings = {};  // of what was changed: that the plant as it is does not raise
};

/// The document of many requests, like QuoteStream:
///
/// {"answer": "quote-rank", "answer_version", "plant", "currency", "requests": [R...]}
/// R = {"request", "changed" (what --with changed, as in the document of --with; only where it was given),
///  "quantities": [Q...], "warnings" (as there, and where "changed" is)}
/// Q = {"quantity", "price_per_thousand" (null where it cannot be made), "moved": [M...] (the largest change first),
///  "unmoved": [path...], "stuck": [{"path", "why"}...]}
/// M = {"path", "was", "now", "tenth" (more less), "price_per_thousand", "change"}
class RankStream {
public:
    explicit RankStream(const plant::Plant& plant);

    [[nodiscard]] const std::string& begin() const { return list_.begin(); }
    [[nodiscard]] std::string add(const Rank& answer);
    [[nodiscard]] std::string end() const { return list_.end(); }

private:
    answers::JsonListStream list_;
};

}  // namespace flutebook::what_if_answers
