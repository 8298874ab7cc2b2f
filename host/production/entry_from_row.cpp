#include "host/production/entry_from_row.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "ledger/values/counted.hpp"

namespace flutebook::production {

RowResult entry_from_row(const DocumentRow& row, const plant::Plant& plant, Book& book) {
    RowValidation validation(row, plant, book);
    switch (row.kind) {
        case Kind::paper:
            return paper_issue(validation);
        case Kind::corrugator_run:
            return corrugator_run(validation);
        case Kind::converter_run:
            return converter_run(validation);
        case Kind::weighed_scrap:
            return weighed_scrap(validation);
        case Kind::bale:
            return bale(validation);
        case Kind::ticket:
            return ticket(validation);
        case Kind::centre_cost:
            return centre_cost(validation);
        case Kind::count:
            break;
    }
    return count(validation);
}

Grams to_grams(double kg) {
    assert(std::abs(kg) <= most_kg);
    // A hair up, so that half a gram in decimals is half a gram: 1.0005 kg is 1001 g.
    return Grams::of(rounded_half_away(kg * 1000 * (1 + 2e-15)));
}

std::vector<Grams> parts_of(Grams whole, const std::vector<double>& parts_kg) {
    std::vector<Grams> parts;
    Grams sum;
    for (const double kg : parts_kg) {
        parts.push_back(to_grams(kg));
        sum += parts.back();
    }
    if (const auto largest = std::max_element(parts.begin(), parts.end()); largest != parts.end())
        *largest += whole - sum;
    return parts;
}

void add(ledger::Draft& draft, const ledger::Movement& movement) {
    if (movement.mass != Grams() || movement.money != Money()) draft.movements.push_back(movement);
}

void add(ledger::Draft& draft, const ledger::Expected& expected) {
    if (expected.mass != Grams()) draft.expected.push_back(expected);
}

}  // namespace flutebook::production
