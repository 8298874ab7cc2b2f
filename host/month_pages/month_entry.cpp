// One entry, whole: the row as it was posted, what it moved, and the hash that chains it.
#include "host/base/date.hpp"
#include "host/month_pages/month_rows.hpp"
#include "host/month_pages/month_text.hpp"
#include "host/pages/report_parts.hpp"
#include "host/render/number_text.hpp"

namespace flutebook::pages {

namespace {

Html fact(const char* name, const std::string& value) {
    return value.empty() ? Html() : html("<div><dt>{}</dt><dd>{}</dd></div>", name, value);
}

Html entry_facts(const ledger::Entry& entry) {
    const auto& draft = entry.draft;
    Html facts = fact("document", draft.kind) + fact("ref", draft.ref) + fact("date", base::to_string(draft.date)) +
                 fact("shift", draft.shift) + fact("centre", draft.centre);
    if (!draft.order.empty())
        facts += html("<div><dt>order</dt><dd>{}</dd></div>", walk(order_address(draft.order), draft.order));
    facts += fact("board", draft.board) + fact("note", draft.note) + fact("posted by", entry.who) +
             fact("written, UTC", base::utc_time(entry.when));
    if (entry.clock) facts += fact("the machine's clock said", base::utc_time(*entry.clock));
    return html("<dl class=\"facts\">{}</dl>\n", facts);
}

Html counterpart(const answers::EntryAnswer& answer) {
    if (!answer.counterpart) return {};
    const auto& other = *answer.counterpart;
    const char* words = answer.entry.reverses ? "It undoes" : "It was undone by";
    return html("<p class=\"warning\">{} {}: {}</p>\n", words,
                walk(entry_address(other.number), "entry " + std::to_string(other.number)),
                answer.entry.reverses ? answer.entry.draft.note : other.draft.note);
}

// A line `column=value` for each field that holds anything.
Html posted_row(const std::string& content) {
    Html rows;
    for (std::size_t at = 0; at < content.size();) {
        const std::size_t end = std::min(content.find('\n', at), content.size());
        const std::string line = content.substr(at, end - at);
        const std::size_t sign = line.find('=');
        rows += sign == std::string::npos ? html("<tr><td colspan=\"2\" class=\"hash\">{}</td></tr>\n", line)
                                          : html("<tr><th scope=\"row\">{}</th><td>{}</td></tr>\n",
                                                 line.substr(0, sign), line.substr(sign + 1));
        at = end + 1;
    }
    return panel(
        "row", "The row as it was posted", Html(),
        scrolling("The row", html("<table>{}<tbody>\n{}</tbody></table>\n", head_row({"Column", "value"}, 2), rows)));
}

Html moved(const answers::EntryAnswer& answer) {
    const auto& draft = answer.entry.draft;
    if (draft.movements.empty()) return {};
    Html rows;
    for (const auto& movement : draft.movements)
        rows += html("<tr><th scope=\"row\">{}</th>{}{}{}{}{}</tr>\n", movement.from, text_cell(movement.to),
                     text_cell(movement.material), text_cell(movement.cause), number_cell(kg_text(movement.mass)),
                     number_cell(render::money_text(movement.money)));
    const auto head = head_row({"From", "to", "material", "cause", "kg", answer.currency}, 4);
    return panel("moved", "What it moved", Html(),
                 scrolling("What it moved", html("<table>{}<tbody>\n{}</tbody></table>\n", head, rows)));
}

Html expected_losses(const ledger::Draft& draft) {
    if (draft.expected.empty()) return {};
    Html rows;
    Grams sum;
    for (const auto& expected : draft.expected) {
        rows += html("<tr><th scope=\"row\">{}</th>{}</tr>\n", expected.cause, number_cell(kg_text(expected.mass)));
        sum += expected.mass;
    }
    rows += html("<tr class=\"total\"><th scope=\"row\">all</th>{}</tr>\n", number_cell(kg_text(sum)));
    return panel("expected", "What it was expected to lose", Html(),
                 html("<table>{}<tbody>\n{}</tbody></table>\n", head_row({"Cause", "kg"}, 1), rows));
}

Html counted(const ledger::Draft& draft) {
    if (!draft.count) return {};
    return panel("counted", "What it counted", Html(),
                 html("<p>{} kg of {} at {}, at the end of the day.</p>\n", kg_text(draft.count->mass),
                      draft.count->material, draft.count->account));
}

// A close and what only a close posts are part of a seal; a reversal is not reversed.
bool can_be_reversed(const ledger::Entry& entry) {
    for (const char* kind : {"close", "difference", "month-cost", "month-account", "saved"})
        if (entry.draft.kind == kind) return false;
    return !entry.reverses && !entry.reversed_by;
}

Html reversal_form(const Frame& frame, const answers::EntryAnswer& answer) {
    if (!frame.may(Role::controller) || !can_be_reversed(answer.entry)) return {};
    const char* when = answer.is_month_closed
                           ? "Its month is closed: the reversal is dated on the first day that is open."
                           : "The reversal has the row's own date.";
    return panel("reversal", "Undo this row", html("<span class=\"small quiet\">{}</span>", when),
                 html("<p>Each movement is posted again with the other sign; both rows stay.</p>"
                      "<form class=\"act\" method=\"post\" action=\"{}\">{}<label class=\"field\"><span>Why</span>"
                      "<input name=\"why\" maxlength=\"2000\" required></label>"
                      "<div><button>Reverse entry {}</button></div></form>\n",
                      entry_address(answer.entry.number).at("reversal"), token_field(frame), answer.entry.number));
}

}  // namespace

std::string entry_page(const Frame& frame, const answers::EntryAnswer& answer) {
    const auto& entry = answer.entry;
    const auto& date = entry.draft.date;
    const std::string title = entry.draft.kind + " " + entry.draft.ref;
    const Html head = html(
        "<div class=\"month-title\"><a href=\"{}\">{}</a></div>\n<h1>{} <small class=\"quiet\">entry "
        "{}</small></h1>\n",
        month_address(date.year() / date.month()), month_words(date.year() / date.month()), title, entry.number);
    const Html proof =
        panel("proof", "Its place in the chain", Html(),
              html("<p class=\"hash\">{}</p><p class=\"note\">SHA-256 of its content and of the hash before it.</p>\n",
                   entry.hash));
    return document(
        frame, title,
        head + entry_facts(entry) + counterpart(answer) +
            html("<div class=\"stack\">{}{}{}{}{}{}</div>\n", posted_row(entry.draft.content), moved(answer),
                 expected_losses(entry.draft), counted(entry.draft), proof, reversal_form(frame, answer)));
}

}  // namespace flutebook::pages
