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

desk::PostAnswer post(const catalogue::Plant& plant, const std::string& ledger, const desk::PostAsked& asked) {
    if (!std::filesystem::exists(ledger)) {
        // A ledger is not made for documents that are refused.
        auto nowhere = ledger::Store::in_memory();
        auto tried = desk::post(plant, nowhere, {asked.files, asked.who, Keep::nothing});
        if (asked.keep == Keep::nothing) return tried;
    }
    auto store = ledger::Store::open_for_writing(ledger, ledger::IfMissing::create);
    return desk::post(plant, store, asked);
}

}  // namespace

ExitCode run_post(const catalogue::Plant& plant, const std::string& ledger, const PostCommand& asked, Output& output) {
    const auto answer = post(plant, ledger, {asked.files, person_at_work(), asked.keep});
    output.write(asked.form == Form::json ? json_text(post_json(answer, asked.keep))
                                          : post_text(plant, answer, asked.keep));
    return ExitCode::done;
}

}  // namespace flutebook::cli
