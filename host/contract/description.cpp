#include "host/contract/description.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstring>
#include <set>

#include "host/base/characters.hpp"
#include "host/base/errors.hpp"
#include "host/base/quoted_text.hpp"
#include "host/fields/units.hpp"
#include "host/plant/model_settings.hpp"

namespace flutebook::contract {
namespace {

// The struct as the first release knew it: no plugin is smaller.
constexpr std::size_t first_release_size = offsetof(flutebook_model, reserved) + sizeof(flutebook_model::reserved);
constexpr std::size_t longest_text = FLUTEBOOK_MOST_TEXT;

bool is_whole(double number) {
    return std::floor(number) == number;
}

class ModelReader {
public:
    ModelReader(const flutebook_model& exported, std::string file, std::string id)
        : where_(fmt::format("{}: model {}", file, id)) {
        read_header(exported);
        model_.file = std::move(file);
        if (exported_.id == nullptr || exported_.id != id)
            refuse("wrong id", fmt::format("the file calls itself {}", called(exported_.id)),
                   "name the file after the model's id");
        model_.id = std::move(id);
        model_.version = text(exported_.version, "version");
        model_.title = text(exported_.title, "title");
        model_.built_with = text_if_any(exported_.built_with, "built_with");
        model_.author = text_if_any(exported_.author, "author");
        model_.contact = text_if_any(exported_.contact, "contact");
        reserved(exported_.reserved, "the description");
        if (exported_.requires_minor > FLUTEBOOK_MINOR)
            refuse("newer rules",
                   fmt::format("it requires contract {}.{}, this host knows {}.{}", FLUTEBOOK_MAJOR,
                               exported_.requires_minor, FLUTEBOOK_MAJOR, FLUTEBOOK_MINOR),
                   "use a newer host");
        model_.evaluate = exported_.evaluate;
        if (model_.evaluate == nullptr) refuse("no function", "evaluate is null", "point it to the model's function");
    }

    Model read() {
        model_.needs = names(exported_.needs, "need");
        model_.provides = names(exported_.provides, "provide");
        read_settings();
        read_lines();
        read_losses();
        each<const char*>(
            exported_.reasons, "reason", FLUTEBOOK_MOST_REASONS,
            [&](const char* reason, const std::string& which) { model_.reasons.push_back(text(reason, which)); });
        return std::move(model_);
    }

private:
    [[noreturn]] void refuse(const std::string& what, const std::string& found, const std::string& advice) const {
        throw ModelError(fmt::format("{}: {}: {}; {}", where_, what, found, advice));
    }

    // As a person may be shown it, whatever the file says.
    static std::string called(const char* id) {
        if (id == nullptr) return "nothing";
        const std::string text(id, ::strnlen(id, longest_text));
        return base::is_plain_line(text) ? base::shown(text) : "a text that cannot be shown";
    }

    void read_header(const flutebook_model& exported) {
        if (exported.magic != FLUTEBOOK_MAGIC)
            refuse("wrong magic", fmt::format("found {:#010x}, expected {:#010x}", exported.magic, FLUTEBOOK_MAGIC),
                   "build it again with the headers of this SDK");
        if (exported.major != FLUTEBOOK_MAJOR)
            refuse(exported.major > FLUTEBOOK_MAJOR ? "newer major" : "older major",
                   fmt::format("built for contract {}, this host knows {}", exported.major, FLUTEBOOK_MAJOR),
                   exported.major > FLUTEBOOK_MAJOR ? "use a newer host, or build it with this host's SDK"
                                                    : "build it again with this host's SDK");
        if (exported.size < first_release_size)
            refuse("wrong size",
                   fmt::format("the description has {} bytes, {} at least", exported.size, first_release_size),
                   "set size to sizeof(flutebook_model)");
        std::memcpy(&exported_, &exported, std::min<std::size_t>(exported.size, sizeof exported_));
    }

    // Walks a list by its writer's stride; what an older element lacks reads as zero, what a newer one adds is skipped.
    template <typename T, typename Take>
    void each(const flutebook_span& span, const std::string& kind, std::uint32_t most, Take take) {
        if (span.count == 0) return;
        if (span.at == nullptr || span.stride < sizeof(void*) || span.count > most)
            refuse("unfit list", fmt::format("{} {}s, {} bytes apart", span.count, kind, span.stride),
                   fmt::format("point at, count and stride to an array of at most {}", most));
        for (std::uint32_t i = 0; i < span.count; ++i) {
            T element{};
            std::memcpy(&element, static_cast<const std::byte*>(span.at) + std::size_t{i} * span.stride,
                        std::min<std::size_t>(span.stride, sizeof element));
            take(element, fmt::format("{} {}", kind, i + 1));
        }
    }

