#include "host/month_pages/month_text.hpp"

#include <array>
#include <cmath>

#include "host/base/parts.hpp"
#include "host/month/account.hpp"
#include "host/render/number_text.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

namespace {

constexpr int shown_places = 2;

std::string signed_text(double value, int decimals) {
    const bool is_zero = std::fabs(value) < std::pow(10.0, -decimals) / 2;
    if (is_zero) return render::number_text(0, decimals);
    return render::cell_text(render::Number{value, decimals, render::Number::Form::fixed, {}, render::Sign::always})
        .text;
}

}  // namespace

std::string tonnes_text(Grams mass) {
    return render::number_text(mass.to_kg() / 1000, 2) + " t";
}

std::string kg_text(Grams mass) {
    return render::number_text(mass.to_kg(), 3);
}

std::string difference_text(Grams mass) {
    return signed_text(mass.to_kg(), 3);
}

std::string mass_words(Grams mass) {
    constexpr double least_tonnes = 9999.5;
    return std::fabs(mass.to_kg()) < least_tonnes ? render::number_text(mass.to_kg(), 0) + " kg" : tonnes_text(mass);
}

std::string share_text(Grams part, Grams whole) {
    const auto share = month::share_of(part, whole);
    return share ? render::percent_text(*share, 2) : "-";
}

std::string coins_text(Money amount) {
    return render::number_text(amount.to_double(), shown_places);
}

std::string coins_difference(Money amount) {
    return signed_text(amount.to_double(), shown_places);
}

std::vector<std::string> coins_of_parts(const std::vector<Money>& parts, Money whole) {
    std::vector<double> amounts;
    for (const Money part : parts) amounts.push_back(part.to_double());
    std::vector<std::string> texts;
    for (const auto units : base::parts_of(base::in_units(whole.to_double(), shown_places), amounts, shown_places))
        texts.push_back(render::number_text(base::from_units(units, shown_places), shown_places));
    return texts;
}

std::vector<std::string> shares_of_parts(const std::vector<Grams>& parts, Grams all, Grams whole) {
    std::vector<double> percents;
    for (const Grams part : parts) percents.push_back(month::share_of(part, whole).value_or(0) * 100);
    const auto sum = base::in_units(month::share_of(all, whole).value_or(0) * 100, shown_places);
    std::vector<std::string> texts;
    for (const auto units : base::parts_of(sum, percents, shown_places))
        texts.push_back(whole > Grams() ? render::percent_text(base::from_units(units, shown_places) / 100, 2) : "-");
    return texts;
}

std::string month_words(ledger::Month month) {
    constexpr std::array names = {"January", "February", "March",     "April",   "May",      "June",
                                  "July",    "August",   "September", "October", "November", "December"};
    const auto number = static_cast<unsigned>(month.month());
    return std::string(names.at(number - 1)) + " " + std::to_string(static_cast<int>(month.year()));
}

Address month_address(ledger::Month month) {
    return Address("/months").at(answers::month_name(month));
}

Address cause_address(ledger::Month month, const std::string& cause) {
    return month_address(month).at("causes").at(cause);
}

Address entries_address(const ledger::EntrySearch& search) {
    Address address = Address("/entries").with("month", answers::month_name(search.month));
    if (search.kind) address = address.with("kind", *search.kind);
    if (search.cause) address = address.with("cause", *search.cause);
    if (search.centre) address = address.with("centre", *search.centre);
    if (search.shift) address = address.with("shift", *search.shift);
    if (search.order) address = address.with("order", *search.order);
    if (search.after > 0) address = address.with("after", std::to_string(search.after));
    return address;
}

Address entry_address(std::int64_t entry) {
    return Address("/entries").at(std::to_string(entry));
}

Address order_address(const std::string& order) {
    return Address("/orders").at(order).at("cost");
}

std::string name_or(const std::string& name, const char* none) {
    return name.empty() ? none : name;
}

Html walk(const Address& address, const std::string& text) {
    return html("<a class=\"walk\" href=\"{}\">{}</a>", address, text);
}

Html difference_cell(Grams mass, const Address& address) {
    const char* classes = mass > Grams() ? "num over" : mass < Grams() ? "num under" : "num";
    return html("<td class=\"{}\">{}</td>", classes, walk(address, difference_text(mass)));
}

Html scrolling(const std::string& name, const Html& inside) {
    return html("<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{}, in full width\">\n{}</div>\n",
                name, inside);
}

Html head_row(const std::vector<std::string>& names, std::size_t first_number, std::size_t texts_behind) {
    Html cells;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i].empty()) {
            cells += html("<td></td>");
            continue;
        }
        const bool is_number = i >= first_number && i + texts_behind < names.size();
        cells += html("<th scope=\"col\" class=\"{}\">{}</th>", is_number ? "num" : "text", names[i]);
    }
    return html("<thead><tr>{}</tr></thead>\n", cells);
}

Html number_cell(const std::string& text) {
    return html("<td class=\"num\">{}</td>", text);
}

Html text_cell(const std::string& text) {
    return html("<td class=\"text\">{}</td>", text);
}

}  // namespace flutebook::pages
