// `order cost` as people and scripts meet it: an order quoted, taken, produced and costed by the real program on a real
// ledger.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tests/system/face.hpp"

using namespace flutebook::fixture;
using Catch::Matchers::Contains;
using Json = nlohmann::ordered_json;

namespace {

const std::string web_header = "ref,date,shift,corrugator,order,metres,order_change_metres,good_sheets\n";
const std::string machine_header = "ref,date,shift,converter,order,fed,setup_sheets,rejected,good_boxes\n";

// What a quote of R-1001 asks of the corrugator and of FG1, which may lose 40 sheets on its setup.
struct Run {
    double metres, sheets, setup, rejected, boxes;
};

// A copy of the demo plant in which R-1001 was quoted, saved, and taken as order 26-0417 of 500 boxes.
class TakenOrder : public PlantCopy {
public:
    enum class Rule { plants_own, houserule };
    explicit TakenOrder(Rule rule = Rule::plants_own) {
        if (rule == Rule::houserule) take_house_rule();
        const Json answer = Json::parse(ask({"quote", demo_request("R-1001"), "--save", "--json"}).output);
        quotes_ = answer["requests"][0]["quotes"];
        REQUIRE(ask({"order", "Q000001", "500", "--as", "26-0417"}).exit_code == 0);
    }

    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const { return ask_at(folder(), words); }

    /// As the quote of 500, 1000 or 5000 allows.
    [[nodiscard]] Run allowed(double boxes) const {
        for (const Json& quote : quotes_)
            if (quote["quantity"] == boxes) {
                const double fed = quote["fed"][1];
                return {quote["web_length_m"], quote["good"][0], 40, fed - 40 - boxes, boxes};
            }
        throw std::runtime_error("no such quantity");
    }
    [[nodiscard]] const Json& quotes() const { return quotes_; }

    void post(const std::string& file, const std::string& text, const std::vector<std::string>& beside = {}) {
        std::vector<std::string> words = {"post", write(file, text)};
        words.insert(words.end(), beside.begin(), beside.end());
        const Ended ended = ask(words);
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
    }
    void produce(const Run& run, const std::string& day = "2026-10-15") {
        const auto web = fmt::format("W1,{},early,C1,26-0417,{},25,{}\n", day, run.metres, run.sheets);
        const auto fg = fmt::format("M1,{},late,FG1,26-0417,{},{},{},{}\n", day, run.setup + run.rejected + run.boxes,
                                    run.setup, run.rejected, run.boxes);
        write("web.csv", web_header + web);
        post("fg.csv", machine_header + fg, {folder() + "/web.csv"});
    }

    [[nodiscard]] Json cost() const {
        const Ended ended = ask({"order", "cost", "26-0417", "--json"});
        INFO(ended.errors);
        REQUIRE(ended.exit_code == 0);
        return Json::parse(ended.output);
    }

private:
    Json quotes_;
};

Json variances(double volume, double yield, double usage, double price, double total) {
    return {{"volume", volume}, {"yield", yield}, {"usage", usage}, {"price", price}, {"total", total}};
}

// KL135 is KL136 now, wherever the file has it.
void rename_paper(PlantCopy& plant, const std::string& file) {
    std::ostringstream read;
    read << std::ifstream(plant.folder() + "/" + file).rdbuf();
    std::string text = read.str();
    for (auto at = text.find("KL135"); at != std::string::npos; at = text.find("KL135", at))
        text.replace(at, 5, "KL136");
    plant.write(file, text);
}

std::vector<std::string> keys_of(const Json& tree) {
    std::vector<std::string> keys;
    for (const auto& member : tree.items()) keys.push_back(member.key());
    return keys;
}

}  // namespace

TEST_CASE("an order that was made exactly as it was quoted cost what it was quoted at") {
    TakenOrder plant;
    plant.produce(plant.allowed(500));
    const Json cost = plant.cost();
    CHECK(cost["variance"] == variances(0.0, 0.0, 0.0, 0.0, 0.0));
    CHECK(cost["cost"]["quoted"] == plant.quotes()[0]["cost"]);
    CHECK(cost["cost"]["actual"] == plant.quotes()[0]["cost"]);
    CHECK(cost["cost_per_thousand"]["quoted"] == plant.quotes()[0]["cost_per_thousand"]);
    CHECK(cost["as_quoted"] == true);
    CHECK(cost["saved_cost"] == cost["cost"]["quoted"]);
}

