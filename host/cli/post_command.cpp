#include "host/cli/post_command.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>

#include "host/cli/json_text.hpp"
#include "host/cli/person.hpp"
#include "host/cli/post_json.hpp"
#include "host/cli/post_text.hpp"
#include "host/desk/post.hpp"

namespace flutebook::cli {

namespace {

using Keep = desk::PostAsked::Keep;

ledger::Store open(const std::string& file, Keep keep) {
    if (keep == Keep::nothing && !std::filesystem::exists(file)) return ledger::Store::in_memory();
    return ledger::Store::open_for_writing(file, ledger::IfMissing::create);
}

}  // namespace

ExitCode run_post(const catalogue::Plant& plant, const std::string& ledger, const PostCommand& asked, Output& output) {
    auto store = open(ledger, asked.keep);
    const auto answer = desk::post(plant, store, {asked.files, person_at_work(), asked.keep});
    output.write(asked.form == Form::json ? json_text(post_json(answer, asked.keep))
                                          : post_text(plant, answer, asked.keep));
    return ExitCode::done;
}

}  // namespace flutebook::cli
