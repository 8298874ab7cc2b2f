// A saved quote as a page: it draws what the page of its day drew, whatever the plant's files say since.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"
#include "tests/unit/ledger/ledger_file.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

const std::string kept_ledger = FLUTEBOOK_SOURCE_DIR "/tests/system/kept/ledger-of-1.0.0.db";

std::string bytes_of(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

std::string drawings_of(const std::string& html) {
    const std::string opening = "<figure>", closing = "</figure>";
    std::string drawings;
    for (auto at = html.find(opening); at != std::string::npos; at = html.find(opening, at + 1))
        drawings += html.substr(at, html.find(closing, at) + closing.size() - at) + "\n";
    return drawings;
}

class PlantWithPages : public PlantCopy {
public:
    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }

    // The page of `words`, whatever they end with: some quantities of a request may not be made.
    [[nodiscard]] std::string page(std::vector<std::string> words) const {
        const std::string file = folder() + "/page.html";
        words.insert(words.end(), {"--html", file, "--replace"});
        const Ended ended = ask(words);
        INFO(ended.errors);
        REQUIRE(ended.exit_code <= 1);
        return bytes_of(file);
    }

    // The number that the request is saved under; empty where nothing of it can be made.
    [[nodiscard]] std::string save(const std::string& request) const {
        const Json saved = Json::parse(ask({"quote", request, "--save", "--json"}).output)["requests"][0];
        return saved.value("saved", "");
    }
};

// A request for a box in a style of the plant's own.
std::string request_in(const std::string& style) {
    return fmt::format(
        "request: OWN\ndate: 2026-10-15\nstyle: {}\ninside: {{length: 400, width: 300, height: 200}}\n"
        "board: B-140\nquantities: [1000]\nmargin: 0.18\n",
        style);
}

const char* const own_styles = R"(styles:
  tray:
    title: Tray
    note: made for a test
    made_by: die-cutter
    along:  [H, L + 4, H]
    across: [H, B + 4, H]
    map:
      - .    n    .
      - .    --   .
      - w |  c  | e
      - .    --   .
      - .    s    .
    fold: [w e n s]
    inside: {L: [w, e], B: [n, s], H: [c, rim]}
    cover: {top: 0}
)";

}  // namespace

TEST_CASE("the page of a saved quote is the page of the quote when it was saved, with its drawings") {
    const PlantWithPages plant;
    std::size_t shown = 0;
    for (const std::string& request : all_demo_requests()) {
        const std::string number = plant.save(request);
        if (number.empty()) continue;
        CAPTURE(request);
        CHECK(plant.page({"quote", "show", number}) == plant.page({"quote", request}));
        ++shown;
    }
    CHECK(shown > 10);
}

TEST_CASE("a saved quote draws the style that it was quoted in after styles.yaml was changed, or lacks it") {
    PlantWithPages plant;
    plant.write("styles.yaml", own_styles);
    const std::string request = plant.write("own.yaml", request_in("tray"));
    const std::string number = plant.save(request);
    const std::string then = drawings_of(plant.page({"quote", request}));
    CHECK_THAT(then, Contains("<b>Box, folded</b>"));

    plant.replace("styles.yaml", "along:  [H, L + 4, H]", "along:  [H, L + 44, H]");
    CHECK(drawings_of(plant.page({"quote", request})) != then);
    CHECK(drawings_of(plant.page({"quote", "show", number})) == then);

    plant.write("styles.yaml", "styles: {}\n");
    CHECK(drawings_of(plant.page({"quote", "show", number})) == then);
}

// Of two by two blanks the sheet's sizes do not say how much lies between them and how much at the edges.
TEST_CASE("a saved quote draws the gaps between blanks that its die cutter left on that day") {
    PlantWithPages plant;
    const std::string request = plant.write("four.yaml",
                                            "request: FOUR\ndate: 2026-10-15\nstyle: outline\n"
                                            "outline: {length: 300, width: 300, area: 0.08}\nboard: E-110\n"
                                            "quantities: [400]\nmargin: 0.15\nroute: [DC1]\n");
    const std::string number = plant.save(request);
    const std::string then = drawings_of(plant.page({"quote", request}));
    CHECK_THAT(then, Contains("<b>Sheet: 4 boxes</b>"));
    plant.replace("machines.yaml", "between: 8, edge: 12", "between: 9, edge: 15");
    CHECK(drawings_of(plant.page({"quote", request})) != then);
    CHECK(drawings_of(plant.page({"quote", "show", number})) == then);
}

TEST_CASE("a saved set draws each of its pieces") {
    PlantWithPages plant;
    const std::string request = plant.write("set.yaml", request_in("\"0300\""));
    const std::string then = plant.page({"quote", request});
    CHECK_THAT(then, Contains("lid"));
    CHECK(plant.page({"quote", "show", plant.save(request)}) == then);
}

TEST_CASE("a quote that kept no style is shown without the drawing of its blank, and says so in one line") {
    const PlantWithPages plant;
    const std::string number = plant.save(demo_request("R-1001"));
    forge(plant.folder() + "/ledger.db", "DELETE FROM quote_part WHERE name = 'style.yaml'");
    const std::string page = plant.page({"quote", "show", number});
    CHECK_THAT(page, Contains("<p>The blank is not drawn: the release that saved this quote did not keep the style of "
                              "its box.</p>"));
    CHECK_THAT(page, Contains("<b>Web: 4 outs of a roll of 2450 mm</b>") && !Contains("<b>Blank, flat</b>"));
}

TEST_CASE(
    "a quote whose kept files no release reads any more is shown without the drawing of its blank, and says why") {
    const PlantWithPages plant;
    const std::string number = plant.save(demo_request("R-1001"));
    const std::string ledger = plant.folder() + "/ledger.db";
    forge(ledger,
          "UPDATE quote_part SET content = (SELECT content FROM quote_part WHERE name = 'request.yaml') WHERE name = "
          "'style.yaml'");
    const std::string page = plant.page({"quote", "show", number});
    CHECK_THAT(page, Contains("The blank is not drawn: this release does not read what was saved: quote " + number) &&
                         Contains("style.yaml"));
}

TEST_CASE("a quote of release 1.0.0, which kept its text alone, has that text as its page") {
    const PlantWithPages plant;
    std::filesystem::copy_file(kept_ledger, plant.folder() + "/ledger.db");
    const std::string page = plant.page({"quote", "show", "Q000001"});
    CHECK_THAT(page, Contains("The blank is not drawn") && Contains("<pre>=====") && Contains("cost, net of recovery"));
}

TEST_CASE("the page of a saved quote says what became of it") {
    const PlantWithPages plant;
    const std::string number = plant.save(demo_request("R-1001"));
    REQUIRE(plant.ask({"quote", "mark", number, "won"}).exit_code == 0);
    CHECK_THAT(plant.page({"quote", "show", number}), Contains("<h2>" + number + " since it was saved</h2>"));
}

TEST_CASE("the page of a saved quote is written over no file, but with --replace, and beside --json") {
    const PlantWithPages plant;
    const std::string number = plant.save(demo_request("R-1001"));
    const std::string file = plant.folder() + "/page.html";
    const Ended both = plant.ask({"quote", "show", number, "--json", "--html", file});
    CHECK(both.exit_code == 0);
    CHECK(Json::parse(both.output)["answer"] == "quote");
    CHECK_THAT(bytes_of(file), Contains("<b>Blank, flat</b>"));
    const Ended again = plant.ask({"quote", "show", number, "--html", file});
    CHECK(again.exit_code == 1);
    CHECK_THAT(again.errors, Contains("--replace"));
}
