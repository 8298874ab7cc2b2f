// A list in CSV: each line is a row, and a cell's place is its line and column.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>
#include <variant>

#include "host/base/csv.hpp"
#include "host/base/errors.hpp"
#include "host/lists/list_source.hpp"

namespace flutebook::lists {

namespace {

class CsvList : public ListSource {
public:
    CsvList(std::string file, base::CsvReader reader) : file_(std::move(file)), reader_(std::move(reader)) {
        std::error_code error;
        const auto size = std::filesystem::file_size(file_, error);
        if (!error) size_ = static_cast<double>(std::max<std::uintmax_t>(size, 1));
    }

    std::optional<ListRow> next() override {
        const base::CsvLine* line = reader_.next();
        if (line == nullptr) return std::nullopt;
        read_ += static_cast<double>(line->text.size() + 1);
        const int number = static_cast<int>(line->number);
        const base::FileName file(file_);  // the row's own: what all threads counted together they would wait for
        ListRow row{{file, number, 1}, {}, std::nullopt};
        if (line->fault) row.fault = base::place_text(row.place) + ": " + *line->fault;
        row.cells.reserve(line->fields.size());
        for (std::size_t f = 0; f < line->fields.size(); ++f)
            row.cells.push_back({std::string(line->fields[f]), {file, number, line->column_of(f)}});
        return row;
    }

    [[nodiscard]] ListNumbers numbers() const override {
        return reader_.separator() == ';' ? ListNumbers::comma_too : ListNumbers::point_alone;
    }

    [[nodiscard]] double share_read() const override { return std::min(read_ / size_, 1.0); }

private:
    std::string file_;
    base::CsvReader reader_;
    double size_ = 1, read_ = 0;  // bytes
};

}  // namespace

std::unique_ptr<ListSource> open_csv_list(const std::string& file) {
    auto opened = base::CsvReader::open(file);
    if (const auto* why = std::get_if<std::string>(&opened))
        throw InputError(InputError::Whose::request, {fmt::format("{}: {}", file, *why)});
    return std::make_unique<CsvList>(file, std::get<base::CsvReader>(std::move(opened)));
}

}  // namespace flutebook::lists
