// What stands before the decimals of a number that people are shown; files, lists and documents have a point.
#pragma once

namespace flutebook::base {

enum class DecimalMark { point, comma };

}  // namespace flutebook::base
