#include "ledger/proof/verify.hpp"

#include <fmt/format.h>

#include "ledger/proof/chain_proof.hpp"
#include "ledger/proof/quotes_proof.hpp"
#include "ledger/proof/saved_proof.hpp"
#include "ledger/proof/seals_proof.hpp"
#include "ledger/proof/totals_proof.hpp"
#include "ledger/store/connection.hpp"
#include "ledger/store/migrations.hpp"

namespace flutebook::ledger {

namespace {

using proof::Findings;

// A part of the proof that the file's damage may stop; the other parts go on.
template <typename QuotePart>
void go_on(Findings& findings, const QuotePart& part) {
    try {
        part();
    } catch (const LedgerError& error) {
        findings.add(error.what());
    }
}

void prove_file(Database& books, Findings& findings) {
    if (const auto altered = altered_tables(books); !altered.empty())
        findings.add("the tables were altered: " + altered);
    Statement sound(books, "PRAGMA integrity_check(20)");
    while (sound.step())
        if (sound.view(0) != "ok") findings.add("the file is damaged: " + sound.text(0));
    Statement links(books, "PRAGMA foreign_key_check");
    while (links.step())
        findings.add(fmt::format("a row of {} refers to one of {} that is not there", links.text(0), links.text(2)));
}

void prove_head(const Proof& proof, const std::optional<Hash>& kept, Findings& findings) {
    if (!kept || proof.kept_at) return;
    findings.add(
        fmt::format("the kept head {} is no entry of this ledger: its end was cut off, its past was rewritten, or "
                    "it is an old copy; it has {} entries",
                    to_hex(*kept), proof.entries));
}

}  // namespace

Proof verify(const Store& store, const std::optional<std::string>& kept_head) {
    auto& connection = store.connection();
    std::optional<Hash> kept;
    if (kept_head) {
        kept = from_hex(*kept_head);
        if (!kept)
            connection.refuse(
                fmt::format("the kept head is no hash: found `{}`; expected 64 hexadecimal digits", *kept_head));
    }
    Proof proof{};
    Findings findings;
    go_on(findings, [&] {
        const Snapshot snapshot(store);
        auto& books = connection.books();
        const proof::NameList names(books);
        const auto chain = proof::prove_chain(books, names, kept, findings);
        proof.entries = chain.entries;
        if (chain.entries > 0) proof.head = to_hex(chain.head);
        proof.kept_at = chain.kept_at;
        prove_head(proof, kept, findings);
        proof::QuotesRead quotes;
        go_on(findings, [&] { quotes = proof::prove_quotes(books, names, findings); });
        go_on(findings, [&] { proof::prove_saved(books, names, chain, quotes, findings); });
        go_on(findings, [&] { proof::prove_totals(books, names, chain.recount, findings); });
        go_on(findings, [&] { proof::prove_seals(books, names, chain, quotes, findings); });
        go_on(findings, [&] { prove_file(books, findings); });
    });
    proof.findings = findings.take();
    return proof;
}

}  // namespace flutebook::ledger
