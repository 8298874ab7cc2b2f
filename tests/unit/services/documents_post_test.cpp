// Posting: files of documents into a ledger, each row once, all or none.
#include <sys/resource.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <memory>

#include "host/base/errors.hpp"
#include "host/orders/order_record_json.hpp"
#include "host/services/posting/post.hpp"
#include "host/services/posting/reverse.hpp"
#include "ledger/reading/entries.hpp"
#include "ledger/reading/month.hpp"
#include "ledger/reading/quotes.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/support/property.hpp"
#include "tests/support/small_plant.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using answers::PostAnswer;
using Lines = std::vector<std::string>;

namespace {

// A ledger in memory that took the orders 4711 and 4712, and texts that become files when they are posted.
class Office {
public:
    Office() : store_(ledger::Store::in_memory()) {
        const std::vector<ledger::QuoteDraft> quotes = {{"R-1", {{"request.yaml", "request: R-1"}}}};
        static_cast<void>(ledger::save_quotes(store_, quotes, "ada"));
        take(box_order("4711"));
        take(long_order("4712"));
        entries_before_ = ledger::head(store_)->entry;
    }

    ledger::Store& store() { return store_; }

    PostAnswer post(const std::vector<std::string>& texts,
                    answers::PostOptions::Keep keep = answers::PostOptions::Keep::all) {
        files_.clear();
        answers::PostOptions asked{{}, "ada", keep};
        for (const auto& text : texts) {
            files_.push_back(std::make_unique<TextFile>(text));
            asked.files.push_back(files_.back()->path());
        }
        return services::post(plant_, store_, asked);
    }

    // What is refused, with files named by their order: "1:3: kg: ...".
    Lines refusals(const std::vector<std::string>& texts) {
        try {
            static_cast<void>(post(texts));
        } catch (const InputError& error) {
            Lines lines = error.lines();
            for (auto& line : lines)
                for (std::size_t i = 0; i < files_.size(); ++i)
                    if (line.rfind(files_[i]->path(), 0) == 0)
                        line.replace(0, files_[i]->path().size(), std::to_string(i + 1));
            return lines;
        }
        return {};
    }

    // Of documents: those that say what was saved stand before them.
    std::int64_t entries() { return ledger::head(store_)->entry - entries_before_; }
    std::int64_t first_entry() const { return entries_before_ + 1; }

    ledger::Draft draft(const std::string& kind, const std::string& ref) {
        const auto entry = ledger::find_entry(store_, kind, ref);
        REQUIRE(entry);
        return entry->draft;
    }

    plant::Plant& plant() { return plant_; }

private:
    void take(const orders::OrderRecord& order) {
        ledger::take_order(store_, {order.number, "Q000001", 1000, {{orders::order_record_part, to_json(order)}}},
                           "ada");
    }

    ledger::Store store_;
    std::int64_t entries_before_ = 0;
    plant::Plant plant_ = paper_plant();
    std::vector<std::unique_ptr<TextFile>> files_;
};

const std::string papers = paper_header +
                           "\nP1,2026-10-01,early,C1,KL140,1200\n"
                           "P2,2026-10-01,early,C1,SC127,1500\n";
const std::string runs = own_layout_header + "\nR1,2026-10-01,early,C1,4711,1000,25,1400\n";
const std::string boxes = converter_header + "\nG1,2026-10-02,early,FG1,4711,1400,40,10,1345\n";

}  // namespace

TEST_CASE("documents of several kinds are posted together, an order's boxes before its paper") {
    Office office;
    const auto answer = office.post({boxes, runs, papers});
    CHECK(answer.posted == 4);
    CHECK(answer.skipped == 0);
    CHECK(answer.first_entry == office.first_entry());
    CHECK(answer.files[2].posted == 2);
    CHECK(office.entries() == 4);
    CHECK(answer.head == ledger::head(office.store())->hash);
    CHECK(office.draft("converter-run", "G1").order == "4711");
    std::int64_t finished = 0;
    for (const auto& flow : answer.flows)
        if (flow.to == "finished") finished += flow.mass.count();
    CHECK(finished == 672500);
}

TEST_CASE("posting the same files again posts nothing") {
    Office office;
    static_cast<void>(office.post({papers, runs, boxes}));
    const auto again = office.post({papers, runs, boxes, papers});
    CHECK(again.posted == 0);
    CHECK(again.skipped == 6);
    CHECK(again.first_entry == 0);
    CHECK(office.entries() == 4);
}

TEST_CASE("what was posted is skipped even when the plant no longer knows its machine") {
    Office office;
    static_cast<void>(office.post({boxes}));
    office.plant().converters.clear();
    CHECK(office.post({boxes}).skipped == 1);
}

