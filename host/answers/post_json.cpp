#include "host/answers/post_json.hpp"

#include <nlohmann/json.hpp>

#include "host/answers/json_text.hpp"

namespace flutebook::answers {

Json post_json(const PostAnswer& answer, PostOptions::Keep keep) {
    const bool is_kept = keep == PostOptions::Keep::all;
    Json tree;
    tree["dry_run"] = !is_kept;
    tree["posted"] = answer.posted;
    tree["skipped"] = answer.skipped;
    tree["first_entry"] = answer.posted > 0 ? Json(answer.first_entry) : Json();
    tree["head"] = is_kept ? Json(answer.head) : Json();
    tree["files"] = Json::array();
    for (const auto& file : answer.files)
        tree["files"].push_back({{"file", file.file},
                                 {"document", name_of(file.kind)},
                                 {"posted", file.posted},
                                 {"skipped", file.skipped}});
    tree["moved"] = Json::array();
    for (const auto& flow : answer.flows)
        tree["moved"].push_back({{"from", flow.from},
                                 {"to", flow.to},
                                 {"cause", flow.cause},
                                 {"kg", flow.mass.to_kg()},
                                 {"amount", flow.money.to_double()}});
    return tree;
}

}  // namespace flutebook::answers
