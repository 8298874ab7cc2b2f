#include "host/month/process_cost.hpp"

namespace flutebook::month {

std::optional<ProcessCost> process_cost(const MonthAccount& account, double scrap_price) {
    const Grams used = account.issued + account.adhesive + account.opening_stock() - account.closing_stock();
    const Money spent = account.money_in + account.opening_cost - account.closing_cost;
    const Grams due = used - account.expected();
    if (due <= Grams()) return std::nullopt;
    ProcessCost cost{};
    cost.normal = account.expected();
    cost.abnormal = due - account.product;
    cost.normal_value = cost.normal.to_kg() * scrap_price;
    cost.cost_per_kg = (spent.to_double() - cost.normal_value) / due.to_kg();
    cost.product_value = account.product.to_kg() * cost.cost_per_kg;
    cost.abnormal_value = cost.abnormal.to_kg() * cost.cost_per_kg;
    cost.abnormal_proceeds = cost.abnormal.to_kg() * scrap_price;
    return cost;
}

double scrap_price(const MonthAccount& account) {
    return account.paid > Grams() ? account.revenue.to_double() / account.paid.to_kg() : 0;
}

}  // namespace flutebook::month
