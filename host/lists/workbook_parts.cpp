// Element and attribute names are those of ECMA-376, part 1, 18.2, 18.4 and 18.8.
#include "host/lists/workbook_parts.hpp"

#include <charconv>

namespace flutebook::lists {

namespace {

constexpr std::size_t most_shared_texts = 4'000'000;

// Targets stand relative to xl/, or from the top.
std::string part_name(std::string_view target) {
    return target.starts_with('/') ? std::string(target.substr(1)) : "xl/" + std::string(target);
}

int whole_number(std::string_view text) {
    int value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

}  // namespace

std::string_view attribute(const PartAttributes& attributes, std::string_view name) {
    for (const auto& [key, value] : attributes)
        if (key == name) return value;
    return {};
}

void WorkbookParts::begin(std::string_view element, const PartAttributes& attributes) {
    if (element == "sheet" && sheet_.empty() && attribute(attributes, "state").empty())
        sheet_ = attribute(attributes, "id");
    if (element == "workbookPr") {
        const std::string_view flag = attribute(attributes, "date1904");
        if (flag == "1" || flag == "true") day_count_ = DayCount::from_1904;
    }
    if (element == "Relationship") {
        const std::string_view type = attribute(attributes, "Type");
        relations_[std::string(attribute(attributes, "Id"))] = {std::string(type.substr(type.rfind('/') + 1)),
                                                                part_name(attribute(attributes, "Target"))};
    }
}

std::string WorkbookParts::first_sheet() const {
    const auto relation = relations_.find(sheet_);
    return relation == relations_.end() || relation->second.type != "worksheet" ? "" : relation->second.part;
}

std::string WorkbookParts::part_of(const std::string& type) const {
    for (const auto& [id, relation] : relations_)
        if (relation.type == type) return relation.part;
    return "none";
}

void SharedTexts::begin(std::string_view element, const PartAttributes&) {
    if (element == "si" && texts_.size() < most_shared_texts) texts_.emplace_back();
    if (element == "rPh") ++reading_aids_;
    is_text_ = element == "t" && reading_aids_ == 0;
}

void SharedTexts::end(std::string_view element) {
    if (element == "rPh") --reading_aids_;
    if (element == "t") is_text_ = false;
}

void SharedTexts::text(std::string_view piece) {
    if (is_text_ && !texts_.empty()) texts_.back() += piece;
}

void NumberFormatReader::begin(std::string_view element, const PartAttributes& attributes) {
    if (element == "numFmt")
        formats_[whole_number(attribute(attributes, "numFmtId"))] = is_day_format(attribute(attributes, "formatCode"));
    if (element == "cellXfs") is_cell_styles_ = true;
    if (element != "xf" || !is_cell_styles_) return;
    const int number = whole_number(attribute(attributes, "numFmtId"));
    const auto format = formats_.find(number);
    is_day_.push_back(format == formats_.end() ? is_day_format(number) : format->second);
}

void NumberFormatReader::end(std::string_view element) {
    if (element == "cellXfs") is_cell_styles_ = false;
}

}  // namespace flutebook::lists
