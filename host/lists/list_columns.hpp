// The header of a list: which column is which key of a request. Each row of the list becomes the tree that a request's
// file would be read into, so that one reader answers for both.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/base/yaml/node.hpp"
#include "host/engine/engine.hpp"
#include "host/lists/list_source.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::lists {

struct ListColumn {
    enum class Kind {
        code,       // a text of the request: `board`
        style,      // the same, whose zero in front a spreadsheet may have taken
        number,     // a number of the request: `margin`
        side,       // of `inside`, or of the `outline`
        quantity,   // the one quantity of the row
        route,      // machines with > between them
        measure,    // that a style asks for
        extra,      // MODEL.SETTING
        price,      // the old price per thousand
        price_day,  // the day of the old price
        carried,    // written back as it stands
        answer      // of an earlier answer: left out
    };
    Kind kind;
    std::string name;      // as the header has it
    std::string map, key;  // where its value stands in the request: `extras`, `delivery`
    std::string setting;   // of an extra
};

/// What a row says beside its request.
struct OldPrice {
    double per_thousand;
    std::optional<base::Date> day;  // when it was made
};

class ListColumns {
public:
    /// Throws InputError (request): a column is unknown, named twice or missing. Each unknown one is answered with the
    /// columns that are known.
    [[nodiscard]] static ListColumns read(const ListRow& header, const plant::Plant& plant, const engine::Graph& graph,
                                          ListNumbers numbers);

    [[nodiscard]] const std::vector<ListColumn>& columns() const { return columns_; }
    [[nodiscard]] bool has_old_price() const { return has(ListColumn::Kind::price); }
    [[nodiscard]] bool has_price_day() const { return has(ListColumn::Kind::price_day); }

    /// The request of a row; `usual_day` is its date where it gives none. The row has at most as many cells as there
    /// are columns. Throws InputError (request): a number that two readers might read differently.
    [[nodiscard]] base::Node tree(const plant::Plant& plant, const ListRow& row, base::Date usual_day) const;

    /// Nothing where the row gives none. Throws InputError (request).
    [[nodiscard]] std::optional<OldPrice> old_price(const ListRow& row) const;

    /// A row's text in the column of this name, for one that names its request: empty where there is none.
    [[nodiscard]] std::string text(const ListRow& row, const std::string& name) const;

private:
    [[nodiscard]] bool has(ListColumn::Kind kind) const;

    std::vector<ListColumn> columns_;
    ListNumbers numbers_ = ListNumbers::point_alone;
};

/// Whether an answer has a column of this name.
[[nodiscard]] bool is_answer_column(const std::string& name);

}  // namespace flutebook::lists
