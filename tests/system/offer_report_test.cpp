// The offer as a report: what a plant promises beside the price, and that each word that can be needed is there.
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <set>

#include "host/answers/quote_json.hpp"
#include "host/box_styles/styles_file.hpp"
#include "host/offers/offer_report.hpp"
#include "host/render/text_report.hpp"
#include "tests/system/face.hpp"

using namespace flutebook;
using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using List = offers::OfferWords::List;

namespace {

offers::OfferWords installed_words() {
    return offers::read_offer_words("offer-words.yaml", offers::installed_words_text());
}

std::string offer_text(const offers::Conditions& conditions) {
    const plant::Plant plant = plant::read_plant(demo_plant());
    const answers::QuoteDocument document =
        answers::read_quote("R-1001", quote_demo({demo_request("R-1001")}, {"--json"}).output);
    answers::RequestAnswer answer = document.answer;
    answer.request = orders::read_request(plant, demo_request("R-1001"));
    const offers::OfferWords words = installed_words();
    return render::to_text(offers::offer_report({plant, answer, words, "", conditions}));
}

}  // namespace

TEST_CASE("an offer says until when it holds, how many more or fewer may come, and the plant's terms, where given") {
    offers::Conditions conditions;
    conditions.valid_until = base::parse_date("2026-11-14");
    conditions.tolerance = {0.05, 0.075};
    conditions.delivery = "ten working days, free to your works";
    conditions.payment = "30 days net";
    CHECK_THAT(offer_text(conditions), Contains("2026-11-14") &&
                                           Contains("up to 5 % fewer, up to 7.5 % more than ordered") &&
                                           Contains("ten working days, free to your works") && Contains("30 days net"));
    const std::string without = offer_text({});
    CHECK_THAT(without, !Contains("Valid until") && !Contains("Payment") && !Contains("fewer"));
}

TEST_CASE("a quantity that cannot be made is a row without a price in an offer of an order that pays a share of trim") {
    PlantCopy folder;
    folder.replace("plant.yaml", "\ncurrency:", "\ntrim: {share: 0.0288, changes: 0.6}\ncurrency:");
    const plant::Plant plant = plant::read_plant(folder.folder());
    answers::RequestAnswer answer =
        answers::read_quote("R-1001", ask_at(folder.folder(), {"quote", demo_request("R-1001"), "--json"}).output)
            .answer;
    REQUIRE(answer.trim);
    answer.request = orders::read_request(plant, demo_request("R-1001"));
    answer.quantities[1].quote.reset();
    answer.quantities[1].unmakeable = answers::Unmakeable{1000, {}};
    const std::string text = render::to_text(offers::offer_report({plant, answer, installed_words(), "", {}}));
    CHECK_THAT(text, Contains("1 000") && Contains("not offered") && !Contains("2.88") && !Contains("alone"));
    const std::size_t row = text.find("not offered");
    CHECK(text.find("not offered", row + 1) == std::string::npos);
}

TEST_CASE("the installed words have one for each piece of each style of the library") {
    const offers::OfferWords words = installed_words();
    for (const box_styles::Style& style : box_styles::style_library().styles)
        for (const auto& piece : style.pieces) {
            CAPTURE(style.code, piece.name);
            CHECK((piece.name.empty() || words.has(List::pieces, piece.name)));
        }
}

TEST_CASE("the installed words have one for each line that a price by a shipped model may leave out") {
    const offers::OfferWords words = installed_words();
    std::size_t lines = 0;
    for (const char* model :
         {"consumables", "delivery", "tooling", "setup", "running", "paper", "starch", "energy", "outside-work"}) {
        const Ended ended =
            ask({"plugin", "describe", std::string(FLUTEBOOK_PLUGIN_DIR) + "/" + model + ".so", "--json"});
        REQUIRE(ended.exit_code == 0);
        const auto described = nlohmann::json::parse(ended.output);
        if (ended.output.find("\"request\"") == std::string::npos) continue;
        for (const auto& line : described["charges"]) {
            const std::string name = std::string(model) + "." + line["line"].get<std::string>();
            CAPTURE(name);
            CHECK(words.has(List::not_included, name));
            ++lines;
        }
    }
    CHECK(lines > 5);
}
