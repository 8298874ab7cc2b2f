#include "config/demo/history/yard.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>

namespace flutebook::demo {

namespace {

using std::chrono::days;
using std::chrono::months;
using std::chrono::year_month;

constexpr const char* grade = "4.01.00";
// It rained for a week, and the bales stood outside.
constexpr Day wet_day{std::chrono::year(2026) / 2 / 9};
constexpr Day counting_day{std::chrono::year(2025) / 12 / 31};

// One day after the other: what lies loose, and what stands baled.
class Yard {
public:
    Yard(const plant::Plant& plant, const Traces& traces, Documents& documents, Draws& draws)
        : plant_(plant), traces_(traces), documents_(documents), draws_(draws) {}

    void run() {
        for (Day day = first_day_of(first_month); day <= last_day(); day += days(1)) {
            loose_kg_ += sum(traces_.scrap_kg, day) * true_mass;
            floor_kg_ += sum(traces_.floor_kg, day);
            if (is_working_day(day)) work(day);
            if (day == counting_day) count(day);
        }
    }

private:
    // The scales find a little less than papers and glue weigh by their names.
    static constexpr double true_mass = 0.9985;
    static constexpr double lorry_kg = 5200;

    static double sum(const std::multimap<Day, double>& by_day, Day day) {
        double all = 0;
        const auto [first, last] = by_day.equal_range(day);
        for (auto entry = first; entry != last; ++entry) all += entry->second;
        return all;
    }

    void work(Day day) {
        if (baled_kg_ > lorry_kg) send(day);
        if (std::chrono::year_month_day(day).day() == std::chrono::day(20)) take_back(day);
        while (loose_kg_ > 620) {
            const double bale_kg = std::round(draws_.between(470, 570));
            documents_.add(File::bales, day, {draws_.pick(plant_.shifts), grade, written(bale_kg)});
            loose_kg_ -= bale_kg;
            baled_kg_ += bale_kg;
        }
    }

    void send(Day day) {
        const auto& mill = plant_.mills[loads_++ % plant_.mills.size()];
        const bool is_wet = !was_wet_ && day >= wet_day;
        was_wet_ = was_wet_ || is_wet;
        const double moisture = is_wet ? 0.165 : std::round(draws_.between(0.078, 0.108) * 1000) / 1000;
        const double their_kg = std::round(baled_kg_ * draws_.between(0.992, 1.004) / 10) * 10;
        documents_.add(File::tickets, day,
                       {mill.name, grade, written(baled_kg_), written(their_kg), written(moisture, 3),
                        written(draws_.between(78, 93), 2)},
                       is_wet ? "wet: a week of rain on open bales" : "");
        baled_kg_ = 0;
    }

    void take_back(Day day) {
        const double kg = draws_.whole(40, 150);
        documents_.add(File::scrap, day, {draws_.pick(plant_.shifts), "finished", "returns", written(kg)});
        loose_kg_ += kg;
    }

    // What is found differs from the book: a little less loose scrap, a few boards more than anybody knew of.
    void count(Day day) {
        documents_.add(File::counts, day, {"loose-scrap", "", written(loose_kg_), ""});
        documents_.add(File::counts, day, {"bale-yard", "", written(baled_kg_), ""});
        documents_.add(File::counts, day, {"floor", "", written(floor_kg_ + 18), ""});
    }

    const plant::Plant& plant_;
    const Traces& traces_;
    Documents& documents_;
    Draws& draws_;
    double loose_kg_ = opening_scrap_kg, baled_kg_ = opening_bales_kg, floor_kg_ = 0;
    std::size_t loads_ = 0;
    bool was_wet_ = false;
};

// Crews and machines are there when nothing runs, too.
constexpr double idle_share = 0.2;
constexpr double power_price = 0.148, fuel_per_tonne = 21.5;

}  // namespace

void write_yard(const plant::Plant& plant, const Traces& traces, Documents& documents, Draws& draws) {
    Yard(plant, traces, documents, draws).run();
}

void write_costs(const plant::Plant& plant, const Traces& traces, Documents& documents, Draws& draws) {
    for (int i = 0; i < month_count; ++i) {
        const auto month = first_month + months(i);
        const Day day = first_day_of(month + months(1)) - days(1);
        const auto bill = [&](const std::string& centre, const char* of, double amount) {
            documents.add(File::costs, day, {centre, of, written(amount * draws.between(0.96, 1.05), 2)});
        };
        const auto bill_machine = [&](const auto& machine, double fuel) {
            const auto found = traces.work.find({month, machine.code});
            if (found == traces.work.end()) return;
            const auto& work = found->second;
            bill(machine.code, "energy", work.hours * machine.power_kw * power_price + work.kg / 1000 * fuel);
            bill(machine.code, "system",
                 work.hours * (machine.hourly.labour + machine.hourly.fixed) * (1 + idle_share));
        };
        for (const auto& machine : plant.corrugators) bill_machine(machine, fuel_per_tonne);
        for (const auto& machine : plant.converters) bill_machine(machine, 0);
        bill("loose-scrap", "energy", 44);
        bill("loose-scrap", "system", 930);
        bill("loose-scrap", "waste-management", 185);
    }
}

}  // namespace flutebook::demo