TEST_CASE("a ref that has other content is refused, in the ledger and among the rows themselves") {
    Office office;
    static_cast<void>(office.post({papers}));
    CHECK(
        office.refusals({paper_header + "\nP1,2026-10-01,early,C1,KL140,1201\n"}) ==
        Lines{"1:2: ref: found `P1`, which entry 4 has with other content; expected a ref of its own: a posted row is "
              "corrected by a reversal"});
    CHECK(office.refusals({bale_header + "\nB1,2026-10-01,early,4.01.00,500\n",
                           bale_header + "\nB1,2026-10-01,early,4.01.00,501\n"}) ==
          Lines{"2:2: ref: found `B1`, which another row of these documents has with other content; expected a ref of "
                "its own"});
    CHECK(office.entries() == 2);
    // A ref is one's own within its kind only.
    CHECK(office.post({bale_header + "\nP1,2026-10-01,early,4.01.00,500\n"}).posted == 1);
}

TEST_CASE("one bad row stops all files, and every bad row is listed") {
    Office office;
    CHECK(office.refusals({papers, "so what\n1\n",
                           paper_header + "\nP3,2026-10-01,early,C9,KL140,5\nP4,2026-10-01,early,C1,KL140,\n", runs,
                           converter_header + "\nG1,2026-10-02,early,FG1,9999,1400,40,10,1345\n"}) ==
          Lines{"2:1: found the header row `so what`; expected the header row of a document",
                "3:2: corrugator: found `C9`, which is no corrugator of the plant; expected one of `C1`, `C2`",
                "3:3: kg: found nothing; expected a number from -100000000 to 100000000",
                "5:2: order: found `9999`; expected the number of an order that was taken"});
    CHECK(office.entries() == 0);
    CHECK(office.post({papers, runs}).posted == 3);
}

TEST_CASE("a dry run says what would be posted and keeps nothing") {
    Office office;
    const auto answer = office.post({papers, runs}, answers::PostOptions::Keep::nothing);
    CHECK(answer.posted == 3);
    CHECK(answer.head.empty());
    CHECK_FALSE(answer.flows.empty());
    CHECK(office.entries() == 0);
    CHECK(office.refusals({"x\n"}).size() == 1);
}

TEST_CASE("a row dated in a closed month is refused, and posted when it is dated in the open one") {
    Office office;
    static_cast<void>(office.post({bale_header + "\nB1,2026-09-30,early,4.01.00,500\n"}));
    static_cast<void>(
        ledger::close_month(office.store(), {std::chrono::year(2026) / std::chrono::September, {}, {}, "", "ada"}));
    CHECK(office.refusals({bale_header + "\nB2,2026-09-30,early,4.01.00,480\nB1,2026-09-30,early,4.01.00,500\n"}) ==
          Lines{"1:2: date: found 2026-09-30, in a month that is closed; expected a day after 2026-09, and a note that "
                "says why it is late"});
    CHECK(office.post({bale_header + ",note\nB2,2026-10-01,early,4.01.00,480,late: found behind the press\n"}).posted ==
          1);
    CHECK(office.draft("bale", "B2").note == "late: found behind the press");
}

TEST_CASE("paper comes back at the price of its last issue, in the ledger or in the same documents") {
    Office office;
    const auto money_of = [&](const std::string& ref) { return office.draft("paper", ref).movements[0].money; };
    // Issued in August at 640; returned in September, when a tonne costs 664.
    static_cast<void>(office.post({paper_header + "\nP1,2026-08-31,early,C1,KL140,1000\n"}));
    static_cast<void>(office.post({paper_header + "\nP2,2026-09-02,early,C1,KL140,-100\n"}));
    CHECK(money_of("P2") == Money::of_ten_thousandths(-640000));
    // The issue of the third stands further down, and is later than the one in the ledger.
    static_cast<void>(
        office.post({paper_header + "\nP3,2026-09-04,early,C1,KL140,-100\nP4,2026-09-05,early,C1,KL140,-100\n"
                                    "P5,2026-09-03,early,C1,KL140,1000\n"}));
    CHECK(money_of("P3") == Money::of_ten_thousandths(-664000));
    CHECK(money_of("P4") == Money::of_ten_thousandths(-664000));
    // An issue after the day of the return is none of its business.
    static_cast<void>(office.post({paper_header + "\nP6,2026-09-01,early,C1,KL140,-100\n",
                                   paper_header + "\nP7,2026-09-06,early,C2,KL140,-1\n"}));
    CHECK(money_of("P6") == Money::of_ten_thousandths(-640000));
}

