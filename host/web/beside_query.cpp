#include "host/web/beside_query.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"
#include "host/web/query_values.hpp"

namespace flutebook::web {

namespace {

// A form sends a list as one field an item.
Fields with_boards_as_one(const Fields& query) {
    std::vector<Fields::Field> result;
    std::string boards;
    for (const Fields::Field& field : query.all())
        if (field.first != beside_names.board)
            result.push_back(field);
        else if (!field.second.empty())
            boards += (boards.empty() ? "" : ",") + field.second;
    result.emplace_back(beside_names.board, boards);
    return Fields(std::move(result));
}

}  // namespace

beside::Asked asked_beside(const Fields& query) {
    beside::Asked asked;
    std::vector<std::string> faults;
    const auto change = beside::read_changes(asked.changes);
    for (const auto& [name, value] : query.all()) {
        if (name != beside_names.with || value.empty()) continue;
        if (const std::string fault = change(value); !fault.empty())
            faults.push_back(fmt::format("{}: {}", beside_names.with, fault));
    }
    const Fields fields = with_boards_as_one(query);
    QueryValues values(fields, std::move(faults));
    values.take(beside_names.board, beside::read_boards(asked.alternatives.boards));
    values.take(beside_names.margin, beside::read_margins(asked.alternatives.margins));
    values.take(beside_names.price, beside::read_prices(asked.alternatives.prices));
    values.take(beside_names.rank, beside::read_rank(asked.rank));
    values.take(beside_names.ect, beside::read_strength(asked.strength.ect_kn_m));
    values.take(beside_names.bct, beside::read_strength(asked.strength.bct_kn));
    values.take(beside_names.corrugator, cli::read_line(asked.way.corrugator));
    values.take(beside_names.roll, beside::read_roll(asked.way.roll_width_mm));
    values.take(beside_names.ups, beside::read_ups(asked.way.ups));
    values.throw_if_any_is_wrong();
    if (std::string wrong = beside::wrong_together(asked, beside_names); !wrong.empty())
        throw InputError(InputError::Whose::request, {std::move(wrong)});
    return asked;
}

}  // namespace flutebook::web
