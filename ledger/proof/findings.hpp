// The findings of a proof.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ledger/proof/verify.hpp"

namespace flutebook::ledger::proof {

class Findings {
public:
    /// The first hundred are kept: they say enough.
    void add(std::string text) { add(std::nullopt, std::move(text)); }
    void add_at(std::int64_t entry, std::string text) { add(std::optional(entry), std::move(text)); }

    [[nodiscard]] std::vector<Finding> take() { return std::move(list_); }

private:
    static constexpr std::size_t most = 100;

    void add(std::optional<std::int64_t> entry, std::string text) {
        if (list_.size() < most) list_.push_back({entry, std::move(text)});
    }

    std::vector<Finding> list_;
};

}  // namespace flutebook::ledger::proof
