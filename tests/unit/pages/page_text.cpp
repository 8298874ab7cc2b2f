#include "tests/unit/pages/page_text.hpp"

#include <cmath>
#include <stdexcept>

namespace flutebook::fixture {

namespace {

// The text of markup: what stands outside of tags.
std::string shown_text(const std::string& markup) {
    std::string text;
    bool is_in_tag = false;
    for (const char sign : markup) {
        if (sign == '<') is_in_tag = true;
        if (!is_in_tag) text += sign;
        if (sign == '>') is_in_tag = false;
    }
    while (!text.empty() && text.back() == ' ') text.pop_back();
    return without_entities(text);
}

// Each element of this tag, with its own tag.
std::vector<std::string> elements(const std::string& markup, const std::string& tag) {
    std::vector<std::string> result;
    const std::string open = "<" + tag, close = "</" + tag + ">";
    for (std::size_t at = markup.find(open); at != std::string::npos; at = markup.find(open, at + 1)) {
        const char next = markup[at + open.size()];
        if (next == ' ' || next == '>') result.push_back(markup.substr(at, markup.find(close, at) - at));
    }
    return result;
}

std::string before_unit(const std::string& markup) {
    return shown_text(markup.substr(0, markup.find("<span class=\"unit\"")));
}

}  // namespace

std::string part(const std::string& page, const std::string& id) {
    const std::size_t begin = page.find(" id=\"" + id + "\"");
    if (begin == std::string::npos) throw std::logic_error("no part is called " + id);
    return page.substr(begin, page.find("</section>", begin) - begin);
}

std::map<std::string, std::vector<std::string>> rows_of(const std::string& part) {
    std::map<std::string, std::vector<std::string>> result;
    for (const std::string& row : elements(part, "tr")) {
        const auto heads = elements(row, "th");
        std::vector<std::string> cells;
        for (const std::string& cell : elements(row, "td")) cells.push_back(before_unit(cell));
        if (heads.size() == 1) result.emplace(before_unit(heads.front()), cells);
    }
    return result;
}

std::int64_t units(const std::string& amount) {
    std::string digits;
    for (const char sign : amount)
        if (sign != ' ') digits += sign;
    return std::llround(std::stod(digits) * 10000);
}

std::string without_entities(std::string text) {
    for (const auto& [entity, sign] :
         {std::pair{"&quot;", "\""}, std::pair{"&lt;", "<"}, std::pair{"&gt;", ">"}, std::pair{"&amp;", "&"}})
        for (std::size_t at = text.find(entity); at != std::string::npos; at = text.find(entity, at + 1))
            text.replace(at, std::string(entity).size(), sign);
    return text;
}

PrintedSums sums_of(const std::string& cost_part) {
    PrintedSums result;
    std::int64_t of_class = 0, of_classes = 0;
    for (const std::string& row : elements(cost_part, "tr")) {
        const auto cells = elements(row, "td");
        const bool is_subtotal = row.find("class=\"subtotal\"") != std::string::npos;
        const bool is_total = row.find("class=\"total\"") != std::string::npos;
        if (cells.size() < 5 || row.find("<thead") != std::string::npos) continue;
        if (shown_text(cells.back()).find_first_of("0123456789") == std::string::npos) continue;
        const std::int64_t amount = units(shown_text(cells.back()));
        if (is_total) {
            result.total = amount;
            if (amount != of_classes) result.faults.push_back("the classes come to another total: " + row);
        } else if (is_subtotal) {
            ++result.classes;
            if (amount != of_class) result.faults.push_back("the lines come to another sum: " + row);
            of_classes += amount;
            of_class = 0;
        } else {
            of_class += amount;
        }
    }
    return result;
}

}  // namespace flutebook::fixture
