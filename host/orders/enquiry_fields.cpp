// The reader of lines reads each word, so that a form and a line give a word the same meaning.
#include "host/orders/enquiry_fields.hpp"

#include <algorithm>
#include <optional>

#include "host/base/errors.hpp"
#include "host/base/yaml/document.hpp"
#include "host/orders/enquiry.hpp"
#include "host/orders/enquiry_words.hpp"

namespace flutebook::orders {

namespace {

// Without the spaces around it, and without quotes, which no word of a line can hold.
std::string typed(const std::string& text) {
    std::string result;
    for (const char sign : text)
        if (sign != '"') result += sign == '\t' || sign == '\n' || sign == '\r' ? ' ' : sign;
    const std::size_t begin = result.find_first_not_of(' ');
    if (begin == std::string::npos) return "";
    return result.substr(begin, result.find_last_not_of(' ') - begin + 1);
}

std::string without_end(const std::string& text, char sign) {
    return !text.empty() && text.back() == sign ? typed(text.substr(0, text.size() - 1)) : text;
}

class LineWriter {
public:
    void add(const std::string& text) {
        if (!text.empty()) line_ += (line_.empty() ? "" : " ") + text;
    }

    void add_named(const std::string& name, const std::string& value) {
        const std::string text = typed(value);
        if (text.empty()) return;
        const bool has_space = text.find(' ') != std::string::npos;
        add(name + "=" + (has_space ? "\"" + text + "\"" : text));
    }

