// The line and the form of an enquiry, two ways to write the same thing: each is a form of its own that asks by GET, so
// both work without scripts, and the address that they lead to is the draft.
#pragma once

#include <string>
#include <vector>

#include "host/contract/model.hpp"
#include "host/pages/frame.hpp"
#include "host/pages/markup.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::pages {

/// What the desk knows of an enquiry.
struct DeskEnquiry {
    std::string line;                     // as it was typed, or made of the form's fields
    std::string understood;               // in words; empty where it was not
    std::vector<std::string> complaints;  // why there is no answer
};

/// #line-form with #line, #understood and #complaints. `carried` are further fields, unseen.
[[nodiscard]] Html line_form(const plant::Plant& plant, const DeskEnquiry& enquiry, const Html& carried);

/// #fields: what the plant has, as lists, and what its models ask of a request.
[[nodiscard]] Html fields_form(const plant::Plant& plant, const std::vector<contract::Model>& models,
                               const std::string& line, const Html& carried);

}  // namespace flutebook::pages
