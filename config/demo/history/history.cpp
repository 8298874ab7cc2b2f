// Writes the demo plant's history: fourteen months of production documents for its orders, from a fixed seed, so that
// the same plant and quotes give the same bytes.
//
//   flutebook_history PLANT FOLDER FIRST_QUOTES.json SECOND_QUOTES.json
//
// The quotes are the answers of `quote --save --json`. FOLDER gets orders.txt, a line `QUOTE QUANTITY NUMBER` for each
// order to take, a folder of documents for each month, and corrections/: a row that was keyed wrongly, and the one that
// was meant.
#include <fmt/format.h>

#include <exception>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include "config/demo/history/documents.hpp"
#include "config/demo/history/floor.hpp"
#include "config/demo/history/plan.hpp"
#include "config/demo/history/quotes.hpp"
#include "config/demo/history/yard.hpp"
#include "host/base/errors.hpp"

using namespace flutebook;
using namespace flutebook::demo;

namespace {

constexpr std::uint64_t seed = 20251001;

void open_books(const plant::Plant& plant, Floor& floor, Documents& documents) {
    const Day eve = first_day_of(first_month) - std::chrono::days(1);
    documents.add(File::counts, eve, {"loose-scrap", "", written(opening_scrap_kg), ""});
    documents.add(File::counts, eve, {"bale-yard", "", written(opening_bales_kg), ""});
    const std::pair<const char*, double> standing[] = {{"TL125", 1250}, {"RF105", 870}};
    for (const auto& [code, kg] : standing) {
        const auto& machine = plant.corrugators.front().code;
        for (const auto& paper : plant.papers) {
            const auto* price = paper.price_on(std::chrono::year_month_day(eve));
            if (paper.code != code || price == nullptr) continue;
            documents.add(File::counts, eve, {machine, code, written(kg), written(kg * price->per_tonne / 1000, 2)});
            floor.open_with(machine, code, kg);
        }
    }
}

bool is_last_of_month(const std::vector<Make>& makes, std::size_t i) {
    for (std::size_t j = i + 1; j < makes.size() && month_of(makes[j].start) == month_of(makes[i].start); ++j)
        if (makes[j].corrugator == makes[i].corrugator) return false;
    return true;
}

void run_floor(const std::vector<Make>& makes, Floor& floor) {
    for (std::size_t i = 0; i < makes.size(); ++i) {
        floor.run(makes[i], is_last_of_month(makes, i) ? Floor::Butts::stay : Floor::Butts::back);
        if (i + 1 == makes.size() || month_of(makes[i + 1].start) != month_of(makes[i].start))
            floor.count_papers(first_day_of(month_of(makes[i].start) + std::chrono::months(1)) - std::chrono::days(1));
    }
}

void write_corrections(const std::string& folder) {
    std::filesystem::create_directories(folder);
    const std::string header = "ref,date,shift,centre,cause,kg,note\n";
    save_text(folder + "/2026-07-wrong.csv", header + "S-2607-901,2026-07-16,late,finished,returns,640,\n");
    save_text(folder + "/2026-07-right.csv",
              header + "S-2607-902,2026-07-16,late,finished,returns,64,instead of S-2607-901\n");
}

void write_history(const std::string& plant_folder, const std::string& folder, const std::vector<std::string>& quotes) {
    const auto plant = plant::read_plant(plant_folder);
    const auto orders = plan_orders();
    const auto makes = read_makes(plant, orders, quotes);
    Draws draws(seed);
    Documents documents;
    Floor floor(plant, documents, draws);
    open_books(plant, floor, documents);
    run_floor(makes, floor);
    write_yard(plant, floor.traces(), documents, draws);
    write_costs(plant, floor.traces(), documents, draws);
    documents.save(folder);
    write_corrections(folder + "/corrections");
    std::string list;
    for (std::size_t i = 0; i < makes.size(); ++i)
        list += fmt::format("{} {} {}\n", makes[i].quote, orders[i].quantity, orders[i].number);
    save_text(folder + "/orders.txt", list);
}

}  // namespace

int main(int count, char** words) {
    if (count != 5) {
        std::cerr << "usage: flutebook_history PLANT FOLDER FIRST_QUOTES.json SECOND_QUOTES.json\n";
        return 2;
    }
    try {
        write_history(words[1], words[2], {words[3], words[4]});
        return 0;
    } catch (const InputError& error) {
        for (const auto& line : error.lines()) std::cerr << line << '\n';
    } catch (const std::exception& error) {
        std::cerr << "flutebook_history: " << error.what() << '\n';
    }
    return 1;
}
