// A row that is refused keeps its place and stops no other.
#include "host/lists/row_answer.hpp"

#include <fmt/format.h>

#include <utility>

#include "host/base/errors.hpp"

namespace flutebook::lists {

namespace {

// A row with what it asks for. The requests stay where they are once all rows were read.
struct ReadRow {
    AnsweredRow* row;
    std::optional<orders::Request> now, then;
};

// Empty cells behind the last column are no cells.
void check_shape(ListRow& row, std::size_t columns) {
    if (row.fault) throw InputError(InputError::Whose::request, {*row.fault});
    while (row.cells.size() > columns && row.cells.back().text.empty()) row.cells.pop_back();
    if (row.cells.size() > columns)
        throw InputError(InputError::Whose::request,
                         {fmt::format("{}: more cells than columns: found {}, expected at most {}, as in the header",
                                      base::place_text(row.place), row.cells.size(), columns)});
}

// Nothing on a day on which it could not have been asked for: the reason stays untold, not the price.
std::optional<orders::Request> request_then(const workplace::Workplace& workplace, const base::Node& tree,
                                            AnsweredRow& row) {
    if (!row.old || !row.old->day) return std::nullopt;
    try {
        return orders::read_request(workplace.plant, tree, row.row.place.file, "", row.old->day);
    } catch (const InputError& error) {
        for (const std::string& line : error.lines())
            row.item.warnings.push_back({base::place_text(row.row.place), "no reason for the difference: " + line});
        return std::nullopt;
    }
}

ReadRow read_row(const workplace::Workplace& workplace, const ListColumns& columns, const ListOptions& options,
                 AnsweredRow& row) {
    ReadRow result{&row, std::nullopt, std::nullopt};
    const auto refuse = [&](const InputError& error) {
        row.item.state = CostedItem::State::refused;
        row.item.errors.insert(row.item.errors.end(), error.lines().begin(), error.lines().end());
    };
    try {
        check_shape(row.row, columns.columns().size());
        const base::Node tree = columns.tree(workplace.plant, row.row, options.usual_day);
        try {
            row.old = columns.old_price(row.row);
        } catch (const InputError& error) {
            refuse(error);  // and the request is read all the same: what is wrong with it is told as well
        }
        result.now = orders::read_request(workplace.plant, tree, row.row.place.file, "", options.date,
                                          workplace.engine.extras_check(workplace.plant));
        result.then = request_then(workplace, tree, row);
    } catch (const InputError& error) {
        refuse(error);
    }
    if (row.item.state == CostedItem::State::refused) result.now.reset();
    return result;
}

void keep_now(AnsweredRow& row, CostedItem item) {
    item.warnings.insert(item.warnings.end(), row.item.warnings.begin(), row.item.warnings.end());
    row.item = std::move(item);
}

void keep_then(AnsweredRow& row, const CostedItem& item) {
    if (item.price) row.then = *item.price;
    for (const std::string& line : item.errors)
        row.item.warnings.push_back({base::place_text(row.row.place), "no reason for the difference: " + line});
}

}  // namespace

void answer_rows(const workplace::Workplace& workplace, const ListColumns& columns, const ListOptions& options,
                 std::span<AnsweredRow> rows) {
    std::vector<ReadRow> read;
    read.reserve(rows.size());
    for (AnsweredRow& row : rows) read.push_back(read_row(workplace, columns, options, row));
    std::vector<const orders::Request*> requests;
    for (const ReadRow& row : read) {
        if (row.now) requests.push_back(&*row.now);
        if (row.now && row.then) requests.push_back(&*row.then);
    }
    std::vector<CostedItem> items = cost_items(workplace, requests);
    auto next = items.begin();
    for (const ReadRow& row : read) {
        if (!row.now) continue;
        keep_now(*row.row, std::move(*next++));
        if (row.then) keep_then(*row.row, *next++);
    }
}

}  // namespace flutebook::lists
