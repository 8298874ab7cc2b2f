#include "host/month/placed_loss.hpp"

#include <map>
#include <tuple>

#include "host/production/accounts.hpp"

namespace flutebook::month {

namespace {

// Scrap that came from a machine, the floor or the product: not what a count found, nor what stood there before.
bool is_loss(const ledger::Share& share) {
    return share.to == production::account::loose_scrap && share.from != production::account::unexplained &&
           share.from != production::account::opening && share.from != production::account::costs;
}

}  // namespace

std::vector<PlacedLoss> placed_losses(const std::vector<ledger::Share>& shares,
                                      const std::vector<ledger::ExpectedShare>& expected) {
    std::map<std::tuple<std::string, std::string, std::string>, PlacedLoss> losses;
    for (const auto& share : shares)
        if (is_loss(share)) losses[{share.centre, share.of, share.cause}].actual += share.mass;
    for (const auto& item : expected) losses[{item.centre, item.of, item.cause}].expected += item.mass;
    std::vector<PlacedLoss> result;
    for (auto& [place, loss] : losses) {
        if (loss.actual == Grams() && loss.expected == Grams()) continue;
        std::tie(loss.centre, loss.part, loss.cause) = place;
        result.push_back(std::move(loss));
    }
    return result;
}

void TwoSides::add(Grams difference) {
    if (difference > Grams())
        over += difference;
    else
        under += -difference;
}

TwoSides excess_sides(const MonthAccount& account) {
    TwoSides sides;
    for (const auto& cause : account.causes) sides.add(cause.excess());
    return sides;
}

TwoSides unexplained_sides(const MonthAccount& account) {
    TwoSides sides;
    for (const auto& centre : account.centres) sides.add(centre.unexplained());
    sides.add(-account.floor.counted);
    return sides;
}

}  // namespace flutebook::month
