#include "host/answers/recheck_json.hpp"

#include <fmt/format.h>

#include <array>
#include <nlohmann/json.hpp>

#include "host/answers/changed_plugin.hpp"
#include "host/answers/json_text.hpp"
#include "host/answers/place_text.hpp"

namespace flutebook::answers {

namespace {

constexpr std::array<const char*, 5> causes = {"nothing-differs", "plant-files", "plugins", "both", "unknown"};
constexpr std::array<const char*, 3> saved_ends = {"to-the-byte", "otherwise", "unfit"};
constexpr std::array<const char*, 3> today_ends = {"answered", "refused", "model-at-fault"};

std::string utc_text(std::chrono::sys_seconds when) {
    const auto day = std::chrono::floor<std::chrono::days>(when);
    const std::chrono::hh_mm_ss time(when - day);
    return fmt::format("{}T{:02}:{:02}:{:02}Z", base::to_string(base::Date(day)), time.hours().count(),
                       time.minutes().count(), time.seconds().count());
}

template <typename Names, typename Choice>
const char* name_of(const Names& names, Choice choice) {
    return names.at(static_cast<std::size_t>(choice));
}

Json text_of(const std::optional<services::Leaf>& leaf) {
    return leaf ? Json(leaf->text) : Json(nullptr);
}

Json by_json(const services::Difference& own) {
    const auto by = own.by();
    return by ? Json(*by) : Json(nullptr);
}

Json difference_json(const services::Difference& own) {
    return {{"key", own.path}, {"was", text_of(own.was)}, {"now", text_of(own.now)}, {"by", by_json(own)}};
}

Json key_json(const services::ChangedKey& own) {
    const services::Difference& difference = own.difference;
    return {{"file", own.file},
            {"key", difference.path},
            {"was", text_of(difference.was)},
            {"now", text_of(difference.now)},
            {"place", difference.now ? Json(place_text(difference.now->place)) : Json(nullptr)}};
}

Json total_json(const std::optional<services::Total>& total) {
    if (!total) return nullptr;
    return {{"cost", total->cost.to_double()},
            {"cost_per_thousand", total->cost_per_thousand.to_double()},
            {"price_per_thousand", total->price_per_thousand.to_double()}};
}

Json figures_json(const std::optional<services::ChangedLine::Figures>& own) {
    if (!own) return nullptr;
    return {{"machine", own->machine},
            {"quantity", own->quantity},
            {"rate", own->rate},
            {"unit", own->unit},
            {"amount", own->amount.to_double()}};
}

Json changed_line_json(const services::ChangedLine& own) {
    return {{"plugin", own.plugin},
            {"line", own.line},
            {"step", own.step},
            {"ply", own.ply ? Json(*own.ply) : Json(nullptr)},
            {"was", figures_json(own.was)},
            {"now", figures_json(own.now)},
            {"by", own.by().to_double()}};
}

template <typename List, typename Each>
Json list_json(const List& list, const Each& each) {
    Json made = Json::array();
    for (const auto& own : list) made.push_back(each(own));
    return made;
}

Json quantities_json(const services::Recheck& checked) {
    Json made = Json::array();
    for (std::size_t i = 0; i < checked.today.quantities.size(); ++i) {
        const services::ChangedQuantity& own = checked.today.quantities[i];
        const auto& between = checked.reproduction.totals;
        made.push_back({{"quantity", own.quantity},
                        {"differs", own.differs()},
                        {"was", total_json(own.was)},
                        {"saved_files", total_json(i < between.size() ? between[i] : std::nullopt)},
                        {"now", total_json(own.now)},
                        {"figures", list_json(own.figures, difference_json)},
                        {"lines", list_json(own.lines, changed_line_json)},
                        {"limits", own.limits}});
    }
    return made;
}

}  // namespace

std::string recheck_json(const services::Recheck& checked) {
    Json made;
    made["quote"] = checked.quote;
    made["request"] = checked.request;
    made["saved"] = {{"who", checked.who}, {"when", utc_text(checked.when)}};
    made["date"] = checked.date ? Json(base::to_string(*checked.date)) : Json(nullptr);
    made["plant"] = checked.plant.name;
    made["currency"] = checked.plant.currency;
    made["differs"] = checked.differs();
    made["cause"] = name_of(causes, checked.cause);
    made["plant_files"] = list_json(checked.keys, key_json);
    made["plugins"] = list_json(checked.plugins, changed_plugin_json);
    made["saved_files"] = {{"ends", name_of(saved_ends, checked.reproduction.ends)},
                           {"complaints", checked.reproduction.complaints}};
    made["today"] = {{"ends", name_of(today_ends, checked.today.ends)}, {"complaints", checked.today.complaints}};
    made["heading"] = list_json(checked.today.heading, difference_json);
    made["quantities"] = quantities_json(checked);
    return json_text(made);
}

}  // namespace flutebook::answers
