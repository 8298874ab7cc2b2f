#include "host/offers/offer_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "host/base/decimal.hpp"
#include "host/drawings/shown_units.hpp"
#include "host/offers/offer_drawings.hpp"
#include "host/offers/offered_box.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::offers {

namespace {

using answers::NotInPrice;
using answers::RequestAnswer;
using render::Facts;
using render::Note;
using render::Number;
using render::ReportSection;
using render::ReportTable;
using render::TableColumn;
using List = OfferWords::List;

std::string quantity_text(double quantity) {
    return render::number_text(quantity, 0);
}

// A sentence, and the quantities that it holds for.
struct SaidAt {
    std::string text;
    std::vector<double> quantities;
};

void say(std::vector<SaidAt>& all, const std::string& text, double quantity) {
    auto same = std::find_if(all.begin(), all.end(), [&](const SaidAt& said) { return said.text == text; });
    if (same == all.end()) same = all.insert(same, {text, {}});
    if (same->quantities.empty() || same->quantities.back() != quantity) same->quantities.push_back(quantity);
}

std::string line_of(const std::string& plugin, const std::string& line) {
    return plugin + "." + line;
}

// Nothing where it is no plain number.
std::optional<double> number_given(const plant::GivenSetting& setting) {
    const auto* given = std::get_if<fields::GivenText>(&setting.value);
    const auto decimal = given == nullptr ? std::nullopt : base::read_decimal(given->text);
    return decimal ? std::optional(decimal->value) : std::nullopt;
}

class OfferWriter {
public:
    explicit OfferWriter(const OfferSources& sources)
        : plant_(sources.plant),
          answer_(sources.answer),
          words_(sources.words),
          conditions_(sources.conditions),
          saved_(sources.saved),
          units_(sources.plant) {
        gather_lines();
    }

    render::Report report() const {
        render::Report result{"offer", answer_.request.number, heading(), {}};
        const auto add = [&](ReportSection section) {
            if (!section.blocks.empty()) result.sections.push_back(std::move(section));
        };
        add(prices());
        ReportSection drawn{""};
        if (render::Drawings drawings = offer_drawings(words_, answer_.drawn); !drawings.items.empty())
            drawn.blocks.emplace_back(std::move(drawings));
        add(std::move(drawn));
        add(said_section("tools.title", tools_));
        add(said_section("not_included.title", not_included_));
        add(terms());
        return result;
    }

private:
    [[nodiscard]] render::ReportHeading heading() const {
        const orders::Request& request = answer_.request;
        Facts facts;
        if (!request.customer.empty()) facts.push_back({words_.text("heading.for"), {request.customer}});
        if (!saved_.empty()) facts.push_back({words_.text("heading.enquiry"), {request.number}});
        facts.push_back({words_.text("heading.date"), {base::to_string(request.date)}});
        for (render::LabelledText& fact : box_facts(plant_, answer_, words_)) facts.push_back(std::move(fact));
        return {words_.text("heading.offer", {{"number", saved_.empty() ? request.number : saved_}}), plant_.name,
                std::move(facts)};
    }

    [[nodiscard]] ReportSection prices() const {
        const std::string title = words_.text("prices.title", {{"currency", plant_.currency}});
        ReportTable table{title, {}};
        table.columns.push_back({words_.text("prices." + counted_in(answer_))});
        table.columns.push_back({words_.text("prices.per_thousand")});
        table.columns.back().weight = TableColumn::Weight::strong;
        table.columns.push_back({words_.text("prices.order_value")});
        for (const RequestAnswer::Quantity& item : answer_.quantities) {
            if (item.is_makeable())
                table.add({Number{item.quantity(), 0},
                           coins(item.quote ? item.quote->price_per_thousand : item.set->price_per_thousand),
                           coins(item.quote ? item.quote->sale.order_value : item.set->sale.order_value)});
            else
                table.add({Number{item.quantity(), 0}, words_.text("prices.not_offered"), ""});
        }
        return {title, {std::move(table), Note{words_.text("prices.tax")}}};
    }

    [[nodiscard]] render::Amount coins(Money money) const { return {money, plant_.currency_minor_units}; }

    // Tools are told wherever they are paid for; of all else only what the price leaves out.
    void gather_lines() {
        for (std::size_t i = 0; i < answer_.quantities.size(); ++i) {
            const RequestAnswer::Quantity& item = answer_.quantities[i];
            if (!item.is_makeable()) continue;
            ++offered_;
            for (const answers::Quote* quote : blanks_at(answer_, i))
                for (const answers::CostLine& line : quote->lines) tell_charged(line, item.quantity());
            if (item.quote) tell_packed(*item.quote);
            const auto& missing = item.quote ? item.quote->not_in_price : item.set->not_in_price;
            if (!missing) continue;
            for (const NotInPrice& left_out : *missing) tell_left_out(left_out, item.quantity());
        }
    }

    void tell_charged(const answers::CostLine& line, double quantity) {
        const std::string name = line_of(line.plugin, line.line);
        if (!words_.has(List::tools, name) || !(Money() < line.amount)) return;
        say(tools_, words_.text("tools.in_price", {{"tool", words_.word_for(List::tools, name)}}), quantity);
    }

