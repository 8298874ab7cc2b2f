#include "tests/bench/plain_list.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <optional>
#include <string_view>

#include "host/geometry/layout.hpp"
#include "tests/bench/plain_blank.hpp"

namespace flutebook::bench {

namespace {

enum Column { request, customer, date, style, length, width, height, board, quantity, margin, colours, coverage, road };
constexpr std::size_t columns = road + 1;

std::vector<std::string_view> fields_of(std::string_view line) {
    std::vector<std::string_view> fields;
    fields.reserve(columns);
    while (true) {
        const std::size_t end = line.find(',');
        fields.push_back(line.substr(0, end));
        if (end == std::string_view::npos) return fields;
        line.remove_prefix(end + 1);
    }
}

double number_of(std::string_view text) {
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

orders::Request request_of(const plant::Plant& plant, const std::vector<std::string_view>& fields) {
    orders::Request result{};
    result.number = fields[request];
    result.date = *base::parse_date(std::string(fields[date]));
    result.style = fields[style];
    result.inside = {number_of(fields[length]), number_of(fields[width]), number_of(fields[height])};
    for (std::size_t b = 0; b < plant.boards.size(); ++b)
        if (plant.boards[b].code == fields[board]) result.board = b;
    result.quantities = {number_of(fields[quantity])};
    result.margin = number_of(fields[margin]);
    result.colours = number_of(fields[colours]);
    return result;
}

geometry::Layout layout_of(const plant::Plant& plant, const orders::Request& wanted, BlankBy blank) {
    if (blank == BlankBy::style) return geometry::lay_out(plant, wanted);
    const plant::Allowance& allowance = *plant.find_allowance(plant.boards[wanted.board].flutes, wanted.style);
    return geometry::lay_out(plant, wanted, plain_blank(*wanted.inside, allowance));
}

struct CheapestWay {
    Money cost;
    const geometry::Candidate* way = nullptr;
};

CheapestWay cheapest(const engine::Order& order, const Prices& prices, const Extras& extras) {
    CheapestWay best;
    for (const geometry::Candidate& way : order.layout->candidates) {
        const auto cost = plain_cost({&order, &way}, prices, extras);
        if (cost && (best.way == nullptr || *cost < best.cost)) best = {*cost, &way};
    }
    if (best.way == nullptr) std::abort();
    return best;
}

}  // namespace

std::vector<Money> price_plain_list(const plant::Plant& plant, const Prices& prices, BlankBy blank,
                                    const std::string& list, const std::string& answer) {
    std::ifstream from(list);
    std::ofstream to(answer, std::ios::binary | std::ios::trunc);
    std::vector<Money> result;
    std::string line, written;
    std::getline(from, line);
    to << line << ",new_price,cost,order_value,made_on,roll_width\r\n";
    while (std::getline(from, line)) {
        const std::vector<std::string_view> fields = fields_of(line);
        const orders::Request wanted = request_of(plant, fields);
        const geometry::Layout layout = layout_of(plant, wanted, blank);
        const engine::Order order{&plant, &wanted, &layout, wanted.quantities.front(), {}};
        const Extras extras{number_of(fields[coverage]), 0, 0, 1, 0, 0, 0, number_of(fields[road])};
        const CheapestWay best = cheapest(order, prices, extras);
        const double thousand = best.cost.to_double() / order.quantity * 1000;
        const Money price = *Money::rounded(thousand / (1 - wanted.margin.value()), 2);
        const Money value = *Money::rounded(price.to_double() * order.quantity / 1000, 2);
        written.clear();
        fmt::format_to(std::back_inserter(written), "{},{},{:.4f},{},{} > {},{}\r\n", line, price.to_double(), thousand,
                       value.to_double(), best.way->corrugator->code, best.way->route->converters.front()->code,
                       best.way->roll_width_mm);
        to << written;
        result.push_back(price);
    }
    return result;
}

}  // namespace flutebook::bench
