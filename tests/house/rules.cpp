// One function a rule; each reads the whole tree and says where it is broken.
#include "tests/house/rules.hpp"

#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>

namespace flutebook::house {

namespace {

using Words = std::set<std::string>;

bool is_code(const SourceFile& file) {
    return Words{".cpp", ".hpp", ".h", ".c"}.count(file.extension()) == 1;
}

// What a person writes to be read by a person. Answers that tests compare against are not.
bool is_written_by_hand(const SourceFile& file) {
    return is_code(file) || Words{".cmake", ".md", ".py", ".sh", ".sql", ".yaml"}.count(file.extension()) == 1 ||
           file.name() == "CMakeLists.txt";
}

bool holds(const std::string& line, const std::string& word) {
    return line.find(word) != std::string::npos;
}

bool any_line_holds(const SourceFile& file, const std::string& word) {
    return std::any_of(file.lines.begin(), file.lines.end(),
                       [&](const std::string& line) { return holds(line, word); });
}

void replace_all(std::string& text, const std::string& from, const std::string& to) {
    for (std::size_t found = text.find(from); found != std::string::npos; found = text.find(from, found + to.size()))
        text.replace(found, from.size(), to);
}

// A CMakeLists.txt without its comments, which build nothing.
std::string text_of(const SourceFile& lists) {
    std::string text;
    for (const std::string& line : lists.lines) text += line.substr(0, line.find('#')) + "\n";
    return text;
}

// A CMakeLists.txt with its loops over names written out: foreach(model run scrap) ... ${model}/${model}.cpp
std::string with_loops_written_out(const SourceFile& lists) {
    const std::string text = text_of(lists);
    std::string all = text;
    static const std::regex loop(R"(foreach\((\w+)\s+([^)]*)\))");
    for (std::sregex_iterator found(text.begin(), text.end(), loop), end; found != end; ++found) {
        const std::string items = (*found)[2];
        static const std::regex word(R"([^\s"]+)");
        for (std::sregex_iterator item(items.begin(), items.end(), word); item != end; ++item) {
            std::string turn = text;
            replace_all(turn, "${" + (*found)[1].str() + "}", item->str());
            all += turn;
        }
    }
    return all;
}

// The sources that a CMakeLists.txt names, by their paths from the top.
Words sources_named(const SourceFile& lists) {
    static const std::regex source(R"re([^\s()";]+\.(cpp|c)\b)re");
    const std::string text = with_loops_written_out(lists);
    const std::string from_top = "${PROJECT_SOURCE_DIR}/";
    Words named;
    for (std::sregex_iterator found(text.begin(), text.end(), source), end; found != end; ++found) {
        const std::string name = found->str();
        const bool is_from_top = name.rfind(from_top, 0) == 0;
        const std::filesystem::path path = is_from_top ? std::filesystem::path(name.substr(from_top.size()))
                                                       : lists.folder() / std::filesystem::path(name);
        named.insert(path.lexically_normal().generic_string());
    }
    return named;
}

// The folders whose every source a CMakeLists.txt builds: a room of the host by its name, or its own folder by a list
// that CMake makes.
Words folders_built_whole(const SourceFile& lists) {
    static const std::regex room(R"(host_room\((\w+))");
    const std::string text = text_of(lists);
    Words folders;
    for (std::sregex_iterator found(text.begin(), text.end(), room), end; found != end; ++found)
        folders.insert(lists.folder() + "/" + (*found)[1].str());
    if (holds(text, "GLOB_RECURSE sources CONFIGURE_DEPENDS *.cpp")) folders.insert(lists.folder());
    return folders;
}

}  // namespace

Faults strangers_at_the_top(const Tree& tree) {
    const Words rooms = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "host", "plugins", "sdk",
                         "ledger",         "tests",     "config"};
    Words there;
    for (const SourceFile& file : tree.files) there.insert(file.path.substr(0, file.path.find('/')));
    Faults faults;
    for (const std::string& name : there)
        if (name[0] != '.' && !rooms.count(name)) faults.push_back(name + ": does not belong at the top");
    for (const std::string& name : rooms)
        if (!there.count(name)) faults.push_back(name + ": is missing at the top");
    return faults;
}

Faults overlong_files(const Tree& tree) {
    const std::size_t most = 400;
    Faults faults;
    for (const SourceFile& file : tree.files)
        if (is_written_by_hand(file) && file.lines.size() > most)
            faults.push_back(file.path + ": has " + std::to_string(file.lines.size()) + " lines");
    return faults;
}

Faults marks_left_behind(const Tree& tree) {
    // Put together here, so that this file holds none of them.
    const std::vector<std::string> marks = {std::string("TO") + "DO",          std::string("FIX") + "ME",
                                            std::string("NO") + "LINT",        std::string("[!may") + "fail]",
                                            std::string("[!should") + "fail]", std::string("\"[") + ".",
                                            std::string("[!") + "hide]",       std::string("#if ") + "0"};
    Faults faults;
    for (const SourceFile& file : tree.files)
        for (std::size_t i = 0; i < file.lines.size() && is_written_by_hand(file); ++i)
            for (const std::string& mark : marks)
                if (holds(file.lines[i], mark)) faults.push_back(at(file, i) + mark);
    return faults;
}

