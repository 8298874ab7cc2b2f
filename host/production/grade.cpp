// Codes and names after EN 643:2014, seen in traders' lists and guides, not in the standard itself; 1.04.00 and
// 1.05.00 from memory.
#include "host/production/grade.hpp"

#include <algorithm>
#include <cstddef>

namespace flutebook::production {

bool is_grade(std::string_view code) {
    constexpr std::string_view shape = "g.dd.dd";
    if (code.size() != shape.size()) return false;
    for (std::size_t i = 0; i < shape.size(); ++i) {
        const char sign = code[i];
        const bool fits = shape[i] == '.'   ? sign == '.'
                          : shape[i] == 'g' ? sign >= '1' && sign <= '5'
                                            : sign >= '0' && sign <= '9';
        if (!fits) return false;
    }
    return true;
}

const std::vector<Grade>& box_plant_grades() {
    static const std::vector<Grade> grades = {
        {"4.01.00", "new shavings of corrugated board"},
        {"4.01.01", "unused corrugated kraft"},
        {"4.01.02", "unused corrugated material"},
        {"4.02.00", "used corrugated kraft 1"},
        {"4.03.00", "used corrugated kraft 2"},
        {"4.06.00", "used kraft"},
        {"4.07.00", "new kraft shavings"},
        {"4.08.00", "new carrier kraft"},
        {"1.04.00", "supermarket corrugated paper and board"},
        {"1.05.00", "corrugated paper and board packaging"},
    };
    return grades;
}

std::optional<std::string> grade_name(std::string_view code) {
    const auto& grades = box_plant_grades();
    const auto found =
        std::find_if(grades.begin(), grades.end(), [&](const Grade& grade) { return code == grade.code; });
    return found == grades.end() ? std::nullopt : std::optional<std::string>(found->name);
}

}  // namespace flutebook::production
