#include "host/production/document.hpp"

#include <utility>

namespace flutebook::production {

std::variant<Document, Document::UnreadableDocument> Document::open(const std::string& file) {
    auto opened = base::CsvReader::open(file);
    if (auto* why = std::get_if<std::string>(&opened)) return UnreadableDocument{0, std::move(*why)};
    auto& csv = std::get<base::CsvReader>(opened);
    const auto* header = csv.next();
    if (header == nullptr) return UnreadableDocument{0, "found nothing in it; expected a header row"};
    if (header->fault) return UnreadableDocument{header->number, *header->fault};
    const auto form = find_form(header->fields);
    if (const auto* why = std::get_if<std::string>(&form)) return UnreadableDocument{header->number, *why};
    const auto fields = header->fields.size();
    return Document(std::move(csv), *std::get<const DocumentFormat*>(form), fields);
}

std::optional<ReadLine> Document::next() {
    const auto* line = csv_.next();
    if (line == nullptr) return std::nullopt;
    if (line->fault) return ReadLine{line->number, RowErrors{{"", *line->fault}}};
    return ReadLine{line->number, rows_.read(*line)};
}

}  // namespace flutebook::production
