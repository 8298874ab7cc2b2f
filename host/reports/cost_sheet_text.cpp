#include "host/reports/cost_sheet_text.hpp"

#include <fmt/format.h>

#include "host/base/date.hpp"
#include "host/render/number_text.hpp"
#include "host/render/table.hpp"
#include "host/render/text.hpp"
#include "host/reports/explain_text.hpp"
#include "host/reports/refused_section.hpp"
#include "host/reports/sections.hpp"
#include "host/reports/sheet_context.hpp"

namespace flutebook::reports {

namespace {

using orders::Request;
using services::Quote;

std::string asked_for(const SheetContext& enquiry) {
    const Request& request = enquiry.request;
    std::string result = request.style;
    if (request.inside) {
        const auto& inside = *request.inside;
        result += inside.height_mm > 0
                      ? ", inside " + enquiry.units.lengths({inside.length_mm, inside.width_mm, inside.height_mm})
                      : ", " + enquiry.units.lengths({inside.length_mm, inside.width_mm});
    }
    if (request.outline)
        result += ", " + enquiry.units.lengths({request.outline->length_mm, request.outline->width_mm});
    result += ", board " + enquiry.plant.boards[request.board].code;
    if (request.colours > 0)
        result += fmt::format(", {} {}", request.colours, request.colours == 1 ? "colour" : "colours");
    return result + fmt::format(", margin {} % of the price", render::brief_number(request.margin * 100, 4));
}

std::string heading(const SheetContext& enquiry) {
    const Request& request = enquiry.request;
    const std::string whose = request.customer.empty() ? request.number : request.number + "  " + request.customer;
    return render::rule('=') + render::edges(render::cleaned(whose), render::cleaned(enquiry.plant.name)) +
           render::hanging("", render::cleaned(asked_for(enquiry))) +
           render::hanging("", fmt::format("papers at their prices of {}, money in {}", base::to_string(request.date),
                                           enquiry.units.currency)) +
           render::rule('=');
}

std::string ladder(const SheetContext& enquiry, const services::RequestAnswer& answer) {
    render::Table table({render::Align::right, render::Align::right, render::Align::decimal, render::Align::right,
                         render::Align::flexible},
                        2);
    table.add({enquiry.pieces(), "cost", "price", "contribution", "made on"});
    for (const auto& item : answer.quantities) {
        if (item.quote) {
            const Quote& quote = *item.quote;
            table.add({render::number_text(quote.quantity, 0), render::money_text(quote.cost_per_thousand),
                       render::coin_text(quote.price_per_thousand, enquiry.plant.currency_minor_units),
                       render::money_text(quote.contribution_per_thousand), way_text(enquiry.units, quote)});
        } else {
            table.add({render::number_text(item.unmakeable->quantity, 0), "-", "-", "-", "nothing here can make it"});
        }
    }
    return fmt::format("Price ladder, {} per thousand {}\n", enquiry.units.currency, enquiry.pieces()) + table.text();
}

std::string sheet(const SheetContext& enquiry, const Quote& quote) {
    const std::string ways =
        quote.candidates == 1
            ? "the only way to make it here"
            : fmt::format("the cheapest of {} ways", render::number_text(static_cast<double>(quote.candidates), 0));
    return render::rule('-') +
           render::edges(fmt::format("{}, {}", enquiry.order_text(quote.quantity), ways),
                         render::cleaned(enquiry.request.number)) +
           render::rule('-') + layout_section(enquiry, quote) + "\n" + run_section(enquiry, quote) + "\n" +
           mass_section(enquiry, quote) + "\n" + cost_section(enquiry, quote) + "\n" + price_section(enquiry, quote) +
           "\n" + waste_section(enquiry, quote) + "\n" + runners_up_section(enquiry, quote);
}

}  // namespace

std::string answer_text(const plant::Plant& plant, const services::RequestAnswer& answer,
                        const services::QuoteOptions& asked) {
    if (answer.model_fault) return "";
    const SheetContext enquiry(plant, answer.request);
    std::string result = heading(enquiry) + "\n" + ladder(enquiry, answer);
    for (const auto& quantity : answer.quantities) {
        if (!quantity.quote) continue;
        result += '\n';
        result += sheet(enquiry, *quantity.quote);
        if (!asked.explain) continue;
        result += '\n';
        result += explain_text(enquiry.units, *asked.explain, *quantity.quote);
    }
    return result + refused_section(enquiry, answer) + "\n";
}

}  // namespace flutebook::reports
