#include "host/plugin_check/rules.hpp"

#include <algorithm>

#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/rule_groups.hpp"

namespace flutebook::plugin_check {
namespace {

constexpr const char* binds = "load.binds";
constexpr const char* keeps_rounding = "load.floating-point";
constexpr const char* reads = "description.reads";

using Rules = std::vector<Rule>;

// Loading the file left this part of the process state as it was.
template <sandbox::KeptState What>
Violation try_kept(PluginUnderTest& plugin) {
    const auto changed = sandbox::difference(plugin.loading().before, plugin.loading().after, What);
    return changed ? Violation(*changed + " when it was loaded") : std::nullopt;
}

Rules of_conduct() {
    return {{survives, "it neither crashes nor ends the process", nullptr, {}},
            {comes_back, "every call returns in time", nullptr, {}},
            {takes_little, "it uses a limited amount of memory", nullptr, {}},
            {keeps_to_itself, "it starts no process, changes no file and opens no connection", nullptr, {}}};
}

Rules of_the_file() {
    const char* library = "file.library";
    return {{library, "it is a complete library for this machine", try_library, {}},
            {"file.exports", "it exports the symbol flutebook_plugin", try_exports, {library}},
            {"file.libraries", "it needs no library but those of its language", try_libraries, {library}},
            {"file.symbols", "no symbol of it is shared with other libraries", try_unique_symbols, {library}},
            {"file.stack", "it needs no stack that can be executed", try_stack, {library}}};
}

Rules of_loading() {
    const std::vector<const char*> loaded = {binds};
    return {
        {binds,
         "it loads, and every function that it calls exists",
         try_loading,
         {"file.library", "file.exports", "file.libraries"}},
        {keeps_rounding, "the floating-point environment does not change", try_loading_floating_point, loaded},
        {"load.signals", "the signal handlers do not change", try_kept<sandbox::KeptState::signals>, loaded},
        {"load.locale", "the locale does not change", try_kept<sandbox::KeptState::locale>, loaded},
        {"load.environment", "the environment does not change", try_kept<sandbox::KeptState::environment>, loaded},
        {"load.folder", "the working folder does not change", try_kept<sandbox::KeptState::folder>, loaded},
        {"load.threads", "no thread is started", try_kept<sandbox::KeptState::threads>, loaded},
        {"load.descriptors", "no file stays open, and none is closed", try_kept<sandbox::KeptState::descriptors>,
         loaded},
        {"load.file-mode", "the rights of new files do not change", try_kept<sandbox::KeptState::file_mode>, loaded},
    };
}

Rules of_its_description() {
    const std::vector<const char*> described = {reads};
    return {
        {reads, "it is complete: names, units, ranges and defaults are valid", try_description, {binds}},
        {"description.documented", "everything declared has a text that explains it", try_documented, described},
        {"description.known-names", "names that the host knows have their unit and axis", try_known_names, described},
        {"description.shedding", "it sheds no paper, unless it provides run.good", try_shedding, described},
    };
}

Rules of_its_evaluation() {
    const char* answers = "evaluate.answers";
    const char* numbers = "evaluate.numbers";
    const char* repeats = "evaluate.repeats";
    const std::vector<const char*> answered = {answers};
    return {
        {answers, "every call succeeds, and refuses rows for declared reasons only", try_answers, {reads}},
        {"evaluate.inputs", "it does not write to its inputs", try_inputs, answered},
        {"evaluate.bounds", "it accesses its own rows only, in blocks of every size", try_bounds, {"evaluate.inputs"}},
        {numbers, "every result is a number", try_numbers, answered},
        {"evaluate.ranges", "every provided number is in its declared range", try_ranges, {numbers}},
        {"evaluate.floating-point", "the floating-point environment does not change", try_floating_point, answered},
        {repeats, "the same rows give the same bits again", try_repeats, answered},
        {"evaluate.order", "rows give the same bits at any place in a block", try_order, {repeats}},
        {"evaluate.blocks", "rows give the same bits in blocks of any size", try_blocks, {"evaluate.order"}},
        {"evaluate.threads", "rows give the same bits on any thread", try_threads, {"evaluate.blocks"}},
        {"evaluate.allocation", "it allocates and frees no memory", try_allocation, answered},
        {"evaluate.apart", "it uses no clock, lock, file, environment, random number or thread", try_apart, answered},
    };
}

Rules of_settings_truth_and_chance() {
    const char* ends = "settings.ends";
    const char* balance = "truth.balance";
    return {
        {"settings.reading", "each can be set to both ends of its range, and to nothing beyond", try_reading, {reads}},
        {ends, "every result is a number at either end of each", try_ends, {"evaluate.numbers"}},
        {balance,
         "the mass balances: paper and adhesive in, boxes and losses out",
         try_balance,
         {"description.shedding", "evaluate.numbers"}},
        {"truth.recovery",
         "what it recovers is income: no recovery adds to the cost",
         try_recovery,
         {"evaluate.numbers"}},
        {"truth.rates", "a rate that is one of its inputs has that input's unit", try_rates, {"evaluate.numbers"}},
        {"truth.use", "every need and every setting changes a result", try_use, {"evaluate.repeats"}},
        {"fuzz.orders",
         "the rules above hold with settings anywhere in their ranges",
         try_many_orders,
         {"evaluate.ranges", "evaluate.threads", ends, balance, "truth.recovery"}},
        {"end.state",
         "the process is as it was before the first call: folder, descriptors, signals, environment, limits",
         try_state,
         {"evaluate.answers"}},
    };
}

}  // namespace

std::string Rule::group() const {
    return std::string(id).substr(0, std::string(id).find('.'));
}

bool Rule::is_in_hosts_words() const {
    return id == std::string(binds) || id == std::string(keeps_rounding) || id == std::string(reads);
}

const std::vector<Rule>& rules() {
    static const Rules all = [] {
        Rules result;
        for (const auto& some : {of_conduct(), of_the_file(), of_loading(), of_its_description(), of_its_evaluation(),
                                 of_settings_truth_and_chance()})
            result.insert(result.end(), some.begin(), some.end());
        return result;
    }();
    return all;
}

const Rule* find_rule(const std::string& id) {
    const auto found = std::find_if(rules().begin(), rules().end(), [&](const Rule& rule) { return rule.id == id; });
    return found == rules().end() ? nullptr : &*found;
}

}  // namespace flutebook::plugin_check
