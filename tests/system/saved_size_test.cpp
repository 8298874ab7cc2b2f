// What a saved quote takes on the disk: its answer is kept once, and what quotes have in common is kept once for all.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cstdlib>

#include "tests/system/face.hpp"
#include "tests/unit/ledger/ledger_file.hpp"

using namespace flutebook::fixture;

TEST_CASE("a saved quote takes less than twelve thousand bytes beside what quotes have in common") {
    PlantCopy plant;
    const auto ledger = plant.folder() + "/ledger.db";
    const auto save = [&](int first, int last) {
        std::vector<std::string> words = {"quote", "--save"};
        for (int i = first; i <= last; ++i) {
            const auto number = fmt::format("R-{}", 2000 + i);
            words.push_back(plant.write(number + ".yaml", plain_request(number, "500, 1000, 5000")));
        }
        REQUIRE(ask_at(plant.folder(), words).exit_code == 0);
        return std::atoll(
            run_behind(ledger, "SELECT page_count * page_size FROM pragma_page_count, pragma_page_size").at(0).c_str());
    };
    const auto of_one = save(0, 0);
    const auto of_all = save(1, 40);
    REQUIRE(run_behind(ledger, "SELECT count(*) FROM quote") == std::vector<std::string>{"41"});
    CHECK((of_all - of_one) / 40 < 12'000);
    // One answer each, and no text made from it.
    CHECK(run_behind(ledger,
                     "SELECT max(answers) FROM (SELECT sum(name LIKE 'answer%' OR name LIKE '%.txt') AS answers "
                     "FROM quote_part GROUP BY quote)") == std::vector<std::string>{"1"});
}
