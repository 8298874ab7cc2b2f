// What documents posted together say of each other, whatever their order.
#include <catch2/catch.hpp>

#include "host/production/pending_documents.hpp"
#include "tests/support/small_plant.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

production::PendingDocuments foresight_of(const std::vector<std::string>& documents, production::Book& book) {
    production::PendingDocuments foresight;
    for (const auto& document : documents)
        for (const auto& line : read_lines(document))
            if (const auto* row = std::get_if<production::DocumentRow>(&line.outcome)) foresight.note(*row, book);
    return foresight;
}

}  // namespace

TEST_CASE("the last issue of a paper is found wherever it stands, but none after the day") {
    KnownBook book;
    const auto foresight = foresight_of({paper_header + "\n"
                                                        "P1,2026-10-05,early,C1,KL140,-100\n"
                                                        "P2,2026-10-07,early,C1,KL140,900\n"
                                                        "P3,2026-10-02,early,C1,KL140,900\n"
                                                        "P4,2026-10-04,early,C2,KL140,900\n"},
                                        book);
    CHECK(foresight.last_issue("C1", "KL140", date(2026, 10, 5)) == date(2026, 10, 2));
    CHECK(foresight.last_issue("C1", "KL140", date(2026, 10, 7)) == date(2026, 10, 7));
    CHECK_FALSE(foresight.last_issue("C1", "KL140", date(2026, 10, 1)));
    CHECK_FALSE(foresight.last_issue("C1", "TL125", date(2026, 10, 7)));
}

TEST_CASE("an account begins with the first row that moves it") {
    KnownBook book;
    book.orders["4711"] = box_order("4711");
    book.orders["4713"] = sheet_order("4713");
    const auto sheets =
        foresight_of({own_layout_header + "\nR1,2026-10-03,early,C1,4713,1000,25,1400\n",
                      cost_header + "\nE1,2026-10-01,FG1,energy,5\n", count_header + "\nZ1,2026-10-02,floor,,5,\n"},
                     book);
    CHECK(sheets.first_movement("C1") == date(2026, 10, 3));
    CHECK(sheets.first_movement("loose-scrap") == date(2026, 10, 3));
    CHECK_FALSE(sheets.first_movement("floor"));  // sheets sold as sheets never come there
    CHECK(sheets.first_movement("FG1") == date(2026, 10, 1));
    CHECK(sheets.first_count("floor") == date(2026, 10, 2));

    const auto boxes = foresight_of(
        {own_layout_header + "\nR1,2026-10-03,early,C1,4711,1000,25,1400\n",
         converter_header + "\nG1,2026-10-02,early,FG1,4711,1400,40,10,1345\n",
         ticket_header + "\nT1,2026-10-09,Northweir,4.01.00,,1,0.1,85\n",
         bale_header + "\nB1,2026-10-08,late,4.01.00,512\n", scrap_header + "\nW1,2026-10-01,early,C1,roll-ends,9\n"},
        book);
    CHECK(boxes.first_movement("floor") == date(2026, 10, 2));
    CHECK(boxes.first_movement("FG1") == date(2026, 10, 2));
    CHECK(boxes.first_movement("bale-yard") == date(2026, 10, 8));
    CHECK(boxes.first_movement("loose-scrap") == date(2026, 10, 1));
    CHECK(boxes.first_movement("C1") == date(2026, 10, 1));
}
