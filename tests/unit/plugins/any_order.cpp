// See any_order.hpp.
#include "tests/unit/plugins/any_order.hpp"

#include <rapidcheck.h>

#include <cmath>
#include <cstddef>

namespace flutebook::fixture {

namespace {

// A decimal between two numbers, drawn in thousandths of the way, the ends included.
double between(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

double whole(int low, int high) {
    return *rc::gen::inRange(low, high + 1);
}

// As often small as large: 1 to 10^decades.
double of_any_size(int decades) {
    return std::floor(std::pow(10.0, between(0, decades)));
}

// A share that is lost: often none, mostly little, now and then nearly all.
double any_waste() {
    const double kind = whole(0, 9);
    if (kind < 2) return 0;
    return kind < 9 ? between(0, 0.3) : between(0.3, 0.9);
}

void draw_board(BenchRow& order) {
    order.plies = *rc::gen::element(2u, 3u, 5u);
    std::vector<double> grammage, take_up, adhesive, moisture, price;
    double board = 0;
    for (std::uint32_t p = 0; p < order.plies; ++p) {
        const bool medium = p % 2 == 1;
        grammage.push_back(between(60, 440));
        take_up.push_back(medium ? between(1.1, 1.6) : 1);
        adhesive.push_back(medium ? between(0, 14) : 0);
        moisture.push_back(between(0, 0.12));
        price.push_back(between(0, 2));
        board += grammage.back() * take_up.back() + adhesive.back();
    }
    order.facts.insert({{"ply.grammage", grammage},
                        {"ply.take_up", take_up},
                        {"ply.adhesive", adhesive},
                        {"ply.moisture", moisture},
                        {"ply.price", price},
                        {"board.made_here", whole(0, 5) == 0 ? 0 : 1},
                        {"board.grammage", board},
                        {"board.caliper", between(0.001, 0.01)}});
}

void draw_web(BenchRow& order) {
    const double chop = between(0.002, 5);
    const double slit = between(0.002, 2.5);
    const double ups = whole(1, 12);
    const double outs = whole(1, 12);
    const double trim = whole(0, 2) == 0 ? 0 : between(0, 0.4);
    const double filled = whole(0, 2) == 0 ? 1 : between(0.1, 1);
    // Trim that is shared is at least none, whatever the roll's own.
    const double average_trim = whole(0, 3) == 0 ? between(0, 0.3) : trim / (outs * slit + trim);
    const double share = outs * slit / ((outs * slit + trim) * (1 - average_trim));
    order.facts.insert({{"sheet.chop", chop},
                        {"sheet.area", chop * slit},
                        {"sheet.ups", ups},
                        {"web.outs", outs},
                        {"web.trim", trim},
                        {"web.roll_width", outs * slit + trim},
                        {"web.share", share},
                        {"web.order_change", whole(0, 3) == 0 ? 0 : between(0, 200)},
                        {"web.roll_loss", any_waste() / 4},
                        {"web.speed", between(10, 400)},
                        {"box.area", chop * slit / ups * filled},
                        {"box.joint", between(0, 1)},
                        {"blank.length", between(0.002, 5)},
                        {"blank.width", between(0.002, 2.5)},
                        {"blank.cut", between(0, 12)},
                        {"blank.crease", between(0, 9)}});
}

void draw_route(BenchRow& order) {
    const auto last = static_cast<std::uint32_t>(whole(0, 4));
    const double parting = last == 0 ? 0 : whole(1, static_cast<int>(last));
    order.steps = last + 2;
    std::vector<double> kind, waste, setup, time, speed, power, labour, fixed, colours, area;
    for (std::uint32_t k = 0; k < order.steps; ++k) {
        const bool converts = k > 0 && k <= last;
        const bool runs = k <= last;
        kind.push_back(k == 0 ? 0 : converts ? whole(1, 3) : 4);
        waste.push_back(runs ? any_waste() : 0);
        setup.push_back(converts ? whole(0, 400) : 0);
        time.push_back(between(0, 90));
        speed.push_back(converts ? between(100, 20000) : 0);
        power.push_back(runs ? between(0, 800) : 0);
        labour.push_back(between(0, 400));
        fixed.push_back(between(0, 600));
        colours.push_back(converts ? whole(0, 4) : 0);
        area.push_back(!runs ? 0 : number(order, k <= parting ? "sheet.area" : "box.area"));
    }
    order.facts.insert({{"step.parting", parting},
                        {"step.kind", kind},
                        {"step.run_waste", waste},
                        {"step.setup_sheets", setup},
                        {"step.setup_time", time},
                        {"step.speed", speed},
                        {"step.power", power},
                        {"step.labour_rate", labour},
                        {"step.fixed_rate", fixed},
                        {"step.colours", colours},
                        {"step.piece_area", area}});
}

}  // namespace

BenchRow any_order() {
    BenchRow order{0, 0, {}, {}};
    order.facts.insert({{"order.quantity", of_any_size(7)}});
    draw_board(order);
    draw_web(order);
    draw_route(order);
    return order;
}

double number(const BenchRow& order, const std::string& name) {
    return order.facts.at(name).all().at(0);
}

double product_kg(const BenchRow& order) {
    return number(order, "order.quantity") * number(order, "box.area") * number(order, "board.grammage") / 1000;
}

}  // namespace flutebook::fixture
