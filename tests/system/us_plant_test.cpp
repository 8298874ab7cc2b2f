// The demo plant of inches, pounds and MSF: that it costs what its metric twin costs, and how it is shown.
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "tests/system/face.hpp"
#include "tests/system/golden.hpp"
#include "tests/system/metric_twin.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::json;

namespace {

Json quotes_of(const std::string& plant, const std::vector<std::string>& requests) {
    std::vector<std::string> words = {"quote", "--json"};
    words.insert(words.end(), requests.begin(), requests.end());
    const Ended ended = ask_at(plant, words);
    INFO(ended.errors);
    REQUIRE(ended.exit_code == 0);
    return Json::parse(ended.output);
}

// Names for people, which hold lengths.
bool is_for_people(const std::string& key) {
    return key == "candidate" || key == "units" || key == "at";
}

// Amounts of money, which are rounded to 1/10000 or to the coin.
bool is_amount(const std::string& key) {
    static const std::set<std::string> names = {
        "amount", "cost", "price_per_thousand", "waste_cost", "recovery", "cost_per_thousand", "order_value", "profit"};
    return names.count(key) != 0;
}

struct Compared {
    std::size_t numbers = 0, amounts = 0;
    std::vector<std::string> differences = {};
};

void compare(const Json& us, const Json& metric, const std::string& key, const std::string& path, Compared& result) {
    const auto differ = [&] { result.differences.push_back(path + ": " + us.dump() + ", metric " + metric.dump()); };
    if (us.is_number() && metric.is_number()) {
        const double left = us.get<double>(), right = metric.get<double>();
        ++(is_amount(key) ? result.amounts : result.numbers);
        const double allowed = is_amount(key) ? 0 : 1e-9 * std::max(std::abs(left), std::abs(right));
        if (!(std::abs(left - right) <= allowed)) differ();
    } else if (us.type() != metric.type() || us.size() != metric.size()) {
        differ();
    } else if (us.is_object()) {
        for (const auto& [name, value] : us.items())
            if (!is_for_people(name)) compare(value, metric.value(name, Json()), name, path + "." + name, result);
    } else if (us.is_array()) {
        for (std::size_t i = 0; i < us.size(); ++i)
            compare(us[i], metric[i], key, path + "[" + std::to_string(i) + "]", result);
    } else if (us != metric) {
        differ();
    }
}

std::string name_of(const std::string& request) {
    const std::string file = request.substr(request.rfind('/') + 1);
    return file.substr(0, file.find('-', 2));
}

Ended sheet_at_80_columns(const std::string& request) {
    return run({{FLUTEBOOK_PROGRAM, "--plant", us_plant(), "quote", request, "--sheet"}, "", {{"COLUMNS", "80"}}});
}

}  // namespace

TEST_CASE("the same order in the us plant and in its metric twin costs the same") {
    const RewrittenPlant twin(in_metric_units);
    const Json us = quotes_of(us_plant(), us_requests());
    const Json metric = quotes_of(twin.folder(), twin.requests());
    CHECK(us["units"] == "us");
    CHECK(metric["units"] == "metric");
    Compared compared;
    compare(us["requests"], metric["requests"], "", "requests", compared);
    CHECK(compared.amounts > 200);
    CHECK(compared.numbers > 500);
    for (const std::string& difference : compared.differences) FAIL_CHECK(difference);
}

TEST_CASE("a twin that differs in one sixteenth of an inch, or in a hundredth of a cent a pound, costs otherwise") {
    CHECK_THROWS(in_metric_units("3 furlongs"));
    const std::pair<std::string, std::string> changes[] = {{"11 3/8 in", "11 7/16 in"}, {"0.27 $/lb", "0.2701 $/lb"}};
    for (const auto& change : changes) {
        const RewrittenPlant changed([&](std::string text) {
            const auto at = text.find(change.first);
            return at == std::string::npos ? text : text.replace(at, change.first.size(), change.second);
        });
        Compared compared;
        compare(quotes_of(us_plant(), us_requests())["requests"],
                quotes_of(changed.folder(), changed.requests())["requests"], "", "requests", compared);
        CHECK(!compared.differences.empty());
    }
}

