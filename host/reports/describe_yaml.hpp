// `plugin describe --yaml`: what a plant writes into plugins.yaml to work with a model, every setting with its sentence
// and its default. What must be given stands there empty, and the plant's file is refused until somebody fills it in.
#pragma once

#include <string>

#include "host/services/plugins/describe.hpp"

namespace flutebook::reports {

/// An entry of `plugins`, indented to be appended to the file; below it, as comments, what a request may set.
[[nodiscard]] std::string describe_yaml(const services::DescribedModel& description);

}  // namespace flutebook::reports
