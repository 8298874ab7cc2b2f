#include "host/page_answers/refusal_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::page_answers {

std::string refusal_document(const std::vector<std::string>& lines) {
    answers::Json tree;
    tree["errors"] = lines;
    return answers::document_text("refusal", tree);
}

}  // namespace flutebook::page_answers