TEST_CASE("where a model of the plant's own says what may be lost, it is held to that") {
    TakenOrder plant(TakenOrder::Rule::houserule);
    const Run run = plant.allowed(500);
    REQUIRE(run.rejected != TakenOrder().allowed(500).rejected);
    plant.produce(run);
    CHECK(plant.cost()["variance"]["total"] == 0.0);
    CHECK(plant.cost()["variance"]["usage"] == 0.0);
}

TEST_CASE("an order that a model refuses as it was made is refused with the model's reason") {
    TakenOrder plant(TakenOrder::Rule::houserule);
    plant.produce({60, 57, 40, 10, 7});
    const Ended ended = plant.ask({"order", "cost", "26-0417"});
    CHECK(ended.exit_code == 1);
    CHECK_THAT(ended.errors, Contains("7 of them: model houserule refuses it: nobody here makes seven"));
}

TEST_CASE("twice as many boxes, made as allowed, are volume: the other quote's cost less this one's") {
    TakenOrder plant;
    plant.produce(plant.allowed(1000));
    const Json cost = plant.cost();
    const double volume = cost["variance"]["volume"];
    CHECK(cost["variance"] == variances(volume, 0.0, 0.0, 0.0, volume));
    CHECK(cost["cost"]["actual"] == plant.quotes()[1]["cost"]);
    CHECK(cost["quantity"] == Json({{"quoted", 500.0}, {"made", 1000.0}}));
}

TEST_CASE("metres wasted on the corrugator are usage, and no one else's") {
    TakenOrder plant;
    Run run = plant.allowed(500);
    run.metres += 30;
    plant.produce(run);
    const Json cost = plant.cost();
    const double usage = cost["variance"]["usage"];
    CHECK(usage > 0);
    CHECK(cost["variance"] == variances(0.0, 0.0, usage, 0.0, usage));
    // 30 m of a roll of 2.45 m: KL135 of 135 g/m2 at 0.668 a kg, with 1.2 % lost on the roll.
    CHECK(cost["inputs"][0]["variance"]["usage"].get<double>() ==
          Approx(30 * 2.45 * 0.135 / 0.988 * 0.668).margin(0.0002));
}

TEST_CASE("rejects at a converter, and the board made for them as allowed, are yield") {
    TakenOrder plant;
    Run run = plant.allowed(500);
    // One row more of four sheets off the knife: 1.44 m, and what the corrugator may lose on it.
    REQUIRE(std::fmod(run.sheets, 4) == 3);
    run.rejected += 4;
    run.sheets += 4;
    run.metres += 1.44 / (1 - 0.018);
    plant.produce(run);
    const Json cost = plant.cost();
    const double yield = cost["variance"]["yield"];
    CHECK(yield > 0);
    CHECK(cost["variance"] == variances(0.0, yield, 0.0, 0.0, yield));
    CHECK(cost["steps"][1]["actual"]["fed"] == run.sheets);
}

TEST_CASE("paper that became dearer by the day it ran is price: what was used times the rise") {
    TakenOrder plant;
    plant.replace("papers.yaml", "{from: 2026-09-01, per_tonne: 668}",
                  "{from: 2026-09-01, per_tonne: 668}, {from: 2026-10-20, per_tonne: 700}");
    plant.produce(plant.allowed(500), "2026-10-21");
    const Json cost = plant.cost();
    const double price = cost["variance"]["price"];
    CHECK(cost["variance"] == variances(0.0, 0.0, 0.0, price, price));
    const double used = cost["inputs"][0]["kg"]["used"];
    CHECK(price == Approx(used * 0.032).margin(0.0001));
    CHECK(cost["inputs"][0]["price"] == Json({{"standard", 0.668}, {"actual", 0.7}}));
}

TEST_CASE("a price is weighted by what each of the corrugator's runs used") {
    TakenOrder plant;
    plant.replace("papers.yaml", "{from: 2026-09-01, per_tonne: 668}",
                  "{from: 2026-09-01, per_tonne: 668}, {from: 2026-10-20, per_tonne: 708}");
    const Run run = plant.allowed(500);
    plant.post("web.csv",
               web_header + fmt::format("W1,2026-10-15,early,C1,26-0417,{},25,{}\nW2,2026-10-21,early,C1,26-0417,{},0,"
                                        "147\n",
                                        run.metres * 0.75, run.sheets - 147, run.metres * 0.25));
    plant.post("fg.csv",
               machine_header + fmt::format("M1,2026-10-22,late,FG1,26-0417,{},40,{},500\n", run.sheets, run.rejected));
    const Json cost = plant.cost();
    CHECK(cost["inputs"][0]["price"]["actual"].get<double>() == Approx(0.678));
    CHECK(cost["days"] == Json({"2026-10-15", "2026-10-22"}));
    CHECK(cost["steps"][0]["setups"] == 1.0);
}

