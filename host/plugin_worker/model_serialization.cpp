#include "host/plugin_worker/model_serialization.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <optional>
#include <type_traits>

#include "host/contract/description.hpp"

namespace flutebook::plugin_worker {
namespace {

using contract::Model;

constexpr std::size_t most_elements = 64;
static_assert(most_elements >= FLUTEBOOK_MOST_NAMES && most_elements >= FLUTEBOOK_MOST_SETTINGS);

// A field stands in two structs: the host's and the one that a plugin exports. visit_fields() names each pair once, in
// the order in which fields are sent. The writer reads the host's struct; the reader fills both, so that the exported
// struct can be checked as a plugin's own is.

template <typename Visitor>
void visit_fields(Visitor& visitor, std::string& text, const char*& exported) {
    visitor.field(text, exported);
}

template <typename Visitor>
void visit_fields(Visitor& visitor, contract::Name& name, flutebook_name& exported) {
    visitor.field(name.name, exported.name);
    visitor.field(name.unit, exported.unit);
    visitor.field(name.meaning, exported.meaning);
    visitor.field(name.range.low, exported.low);
    visitor.field(name.range.high, exported.high);
    visitor.field(name.axis, exported.axis);
}

template <typename Visitor>
void visit_fields(Visitor& visitor, contract::Setting& setting, flutebook_setting& exported) {
    visitor.field(setting.name, exported.name);
    visitor.field(setting.unit, exported.unit);
    visitor.field(setting.meaning, exported.meaning);
    visitor.default_value(setting.initial, exported);
    visitor.field(setting.range.low, exported.low);
    visitor.field(setting.range.high, exported.high);
    visitor.template list<const char*>(setting.choices, exported.choices);
    visitor.field(setting.varies_by, exported.varies_by);
    visitor.usual_range(setting.usual, exported);
    visitor.index(setting.stepped_over, exported.stepped_over);
    visitor.index(setting.keyed_by, exported.keyed_by);
}

template <typename Visitor>
void visit_fields(Visitor& visitor, contract::Line& line, flutebook_line& exported) {
    visitor.field(line.name, exported.name);
    visitor.field(line.unit, exported.unit);
    visitor.field(line.title, exported.title);
    visitor.field(line.axis, exported.axis);
    visitor.field(line.cost_class, exported.cost_class);
    visitor.field(line.behaviour, exported.behaviour);
    visitor.field(line.rate_unit, exported.rate_unit);
}

template <typename Visitor>
void visit_fields(Visitor& visitor, contract::Loss& loss, flutebook_loss& exported) {
    visitor.field(loss.cause, exported.cause);
    visitor.field(loss.title, exported.title);
}

template <typename Visitor>
void visit_fields(Visitor& visitor, Model& model, flutebook_model& exported) {
    visitor.field(model.built_with, exported.built_with);
    visitor.field(model.id, exported.id);
    visitor.field(model.version, exported.version);
    visitor.field(model.title, exported.title);
    visitor.field(model.author, exported.author);
    visitor.field(model.contact, exported.contact);
    visitor.template list<flutebook_name>(model.needs, exported.needs);
    visitor.template list<flutebook_name>(model.provides, exported.provides);
    visitor.template list<flutebook_setting>(model.settings, exported.settings);
    visitor.template list<flutebook_line>(model.lines, exported.lines);
    visitor.template list<flutebook_loss>(model.losses, exported.losses);
    visitor.template list<const char*>(model.reasons, exported.reasons);
}

// Writes the fields of the host's struct. The exported struct is not used.
class FieldWriter {
public:
    void field(std::string& text, const char*&) { fields_.push_back(text); }
    void field(double& number, double&) { fields_.push_back(fmt::format("{}", number)); }
    void default_value(std::optional<double>& number, flutebook_setting&) {
        fields_.push_back(number ? fmt::format("{}", *number) : "");
    }
    void usual_range(std::optional<contract::Range>& range, flutebook_setting&) {
        fields_.push_back(range ? fmt::format("{}", range->low) : "0");
        fields_.push_back(range ? fmt::format("{}", range->high) : "0");
    }
    void index(std::optional<std::size_t>& index, std::uint32_t&) {
        fields_.push_back(std::to_string(index ? *index + 1 : 0));
    }
    template <typename Enum>
    void field(Enum& value, std::uint32_t&) {
        fields_.push_back(std::to_string(static_cast<std::uint32_t>(value)));
    }
    template <typename Exported, typename Element>
    void list(std::vector<Element>& elements, flutebook_span&) {
        fields_.push_back(std::to_string(elements.size()));
        Exported unused{};
        for (Element& element : elements) visit_fields(*this, element, unused);
    }

