#include "host/month_pages/month_closing.hpp"

#include "host/base/date.hpp"
#include "host/month/placed_loss.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/place_links.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::pages {

namespace {

using answers::MonthReview;

Html balance_line(const MonthReview& review) {
    const auto& account = review.month.account;
    const std::string text = "Not explained: " + kg_text(account.unexplained()) + " kg net of what was found, " +
                             share_text(account.unexplained(), account.issued) + " of issued, " +
                             render::percent_text(review.month.tolerance, 2) + " allowed" +
                             (review.month.balances() ? "" : ": the close asks for the reason");
    return review.month.balances() ? html("<li class=\"kept\">{}</li>\n", text) : html("<li>{}</li>\n", text);
}

Html sealed(const ledger::Seal& seal) {
    Html facts = html("<div><dt>closed by</dt><dd>{} on {} UTC</dd></div>", seal.who, base::utc_day(seal.when));
    if (!seal.note.empty()) facts += html("<div><dt>reason</dt><dd>{}</dd></div>", seal.note);
    facts += html("<div><dt>entry</dt><dd>{}</dd></div>", walk(entry_address(seal.entry), std::to_string(seal.entry)));
    return html(
        "<dl class=\"facts\">{}</dl><p>Its seal, to be kept elsewhere, in the signed report:</p><p "
        "class=\"hash\">{}</p>\n",
        facts, seal.head);
}

// Asked for only where something stands in the way: it may be that.
Html empty_months_field(const MonthReview& review) {
    if (review.month.close_waits_for.empty()) return {};
    return html(
        "<label><input type=\"checkbox\" name=\"empty_months\" value=\"yes\"> Nothing ran in the months before it that "
        "have no rows</label>");
}

Html close_form(const Frame& frame, const MonthReview& review) {
    const auto month = review.month.account.month;
    const bool balances = review.month.balances();
    const Attribute needed = balances ? Attribute() : Attribute(" required");
    const char* note = balances ? "A note, kept with the close; may be left out" : "The reason why it does not balance";
    return html(
        "<form class=\"act\" method=\"post\" action=\"{}\">{}"
        "<label class=\"field\"><span>{}</span><input name=\"why\" maxlength=\"2000\"{}></label>{}"
        "<div><button class=\"main\">Close {} for good</button></div></form>\n",
        month_address(month).at("closing"), token_field(frame), note, needed, empty_months_field(review),
        month_words(month));
}

}  // namespace

Html month_conditions(const Frame& frame, const MonthReview& review) {
    const std::string name = month_words(review.month.account.month);
    if (review.month.seal)
        return panel("closing", name + " is closed",
                     html("<span class=\"small quiet\">a late row goes into an open "
                          "month and says why</span>"),
                     sealed(*review.month.seal));
    Html items = balance_line(review);
    for (const std::string& line : review.month.close_waits_for)
        items += html("<li>{}</li>\n", told(frame.open_plant, line));
    if (review.month.close_waits_for.empty())
        items += html(
            "<li class=\"kept\">The month is over, no stock is below zero, machines are counted or empty, and no "
            "month before it was passed over</li>\n");
    Html inside = html("<ul class=\"conditions\">\n{}</ul>\n", items);
    if (frame.may(Role::controller)) inside += close_form(frame, review);
    return panel("closing", "Before " + name + " is closed",
                 html("<span class=\"small quiet\">closing is for good</span>"), inside);
}

}  // namespace flutebook::pages
