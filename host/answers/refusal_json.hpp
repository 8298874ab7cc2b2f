// Why a request of a browser or a program was refused: the document in place of a page.
#pragma once

#include <string>
#include <vector>

namespace flutebook::answers {

/// {"answer": "refusal", "answer_version", "errors": [SENTENCE...]}
[[nodiscard]] std::string refusal_document(const std::vector<std::string>& lines);

}  // namespace flutebook::answers
