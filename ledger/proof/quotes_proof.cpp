#include "ledger/proof/quotes_proof.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>

#include "ledger/reading/quotes.hpp"
#include "ledger/store/packing.hpp"
#include "ledger/writing/chain.hpp"

namespace flutebook::ledger::proof {

namespace {

void prove_contents(Database& books, Findings& findings) {
    Statement rows(books, "SELECT id, sha256, bytes, size FROM content ORDER BY id");
    while (rows.step()) {
        const auto opened = rows.is_nothing(3) ? std::nullopt : unpacked(rows.view(2), rows.number(3));
        const bool is_readable = rows.is_nothing(3) || opened;
        if (!is_readable || bytes_of(sha256(opened ? std::string_view(*opened) : rows.view(2))) != rows.view(1))
            findings.add(
                fmt::format("saved content {}: was changed: its hash does not match its bytes", rows.number(0)));
    }
}

// The parts of one quote or order, as they are hashed.
void write_parts(Statement& parts, std::int64_t of, ChainText& text) {
    struct QuoteLine {
        std::string name, hash;
    };
    std::vector<QuoteLine> lines;
    parts.bind(1, of);
    while (parts.step()) lines.push_back({parts.text(0), parts.text(1)});
    parts.reset();
    text.number(static_cast<std::int64_t>(lines.size()));
    for (const auto& line : lines) {
        text.text(line.name);
        text.bytes(line.hash);
    }
}

// Takes the stored hash as the one that the next follows, so that one change is one finding.
void prove_hash(const ChainText& text, std::string_view stored, const std::string& whose, std::vector<Hash>& chain,
                Findings& findings) {
    const auto hash = text.hash();
    if (stored != bytes_of(hash))
        findings.add(whose + ": was changed, or one before it: its hash does not match its content");
    chain.push_back(from_bytes(stored).value_or(hash));
}

Hash newest(const std::vector<Hash>& chain) {
    return chain.empty() ? Hash{} : chain.back();
}

void prove_saved_quotes(Database& books, const NameList& names, std::vector<Hash>& chain, Findings& findings) {
    Statement quotes(books, "SELECT id, request, who, written, hash FROM quote ORDER BY id");
    Statement parts(books,
                    "SELECT p.name, coalesce(c.sha256, x'') FROM quote_part AS p LEFT JOIN content AS c ON "
                    "c.id = p.content WHERE p.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY p.id");
    while (quotes.step()) {
        const auto number = quotes.number(0);
        if (number != static_cast<std::int64_t>(chain.size()) + 1)
            findings.add(fmt::format("quote {}: the one before it is missing", quote_number(number)));
        ChainText text;
        text.begin(newest(chain), "quote 1");
        text.number(number);
        text.text(quotes.view(1));
        text.text(names.shown(quotes.number(2)));
        text.number(quotes.number(3));
        write_parts(parts, number, text);
        prove_hash(text, quotes.view(4), "quote " + quote_number(number), chain, findings);
    }
}

void prove_orders(Database& books, const NameList& names, std::vector<Hash>& chain, Findings& findings) {
    Statement orders(books, "SELECT id, number, quote, quantity, who, written, hash FROM taken_order ORDER BY id");
    Statement parts(books,
                    "SELECT p.name, coalesce(c.sha256, x'') FROM taken_order_part AS p LEFT JOIN content AS c ON "
                    "c.id = p.content WHERE p.id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY p.id");
    while (orders.step()) {
        const auto id = orders.number(0);
        if (id != static_cast<std::int64_t>(chain.size()) + 1)
            findings.add(fmt::format("order {}: the one before it is missing", orders.text(1)));
        ChainText text;
        text.begin(newest(chain), "order 1");
        text.number(id);
        text.text(orders.view(1));
        text.text(quote_number(orders.number(2)));
        text.number(orders.number(3));
        text.text(names.shown(orders.number(4)));
        text.number(orders.number(5));
        write_parts(parts, id, text);
        prove_hash(text, orders.view(6), "order " + orders.text(1), chain, findings);
    }
}

// The attributes of one record, as they are hashed; each says which quote it is of.
void write_attributes_again(Statement& attributes, std::int64_t record, std::int64_t quote, const NameList& names,
                            ChainText& text, Findings& findings) {
    struct AttributeLine {
        std::string name, words;
        std::optional<std::int64_t> number;
    };
    std::vector<AttributeLine> lines;
    attributes.bind(1, record);
    while (attributes.step()) {
        if (attributes.number(3) != quote)
            findings.add(fmt::format("record {} of a quote: one of its attributes is of quote {}", record,
                                     quote_number(attributes.number(3))));
        if (attributes.is_nothing(1) == attributes.is_nothing(2))
            findings.add(
                fmt::format("record {} of a quote: one of its attributes is not one text or one number", record));
        lines.push_back({names.shown(attributes.number(0)), attributes.text(1), std::nullopt});
        if (!attributes.is_nothing(2)) lines.back().number = attributes.number(2);
    }
    attributes.reset();
    text.number(static_cast<std::int64_t>(lines.size()));
    for (const auto& line : lines) {
        text.text(line.name);
        text.number(line.number ? 1 : 0);
        if (line.number)
            text.number(*line.number);
        else
            text.text(line.words);
    }
}

void prove_records(Database& books, const NameList& names, std::vector<Hash>& chain, Findings& findings) {
    Statement records(books, "SELECT id, quote, kind, who, written, hash FROM quote_record ORDER BY id");
    Statement attributes(books,
                         "SELECT name, text, number, quote FROM quote_attribute "
                         "WHERE id BETWEEN ?1 * 1000 AND ?1 * 1000 + 999 ORDER BY id");
    while (records.step()) {
        const auto number = records.number(0);
        if (number != static_cast<std::int64_t>(chain.size()) + 1)
            findings.add(fmt::format("record {} of a quote: the one before it is missing", number));
        ChainText text;
        text.begin(newest(chain), "record 1");
        text.number(number);
        text.number(records.number(1));
        text.text(names.shown(records.number(2)));
        text.text(names.shown(records.number(3)));
        text.number(records.number(4));
        write_attributes_again(attributes, number, records.number(1), names, text, findings);
        prove_hash(text, records.view(5), fmt::format("record {} of quote {}", number, quote_number(records.number(1))),
                   chain, findings);
    }
}

void prove_no_lone_parts(Database& books, Findings& findings) {
    Statement lone(
        books,
        "SELECT count(*) FROM quote_part WHERE id / 1000 NOT IN (SELECT id FROM quote) UNION ALL "
        "SELECT count(*) FROM taken_order_part WHERE id / 1000 NOT IN (SELECT id FROM taken_order) UNION ALL "
        "SELECT count(*) FROM quote_attribute WHERE id / 1000 NOT IN (SELECT id FROM quote_record)");
    while (lone.step())
        if (lone.number(0) != 0)
            findings.add(fmt::format("saved parts: {} exist without their quote, order or record", lone.number(0)));
}

}  // namespace

QuotesRead prove_quotes(Database& books, const NameList& names, Findings& findings) {
    QuotesRead read;
    prove_contents(books, findings);
    prove_saved_quotes(books, names, read.quotes, findings);
    prove_orders(books, names, read.orders, findings);
    prove_records(books, names, read.records, findings);
    prove_no_lone_parts(books, findings);
    return read;
}

}  // namespace flutebook::ledger::proof
