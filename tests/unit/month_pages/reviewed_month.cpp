#include "tests/unit/month_pages/reviewed_month.hpp"

#include <nlohmann/json.hpp>

#include "host/services/closing/review.hpp"

namespace flutebook::fixture {

ReviewedMonth::ReviewedMonth() {
    bench.paper("C1", "KL135", 1000, 640);
    bench.shift = "early";
    bench.lose("C1", "KL135", "side-trim", 20);
    bench.expect("C1", "side-trim", 10);
    bench.shift = "night";
    bench.order = "4711";
    bench.lose("C1", "KL135", "side-trim", 14);
    bench.expect("C1", "side-trim", 10);
    bench.move("C1", "floor", "KL135", 900);
    bench.move("floor", "FG1", "board", 400);
    bench.order = "4712";
    bench.lose("FG1", "board", "rejects", 6);
    bench.expect("FG1", "rejects", 10);
    bench.move("FG1", "finished", "board", 394);
    bench.order = "";
    bench.shift = "";
}

void ReviewedMonth::lose_in(ledger::Month month, double kg) {
    bench.month = month;
    bench.paper("C1", "KL135", kg, kg);
    bench.lose("C1", "KL135", "side-trim", kg);
}

answers::MonthReview ReviewedMonth::review() const {
    return services::month_review(bench.plant, bench.store, {bench.month, bench.today});
}

nlohmann::json ReviewedMonth::document() const {
    return nlohmann::json::parse(answers::month_review_document(review()));
}

}  // namespace flutebook::fixture
