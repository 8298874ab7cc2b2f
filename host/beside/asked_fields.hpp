// Reads the comparison that the fields of an address or a form ask for; each is read like the option with the same
// meaning.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "host/beside/asked.hpp"

namespace flutebook::beside {

/// By `names` fields are found, as `said` messages name them. Fields that are empty ask nothing; a list of boards may
/// come as one field a board. Throws InputError (request) with everything that is wrong, also with what cannot stand
/// together.
[[nodiscard]] Asked asked_by_fields(const std::vector<std::pair<std::string, std::string>>& fields, const Names& names,
                                    const Names& said);

}  // namespace flutebook::beside