TEST_CASE("a second run with a setup of its own costs a second setup") {
    TakenOrder plant;
    const Run run = plant.allowed(500);
    plant.post("web.csv",
               web_header + fmt::format("W1,2026-10-15,early,C1,26-0417,{},25,{}\n", run.metres, run.sheets));
    plant.post("fg.csv", machine_header + fmt::format("M1,2026-10-15,late,FG1,26-0417,300,20,0,280\n"
                                                      "M2,2026-10-16,early,FG1,26-0417,{},20,{},220\n",
                                                      run.sheets - 300, run.rejected));
    const Json cost = plant.cost();
    CHECK(cost["steps"][1]["setups"] == 2.0);
    // 25 minutes at 95 + 120 an hour, and nothing else: sheets, setup sheets and rejects are as allowed.
    CHECK(cost["variance"]["yield"].get<double>() == Approx(25.0 / 60 * (95 + 120)).margin(0.0002));
}

TEST_CASE("a row that was reversed costs nothing") {
    TakenOrder plant;
    plant.post("wrong.csv", machine_header + "M0,2026-10-15,late,FG1,26-0417,500,40,100,360\n");
    CHECK(plant.ask({"reverse", "M0", "--why", "another order's"}).exit_code == 0);
    plant.produce(plant.allowed(500));
    CHECK(plant.cost()["variance"]["total"] == 0.0);
}

TEST_CASE("another machine is costed at its own rates, and the answer names it") {
    TakenOrder plant;
    const Run run = plant.allowed(500);
    plant.post("web.csv",
               web_header + fmt::format("W1,2026-10-15,early,C1,26-0417,{},25,{}\n", run.metres, run.sheets));
    plant.post("fg.csv",
               machine_header + fmt::format("M1,2026-10-15,late,FG2,26-0417,{},40,{},500\n", run.sheets, run.rejected));
    const Json cost = plant.cost();
    CHECK(cost["steps"][1]["quoted"] == "FG1");
    CHECK(cost["steps"][1]["costed_as"] == "FG2");
    CHECK(cost["variance"]["yield"] != 0.0);
    CHECK(cost["variance"]["usage"] == 0.0);
    CHECK_THAT(plant.ask({"order", "cost", "26-0417"}).output, Contains("! FG1 was quoted, FG2 ran"));
}

TEST_CASE("a machine that came after the quote is costed as today's files have it") {
    TakenOrder plant;
    plant.replace("machines.yaml", "\nconverters:\n",
                  "\nconverters:\n  FG9: {kind: folder-gluer, sheet: {length: [300, 2400], width: [250, 1150]}, "
                  "colours: 3,\n        setup: {minutes: 25, sheets: 40}, run_waste: 0.012, speed: 9000,\n        "
                  "hourly: {labour: 195, fixed: 120}, power: 75}\n");
    const Run run = plant.allowed(500);
    plant.post("web.csv",
               web_header + fmt::format("W1,2026-10-15,early,C1,26-0417,{},25,{}\n", run.metres, run.sheets));
    plant.post("fg.csv",
               machine_header + fmt::format("M1,2026-10-15,late,FG9,26-0417,{},40,{},500\n", run.sheets, run.rejected));
    // A crew that costs 100 more an hour, over 25 minutes and the sheets fed at 9000 an hour.
    CHECK(plant.cost()["variance"]["yield"].get<double>() ==
          Approx(100 * (25.0 / 60 + run.sheets / 9000)).margin(0.0002));
}

