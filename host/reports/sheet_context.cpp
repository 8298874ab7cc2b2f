#include "host/reports/sheet_context.hpp"

#include <fmt/format.h>

#include "host/answers/made_on.hpp"
#include "host/plant/machine_list.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::reports {

std::string SheetContext::pieces() const {
    if (counted == Counted::sets) return "sets";
    if (counted == Counted::pieces) return "pieces";
    return request.style == "0110" ? "sheets" : "boxes";
}

std::string SheetContext::piece() const {
    const std::string many = pieces();
    return many == "boxes" ? "box" : many.substr(0, many.size() - 1);
}

std::string SheetContext::order_text(double quantity) const {
    return fmt::format("{} {}", render::number_text(quantity, 0), quantity == 1 ? piece() : pieces());
}

std::string way_text(const drawings::ShownUnits& units, const answers::Quote& quote) {
    std::string result = answers::maker_text(quote);
    if (!quote.is_bought) result += ", roll " + units.exact_length(quote.roll_width_mm);
    if (quote.ups > 1) result += fmt::format(", {} x {} up", quote.nx, quote.ny);
    return fmt::format("{}, {}", result,
                       quote.route.empty() ? "no converter" : fmt::format("{}", fmt::join(quote.route, " > ")));
}

std::string listed_quantities(const std::vector<double>& quantities) {
    std::string result;
    for (std::size_t i = 0; i < quantities.size(); ++i) {
        if (i != 0) result += i + 1 == quantities.size() ? " and " : ", ";
        result += render::number_text(quantities[i], 0);
    }
    return result;
}

const std::string& machine_at(const answers::Quote& quote, std::size_t step) {
    return step == 0 ? quote.corrugator : quote.route[step - 1];
}

std::size_t parting_step(const plant::Plant& plant, const answers::Quote& quote) {
    for (std::size_t k = 0; k < quote.route.size(); ++k) {
        const plant::Converter* converter = plant.find_converter(quote.route[k]);
        if (converter != nullptr && box_styles::parts_sheets(converter->kind)) return k + 1;
    }
    return quote.route.size();
}

}  // namespace flutebook::reports
