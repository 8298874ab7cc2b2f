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
#include "host/plant/units.hpp"

namespace flutebook::contract {
namespace {

// The struct as the first release knew it: no plugin is smaller.
constexpr std::size_t first_release_size = offsetof(flutebook_model, evaluate) + sizeof(flutebook_model::evaluate);
constexpr std::uint32_t most_elements = 1000;
constexpr std::size_t longest_text = 400;

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
        model_.built_with = exported_.built_with == nullptr ? "" : text(exported_.built_with, "built_with");
        model_.evaluate = exported_.evaluate;
        if (model_.evaluate == nullptr) refuse("no function", "evaluate is null", "point it to the model's function");
    }

    Model read() {
        model_.needs = names(exported_.needs, "need");
        model_.provides = names(exported_.provides, "provide");
        read_settings();
        read_lines();
        read_losses();
        each<const char*>(exported_.reasons, "reason", [&](const char* reason, const std::string& which) {
            model_.reasons.push_back(text(reason, which));
        });
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
        return base::is_plain_line(text) ? base::shown(text) : "what is no plain text";
    }

    void read_header(const flutebook_model& exported) {
        if (exported.magic != FLUTEBOOK_MAGIC)
            refuse("wrong magic", fmt::format("found {:#010x}, expected {:#010x}", exported.magic, FLUTEBOOK_MAGIC),
                   "build it with the headers of this SDK");
        if (exported.major != FLUTEBOOK_MAJOR)
            refuse(exported.major > FLUTEBOOK_MAJOR ? "newer major" : "older major",
                   fmt::format("built for contract {}, this host speaks {}", exported.major, FLUTEBOOK_MAJOR),
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
    void each(const flutebook_span& span, const std::string& kind, Take take) {
        if (span.count == 0) return;
        if (span.at == nullptr || span.stride < sizeof(void*) || span.count > most_elements)
            refuse("unfit list", fmt::format("{} {}s, {} bytes apart", span.count, kind, span.stride),
                   "point at, count and stride to an array");
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
            refuse("unfit text", which + " is no line of UTF-8", "write it as one line, without control characters");
        return {given, length};
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
        if (!plant::is_unit(result))
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
        each<flutebook_name>(span, kind, [&](const flutebook_name& given, const std::string& which) {
            std::string its_name = name(given.name, which);
            once(seen, its_name);
            result.push_back({its_name, unit(given.unit, its_name), text(given.meaning, "the meaning of " + its_name),
                              range(given.low, given.high, its_name),
                              known<Axis>(given.axis, FLUTEBOOK_STEP, "axis", its_name)});
        });
        return result;
    }

    void read_settings() {
        std::set<std::string> seen;
        each<flutebook_setting>(
            exported_.settings, "setting", [&](const flutebook_setting& given, const std::string& which) {
                std::string its_name = name(given.name, which);
                once(seen, its_name);
                const Range its_range = range(given.low, given.high, its_name);
                if (given.required == 0 && !its_range.holds(given.initial))
                    refuse("default out of range", fmt::format("{} starts at {}", its_name, given.initial),
                           fmt::format("keep it within {} to {}", given.low, given.high));
                std::vector<std::string> choices;
                each<const char*>(
                    given.choices, "choice of " + its_name,
                    [&](const char* choice, const std::string& place) { choices.push_back(name(choice, place)); });
                if (!choices.empty() && !(is_whole(given.low) && is_whole(given.high) && given.low >= 0 &&
                                          given.high <= static_cast<double>(choices.size() - 1)))
                    refuse("unfit range", its_name + " does not end at choices", "run it from 0 to the last choice");
                model_.settings.push_back(
                    {its_name, unit(given.unit, its_name), text(given.meaning, "the meaning of " + its_name),
                     given.required != 0 ? std::nullopt : std::optional(given.initial), its_range, std::move(choices),
                     known<VariesBy>(given.varies_by, FLUTEBOOK_BY_REQUEST, "varies_by", its_name)});
            });
    }

    void read_lines() {
        std::set<std::string> seen;
        each<flutebook_line>(exported_.lines, "line", [&](const flutebook_line& given, const std::string& which) {
            std::string its_name = name(given.name, which);
            once(seen, its_name);
            const auto axis = known<Axis>(given.axis, FLUTEBOOK_STEP, "axis", its_name);
            if (axis == Axis::order)
                refuse("unfit axis", its_name + " is a line of the order", "charge it by step or by ply");
            model_.lines.push_back({its_name, unit(given.unit, its_name), text(given.title, "the title of " + its_name),
                                    axis, known<CostClass>(given.cost_class, FLUTEBOOK_RECOVERY, "class", its_name),
                                    known<Behaviour>(given.behaviour, FLUTEBOOK_PERIOD, "behaviour", its_name)});
        });
    }

    void read_losses() {
        std::set<std::string> seen;
        each<flutebook_loss>(exported_.losses, "loss", [&](const flutebook_loss& given, const std::string& which) {
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