    // Of a set each piece would be packed apart.
    void tell_packed(const answers::Quote& quote) {
        for (const answers::CostLine& line : quote.lines) {
            const std::string name = line_of(line.plugin, line.line);
            if (!words_.has(List::packed, name) || line.quantity < 1) continue;
            const double boxes = std::ceil(quote.quantity / line.quantity);
            say(packed_, words_.word_for(List::packed, name, {{"boxes", quantity_text(boxes)}}), quote.quantity);
        }
    }

    void tell_left_out(const NotInPrice& left_out, double quantity) {
        const std::string name = line_of(left_out.plugin, left_out.line);
        if (!left_out.amount) return say(not_included_, words_.word_for(List::not_included, name), quantity);
        const Money amount =
            Money::rounded(left_out.amount->to_double(), plant_.currency_minor_units).value_or(*left_out.amount);
        say(tools_,
            words_.text("tools.apart", {{"tool", words_.word_for(List::tools, name)},
                                        {"amount", render::coin_text(amount, plant_.currency_minor_units)},
                                        {"currency", plant_.currency}}),
            quantity);
    }

    [[nodiscard]] std::string said_text(const SaidAt& said) const {
        if (said.quantities.size() == offered_) return said.text;
        std::vector<std::string> quantities;
        for (const double quantity : said.quantities) quantities.push_back(quantity_text(quantity));
        return words_.text("at_quantities",
                           {{"quantities", fmt::format("{}", fmt::join(quantities, ", "))}, {"text", said.text}});
    }

    [[nodiscard]] ReportSection said_section(const std::string& title, const std::vector<SaidAt>& all) const {
        ReportSection section{words_.text(title)};
        for (const SaidAt& said : all) section.blocks.emplace_back(Note{said_text(said)});
        return section;
    }

    // The plant's own words, then what the request asks for that a customer is told of.
    [[nodiscard]] std::vector<std::string> delivery_terms() const {
        std::vector<std::string> result;
        if (!conditions_.delivery.empty()) result.push_back(conditions_.delivery);
        for (const auto& [name, number] : conditions_.asked)
            if (words_.has(List::asked, name))
                result.push_back(words_.word_for(List::asked, name, {{"number", render::brief_number(number, 2)}}));
        return result;
    }

    [[nodiscard]] ReportSection terms() const {
        Facts facts;
        if (conditions_.tolerance) {
            const auto share = [](double value) { return render::brief_number(value * 100, 2); };
            facts.push_back({words_.text("terms.tolerance"),
                             {words_.text("terms.up_to", {{"under", share(conditions_.tolerance->under)},
                                                          {"over", share(conditions_.tolerance->over)}})}});
        }
        if (conditions_.valid_until)
            facts.push_back({words_.text("terms.valid_until"), {base::to_string(*conditions_.valid_until)}});
        if (!packed_.empty()) facts.push_back({words_.text("terms.packing"), {}});
        for (const SaidAt& packed : packed_) facts.back().items.push_back(said_text(packed));
        if (auto delivery = delivery_terms(); !delivery.empty())
            facts.push_back({words_.text("terms.delivery"), std::move(delivery)});
        if (!conditions_.payment.empty()) facts.push_back({words_.text("terms.payment"), {conditions_.payment}});
        if (!plant_.address.empty()) {
            facts.push_back({words_.text("terms.from"), {plant_.name}});
            for (const std::string& line : plant_.address) facts.back().items.push_back(line);
        }
        ReportSection section{words_.text("terms.title")};
        if (!facts.empty()) section.blocks.emplace_back(std::move(facts));
        return section;
    }

    const plant::Plant& plant_;
    const RequestAnswer& answer_;
    const OfferWords& words_;
    const Conditions& conditions_;
    const std::string& saved_;
    drawings::ShownUnits units_;
    std::vector<SaidAt> tools_, not_included_, packed_;
    std::size_t offered_ = 0;  // quantities that have a price
};

}  // namespace

bool can_be_offered(const RequestAnswer& answer) {
    return !answer.model_fault && std::any_of(answer.quantities.begin(), answer.quantities.end(),
                                              [](const auto& quantity) { return quantity.is_makeable(); });
}

Conditions conditions_of(const plant::Plant& plant, const RequestAnswer& answer) {
    Conditions result;
    result.valid_until = answer.terms.valid_until;
    if (const auto& tolerance = answer.terms.tolerance)
        result.tolerance = DeliveredQuantity{tolerance->under, tolerance->over};
    result.delivery = plant.pricing.delivery_terms;
    result.payment = plant.pricing.payment_terms;
    for (const plant::ModelSettings& model : answer.request.extras)
        for (const plant::GivenSetting& setting : model.settings)
            if (const auto number = number_given(setting); number && *number > 1)
                result.asked.emplace_back(line_of(model.id, setting.name), *number);
    return result;
}

render::Report offer_report(const OfferSources& sources) {
    return OfferWriter(sources).report();
}

std::string offer_page(const plant::Plant& plant, const OfferWords& words, const std::vector<render::Report>& offers,
                       const render::PageLook::WayBack& back) {
    render::PageLook look;
    look.back = back;
    look.language = words.language();
    look.size =
        plant.page_size == plant::PageSize::letter ? render::PageLook::Size::letter : render::PageLook::Size::a4;
    for (const render::Report& offer : offers) look.title += (look.title.empty() ? "" : ", ") + offer.heading->title;
    return render::to_html(offers, look);
}

}  // namespace flutebook::offers
