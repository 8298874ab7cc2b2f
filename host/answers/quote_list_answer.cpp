#include "host/answers/quote_list_answer.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/date.hpp"

namespace flutebook::answers {

namespace {

template <typename Value>
Json value_or_null(const std::optional<Value>& value) {
    return value ? Json(*value) : Json();
}

Json price_json(const std::optional<Money>& price) {
    return price ? amount_json(*price) : Json();
}

Json size_json(const std::optional<ListedQuote::Size>& size) {
    if (!size) return {};
    return Json::array({size->length_mm, size->width_mm, size->height_mm});
}

Json mark_json(const QuoteMark& mark) {
    return {{"state", mark.state}, {"why", mark.why}, {"who", mark.who}, {"when", base::utc_time(mark.when)}};
}

Json quote_json(const ListedQuote& quote) {
    Json result = {{"saved", quote.number},
                   {"day", base::utc_day(quote.when)},
                   {"who", quote.who},
                   {"customer", quote.customer},
                   {"request", quote.request},
                   {"revision", quote.revision},
                   {"previous", value_or_null(quote.previous)},
                   {"copied_from", value_or_null(quote.copied_from)},
                   {"style", quote.style},
                   {"size_mm", size_json(quote.size)},
                   {"board", quote.board},
                   {"quantities", quote.quantities},
                   {"price_first", price_json(quote.first_price)},
                   {"price_last", price_json(quote.last_price)},
                   {"currency", quote.currency},
                   {"state", quote.state}};
    result["marks"] = Json::array();
    for (const QuoteMark& mark : quote.marks) result["marks"].push_back(mark_json(mark));
    return result;
}

}  // namespace

std::string quote_list_document(const QuoteList& list) {
    Json tree;
    tree["quotes"] = Json::array();
    for (const ListedQuote& quote : list.quotes) tree["quotes"].push_back(quote_json(quote));
    tree["before"] = list.has_more && !list.quotes.empty() ? Json(list.quotes.back().number) : Json();
    return document_text("quote-list", tree);
}

std::string mark_document(const std::string& number, const QuoteMark& mark, const std::string& head) {
    return document_text(
        "quote-mark", {{"saved", number}, {"state", mark.state}, {"why", mark.why}, {"who", mark.who}, {"head", head}});
}

std::string copy_document(const QuoteCopy& copy) {
    return document_text("quote-copy", {{"request", copy.request},
                                        {"copied_from", copy.quote},
                                        {"file", copy.file.empty() ? Json() : Json(copy.file)},
                                        {"text", copy.text}});
}

}  // namespace flutebook::answers
