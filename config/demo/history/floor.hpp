// The floor of the demo plant: each order run on the corrugator and through its converters, with what goes wrong there.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "config/demo/history/documents.hpp"
#include "config/demo/history/draws.hpp"
#include "config/demo/history/quotes.hpp"
#include "host/plant/plant.hpp"

namespace flutebook::demo {

/// How much a machine did in a month.
struct Work {
    double hours = 0, kg = 0;
};

/// What the floor leaves to others: the scrap by day, and the work by month and machine.
struct Traces {
    std::multimap<Day, double> scrap_kg;  // nominal
    std::multimap<Day, double> floor_kg;  // what came to the floor, less what left it
    std::map<std::pair<std::chrono::year_month, std::string>, Work> work;
};

/// Runs the orders one after the other. `plant` and `documents` must outlive it.
class Floor {
public:
    Floor(const plant::Plant& plant, Documents& documents, Draws& draws)
        : plant_(plant), documents_(documents), draws_(draws) {}

    /// Papers that stood at the corrugators when the ledger began, by corrugator and paper, kg.
    void open_with(const std::string& corrugator, const std::string& paper, double kg) {
        stock_[{corrugator, paper}] = kg;
    }

    /// What is left on the rolls goes back to the store, or stays at the corrugator.
    enum class Butts { back, stay };
    void run(const Make& make, Butts butts);

    /// Counts what stands at the corrugators at the end of a day.
    void count_papers(Day day);

    [[nodiscard]] const Traces& traces() const { return traces_; }

private:
    struct Web {
        double roll_m, outs;
        bool is_own;
    };
    [[nodiscard]] Web choose_web(const Make& make);
    [[nodiscard]] double combine(const Make& make, const Web& web, Butts butts);
    void issue(const Make& make, const Web& web, double metres, const std::string& crew, Butts butts);
    void convert(const Make& make, double sheets);
    [[nodiscard]] double feed(const Make& make, std::size_t step, Day day, double pieces);
    [[nodiscard]] std::string shift(std::size_t on);
    void note_work(Day day, const std::string& machine, double hours, double kg);

    const plant::Plant& plant_;
    Documents& documents_;
    Draws& draws_;
    Traces traces_;
    std::map<std::pair<std::string, std::string>, double> stock_;
    std::size_t first_shift_ = 0;
    bool was_late_ = false;
};

}  // namespace flutebook::demo
