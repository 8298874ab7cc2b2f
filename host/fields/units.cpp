// The one file that touches udunits2: one system of units, made at the first question and kept until the end.
//
// The library's parser keeps its state in globals, so a mutex goes around every call. Its own messages are muted: a
// person hears from us, with the place.
#include "host/fields/units.hpp"

#include <udunits2.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <memory>
#include <mutex>
#include <string_view>

#include "host/base/decimal.hpp"
#include "host/base/errors.hpp"
#include "host/fields/known_units.hpp"
#include "host/fields/unit_text.hpp"

namespace flutebook::fields {

namespace {

struct FreeUnit {
    void operator()(ut_unit* unit) const { ut_free(unit); }
};
struct FreeConverter {
    void operator()(cv_converter* converter) const { cv_free(converter); }
};
using Unit = std::unique_ptr<ut_unit, FreeUnit>;
using UnitConverter = std::unique_ptr<cv_converter, FreeConverter>;

// What the trade says and the library does not know. Symbols, not names: the library reads names in any case, and
// "msf" shall not mean something.
struct TradeUnit {
    const char* symbol;
    const char* meaning;
};
constexpr std::array<TradeUnit, 9> trade_units{{{"MSF", "1000 ft2"},
                                                {"MMBtu", "1000000 Btu"},
                                                {"lbs", "lb"},
                                                {"kWh", "3600000 J"},
                                                {"box", "1"},
                                                {"boxes", "1"},
                                                {"sheet", "1"},
                                                {"sheets", "1"},
                                                {"money", nullptr}}};

class System {
public:
    System() {
        ut_set_error_message_handler(ut_ignore);
        system_ = ut_read_xml(nullptr);
        if (system_ == nullptr) give_up();
        for (const auto& trade : trade_units) {
            const Unit unit(trade.meaning == nullptr ? ut_new_base_unit(system_)
                                                     : ut_parse(system_, trade.meaning, UT_UTF8));
            if (unit == nullptr || ut_map_symbol_to_unit(trade.symbol, UT_UTF8, unit.get()) != UT_SUCCESS) give_up();
        }
    }

    // Null where the text is no unit.
    Unit parse(const std::string& text) const {
        if (text.empty() || text.size() > longest) return nullptr;
        return Unit(ut_parse(system_, text.c_str(), UT_UTF8));
    }

private:
    [[noreturn]] static void give_up() {
        throw InputError(InputError::Whose::plant,
                         {"units: the database of the udunits library cannot be read; install libudunits2-data, and "
                          "check UDUNITS2_XML_PATH if it is set"});
    }

    static constexpr std::size_t longest = 100;
    // Never freed: it serves until the process ends.
    ut_system* system_ = nullptr;
};

std::mutex& turn() {
    static std::mutex mutex;
    return mutex;
}

const System& units() {
    static const System system;
    return system;
}

// Whether the parentheses pair up: the library takes `m)` for m, and stops reading there.
bool parentheses_pair(const std::string& text) {
    int open = 0;
    for (const char sign : text) {
        open += sign == '(' ? 1 : sign == ')' ? -1 : 0;
        if (open < 0) return false;
    }
    return open == 0;
}

Unit parse(const std::string& text) {
    if (!parentheses_pair(text) || has_shift(text) || !is_plain_unit(text)) return nullptr;
    return units().parse(text);
}

// Turns count as numbers to the library: 1 rpm would be 377 sheets an hour.
bool is_angular(const ut_unit* unit) {
    std::array<char, 256> definition{};
    const int length = ut_format(unit, definition.data(), definition.size(), UT_ASCII | UT_DEFINITION);
    return length > 0 && std::string_view(definition.data()).find("rad") != std::string_view::npos;
}

// Nothing for what is no straight line: reciprocals (h to 1/h), which the library converts too, and logarithms. Inch,
// foot and pound are defined by short decimals, which the library returns with a rounding of its own.
std::optional<Conversion> straight_line(const cv_converter* converter) {
    constexpr double far = 1048576;
    const double at_0 = cv_convert_double(converter, 0);
    const double at_1 = cv_convert_double(converter, 1);
    const double at_far = cv_convert_double(converter, far);
    if (!std::isfinite(at_0) || !std::isfinite(at_1) || !std::isfinite(at_far)) return std::nullopt;
    const double scale = at_0 == 0 ? at_1 : (at_far - at_0) / far;
    if (std::abs(at_far - (at_0 + scale * far)) > 1e-9 * std::abs(at_far)) return std::nullopt;
    if (std::abs(at_1 - (at_0 + scale)) > 1e-9 * (std::abs(at_0) + std::abs(scale))) return std::nullopt;
    return Conversion{base::short_decimal(scale), base::short_decimal(at_0)};
}

}  // namespace

bool is_unit(const std::string& text) {
    return is_known_unit(text) || is_unit_of_library(text);
}

std::optional<Conversion> conversion(const std::string& from, const std::string& to) {
    const auto known = known_conversion(from, to);
    return known ? known : conversion_of_library(from, to);
}

bool is_unit_of_library(const std::string& text) {
    const std::lock_guard lock(turn());
    return parse(text) != nullptr;
}

std::optional<Conversion> conversion_of_library(const std::string& from, const std::string& to) {
    const std::lock_guard lock(turn());
    const Unit old_unit = parse(from);
    const Unit new_unit = parse(to);
    if (old_unit == nullptr || new_unit == nullptr) return std::nullopt;
    if (from == to) return Conversion{};
    if (ut_are_convertible(old_unit.get(), new_unit.get()) == 0) return std::nullopt;
    if (is_angular(old_unit.get()) != is_angular(new_unit.get())) return std::nullopt;
    const UnitConverter converter(ut_get_converter(old_unit.get(), new_unit.get()));
    return converter == nullptr ? std::nullopt : straight_line(converter.get());
}

}  // namespace flutebook::fields
