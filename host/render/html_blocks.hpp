// The blocks of a report as HTML: notes, facts, tables and drawings, for the page of a report and for pages that set
// them among other things. The classes of the page's style sheet give their appearance.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "host/render/report.hpp"

namespace flutebook::render {

/// Text as HTML shows it: escaped, without control characters.
[[nodiscard]] std::string shown_html(const std::string& text);

/// How a page opens what stands behind a row's figure, in place.
class FigureWalk {
public:
    virtual ~FigureWalk() = default;
    /// Of the page with that figure opened; not escaped, empty where it opens none.
    [[nodiscard]] virtual std::string address(const std::string& figure) const = 0;
    /// HTML to stand below the first row of that figure; empty where it is not open.
    [[nodiscard]] virtual std::string opened(const std::string& figure) const = 0;
    /// Of the page that shows a line of a file, where a text names the two as "machines.yaml:12"; not escaped, empty
    /// where there is none.
    [[nodiscard]] virtual std::string place(std::string_view, int) const { return ""; }
    /// A text in the words of the page; not escaped.
    [[nodiscard]] virtual std::string said(const std::string& text) const { return text; }
};

/// A text in the words of the page, as HTML, with the places that it names as links. Without a walk, escaped alone.
[[nodiscard]] std::string told_html(const std::string& text, const FigureWalk* walk);

/// Writes blocks one after the other. `prefix` begins each id of theirs, so that two writers of a page have none in
/// common.
class HtmlBlocks {
public:
    /// `walk` outlives it; without one, figures are no links.
    explicit HtmlBlocks(std::string prefix, const FigureWalk* walk = nullptr)
        : prefix_(std::move(prefix)), walk_(walk) {}

    void write(const Note& note);
    void write(const Facts& facts);
    void write(const ReportTable& whole);
    void write(const Drawings& drawings);

    /// As above; of a heading the pairs stand side by side.
    void write_heading_facts(const Facts& facts);

    /// What was written since this was last called.
    [[nodiscard]] std::string taken() {
        std::string result = std::move(text_);
        text_.clear();
        return result;
    }

private:
    void write_heads(const ReportTable& table);
    void write_row(const ReportTable& table, const TableRow& row);
    void write_cell(const TableColumn& column, const TableRow& row, std::size_t c);
    [[nodiscard]] std::string cell_html(const Cell& cell) const;

    void write_opened(const ReportTable& table, const TableRow& row);

    std::string prefix_, text_;
    const FigureWalk* walk_;
    std::size_t drawn_ = 0;
};

}  // namespace flutebook::render
