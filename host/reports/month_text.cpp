#include "host/reports/month_text.hpp"

#include "host/answers/month_json.hpp"
#include "host/base/date.hpp"
#include "host/render/text.hpp"
#include "host/reports/month_sections.hpp"

namespace flutebook::reports {

namespace {

std::string heading(const plant::Plant& plant, const services::MonthAnswer& answer) {
    std::string result = render::rule('=') +
                         render::edges(render::cleaned(plant.name), answers::month_name(answer.account.month) +
                                                                        (answer.seal ? ", closed" : ", open")) +
                         render::rule('=');
    if (!answer.seal) return result;
    result +=
        render::hanging("closed by ", render::cleaned(answer.seal->who) + " on " + base::utc_day(answer.seal->when) +
                                          " UTC, entry " + std::to_string(answer.seal->entry));
    if (!answer.seal->note.empty()) result += render::hanging("because   ", render::cleaned(answer.seal->note));
    return result + "head      " + answer.seal->head + "\n";
}

// What a close would wait for.
std::string below_zero(const month::MonthAccount& account) {
    std::string result;
    const auto look_at = [&](const char* name, Grams close) {
        if (close < Grams())
            result += render::hanging("! ", std::string(name) + " ends below zero: " + kg_text(close) +
                                                " kg; count it, or post what is missing");
    };
    for (const auto& centre : account.centres) look_at(centre.centre.c_str(), centre.close);
    look_at("floor", account.floor.close);
    look_at("loose-scrap", account.loose_scrap.close);
    look_at("bale-yard", account.bale_yard.close);
    return result.empty() ? result : "\n" + result;
}

}  // namespace

std::string month_text(const plant::Plant& plant, const services::MonthAnswer& answer) {
    const auto& currency = plant.currency;
    std::string result = heading(plant, answer) + below_zero(answer.account);
    for (const auto& section : {balance_section(answer), centres_section(answer), losses_section(answer, currency),
                                month_cost_section(answer, currency), scrap_section(answer, currency),
                                parts_section(answer), trend_section(answer, currency)})
        if (!section.empty()) result += "\n" + section;
    return result;
}

}  // namespace flutebook::reports
