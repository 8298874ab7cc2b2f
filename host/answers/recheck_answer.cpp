#include "host/answers/recheck_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/place.hpp"
#include "host/trim_answers/shared_trim.hpp"

namespace flutebook::answers {

namespace {

constexpr std::array<const char*, 6> causes = {"nothing-differs", "plant-files", "plugins", "both",
                                               "unknown",         "ledger"};
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

Json text_of(const std::optional<Leaf>& leaf) {
    return leaf ? Json(leaf->text) : Json(nullptr);
}

Json by_json(const Difference& difference) {
    const auto by = difference.by();
    return by ? Json(*by) : Json(nullptr);
}

Json difference_json(const Difference& difference) {
    return {{"key", difference.path},
            {"was", text_of(difference.was)},
            {"now", text_of(difference.now)},
            {"by", by_json(difference)}};
}

Json key_json(const ChangedKey& changed_key) {
    const Difference& difference = changed_key.difference;
    return {{"file", changed_key.file},
            {"key", difference.path},
            {"was", text_of(difference.was)},
            {"now", text_of(difference.now)},
            {"place", difference.now ? Json(base::place_text(difference.now->place)) : Json(nullptr)}};
}

Json total_json(const std::optional<Total>& total) {
    if (!total) return nullptr;
    return {{"cost", total->cost.to_double()},
            {"cost_per_thousand", total->cost_per_thousand.to_double()},
            {"price_per_thousand", total->price_per_thousand.to_double()}};
}

Json figures_json(const std::optional<ChangedLine::Figures>& item) {
    if (!item) return nullptr;
    return {{"machine", item->machine},
            {"quantity", item->quantity},
            {"rate", item->rate},
            {"unit", item->unit},
            {"amount", item->amount.to_double()}};
}

Json changed_line_json(const ChangedLine& changed_line) {
    return {{"plugin", changed_line.plugin},
            {"line", changed_line.line},
            {"step", changed_line.step},
            {"ply", changed_line.ply ? Json(*changed_line.ply) : Json(nullptr)},
            {"was", figures_json(changed_line.was)},
            {"now", figures_json(changed_line.now)},
            {"by", changed_line.by().to_double()}};
}

template <typename List, typename Each>
Json list_json(const List& list, const Each& each) {
    Json result = Json::array();
    for (const auto& item : list) result.push_back(each(item));
    return result;
}

Json quantities_json(const Recheck& checked) {
    Json result = Json::array();
    for (std::size_t i = 0; i < checked.today.quantities.size(); ++i) {
        const ChangedQuantity& changed_quantity = checked.today.quantities[i];
        const auto& between = checked.reproduction.totals;
        result.push_back({{"quantity", changed_quantity.quantity},
                          {"differs", changed_quantity.differs()},
                          {"was", total_json(changed_quantity.was)},
                          {"saved_files", total_json(i < between.size() ? between[i] : std::nullopt)},
                          {"now", total_json(changed_quantity.now)},
                          {"figures", list_json(changed_quantity.figures, difference_json)},
                          {"lines", list_json(changed_quantity.lines, changed_line_json)},
                          {"limits", changed_quantity.limits}});
        if (!changed_quantity.piece.empty()) result.back()["piece"] = changed_quantity.piece;
    }
    return result;
}

}  // namespace

std::optional<double> Difference::by() const {
    if (!was || !now || !was->number || !now->number) return std::nullopt;
    constexpr double billion = 1e9;
    const double exact = *now->number - *was->number;
    const double rounded = std::round(exact * billion) / billion;
    return std::isfinite(rounded) && rounded != 0 ? rounded : exact;
}

bool ChangedQuantity::differs() const {
    return was.has_value() != now.has_value() || !lines.empty() ||
           std::any_of(figures.begin(), figures.end(),
                       [](const Difference& figure) { return figure.was && figure.now; });
}

Money ChangedLine::by() const {
    return (now ? now->amount : Money()) - (was ? was->amount : Money());
}

std::string recheck_document(const Recheck& checked) {
    Json result;
    result["quote"] = checked.quote;
    result["request"] = checked.request;
    result["saved"] = {{"who", checked.who}, {"when", utc_text(checked.when)}};
    result["date"] = checked.date ? Json(base::to_string(*checked.date)) : Json(nullptr);
    result["new_date"] = checked.new_date ? Json(base::to_string(*checked.new_date)) : Json(nullptr);
    result["plant"] = checked.plant.name;
    result["currency"] = checked.plant.currency;
    result["differs"] = checked.differs();
    result["cause"] = name_of(causes, checked.cause);
    result["plant_files"] = list_json(checked.keys, key_json);
    result["plugins"] = list_json(checked.plugins, changed_plugin_json);
    result["saved_files"] = {{"ends", name_of(saved_ends, checked.reproduction.ends)},
                             {"complaints", checked.reproduction.complaints}};
    result["today"] = {{"ends", name_of(today_ends, checked.today.ends)}, {"complaints", checked.today.complaints}};
    result["heading"] = list_json(checked.today.heading, difference_json);
    const auto policy = [](const std::optional<plant::TrimPolicy>& trim) {
        return trim ? trim_answers::trim_policy_json(*trim) : Json(nullptr);
    };
    if (checked.trim.was || checked.trim.now)
        result["trim"] = {{"was", policy(checked.trim.was)}, {"now", policy(checked.trim.now)}};
    result["quantities"] = quantities_json(checked);
    return document_text("quote-recheck", result);
}

}  // namespace flutebook::answers
