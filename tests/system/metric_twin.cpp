#include "tests/system/metric_twin.hpp"

#include <fmt/format.h>
#include <stdlib.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <sstream>
#include <stdexcept>

namespace flutebook::fixture {

namespace {

namespace fs = std::filesystem;

struct MetricUnit {
    const char* unit;
    long double factor;
    long double offset = 0;  // taken off first
};

// All from memory. The inch, the foot, the mile, the pound, the Btu per pound and the Btu per pound and degree are
// exact there, and what is made of them; a short ton is 2000 lb. Of the Btu the table prints seven digits: it follows
// from 2.326 kJ/kg, which is exact.
constexpr long double inch_mm = 25.4L;
constexpr long double foot_m = 0.3048L;
constexpr long double mile_km = 1.609344L;
constexpr long double pound_kg = 0.45359237L;
constexpr long double ton_t = 2000 * pound_kg / 1000;
constexpr long double msf_m2 = 1000 * foot_m * foot_m;
constexpr long double btu_kj = 2.326L * pound_kg;

const std::map<std::string, MetricUnit>& metric_units() {
    static const std::map<std::string, MetricUnit> units = {
        {"in", {"mm", inch_mm}},
        {"ft", {"m", foot_m}},
        {"miles", {"km", mile_km}},
        {"ft/min", {"m/min", foot_m}},
        {"ft2", {"m2", foot_m * foot_m}},
        {"ft3", {"m3", foot_m * foot_m * foot_m}},
        {"lb", {"kg", pound_kg}},
        {"lb/MSF", {"g/m2", 1000 * pound_kg / msf_m2}},
        {"lb/ft", {"g/m", 1000 * pound_kg / foot_m}},
        {"lb/ft3", {"kg/m3", pound_kg / (foot_m * foot_m * foot_m)}},
        {"$/ton", {"USD/t", 1 / ton_t}},
        {"$/ton/mile", {"USD/t/km", 1 / (ton_t * mile_km)}},
        {"$/lb", {"USD/kg", 1 / pound_kg}},
        {"$/ft", {"USD/m", 1 / foot_m}},
        {"$/in2", {"USD/m2", 1000000 / (inch_mm * inch_mm)}},
        {"$/MMBtu", {"USD/kWh", 3600 / (1000000 * btu_kj)}},
        {"$/kWh", {"USD/kWh", 1}},
        {"kWh/ton", {"kWh/t", 1 / ton_t}},
        {"Btu/lb", {"kJ/kg", 2.326L}},
        {"Btu/lb/degF", {"kJ/kg/K", 4.1868L}},
        {"degF", {"degC", 5.0L / 9, 32}},
        {"kW", {"kW", 1}},
        {"sheets/min", {"sheets/min", 1}}};
    return units;
}

// "15 1/4", "3/8", "0.27".
long double value_of(const std::string& number) {
    const std::size_t slash = number.find('/');
    if (slash == std::string::npos) return std::stold(number);
    const std::size_t space = number.find(' ');
    const std::size_t above = space == std::string::npos ? 0 : space + 1;
    const long double whole = space == std::string::npos ? 0 : std::stold(number.substr(0, space));
    return whole + std::stold(number.substr(above, slash - above)) / std::stold(number.substr(slash + 1));
}

std::string metric_text(const std::string& number, const std::string& unit) {
    const auto found = metric_units().find(unit);
    if (found == metric_units().end()) throw std::runtime_error("no metric unit for `" + number + " " + unit + "`");
    const MetricUnit& metric = found->second;
    const auto value = static_cast<double>((value_of(number) - metric.offset) * metric.factor);
    return fmt::format("{:.20f} {}", value, metric.unit);
}

std::string text_of(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
}

std::string without_comments(const std::string& text) {
    return std::regex_replace(text, std::regex(" *#[^\n]*"), "");
}

}  // namespace

std::string us_plant() {
    return FLUTEBOOK_SOURCE_DIR "/config/demo-us";
}

std::vector<std::string> us_requests() {
    std::vector<std::string> result;
    for (const auto& entry : fs::directory_iterator(us_plant() + "/requests")) result.push_back(entry.path().string());
    std::sort(result.begin(), result.end());
    return result;
}

std::string in_metric_units(const std::string& file) {
    static const std::regex quantity(
        R"(([0-9]+ [0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]+)?) ([$A-Za-z][$A-Za-z0-9/]*))");
    std::string result;
    std::smatch found;
    std::string rest = without_comments(file);
    while (std::regex_search(rest, found, quantity)) {
        result += found.prefix().str() + metric_text(found[1], found[2]);
        rest = found.suffix().str();
    }
    result += rest;
    const std::string units = "units: us";
    if (const auto at = result.find(units); at != std::string::npos) result.replace(at, units.size(), "units: metric");
    return result;
}

RewrittenPlant::RewrittenPlant(const std::function<std::string(const std::string&)>& rewrite) {
    std::string pattern = (fs::temp_directory_path() / "flutebook-twin-XXXXXX").string();
    if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no folder for a plant");
    folder_ = pattern;
    fs::create_directory(folder_ + "/requests");
    for (const auto& entry : fs::recursive_directory_iterator(us_plant())) {
        if (!entry.is_regular_file()) continue;
        std::ofstream out(fs::path(folder_) / fs::relative(entry.path(), us_plant()));
        out << rewrite(text_of(entry.path()));
        if (!out.flush()) throw std::runtime_error("the rewritten plant cannot be written");
    }
}

RewrittenPlant::~RewrittenPlant() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

std::vector<std::string> RewrittenPlant::requests() const {
    std::vector<std::string> result;
    for (const std::string& file : us_requests())
        result.push_back(folder_ + "/requests/" + fs::path(file).filename().string());
    return result;
}

}  // namespace flutebook::fixture
