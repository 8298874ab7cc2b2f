// Two orders that shared one web, from their quotes to the month and to what each really cost: the corrugator's hours,
// its setup and its order change are shared by width.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Json = nlohmann::ordered_json;

namespace {

// Of the demo plant: C1, R-1001 and its board B-140.
constexpr double web_mm = 2450, slit_mm = 559, chop_m = 1.44, change_m = 25, change_min = 1.5, crew_per_hour = 240;

enum class WebColumn { given, left_out };

// One order with two of the web's four outs, another with one, and a strip that nobody has: 500 boxes each.
class SharedWeb : public PlantCopy {
public:
    explicit SharedWeb(WebColumn web) {
        const Json answer = Json::parse(said({"quote", demo_request("R-1001"), "--save", "--json"}));
        quote_ = answer["requests"][0]["quotes"][0];
        said({"order", "Q000001", "500", "--as", "26-1"});
        said({"order", "Q000001", "500", "--as", "26-2"});
        const std::string end = web == WebColumn::given ? fmt::format(",{}\n", web_mm) : "\n";
        std::string rows = "ref,date,shift,corrugator,order,roll_width,outs,metres,order_change_metres,good_sheets";
        rows += web == WebColumn::given ? ",web\n" : "\n";
        for (const Part& part : {first, second})
            rows += fmt::format("{},2026-10-15,early,C1,{},{},{},{},{},{}", part.ref, part.order, part.width_mm,
                                part.outs, metres, change_m, sheets) +
                    end;
        const double fed = quote_["fed"][1];
        std::string runs = "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n";
        for (const Part& part : {first, second})
            runs += fmt::format("M{},2026-10-15,late,FG1,{},{},40,{},500\n", part.ref, part.order, fed, fed - 540);
        said({"post", write("web.csv", rows), write("runs.csv", runs)});
    }

    std::string said(const std::vector<std::string>& words) const {
        const Ended ended = ask_at(folder(), words);
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return ended.output;
    }

    /// Crew money of one line at the corrugator, as it was used.
    [[nodiscard]] double corrugator_crew(const std::string& order, const std::string& line, double elsewhere) const {
        const Json cost = Json::parse(said({"order", "cost", order, "--json"}));
        for (const Json& item : cost["lines"])
            if (item["line"] == line) return item["cost"]["used"].get<double>() - elsewhere;
        FAIL(line << " is not among the lines of " << order);
        return 0;
    }
    /// What folder-gluer and dispatch have of the same lines.
    [[nodiscard]] double crew_after(const std::string& line) const {
        double sum = 0;
        for (const Json& item : quote_["lines"])
            if (item["line"] == line && item["step"] != 0) sum += item["amount"].get<double>();
        return sum;
    }

    struct Part {
        std::string ref, order;
        double width_mm, outs;
    };
    static inline const Part first{"W1", "26-1", 1200, 2}, second{"W2", "26-2", 600, 1};
    static constexpr double metres = 900, sheets = 547;

private:
    Json quote_;
};

}  // namespace

TEST_CASE("orders that shared a web are costed its hours and its setup by their share of its width") {
    const SharedWeb shared(WebColumn::given), alone(WebColumn::left_out);
    const double hours = SharedWeb::metres / (220 * 60), setup_hours = change_min / 60;
    for (const SharedWeb::Part& part : {SharedWeb::first, SharedWeb::second}) {
        CAPTURE(part.order);
        const double share = part.width_mm / web_mm;
        const double running = shared.crew_after("running.labour"), setup = shared.crew_after("setup.labour");
        CHECK(shared.corrugator_crew(part.order, "running.labour", running) ==
              Approx(hours * share * crew_per_hour).margin(0.0002));
        CHECK(shared.corrugator_crew(part.order, "setup.labour", setup) ==
              Approx(setup_hours * share * crew_per_hour).margin(0.0002));
        CHECK(alone.corrugator_crew(part.order, "running.labour", running) ==
              Approx(hours * crew_per_hour).margin(0.0002));
        CHECK(alone.corrugator_crew(part.order, "setup.labour", setup) ==
              Approx(setup_hours * crew_per_hour).margin(0.0002));
    }
}

TEST_CASE("the month allows orders that shared a web their share of the order change, and its masses balance") {
    const SharedWeb shared(WebColumn::given), alone(WebColumn::left_out);
    const auto month = [](const SharedWeb& plant) { return Json::parse(plant.said({"month", "2026-10", "--json"})); };
    const Json with_web = month(shared), without = month(alone);
    // Each order is allowed the change of its own layout, four outs wide, of which each has its share.
    const double kg_an_out = change_m * slit_mm / 1000 * 437.6 / 1000, quoted = 4 * kg_an_out;
    const double shares = (SharedWeb::first.width_mm + SharedWeb::second.width_mm) / web_mm;
    const double actual = (SharedWeb::first.outs + SharedWeb::second.outs) * kg_an_out;
    CHECK(with_web["expected_kg"]["order-change"].get<double>() == Approx(shares * quoted).epsilon(1e-3));
    CHECK(without["expected_kg"]["order-change"].get<double>() == Approx(2 * quoted).epsilon(1e-3));
    CHECK(with_web["loss_kg"]["order-change"] == without["loss_kg"]["order-change"]);
    CHECK(with_web["loss_kg"]["order-change"].get<double>() == Approx(actual).epsilon(1e-3));
    // No paper was posted: what the corrugator gave off is what nobody can explain, and the month adds up all the same.
    double out = with_web["product_kg"].get<double>() + with_web["floor_kg"]["close"].get<double>();
    for (const auto& cause : with_web["loss_kg"].items()) out += cause.value().get<double>();
    for (const auto& centre : with_web["unexplained_kg"].items()) out += centre.value().get<double>();
    for (const auto& centre : with_web["centre_kg"].items()) out += centre.value()["close"].get<double>();
    CHECK(out == Approx(with_web["issued_kg"].get<double>() + with_web["adhesive_kg"].get<double>()).margin(1e-6));
}
