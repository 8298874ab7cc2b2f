#include "host/trial/rules.hpp"

#include <algorithm>

#include "host/trial/evaluate_rules.hpp"
#include "host/trial/file_rules.hpp"
#include "host/trial/load_rules.hpp"
#include "host/trial/rounds.hpp"

namespace flutebook::trial {
namespace {

constexpr bool for_trust = true;
constexpr bool for_check = false;

}  // namespace

std::string Rule::group() const {
    return std::string(id).substr(0, std::string(id).find('.'));
}

const std::vector<Rule>& rules() {
    static const std::vector<Rule> all = {
        {survives, "it neither crashes nor ends the process", nullptr, {}, for_trust},
        {comes_back, "every call comes back in time", nullptr, {}, for_trust},
        {takes_little, "it takes no memory without end", nullptr, {}, for_trust},
        {keeps_to_itself, "it starts no process, changes no file and opens no connection", nullptr, {}, for_trust},

        {"file.library", "it is a library for this machine, whole in all its parts", try_library, {}, for_check},
        {"file.exports", "it exports the one symbol that is promised", try_exports, {"file.library"}, for_check},
        {"file.libraries",
         "it needs no library beside those of its language",
         try_libraries,
         {"file.library"},
         for_check},

        {"load.binds",
         "it loads, with everything it calls in place",
         try_loading,
         {"file.library", "file.exports"},
         for_trust},
        {"load.floating-point",
         "loading it leaves the floating-point environment as it was",
         try_loading_floating_point,
         {"load.binds"},
         for_trust},
        {"load.signals",
         "loading it leaves the handlers of signals as they were",
         try_kept<Kept::signals>,
         {"load.binds"},
         for_check},
        {"load.locale", "loading it leaves the locale as it was", try_kept<Kept::locale>, {"load.binds"}, for_check},
        {"load.environment",
         "loading it leaves the environment as it was",
         try_kept<Kept::environment>,
         {"load.binds"},
         for_check},
        {"load.folder",
         "loading it leaves the working folder as it was",
         try_kept<Kept::folder>,
         {"load.binds"},
         for_check},
        {"load.threads", "loading it starts no thread", try_kept<Kept::threads>, {"load.binds"}, for_check},
        {"load.descriptors",
         "loading it leaves no file open and closes none",
         try_kept<Kept::descriptors>,
         {"load.binds"},
         for_check},
        {"load.file-mode",
         "loading it leaves the rights of new files as they were",
         try_kept<Kept::file_mode>,
         {"load.binds"},
         for_check},

        {"description.reads",
         "its description is whole: names, units, ranges and defaults are fit",
         try_description,
         {"load.binds"},
         for_trust},

        {"evaluate.answers",
         "every call answers, and refuses rows for declared reasons alone",
         try_answers,
         {"description.reads"},
         for_trust},
        {"evaluate.numbers", "every result is a number", try_numbers, {"evaluate.answers"}, for_trust},
        {"evaluate.ranges",
         "every number it provides lies in the range it promised",
         try_ranges,
         {"evaluate.numbers"},
         for_check},
        {"evaluate.floating-point",
         "a call leaves the floating-point environment as it was",
         try_floating_point,
         {"evaluate.answers"},
         for_trust},
        {"evaluate.repeats", "the same rows again come to the same bits", try_repeats, {"evaluate.answers"}, for_trust},
        {"evaluate.order",
         "rows come to the same bits wherever they stand in a block",
         try_order,
         {"evaluate.repeats"},
         for_trust},
        {"evaluate.blocks",
         "rows come to the same bits in blocks of any size",
         try_blocks,
         {"evaluate.order"},
         for_trust},
        {"evaluate.threads", "rows come to the same bits on any thread", try_threads, {"evaluate.blocks"}, for_trust},

        {"truth.balance", "what it sheds balances the mass that came in", try_balance, {"evaluate.numbers"}, for_trust},
    };
    return all;
}

const Rule* find_rule(const std::string& id) {
    const auto found = std::find_if(rules().begin(), rules().end(), [&](const Rule& rule) { return rule.id == id; });
    return found == rules().end() ? nullptr : &*found;
}

std::vector<const Rule*> rules_of_trust() {
    std::vector<const Rule*> made;
    for (const Rule& rule : rules())
        if (rule.is_asked_for_trust) made.push_back(&rule);
    return made;
}

}  // namespace flutebook::trial
