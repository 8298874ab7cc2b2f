#include "host/answers/made_on.hpp"

#include "host/plant/maker_text.hpp"

namespace flutebook::answers {

std::string maker_text(const Quote& quote) {
    return quote.is_bought ? plant::bought_from(quote.corrugator) : quote.corrugator;
}

std::string route_text(const Quote& quote) {
    return plant::route_text(maker_text(quote), quote.route);
}

}  // namespace flutebook::answers
