#include "host/offers/offer_drawings.hpp"

#include "host/drawings/folded_drawing.hpp"

namespace flutebook::offers {

namespace {

using blanks::FlatBlank;
using render::Drawing;
using render::DrawnPolygon;

Drawing without_names(Drawing drawing, std::string title) {
    drawing.title = std::move(title);
    for (DrawnPolygon& polygon : drawing.polygons) polygon.name.clear();
    return drawing;
}

std::vector<render::DrawnPoint> drawn_outline(const blanks::Polygon& polygon) {
    std::vector<render::DrawnPoint> result;
    for (const blanks::Point& point : polygon) result.push_back({point.x, point.y});
    return result;
}

Drawing lying_drawing(const FlatBlank& blank) {
    Drawing drawing;
    drawing.width = Drawing::Width::half;
    for (const blanks::FlatCell& cell : blank.cells) {
        DrawnPolygon polygon{DrawnPolygon::Kind::board, drawn_outline(cell.outline), ""};
        for (const blanks::Polygon& hole : cell.holes) polygon.holes.push_back(drawn_outline(hole));
        drawing.polygons.push_back(std::move(polygon));
    }
    return drawing;
}

// "lid, folded" of a piece of a set.
std::string title_of(const OfferWords& words, const FlatBlank& blank, const std::string& state) {
    if (blank.piece.empty()) return words.text("drawing." + state);
    return words.text("drawing.piece_" + state, {{"piece", words.word_for(OfferWords::List::pieces, blank.piece)}});
}

}  // namespace

render::Drawings offer_drawings(const OfferWords& words, const std::vector<FlatBlank>& blanks) {
    render::Drawings result;
    for (const FlatBlank& blank : blanks) {
        if (blank.fold.empty()) {
            result.items.push_back(without_names(lying_drawing(blank), title_of(words, blank, "flat")));
            continue;
        }
        result.items.push_back(without_names(drawings::closed_drawing(blank), title_of(words, blank, "folded")));
        result.items.push_back(without_names(drawings::half_open_drawing(blank), title_of(words, blank, "half_open")));
    }
    return result;
}

}  // namespace flutebook::offers
