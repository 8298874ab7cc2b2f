#include "host/answers/refusal_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

std::string refusal_document(const std::vector<std::string>& lines) {
    Json tree;
    tree["errors"] = lines;
    return document_text("refusal", tree);
}

}  // namespace flutebook::answers
