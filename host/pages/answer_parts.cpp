// Places each section of the report on the page, and links its figures to their sources.
#include "host/pages/answer_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "host/drawings/blank_drawings.hpp"
#include "host/pages/ladder.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/reports/labels.hpp"
#include "host/reports/not_in_price.hpp"
#include "host/reports/price_rules.hpp"
#include "host/reports/quote_ladder.hpp"
#include "host/reports/quote_report.hpp"
#include "host/reports/quote_sections.hpp"
#include "host/reports/shared_trim.hpp"
#include "host/reports/strength_report.hpp"

namespace flutebook::pages {

namespace {

using answers::Quote;
using answers::RequestAnswer;
using render::ReportSection;
using reports::SheetContext;

constexpr std::array part_ids = {"ladder", "beside", "missing", "watch",  "limits",  "layout",
                                 "box",    "cost",   "prices",  "masses", "further", "pieces"};

// Opens what is behind a figure of one quantity, below its row.
class QuoteWalk : public render::FigureWalk {
public:
    QuoteWalk(const SheetContext& context, const AnswerView& view, const Quote& quote, std::string part)
        : context_(context),
          view_(view),
          quote_(quote),
          part_(std::move(part)),
          places_(view.open_plant, &context.plant.files) {}

    [[nodiscard]] std::string address(const std::string& figure) const override {
        const Address address = view_.at_figure(quote_.quantity, figure);
        return (is_below() ? address.to(part_ + "-walk-" + figure) : address).text();
    }

    [[nodiscard]] std::string opened(const std::string& figure) const override {
        if (!is_below() || figure != view_.figure) return "";
        const ReportSection story =
            without_folder(reports::explain_section(context_.units, figure, quote_), context_.plant.folder);
        return html("<details class=\"behind\" open id=\"behind-{}\"><summary>{}</summary>{}</details>", figure,
                    story.title, blocks_html(story, part_ + "-behind", &places_))
            .text();
    }

    [[nodiscard]] std::string place(std::string_view file, int line) const override {
        return places_.place(file, line);
    }
    [[nodiscard]] std::string said(const std::string& text) const override { return places_.said(text); }

private:
    [[nodiscard]] bool is_below() const { return view_.origins == AnswerView::Origins::below; }

    const SheetContext& context_;
    const AnswerView& view_;
    const Quote& quote_;
    std::string part_;
    PlaceLinks places_;
};

class AnswerWriter {
public:
    AnswerWriter(const plant::Plant& plant, const RequestAnswer& answer, const AnswerView& view,
                 const PartsAround& around)
        : plant_(plant),
          answer_(answer),
          view_(view),
          around_(around),
          context_(plant, answer.request,
                   answer.pieces.empty() ? SheetContext::Counted::boxes : SheetContext::Counted::sets),
          shown_(shown_quantity(answer, view)),
          places_(view.open_plant, &plant.files) {}

    Html text() {
        Html result = head() + around_.below_ladder;
        result += section_panel("missing", missing(), &places_);
        result += section_panel("watch", without_folder(reports::warnings_section(answer_.warnings), plant_.folder),
                                &places_);
        result += limits();
        if (shown_ && answer_.quantities[*shown_].quote)
            result += sheet(*answer_.quantities[*shown_].quote);
        else
            for (const char* id : {"layout", "box", "cost", "prices", "masses"}) result += no_part(id);
        result += further();
        result += pieces();
        return result;
    }

private:
    Html head() {
        const std::string title = reports::request_heading(plant_, answer_.request).title;
        return panel("ladder", title, html("<span class=\"small quiet\">{}</span>{}", around_.aside, around_.deed),
                     ladder_html(context_, answer_, view_));
    }

    ReportSection missing() {
        const std::vector<std::string> texts = reports::missing_texts(context_, answer_);
        return texts.empty() ? ReportSection{} : reports::not_in_price_section(texts);
    }

    Html limits() {
        Html inside;
        for (const ReportSection& section : reports::limit_sections(context_, answer_))
            inside += html("<h3>{}</h3>\n{}", section.title, blocks_html(section, "limits", &places_));
        return inside.is_empty() ? no_part("limits") : panel("limits", reports::cannot_be_made_label, Html(), inside);
    }

    Html sheet(const Quote& quote) {
        const reports::SheetSections all = reports::sheet_sections_by_name(context_, quote);
        Html result = walked("layout", all.layout, quote);
        result += box();
        result += walked("cost", all.cost, quote);
        result += html("<div class=\"pair\" id=\"prices\">{}{}</div>\n", walked("price", all.price, quote),
                       ways(all.runners_up, quote));
        result += html("<div class=\"pair\" id=\"masses\">{}{}</div>\n", walked("mass", all.mass, quote),
                       html("<div class=\"stack\">{}{}</div>\n", walked("run", all.run, quote),
                            walked("waste", all.waste, quote)));
        return result;
    }

