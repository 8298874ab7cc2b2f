#include "host/services/closing/backup.hpp"

#include "ledger/store/store.hpp"

namespace flutebook::services {

ledger::Proof backup(const std::string& file, const std::string& copy) {
    return ledger::backup(ledger::Store::open_for_reading(file), copy);
}

}  // namespace flutebook::services
