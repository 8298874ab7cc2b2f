#include "host/month_answers/order_list.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"
#include "host/base/date.hpp"

namespace flutebook::answers {

std::string order_list_document(const OrderList& answer) {
    Json tree;
    tree["page"] = answer.page;
    tree["pages"] = answer.pages;
    tree["all"] = answer.all;
    tree["orders"] = Json::array();
    for (const OrderInList& item : answer.orders)
        tree["orders"].push_back({{"order", item.order.number},
                                  {"quote", item.order.quote},
                                  {"quantity", item.order.quantity},
                                  {"customer", item.order.customer},
                                  {"style", item.order.style},
                                  {"board", item.order.board},
                                  {"taken", base::utc_time(item.when)},
                                  {"who", item.who},
                                  {"made", item.is_made}});
    return document_text("orders", tree);
}

}  // namespace flutebook::answers
