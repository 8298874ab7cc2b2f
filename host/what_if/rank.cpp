#include "host/what_if/rank.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <exception>
#include <thread>
#include <utility>
#include <variant>
#include <vector>

#include "host/answers/line_changes.hpp"
#include "host/base/errors.hpp"
#include "host/quoting/quote.hpp"
#include "host/what_if/counts.hpp"
#include "host/what_if/touched_paths.hpp"
#include "host/what_if/variant.hpp"

namespace flutebook::what_if {

namespace {

using answers::RequestAnswer;
using scenario::MovedNumber;
using scenario::NumberTrees;
using what_if_answers::RankedNumber;
using what_if_answers::StuckNumber;
using Tenth = RankedNumber::Tenth;

// What one number comes to; nothing where the path names no number.
using Trial = std::variant<std::monostate, RankedNumber, StuckNumber>;

// Moves the number; nothing where the path names none.
std::optional<MovedNumber> move(NumberTrees& trees, const std::vector<contract::Model>& models, const std::string& path,
                                Tenth tenth) {
    scenario::NumberChange change;
    change.path = path;
    change.percent = tenth == Tenth::more ? 10 : -10;
    change.asked = fmt::format("{}={:+}%", path, *change.percent);
    std::vector<MovedNumber> moved;
    try {
        moved = NumberTrees(trees).change(change);
    } catch (const InputError&) {
        return std::nullopt;
    }
    const auto number = scenario::written_number(moved.front().was);
    if (moved.size() == 1 && number && number->unit.empty() && is_count(models, moved.front().path, number->value)) {
        const double by = std::max(1.0, std::round(std::abs(number->value) / 10));
        change.value = fmt::format("{}", number->value + (tenth == Tenth::more ? by : -by));
        change.percent.reset();
        change.asked = fmt::format("{}={}", path, change.value);
    }
    moved = trees.change(change);
    if (moved.size() == 1) return moved.front();
    return MovedNumber{path, fmt::format("{} numbers", moved.size()), fmt::format("{:+}%", *change.percent)};
}

// One request at one of its quantities, and what it is moved from.
class RankedQuantity {
public:
    RankedQuantity(const workplace::Workplace& workplace, const orders::Request& request, const NumberTrees& trees,
                   std::size_t index, const answers::QuoteOptions& asked)
        : workplace_(workplace), request_(request), trees_(trees), index_(index), asked_(asked) {
        asked_.threads = 1;
        asked_.has_touched = false;
    }

    [[nodiscard]] Trial trial(const std::string& path, Money price) const {
        std::optional<StuckNumber> stuck;
        for (const Tenth tenth : {Tenth::more, Tenth::less}) {
            NumberTrees trees = trees_;
            const auto moved = move(trees, workplace_.engine.graph().models, path, tenth);
            if (!moved) return std::monostate();
            const std::variant<Money, std::string> after = price_with(trees);
            if (const Money* moved_price = std::get_if<Money>(&after))
                return RankedNumber{moved->path, moved->was, moved->now, tenth, *moved_price, *moved_price - price};
            if (!stuck) stuck = StuckNumber{moved->path, std::get<std::string>(after)};
        }
        return *stuck;
    }

private:
    // The price, or why there is none: the one place where the errors of a moved number are caught.
    [[nodiscard]] std::variant<Money, std::string> price_with(const NumberTrees& trees) const {
        try {
            Variant moved = variant_of(workplace_, request_, trees);
            moved.request.quantities = {moved.request.quantities[index_]};
            const RequestAnswer answer =
                quoting::quote(moved.workplace.plant, moved.workplace.engine, moved.request, asked_);
            if (answer.model_fault) return *answer.model_fault;
            if (const auto total = answers::total_of(answer.quantities.front())) return total->price_per_thousand;
            return "it cannot be made then";
        } catch (const InputError& error) {
            return error.lines().front();
        } catch (const ModelError& error) {
            return error.lines().front();
        }
    }

