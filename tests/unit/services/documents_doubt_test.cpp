// Rows that can be posted and are likely a slip: each is told with its row, or refused where the caller is strict.
#include <catch2/catch.hpp>

#include "host/base/errors.hpp"
#include "host/services/posting/post.hpp"
#include "host/services/posting/reverse.hpp"
#include "ledger/store/store.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

using Doubtful = answers::PostOptions::Doubtful;

// A ledger whose clock says 2026-11-27.
class Clerk {
public:
    std::vector<std::string> post(const std::string& text, Doubtful doubtful = Doubtful::warn) {
        const TextFile file(text);
        answers::PostOptions options{{file.path()}, "ada", answers::PostOptions::Keep::all};
        options.today = std::chrono::year(2026) / 11 / 27;
        options.doubtful = doubtful;
        try {
            return without(file.path(), services::post(plant_, store_, options).warnings);
        } catch (const InputError& error) {
            return without(file.path(), error.lines());
        }
    }
    ledger::Store& store() { return store_; }

private:
    static std::vector<std::string> without(const std::string& file, std::vector<std::string> lines) {
        for (auto& line : lines)
            if (line.rfind(file, 0) == 0) line.erase(0, file.size() + 1);
        return lines;
    }
    plant::Plant plant_ = paper_plant();
    ledger::Store store_ = ledger::Store::in_memory();
};

using Lines = std::vector<std::string>;

std::string bales(const std::vector<int>& masses) {
    std::string text = bale_header + "\n";
    int number = 0;
    for (const int kg : masses) {
        ++number;
        text += "B" + std::to_string(number) + ",2026-10-" + std::to_string(10 + number) + ",early,4.01.00," +
                std::to_string(kg) + "\n";
    }
    return text;
}

}  // namespace

TEST_CASE("a day after today is told with its row, and refused where the caller is strict") {
    Clerk clerk;
    const auto row = scrap_header + "\nS1,2072-12-01,early,C1,roll-ends,12\n";
    const Lines told = {"2: date: found 2072-12-01, a day after today (2026-11-27); is it meant?"};
    CHECK(clerk.post(row, Doubtful::refuse) == told);
    CHECK(clerk.post(row) == told);
    CHECK(clerk.post(row).empty());  // posted before
}

TEST_CASE("a row of another year than the rows around it is told, the turn of a year is not") {
    Clerk clerk;
    CHECK(clerk.post(scrap_header + "\nS1,2026-10-01,early,C1,roll-ends,11\nS2,2025-10-02,early,C1,roll-ends,12\n"
                                    "S3,2026-10-03,early,C1,roll-ends,13\nS4,2026-10-03,early,C1,roll-ends,14\n") ==
          Lines{"3: date: found 2025-10-02, another year than the rows around it; is it meant?"});
    CHECK(clerk
              .post(scrap_header + "\nT1,2016-10-01,early,C1,roll-ends,21\nT2,2026-10-02,early,C1,roll-ends,22\n"
                                   "T3,2026-10-03,early,C1,roll-ends,23\nT4,2006-10-03,early,C1,roll-ends,24\n")
              .size() == 2);
    CHECK(clerk
              .post(scrap_header + "\nU1,2025-12-30,early,C1,roll-ends,31\nU2,2026-01-02,early,C1,roll-ends,32\n"
                                   "U3,2025-12-31,late,C1,roll-ends,33\nU4,2026-01-03,early,C1,roll-ends,34\n")
              .empty());
}

TEST_CASE("a cause one letter away from a known one is told, a plant's own cause is not") {
    Clerk clerk;
    CHECK(clerk.post(scrap_header + "\nS1,2026-10-01,early,C1,roll-end,11\n") ==
          Lines{"2: cause: found `roll-end`, one letter away from `roll-ends`; is it another cause?"});
    CHECK(clerk.post(scrap_header + "\nS2,2026-10-01,early,C1,forklift,11\n").empty());
    CHECK(clerk.post(scrap_header + "\nS3,2026-10-02,early,C1,forklifts,12\n").size() == 1);
    CHECK(clerk.post(scrap_header + "\nS4,2026-10-03,early,C1,forklift,13\n").empty());
}

TEST_CASE("roll ends at a converter are told") {
    Clerk clerk;
    CHECK(clerk.post(scrap_header + "\nS1,2026-10-01,early,FG1,roll-ends,11\n") ==
          Lines{"2: centre: found roll-ends at `FG1`, a converter, which runs no rolls; is it meant?"});
}

TEST_CASE("a bale or a load five times as heavy as the median of its kind is told") {
    Clerk clerk;
    CHECK(clerk.post(bales({500, 510, 490, 505})).empty());
    // The books' four and this one.
    CHECK(clerk.post(bale_header + "\nB9,2026-10-20,early,4.01.00,5000\n") ==
          Lines{"2: kg: found `5000`, more than five times the usual 505 kg of a bale; is it meant?"});
    Clerk other;
    const auto loads =
        ticket_header +
        "\nT1,2026-10-01,Northweir,4.01.00,5000,5010,,80\nT2,2026-10-02,Northweir,4.01.00,5100,5090,,80\n"
        "T3,2026-10-03,Northweir,4.01.00,5200,5210,,80\nT4,2026-10-04,Northweir,4.01.00,5050,5060,,80\n"
        "T5,2026-10-05,Northweir,4.01.00,51000,51010,,80\n";
    CHECK(other.post(loads).size() == 2);  // what was sent, and what was weighed there
}

TEST_CASE("the same figures under a new ref are told, unless the row that had them was reversed") {
    Clerk clerk;
    CHECK(clerk.post(scrap_header + "\nS1,2026-10-01,early,C1,roll-ends,11\n").empty());
    CHECK(clerk.post(scrap_header + ",note\nS2,2026-10-01,early,C1,roll-ends,11,again\n") ==
          Lines{"2: ref: found `S2`, a new ref for figures that another row has; were they posted before?"});
    CHECK(clerk.post(scrap_header + "\nS3,2026-10-02,early,C1,roll-ends,12\nS4,2026-10-02,early,C1,roll-ends,12\n")
              .size() == 1);
    for (const int entry : {1, 2})
        static_cast<void>(services::reverse(clerk.store(), {entry, "keyed twice", "ada", std::nullopt}));
    CHECK(clerk.post(scrap_header + "\nS5,2026-10-01,early,C1,roll-ends,11\n").empty());
}
