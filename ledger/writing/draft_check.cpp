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

enum class Lines { one, many };

// Controls of both ranges, and what no reader sees: bidirectional controls, separators of lines, zero-width characters,
// fillers. With them two names look alike, or a line reads in another order than it stands.
bool is_unseen(utf8proc_int32_t point) {
    switch (utf8proc_category(point)) {
        case UTF8PROC_CATEGORY_CC:
        case UTF8PROC_CATEGORY_CF:
        case UTF8PROC_CATEGORY_ZL:
        case UTF8PROC_CATEGORY_ZP:
            return true;
        default:
            return utf8proc_get_property(point)->ignorable != 0;
    }
}

// What stands in the text that may not, for a message; nothing where it is plain.
std::optional<std::string> fault_of_characters(std::string_view text, Lines lines) {
    while (!text.empty()) {
        const char sign = text.front();
        const bool is_layout = lines == Lines::many && (sign == '\n' || sign == '\t' || sign == '\r');
        if (is_layout || (sign >= 0x20 && sign < 0x7F)) {
            text.remove_prefix(1);
            continue;
        }
        utf8proc_int32_t point = -1;
        const auto length = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                             static_cast<utf8proc_ssize_t>(text.size()), &point);
        if (length <= 0) return "bytes that are not UTF-8";
        if (is_unseen(point)) return fmt::format("U+{:04X}, which cannot be seen", point);
        text.remove_prefix(static_cast<std::size_t>(length));
    }
    return std::nullopt;
}

std::optional<std::string> fault_of_size(std::string_view what, std::string_view text, std::size_t longest) {
    if (text.size() <= longest) return std::nullopt;
    return fmt::format("{} is too long: found {} bytes; at most {} can be stored", what, text.size(), longest);
}

std::optional<std::string> fault_of_text(std::string_view what, std::string_view text, std::size_t longest,
                                         Lines lines) {
    if (auto fault = fault_of_size(what, text, longest)) return fault;
    const auto found = fault_of_characters(text, lines);
    if (!found) return std::nullopt;
    return fmt::format("{} is no plain text: found {}; leave it out", what, *found);
}

std::optional<std::string> fault_of_mass(Grams mass) {
    if (mass.count() >= -most_grams && mass.count() <= most_grams) return std::nullopt;
    return fmt::format("a mass is out of bounds: found {} g; at most {} g can be stored, above or below zero",
                       mass.count(), most_grams);
}

std::optional<std::string> fault_of_money(Money money) {
    if (money.ten_thousandths() >= -most_money && money.ten_thousandths() <= most_money) return std::nullopt;
    return fmt::format("an amount is out of bounds: found {}; at most {} can be stored, above or below zero",
                       money.to_double(), Money::of_ten_thousandths(most_money).to_double());
}

// Names that the ledger has had before are as they are: an entry whose names an older version took can be reversed, and
// its month closed.
std::optional<std::string> fault_of_kept_name(std::string_view what, std::string_view name, DraftSource source) {
    return source == DraftSource::books ? fault_of_size(what, name, longest_name) : fault_of_name(what, name);
}

std::optional<std::string> fault_of(const Movement& movement, DraftSource source) {
    if (movement.from.empty() || movement.to.empty()) return "a movement has no account at one end";
    if (movement.from == movement.to)
        return fmt::format("a movement ends where it began: found {} at both ends", movement.from);
    for (const auto* name : {&movement.from, &movement.to, &movement.material, &movement.cause})
        if (auto fault = fault_of_kept_name("a movement's name", *name, source)) return fault;
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

std::optional<std::string> fault_of_words(const Draft& draft, DraftSource source) {
    if (draft.kind.empty() || draft.ref.empty()) return "a document has no kind or no ref";
    for (const auto* name : {&draft.kind, &draft.ref, &draft.shift, &draft.centre, &draft.order, &draft.board})
        if (auto fault = fault_of_kept_name("a name", *name, source)) return fault;
    if (auto fault = source == DraftSource::books
                         ? fault_of_size("the content", draft.content, longest_content)
                         : fault_of_text("the content", draft.content, longest_content, Lines::many))
        return fault;
    return fault_of_note("the note", draft.note);
}

}  // namespace

std::optional<std::string> fault_of_name(std::string_view what, std::string_view name) {
    return fault_of_text(what, name, longest_name, Lines::one);
}

std::optional<std::string> fault_of_note(std::string_view what, std::string_view note) {
    return fault_of_text(what, note, longest_note, Lines::many);
}

std::optional<std::string> fault_of(const Draft& draft, DraftSource source) {
    if (auto fault = fault_of_words(draft, source)) return fault;
    if (!is_kept_date(draft.date)) return "there is no such day; give a day of the years 2000 to 2999";
    if (draft.movements.size() > most_lines || draft.expected.size() > most_lines)
        return fmt::format(
            "has too many lines: found {} movements, {} expected losses; at most {} of each can be stored",
            draft.movements.size(), draft.expected.size(), most_lines);
    for (const auto& movement : draft.movements)
        if (auto fault = fault_of(movement, source)) return fault;
    for (const auto& expected : draft.expected) {
        if (auto fault = fault_of_kept_name("a cause", expected.cause, source)) return fault;
        if (auto fault = fault_of_mass(expected.mass)) return fault;
    }
    return draft.count ? fault_of(*draft.count) : std::nullopt;
}

}  // namespace flutebook::ledger
