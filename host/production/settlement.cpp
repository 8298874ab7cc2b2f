#include "host/production/settlement.hpp"

namespace flutebook::production {

double paid_kg(const plant::Mill& mill, double kg, double moisture) {
    const double limit = mill.moisture_limit;
    if (moisture <= limit) return kg;
    if (mill.deduction == plant::Mill::Deduction::dry_matter) return kg * (1 - moisture) / (1 - limit);
    return kg * (1 - (moisture - limit));
}

}  // namespace flutebook::production
