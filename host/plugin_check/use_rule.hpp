// The rule that whatever a model declares to need, or lets a person set, moves something.
//
// An input may matter only where another says so: rows are many, and their settings lie anywhere, often at their ends.
// An input is taken for unused only after all of those rows came to the same bits with other values of it.
#pragma once

#include "host/plugin_check/rules.hpp"

namespace flutebook::plugin_check {

[[nodiscard]] Wrong try_use(Subject& subject);

}  // namespace flutebook::plugin_check
