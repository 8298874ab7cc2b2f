// What a request that pays a share of its web would cost if each order paid its own roll alone.
#pragma once

#include "host/answers/quote_answer.hpp"

namespace flutebook::quoting {

/// `alone` is the answer to the same request without a share, `answer` that with one; both hold the same quantities.
[[nodiscard]] trim_answers::SharedTrim shared_trim(const answers::RequestAnswer& answer,
                                                   const answers::RequestAnswer& alone);

/// For each layout whose own trim is more than three times the share: slit widths that leave so much must not be
/// given away.
[[nodiscard]] std::vector<base::Warning> trim_warnings(const answers::RequestAnswer& answer);

}  // namespace flutebook::quoting