    [[nodiscard]] const std::string& line() const { return line_; }

private:
    std::string line_;
};

// "400x300x250": the unit of all lengths stands once, behind the last.
std::string size_word(const EnquiryFields& fields) {
    std::vector<std::string> lengths;
    for (const std::string* field : {&fields.length, &fields.width, &fields.height})
        if (const std::string length = typed(*field); !length.empty()) lengths.push_back(length);
    std::string result, unit;
    for (std::string& length : lengths) {
        for (const char* name : {"mm", "cm", "in"}) {
            const std::size_t at = length.size() < 2 ? 0 : length.size() - 2;
            if (length.compare(at, std::string::npos, name) != 0) continue;
            unit = std::string(" ") + name;
            length = typed(length.substr(0, at));
        }
        result += (result.empty() ? "" : "x") + length;
    }
    return result + unit;
}

// A word that is no date and no request's number, read alone; nothing where it is not understood.
std::optional<base::Node::Entry> read_alone(const plant::Plant& plant, const std::string& word) {
    const base::Date any_day = *base::parse_date("2000-01-01");
    try {
        base::Node tree = read_enquiry(plant, "\"" + word + "\"", any_day);
        for (base::Node::Entry& entry : tree.entries)
            if (entry.key != "date" && entry.key != "request") return std::move(entry);
    } catch (const InputError&) {
        return std::nullopt;
    }
    return std::nullopt;
}

void add_word(std::string& words, const std::string& word) {
    words += (words.empty() ? "" : " ") + word;
}

// What stands once in a request, under its key.
std::string* field_of(EnquiryFields& fields, const std::string& key) {
    if (key == "style") return &fields.style;
    if (key == "board") return &fields.board;
    if (key == "colours") return &fields.colours;
    return key == "customer" ? &fields.customer : nullptr;
}

void fill_size(EnquiryFields& fields, const base::Node& inside) {
    for (const base::Node::Entry& length : inside.entries)
        (length.key == "length"  ? fields.length
         : length.key == "width" ? fields.width
                                 : fields.height) = length.value.text;
}

void fill(EnquiryFields& fields, const base::Node::Entry& entry, const std::string& word) {
    if (std::string* field = field_of(fields, entry.key)) {
        *field = entry.value.text;
    } else if (entry.key == "inside") {
        fill_size(fields, entry.value);
    } else if (entry.key == "margin") {
        fields.margin = word.back() == '%' && word.find('=') == std::string::npos ? without_end(word, '%')
                                                                                  : share_in_per_cent(entry.value.text);
    } else if (entry.key == "quantities" || entry.key == "route") {
        add_word(entry.key == "route" ? fields.route : fields.quantities, word);
    } else if (const std::size_t equals = word.find('='); equals != std::string::npos) {
        fields.named.emplace_back(word.substr(0, equals), word.substr(equals + 1));
    }
}

std::string joined(const base::Node& list) {
    std::string words;
    for (const base::Node& item : list.items) add_word(words, item.text);
    return list.kind == base::Node::Kind::text ? list.text : words;
}

bool has_texts_alone(const base::Node& map) {
    return std::all_of(map.entries.begin(), map.entries.end(),
                       [](const base::Node::Entry& entry) { return entry.value.kind == base::Node::Kind::text; });
}

bool fill_extras(EnquiryFields& fields, const base::Node& extras) {
    for (const base::Node::Entry& model : extras.entries) {
        if (model.value.kind != base::Node::Kind::map || !has_texts_alone(model.value)) return false;
        for (const base::Node::Entry& setting : model.value.entries)
            fields.named.emplace_back(model.key + "." + setting.key, setting.value.text);
    }
    return true;
}

// Whether the fields can say it.
bool fill_of_request(EnquiryFields& fields, const base::Node::Entry& entry) {
    const base::Node& value = entry.value;
    const bool is_text = value.kind == base::Node::Kind::text;
    if (entry.key == "date" || entry.key == "copied_from") return true;
    if (entry.key == "quantities") {
        fields.quantities = joined(value);
        return true;
    }
    if (entry.key == "route") {
        fields.route = joined(value);
        return value.kind == base::Node::Kind::list;
    }
    if (entry.key == "inside") {
        fill_size(fields, value);
        return has_texts_alone(value);
    }
    if (entry.key == "measures" && has_texts_alone(value)) {
        for (const base::Node::Entry& measure : value.entries)
            fields.named.emplace_back(measure.key, measure.value.text);
        return true;
    }
    if (entry.key == "extras") return fill_extras(fields, value);
    if (!is_text) return false;
    if (entry.key == "flutes")
        fields.named.emplace_back(entry.key, value.text);
    else if (entry.key == "request")
        fields.request = value.text;
    else if (entry.key == "margin")
        fields.margin = value.text.back() == '%' ? without_end(value.text, '%') : share_in_per_cent(value.text);
    else if (std::string* field = field_of(fields, entry.key))
        *field = value.text;
    else
        return false;
    return true;
}

}  // namespace

std::optional<EnquiryFields> request_fields(const std::string& request_text) {
    base::Diagnostics complaints;
    const auto tree = base::parse_document(request_text, "request", complaints);
    if (!tree || tree->kind != base::Node::Kind::map) return std::nullopt;
    EnquiryFields fields;
    for (const base::Node::Entry& entry : tree->entries)
        if (!fill_of_request(fields, entry)) return std::nullopt;
    return fields.style == "outline" ? std::nullopt : std::optional(fields);
}

std::string enquiry_line(const EnquiryFields& fields) {
    LineWriter line;
    line.add(typed(fields.style));
    line.add(size_word(fields));
    line.add(typed(fields.board));
    line.add(typed(fields.quantities));
    if (const std::string colours = typed(fields.colours); !colours.empty()) line.add(without_end(colours, 'c') + "c");
    if (const std::string margin = typed(fields.margin); !margin.empty()) line.add(without_end(margin, '%') + "%");
    line.add(typed(fields.route));
    for (const auto& [name, value] : fields.named) line.add_named(typed(name), value);
    line.add(typed(fields.date));
    line.add_named("customer", fields.customer);
    line.add_named("request", fields.request);
    return line.line();
}

EnquiryFields enquiry_fields(const plant::Plant& plant, const std::string& line) {
    EnquiryFields fields;
    const std::string request_key = "request=";
    for (const EnquiryWord& word : enquiry_words(line)) {
        if (base::parse_date(word.text))
            fields.date = word.text;
        else if (word.text.rfind(request_key, 0) == 0)
            fields.request = word.text.substr(request_key.size());
        else if (const auto entry = read_alone(plant, word.text))
            fill(fields, *entry, word.text);
    }
    return fields;
}

}  // namespace flutebook::orders
