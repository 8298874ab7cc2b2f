// Cost sheets of generated plants and orders: whatever the order, what is printed adds up and stays on the page.
#include <catch2/catch.hpp>

#include "host/engine/engine.hpp"
#include "host/quoting/quote.hpp"
#include "host/render/text_report.hpp"
#include "host/reports/quote_report.hpp"
#include "tests/support/generated_plants.hpp"
#include "tests/support/property.hpp"
#include "tests/system/printed_sheet.hpp"

using namespace flutebook;

TEST_CASE("what is printed adds up and stays on the page, for any order in either world's units") {
    std::size_t sheets = 0;
    CHECK(fixture::holds_for_seeds(300, [&](std::uint64_t seed) {
        fixture::Generated result = fixture::generated_order(seed);
        result.plant.units = seed % 2 == 0 ? plant::Units::metric : plant::Units::us;
        const engine::Engine engine = engine::Engine::start(result.plant, FLUTEBOOK_PLUGIN_DIR);
        const answers::RequestAnswer answer = quoting::quote(result.plant, engine, result.request, {});
        const std::string page = render::to_text(reports::quote_report(result.plant, answer, {}));
        sheets += fixture::sheets_on(page);
        const auto faults = fixture::faults_on(page);
        if (!faults.empty()) RC_LOG(faults.front() + "\n" + page);
        RC_ASSERT(faults.empty());
    }));
    CHECK(sheets > static_cast<std::size_t>(fixture::trials(300)));
}
