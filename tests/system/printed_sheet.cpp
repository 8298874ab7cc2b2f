#include "tests/system/printed_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>

#include "host/render/text.hpp"
#include "tests/support/child.hpp"

namespace flutebook::fixture {

namespace {

using Lines = std::vector<std::string>;
using Faults = std::vector<std::string>;

// In the last place that is printed, so that sums are exact.
long long counted(double number, double places) {
    return std::llround(number * places);
}

bool begins(const std::string& line, const std::string& with) {
    const std::size_t first = line.find_first_not_of(' ');
    return first != std::string::npos && line.compare(first, with.size(), with) == 0;
}

// The sections of each sheet, by their headings; a heading begins at the edge.
std::vector<std::map<std::string, Lines>> sheets(const std::string& page) {
    std::vector<std::map<std::string, Lines>> result;
    std::string heading;
    for (const std::string& line : lines_of(page)) {
        if (line.empty()) continue;
        if (line[0] != ' ') {
            heading = line;
            if (heading == "Layout") result.emplace_back();
        } else if (!result.empty()) {
            result.back()[heading].push_back(line);
        }
    }
    return result;
}

// One sheet; each check adds what it finds.
class Reader {
public:
    Reader(std::map<std::string, Lines> sheet, Faults& faults) : sheet_(std::move(sheet)), faults_(faults) {}

    void read() {
        read_run();
        read_mass(0);
        read_mass(1);
        read_cost();
        read_price();
        read_waste();
    }

private:
    void expect(bool holds, const std::string& line) {
        if (!holds) faults_.push_back("does not add up: " + line);
    }

    void read_run() {
        const Lines& lines = sheet_["Run"];
        expect(lines.size() >= 2, "Run");
        for (std::size_t i = 2; i < lines.size(); ++i) {
            const auto row = numbers_in(lines[i].substr(0, lines[i].find_last_of("0123456789") + 1));
            expect(row.size() == 4 && row[0] == row[1] + row[2] + row[3] && row[1] >= 0 && row[2] >= 0, lines[i]);
        }
    }

    // Column 0: masses; 1: shares of all that came in.
    void read_mass(std::size_t column) {
        const Lines& lines = sheet_["Mass"];
        long long in = 0;
        long long lost = 0;
        long long out = 0;
        for (std::size_t i = 1; i < lines.size(); ++i) {
            const auto row = numbers_in(lines[i]);
            if (row.size() != 2) continue;
            const long long item = counted(row[column], 100);
            if (begins(lines[i], "paper issued") || begins(lines[i], "board bought") ||
                begins(lines[i], "adhesive, dry")) {
                in += item;
            } else if (begins(lines[i], "in ")) {
                expect(item == in && (column == 0 || item == whole_share), lines[i]);
            } else if (begins(lines[i], "lost ")) {
                expect(item == lost, lines[i]);
                if (column == 0) lost_ = item;
            } else if (begins(lines[i], "boxes shipped") || begins(lines[i], "sheets shipped")) {
                out = item + lost;
            } else if (begins(lines[i], "out ")) {
                expect(item == out && item == in, lines[i]);
            } else {
                expect(item >= 0, lines[i]);
                lost += item;
            }
        }
        expect(in > 0 && out > 0, "Mass");
    }

    static constexpr long long whole_share = 10000;  // 100.00 %

    void read_cost() {
        long long of_class = 0;
        long long all = 0;
        bool is_closed = false;
        for (const std::string& line : sheet_["Cost of the order"]) {
            const auto row = numbers_in(line);
            if (row.empty()) continue;
            const long long item = counted(row.back(), 10000);
            if (begins(line, "cost, net of recovery")) {
                expect(item == all, line);
                is_closed = true;
            } else if (line.find(" in all ") != std::string::npos) {
                expect(item == of_class, line);
                all += item;
                of_class = 0;
            } else {
                of_class += item;
            }
        }
        expect(is_closed && of_class == 0, "Cost of the order");
    }

    void read_price() {
        std::vector<long long> sum;  // price, less per-unit cost, what is left, less per-run cost, what is left
        for (const std::string& line : sheet_["Price"])
            if (begins(line, "price ") || begins(line, "less ")) sum.push_back(counted(numbers_in(line).back(), 10000));
        expect(sum.size() == 5 && sum[0] + sum[1] == sum[2] && sum[2] + sum[3] == sum[4], "Price");
    }

    void read_waste() {
        long long lost = 0;
        long long cost = 0;
        bool is_closed = false;
        for (const std::string& line : sheet_["Waste"]) {
            const auto row = numbers_in(line);
            if (row.size() == 4) {  // intake, lost, share, cost
                lost += counted(row[1], 100);
                cost += counted(row[3], 10000);
            } else if (begins(line, "cost of waste") && row.size() == 2) {
                expect(counted(row[0], 100) == lost && counted(row[1], 10000) == cost && lost == lost_, line);
                is_closed = true;
            }
        }
        expect(is_closed, "Waste");
    }

    std::map<std::string, Lines> sheet_;
    Faults& faults_;
    long long lost_ = -1;
};

}  // namespace

std::vector<double> numbers_in(const std::string& line) {
    static const std::regex number(R"((^|  )(-?[0-9]{1,3}( [0-9]{3})*(\.[0-9]+)?)( %)?(?=$|  ))");
    std::vector<double> result;
    for (std::sregex_iterator at(line.begin(), line.end(), number), end; at != end; ++at) {
        std::string digits = (*at)[2];
        digits.erase(std::remove(digits.begin(), digits.end(), ' '), digits.end());
        result.push_back(std::stod(digits));
    }
    return result;
}

std::size_t sheets_on(const std::string& page) {
    return sheets(page).size();
}

std::vector<std::string> faults_on(const std::string& page) {
    Faults faults;
    for (auto& sheet : sheets(page)) Reader(std::move(sheet), faults).read();
    for (const std::string& line : lines_of(page)) {
        if (render::width_of(line) > 100) faults.push_back("leaves the page: " + line);
        if (!line.empty() && line.back() == ' ') faults.push_back("ends in a space: " + line);
    }
    return faults;
}

}  // namespace flutebook::fixture
