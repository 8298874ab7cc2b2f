// The production documents: which columns each has, and what may stand in them.
//
// A document is known by its header row alone. Two kinds come in a longer and a shorter form.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace flutebook::production {

/// Bytes of a name in a field: a ref, an order, a machine.
inline constexpr std::size_t longest_name = 80;

enum class Kind { paper, corrugator_run, converter_run, weighed_scrap, bale, ticket, centre_cost, count };

/// As it stands in the ledger: "paper", "corrugator-run", ...
[[nodiscard]] const char* name_of(Kind kind);

enum class DocumentColumn {
    ref,
    date,
    shift,
    corrugator,
    paper,
    kg,
    order,
    roll_width,
    outs,
    metres,
    order_change_metres,
    good_sheets,
    converter,
    fed,
    setup_sheets,
    rejected,
    good_boxes,
    centre,
    cause,
    grade,
    mill,
    sent,
    moisture,
    per_tonne,
    cost_class,
    amount,
    account,
    of,
    web,
    note,
};
inline constexpr std::size_t column_count = static_cast<std::size_t>(DocumentColumn::note) + 1;

/// As the header row has it.
[[nodiscard]] const char* name_of(DocumentColumn column);

/// How a field is read: a word of the plant, a line of text, a day, or a number.
enum class Reading { name, line, day, whole, decimal };

/// What a field of a column may hold.
struct ColumnRule {
    enum class Need { always, at_times };
    DocumentColumn column;
    Reading reading;
    double low, high;  // of numbers, both ends included
    Need need;
};

struct DocumentFormat {
    Kind kind;
    std::vector<ColumnRule> columns;  // `note` last, which a header may leave out
};

/// The form with this header row, or why there is none. Lives as long as the program.
[[nodiscard]] std::variant<const DocumentFormat*, std::string> find_form(const std::vector<std::string_view>& header);

/// The form of a kind with the most columns. Lives as long as the program.
[[nodiscard]] const DocumentFormat& widest_form(Kind kind);

}  // namespace flutebook::production
