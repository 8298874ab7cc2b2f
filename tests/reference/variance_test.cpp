// Price, quantity, mix and yield variances against published examples, through the arithmetic that splits an order's
// cost. Favourable is negative here: positive is dearer.
//
// Where an example has no intermediate output, M = SQ and its quantity variance is our usage. Where it has a mix, M is
// the standard mix of the actual total: its mix is our usage, its yield our yield.
#include <catch2/catch.hpp>
#include <numeric>
#include <vector>

#include "host/month_answers/order_answer.hpp"

using namespace flutebook;
using answers::MaterialInput;
using answers::Variances;

namespace {

Money money(double amount) {
    return Money::rounded(amount, 4).value();
}

Variances variances(const MaterialInput& input) {
    return answers::variances_of(answers::stages_of(input).value());
}

// AQ at AP, SQ at SP.
Variances plain(double actual, double actual_price, double standard, double standard_price) {
    return variances({standard, standard, standard, actual, standard_price, actual_price});
}

// One material of a mix.
struct Part {
    double standard, standard_price;  // for one batch
    double actual, actual_price;
};

// All materials of a mix, for so many batches of standard output.
Variances mixed(const std::vector<Part>& parts, double batches) {
    double standard_total = 0;
    double actual_total = 0;
    for (const auto& part : parts) {
        standard_total += part.standard;
        actual_total += part.actual;
    }
    answers::Stages sum;
    for (const auto& part : parts) {
        const double standard = part.standard * batches;
        const double in_standard_mix = part.standard * actual_total / standard_total;
        sum += answers::stages_of(
                   {standard, standard, in_standard_mix, part.actual, part.standard_price, part.actual_price})
                   .value();
    }
    return answers::variances_of(sum);
}

}  // namespace

TEST_CASE("450 at 6.50 for 430 at 6.90 are 180 cheaper by price and 138 dearer by quantity") {
    // Solution of textbook exercise 23-5, direct materials variances, Accounting Q and A, November 2018 (seen, and
    // recomputed): price 180 F, quantity 138 U, total 42 F.
    const auto item = plain(450, 6.50, 430, 6.90);
    CHECK(item.price == money(-180));
    CHECK(item.usage == money(138));
    CHECK(item.total() == money(-42));
    CHECK(item.yield == Money());
    CHECK(item.volume == Money());
}

TEST_CASE("183,200 at 5.80 for 185,000 at 6.00 are cheaper by price and by quantity") {
    // Worked answer 8059627 on direct materials variances, qammunity.org, no year given (seen, and recomputed): price
    // 36,640 F, quantity 10,800 F, total 47,440 F: 1,062,560 for 1,110,000.
    const auto item = plain(183200, 5.80, 185000, 6.00);
    CHECK(item.price == money(-36640));
    CHECK(item.usage == money(-10800));
    CHECK(item.total() == money(1062560 - 1110000));
}

TEST_CASE("a price that is known by its total alone is not rounded on the way") {
    // Worked answer 2302805 on direct materials variances, qammunity.org, no year given (inputs seen): 4 lb at 2.00 for
    // an output of 60,000, used 300,000 lb costing 535,000; quantity 120,000 U. The page prints a price variance of
    // 65,100 F, because it rounded 535,000 / 300,000 to 1.783; exact (computed) it is 65,000 F, total 55,000 U.
    const auto item = plain(300000, 535000.0 / 300000, 60000 * 4, 2.00);
    CHECK(item.price == money(-65000));
    CHECK(item.usage == money(120000));
    CHECK(item.total() == money(55000));
}

TEST_CASE("a price variance on what was bought stands apart from a quantity variance on what was used") {
    // Worked answer 16729740 on direct materials variances, indextestingapp.uonbi.ac.ke, no year given (seen, and
    // recomputed): 5.6 lb at 3.00 for an output of 1,080; bought 10,800 lb at 2.90, used 9,720: price 1,080 F on
    // purchases, quantity 11,016 U.
    CHECK(plain(10800, 2.90, 10800, 3.00).price == money(-1080));
    CHECK(plain(9720, 3.00, 1080 * 5.6, 3.00).usage == money(11016));
}

TEST_CASE("129,000 at 2.80 for 126,000 at 3.00 are cheaper by price and dearer by quantity") {
    // Worked answer 13092069 on direct materials variances, alumnos.planeaciondidactica.cucea.udg.mx, no year given
    // (seen, and recomputed): price 25,800 F, quantity 9,000 U, total 16,800 F.
    const auto item = plain(129000, 2.80, 126000, 3.00);
    CHECK(item.price == money(-25800));
    CHECK(item.usage == money(9000));
    CHECK(item.total() == money(-16800));
}

TEST_CASE("of three materials mixed at standard prices, mix and yield are both adverse") {
    // ACCA tutor forum, materials mix and yield variances, paper F5, opentuition.com, no year given (seen, and
    // recomputed): 50 at 10, 40 at 5 and 20 at 9 for 100 kg; 13,200, 7,600 and 5,600 used for 23,180 kg: mix 9,200 A,
    // yield 7,216 A, usage 16,416 A.
    const auto item = mixed({{50, 10, 13200, 10}, {40, 5, 7600, 5}, {20, 9, 5600, 9}}, 231.80);
    CHECK(item.usage == money(9200));
    CHECK(item.yield == money(7216));
    CHECK(item.usage + item.yield == money(16416));
    CHECK(item.price == Money());
}

TEST_CASE("of a chewing gum, the mix is adverse and the yield favourable") {
    // Mix and yield example, accountingdetails.com, no year given (inputs seen, results computed): gum base 800 at
    // 0.25, syrup 200 at 0.40, sugar 200 at 0.10 for 1,000 lb; used 157,000, 38,000 and 36,000 for 200,000 lb: mix
    // 300 A, yield 2,250 F, usage 1,950 F; bought 162,000 at 0.24, 30,000 at 0.42, 32,000 at 0.11: price on purchases
    // 1,620 F, 600 U and 320 U.
    const auto item = mixed({{800, 0.25, 157000, 0.25}, {200, 0.40, 38000, 0.40}, {200, 0.10, 36000, 0.10}}, 200);
    CHECK(item.usage == money(300));
    CHECK(item.yield == money(-2250));
    CHECK(item.usage + item.yield == money(-1950));
    CHECK(plain(162000, 0.24, 162000, 0.25).price == money(-1620));
    CHECK(plain(30000, 0.42, 30000, 0.40).price == money(600));
    CHECK(plain(32000, 0.11, 32000, 0.10).price == money(320));
}

TEST_CASE("of a cocoa batch, price and mix are favourable and the yield adverse") {
    // Price, mix and yield variances, studylib.net document 15009078, no year given (price and mix seen, yield
    // computed): cocoa 800 at 0.60, milk 3,700 at 0.50, sugar 500 at 0.40 a batch; used 325,000 at 0.62, 1,425,000 at
    // 0.48 and 250,000 at 0.39 for 387 batches: price 24,500 F, mix 4,500 F, yield 32,890 A, usage 28,390 A.
    const auto item = mixed({{800, 0.60, 325000, 0.62}, {3700, 0.50, 1425000, 0.48}, {500, 0.40, 250000, 0.39}}, 387);
    CHECK(item.price == money(-24500));
    CHECK(item.usage == money(-4500));
    CHECK(item.yield == money(32890));
    CHECK(item.usage + item.yield == money(28390));
}
