// Measures how long saved quotes are looked for among a hundred thousand: each kind of search, those that find nothing,
// and those whose conditions each hold of very many and together of none. Prints times beside one look at every quote's
// attributes, taken in the same run, never a verdict on a time.
//
//   finding_bench [SHARE] [FILE]     SHARE of the full size, 0.01 for a quick look; FILE: keeps the ledger there
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <random>
#include <string>
#include <vector>

#include "ledger/reading/quote_search.hpp"
#include "ledger/store/store.hpp"

using namespace flutebook;
using namespace flutebook::ledger;

namespace {

constexpr int runs = 5;

double milliseconds(const auto& work) {
    const auto begun = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begun).count();
}

double usual_milliseconds(const auto& work) {
    std::vector<double> times;
    for (int run = 0; run < runs; ++run) times.push_back(milliseconds(work));
    std::nth_element(times.begin(), times.begin() + runs / 2, times.end());
    return times[runs / 2];
}

// As a plant's quotes might be: many for few customers, sizes on a grid of 5 mm, one currency.
QuoteDraft drawn_quote(std::mt19937_64& random, std::size_t number) {
    const auto length = [&](std::int64_t low, std::int64_t steps) {
        return (low + 5 * static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(steps))) * 1000;
    };
    const auto customer = std::min(random() % 2000, random() % 2000);
    QuoteDraft draft{fmt::format("R-{}", number - random() % 2), {{"answer.json", fmt::format("{}", number)}}};
    draft.attributes = {{"customer", fmt::format("Customer {:04}", customer)},
                        {"style", random() % 2 == 0 ? std::string("0201") : fmt::format("02{:02}", random() % 30)},
                        {"board", fmt::format("B-{}", 100 + random() % 25)},
                        {"length", length(150, 120)},
                        {"width", length(100, 90)},
                        {"height", length(50, 90)},
                        {"quantities", "500 1000 5000"},
                        {"price_first", static_cast<std::int64_t>(3'000'000 + random() % 9'000'000)},
                        {"price_last", static_cast<std::int64_t>(2'000'000 + random() % 3'000'000)},
                        {"currency", "EUR"},
                        {"decimals", std::int64_t{2}}};
    return draft;
}

void fill(Store& store, std::size_t quotes) {
    std::mt19937_64 random(5);
    constexpr std::size_t in_one_act = 1000;
    for (std::size_t done = 0; done < quotes; done += in_one_act) {
        std::vector<QuoteDraft> drafts;
        std::vector<RecordOfQuote> marks;
        for (std::size_t i = done; i < std::min(done + in_one_act, quotes); ++i) {
            drafts.push_back(drawn_quote(random, i + 1));
            if (i % 5 != 0) continue;
            marks.push_back({quote_number(static_cast<std::int64_t>(i + 1)),
                             {"mark", {{"state", i % 10 == 0 ? "won" : "lost"}, {"why", "as they said"}}}});
        }
        static_cast<void>(save_quotes(store, drafts, "bench"));
        add_records(store, marks, "bench");
    }
}

struct NamedSearch {
    const char* name;
    std::vector<QuoteCondition> conditions;
};

std::vector<NamedSearch> searches() {
    using IfUnsaid = NewestIs::IfUnsaid;
    const auto near = [](const char* name, std::int64_t mm) { return AttributeWithin{name, mm * 950, mm * 1050}; };
    const AttributeWithin any_length{"length", 0, 10'000'000}, any_width{"width", 0, 10'000'000},
        any_height{"height", 0, 10'000'000};
    const NewestIs open{"state", "open", IfUnsaid::matches}, won{"state", "won", IfUnsaid::differs};
    return {{"the newest", {}},
            {"a request", {RequestIs{"R-77"}}},
            {"a customer's name", {AttributeHolds{"customer", "customer 0042"}}},
            {"a part of no name", {AttributeHolds{"customer", "nobody"}}},
            {"a board and a style", {AttributeIs{"board", "B-107"}, AttributeIs{"style", "0211"}}},
            {"a size within 5 %", {near("length", 400), near("width", 300), near("height", 250)}},
            {"a size of none", {near("length", 400), near("width", 300), AttributeWithin{"height", 1, 2}}},
            {"won", {won}},
            {"open", {open}},
            {"lost, of a board", {NewestIs{"state", "lost", IfUnsaid::differs}, AttributeIs{"board", "B-107"}}},
            {"a day of none", {SavedBetween{std::nullopt, Date(std::chrono::year(2001) / 1 / 1)}}},
            {"all that hold of nearly all, and a style of none",
             {AttributeHolds{"customer", "customer"}, AttributeIs{"currency", "EUR"}, any_length, any_width, any_height,
              open, SavedBetween{Date(std::chrono::year(2001) / 1 / 1), std::nullopt}, AttributeIs{"style", "9999"}}}};
}

void measure(const Store& store, std::size_t quotes) {
    const double by_hand = milliseconds([&] {
        for (std::size_t i = 1; i <= quotes; ++i)
            static_cast<void>(records_of(store, quote_number(static_cast<std::int64_t>(i))));
    });
    fmt::print("a look at each of {} quotes: {:.0f} ms\n", quotes, by_hand);
    fmt::print("no quote waits to be recorded: {:.1f} ms\n",
               usual_milliseconds([&] { static_cast<void>(quotes_without(store, found_by_kind)); }));
    for (const auto& [name, conditions] : searches()) {
        std::size_t found = 0;
        const double took = usual_milliseconds([&, &wanted = conditions] {
            found = find_quotes(store, {wanted, std::nullopt, 20}).quotes.size();
        });
        fmt::print("{:50} {:3} found, {:6.1f} ms, 1/{:.0f} of the look at each\n", name, found, took, by_hand / took);
    }
}

}  // namespace

int main(int count, char** words) {
    const double share = count > 1 ? std::atof(words[1]) : 1;
    const auto quotes = std::max<std::size_t>(static_cast<std::size_t>(100'000 * share), 100);
    auto folder = (std::filesystem::temp_directory_path() / "flutebook-bench-XXXXXX").string();
    if (mkdtemp(folder.data()) == nullptr) return 1;
    const std::string file = count > 2 ? words[2] : folder + "/ledger.db";
    {
        auto store = Store::open_for_writing(file, IfMissing::create);
        const double took = milliseconds([&] { fill(store, quotes); });
        fmt::print("saved {} quotes in {:.1f} s; the ledger has {:.0f} MB\n", quotes, took / 1000,
                   static_cast<double>(std::filesystem::file_size(file)) / 1e6);
    }
    measure(Store::open_for_reading(file), quotes);
    std::filesystem::remove_all(folder);
    return 0;
}
