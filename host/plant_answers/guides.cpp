// A guide begins with its title, an empty line, and a paragraph that says what it is for.
#include "host/plant_answers/guides.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "host/answers/json_text.hpp"
#include "host/plant_answers/installed_guides.hpp"

namespace flutebook::plant_answers {

namespace {

Guide made_guide(const std::string& name, std::string text) {
    Guide guide{name, name, "", std::move(text)};
    std::istringstream lines(guide.text);
    std::string line;
    while (std::getline(lines, line)) {
        if (line.rfind("# ", 0) == 0) {
            guide.title = line.substr(2);
        } else if (!line.empty()) {
            guide.about += (guide.about.empty() ? "" : " ") + line;
        } else if (!guide.about.empty()) {
            break;
        }
    }
    return guide;
}

std::vector<Guide> made_guides() {
    std::vector<Guide> result;
    for (auto& [name, text] : installed_guides()) result.push_back(made_guide(name, std::move(text)));
    return result;
}

answers::Json head_json(const Guide& guide) {
    return {{"name", guide.name}, {"title", guide.title}, {"about", guide.about}};
}

}  // namespace

const std::vector<Guide>& guides() {
    static const std::vector<Guide> all = made_guides();
    return all;
}

const Guide* find_guide(const std::string& name) {
    const auto found =
        std::find_if(guides().begin(), guides().end(), [&](const Guide& guide) { return guide.name == name; });
    return found == guides().end() ? nullptr : &*found;
}

std::string guide_list_document() {
    answers::Json list = answers::Json::array();
    for (const Guide& guide : guides()) list.push_back(head_json(guide));
    return answers::document_text("guides", {{"guides", list}});
}

std::string guide_document(const Guide& guide) {
    answers::Json tree = head_json(guide);
    tree["text"] = guide.text;
    return answers::document_text("guide", tree);
}

}  // namespace flutebook::plant_answers
