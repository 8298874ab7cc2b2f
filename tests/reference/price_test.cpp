// Prices, margins and the smallest coin against published figures.
#include <catch2/catch.hpp>

#include "host/plant/plant_file.hpp"
#include "host/quoting/cost_sheet.hpp"
#include "host/quoting/quote.hpp"

using namespace flutebook;

TEST_CASE("four cost bases and their margins lead to the same price of 20.00") {
    // Exhibit 5-10, pricing notes after Horngren, Introduction to Management Accounting (seen): price 20.00; cost on
    // four bases 12.00, 13.10, 15.00 and 19.00 with a markup on cost of 66.67, 52.67, 33.33 and 5.26 %. The margins on
    // price are computed from them: 40, 34.5, 25 and 5 %.
    const std::pair<double, double> bases[] = {{12.00, 0.40}, {13.10, 0.345}, {15.00, 0.25}, {19.00, 0.05}};
    for (const auto& [cost, margin] : bases) {
        CAPTURE(cost);
        CHECK(quoting::price(cost, margin, 2) == Money::of_ten_thousandths(200000));
        const double markup = margin / (1 - margin);
        CHECK(cost * (1 + markup) == Approx(20.00).epsilon(1e-12));
    }
}

TEST_CASE("a price is rounded to the smallest coin of its currency, half away from zero") {
    // ISO 4217 minor units: two decimals by default, none for JPY, three for KWD, four for CLF; seen in a table of
    // currency digits that its publisher generates from the ISO list (versions of 2025 and 2026).
    CHECK(quoting::price(12.345, 0, 2) == Money::of_ten_thousandths(123500));
    CHECK(quoting::price(12.5, 0, 0) == Money::of_ten_thousandths(130000));
    CHECK(quoting::price(1.0005, 0, 3) == Money::of_ten_thousandths(10010));
    CHECK(quoting::price(1.00005, 0, 4) == Money::of_ten_thousandths(10001));
}

TEST_CASE("currencies have the minor units of ISO 4217") {
    // The same table (seen). XOF and XPF: from memory.
    const std::pair<const char*, int> published[] = {
        {"EUR", 2}, {"USD", 2}, {"GBP", 2}, {"INR", 2}, {"AUD", 2}, {"BHD", 3}, {"IQD", 3}, {"JOD", 3},
        {"KWD", 3}, {"LYD", 3}, {"OMR", 3}, {"TND", 3}, {"BIF", 0}, {"CLP", 0}, {"DJF", 0}, {"GNF", 0},
        {"ISK", 0}, {"JPY", 0}, {"KMF", 0}, {"KRW", 0}, {"PYG", 0}, {"RWF", 0}, {"UGX", 0}, {"UYI", 0},
        {"VND", 0}, {"VUV", 0}, {"XAF", 0}, {"CLF", 4}, {"UYW", 4}};
    for (const auto& [code, digits] : published) {
        CAPTURE(code);
        CHECK(plant::minor_units(code) == digits);
    }
}

TEST_CASE("waste is 10.7 % of what goes in where it is 12 % of what comes out") {
    // FEFCO, life-cycle inventory of corrugated board, table 4, data of 2020 (seen): 1.12 t of paper in for 1 t of
    // boxes and 0.12 t out for recycling. Data of 2017: 1.147 and 0.147. Data of 2014: 1.10 and 0.10. Shares computed.
    const struct {
        double in, waste, of_input, of_output;
    } published[] = {{1.12, 0.12, 0.10714, 0.12}, {1.147, 0.147, 0.12816, 0.147}, {1.10, 0.10, 0.09091, 0.10}};
    for (const auto& year : published) {
        answers::MassBalance mass{};
        mass.issued_kg = year.in;
        mass.product_kg = 1;
        mass.loss_kg = year.waste;
        CHECK(mass.loss_share_of_issued() == Approx(year.of_input).margin(5e-6));
        CHECK(mass.loss_share_of_product() == Approx(year.of_output).epsilon(1e-12));
        // One base from the other: w_out = w_in / (1 - w_in), where what goes in is product and waste.
        CHECK(mass.loss_share_of_issued() / (1 - mass.loss_share_of_issued()) ==
              Approx(mass.loss_share_of_product()).epsilon(1e-9));
    }
}