TEST_CASE("an order of which nothing, or not all, was posted is refused with what is missing") {
    TakenOrder plant;
    const Ended nothing = plant.ask({"order", "cost", "26-0417"});
    CHECK(nothing.exit_code == 1);
    CHECK(nothing.output.empty());
    CHECK_THAT(nothing.errors,
               Contains("missing runs of C1, the corrugator") && Contains("missing runs of FG1, step 1"));
    plant.post("web.csv", web_header + "W1,2026-10-15,early,C1,26-0417,226,25,547\n");
    plant.post("fg.csv", machine_header + "M1,2026-10-15,late,FG1,26-0417,300,40,4,256\n");
    const Ended half = plant.ask({"order", "cost", "26-0417", "--json"});
    CHECK(half.exit_code == 1);
    CHECK(half.output.empty());
    CHECK_THAT(half.errors, Contains("247 of 547 sheets still wait for it, and 256 of 500 boxes are made"));
    const Ended unknown = plant.ask({"order", "cost", "26-9999"});
    CHECK(unknown.exit_code == 1);
    CHECK_THAT(unknown.errors, Contains("no such order: found '26-9999'"));
}

TEST_CASE("a paper that is no longer in the plant's files has no price, and the message names it") {
    TakenOrder plant;
    plant.produce(plant.allowed(500));
    for (const auto* file : {"papers.yaml", "boards.yaml"}) rename_paper(plant, file);
    const Ended ended = plant.ask({"order", "cost", "26-0417"});
    CHECK(ended.exit_code == 3);
    CHECK(ended.output.empty());
    CHECK_THAT(ended.errors,
               Contains("papers.yaml: papers.KL135: the order used this paper, and it is no longer there"));
}

TEST_CASE("what changed of the plant since the quote changes none of what was quoted") {
    TakenOrder plant;
    plant.produce(plant.allowed(500));
    plant.replace("machines.yaml", "hourly: {labour: 240, fixed: 380}", "hourly: {labour: 999, fixed: 999}");
    plant.replace("plugins.yaml", "scrap_price: 85", "scrap_price: 5");
    plant.replace("plugins.yaml", "  - tooling:", "  #- tooling:");
    CHECK(plant.cost()["variance"]["total"] == 0.0);
    CHECK(plant.cost()["as_quoted"] == true);
}

TEST_CASE("a quote at another day's prices is costed from that day's") {
    PlantCopy plant;
    const auto ask = [&](const std::vector<std::string>& words) { return ask_at(plant.folder(), words); };
    const Json answer =
        Json::parse(ask({"quote", demo_request("R-1001"), "--save", "--json", "--date", "2026-02-02"}).output);
    const Json& quote = answer["requests"][0]["quotes"][0];
    CHECK(ask({"order", "Q000001", "500", "--as", "26-0417"}).exit_code == 0);
    plant.write("web.csv", web_header + fmt::format("W1,2026-02-03,early,C1,26-0417,{},25,547\n",
                                                    quote["web_length_m"].get<double>()));
    plant.write("fg.csv", machine_header + "M1,2026-02-03,late,FG1,26-0417,547,40,7,500\n");
    CHECK(ask({"post", plant.folder() + "/web.csv", plant.folder() + "/fg.csv"}).exit_code == 0);
    const Json cost = Json::parse(ask({"order", "cost", "26-0417", "--json"}).output);
    CHECK(cost["as_quoted"] == true);
    CHECK(cost["variance"]["total"] == 0.0);
    CHECK(cost["cost"]["quoted"] == quote["cost"]);
}

TEST_CASE("a plugin whose file has changed since the quote is reported, in text and in JSON") {
    PlantCopy plant;
    const auto ask = [&](const std::vector<std::string>& words) { return ask_at(plant.folder(), words); };
    const std::string item = plant.folder() + "/plugins";
    std::filesystem::create_directory(item);
    std::filesystem::copy_file(std::string(FLUTEBOOK_PLUGIN_DIR) + "/delivery.so", item + "/delivery.so");
    CHECK(ask({"quote", demo_request("R-1001"), "--save"}).exit_code == 0);
    CHECK(ask({"order", "Q000001", "500", "--as", "26-0417"}).exit_code == 0);
    plant.write("web.csv", web_header + "W1,2026-10-15,early,C1,26-0417,226,25,547\n");
    plant.write("fg.csv", machine_header + "M1,2026-10-15,late,FG1,26-0417,547,40,7,500\n");
    CHECK(ask({"post", plant.folder() + "/web.csv", plant.folder() + "/fg.csv"}).exit_code == 0);
    CHECK(Json::parse(ask({"order", "cost", "26-0417", "--json"}).output)["plugins"].empty());
    // The same model with a byte more at its end, where nothing reads it.
    std::ofstream(item + "/delivery.so", std::ios::app | std::ios::binary) << '\0';
    const Json cost = Json::parse(ask({"order", "cost", "26-0417", "--json"}).output);
    REQUIRE(cost["plugins"].size() == 1);
    CHECK(cost["plugins"][0]["id"] == "delivery");
    CHECK(cost["plugins"][0]["was"]["sha256"] != cost["plugins"][0]["now"]["sha256"]);
    CHECK(cost["as_quoted"] == false);
    CHECK_THAT(ask({"order", "cost", "26-0417"}).output, Contains("! plugin delivery 1.2.0, another file: "));
}

