#include "host/cli/enquiry.hpp"

#include <fmt/format.h>

#include "host/catalogue/style.hpp"
#include "host/cli/number_text.hpp"

namespace flutebook::cli {

std::string Enquiry::pieces() const {
    const catalogue::Style* style = catalogue::find_style(request.style);
    return style != nullptr && style->shape == catalogue::Style::Shape::sheet ? "sheets" : "boxes";
}

std::string Enquiry::order_text(double quantity) const {
    const std::string one = pieces() == "sheets" ? "sheet" : "box";
    return fmt::format("{} {}", number_text(quantity, 0), quantity == 1 ? one : pieces());
}

std::string way_text(const ShownUnits& units, const desk::Quote& quote) {
    std::string made = fmt::format("{}, roll {}", quote.corrugator, units.length(quote.roll_width_mm));
    if (quote.ups > 1) made += fmt::format(", {} x {} up", quote.nx, quote.ny);
    return fmt::format("{}, {}", made,
                       quote.route.empty() ? "no converter" : fmt::format("{}", fmt::join(quote.route, " > ")));
}

std::string route_text(const desk::Quote& quote) {
    std::string made = quote.corrugator;
    for (const std::string& machine : quote.route) made += " > " + machine;
    return made;
}

const std::string& machine_at(const desk::Quote& quote, std::size_t step) {
    return step == 0 ? quote.corrugator : quote.route[step - 1];
}

std::size_t parting_step(const catalogue::Plant& plant, const desk::Quote& quote) {
    for (std::size_t k = 0; k < quote.route.size(); ++k) {
        const catalogue::Converter* converter = plant.find_converter(quote.route[k]);
        if (converter != nullptr && converter->kind == catalogue::Converter::Kind::die_cutter) return k + 1;
    }
    return quote.route.size();
}

}  // namespace flutebook::cli
