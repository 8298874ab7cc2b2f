#include "ledger/writing/draft_check.hpp"

#include <fmt/format.h>
#include <utf8proc.h>

namespace flutebook::ledger {

namespace {

constexpr std::size_t longest_name = 200;
constexpr std::size_t longest_content = 100000;
constexpr std::size_t longest_note = 10000;
constexpr std::int64_t most_grams = 1'000'000'000'000;
constexpr std::int64_t most_money = 900'000'000'000'000;

// How many bytes the character has that begins here; 0 where it is none of UTF-8.
std::size_t character(std::string_view text) {
    utf8proc_int32_t point = -1;
    const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                         static_cast<utf8proc_ssize_t>(text.size()), &point);
    return length > 0 ? static_cast<std::size_t>(length) : 0;
}

enum class Lines { one, many };

bool is_text(std::string_view text, Lines lines) {
    while (!text.empty()) {
        const auto size = character(text);
        if (size == 0) return false;
        const char sign = text.front();
        const bool is_control = (sign >= 0 && sign < 0x20) || sign == 0x7F;
        const bool is_layout = sign == '\n' || sign == '\t' || sign == '\r';
        if (is_control && !(is_layout && lines == Lines::many && sign != '\0')) return false;
        text.remove_prefix(size);
    }
    return true;
}

std::optional<std::string> fault_of_text(std::string_view what, std::string_view text, std::size_t longest,
                                         Lines lines) {
    if (text.size() > longest)
        return fmt::format("{} is too long: found {} bytes; {} are kept", what, text.size(), longest);
    if (!is_text(text, lines)) return fmt::format("{} is no plain text: found control characters or no UTF-8", what);
    return std::nullopt;
}

std::optional<std::string> fault_of_mass(Grams mass) {
    if (mass.count() >= -most_grams && mass.count() <= most_grams) return std::nullopt;
    return fmt::format("a mass is out of bounds: found {} g; {} g are kept either way", mass.count(), most_grams);
}

std::optional<std::string> fault_of_money(Money money) {
    if (money.ten_thousandths() >= -most_money && money.ten_thousandths() <= most_money) return std::nullopt;
    return fmt::format("an amount is out of bounds: found {}; {} are kept either way", money.to_double(),
                       Money::of_ten_thousandths(most_money).to_double());
}

std::optional<std::string> fault_of(const Movement& movement) {
    if (movement.from.empty() || movement.to.empty()) return "a movement has no account at one end";
    if (movement.from == movement.to)
        return fmt::format("a movement ends where it began: found {} at both ends", movement.from);
    for (const auto* name : {&movement.from, &movement.to, &movement.material, &movement.cause})
        if (auto fault = fault_of_name("a movement's name", *name)) return fault;
    if (auto fault = fault_of_mass(movement.mass)) return fault;
    return fault_of_money(movement.money);
}

std::optional<std::string> fault_of(const Count& count) {
    if (count.account.empty()) return "a count names no account";
    for (const auto* name : {&count.account, &count.material})
        if (auto fault = fault_of_name("a count's name", *name)) return fault;
    if (auto fault = fault_of_mass(count.mass)) return fault;
    return count.value ? fault_of_money(*count.value) : std::nullopt;
}

bool is_kept_date(Date date) {
    return date.ok() && date.year() >= std::chrono::year(2000) && date.year() <= std::chrono::year(2999);
}

std::optional<std::string> fault_of_words(const Draft& draft) {
    if (draft.kind.empty() || draft.ref.empty()) return "a document has no kind or no ref";
    for (const auto* name : {&draft.kind, &draft.ref, &draft.shift, &draft.centre, &draft.order, &draft.board})
        if (auto fault = fault_of_name("a name", *name)) return fault;
    if (auto fault = fault_of_text("the content", draft.content, longest_content, Lines::many)) return fault;
    return fault_of_text("the note", draft.note, longest_note, Lines::many);
}

}  // namespace

std::optional<std::string> fault_of_name(std::string_view what, std::string_view name) {
    return fault_of_text(what, name, longest_name, Lines::one);
}

std::optional<std::string> fault_of(const Draft& draft) {
    if (auto fault = fault_of_words(draft)) return fault;
    if (!is_kept_date(draft.date)) return "there is no such day; days of the years 2000 to 2999 are kept";
    if (draft.movements.size() > most_lines || draft.expected.size() > most_lines)
        return fmt::format("has too many lines: found {} movements, {} expected losses; {} of each are kept",
                           draft.movements.size(), draft.expected.size(), most_lines);
    for (const auto& movement : draft.movements)
        if (auto fault = fault_of(movement)) return fault;
    for (const auto& expected : draft.expected) {
        if (auto fault = fault_of_name("a cause", expected.cause)) return fault;
        if (auto fault = fault_of_mass(expected.mass)) return fault;
    }
    return draft.count ? fault_of(*draft.count) : std::nullopt;
}

}  // namespace flutebook::ledger
