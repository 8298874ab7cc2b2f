// Pages of the demo plant, with answers of its own models.
#pragma once

#include <string>

#include "host/answers/quote_answer.hpp"
#include "host/answers/quote_list_answer.hpp"
#include "host/engine/engine.hpp"
#include "host/pages/quote_desk.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::fixture {

const plant::Plant& demo_plant();
const engine::Engine& demo_engine();

/// A line read and answered, as the quote desk answers it, with drawings; what is refused has no answer.
struct AnsweredLine {
    pages::DeskEnquiry enquiry;
    std::optional<answers::RequestAnswer> answer;
};
AnsweredLine answered(const std::string& line, const answers::QuoteOptions& asked = {});

/// An accountant at the desk; assets are looked for beside the page.
pages::Frame accountant();

/// An answered line as one of the saved quotes: the second of its request, marked lost.
answers::ListedQuote listed(const answers::RequestAnswer& answer);

/// The page of the quote desk for a query.
std::string desk_page(const pages::FormFields& query);

[[nodiscard]] inline bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

inline constexpr const char* everyday_line = "0201 400x300x250 B-140 500 1000 5000 2c 18% FG1 2026-10-15";

}  // namespace flutebook::fixture