    const workplace::Workplace& workplace_;
    const orders::Request& request_;
    const NumberTrees& trees_;
    std::size_t index_;
    answers::QuoteOptions asked_;
};

// In the order of the paths, whichever thread tries which.
std::vector<Trial> try_all(const RankedQuantity& quantity, const std::vector<std::string>& paths, Money price,
                           unsigned threads) {
    std::vector<Trial> result(paths.size());
    std::atomic<std::size_t> next = 0;
    std::vector<std::exception_ptr> failures(std::max(threads, 1U));
    const auto work = [&](std::size_t thread) {
        try {
            for (std::size_t i = next++; i < paths.size(); i = next++) result[i] = quantity.trial(paths[i], price);
        } catch (...) {
            failures[thread] = std::current_exception();
        }
    };
    {
        std::vector<std::jthread> running;
        for (std::size_t t = 1; t < failures.size(); ++t) running.emplace_back(work, t);
        work(0);
    }
    for (const std::exception_ptr& failure : failures)
        if (failure) std::rethrow_exception(failure);
    return result;
}

void sort_in(what_if_answers::QuantityRank& result, std::vector<Trial> trials) {
    for (Trial& trial : trials) {
        if (auto* stuck = std::get_if<StuckNumber>(&trial)) result.stuck.push_back(std::move(*stuck));
        auto* number = std::get_if<RankedNumber>(&trial);
        if (number == nullptr) continue;
        if (number->change == Money())
            result.unmoved.push_back(number->path);
        else
            result.moved.push_back(std::move(*number));
    }
    const auto size = [](const RankedNumber& number) { return std::abs(number.change.ten_thousandths()); };
    std::stable_sort(result.moved.begin(), result.moved.end(),
                     [&](const RankedNumber& left, const RankedNumber& right) { return size(left) > size(right); });
}

std::vector<std::size_t> asked_indices(const orders::Request& request, const std::optional<double>& quantity) {
    std::vector<std::size_t> result;
    for (std::size_t i = 0; i < request.quantities.size(); ++i)
        if (!quantity || request.quantities[i] == *quantity) result.push_back(i);
    if (!result.empty()) return result;
    throw InputError(
        InputError::Whose::request,
        {fmt::format("{}: request {} asks for no such quantity: found --rank {:.0f}, expected one of {}",
                     request.place.file.text(), request.number, *quantity, fmt::join(request.quantities, ", "))});
}

}  // namespace

what_if_answers::Rank rank(const workplace::Workplace& workplace, const orders::Request& request,
                           const std::vector<scenario::NumberChange>& changes, const std::optional<double>& quantity,
                           const answers::QuoteOptions& asked) {
    NumberTrees trees = trees_of(workplace, request);
    std::vector<what_if_answers::ChangedNumber> changed = change_all(trees, changes);
    // Read from the same trees, so that places lead to their paths.
    const Variant base = variant_of(workplace, request, trees);
    what_if_answers::Rank result{base.request, {}, std::move(changed)};
    const std::vector<std::size_t> indices = asked_indices(base.request, quantity);
    answers::QuoteOptions traced = asked;
    traced.has_touched = true;
    const RequestAnswer answer = quoting::quote(base.workplace.plant, base.workplace.engine, base.request, traced);
    if (answer.model_fault) throw ModelError(*answer.model_fault);
    result.pieces = answer.pieces.size();
    if (!changes.empty()) {
        add_new_warnings(result.warnings, base.workplace.warnings, workplace.warnings);
        const RequestAnswer was = quoting::quote(workplace.plant, workplace.engine, request, asked);
        add_new_warnings(result.warnings, answer.warnings, was.warnings);
    }
    for (const std::size_t index : indices) {
        what_if_answers::QuantityRank& item = result.quantities.emplace_back();
        item.quantity = base.request.quantities[index];
        const auto total = answers::total_of(answer.quantities[index]);
        if (!total) continue;
        item.price = total->price_per_thousand;
        const RankedQuantity ranked(workplace, request, trees, index, asked);
        sort_in(item, try_all(ranked, touched_paths(base, trees, answer, index), *item.price, asked.threads));
    }
    return result;
}

}  // namespace flutebook::what_if