Faults unbuilt_sources(const Tree& tree) {
    Words named, whole;
    for (const SourceFile& file : tree.files) {
        if (file.name() != "CMakeLists.txt") continue;
        named.merge(sources_named(file));
        whole.merge(folders_built_whole(file));
    }

    Faults faults;
    for (const SourceFile& file : tree.files) {
        // The template is what a new plugin starts from: its author builds it.
        if ((file.extension() != ".cpp" && file.extension() != ".c") || is_under(file.path, "sdk/template")) continue;
        const bool is_built =
            named.count(file.path) ||
            std::any_of(whole.begin(), whole.end(), [&](const auto& folder) { return is_under(file.path, folder); });
        if (!is_built) faults.push_back(file.path + ": no CMakeLists.txt names it");
    }
    return faults;
}

Faults overgrown_main(const Tree& tree) {
    const SourceFile* main_file = tree.find("host/main.cpp");
    if (!main_file) return {"host/main.cpp: is missing"};
    if (main_file->lines.size() < 40) return {};
    return {"host/main.cpp: has " + std::to_string(main_file->lines.size()) + " lines"};
}

Faults money_in_fractions(const Tree& tree) {
    static const std::regex fraction(R"(\b(double|float)\b[&\s]+\w*(amount|cost|money|price|revenue|total|worth)\w*)");
    Faults faults;
    for (const SourceFile& file : tree.files) {
        if (!is_code(file) || !is_under(file.path, "ledger") || file.path.rfind("ledger/values/money.", 0) == 0)
            continue;
        std::smatch found;
        for (std::size_t i = 0; i < file.lines.size(); ++i)
            if (std::regex_search(file.lines[i], found, fraction)) faults.push_back(at(file, i) + found.str());
    }
    return faults;
}

Faults missing_cautions(const Tree& tree) {
    const SourceFile* readme = tree.find("README.md");
    if (!readme) return {"README.md: is missing"};
    static const std::regex heading("#+ .*caution.*", std::regex::icase);
    const auto found = std::find_if(readme->lines.begin(), readme->lines.end(),
                                    [&](const std::string& line) { return std::regex_match(line, heading); });
    if (found == readme->lines.end()) return {"README.md: no heading names the cautions"};
    const auto text =
        std::find_if(found + 1, readme->lines.end(), [](const std::string& line) { return !line.empty(); });
    if (text == readme->lines.end() || text->front() == '#') return {"README.md: nothing stands under the cautions"};
    return {};
}

Faults untried_bad_plugins(const Tree& tree) {
    const std::string room = "tests/bad_plugins";
    Words folders;
    for (const SourceFile& file : tree.files)
        if (is_under(file.folder(), room)) {
            const std::size_t first = room.size() + 1;
            folders.insert(file.path.substr(first, file.path.find('/', first) - first));
        }
    Faults faults;
    for (const std::string& folder : folders) {
        const bool is_tried = std::any_of(tree.files.begin(), tree.files.end(), [&](const SourceFile& file) {
            return is_under(file.path, "tests") && file.extension() == ".cpp" &&
                   !is_under(file.path, room + "/" + folder) && any_line_holds(file, "\"" + folder + "\"");
        });
        if (!is_tried) faults.push_back(room + "/" + folder + ": no test names it");
    }
    return faults;
}

Faults files_without_a_word(const Tree& tree) {
    Faults faults;
    for (const SourceFile& file : tree.files) {
        const bool is_plant = file.extension() == ".yaml" && is_under(file.path, "config");
        std::string mark;
        const std::string own_header = file.path.substr(0, file.path.size() - file.extension().size()) + ".hpp";
        const bool has_header = file.extension() == ".cpp" && tree.find(own_header);
        if (is_code(file) && !has_header) mark = "/";
        if (file.extension() == ".sh" || file.extension() == ".cmake" || is_plant) mark = "# ";
        if (file.extension() == ".sql") mark = "--";
        const bool has_interpreter = !file.lines.empty() && file.lines[0].rfind("#!", 0) == 0;
        const std::size_t first = has_interpreter ? 1 : 0;
        if (!mark.empty() && (file.lines.size() <= first || file.lines[first].rfind(mark, 0) != 0))
            faults.push_back(file.path + ": does not begin by saying what it is for");
    }
    return faults;
}

Faults paths_of_one_machine(const Tree& tree) {
    // Spelled so that this file holds none of them. After a word the path is no longer one from the root.
    static const std::regex root(R"((^|[^\w}.])(/(wor[k]|hom[e]|roo[t])/))");
    Faults faults;
    std::smatch found;
    for (const SourceFile& file : tree.files)
        for (std::size_t i = 0; i < file.lines.size(); ++i)
            if (std::regex_search(file.lines[i], found, root)) faults.push_back(at(file, i) + found.str(2));
    return faults;
}

}  // namespace flutebook::house
