// Invented numbers around the plant's own allowances: a little better or worse than allowed, at times much worse.
#include "config/demo/history/floor.hpp"

#include <algorithm>
#include <cmath>

#include "config/demo/history/plan.hpp"

namespace flutebook::demo {

namespace {

using std::chrono::year_month;

constexpr year_month bad_month_of_fg1{std::chrono::year(2026), std::chrono::March};
constexpr year_month unexplained_month{std::chrono::year(2026), std::chrono::May};
// The roll ends of the next small run were weighed, and the sheet lay in a drawer until June was over.
constexpr Day drawer_day{std::chrono::year(2026) / 6 / 22};

constexpr double most_trim = 0.1;  // of the roll

}  // namespace

std::string Floor::shift(std::size_t on) {
    return plant_.shifts[(first_shift_ + on) % plant_.shifts.size()];
}

void Floor::note_work(Day day, const std::string& machine, double hours, double kg) {
    auto& work = traces_.work[{month_of(day), machine}];
    work.hours += hours;
    work.kg += kg;
}

// At times the order's own roll is out of stock: then a wider one, or a narrower one with a sheet less on it that does
// not throw away too much.
Floor::Web Floor::choose_web(const Make& make) {
    const Web web{make.roll_m, make.outs, true};
    if (!draws_.one_in(9)) return web;
    for (const double roll_m : make.rolls_m)
        if (roll_m > make.roll_m && roll_m * 1000 <= make.corrugator->roll_width_mm.high)
            return {roll_m, make.outs, false};
    for (const double roll_m : make.rolls_m) {
        const double trim_m = roll_m - (make.outs - 1) * make.slit_m;
        if (roll_m < make.roll_m && roll_m * 1000 >= make.corrugator->roll_width_mm.low && make.outs > 1 &&
            trim_m * 1000 >= make.corrugator->trim_min_mm && trim_m <= most_trim * roll_m)
            return {roll_m, make.outs - 1, false};
    }
    return web;
}

// Runs the web; a long one goes on in the next shift. The good sheets that came off.
double Floor::combine(const Make& make, const Web& web, Butts butts) {
    constexpr double longest_m = 24000;
    const auto& machine = *make.corrugator;
    const double waste = machine.run_waste * draws_.between(0.75, 1.4);
    const double rows = std::ceil(make.sheets * draws_.between(1.001, 1.012) / web.outs);
    const double parts = std::ceil(rows * make.chop_m / longest_m);
    double sheets = 0;
    for (double part = 0; part < parts; ++part) {
        const double change_m = part > 0 ? 0 : std::ceil(machine.order_change_m * draws_.between(0.8, 1.35));
        const double cuts = std::floor(rows * (part + 1) / parts) - std::floor(rows * part / parts);
        const double metres = std::ceil(cuts * make.chop_m / (1 - waste)) + change_m;
        const double good = cuts * web.outs - draws_.whole(0, web.outs - 1);
        const auto file = web.is_own ? File::corrugator : File::other_rolls;
        const auto crew = shift(static_cast<std::size_t>(part));
        std::vector<std::string> fields = {crew, machine.code, make.number};
        if (!web.is_own) fields.insert(fields.end(), {written(web.roll_m * 1000), written(web.outs)});
        fields.insert(fields.end(), {written(metres), written(change_m), written(good)});
        documents_.add(file, make.start, fields);
        const double combined_kg = metres * web.roll_m * make.gsm / 1000;
        note_work(make.start, machine.code, metres / machine.speed_double_m_min / 60 + machine.order_change_min / 60,
                  combined_kg);
        traces_.scrap_kg.emplace(make.start, combined_kg - good * make.sheet_kg());
        issue(make, web, metres, crew, part + 1 < parts ? Butts::stay : butts);
        sheets += good;
    }
    return sheets;
}

// Whole rolls from the store, until there is enough; what is left goes back, unless the web goes on with it.
void Floor::issue(const Make& make, const Web& web, double metres, const std::string& crew, Butts butts) {
    const auto& code = make.corrugator->code;
    const double unexplained = month_of(make.start) == unexplained_month ? 0.0035 : 0;
    double ends_kg = 0;
    for (const auto& ply : make.papers) {
        const double on_web_kg = metres * web.roll_m * ply.gsm / 1000;
        const double stripped_kg = on_web_kg * make.corrugator->roll_loss * draws_.between(0.8, 1.3);
        // Paper is a little heavier or lighter than it says, and the counters of the web are not exact.
        const double need_kg = on_web_kg * (1 + unexplained + draws_.between(-0.0015, 0.002)) + stripped_kg;
        auto& standing_kg = stock_[{code, ply.paper}];
        while (standing_kg < need_kg) {
            const double roll_kg = std::round(web.roll_m * draws_.between(760, 900));
            documents_.add(File::paper, make.start, {crew, code, ply.paper, written(roll_kg)});
            standing_kg += roll_kg;
        }
        standing_kg = std::round(standing_kg - need_kg);
        ends_kg += stripped_kg;
        if (butts == Butts::stay || standing_kg == 0) continue;
        documents_.add(File::paper, make.start, {crew, code, ply.paper, written(-standing_kg)});
        standing_kg = 0;
    }
    const double weighed_kg = std::round(ends_kg);
    const bool is_late = !was_late_ && make.start >= drawer_day && weighed_kg < 100;
    was_late_ = was_late_ || is_late;
    const auto day = is_late ? working_day(first_day_of(month_of(make.start) + std::chrono::months(1)), 0) : make.start;
    documents_.add(File::scrap, day, {crew, code, "roll-ends", written(weighed_kg)},
                   is_late ? "late: weighed on " + written(make.start) + " and found in a drawer in July" : "");
    traces_.scrap_kg.emplace(make.start, weighed_kg);
}

// One machine's run: what is fed, and what goes on to the next. Many pieces take two shifts, with one setup.
double Floor::feed(const Make& make, std::size_t step, Day day, double pieces) {
    const auto& machine = *make.route[step - 1];
    const bool is_bad = machine.code == "FG1" && month_of(day) == bad_month_of_fg1;
    const bool is_last = step == make.route.size();
    const double piece_kg = step <= make.parting ? make.sheet_kg() : make.box_kg();
    const double shifts = pieces > 60000 ? 2 : 1;
    double went_on = 0;
    for (double part = 0; part < shifts; ++part) {
        const double fed = part == 0 ? std::ceil(pieces / shifts) : pieces - std::ceil(pieces / shifts);
        const double allowed = part == 0 ? machine.setup_sheets : 0;
        const double setup = std::min(fed, std::round(allowed * draws_.between(0.8, 1.3) * (is_bad ? 1.7 : 1)));
        const double rejected =
            std::ceil((fed - setup) * machine.run_waste * draws_.between(0.6, 1.4) * (is_bad ? 3.5 : 1));
        const double good = fed - setup - rejected;
        const double holds = step == make.parting ? good * make.ups : good;
        const double boxes = holds - std::floor(holds * draws_.between(0, 0.003));
        documents_.add(File::converters, day,
                       {shift(static_cast<std::size_t>(part) + step), machine.code, make.number, written(fed),
                        written(setup), written(rejected), is_last ? written(boxes) : ""});
        const double on_kg = is_last                ? boxes * make.box_kg()
                             : step >= make.parting ? holds * make.box_kg()
                                                    : good * make.sheet_kg();
        traces_.scrap_kg.emplace(day, fed * piece_kg - on_kg);
        traces_.floor_kg.emplace(day, (is_last ? 0 : on_kg) - fed * piece_kg);
        note_work(day, machine.code, fed / machine.speed_per_h + (part == 0 ? machine.setup_min / 60 : 0),
                  fed * piece_kg);
        went_on += is_last ? boxes : holds;
    }
    return went_on;
}

void Floor::convert(const Make& make, double sheets) {
    if (make.route.empty()) return;
    traces_.floor_kg.emplace(make.start, sheets * make.sheet_kg());
    auto day = make.start;
    double pieces = sheets;
    if (draws_.one_in(6)) {
        // A fork-lift went into a stack.
        const double spoilt = std::min(draws_.whole(5, 60), std::floor(pieces * 0.01));
        const double kg = std::floor(spoilt * make.sheet_kg());
        day = working_day(day, 1);
        if (kg > 0 && day <= last_day()) {
            documents_.add(File::scrap, day, {shift(1), "floor", "damage", written(kg)});
            traces_.scrap_kg.emplace(day, kg);
            traces_.floor_kg.emplace(day, -kg);
            pieces -= spoilt;
        }
    }
    for (std::size_t step = 1; step <= make.route.size(); ++step) {
        day = working_day(day, static_cast<int>(draws_.whole(1, 2)));
        pieces = feed(make, step, day, pieces);
    }
}

void Floor::run(const Make& make, Butts butts) {
    first_shift_ = draws_.index(plant_.shifts.size());
    const auto web = choose_web(make);
    convert(make, combine(make, web, butts));
}

void Floor::count_papers(Day day) {
    for (const auto& [key, kg] : stock_)
        if (kg > 0) documents_.add(File::counts, day, {key.first, key.second, written(kg), ""});
}

}  // namespace flutebook::demo
