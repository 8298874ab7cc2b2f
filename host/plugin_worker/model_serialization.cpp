#include "host/plugin_worker/model_serialization.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>
#include <cstdlib>
#include <type_traits>

#include "host/contract/description.hpp"

namespace flutebook::plugin_worker {
namespace {

using contract::Model;

constexpr std::size_t most_elements = 1000;

class FieldWriter {
public:
    void pass(std::string& text) { fields.push_back(text); }
    void pass(double& number) { fields.push_back(fmt::format("{}", number)); }
    template <typename Enum>
    requires std::is_enum_v<Enum>
    void pass(Enum& value) { fields.push_back(std::to_string(static_cast<std::uint32_t>(value))); }
    template <typename T>
    void count(std::vector<T>& list) {
        fields.push_back(std::to_string(list.size()));
    }

    std::vector<std::string> fields;
};

// Once a field is missing or is not what it should be, everything after it is empty.
class FieldReader {
public:
    explicit FieldReader(std::vector<std::string> fields) : fields_(std::move(fields)) {}

    [[nodiscard]] bool is_whole() const { return is_good_ && next_ == fields_.size(); }

    void pass(std::string& text) { text = take(); }
    void pass(double& number) {
        const std::string field = take();
        char* end = nullptr;
        number = std::strtod(field.c_str(), &end);
        is_good_ = is_good_ && end == field.c_str() + field.size();
    }
    template <typename Enum>
    requires std::is_enum_v<Enum>
    void pass(Enum& value) { value = static_cast<Enum>(whole_number()); }
    template <typename T>
    void count(std::vector<T>& list) {
        const std::uint32_t elements = whole_number();
        is_good_ = is_good_ && elements <= most_elements;
        list.resize(is_good_ ? elements : 0);
    }

private:
    std::string take() {
        is_good_ = is_good_ && next_ < fields_.size();
        return is_good_ ? std::move(fields_[next_++]) : "";
    }
    std::uint32_t whole_number() {
        const std::string field = take();
        std::uint32_t result = 0;
        const auto [end, error] = std::from_chars(field.data(), field.data() + field.size(), result);
        is_good_ = is_good_ && error == std::errc() && end == field.data() + field.size();
        return result;
    }

    std::vector<std::string> fields_;
    std::size_t next_ = 0;
    bool is_good_ = true;
};

// One walk over the description: the writer and the reader both use it.
template <typename Way>
void walk(Way& way, contract::Name& name) {
    way.pass(name.name);
    way.pass(name.unit);
    way.pass(name.meaning);
    way.pass(name.range.low);
    way.pass(name.range.high);
    way.pass(name.axis);
}

template <typename Way>
void walk(Way& way, std::string& text) {
    way.pass(text);
}

template <typename Way, typename T>
void walk(Way& way, std::vector<T>& list) {
    way.count(list);
    for (T& element : list) walk(way, element);
}

template <typename Way>
void walk(Way& way, contract::Setting& setting) {
    way.pass(setting.name);
    way.pass(setting.unit);
    way.pass(setting.meaning);
    way.pass(setting.initial);
    way.pass(setting.range.low);
    way.pass(setting.range.high);
    walk(way, setting.choices);
    way.pass(setting.varies_by);
}

template <typename Way>
void walk(Way& way, contract::Line& line) {
    way.pass(line.name);
    way.pass(line.unit);
    way.pass(line.title);
    way.pass(line.axis);
    way.pass(line.cost_class);
    way.pass(line.behaviour);
}

template <typename Way>
void walk(Way& way, contract::Loss& loss) {
    way.pass(loss.cause);
    way.pass(loss.title);
}

template <typename Way>
void walk(Way& way, Model& model) {
    way.pass(model.built_with);
    way.pass(model.id);
    way.pass(model.version);
    way.pass(model.title);
    walk(way, model.needs);
    walk(way, model.provides);
    walk(way, model.settings);
    walk(way, model.lines);
    walk(way, model.losses);
    walk(way, model.reasons);
}

// The description as a plugin would export it, to be read by the one who reads those. Points into the model.
class Exported {
public:
    explicit Exported(const Model& model) {
        for (const auto& need : model.needs) needs_.push_back(name(need));
        for (const auto& provide : model.provides) provides_.push_back(name(provide));
        for (const auto& setting : model.settings) choices_.push_back(texts(setting.choices));
        for (std::size_t s = 0; s < model.settings.size(); ++s)
            settings_.push_back(setting(model.settings[s], choices_[s]));
        for (const auto& line : model.lines)
            lines_.push_back({line.name.c_str(), line.unit.c_str(), line.title.c_str(), number(line.axis),
                              number(line.cost_class), number(line.behaviour), 0});
        for (const auto& loss : model.losses) losses_.push_back({loss.cause.c_str(), loss.title.c_str()});
        reasons_ = texts(model.reasons);
        all_ = {
            sizeof(flutebook_model), FLUTEBOOK_MAGIC,          FLUTEBOOK_MAJOR,
            FLUTEBOOK_MINOR,         model.built_with.c_str(), model.id.c_str(),
            model.version.c_str(),   model.title.c_str(),      span(needs_),
            span(provides_),         span(settings_),          span(lines_),
            span(losses_),           span(reasons_),           [](const flutebook_block*) { return std::uint32_t{1}; }};
    }
    Exported(const Exported&) = delete;
    Exported& operator=(const Exported&) = delete;

    [[nodiscard]] const flutebook_model& all() const { return all_; }

private:
    template <typename Enum>
    static std::uint32_t number(Enum value) {
        return static_cast<std::uint32_t>(value);
    }
    template <typename T>
    static flutebook_span span(const std::vector<T>& list) {
        return {list.data(), static_cast<std::uint32_t>(list.size()), sizeof(T)};
    }
    static std::vector<const char*> texts(const std::vector<std::string>& list) {
        std::vector<const char*> result;
        for (const std::string& item : list) result.push_back(item.c_str());
        return result;
    }
    static flutebook_name name(const contract::Name& item) {
        return {item.name.c_str(),
                item.unit.c_str(),
                item.meaning.c_str(),
                item.range.low,
                item.range.high,
                number(item.axis),
                0};
    }
    static flutebook_setting setting(const contract::Setting& setting, const std::vector<const char*>& choices) {
        return {setting.name.c_str(), setting.unit.c_str(),      setting.meaning.c_str(),
                setting.initial,      setting.range.low,         setting.range.high,
                span(choices),        number(setting.varies_by), setting.is_required() ? 1U : 0U};
    }

    std::vector<flutebook_name> needs_, provides_;
    std::vector<std::vector<const char*>> choices_;
    std::vector<flutebook_setting> settings_;
    std::vector<flutebook_line> lines_;
    std::vector<flutebook_loss> losses_;
    std::vector<const char*> reasons_;
    flutebook_model all_{};
};

}  // namespace

std::vector<std::string> fields_of(const Model& model) {
    Model copy = model;
    FieldWriter writer;
    walk(writer, copy);
    return std::move(writer.fields);
}

std::optional<Model> model_from(std::vector<std::string> fields, const std::string& file, const std::string& id) {
    FieldReader reader(std::move(fields));
    Model sent;
    walk(reader, sent);
    if (!reader.is_whole()) return std::nullopt;
    Model result = contract::describe(Exported(sent).all(), file, id);
    result.evaluate = nullptr;
    return result;
}

}  // namespace flutebook::plugin_worker
