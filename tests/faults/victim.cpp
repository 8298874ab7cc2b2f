// A program that works on a ledger until it is done, or until something happens to it: it is killed, its disk is full.
//
//   ledger_victim post FILE SEED COUNT GROUP      COUNT documents, GROUP at a time
//   ledger_victim close FILE                      September 2026, with two differences
//   ledger_victim backup FILE COPY
//   ledger_victim quote FILE                      saves three quotes and takes an order
//   ledger_victim mark FILE                       says of each quote that it is lost
//   ledger_victim open FILE                       for writing, which brings an older ledger up to date
//   ledger_victim hold FILE                       opens it for writing and waits to be killed
//   ledger_victim read FILE                       opens it for reading and proves it
//   ledger_victim as USER GROUP UMASK COMMAND...  the same as that user: a group of its own, and GROUP besides
//   ledger_victim limit BYTES COMMAND...          the same, but no file of its may grow beyond that
//
// Says `begun` when it begins, and `done N` when the Nth thing it was asked is acknowledged. A refusal is one line on
// standard error; it ends with 1 where it was refused and with 3 where the ledger cannot be worked with.
#include <fmt/format.h>
#include <grp.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <string>
#include <vector>

#include "ledger/proof/backup.hpp"
#include "ledger/store/store.hpp"
#include "ledger/writing/posting.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/unit/ledger/made_drafts.hpp"

using namespace flutebook;
using namespace flutebook::ledger;

namespace {

void say(const std::string& line) {
    const auto text = line + "\n";
    if (write(STDOUT_FILENO, text.data(), text.size()) < 0) std::abort();
}

int post_groups(const std::vector<std::string>& words) {
    auto store = Store::open_for_writing(words.at(1), IfMissing::create, fixture::still_clock());
    // Numbered apart from what the ledger may hold already.
    fixture::DocumentStream stream(std::stoull(words.at(2)), 2, 1'000'000);
    const auto count = std::stoul(words.at(3));
    const auto group = std::stoul(words.at(4));
    for (std::size_t posted = 0; posted < count; posted += group) {
        if (post(store, stream.take(group), fixture::writer).is_refused()) std::abort();
        say(fmt::format("done {}", posted / group + 1));
    }
    return 0;
}

// For good: of this process and of all that it makes.
void become_user(const std::vector<std::string>& words) {
    const auto user = static_cast<uid_t>(std::stoul(words.at(1)));
    const auto group = static_cast<gid_t>(std::stoul(words.at(2)));
    umask(static_cast<mode_t>(std::stoul(words.at(3), nullptr, 8)));
    if (setgroups(1, &group) != 0 || setgid(user) != 0 || setuid(user) != 0) std::abort();
}

int act(const std::vector<std::string>& words) {
    const auto& verb = words.at(0);
    const auto& file = words.at(1);
    if (verb == "limit") {
        const rlimit limit = {std::stoul(file), std::stoul(file)};
        setrlimit(RLIMIT_FSIZE, &limit);
        std::signal(SIGXFSZ, SIG_IGN);
        return act({words.begin() + 2, words.end()});
    }
    if (verb == "as") {
        become_user(words);
        return act({words.begin() + 4, words.end()});
    }
    say("begun");
    if (verb == "post") return post_groups(words);
    if (verb == "read") {
        const auto proof = verify(Store::open_for_reading(file));
        if (!proof.holds()) std::abort();
        say(fmt::format("done {}", proof.entries));
        return 0;
    }
    if (verb == "backup") {
        static_cast<void>(backup(Store::open_for_reading(file), words.at(2)));
        say("done 1");
        return 0;
    }
    auto store = Store::open_for_writing(file, IfMissing::create, fixture::still_clock());
    if (verb == "close") fixture::close_september(store);
    if (verb == "quote") fixture::save_quotes_and_order(store);
    if (verb == "mark") fixture::mark_quotes(store);
    say("done 1");
    while (verb == "hold") pause();
    return 0;
}

}  // namespace

int main(int count, char** words) {
    try {
        return act({words + 1, words + count});
    } catch (const LedgerError& error) {
        for (const auto& line : error.lines()) fmt::print(stderr, "{}\n", line);
        return error.kind() == LedgerError::Kind::refused ? 1 : 3;
    }
}
