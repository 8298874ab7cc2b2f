#include "host/services/closing/verify.hpp"

#include "ledger/store/store.hpp"

namespace flutebook::services {

ledger::Proof verify(const std::string& file, const std::optional<std::string>& kept_head) {
    return ledger::verify(ledger::Store::open_for_reading(file), kept_head);
}

}  // namespace flutebook::services