    std::string text(const char* given, const std::string& which) const {
        if (given == nullptr) refuse("null text", which + " has none", "declare every text");
        const std::size_t length = ::strnlen(given, longest_text + 1);
        if (length > longest_text) refuse("long text", which, fmt::format("at most {} bytes", longest_text));
        if (!base::is_plain_line({given, length}))
            refuse("unfit text", which + " is not one line of UTF-8",
                   "write it as one line, without control characters");
        return {given, length};
    }

    std::string text_if_any(const char* given, const std::string& which) const {
        return given == nullptr ? std::string() : text(given, which);
    }

    // What a later contract may give a meaning, this host does not know.
    void reserved(std::uint32_t value, const std::string& which) const {
        if (value != 0)
            refuse("unknown field", fmt::format("a reserved field of {} is {}", which, value),
                   "leave it 0, or use a newer host");
    }

    std::string name(const char* given, const std::string& which) const {
        if (given == nullptr) refuse("null name", which + " has none", "declare every name");
        std::string result = text(given, which);
        const auto fits = [](char c) {
            return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || std::strchr("._-", c) != nullptr;
        };
        if (result.empty() || !std::all_of(result.begin(), result.end(), fits))
            refuse("unfit name", fmt::format("{} is called '{}'", which, result),
                   "use lower-case letters, digits, '.', '_' and '-'");
        return result;
    }

    std::string unit(const char* given, const std::string& name) const {
        std::string result = text(given, "the unit of " + name);
        if (!fields::is_unit(result))
            refuse("unknown unit", fmt::format("{} is declared in '{}'", name, result),
                   "use a unit in udunits spelling");
        return result;
    }

    Range range(double low, double high, const std::string& name) const {
        if (!(std::isfinite(low) && std::isfinite(high) && low <= high))
            refuse("unfit range", fmt::format("{} runs from {} to {}", name, low, high), "give a finite low <= high");
        return {low, high};
    }

    template <typename Enum>
    Enum known(std::uint32_t value, std::uint32_t last, const std::string& what, const std::string& name) const {
        if (value > last)
            refuse("unknown " + what, fmt::format("{} has {}", name, value), fmt::format("at most {}", last));
        return static_cast<Enum>(value);
    }

    void once(std::set<std::string>& seen, const std::string& name) const {
        if (!seen.insert(name).second) refuse("duplicate name", name + " is declared twice", "declare it once");
    }

    std::vector<Name> names(const flutebook_span& span, const std::string& kind) {
        std::vector<Name> result;
        std::set<std::string> seen;
        each<flutebook_name>(span, kind, FLUTEBOOK_MOST_NAMES,
                             [&](const flutebook_name& given, const std::string& which) {
                                 std::string its_name = name(given.name, which);
                                 once(seen, its_name);
                                 reserved(given.reserved, its_name);
                                 result.push_back({its_name, unit(given.unit, its_name),
                                                   text(given.meaning, "the meaning of " + its_name),
                                                   range(given.low, given.high, its_name),
                                                   known<Axis>(given.axis, FLUTEBOOK_STEP, "axis", its_name)});
                             });
        return result;
    }

    void read_settings() {
        std::set<std::string> seen;
        each<flutebook_setting>(exported_.settings, "setting", FLUTEBOOK_MOST_SETTINGS,
                                [&](const flutebook_setting& given, const std::string& which) {
                                    model_.settings.push_back(setting(given, which));
                                    once(seen, model_.settings.back().name);
                                });
        for (const Setting& each_setting : model_.settings) check_keys(each_setting);
    }

    Setting setting(const flutebook_setting& given, const std::string& which) {
        Setting result;
        result.name = name(given.name, which);
        if (result.name == plant::served_model_key)
            refuse("unfit name", fmt::format("{} is called '{}'", which, result.name),
                   "choose another name: in plugins.yaml that key names the file of a model");
        result.range = range(given.low, given.high, result.name);
        if (given.required > 1)
            refuse("unknown required", fmt::format("{} has {}", result.name, given.required), "0 or 1");
        if (given.required == 0 && !result.range.holds(given.initial))
            refuse("default out of range", fmt::format("{} starts at {}", result.name, given.initial),
                   fmt::format("keep it within {} to {}", given.low, given.high));
        if (given.required == 0) result.initial = given.initial;
        each<const char*>(
            given.choices, "choice of " + result.name, FLUTEBOOK_MOST_SETTINGS,
            [&](const char* choice, const std::string& place) { result.choices.push_back(name(choice, place)); });
        if (!result.choices.empty() && !(is_whole(given.low) && is_whole(given.high) && given.low >= 0 &&
                                         given.high <= static_cast<double>(result.choices.size() - 1)))
            refuse("unfit range", result.name + " does not end at choices", "run it from 0 to the last choice");
        result.unit = unit(given.unit, result.name);
        result.meaning = text(given.meaning, "the meaning of " + result.name);
        result.varies_by = known<VariesBy>(given.varies_by, FLUTEBOOK_BY_CHOICE, "varies_by", result.name);
        result.usual = usual(given, result);
        if (given.stepped_over != 0) result.stepped_over = stepped_over(given.stepped_over - 1, result);
        if (given.keyed_by != 0) result.keyed_by = given.keyed_by - 1;
        return result;
    }

