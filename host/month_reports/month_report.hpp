// A month's account: masses in kg to the gram, so that every sum adds up as it is shown. Its page and the files that
// other programs open come from here.
#pragma once

#include "host/month_answers/month_answer.hpp"
#include "host/plant/plant.hpp"
#include "host/render/report.hpp"

namespace flutebook::month_reports {

/// Both sides of the mass balance; what each machine and the floor held, took in, passed on and lost; each cause of
/// loss; both sides of the money; scrap from the machine to the mill; the month divided, where it was asked for; the
/// twelve months.
[[nodiscard]] render::Report month_report(const plant::Plant& plant, const answers::MonthAnswer& answer);

/// A mass to the gram.
[[nodiscard]] render::Number kg(Grams mass);
/// Nothing where there is no whole.
[[nodiscard]] render::Cell share(Grams part, Grams whole);

}  // namespace flutebook::month_reports