TEST_CASE("each request of the us plant is shown at 80 columns as it was approved") {
    REQUIRE(us_requests().size() == 3);
    for (const std::string& request : us_requests()) {
        const Ended ended = sheet_at_80_columns(request);
        CAPTURE(request, ended.errors);
        CHECK(ended.exit_code == 0);
        CHECK(ended.errors.empty());
        const std::string approved = approved_answer(name_of(request) + ".txt");
        CHECK(approved.size() > 3000);
        CHECK(difference(approved, ended.output) == "");
        for (const std::string& line : lines_of(ended.output)) CHECK(line.size() <= 80);
    }
}

TEST_CASE("a style's sums know the inch") {
    const std::string style = R"(styles:
  grip-tray:
    title: Tray with a hole to carry it by
    note: our own construction
    made_by: die-cutter
    ask:
      grip: {default: 3*in, range: [60, 0.7*B], says: how wide the hole is}
    along:  [H + in/8, L + 3*t, H + in/8]
    across: [H, B + t, H]
    map:
      - c1 | w1   | c2
      - .    --     .
      - e1 | base | e2
      - .    --     .
      - c3 | w2   | c4
    cells:
      e1: {holes: [{at: [w/2 - grip/2, d - 1.5*in], size: [grip, in]}]}
    fold: [w1 w2, c1 c2 c3 c4, e1 e2]
    join: {c1: e1, c2: e2, c3: e1, c4: e2}
    inside: {L: [e1, e2], B: [w2, w1], H: [base, rim]}
    cover: {left: 0.5, right: 1, top: 0}
)";
    const auto in_mm = [](std::string text) {
        const std::pair<std::string, std::string> lengths[] = {
            {"3*in", "76.2"}, {"in/8", "3.175"}, {"1.5*in", "38.1"}, {"grip, in]", "grip, 25.4]"}};
        for (const auto& [inches, mm] : lengths)
            for (auto at = text.find(inches); at != std::string::npos; at = text.find(inches))
                text.replace(at, inches.size(), mm);
        return text;
    };
    const auto blank_of = [](const std::string& styles) {
        PlantCopy plant;
        plant.write("styles.yaml", styles);
        const Ended ended =
            ask_at(plant.folder(), {"style", "show", "grip-tray", "--inside", "380x280x90", "--board", "B-140"});
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return ended.output;
    };
    CHECK(in_mm(style) != style);
    CHECK(blank_of(style) == blank_of(in_mm(style)));
}

TEST_CASE("people of the us plant read lengths in sixteenths and no metric unit") {
    const std::string page = sheet_at_80_columns(us_requests().front()).output;
    CHECK_THAT(page, Contains("inside 15 1/4 x 11 3/8 x 9 1/2 in") && Contains(" lb/MSF") && Contains(" ft2 of box"));
    const std::regex metric(R"(([0-9]|a) +(mm|m|m2|kg|g/m2|t km|tonne)\b)");
    const std::regex decimal_inches(R"([0-9]\.[0-9]+ in\b)");
    for (const std::string& request : us_requests())
        for (const std::string& line : lines_of(sheet_at_80_columns(request).output)) {
            if (std::regex_search(line, metric)) FAIL_CHECK(line);
            if (std::regex_search(line, decimal_inches)) FAIL_CHECK(line);
        }
}

TEST_CASE("a page for a browser and the list of saved quotes have the same sixteenths") {
    const RewrittenPlant plant([](const std::string& text) { return text; });
    const std::string page = plant.folder() + "/page.html";
    const Ended asked = ask_at(plant.folder(), {"quote", plant.requests().front(), "--save", "--html", page});
    INFO(asked.errors);
    REQUIRE(asked.exit_code == 0);
    std::ostringstream html;
    html << std::ifstream(page).rdbuf();
    CHECK_THAT(html.str(), Contains("15 1/4 x 11 3/8 x 9 1/2 in") && Contains(">55 5/16<"));
    const Ended listed = ask_at(plant.folder(), {"quote", "list", "--size", "15.25x11.375x9.5in"});
    CHECK_THAT(listed.output, Contains("inside, in") && Contains(" 15 1/4x11 3/8x9 1/2 "));
}
