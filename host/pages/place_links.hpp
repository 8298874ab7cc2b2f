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

/// Leads from places in the texts of a report to the lines they name; from its figures nowhere.
class PlaceLinks : public render::FigureWalk {
public:
    /// `plant` outlives it; null: no place is a link.
    explicit PlaceLinks(const plant::Plant* plant) : plant_(plant) {}

    [[nodiscard]] std::string address(const std::string&) const override { return ""; }
    [[nodiscard]] std::string opened(const std::string&) const override { return ""; }
    [[nodiscard]] std::string place(std::string_view file, int line) const override {
        return plant_ == nullptr ? "" : place_address(*plant_, file, line);
    }

private:
    const plant::Plant* plant_;
};

}  // namespace flutebook::pages
