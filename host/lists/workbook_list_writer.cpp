// A list's answer as a workbook: amounts and numbers are numbers, all else is text.
#include "host/lists/list_writer.hpp"
#include "host/render/workbook_rows.hpp"

namespace flutebook::lists {

namespace {

class WorkbookListWriter : public ListWriter {
public:
    WorkbookListWriter(const std::string& file, int created_in_year, const std::vector<std::string>& header)
        : book_(file, "Prices", created_in_year) {
        book_.write_heads(header);
    }

    void write(const std::vector<TableValue>& row) override {
        for (std::size_t c = 0; c < row.size(); ++c) {
            if (const auto* text = std::get_if<std::string>(&row[c])) book_.write_text(c, *text);
            if (const auto* amount = std::get_if<Money>(&row[c])) book_.write_amount(c, amount->to_double());
            if (const auto* number = std::get_if<PlainNumber>(&row[c])) book_.write_number(c, number->value);
        }
        book_.next_row();
    }

    [[nodiscard]] std::string fault() const override { return book_.fault(); }
    [[nodiscard]] std::string close() override { return book_.close(); }

private:
    render::WorkbookRows book_;
};

}  // namespace

std::unique_ptr<ListWriter> workbook_list_writer(const std::string& file, int created_in_year,
                                                 const std::vector<std::string>& header) {
    return std::make_unique<WorkbookListWriter>(file, created_in_year, header);
}

}  // namespace flutebook::lists
