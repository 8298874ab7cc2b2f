#include "host/cli/cost_sheet_text.hpp"

#include <fmt/format.h>

#include "host/catalogue/date.hpp"
#include "host/cli/enquiry.hpp"
#include "host/cli/explain_text.hpp"
#include "host/cli/number_text.hpp"
#include "host/cli/refused_section.hpp"
#include "host/cli/sections.hpp"
#include "host/cli/table.hpp"
#include "host/cli/text.hpp"

namespace flutebook::cli {

namespace {

using catalogue::Request;
using desk::Quote;

std::string asked_for(const Enquiry& enquiry) {
    const Request& request = enquiry.request;
    std::string made = request.style;
    if (request.inside) {
        const auto& inside = *request.inside;
        made += inside.height_mm > 0
                    ? ", inside " + enquiry.units.lengths({inside.length_mm, inside.width_mm, inside.height_mm})
                    : ", " + enquiry.units.lengths({inside.length_mm, inside.width_mm});
    }
    if (request.outline) made += ", " + enquiry.units.lengths({request.outline->length_mm, request.outline->width_mm});
    made += ", board " + enquiry.plant.boards[request.board].code;
    if (request.colours > 0)
        made += fmt::format(", {} {}", request.colours, request.colours == 1 ? "colour" : "colours");
    return made + fmt::format(", margin {} % of the price", brief_number(request.margin * 100, 4));
}

std::string heading(const Enquiry& enquiry) {
    const Request& request = enquiry.request;
    const std::string whose = request.customer.empty() ? request.number : request.number + "  " + request.customer;
    return rule('=') + edges(cleaned(whose), cleaned(enquiry.plant.name)) + hanging("", cleaned(asked_for(enquiry))) +
           hanging("", fmt::format("papers at their prices of {}, money in {}", catalogue::to_string(request.date),
                                   enquiry.units.currency)) +
           rule('=');
}

std::string ladder(const Enquiry& enquiry, const desk::RequestAnswer& answer) {
    Table table({Align::right, Align::right, Align::decimal, Align::right, Align::flexible}, 2);
    table.add({enquiry.pieces(), "cost", "price", "contribution", "made on"});
    for (const auto& own : answer.quantities) {
        if (own.quote) {
            const Quote& quote = *own.quote;
            table.add({number_text(quote.quantity, 0), money_text(quote.cost_per_thousand),
                       coin_text(quote.price_per_thousand, enquiry.plant.currency_minor_units),
                       money_text(quote.contribution_per_thousand), way_text(enquiry.units, quote)});
        } else {
            table.add({number_text(own.unmakeable->quantity, 0), "-", "-", "-", "nothing here can make it"});
        }
    }
    return fmt::format("Price ladder, {} per thousand {}\n", enquiry.units.currency, enquiry.pieces()) + table.text();
}

std::string sheet(const Enquiry& enquiry, const Quote& quote) {
    const std::string ways = quote.candidates == 1 ? "the only way to make it here"
                                                   : fmt::format("the cheapest of {} ways",
                                                                 number_text(static_cast<double>(quote.candidates), 0));
    return rule('-') +
           edges(fmt::format("{}, {}", enquiry.order_text(quote.quantity), ways), cleaned(enquiry.request.number)) +
           rule('-') + layout_section(enquiry, quote) + "\n" + run_section(enquiry, quote) + "\n" +
           mass_section(enquiry, quote) + "\n" + cost_section(enquiry, quote) + "\n" + price_section(enquiry, quote) +
           "\n" + waste_section(enquiry, quote) + "\n" + runners_up_section(enquiry, quote);
}

}  // namespace

std::string answer_text(const catalogue::Plant& plant, const desk::RequestAnswer& answer, const desk::Asked& asked) {
    if (answer.model_fault) return "";
    const Enquiry enquiry(plant, answer.request);
    std::string made = heading(enquiry) + "\n" + ladder(enquiry, answer);
    for (const auto& own : answer.quantities) {
        if (!own.quote) continue;
        made += '\n';
        made += sheet(enquiry, *own.quote);
        if (!asked.explain) continue;
        made += '\n';
        made += explain_text(enquiry.units, *asked.explain, *own.quote);
    }
    return made + refused_section(enquiry, answer) + "\n";
}

}  // namespace flutebook::cli
