// The codes of ISO 4217. Two decimal places, but for those listed first: these as a table generated from ISO 4217 gives
// them (its versions of 2025-02-04 and 2026-01-01); XOF, XPF and the list of the remaining codes are from memory.
// Metals, units of account and test codes have no minor unit and buy no paper; they are not here.
#include "host/plant/currency.hpp"

namespace flutebook::plant {

namespace {

constexpr std::string_view none = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF";
constexpr std::string_view three = "BHD IQD JOD KWD LYD OMR TND";
constexpr std::string_view four = "CLF UYW";
constexpr std::string_view two =
    "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF CHW "
    "CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR "
    "ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV "
    "MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD "
    "SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG";

bool lists(std::string_view codes, std::string_view currency) {
    return codes.find(currency) != std::string_view::npos;
}

}  // namespace

std::optional<int> minor_units(std::string_view currency) {
    if (currency.size() != 3 || currency.find(' ') != std::string_view::npos) return std::nullopt;
    if (lists(none, currency)) return 0;
    if (lists(two, currency)) return 2;
    if (lists(three, currency)) return 3;
    if (lists(four, currency)) return 4;
    return std::nullopt;
}

}  // namespace flutebook::plant
