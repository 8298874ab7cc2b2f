// What a unit's words mean in the files of one plant: the code of its currency, the sign of a dollar, and `ton`.
#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace flutebook::fields {

struct UnitWords {
    /// A plant that is shown us units means 2000 lb by `ton`; in others it may be any of three.
    enum class Ton { ambiguous, short_ton };

    UnitWords() = default;
    UnitWords(const char* code) : currency(code) {}
    UnitWords(std::string code, Ton meant = Ton::ambiguous) : currency(std::move(code)), ton(meant) {}

    std::string currency;  // ISO 4217; it counts as `money`
    Ton ton = Ton::ambiguous;
};

/// The same unit as the units library reads it: the currency's code, and `$` where the currency is a dollar, as
/// `money`; `ton` as `short_ton` where the plant means it so.
[[nodiscard]] std::string library_unit(std::string_view written, const UnitWords& words);

}  // namespace flutebook::fields
