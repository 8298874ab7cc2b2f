#include "host/what_if/touched_paths.hpp"

#include <fmt/format.h>

#include <map>
#include <set>
#include <string_view>

#include "host/base/place.hpp"

namespace flutebook::what_if {

namespace {

class PathCollector {
public:
    PathCollector(const Variant& base, const scenario::NumberTrees& trees, std::size_t index)
        : base_(base), by_place_(trees.paths_by_place()), index_(index) {
        for (const char* path : {"request.margin", "request.colours"}) paths_.insert(path);
    }

    void add(const std::vector<explain::TouchedNumber>& numbers) {
        for (const explain::TouchedNumber& number : numbers) {
            if (!number.default_of.empty()) {
                paths_.insert(number.default_of);
            } else if (const auto found = by_place_.find(base::place_text(number.place)); found != by_place_.end()) {
                add(found->second);
            }
        }
    }

    // Without those whose parts are named.
    [[nodiscard]] std::vector<std::string> paths() const {
        std::vector<std::string> result;
        for (const std::string& path : paths_) {
            const auto next = paths_.lower_bound(path + ".");
            if (next == paths_.end() || !next->starts_with(path + ".")) result.push_back(path);
        }
        return result;
    }

private:
    void add(const std::string& path) {
        static constexpr std::string_view rolls = ".roll_widths";
        if (path == "request.quantities")
            paths_.insert(fmt::format("request.quantities[{}]", index_ + 1));
        else if (path == "boards." + board().code)
            add_board();
        else
            paths_.insert(path.ends_with(rolls) ? "papers.*.roll_widths" : path);
    }

    void add_board() {
        if (board().is_bought()) {
            paths_.insert("boards." + board().code + ".bought.grammage");
            return;
        }
        for (const plant::Board::Ply& ply : board().plies) {
            paths_.insert(fmt::format("papers.{}.grammage", base_.workplace.plant.papers[ply.paper].code));
            if (!ply.flute) continue;
            for (const char* key : {"take_up", "height", "adhesive.single_facer", "adhesive.double_backer"})
                paths_.insert(fmt::format("flutes.{}.{}", base_.workplace.plant.flutes[*ply.flute].code, key));
        }
    }

    [[nodiscard]] const plant::Board& board() const { return base_.workplace.plant.boards[base_.request.board]; }

    const Variant& base_;
    std::map<std::string, std::string> by_place_;
    std::size_t index_;
    std::set<std::string> paths_;
};

}  // namespace

std::vector<std::string> touched_paths(const Variant& base, const scenario::NumberTrees& trees,
                                       const answers::RequestAnswer& answer, std::size_t index) {
    PathCollector collector(base, trees, index);
    if (const auto& quote = answer.quantities[index].quote) collector.add(quote->touched);
    for (const auto& piece : answer.pieces)
        if (const auto& quote = piece.quantities[index].quote) collector.add(quote->touched);
    return collector.paths();
}

}  // namespace flutebook::what_if
