#include "host/production/kinds.hpp"

namespace flutebook::production {

void add(ledger::Draft& draft, const ledger::Movement& movement) {
    if (movement.mass != Grams() || movement.money != Money()) draft.movements.push_back(movement);
}

void add(ledger::Draft& draft, const ledger::Expected& expected) {
    if (expected.mass != Grams()) draft.expected.push_back(expected);
}

}  // namespace flutebook::production
