#include "host/orders/order_record.hpp"

#include <algorithm>

namespace flutebook::orders {

namespace {

template <typename Allowance>
const Allowance* find(const std::vector<Allowance>& allowances, const std::string& code) {
    const auto found = std::find_if(allowances.begin(), allowances.end(),
                                    [&](const Allowance& allowance) { return allowance.code == code; });
    return found == allowances.end() ? nullptr : &*found;
}

}  // namespace

const CorrugatorAllowance* OrderRecord::find_corrugator(const std::string& code) const {
    return find(corrugators, code);
}

const ConverterAllowance* OrderRecord::find_converter(const std::string& code) const {
    return find(converters, code);
}

std::string OrderRecord::set_number() const {
    return number.substr(0, number.size() - std::min(number.size(), piece.size() + 1));
}

std::optional<std::size_t> OrderRecord::step_of(const std::string& converter) const {
    const auto step = [&](auto fits) -> std::optional<std::size_t> {
        const auto found = std::find_if(route.begin(), route.end(), fits);
        if (found == route.end()) return std::nullopt;
        return static_cast<std::size_t>(found - route.begin()) + 1;
    };
    if (const auto named = step([&](const std::string& code) { return code == converter; })) return named;
    const auto* item = find_converter(converter);
    if (item == nullptr) return std::nullopt;
    return step([&](const std::string& code) {
        const auto* there = find_converter(code);
        return there != nullptr && there->kind == item->kind;
    });
}

}  // namespace flutebook::orders
