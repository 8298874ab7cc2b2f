// What the address of a quote says: the enquiry, the quantity whose sheet is shown, and the figure that stands open. So
// a link is a draft.
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
    Address address;                           // of the answer, without what follows
    std::optional<double> quantity;            // nothing: the first that can be made
    std::string figure;                        // that is explained; empty: none
    bool has_origins = true;                   // whether this address can say what is behind a figure
    const plant::Plant* open_plant = nullptr;  // whose files the answer was made of, if they can be shown

    [[nodiscard]] Address at_quantity(double other) const;
    [[nodiscard]] Address at_figure(double at, const std::string& other) const;
};

/// `quantity` and `explain` of a query.
[[nodiscard]] AnswerView answer_view(Address address, const FormFields& query);

/// What the quote desk is asked for: by the field `line`, or by the fields of its form, which make a line.
[[nodiscard]] std::string asked_line(const FormFields& query);

/// The address of the quote desk with this line.
[[nodiscard]] Address desk_address(const std::string& line);

/// "starch@1000": what a quote is asked to explain. Nothing where nothing stands open.
[[nodiscard]] std::optional<std::string> asked_figure(const AnswerView& view, double quantity);

}  // namespace flutebook::pages
