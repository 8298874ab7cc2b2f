#include "host/beside/asked_fields.hpp"

#include <fmt/format.h>

#include "host/base/errors.hpp"

namespace flutebook::beside {

namespace {

// A board a field, as a form sends a list, becomes one list.
std::string board_list(const std::vector<std::pair<std::string, std::string>>& fields, const Names& names) {
    std::string result;
    for (const auto& [name, value] : fields)
        if (name == names.board && !value.empty()) result += (result.empty() ? "" : ",") + value;
    return result;
}

}  // namespace

Asked asked_by_fields(const std::vector<std::pair<std::string, std::string>>& fields, const Names& names) {
    Asked asked;
    const std::vector<std::pair<const char*, cli::Reader>> readers = {
        {names.with, read_changes(asked.changes)},
        {names.margin, read_margins(asked.alternatives.margins)},
        {names.price, read_prices(asked.alternatives.prices)},
        {names.rank, read_rank(asked.rank)},
        {names.ect, read_strength(asked.strength.ect_kn_m)},
        {names.bct, read_strength(asked.strength.bct_kn)},
        {names.corrugator, cli::read_line(asked.way.corrugator)},
        {names.roll, read_roll(asked.way.roll_width_mm)},
        {names.ups, read_ups(asked.way.ups)}};
    std::vector<std::string> faults;
    const auto take = [&](const char* name, const std::string& value, const cli::Reader& read) {
        if (value.empty()) return;
        if (const std::string fault = read(value); !fault.empty()) faults.push_back(fmt::format("{}: {}", name, fault));
    };
    for (const auto& field : fields)
        for (const auto& reader : readers)
            if (field.first == reader.first) take(reader.first, field.second, reader.second);
    take(names.board, board_list(fields, names), read_boards(asked.alternatives.boards));
    if (std::string wrong = wrong_together(asked, names); faults.empty() && !wrong.empty())
        faults.push_back(std::move(wrong));
    if (!faults.empty()) throw InputError(InputError::Whose::request, faults);
    return asked;
}

}  // namespace flutebook::beside