TEST_CASE("an order's cost in JSON has the documented keys, and its parts add up") {
    TakenOrder plant;
    Run run = plant.allowed(1000);
    run.metres += 12.5;
    run.setup += 9;
    run.rejected -= 9;
    plant.produce(run, "2026-11-20");
    const Json cost = plant.cost();
    CHECK(keys_of(cost) == std::vector<std::string>{"answer",    "answer_version", "order",
                                                    "quote",     "request",        "customer",
                                                    "currency",  "quantity",       "days",
                                                    "cost",      "variance",       "cost_per_thousand",
                                                    "as_quoted", "saved_cost",     "losses_quoted_by",
                                                    "plugins",   "steps",          "lines",
                                                    "inputs",    "other_variance", "mass_kg"});
    CHECK(keys_of(cost["cost"]) == std::vector<std::string>{"quoted", "standard", "converted", "used", "actual"});
    CHECK(keys_of(cost["steps"][0]) ==
          std::vector<std::string>{"step", "quoted", "ran", "costed_as", "setups", "allowed", "actual"});
    CHECK(keys_of(cost["inputs"][0]) == std::vector<std::string>{"material", "ply", "kg", "price", "cost", "variance"});
    CHECK(keys_of(cost["mass_kg"]["actual"]) ==
          std::vector<std::string>{"issued", "adhesive", "product", "loss", "floor"});
    for (const auto* kind : {"volume", "yield", "usage", "price", "total"}) {
        CAPTURE(kind);
        double lines = 0;
        for (const Json& line : cost["lines"]) lines += line["variance"][kind].get<double>();
        double inputs = cost["other_variance"][kind];
        for (const Json& input : cost["inputs"]) inputs += input["variance"][kind].get<double>();
        CHECK(lines == Approx(cost["variance"][kind].get<double>()).margin(1e-9));
        CHECK(inputs == Approx(cost["variance"][kind].get<double>()).margin(1e-9));
    }
    const Json& mass = cost["mass_kg"]["actual"];
    double out = mass["product"].get<double>() + mass["floor"].get<double>();
    for (const auto& cause : mass["loss"].items()) out += cause.value().get<double>();
    CHECK(out == Approx(mass["issued"].get<double>() + mass["adhesive"].get<double>()).epsilon(1e-9));
}

TEST_CASE("an order's cost on a page fits 100 columns and comes to the same bytes each time") {
    TakenOrder plant;
    Run run = plant.allowed(5000);
    run.metres += 250;
    plant.produce(run, "2026-10-16");
    const Ended page = plant.ask({"order", "cost", "26-0417"});
    CHECK(page.exit_code == 0);
    CHECK(page.errors.empty());
    for (const std::string& line : lines_of(page.output)) CHECK(line.size() <= 100);
    for (const auto* said : {"Quoted against actual", "volume", "yield", "usage", "price", "KL135 ply 1",
                             "adhesive, dry", "all other cost", "boxes made", "difference"})
        CHECK_THAT(page.output, Contains(said));
    CHECK(plant.ask({"order", "cost", "26-0417"}).output == page.output);
}

TEST_CASE("order cost asks for a number, and order for its quote and quantity") {
    CHECK_THAT(ask({"order", "cost"}).errors, Contains("flutebook order cost: NUMBER is required"));
    CHECK(ask({"order", "cost"}).exit_code == 2);
    CHECK_THAT(ask({"order"}).errors, Contains("flutebook order: QUOTE is required"));
    CHECK_THAT(ask({"order", "Q000001"}).errors, Contains("flutebook order: QUANTITY is required"));
    CHECK(ask({"order", "Q000001"}).exit_code == 2);
    CHECK_THAT(ask({"order", "cost", "--help"}).output, Contains("flutebook order cost 26-0417 --json"));
}
