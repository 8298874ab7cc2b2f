// plant.yaml: the plant's name, currency and units, and how its mills pay.
//
// Currency codes are those of ISO 4217. They have two decimal places, but for those listed first: these as a table
// generated from ISO 4217 gives them (its versions of 2025-02-04 and 2026-01-01); XOF, XPF and the list of the
// remaining codes are from memory. Metals, units of account and test codes have no minor unit and buy no paper; they
// are not here.
#include "host/plant/plant_file.hpp"

#include <fmt/format.h>

#include <unordered_set>

#include "host/base/quoted_text.hpp"
#include "host/base/yaml/document.hpp"
#include "host/base/yaml/file.hpp"
#include "host/plant/plant_files.hpp"

namespace flutebook::plant {

namespace {

std::vector<std::string> read_shifts(const fields::Field& list) {
    std::vector<std::string> shifts;
    std::unordered_set<std::string> named;
    for (const auto& item : list.items_at_least_one()) {
        auto name = item.text();
        if (!name.empty() && !named.insert(name).second)
            item.complain("named twice: found " + base::shown(name) + ", expected each shift once");
        shifts.push_back(std::move(name));
    }
    return shifts;
}

Mill read_mill(const fields::Field& entry) {
    fields::MapReader form(entry);
    Mill mill;
    mill.name = entry.key();
    mill.moisture_limit = form.field("moisture").number("1", fields::range::moisture);
    mill.deduction = form.field("deduction").choice({"dry-matter", "point-for-point"}) == 1U
                         ? Mill::Deduction::point_for_point
                         : Mill::Deduction::dry_matter;
    mill.places = form.places();
    form.finish();
    return mill;
}

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

// What people are shown, and what leaves the house.
void read_looks(fields::MapReader& file, Plant& plant) {
    if (file.has("address"))
        for (const fields::Field& line : file.field("address").items_at_least_one())
            plant.address.push_back(line.text());
    plant.page_size = plant.units == Units::us ? PageSize::letter : PageSize::a4;
    if (file.has("paper"))
        plant.page_size = file.field("paper").choice({"a4", "letter"}) == 1U ? PageSize::letter : PageSize::a4;
    if (file.has("decimal"))
        plant.decimal_mark = file.field("decimal").choice({"point", "comma"}) == 1U ? base::DecimalMark::comma
                                                                                    : base::DecimalMark::point;
}

std::vector<OptionalModel> read_optional_models(fields::MapReader& pricing) {
    std::vector<OptionalModel> result;
    if (pricing.has("optional"))
        for (const fields::Field& model : pricing.field("optional").items())
            result.push_back({model.text(), model.place()});
    return result;
}

}  // namespace

Plant read_plant_file(fields::MapReader file) {
    Plant plant{};
    plant.name = file.field("plant").text();
    const auto currency = file.field("currency");
    plant.currency = currency.text();
    const auto digits = minor_units(plant.currency);
    if (!plant.currency.empty() && !digits)
        currency.complain("unknown currency: found " + base::shown(plant.currency) +
                          ", expected a code of ISO 4217 such as `EUR`");
    plant.currency_minor_units = digits.value_or(0);
    plant.units =
        file.field("units").choice({to_text(Units::metric), to_text(Units::us)}) == 1U ? Units::us : Units::metric;
    plant.shifts = read_shifts(file.field("shifts"));
    plant.balance_tolerance = file.field("balance_tolerance").number("1", fields::range::share);
    if (file.has("waste_target")) plant.waste_target = file.field("waste_target").number("1", fields::range::share);
    for (const auto& entry : file.field("mills").entries()) plant.mills.push_back(read_mill(entry));
    if (file.has("trim")) plant.trim = read_plant_trim(file.field("trim"));
    if (file.has("pricing")) {
        fields::MapReader pricing = file.form("pricing");
        plant.optional_models = read_optional_models(pricing);
        plant.pricing = read_pricing(pricing, plant);
        pricing.finish();
    }
    read_looks(file, plant);
    plant.places = file.places();
    file.finish();
    return plant;
}

base::DecimalMark shown_decimal_mark(const std::string& folder) {
    const std::string file = folder + "/plant.yaml";
    base::Diagnostics unheard;
    const auto text = base::read_text_file(file, unheard);
    const auto document = text ? base::parse_document(*text, file, unheard) : std::nullopt;
    const base::Node* word = document ? document->find("decimal") : nullptr;
    return word != nullptr && word->text == "comma" ? base::DecimalMark::comma : base::DecimalMark::point;
}

std::optional<int> minor_units(std::string_view currency) {
    if (currency.size() != 3 || currency.find(' ') != std::string_view::npos) return std::nullopt;
    if (lists(none, currency)) return 0;
    if (lists(two, currency)) return 2;
    if (lists(three, currency)) return 3;
    if (lists(four, currency)) return 4;
    return std::nullopt;
}

}  // namespace flutebook::plant
