// The state in the address of a quote: the enquiry, the quantity whose sheet is shown, and the figure that is traced.
// So a link is a draft.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "host/orders/enquiry_fields.hpp"
#include "host/pages/address.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// Of a query or a posted form, decoded, in turn.
using FormFields = std::vector<std::pair<std::string, std::string>>;

/// The value of the first field of this name; empty where there is none.
[[nodiscard]] std::string field_value(const FormFields& fields, std::string_view name);

/// Which part of an answer is shown.
struct AnswerView {
    /// Where what is behind a figure is told: below it, or on a page of its own behind /lines.
    enum class Origins { below, apart };
    Address address;                 // of the answer, without what follows
    std::optional<double> quantity;  // nothing: the first that can be made
    std::string figure;              // that is explained; empty: none
    Origins origins = Origins::below;
    const plant::Plant* open_plant = nullptr;  // whose files can be shown; null: none

    [[nodiscard]] Address at_quantity(double other) const;
    [[nodiscard]] Address at_figure(double at, const std::string& other) const;
};

/// `quantity` and `explain` of a query.
[[nodiscard]] AnswerView answer_view(Address address, const FormFields& query);

/// What the quote desk is asked for: by the field `line`, or by the fields of its form, which make a line.
[[nodiscard]] std::string asked_line(const FormFields& query);

/// The fields of an address that ask for something beside its enquiry. Lists have other names than the enquiry's form
/// has for one board, one margin.
namespace beside_query {
inline constexpr const char *with = "with", *boards = "boards", *margins = "margins", *prices = "prices",
                            *rank = "rank", *ect = "ect", *bct = "bct", *corrugator = "corrugator", *roll = "roll",
                            *ups = "ups";
}  // namespace beside_query

/// Those of a query that are filled, in turn.
[[nodiscard]] FormFields beside_fields(const FormFields& query);

/// Those that say how it is made left out.
[[nodiscard]] FormFields without_way(const FormFields& beside);

/// The address of the quote desk with this line, and with what is asked beside it.
[[nodiscard]] Address desk_address(const std::string& line, const FormFields& beside = {});

/// "starch@1000": what a quote is asked to explain. Nothing where nothing stands open.
[[nodiscard]] std::optional<std::string> asked_figure(const AnswerView& view, double quantity);

}  // namespace flutebook::pages
