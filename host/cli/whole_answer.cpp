#include "host/cli/whole_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/cli/cost_sheet_text.hpp"
#include "host/cli/json_text.hpp"
#include "host/cli/quote_json.hpp"

namespace flutebook::cli {

desk::Shown whole_answer(const catalogue::Plant& plant, const desk::RequestAnswer& answer, const desk::Asked& asked) {
    Json document = quote_document(plant);
    document["requests"].push_back(request_json(answer, asked));
    return {answer_text(plant, answer, asked), json_text(document)};
}

}  // namespace flutebook::cli
