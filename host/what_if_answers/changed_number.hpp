// What `--with` changed, beside any answer that takes it.
#pragma once

#include <string>
#include <vector>

#include "host/answers/json_text.hpp"

namespace flutebook::what_if_answers {

/// A number of the plant or of the request: what its file says, and what counts instead. A setting that no file gives
/// was its default.
struct ChangedNumber {
    std::string path, was, now;
};

/// [{"path", "was", "now"}...], texts as files have them.
[[nodiscard]] answers::Json changed_json(const std::vector<ChangedNumber>& changed);

}  // namespace flutebook::what_if_answers
