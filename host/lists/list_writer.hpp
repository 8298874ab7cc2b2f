// A list's answer written row by row: as CSV, as a workbook, as JSON. No writer keeps a row.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "host/answers/json_text.hpp"
#include "host/lists/list_table.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::lists {

/// A file that is being written. Not thread-safe.
class ListWriter {
public:
    ListWriter() = default;
    ListWriter(const ListWriter&) = delete;
    ListWriter& operator=(const ListWriter&) = delete;
    virtual ~ListWriter() = default;

    virtual void write(const std::vector<TableValue>& row) = 0;
    /// What went wrong so far; empty where nothing did.
    [[nodiscard]] virtual std::string fault() const = 0;
    /// After the last row; the same answer.
    [[nodiscard]] virtual std::string close() = 0;
};

/// Numbers as the list has them: with commas between semicolons, else with points between commas. A text that a
/// spreadsheet would calculate is kept from it.
[[nodiscard]] std::unique_ptr<ListWriter> csv_list_writer(const std::string& file, ListNumbers numbers,
                                                          const std::vector<std::string>& header);

/// A workbook of one sheet.
[[nodiscard]] std::unique_ptr<ListWriter> workbook_list_writer(const std::string& file, int created_in_year,
                                                               const std::vector<std::string>& header);

/// The document of --json, row by row:
/// {"answer": "list", "answer_version", "plant", "currency", "currency_decimals", "warnings": [W...] (about the plant's
/// files), "rows": [R...]}, in the order of the list. R = {"at" (file:line:column), "request", and what of "customer"
/// and "quantity" the row gives, as texts; "price_per_thousand", "cost_per_thousand", "parts_per_thousand": {CLASS:
/// amount..., "profit"}, "order_value", "price_rules", "second_currency" (as in a quote's document), "made_on",
/// "roll_width_mm" (texts); with an old price "old_price", "difference", "difference_share" (of the old price), with
/// its day "change": {CLASS: amount..., "profit", "not_explained"}; "warnings": [W...], "errors": [text...]}. A row
/// with errors has no price.
class JsonListWriter {
public:
    JsonListWriter(const plant::Plant& plant, const std::vector<base::Warning>& warnings);

    [[nodiscard]] const std::string& begin() const { return stream_.begin(); }
    [[nodiscard]] std::string add(const ListColumns& columns, const AnsweredRow& row);
    [[nodiscard]] std::string end() const { return stream_.end(); }

private:
    answers::JsonListStream stream_;
};

}  // namespace flutebook::lists
