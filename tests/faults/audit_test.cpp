// The queries that the ledger's README gives to auditors, run in the database's own shell: they work as they stand
// there, and give the figures that the program gives.
#include <catch2/catch.hpp>

#include <fstream>
#include <map>

#include "ledger/reading/month.hpp"
#include "ledger/writing/close.hpp"
#include "ledger/writing/posting.hpp"
#include "ledger/writing/reversal.hpp"
#include "tests/faults/shell.hpp"
#include "tests/support/child.hpp"
#include "tests/unit/ledger/ledger_file.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;
using namespace flutebook::fixture;

namespace {

// The page's queries by their first line.
std::map<std::string, std::string> queries() {
    std::ifstream page(std::string(FLUTEBOOK_SOURCE_DIR) + "/ledger/README.md");
    std::map<std::string, std::string> found;
    std::string line, title;
    bool is_query = false;
    while (std::getline(page, line)) {
        if (line == "```sql") {
            std::getline(page, title);
            is_query = true;
        } else if (line == "```") {
            is_query = false;
        } else if (is_query) {
            found[title.substr(3)] += line + "\n";
        }
    }
    return found;
}

std::vector<std::string> answer_to(const std::string& title, const std::string& file, int month) {
    const auto found = queries();
    REQUIRE(found.count(title) == 1);
    const auto answer = run_shell(file, ".parameter set :month " + std::to_string(month), found.at(title));
    INFO(answer.errors);
    CHECK(answer.exit_code == 0);
    return lines_of(answer.output);
}

std::string number(std::int64_t value) {
    return std::to_string(value);
}

// A ledger of two months with reversals, counts, and the first month closed.
class Audited {
public:
    Audited() {
        auto store = Store::open_for_writing(folder_.file(), IfMissing::create);
        static_cast<void>(post(store, DocumentStream(31).take(400), "mara"));
        for (const std::int64_t entry : {3, 44, 171})
            static_cast<void>(reverse(store, {entry, day(2026, 10, 30), "typed twice", "jonas"}));
        static_cast<void>(close_month(store, {month(2026, 9), {}, {}, "as it is", "mara"}));
    }

    [[nodiscard]] const std::string& file() const { return file_; }
    [[nodiscard]] Store store() const { return Store::open_for_reading(file_); }

private:
    LedgerFolder folder_;
    std::string file_ = folder_.file();
};

}  // namespace

TEST_CASE("every query of the page runs in the shell, on every month") {
    const Audited audited;
    CHECK(queries().size() == 12);
    for (const auto& [title, query] : queries())
        for (const int month : {202608, 202609, 202610}) {
            INFO(title);
            const auto answer = run_shell(audited.file(), ".parameter set :month " + std::to_string(month), query);
            INFO(answer.errors);
            CHECK(answer.exit_code == 0);
            CHECK(answer.errors.empty());
            if (title.rfind("nothing:", 0) == 0) CHECK(answer.output.empty());
        }
}

TEST_CASE("the shell finds the flows, accounts and counts that the program finds") {
    const Audited audited;
    const auto store = audited.store();
    for (const unsigned of : {9U, 10U}) {
        const int in_shell = 202600 + static_cast<int>(of);
        std::vector<std::string> flow_lines;
        for (const auto& flow : flows(store, month(2026, of)))
            flow_lines.push_back(flow.from + "|" + flow.to + "|" + flow.material + "|" + flow.cause + "|" +
                                 number(flow.movements) + "|" + number(flow.mass.count()) + "|" +
                                 number(flow.money.ten_thousandths()));
        CHECK(answer_to("every flow of the month, g and ten-thousandths", audited.file(), in_shell) == flow_lines);

        std::vector<std::string> stock_lines;
        for (const auto& balance : balances_before(store, month(2026, of + 1)))
            stock_lines.push_back(balance.account + "|" + balance.material + "|" + number(balance.mass.count()) + "|" +
                                  number(balance.money.ten_thousandths()));
        CHECK(answer_to("what every account holds of every material at the month's end, g and ten-thousandths",
                        audited.file(), in_shell) == stock_lines);

        std::vector<std::string> count_lines;
        for (const auto& one : counts(store, month(2026, of)))
            count_lines.push_back(
                number(one.entry) + "|" +
                number(int{one.date.year()} * 10000 + static_cast<int>(unsigned{one.date.month()}) * 100 +
                       static_cast<int>(unsigned{one.date.day()})) +
                "|" + one.count.account + "|" + one.count.material + "|" + number(one.count.mass.count()) + "|" +
                (one.count.value ? number(one.count.value->ten_thousandths()) : ""));
        CHECK(answer_to("counts of the month", audited.file(), in_shell) == count_lines);
    }
}

TEST_CASE("the shell's issued paper, losses and expected losses are those of the program") {
    const Audited audited;
    const auto store = audited.store();
    Grams issued;
    std::map<std::string, Grams> lost, expected;
    for (const auto& flow : flows(store, month(2026, 10))) {
        if (flow.from == "paper-store") issued += flow.mass;
        if (!flow.cause.empty()) lost[flow.cause] += flow.mass;
    }
    for (const auto& loss : expected_losses(store, month(2026, 10))) expected[loss.cause] += loss.mass;
    const auto figures = answer_to("issued, adhesive and product of the month, kg", audited.file(), 202610);
    REQUIRE(figures.size() == 1);
    CHECK(std::stod(figures[0]) == Approx(issued.to_kg()));
    const auto causes = answer_to("scrap of the month by cause: lost, and what was expected", audited.file(), 202610);
    CHECK(causes.size() == 7);
    for (const auto& line : causes) {
        const auto cause = line.substr(0, line.find('|'));
        const auto rest = line.substr(line.find('|') + 1);
        INFO(line);
        CHECK(std::stod(rest) == Approx(lost[cause].to_kg()));
        CHECK(std::stod(rest.substr(rest.find('|') + 1)) == Approx(expected[cause].to_kg()));
    }
}

TEST_CASE("the queries that answer with nothing answer when the books are wrong") {
    const Audited audited;
    const auto answers = [&](const std::string& title, const std::string& sql) {
        const LedgerFolder folder;
        std::filesystem::copy_file(audited.file(), folder.file());
        forge(folder.file(), sql);
        return answer_to(title, folder.file(), 202610).size();
    };
    const std::string totals = "nothing: totals that are not what the movements make";
    CHECK(answers(totals,
                  "UPDATE month_flow SET grams = grams + 1 WHERE month = 202610 AND cause = 0 AND movements > 5") > 0);
    CHECK(answers(totals, "UPDATE movement SET money = money + 1 WHERE id = 10000") == 2);
    const std::string mirrors = "nothing: reversals that do not cancel their entry in every account";
    CHECK(answers(mirrors, "UPDATE movement SET grams = grams + 1 WHERE entry = 3 AND id % 1000 = 0") > 0);
    const std::string numbers =
        "nothing: entries without a number of their own, or dated in a month that was closed "
        "before them";
    CHECK(answers(numbers, "DELETE FROM entry WHERE id = 100") == 1);
    CHECK(answers(numbers, "UPDATE entry SET id = 5000, day = 20260930 WHERE id = 400") >= 1);
}
