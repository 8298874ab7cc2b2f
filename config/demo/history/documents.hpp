// The documents as they are written down: rows gathered by file, put in order of their days, numbered, and saved a
// folder a month.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "config/demo/history/plan.hpp"

namespace flutebook::demo {

/// The documents of a month, each a file of its own.
enum class File { paper, corrugator, other_rolls, converters, scrap, bales, tickets, costs, counts };

class Documents {
public:
    /// The fields behind ref and day, and why the row is odd. A row behind the last day is not written.
    void add(File file, Day day, std::vector<std::string> fields, const std::string& note = "");

    /// FOLDER/2025-10/paper.csv and so on. The mill's tickets come as its office writes them: semicolons, decimal
    /// commas, a byte order mark. Throws where they cannot be written.
    void save(const std::string& folder) const;

private:
    struct Row {
        Day day;
        std::vector<std::string> fields;
        std::string note;
    };
    std::map<std::pair<std::chrono::year_month, File>, std::vector<Row>> rows_;
};

/// As an amount or a mass is written: "1234.5", no more than `decimals`, none that are idle.
[[nodiscard]] std::string written(double number, int decimals = 0);
[[nodiscard]] std::string written(Day day);

/// Saves a text; its folder is there. Throws where it cannot be written.
void save_text(const std::string& file, const std::string& text);

}  // namespace flutebook::demo
