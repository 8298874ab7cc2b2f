// The form for comparisons, and their result. #what-if and #beside.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "host/pages/desk_state.hpp"
#include "host/pages/markup.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::pages {

struct BesideView {
    FormFields asked;                           // beside_fields() of the address
    std::vector<std::string> complaints = {};   // why it has no answer
    std::optional<render::Report> report = {};  // the answer; its heading is the enquiry's and not shown
};

/// Which enquiry it stands beside.
struct BesideWhat {
    const plant::Plant& plant;
    const std::string& line;
    double quantity;  // that is shown
};

/// Asks by GET, so that a link is a draft here as well; empty fields ask nothing.
[[nodiscard]] Html what_if_form(const BesideWhat& what, const BesideView& beside);

/// The answer, or why there is none, in its place. Nothing that is seen where nothing was asked.
[[nodiscard]] Html beside_part(const BesideWhat& what, const BesideView& beside);

/// Carries what is asked through a form that changes the enquiry; a rank is asked again where it is wanted.
[[nodiscard]] Html carried_fields(const FormFields& asked);

}  // namespace flutebook::pages
