// The rows of a workbook's sheet, made from its XML as it comes in. A cell that cannot be taken refuses its row and is
// named; the row's other cells are there all the same.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "host/lists/list_source.hpp"
#include "host/lists/workbook_parts.hpp"

namespace flutebook::lists {

class SheetRows : public PartHandler {
public:
    /// Texts and styles are the workbook's, by index; both must outlive this.
    SheetRows(std::string file, const std::vector<std::string>& texts, const std::vector<bool>& day_styles,
              DayCount day_count)
        : file_(std::move(file)), texts_(texts), day_styles_(day_styles), day_count_(day_count) {}

    void begin(std::string_view element, const PartAttributes& attributes) override;
    void end(std::string_view element) override;
    void text(std::string_view piece) override;

    [[nodiscard]] bool has_row() const { return !rows_.empty(); }
    /// The oldest row that is not taken yet.
    [[nodiscard]] std::optional<ListRow> take();

private:
    void begin_row(const PartAttributes& attributes);
    void begin_cell(const PartAttributes& attributes);
    void end_cell();
    void end_row();
    [[nodiscard]] std::string value_of_cell();
    [[nodiscard]] std::string number_of_cell();
    [[nodiscard]] std::string shared_text();
    void refuse_cell(const std::string& what);
    [[nodiscard]] base::Place place_of(std::size_t column) const;

    std::string file_;
    const std::vector<std::string>& texts_;
    const std::vector<bool>& day_styles_;
    DayCount day_count_;
    std::deque<ListRow> rows_;
    ListRow row_;
    std::size_t row_index_ = 0, next_row_ = 0, column_ = 0, next_column_ = 0;
    std::string type_, value_;  // of the present cell
    std::size_t style_ = 0;
    int reading_aids_ = 0;
    bool is_value_ = false, has_formula_ = false, has_value_ = false;
};

}  // namespace flutebook::lists
