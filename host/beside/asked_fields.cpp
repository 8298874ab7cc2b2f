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

Asked asked_by_fields(const std::vector<std::pair<std::string, std::string>>& fields, const Names& names,
                      const Names& said) {
    struct FieldReader {
        const char *name, *said;
        cli::Reader read;
    };
    Asked asked;
    const std::vector<FieldReader> readers = {{names.with, said.with, read_changes(asked.changes)},
                                              {names.margin, said.margin, read_margins(asked.alternatives.margins)},
                                              {names.price, said.price, read_prices(asked.alternatives.prices)},
                                              {names.rank, said.rank, read_rank(asked.rank)},
                                              {names.ect, said.ect, read_strength(asked.strength.ect_kn_m)},
                                              {names.bct, said.bct, read_strength(asked.strength.bct_kn)},
                                              {names.corrugator, said.corrugator, cli::read_line(asked.way.corrugator)},
                                              {names.roll, said.roll, read_roll(asked.way.roll_width_mm)},
                                              {names.ups, said.ups, read_ups(asked.way.ups)}};
    std::vector<std::string> faults;
    const auto take = [&](const char* name, const std::string& value, const cli::Reader& read) {
        if (value.empty()) return;
        if (const std::string fault = read(value); !fault.empty()) faults.push_back(fmt::format("{}: {}", name, fault));
    };
    for (const auto& field : fields)
        for (const FieldReader& reader : readers)
            if (field.first == reader.name) take(reader.said, field.second, reader.read);
    take(said.board, board_list(fields, names), read_boards(asked.alternatives.boards));
    if (std::string wrong = wrong_together(asked, said); faults.empty() && !wrong.empty())
        faults.push_back(std::move(wrong));
    if (!faults.empty()) throw InputError(InputError::Whose::request, faults);
    return asked;
}

}  // namespace flutebook::beside
