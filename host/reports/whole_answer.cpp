#include "host/reports/whole_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/quote_json.hpp"
#include "host/reports/cost_sheet_text.hpp"

namespace flutebook::reports {

services::Shown whole_answer(const plant::Plant& plant, const services::RequestAnswer& answer,
                             const services::QuoteOptions& asked) {
    nlohmann::ordered_json document = answers::quote_document(plant);
    document["requests"].push_back(answers::request_json(answer, asked));
    return {answer_text(plant, answer, asked), answers::json_text(document)};
}

}  // namespace flutebook::reports
