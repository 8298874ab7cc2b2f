// Documents that were damaged on their way, or made to do damage: whatever the bytes, each line is a row or is refused.
#include <catch2/catch.hpp>

#include "host/plugin_check/generated_order.hpp"
#include "host/production/entry_from_row.hpp"
#include "tests/support/property.hpp"
#include "tests/unit/production/documents_bench.hpp"

using namespace flutebook;
using namespace flutebook::fixture;

namespace {

const std::vector<std::string>& documents() {
    static const std::vector<std::string> all = {
        paper_header + ",note\nP1,2026-10-01,early,C1,KL140,1200,\nP2,2026-10-01,late,C1,SC127,-88.5,\"a, b\"\n",
        corrugator_header + "\nR1,2026-10-01,early,C1,4711,1850,3,1000,25,1400\nR2,2026-10-01,late,C2,4712,,,10,0,3\n",
        converter_header +
            "\r\nG1,2026-10-02,early,FG1,4711,1400,40,10,1345\r\nG2,2026-10-02,early,PR1,4712,9,0,0,\r\n",
        scrap_header + "\nW1,2026-10-01,early,C1,roll-ends,87.5\nW2,2026-10-01,early,floor,damage,1\n",
        "\xEF\xBB\xBFref;date;mill;grade;sent;kg;moisture;per_tonne\nT1;2026-10-09;Northweir;4.01.00;;24000;0,145;85\n",
        count_header + "\nZ1,2026-10-31,floor,,4200,\nZ2,2026-10-31,C1,KL140,10,6.4\n",
        cost_header + "\nE1,2026-10-31,C1,energy,18250.75\n",
    };
    return all;
}

const std::vector<std::string>& poison() {
    static const std::vector<std::string> all = {
        ",",
        ";",
        "\"",
        "\"\"",
        "\n",
        "\r",
        std::string(1, '\0'),
        "\xFF",
        "\xC3",
        "\t",
        "-",
        "..",
        "1e9",
        "0x",
        "nan",
        "=cmd()",
        "'",
        "\xE2\x80\xAE",
        "\xED\xA0\x80",
        " ",
        "9",
        "-0",
        "99999999999999999999999999999999999999999",
        std::string(70000, '8'),
        std::string(200, ','),
    };
    return all;
}

std::string damaged(plugin_check::Draws& draws) {
    auto text = draws.pick(documents());
    for (std::size_t cuts = 1 + draws.index(4); cuts > 0; --cuts) {
        const auto at = draws.index(text.size() + 1);
        if (draws.one_in(3))
            text.erase(at, draws.index(12));
        else
            text.insert(at, draws.pick(poison()));
    }
    return text;
}

// Reads all of it and works out what can be worked out. How many lines there were.
int read_through(const TextFile& file, const plant::Plant& plant, production::Book& book) {
    auto opened = production::Document::open(file.path());
    auto* document = std::get_if<production::Document>(&opened);
    if (document == nullptr) return 0;
    int lines = 0;
    while (const auto line = document->next()) {
        ++lines;
        const auto* row = std::get_if<production::DocumentRow>(&line->outcome);
        if (row == nullptr) {
            RC_ASSERT(!std::get<production::RowErrors>(line->outcome).empty());
            continue;
        }
        const auto entry_from_row = production::entry_from_row(*row, plant, book);
        if (const auto* draft = std::get_if<ledger::Draft>(&entry_from_row)) {
            RC_ASSERT(!draft->ref.empty());
            for (const auto& movement : draft->movements)
                RC_ASSERT(std::abs(movement.mass.count()) <= 1'000'000'000'000);
        }
    }
    return lines;
}

}  // namespace

TEST_CASE("whatever is done to a document, each of its lines is a row or is refused") {
    const auto plant = paper_plant();
    KnownBook book;
    book.orders["4711"] = box_order("4711");
    book.orders["4712"] = long_order("4712");
    const TextFile file("");
    CHECK(holds_for_seeds(1500, [&](std::uint64_t seed) {
        plugin_check::Draws draws(seed);
        const auto text = damaged(draws);
        file.rewrite(text);
        const auto lines = read_through(file, plant, book);
        RC_ASSERT(lines <= std::count(text.begin(), text.end(), '\n'));
    }));
    for (const auto& text : documents()) {
        file.rewrite(text);
        CHECK(read_through(file, plant, book) > 0);
    }
}
