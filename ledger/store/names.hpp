// Names and the numbers they have in the ledger's tables.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "ledger/store/database.hpp"

namespace flutebook::ledger {

/// Of a ledger that is being written. No more than some ten thousand are remembered at a time.
class Names {
public:
    explicit Names(Database& database);

    /// The name's number; given one where it has none yet.
    [[nodiscard]] std::int64_t number_of(const std::string& name);

    /// The transaction that gave numbers was undone.
    void forget();

private:
    Statement find_, add_;
    std::unordered_map<std::string, std::int64_t> known_;
};

/// The number of a name that is known already.
[[nodiscard]] std::optional<std::int64_t> find_name(Database& database, const std::string& name);

}  // namespace flutebook::ledger
