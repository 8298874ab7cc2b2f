#include "tests/unit/ledger/made_drafts.hpp"

#include <fmt/format.h>

namespace flutebook::fixture {

using ledger::Draft;
using ledger::Movement;

namespace {

Grams kg(std::int64_t count) {
    return Grams::of(count * 1000);
}

Money whole(std::int64_t amount) {
    return Money::of_ten_thousandths(amount * 10000);
}

}  // namespace

ledger::Date day(int year, unsigned month, unsigned day) {
    return {std::chrono::year(year), std::chrono::month(month), std::chrono::day(day)};
}

ledger::Month month(int year, unsigned month) {
    return {std::chrono::year(year), std::chrono::month(month)};
}

Draft paper_issue(const std::string& ref, ledger::Date date, std::int64_t mass, std::int64_t amount,
                  const std::string& paper) {
    Draft draft;
    draft.kind = "paper";
    draft.ref = ref;
    draft.content = fmt::format("ref={}\npaper={}\nkg={}\n", ref, paper, mass);
    draft.date = date;
    draft.shift = "early";
    draft.centre = "C1";
    draft.movements = {{"paper-store", "C1", paper, "", kg(mass), whole(amount)}};
    return draft;
}

Draft corrugator_run(const std::string& ref, ledger::Date date, const std::string& order) {
    Draft draft;
    draft.kind = "corrugator-run";
    draft.ref = ref;
    draft.content = fmt::format("ref={}\norder={}\n", ref, order);
    draft.date = date;
    draft.shift = "late";
    draft.centre = "C1";
    draft.order = order;
    draft.board = "B-140";
    draft.note = "splice at 400 m";
    draft.movements = {{"adhesive-store", "C1", "adhesive", "", kg(20), whole(11)},
                       {"C1", "floor", "board", "", kg(900), Money()},
                       {"C1", "loose-scrap", "board", "side-trim", kg(30), Money()},
                       {"C1", "loose-scrap", "board", "corrugator-run", kg(50), Money()}};
    draft.expected = {{"side-trim", kg(28)}, {"corrugator-run", kg(16)}};
    return draft;
}

Draft floor_count(const std::string& ref, ledger::Date date, std::int64_t mass) {
    Draft draft;
    draft.kind = "count";
    draft.ref = ref;
    draft.content = fmt::format("ref={}\nkg={}\n", ref, mass);
    draft.date = date;
    draft.centre = "floor";
    draft.count = ledger::Count{"floor", "board", kg(mass), std::nullopt};
    return draft;
}

std::int64_t DocumentStream::between(std::int64_t low, std::int64_t high) {
    return low + static_cast<std::int64_t>(random_() % static_cast<std::uint64_t>(high - low + 1));
}

std::string DocumentStream::one_of(const std::vector<std::string>& names) {
    return names[static_cast<std::size_t>(between(0, static_cast<std::int64_t>(names.size()) - 1))];
}

ledger::Date DocumentStream::any_day() {
    const auto month = std::chrono::year(2026) / 9 + std::chrono::months(between(0, months_ - 1));
    return {month.year(), month.month(), std::chrono::day(static_cast<unsigned>(between(1, 28)))};
}

Draft DocumentStream::next() {
    Draft draft;
    draft.date = any_day();
    draft.shift = one_of({"early", "late", "night"});
    const auto kind = between(0, 9);
    if (kind < 4)
        fill_paper(draft);
    else if (kind < 6)
        fill_corrugator_run(draft);
    else if (kind < 8)
        fill_converter_run(draft);
    else if (kind < 9)
        fill_scrap(draft);
    else
        fill_count(draft);
    draft.ref = fmt::format("{}{:07}", draft.kind.front(), next_++);
    draft.content = fmt::format("ref={}\ndate={}\ncentre={}\norder={}\nfigure={}\n", draft.ref,
                                unsigned{draft.date.day()}, draft.centre, draft.order, between(1, 1000000));
    if (between(0, 9) == 0) draft.note = "weighed again";
    return draft;
}

std::vector<Draft> DocumentStream::take(std::size_t count) {
    std::vector<Draft> drafts;
    for (std::size_t i = 0; i < count; ++i) drafts.push_back(next());
    return drafts;
}

void DocumentStream::fill_paper(Draft& draft) {
    draft.kind = "paper";
    draft.centre = one_of({"C1", "C2"});
    const auto grams = between(-200'000, 2'500'000);
    draft.movements = {{"paper-store", draft.centre, one_of({"KL135", "TL125", "SC127", "WT140"}), "", Grams::of(grams),
                        Money::of_ten_thousandths(grams * 66 / 10)}};
}

void DocumentStream::fill_corrugator_run(Draft& draft) {
    draft.kind = "corrugator-run";
    draft.centre = one_of({"C1", "C2"});
    draft.order = std::to_string(300000 + next_ / 8);
    draft.board = one_of({"B-140", "C-160", "BC-300"});
    draft.movements.push_back({"adhesive-store", draft.centre, "adhesive", "", Grams::of(between(5'000, 40'000)),
                               Money::of_ten_thousandths(between(1, 300'000))});
    for (const auto* material : {"KL135", "TL125", "SC127", "adhesive"}) {
        draft.movements.push_back({draft.centre, "floor", material, "", Grams::of(between(100'000, 900'000)), Money()});
        for (const auto* cause : {"side-trim", "order-change", "corrugator-run"})
            draft.movements.push_back(
                {draft.centre, "loose-scrap", material, cause, Grams::of(between(0, 40'000)), Money()});
    }
    for (const auto* cause : {"roll-ends", "side-trim", "order-change", "corrugator-run"})
        draft.expected.push_back({cause, Grams::of(between(0, 60'000))});
}

void DocumentStream::fill_converter_run(Draft& draft) {
    draft.kind = "converter-run";
    draft.centre = one_of({"FG1", "FG2", "DC1"});
    draft.order = std::to_string(300000 + next_ / 8);
    draft.board = one_of({"B-140", "C-160", "BC-300"});
    draft.movements = {{"floor", draft.centre, "board", "", Grams::of(between(500'000, 900'000)), Money()},
                       {draft.centre, "finished", "board", "", Grams::of(between(300'000, 500'000)), Money()}};
    for (const auto* cause : {"setup", "rejects", "cut-out"}) {
        draft.movements.push_back(
            {draft.centre, "loose-scrap", "board", cause, Grams::of(between(0, 30'000)), Money()});
        draft.expected.push_back({cause, Grams::of(between(0, 30'000))});
    }
}

void DocumentStream::fill_scrap(Draft& draft) {
    draft.kind = "bale";
    draft.movements = {{"loose-scrap", "bale-yard", "4.01.00", "", Grams::of(between(300'000, 600'000)), Money()}};
}

void DocumentStream::fill_count(Draft& draft) {
    draft.kind = "count";
    draft.centre = one_of({"floor", "loose-scrap"});
    draft.count = ledger::Count{draft.centre, "board", Grams::of(between(0, 5'000'000)), std::nullopt};
    if (between(0, 3) == 0) {
        draft.count->value = Money::of_ten_thousandths(between(0, 9'000'000));
        draft.movements = {{"opening", draft.centre, "board", "", draft.count->mass, *draft.count->value}};
    }
}

}  // namespace flutebook::fixture
