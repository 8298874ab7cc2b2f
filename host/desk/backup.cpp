#include "host/desk/backup.hpp"

#include "ledger/store.hpp"

namespace flutebook::desk {

ledger::Proof backup(const std::string& file, const std::string& copy) {
    return ledger::backup(ledger::Store::open_for_reading(file), copy);
}

}  // namespace flutebook::desk
