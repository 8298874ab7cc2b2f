#include "host/services/orders/quoted_plant.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>

#include "host/base/errors.hpp"
#include "host/services/quoting/saved_quote.hpp"
#include "host/services/quoting/saved_workplace.hpp"

namespace flutebook::services {

namespace {

using Json = nlohmann::json;

constexpr int all_decimals = 4;

template <typename MachineAmount>
const MachineAmount* find(const std::vector<MachineAmount>& machines, const std::string& code) {
    const auto found = std::find_if(machines.begin(), machines.end(),
                                    [&](const MachineAmount& machine) { return machine.code == code; });
    return found == machines.end() ? nullptr : &*found;
}

void add_machine(plant::Plant& plant, const plant::Plant& today, const std::string& code) {
    if (find(plant.corrugators, code) != nullptr || find(plant.converters, code) != nullptr) return;
    if (const auto* corrugator = find(today.corrugators, code))
        plant.corrugators.push_back(*corrugator);
    else if (const auto* converter = find(today.converters, code))
        plant.converters.push_back(*converter);
    else
        throw InputError(InputError::Whose::plant,
                         {fmt::format("{}/machines.yaml: {} is missing: it made a part of the order, and neither the "
                                      "quote's files nor today's have it; put it back",
                                      today.folder, code)});
}

std::optional<double> cost_in(const Json& answer, double quantity) {
    for (const Json& quote : answer.at("requests").at(0).at("quotes"))
        if (quote.at("quantity") == quantity && quote.contains("cost")) return quote.at("cost").get<double>();
    return std::nullopt;
}

}  // namespace

QuotedPlant quoted_plant(const ledger::SavedQuote& quote, const plant::Plant& today,
                         const std::vector<std::string>& ran) {
    QuotedPlant result{saved_plant(quote, today.folder), {}};
    for (const auto& code : ran) add_machine(result.plant, today, code);
    result.request = saved_request(quote, result.plant);
    result.plant.pinned = today.pinned;
    return result;
}

Money saved_cost(const ledger::SavedQuote& quote, double quantity) {
    try {
        const auto cost = cost_in(Json::parse(part_of(quote, "answer.json")), quantity);
        if (const auto money = cost ? Money::rounded(*cost, all_decimals) : std::nullopt) return *money;
    } catch (const Json::exception&) {
        // Said below: a part that is no JSON and one that has no such cost are as bad.
    }
    throw LedgerError(
        LedgerError::Kind::unfit,
        fmt::format("quote {}: its part answer.json cannot be read; run `flutebook verify`", quote.number));
}

}  // namespace flutebook::services
