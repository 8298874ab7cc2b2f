// A list's answer as CSV (RFC 4180): numbers bare, texts in quotes.
#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <system_error>

#include "host/base/decimal.hpp"
#include "host/lists/list_writer.hpp"
#include "host/render/escaping.hpp"

namespace flutebook::lists {

namespace {

class CsvListWriter : public ListWriter {
public:
    CsvListWriter(const std::string& file, ListNumbers numbers)
        : stream_(file, std::ios::binary | std::ios::trunc), has_commas_(numbers == ListNumbers::comma_too) {
        note();
    }

    void write_header(const std::vector<std::string>& header) {
        std::vector<TableValue> row(header.begin(), header.end());
        write(row);
    }

    void write(const std::vector<TableValue>& row) override {
        line_.clear();
        for (std::size_t c = 0; c < row.size(); ++c) {
            if (c > 0) line_ += has_commas_ ? ';' : ',';
            add(row[c]);
        }
        line_ += "\r\n";
        stream_ << line_;
        note();
    }

    [[nodiscard]] std::string fault() const override { return fault_; }

    [[nodiscard]] std::string close() override {
        stream_.close();
        note();
        return fault_;
    }

private:
    void add(const TableValue& value) {
        if (const auto* text = std::get_if<std::string>(&value)) line_ += render::csv_cell(*text);
        if (const auto* amount = std::get_if<Money>(&value)) add_number(amount->to_double());
        if (const auto* number = std::get_if<PlainNumber>(&value)) add_number(number->value);
    }

    void add_number(double value) {
        std::string text = base::canonical(value);
        if (has_commas_) std::replace(text.begin(), text.end(), '.', ',');
        line_ += text;
    }

    // The first failure, while its reason is known.
    void note() {
        if (fault_.empty() && !stream_) fault_ = std::generic_category().message(errno);
    }

    std::ofstream stream_;
    bool has_commas_;
    std::string line_, fault_;
};

}  // namespace

std::unique_ptr<ListWriter> csv_list_writer(const std::string& file, ListNumbers numbers,
                                            const std::vector<std::string>& header) {
    auto writer = std::make_unique<CsvListWriter>(file, numbers);
    writer->write_header(header);
    return writer;
}

}  // namespace flutebook::lists
