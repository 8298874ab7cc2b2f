// The orders that were taken, a page at a time, the newest first.
#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

#include "host/orders/order_record.hpp"

namespace flutebook::answers {

struct OrderInList {
    orders::OrderRecord order;
    std::string who;
    std::chrono::sys_seconds when;
    bool is_made = false;  // something of it was posted
};

struct OrderList {
    std::size_t page = 1, pages = 1;
    std::size_t all = 0;  // how many there are
    std::vector<OrderInList> orders;
};

/// {"page", "pages", "all", "orders": [{"order", "quote", "quantity", "customer", "style", "board", "taken" (UTC),
/// "who", "made"}...]}
[[nodiscard]] std::string order_list_document(const OrderList& answer);

}  // namespace flutebook::answers
