// The document holds this request alone.
#include "host/reports/whole_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/answers/quote_json.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_report.hpp"

namespace flutebook::reports {

answers::Shown whole_answer(const plant::Plant& plant, const answers::RequestAnswer& answer,
                            const answers::QuoteOptions& asked) {
    nlohmann::ordered_json document = answers::quote_document(plant);
    document["requests"].push_back(answers::request_json(answer, asked));
    return {render::to_text(quote_report(plant, answer, asked)) + "\n", answers::json_text(document)};
}

}  // namespace flutebook::reports
