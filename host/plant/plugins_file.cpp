// plugins.yaml: the models to load, in any order, and beside them which model's number is preferred, which model works
// apart, and which very file is meant. What the settings mean is for the engine to say: it knows the models.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <unordered_set>

#include "host/base/quoted_text.hpp"
#include "host/fields/unit_text.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

constexpr std::size_t sha256_digits = 64;

// The same letters as in a plugin's own description: an id is a file's name too.
bool is_model_id(const std::string& text) {
    return std::all_of(text.begin(), text.end(), [](char sign) {
        return (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9') || sign == '-' || sign == '_';
    });
}

bool is_sha256(const std::string& text) {
    return text.size() == sha256_digits && std::all_of(text.begin(), text.end(), [](char sign) {
               return (sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'f') || (sign >= 'A' && sign <= 'F');
           });
}

// `- lacquer: {model: varnish, …}`
void check_served_model(const fields::Field& listed) {
    for (const auto& entry : listed.entries_if_any())
        if (entry.key() == served_model_key && entry.node()->kind == base::Node::Kind::text &&
            !is_model_id(entry.node()->text))
            entry.complain(fmt::format("not a model's id: found {}, expected lower-case letters, digits, `-` and `_`",
                                       base::shown(entry.node()->text)));
}

std::vector<ModelSettings> read_models(const fields::Field& list) {
    std::vector<ModelSettings> models;
    std::unordered_set<std::string> listed;
    for (const auto& item : list.items()) {
        if (item.node()->kind == base::Node::Kind::text) {
            item.complain(
                fmt::format("no settings: expected a map, as `{}: {{}}`", base::shortened(item.node()->text)));
            continue;
        }
        const auto entries = item.entries();
        if (entries.size() != 1 && item.is_map())
            item.complain(
                fmt::format("not one model: found {} in one entry, expected `- model: {{settings}}`", entries.size()));
        for (const auto& entry : entries) {
            if (!is_model_id(entry.key()))
                entry.complain_of_key("not a model's id: expected lower-case letters, digits, `-` and `_`");
            if (!listed.insert(entry.key()).second) entry.complain_of_key("listed twice: expected each model once");
            check_served_model(entry);
            models.push_back(read_listed_model(entry));
        }
    }
    return models;
}

// Maps beside the list name models that are in it.
class Listed {
public:
    explicit Listed(const std::vector<ModelSettings>& models) {
        for (const auto& model : models) names_.push_back(model.id);
        set_.insert(names_.begin(), names_.end());
    }
    void check(const fields::Field& field, const std::string& name) const {
        if (set_.count(name) == 0) field.complain_unknown("model", name, names_);
    }

private:
    std::vector<std::string> names_;
    std::unordered_set<std::string> set_;
};

std::vector<fields::Field> entries_if_given(fields::MapReader& file, const std::string& key) {
    return file.has(key) ? file.field(key).entries() : std::vector<fields::Field>{};
}

}  // namespace

PluginsYaml read_plugin_file(fields::MapReader file) {
    PluginsYaml result;
    result.models = read_models(file.field("plugins"));
    const Listed listed(result.models);
    for (const auto& entry : entries_if_given(file, "prefer")) {
        const auto model = entry.text();
        listed.check(entry, model);
        result.preferences.push_back({entry.key(), model, entry.place()});
    }
    for (const auto& entry : entries_if_given(file, "isolation")) {
        listed.check(entry.about_key(), entry.key());
        const auto chosen = entry.choice({"process", "host"});
        if (chosen)
            result.isolated.push_back({entry.key(), entry.key_place(),
                                       *chosen == 0 ? IsolatedModel::Where::process : IsolatedModel::Where::host});
    }
    for (const auto& entry : entries_if_given(file, "sha256")) {
        listed.check(entry.about_key(), entry.key());
        const auto digits = entry.text();
        if (!digits.empty() && !is_sha256(digits))
            entry.complain(fmt::format("not a SHA-256: found {}, expected 64 hexadecimal digits", base::shown(digits)));
        result.pinned.push_back({entry.key(), fields::in_lower_case(digits), entry.key_place()});
    }
    file.finish();
    return result;
}

}  // namespace flutebook::plant
