// The parts of a workbook that say where its first sheet is, what its shared texts are, and which styles show days.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "host/lists/workbook_cells.hpp"

namespace flutebook::lists {

/// Names without what stands before a colon. They live until the handler returns.
using PartAttributes = std::vector<std::pair<std::string_view, std::string_view>>;

/// Empty where there is none of that name.
[[nodiscard]] std::string_view attribute(const PartAttributes& attributes, std::string_view name);

/// What is told of a part as it is read. Nothing throws but for want of memory.
class PartHandler {
public:
    PartHandler() = default;
    PartHandler(const PartHandler&) = delete;
    PartHandler& operator=(const PartHandler&) = delete;
    virtual ~PartHandler() = default;

    virtual void begin(std::string_view element, const PartAttributes& attributes) = 0;
    virtual void end(std::string_view element) = 0;
    virtual void text(std::string_view piece) = 0;
};

/// Reads the workbook's own part, then its relations.
class WorkbookParts : public PartHandler {
public:
    void begin(std::string_view element, const PartAttributes& attributes) override;
    void end(std::string_view) override {}
    void text(std::string_view) override {}

    /// The name of the first sheet's part, the first that is not hidden; empty where that is no sheet of cells.
    [[nodiscard]] std::string first_sheet() const;
    /// Of a relation of this type: "styles". A name that no part has where there is none.
    [[nodiscard]] std::string part_of(const std::string& type) const;
    [[nodiscard]] DayCount day_count() const { return day_count_; }

private:
    struct Relation {
        std::string type, part;
    };
    std::string sheet_;                          // the relation of the first
    std::map<std::string, Relation> relations_;  // by their ids
    DayCount day_count_ = DayCount::from_1900;
};

/// Texts by their index.
class SharedTexts : public PartHandler {
public:
    explicit SharedTexts(std::vector<std::string>& texts) : texts_(texts) {}

    void begin(std::string_view element, const PartAttributes& attributes) override;
    void end(std::string_view element) override;
    void text(std::string_view piece) override;

private:
    std::vector<std::string>& texts_;
    int reading_aids_ = 0;  // how deep within what says how a text is spoken
    bool is_text_ = false;
};

/// Which cell styles show days.
class NumberFormatReader : public PartHandler {
public:
    explicit NumberFormatReader(std::vector<bool>& is_day) : is_day_(is_day) {}

    void begin(std::string_view element, const PartAttributes& attributes) override;
    void end(std::string_view element) override;
    void text(std::string_view) override {}

private:
    std::vector<bool>& is_day_;
    std::map<int, bool> formats_;  // of the workbook's own: whether it shows a day
    bool is_cell_styles_ = false;
};

}  // namespace flutebook::lists
