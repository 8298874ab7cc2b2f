// The rules of the groups `load` and `description`: what the host itself refuses, and what people need to be told.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "host/base/errors.hpp"
#include "host/plant/units.hpp"
#include "host/plugin_check/known_numbers.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;

// The host's own message about the file, without the file's name.
Wrong said_by_host(const Subject& subject, const ModelError& error) {
    const std::string begin = subject.file().where() + ": ";
    const std::string& line = error.lines().front();
    return line.compare(0, begin.size(), begin) == 0 ? line.substr(begin.size()) : line;
}

// Whether the text explains something: it has letters and does not repeat the name.
bool says_something(const std::string& text, const std::string& name) {
    const auto is_letter = [](unsigned char sign) { return std::isalpha(sign) != 0 || sign >= 0x80; };
    return text != name && std::any_of(text.begin(), text.end(), is_letter);
}

const KnownName* find_known(const std::string& name) {
    const auto& all = known_names();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const KnownName& known_name) { return known_name.name == name; });
    return found == all.end() ? nullptr : &*found;
}

Wrong other_than_known(const contract::Name& name, const char* verb) {
    const KnownName* known = find_known(name.name);
    if (known == nullptr) return std::nullopt;
    if (known->axis != name.axis)
        return fmt::format("{} {} by {}; it is known by {}", verb, name.name, to_text(name.axis), to_text(known->axis));
    if (!plant::conversion(known->unit, name.unit))
        return fmt::format("{} {} in {}; it is known in {}", verb, name.name, name.unit, known->unit);
    return std::nullopt;
}

}  // namespace

Wrong try_loading(Subject& subject) {
    try {
        static_cast<void>(subject.library());
    } catch (const ModelError& error) {
        return said_by_host(subject, error);
    }
    return std::nullopt;
}

Wrong try_loading_floating_point(Subject& subject) {
    const auto& change = subject.library().computes_apart;
    if (!change) return std::nullopt;
    return "loading it changed how the whole program computes: " + *change + "; link it without fast arithmetic";
}

Wrong try_description(Subject& subject) {
    try {
        static_cast<void>(subject.model());
    } catch (const ModelError& error) {
        return said_by_host(subject, error);
    }
    return std::nullopt;
}

Wrong try_documented(Subject& subject) {
    const Model& model = subject.model();
    const auto wrong = [](const std::string& what) { return "does not describe " + what + "; write a few words"; };
    if (!says_something(model.title, "")) return wrong("itself: its title is empty");
    for (const auto* list : {&model.needs, &model.provides})
        for (const contract::Name& name : *list)
            if (!says_something(name.meaning, name.name)) return wrong("the meaning of " + name.name);
    for (const contract::Setting& setting : model.settings)
        if (!says_something(setting.meaning, setting.name)) return wrong("the meaning of " + setting.name);
    for (const contract::Line& line : model.lines)
        if (!says_something(line.title, "")) return wrong("the line " + line.name + ": its title is empty");
    for (const contract::Loss& loss : model.losses)
        if (!says_something(loss.title, "")) return wrong("the loss " + loss.cause + ": its title is empty");
    for (std::size_t i = 0; i < model.reasons.size(); ++i)
        if (!says_something(model.reasons[i], "")) return wrong(fmt::format("its reason {}", i + 1));
    return std::nullopt;
}

Wrong try_known_names(Subject& subject) {
    const Model& model = subject.model();
    for (const contract::Name& need : model.needs)
        if (auto wrong = other_than_known(need, "needs")) return wrong;
    for (const contract::Name& provide : model.provides) {
        if (auto wrong = other_than_known(provide, "provides")) return wrong;
        const KnownName* known = find_known(provide.name);
        if (known != nullptr && !known->may_be_provided)
            return fmt::format("provides {}, a fact that no model may replace; give it another name", provide.name);
    }
    return std::nullopt;
}

Wrong try_shedding(Subject& subject) {
    const Model& model = subject.model();
    const bool lays_out_the_run = std::any_of(model.provides.begin(), model.provides.end(),
                                              [](const contract::Name& item) { return item.name == "run.good"; });
    if (model.losses.empty() || lays_out_the_run) return std::nullopt;
    return fmt::format("sheds {} and does not provide run.good; only the model that provides run.good may shed paper",
                       model.losses.front().cause);
}

}  // namespace flutebook::plugin_check
