#include "host/cli/month_text.hpp"

#include "host/catalogue/date.hpp"
#include "host/cli/month_json.hpp"
#include "host/cli/month_sections.hpp"
#include "host/cli/text.hpp"

namespace flutebook::cli {

namespace {

std::string day_of(std::chrono::sys_seconds when) {
    return catalogue::to_string(std::chrono::floor<std::chrono::days>(when));
}

std::string heading(const catalogue::Plant& plant, const desk::MonthAnswer& answer) {
    std::string made =
        rule('=') +
        edges(cleaned(plant.name), month_name(answer.account.month) + (answer.seal ? ", closed" : ", open")) +
        rule('=');
    if (!answer.seal) return made;
    made += hanging("closed by ", cleaned(answer.seal->who) + " on " + day_of(answer.seal->when) + " UTC, entry " +
                                      std::to_string(answer.seal->entry));
    if (!answer.seal->note.empty()) made += hanging("because   ", cleaned(answer.seal->note));
    return made + "head      " + answer.seal->head + "\n";
}

// What a close would wait for.
std::string below_zero(const review::MonthAccount& account) {
    std::string made;
    const auto look_at = [&](const char* name, Grams close) {
        if (close < Grams())
            made += hanging("! ", std::string(name) + " ends below zero: " + kg_text(close) +
                                      " kg; count it, or post what is missing");
    };
    for (const auto& centre : account.centres) look_at(centre.centre.c_str(), centre.close);
    look_at("floor", account.floor.close);
    look_at("loose-scrap", account.loose_scrap.close);
    look_at("bale-yard", account.bale_yard.close);
    return made.empty() ? made : "\n" + made;
}

}  // namespace

std::string month_text(const catalogue::Plant& plant, const desk::MonthAnswer& answer) {
    const auto& currency = plant.currency;
    std::string made = heading(plant, answer) + below_zero(answer.account);
    for (const auto& section : {balance_section(answer), centres_section(answer), losses_section(answer, currency),
                                month_cost_section(answer, currency), scrap_section(answer, currency),
                                parts_section(answer), trend_section(answer, currency)})
        if (!section.empty()) made += "\n" + section;
    return made;
}

}  // namespace flutebook::cli
