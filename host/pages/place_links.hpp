// Places in the files of the opened plant, as links to the page that shows those lines: "machines.yaml:12:40".
#pragma once

#include <string>
#include <string_view>

#include "host/pages/address.hpp"
#include "host/pages/markup.hpp"
#include "host/plant/plant.hpp"
#include "host/render/html_blocks.hpp"

namespace flutebook::pages {

[[nodiscard]] Address plant_file_address(std::string_view name);
[[nodiscard]] Address plant_line_address(std::string_view name, int line);

/// Where the page stands that shows this line of a file of the plant, which may be named with the plant's folder; empty
/// where the plant has no such file, or the file no such line.
[[nodiscard]] std::string place_address(const plant::Plant& plant, std::string_view file, int line);

/// Leads from places in the texts of a report to the lines they name; from its figures nowhere. Texts name files of the
/// plant without its folder, and fields of the pages in place of options.
class PlaceLinks : public render::FigureWalk {
public:
    /// What they point to outlives it. `plant`: which is open; null: no place is a link. `then`: the files that the
    /// places are of, where they may be others by now; a line that reads otherwise today is no link.
    explicit PlaceLinks(const plant::Plant* plant, const plant::FileTexts* then = nullptr)
        : plant_(plant), then_(then) {}

    [[nodiscard]] std::string address(const std::string&) const override { return ""; }
    [[nodiscard]] std::string opened(const std::string&) const override { return ""; }
    [[nodiscard]] std::string place(std::string_view file, int line) const override;
    [[nodiscard]] std::string said(const std::string& text) const override;

private:
    const plant::Plant* plant_;
    const plant::FileTexts* then_;
};

/// A message on a page of this plant, with the places that it names as links; null: without links.
[[nodiscard]] Html told(const plant::Plant* plant, const std::string& text);

/// With files in that folder by their names alone: whoever reads a page need not know where they lie.
[[nodiscard]] std::string without_folder_names(std::string text, const std::string& folder);

}  // namespace flutebook::pages