TEST_CASE("a first count opens its account, whatever the order of the documents, and a later one does not") {
    Office office;
    const auto count = [](const std::string& rows) { return count_header + "\n" + rows; };
    static_cast<void>(office.post({papers, runs,
                                   count("Z1,2026-10-31,floor,,700,\n"
                                         "Z2,2026-09-30,floor,,300,150.25\n"
                                         "Z3,2026-09-30,C1,KL140,80,51.2\n"
                                         "Z4,2026-09-30,C1,SC127,90,50\n"
                                         "Z5,2026-10-01,C1,TL125,90,\n"
                                         "Z6,2026-09-30,C1,SC127,91,\n")}));
    const auto moved_by = [&](const std::string& ref) { return office.draft("count", ref).movements.size(); };
    CHECK(moved_by("Z1") == 0);
    CHECK(moved_by("Z2") == 1);
    CHECK(moved_by("Z3") == 1);
    CHECK(moved_by("Z4") == 1);
    CHECK(moved_by("Z5") == 0);  // C1 ran that day
    CHECK(moved_by("Z6") == 0);  // counted twice: the second is a count as any other

    static_cast<void>(office.post({count("Z7,2026-09-29,floor,,5,\nZ8,2026-09-30,C1,TL125,5,2\n")}));
    CHECK(moved_by("Z7") == 1);
    CHECK(moved_by("Z8") == 1);
    CHECK(office.refusals({count("Z9,2026-10-05,floor,,5,2\n")}).size() == 1);
    // The same count again is what it was, though its account has rows by now.
    CHECK(office.post({count("Z2,2026-09-30,floor,,300,150.25\n")}).skipped == 1);
}

TEST_CASE("a count whose opening was reversed leaves its account to be opened anew") {
    Office office;
    static_cast<void>(office.post({count_header + "\nZ1,2026-09-30,floor,,3000,1500\n"}));
    static_cast<void>(
        ledger::reverse(office.store(), {office.first_entry(), date(2026, 9, 30), "a nought too many", "ada"}));
    static_cast<void>(office.post({count_header + "\nZ2,2026-09-30,floor,,300,150\n"}));
    CHECK(office.draft("count", "Z2").movements.size() == 1);
}

TEST_CASE("an entry is named by its number or its document's ref, and by the kind where several have that ref") {
    Office office;
    static_cast<void>(
        office.post({scrap_header + "\nX1,2026-10-01,early,C1,roll-ends,12\nS2,2026-10-01,early,C1,damage,7\n",
                     bale_header + "\nX1,2026-10-02,early,4.01.00,500\n"}));
    const auto number = [&](const std::string& text) { return services::entry_number(office.store(), text); };
    const auto posted = [&](const char* kind, const char* ref) {
        return ledger::find_entry(office.store(), kind, ref)->number;
    };
    CHECK(number("2") == 2);
    CHECK(number("S2") == posted("weighed-scrap", "S2"));
    CHECK(number("weighed-scrap:X1") == posted("weighed-scrap", "X1"));
    CHECK(number("bale:X1") == posted("bale", "X1"));
    CHECK_THROWS_WITH(number("X1"), Catch::Matchers::Contains("several documents have this ref: found `X1` as "
                                                              "weighed-scrap, bale; say which, such as "
                                                              "weighed-scrap:X1"));
    CHECK_THROWS_WITH(number("X9"), Catch::Matchers::Contains("there is no document with this ref: found `X9`"));
    static_cast<void>(services::reverse(office.store(), {number("S2"), "keyed wrongly", "ada", std::nullopt}));
    CHECK(ledger::find_entry(office.store(), "weighed-scrap", "S2")->reversed_by.has_value());
}

TEST_CASE("a hundred thousand rows are posted in the memory of few") {
    const int rows = trials(100000);
    Office office;
    const TextFile file("");
    {
        std::ofstream text(file.path());
        text << scrap_header << '\n';
        for (int i = 0; i < rows; ++i) text << "S" << i << ",2026-10-01,early,C1,roll-ends,12.5\n";
    }
    const auto folder = std::filesystem::temp_directory_path() / "flutebook-post-test";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    {
        auto store = ledger::Store::open_for_writing((folder / "ledger.db").string(), ledger::IfMissing::create);
        struct rusage before {
        }, after{};
        getrusage(RUSAGE_SELF, &before);
        CHECK(services::post(office.plant(), store, {{file.path()}, "ada", answers::PostOptions::Keep::all}).posted ==
              rows);
        getrusage(RUSAGE_SELF, &after);
        // The pages that the database itself keeps, and no more.
#if !defined(FLUTEBOOK_SANITIZED)  // which keeps what was freed, and its own books
        CHECK(after.ru_maxrss - before.ru_maxrss < 1024 * 24);
#endif
    }
    std::filesystem::remove_all(folder);
}
