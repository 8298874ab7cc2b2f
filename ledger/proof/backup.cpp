#include "ledger/proof/backup.hpp"

#include <utility>
#include <vector>

#include "ledger/proof/unfinished_copy.hpp"
#include "ledger/store/connection.hpp"

namespace flutebook::ledger {

namespace {

void expect_whole(const Proof& proof, const std::string& file) {
    if (proof.holds()) return;
    std::vector<std::string> lines = {file +
                                      ": no copy was kept: what was copied does not verify; verify the ledger itself"};
    for (const auto& finding : proof.findings) lines.push_back(file + ": " + finding.text);
    throw LedgerError(LedgerError::Kind::unfit, lines);
}

}  // namespace

BackupProof backup(const Store& store, const std::string& file) {
    expect_free_name(file);
    auto cleared = clear_unfinished_copies(file);
    UnfinishedCopy copy(file, store.file());
    store.connection().books().copy_to(copy.name());
    const auto proof = verify(Store::open_for_reading(copy.name()));
    expect_whole(proof, file);
    copy.finish();
    return {proof, std::move(cleared)};
}

}  // namespace flutebook::ledger