    std::optional<Range> usual(const flutebook_setting& given, const Setting& setting) const {
        if (given.usual_low == 0 && given.usual_high == 0) return std::nullopt;
        const Range result = range(given.usual_low, given.usual_high, "the usual range of " + setting.name);
        if (!setting.range.holds(result))
            refuse("unfit range",
                   fmt::format("{} is usually {} to {}", setting.name, given.usual_low, given.usual_high),
                   fmt::format("keep it within {} to {}", setting.range.low, setting.range.high));
        return result;
    }

    // One step a number: the need is one of the order or stands on the setting's own axis.
    std::size_t stepped_over(std::size_t need, const Setting& setting) const {
        const Axis axis = axis_of(setting.varies_by);
        if (need >= model_.needs.size() || (model_.needs[need].axis != Axis::order && model_.needs[need].axis != axis))
            refuse("unfit steps", fmt::format("{} is stepped over need {}", setting.name, need + 1),
                   "step it over a need of the order or of its own axis");
        return need;
    }

    // One choice for the whole order, which is made before the setting is read: no choice by choice.
    bool may_be_keys(std::size_t choice) const {
        if (choice >= model_.settings.size()) return false;
        const Setting& keys = model_.settings[choice];
        return !keys.choices.empty() && keys.varies_by != VariesBy::choice && axis_of(keys.varies_by) == Axis::order;
    }

    void check_keys(const Setting& setting) const {
        const bool is_by_choice = setting.varies_by == VariesBy::choice;
        const bool has_keys = setting.keyed_by && may_be_keys(*setting.keyed_by);
        if (is_by_choice != setting.keyed_by.has_value() || (is_by_choice && !has_keys))
            refuse("unfit keys", setting.name + " varies by choice, and names no choice setting",
                   "key it by a choice setting of the same model that has one value for an order");
    }

    void read_lines() {
        std::set<std::string> seen;
        each<flutebook_line>(
            exported_.lines, "line", FLUTEBOOK_MOST_LINES, [&](const flutebook_line& given, const std::string& which) {
                Line result;
                result.name = name(given.name, which);
                once(seen, result.name);
                reserved(given.reserved, result.name);
                result.unit = unit(given.unit, result.name);
                result.title = text(given.title, "the title of " + result.name);
                result.axis = known<Axis>(given.axis, FLUTEBOOK_STEP, "axis", result.name);
                result.cost_class = known<CostClass>(given.cost_class, FLUTEBOOK_RECOVERY, "class", result.name);
                result.behaviour = known<Behaviour>(given.behaviour, FLUTEBOOK_PERIOD, "behaviour", result.name);
                read_rate_unit(result, given.rate_unit);
                model_.lines.push_back(std::move(result));
            });
    }

    // Quantity x rate is money: a rate in money/t for a quantity in kg is a thousandth of the same in money/kg.
    void read_rate_unit(Line& line, const char* given) const {
        const bool is_simple = line.unit.find_first_of(" ./*^-") == std::string::npos;
        const std::string per_unit = line.unit == "1" ? "money"
                                     : is_simple      ? "money/" + line.unit
                                                      : fmt::format("money/({})", line.unit);
        line.rate_unit = given == nullptr ? per_unit : unit(given, "the rate of " + line.name);
        const auto to_money = fields::conversion(line.rate_unit, per_unit);
        if (!to_money || to_money->offset != 0)
            refuse("no money",
                   fmt::format("{} is charged in {}, at a rate in {}", line.name, line.unit, line.rate_unit),
                   fmt::format("give the rate in a unit of the kind of {}", per_unit));
        line.rate_scale = to_money->scale;
    }

    void read_losses() {
        std::set<std::string> seen;
        each<flutebook_loss>(exported_.losses, "loss", FLUTEBOOK_MOST_LOSSES,
                             [&](const flutebook_loss& given, const std::string& which) {
                                 std::string cause = name(given.cause, which);
                                 once(seen, cause);
                                 model_.losses.push_back({cause, text(given.title, "the title of " + cause)});
                             });
    }

    std::string where_;
    flutebook_model exported_{};
    Model model_;
};

}  // namespace

Model describe(const flutebook_model& exported, const std::string& file, const std::string& id) {
    return ModelReader(exported, file, id).read();
}

}  // namespace flutebook::contract
