// The hash chain: which bytes of an entry are hashed, in a form that differs for any two different entries.
//
//   hash of an entry = SHA-256 of these, one after the other
//
//   32 bytes         hash of the entry before it; of the first: zeros
//   text             "entry 1": what follows, and the version of this table; "entry 2" where the machine's clock
//                    was behind the entry before it
//   number           the entry's own
//   text             kind
//   text             ref
//   text             content
//   number           date: 20261015
//   text             shift, centre, order, board, note: five texts
//   text             who
//   number           when: seconds since 1970, UTC
//   number           the entry it reverses, else 0
//   number           of "entry 2" alone: the machine's own time, seconds since 1970, UTC
//   number           how many movements, then each: from, to, material, cause (texts), grams, money (numbers)
//   number           how many expected losses, then each: cause (text), grams (number)
//   number           1 where something was counted, then: account, material (texts), grams (number), number 1 and the
//                    value where there is one, else number 0; else 0
//
//   number           8 bytes, highest first, two's complement
//   text             4 bytes for how many bytes follow, highest first, then they
//
// A saved quote is hashed the same way, in a chain of its own: the hash before it, text "quote 1", its number, texts
// request and who, number when, number of parts, each: text name, 32 bytes SHA-256 of its content. An order likewise:
// text "order 1", its number in order of taking, text number, the quote's number, quantity, who, when, parts. A record
// of a quote: text "record 1", its number, the quote's (a number), texts kind and who, number when, number of
// attributes, each: text name, number 0 and the text, or number 1 and the number.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "ledger/values/entry.hpp"
#include "ledger/values/sha256.hpp"

namespace flutebook::ledger {

/// Writes fields as the table says. Used again and again it allocates nothing.
class ChainText {
public:
    void begin(const Hash& before, std::string_view what);
    void number(std::int64_t value);
    void text(std::string_view value);
    void bytes(std::string_view value) { text_ += value; }

    [[nodiscard]] Hash hash() const { return sha256(text_); }

private:
    std::string text_;
};

/// What an entry has besides its draft.
struct EntryOrigin {
    std::int64_t number;
    const std::string& who;
    std::chrono::sys_seconds when;
    std::int64_t reverses;                               // 0: nothing
    std::optional<std::chrono::sys_seconds> clock = {};  // where it was behind `when`
};

[[nodiscard]] Hash entry_hash(ChainText& text, const Hash& before, const Draft& draft, const EntryOrigin& origin);

/// 20261015, and back from such a number alone.
[[nodiscard]] std::int64_t to_number(Date date);
[[nodiscard]] Date date_of(std::int64_t number);
/// 202610, and back from such a number alone.
[[nodiscard]] std::int64_t to_number(Month month);
[[nodiscard]] Month month_of(std::int64_t number);
/// 2026-10
[[nodiscard]] std::string to_text(Month month);
/// 2026-10-15
[[nodiscard]] std::string to_text(Date date);

}  // namespace flutebook::ledger
