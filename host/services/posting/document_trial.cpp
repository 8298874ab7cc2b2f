#include "host/services/posting/document_trial.hpp"

#include <charconv>
#include <map>
#include <optional>
#include <utility>
#include <variant>

#include "host/base/csv.hpp"
#include "host/base/errors.hpp"
#include "host/services/posting/post.hpp"

namespace flutebook::services {

namespace {

using TextsByLine = std::map<std::int64_t, std::vector<std::string>>;

struct Told {
    TextsByLine of_rows;
    std::vector<std::string> of_file;
};

// "FILE:12: kg: found ..." as 12 and the rest; nothing where it names no line of the file.
std::optional<std::pair<std::int64_t, std::string>> parted(const std::string& text, const std::string& file) {
    if (text.rfind(file + ":", 0) != 0) return std::nullopt;
    const char* begin = text.data() + file.size() + 1;
    const char* end = text.data() + text.size();
    std::int64_t line = 0;
    const auto read = std::from_chars(begin, end, line);
    if (read.ec != std::errc() || read.ptr == end || *read.ptr != ':') return std::nullopt;
    const auto rest = static_cast<std::size_t>(read.ptr - text.data()) + 2;
    return std::pair(line, rest <= text.size() ? text.substr(rest) : std::string());
}

// Messages call the file by its path or by its name, whichever posting was told.
Told told_of(const std::vector<std::string>& texts, const std::string& path, const std::string& name) {
    Told told;
    for (const std::string& text : texts) {
        auto part = parted(text, path);
        if (!part) part = parted(text, name);
        if (part)
            told.of_rows[part->first].push_back(part->second);
        else if (text.rfind(path + ":", 0) == 0)
            told.of_file.push_back(name + text.substr(path.size()));
        else
            told.of_file.push_back(text);
    }
    return told;
}

std::vector<std::string> taken(TextsByLine& texts, std::int64_t line) {
    const auto found = texts.find(line);
    if (found == texts.end()) return {};
    auto result = std::move(found->second);
    texts.erase(found);
    return result;
}

void add_rows(answers::DocumentTrial& trial, const std::string& path, Told& faults, Told& doubts) {
    auto opened = base::CsvReader::open(path);
    auto* csv = std::get_if<base::CsvReader>(&opened);
    std::size_t plain = 0;
    while (const base::CsvLine* line = csv == nullptr ? nullptr : csv->next()) {
        const std::vector<std::string> fields(line->fields.begin(), line->fields.end());
        if (trial.heads.empty() && !fields.empty()) {
            trial.heads = fields;
            continue;
        }
        ++trial.all_rows;
        answers::TriedRow row{line->number, fields, taken(faults.of_rows, line->number),
                              taken(doubts.of_rows, line->number)};
        const bool is_plain = row.faults.empty() && row.doubts.empty();
        if (is_plain && ++plain > most_shown_rows) continue;
        trial.rows.push_back(std::move(row));
    }
}

// What names a line that is no row, as the first line, is of the file.
void add_rest(std::vector<std::string>& list, Told& told) {
    for (const auto& [line, texts] : told.of_rows)
        for (const std::string& text : texts) list.push_back("line " + std::to_string(line) + ": " + text);
    list.insert(list.end(), told.of_file.begin(), told.of_file.end());
}

}  // namespace

answers::DocumentTrial try_document(const plant::Plant& plant, ledger::Store& store, answers::PostOptions asked,
                                    const std::string& name) {
    asked.keep = answers::PostOptions::Keep::nothing;
    const std::string path = asked.files.front();
    answers::DocumentTrial trial;
    trial.file = name;
    Told faults, doubts;
    try {
        trial.answer = post(plant, store, asked);
        doubts = told_of(trial.answer->warnings, path, name);
        for (auto& file : trial.answer->files) file.file = name;
    } catch (const InputError& error) {
        faults = told_of(error.lines(), path, name);
    }
    add_rows(trial, path, faults, doubts);
    add_rest(trial.faults, faults);
    add_rest(trial.warnings, doubts);
    return trial;
}

}  // namespace flutebook::services
