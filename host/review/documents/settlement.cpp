#include "host/review/documents/settlement.hpp"

namespace flutebook::review {

double paid_kg(const catalogue::Mill& mill, double kg, double moisture) {
    const double limit = mill.moisture_limit;
    if (moisture <= limit) return kg;
    if (mill.deduction == catalogue::Mill::Deduction::dry_matter) return kg * (1 - moisture) / (1 - limit);
    return kg * (1 - (moisture - limit));
}

}  // namespace flutebook::review