    [[nodiscard]] std::vector<std::string> take() { return std::move(fields_); }

private:
    std::vector<std::string> fields_;
};

// Reads the fields into the host's struct and points the exported struct to them: both must stay where they are, and
// this object holds the exported lists. Once a field is missing or malformed, every later field is read as empty.
class FieldReader {
public:
    explicit FieldReader(std::vector<std::string> fields) : fields_(std::move(fields)) {}

    /// Whether every field was well-formed and none is left over.
    [[nodiscard]] bool is_complete() const { return is_good_ && next_ == fields_.size(); }

    void field(std::string& text, const char*& exported) {
        text = take();
        exported = text.c_str();
    }
    void field(double& number, double& exported) { number = exported = number_of(take()); }
    void default_value(std::optional<double>& number, flutebook_setting& exported) {
        const std::string text = take();
        exported.required = text.empty() ? 1U : 0U;
        exported.initial = number_of(text);
        if (!text.empty()) number = exported.initial;
    }
    void usual_range(std::optional<contract::Range>&, flutebook_setting& exported) {
        exported.usual_low = number_of(take());
        exported.usual_high = number_of(take());
    }
    void index(std::optional<std::size_t>&, std::uint32_t& exported) { exported = whole_number(); }
    template <typename Enum>
    void field(Enum& value, std::uint32_t& exported) {
        exported = whole_number();
        value = static_cast<Enum>(exported);
    }
    template <typename Exported, typename Element>
    void list(std::vector<Element>& elements, flutebook_span& span) {
        const std::uint32_t count = whole_number();
        is_good_ = is_good_ && count <= most_elements;
        elements.resize(is_good_ ? count : 0);
        const auto exported = std::make_shared<std::vector<Exported>>(elements.size());
        for (std::size_t i = 0; i < elements.size(); ++i) visit_fields(*this, elements[i], (*exported)[i]);
        span = {exported->data(), static_cast<std::uint32_t>(exported->size()), sizeof(Exported)};
        exported_lists_.push_back(exported);
    }

private:
    std::string take() {
        is_good_ = is_good_ && next_ < fields_.size();
        return is_good_ ? std::move(fields_[next_++]) : "";
    }
    double number_of(const std::string& text) {
        char* end = nullptr;
        const double result = std::strtod(text.c_str(), &end);
        is_good_ = is_good_ && end == text.c_str() + text.size();
        return result;
    }
    std::uint32_t whole_number() {
        const std::string text = take();
        std::uint32_t result = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), result);
        is_good_ = is_good_ && error == std::errc() && end == text.data() + text.size();
        return result;
    }

    std::vector<std::string> fields_;
    std::size_t next_ = 0;
    bool is_good_ = true;
    std::vector<std::shared_ptr<void>> exported_lists_;
};

// The header of every exported struct that the host writes itself. Its function is never called.
flutebook_model exported_header() {
    flutebook_model result{};
    result.size = sizeof result;
    result.magic = FLUTEBOOK_MAGIC;
    result.major = FLUTEBOOK_MAJOR;
    result.minor = FLUTEBOOK_MINOR;
    result.evaluate = [](const flutebook_block*) { return std::uint32_t{1}; };
    return result;
}

}  // namespace

std::vector<std::string> fields_of(const Model& model) {
    Model copy = model;
    flutebook_model unused{};
    FieldWriter writer;
    visit_fields(writer, copy, unused);
    return writer.take();
}

std::optional<Model> model_from(std::vector<std::string> fields, const std::string& file, const std::string& id) {
    FieldReader reader(std::move(fields));
    Model sent;
    flutebook_model exported = exported_header();
    visit_fields(reader, sent, exported);
    if (!reader.is_complete()) return std::nullopt;
    Model result = contract::describe(exported, file, id);
    result.evaluate = nullptr;
    return result;
}

}  // namespace flutebook::plugin_worker
