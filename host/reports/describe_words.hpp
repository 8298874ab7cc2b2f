// What every form of `plugin describe` says in the same words.
#pragma once

#include <string>

#include "host/contract/model.hpp"
#include "host/services/plugins/describe.hpp"

namespace flutebook::reports {

/// As a person would type it back: no zeros at the end, all the digits that a double has.
[[nodiscard]] std::string plain_number(double value);

/// "0 to 40", "0 or more", "any number".
[[nodiscard]] std::string range_words(const contract::Range& range);

/// "glue, stitch or tape"; of a setting that is no choice, its range with its unit: "0 to 40 g/m2".
[[nodiscard]] std::string allowed_words(const contract::Setting& setting);

/// "0.25", "glue", "must be given".
[[nodiscard]] std::string default_words(const contract::Setting& setting);

/// "one", "by machine", "by request".
[[nodiscard]] std::string varies_words(contract::VariesBy varies_by);

/// "one for the order", "one for each ply".
[[nodiscard]] std::string axis_words(contract::Axis axis);

/// Who gives a need, as far as the file alone tells.
[[nodiscard]] std::string giver_words(const services::DescribedModel& description, std::size_t need);

/// What a provided name takes the place of; empty where of nothing.
[[nodiscard]] std::string replaces_words(const services::DescribedModel& description, const contract::Name& provided);

}  // namespace flutebook::reports