    Html walked(const char* id, const ReportSection& section, const Quote& quote) {
        const QuoteWalk walk(context_, view_, quote, id);
        return of_quantity(id, section, quote, &walk);
    }

    Html ways(ReportSection section, const Quote& quote) {
        for (render::Block& block : section.blocks)
            if (auto* table = std::get_if<render::ReportTable>(&block))
                for (std::size_t i = 0; i < table->rows.size(); ++i) table->rows[i].figure = way_figure(i);
        return of_quantity("ways", section, quote, around_.ways);
    }

    Html of_quantity(const char* id, const ReportSection& section, const Quote& quote, const render::FigureWalk* walk) {
        return section.blocks.empty()
                   ? no_part(id)
                   : panel(id, section.title,
                           html("<span class=\"small quiet\">{}</span>", context_.order_text(quote.quantity)),
                           blocks_html(section, id, walk));
    }

    Html box() {
        ReportSection section{answer_.not_drawn};
        if (!answer_.drawn.empty())
            section.blocks.emplace_back(drawings::blank_drawings(context_.units, answer_.drawn));
        section.title = answer_.drawn.size() > 1 ? "Boxes" : "Box";
        if (!answer_.not_drawn.empty()) section.blocks.emplace_back(render::Note{answer_.not_drawn});
        return section_panel("box", section);
    }

    // What only some quotes have.
    Html further() {
        std::vector<ReportSection> sections;
        if (const auto rules = reports::price_rule_lines(context_, answer_); !rules.empty())
            sections.push_back(reports::price_rules_section(rules));
        if (ReportSection second = reports::second_currency_section(context_, answer_); !second.title.empty())
            sections.push_back(std::move(second));
        if (answer_.strength) sections.push_back(reports::strength_section(context_, *answer_.strength));
        if (answer_.trim) sections.push_back(reports::shared_trim_section(context_, answer_));
        Html result;
        for (std::size_t i = 0; i < sections.size(); ++i)
            result +=
                section_panel("further-" + std::to_string(i + 1), without_folder(sections[i], plant_.folder), &places_);
        return result.is_empty() ? no_part("further") : html("<div class=\"stack\" id=\"further\">{}</div>\n", result);
    }

    // A set's pieces have their sheets one after the other, as on the sheet that is printed.
    Html pieces() {
        if (!shown_ || !answer_.quantities[*shown_].set) return no_part("pieces");
        const auto sheets = reports::ShownSheets::of(answer_.quantities[*shown_].quantity());
        render::Report report = reports::quote_report(plant_, answer_, {}, sheets);
        const auto first_part =
            std::find_if(report.sections.begin(), report.sections.end(),
                         [](const ReportSection& section) { return section.kind == ReportSection::Kind::part; });
        report.sections.erase(report.sections.begin(), first_part);
        report.heading.reset();
        return html("<div id=\"pieces\">{}</div>\n", report_html(report, "piece", &places_));
    }

    const plant::Plant& plant_;
    const RequestAnswer& answer_;
    const AnswerView& view_;
    const PartsAround& around_;
    SheetContext context_;
    std::optional<std::size_t> shown_;
    PlaceLinks places_;
};

}  // namespace

std::string way_figure(std::size_t index) {
    return "way-" + std::to_string(index + 1);
}

Html answer_parts(const plant::Plant& plant, const RequestAnswer& answer, const AnswerView& view,
                  const PartsAround& around) {
    return AnswerWriter(plant, answer, view, around).text();
}

Html beside_parts(const plant::Plant& plant, const RequestAnswer& answer, const AnswerView& view,
                  const std::string& prefix) {
    const SheetContext context(plant, answer.request,
                               answer.pieces.empty() ? SheetContext::Counted::boxes : SheetContext::Counted::sets);
    Html result = html("<div class=\"panel\">{}</div>\n", ladder_html(context, answer, view, prefix + "-"));
    const auto shown = shown_quantity(answer, view);
    if (!shown || !answer.quantities[*shown].quote) return result;
    const reports::SheetSections all = reports::sheet_sections_by_name(context, *answer.quantities[*shown].quote);
    for (const ReportSection* section : {&all.layout, &all.cost})
        result += html("<div class=\"panel\"><h3>{}</h3>\n{}</div>\n", section->title, blocks_html(*section, prefix));
    return result;
}

Html empty_answer_parts() {
    Html result;
    for (const char* id : part_ids) result += no_part(id);
    return result;
}

std::string price_text(const plant::Plant& plant, const RequestAnswer& answer, const AnswerView& view) {
    const auto shown = shown_quantity(answer, view);
    if (!shown) return reports::cannot_be_made_label;
    const SheetContext context(plant, answer.request);
    const auto row = reports::ladder_row(context, answer, *shown);
    return fmt::format(
        "{} {}, {}: {}", reports::price_per_thousand_label,
        render::whole_text(render::Amount{row->price_per_thousand, plant.currency_minor_units, plant.currency}),
        render::whole_text(render::Number{row->quantity, 0}), row->made_on);
}

}  // namespace flutebook::pages
