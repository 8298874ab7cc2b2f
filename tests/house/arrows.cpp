// Reads the includes of every file and holds them against the map of the house.
#include "tests/house/arrows.hpp"

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

namespace flutebook::house {

namespace {

// What each room may see besides itself. Tests may see all, and stand in no arrow.
const std::map<std::string, std::set<std::string>>& arrows() {
    static const std::map<std::string, std::set<std::string>> map = {
        {"sdk", {}},
        {"plugins", {"sdk"}},
        {"ledger", {}},
        {"host/base", {}},
        {"host/fields", {"host/base"}},
        {"host/box_styles", {"host/base", "host/fields"}},
        {"host/plant", {"host/base", "host/fields", "host/box_styles", "sdk", "ledger"}},
        {"host/orders", {"host/base", "host/fields", "host/plant", "host/box_styles", "sdk", "ledger"}},
        {"host/blanks", {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders"}},
        {"host/geometry",
         {"host/blanks", "host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "sdk", "ledger"}},
        {"host/contract",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "sdk", "ledger"}},
        {"host/engine",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "sdk", "ledger"}},
        {"host/explain",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "sdk", "ledger"}},
        {"host/sandbox", {"host/base"}},
        {"host/plugin_check",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/sandbox", "sdk", "ledger"}},
        {"host/plugin_worker",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/contract", "host/sandbox", "sdk",
          "ledger"}},
        {"host/installed_set", {"host/contract", "host/plugin_check", "host/sandbox"}},
        {"host/production",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "sdk", "ledger"}},
        {"host/month", {"host/base", "host/production", "sdk", "ledger"}},
        {"host/trim_history",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/production", "sdk",
          "ledger"}},
        {"host/trim_answers", {"host/base", "host/fields", "host/plant", "host/box_styles", "ledger"}},
        {"host/scenario",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "sdk", "ledger"}},
        {"host/quoting",
         {"host/base", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry", "host/contract",
          "host/engine", "host/explain", "host/fields", "host/answers", "host/trim_answers", "sdk", "ledger"}},
        {"host/workplace",
         {"host/base", "host/plant", "host/contract", "host/engine", "host/sandbox", "host/plugin_check",
          "host/plugin_worker", "host/installed_set"}},
        {"host/lists",
         {"host/base", "host/fields", "host/box_styles", "host/plant", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/answers", "host/quoting", "host/workplace", "host/render", "sdk",
          "ledger"}},
        {"host/saved_quotes",
         {"host/base", "host/fields", "host/box_styles", "host/plant", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/scenario", "host/answers", "host/quoting", "host/workplace",
          "host/trim_history", "sdk", "ledger"}},
        {"host/what_if",
         {"host/base", "host/fields", "host/box_styles", "host/plant", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/explain", "host/scenario", "host/answers", "host/what_if_answers",
          "host/quoting", "host/workplace", "sdk", "ledger"}},
        {"host/what_if_answers",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/answers", "sdk", "ledger"}},
        {"host/what_if_reports",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/what_if_answers", "host/answers", "host/render", "host/drawings", "host/reports", "sdk",
          "ledger"}},
        {"host/beside",
         {"host/base", "host/fields", "host/box_styles", "host/plant", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/scenario", "host/answers", "host/what_if_answers", "host/what_if",
          "host/what_if_reports", "host/workplace", "host/command_line", "host/render", "host/reports", "sdk",
          "ledger"}},
        {"host/services",
         {"host/base",
          "host/fields",
          "host/plant",
          "host/box_styles",
          "host/orders",
          "host/blanks",
          "host/geometry",
          "host/contract",
          "host/engine",
          "host/explain",
          "host/sandbox",
          "host/plugin_check",
          "host/plugin_worker",
          "host/installed_set",
          "host/production",
          "host/month",
          "host/trim_history",
          "host/trim_answers",
          "host/scenario",
          "host/workplace",
          "host/saved_quotes",
          "host/answers",
          "host/plant_answers",
          "host/month_answers",
          "host/quoting",
          "sdk",
          "ledger"}},
        {"host/answers",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/explain", "host/trim_answers", "sdk", "ledger"}},
        {"host/month_answers",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/contract",
          "host/production", "host/month", "host/trim_answers", "host/answers", "sdk", "ledger"}},
        {"host/plant_answers",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/answers", "sdk", "ledger"}},
        {"host/render", {"host/base", "ledger"}},
        {"host/charts", {"host/render"}},
        {"host/drawings",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/blanks", "host/geometry", "host/answers",
          "host/render", "ledger"}},
        {"host/reports",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/trim_answers", "host/answers", "host/render", "host/drawings", "sdk",
          "ledger"}},
        {"host/month_reports",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/geometry",
          "host/contract", "host/engine", "host/month", "host/trim_answers", "host/answers", "host/month_answers",
          "host/render", "host/reports", "host/drawings", "sdk", "ledger"}},
        {"host/plant_reports",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/plant_answers", "host/answers", "host/render", "host/drawings", "host/reports", "sdk",
          "ledger"}},
        {"host/workbooks",
         {"host/base", "host/plant", "host/box_styles", "host/orders", "host/engine", "host/explain", "host/quoting",
          "host/answers", "host/render", "sdk", "ledger"}},
        {"host/offers",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/answers",
          "host/render", "host/drawings", "ledger"}},
        {"host/pages",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/explain", "host/answers", "host/plant_answers", "host/what_if_answers", "host/render",
          "host/drawings", "host/reports", "host/plant_reports", "host/what_if_reports", "sdk", "ledger"}},
        {"host/http", {}},
        {"host/handover", {"host/base", "host/http", "host/sandbox"}},
        {"host/web",
         {"host/base",
          "host/http",
          "host/handover",
          "host/beside",
          "host/sandbox",
          "host/command_line",
          "host/fields",
          "host/plant",
          "host/box_styles",
          "host/orders",
          "host/contract",
          "host/engine",
          "host/quoting",
          "host/services",
          "host/month",
          "host/workplace",
          "host/trim_history",
          "host/saved_quotes",
          "host/what_if",
          "host/answers",
          "host/plant_answers",
          "host/what_if_answers",
          "host/month_reports",
          "host/reports",
          "host/plant_reports",
          "host/what_if_reports",
          "host/offers",
          "host/workbooks",
          "host/render",
          "host/month_answers",
          "host/month_pages",
          "host/plant_pages",
          "host/pages",
          "sdk",
          "ledger"}},
        {"host/month_pages",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/month", "host/production",
          "host/engine", "host/contract", "host/answers", "host/charts", "host/month_answers", "host/render",
          "host/month_reports", "host/reports", "host/pages", "ledger"}},
        {"host/plant_pages",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/blanks", "host/contract",
          "host/engine", "host/answers", "host/plant_answers", "host/render", "host/drawings", "host/reports",
          "host/plant_reports", "host/pages", "sdk", "ledger"}},
        {"host/command_line", {"host/base", "host/plant", "host/render", "ledger"}},
        {"host/cli",
         {"host/base",
          "host/beside",
          "host/command_line",
          "host/fields",
          "host/plant",
          "host/box_styles",
          "host/orders",
          "host/engine",
          "host/quoting",
          "host/services",
          "host/lists",
          "host/what_if",
          "host/workplace",
          "host/saved_quotes",
          "host/trim_history",
          "host/answers",
          "host/plant_answers",
          "host/month_answers",
          "host/month_reports",
          "host/reports",
          "host/plant_reports",
          "host/what_if_answers",
          "host/what_if_reports",
          "host/offers",
          "host/workbooks",
          "host/render",
          "host/web",
          "host/pages",
          "sdk",
          "ledger"}},
        {"host/main.cpp", {"host/cli", "host/command_line", "host/base", "ledger"}},
        {"config",
         {"host/base", "host/fields", "host/plant", "host/box_styles", "host/orders", "host/plugin_check", "sdk",
          "ledger"}},
    };
    return map;
}

// A library, and the file that keeps it.
struct Keeper {
    std::string include, library, file;
};

const std::vector<Keeper>& keepers() {
    static const std::vector<Keeper> list = {
        {"boost/dll", "Boost.DLL", "host/contract/library.cpp"},
        {"yaml-cpp/", "yaml-cpp", "host/base/yaml/yaml.cpp"},
        {"cmark", "cmark", "host/plant_pages/markdown.cpp"},
        {"udunits", "udunits", "host/fields/units.cpp"},
        {"muParser", "muParser", "host/fields/sum.cpp"},
        {"SQLiteCpp/", "SQLiteCpp", "ledger/store/database.cpp"},
        {"zlib.h", "zlib", "ledger/store/packing.cpp"},
        {"CLI/", "CLI11", "host/command_line/command.cpp"},
        {"xlsxwriter", "libxlsxwriter", "host/render/workbook_report.cpp"},
        {"zip.h", "libzip", "host/lists/workbook_reader.cpp"},
        {"boost/beast", "Boost.Beast", "host/http/server.cpp"},
        {"sodium", "libsodium", "host/web/secrets.cpp"},
        {"expat", "expat", "host/lists/workbook_reader.cpp"},
    };
    return list;
}

struct Include {
    std::size_t line_index;
    std::string target;
    bool is_quoted;
};

bool is_source(const SourceFile& file) {
    static const std::set<std::string> extensions = {".cpp", ".hpp", ".h", ".c"};
    return extensions.count(file.extension()) == 1;
}

std::vector<Include> includes_of(const SourceFile& file) {
    std::vector<Include> includes;
    for (std::size_t i = 0; i < file.lines.size(); ++i) {
        const std::string& line = file.lines[i];
        const std::size_t hash = line.find_first_not_of(" \t");
        if (hash == std::string::npos || line[hash] != '#') continue;
        const std::size_t word = line.find_first_not_of(" \t", hash + 1);
        if (word == std::string::npos || line.compare(word, 7, "include") != 0) continue;
        const std::size_t open = line.find_first_of("<\"", word + 7);
        if (open == std::string::npos) continue;
        const std::size_t close = line.find_first_of(">\"", open + 1);
        includes.push_back({i, line.substr(open + 1, close - open - 1), line[open] == '"'});
    }
    return includes;
}

std::string room_of(const std::string& path) {
    if (path == "host/main.cpp") return path;
    const std::size_t first = path.find('/');
    const std::string top = path.substr(0, first);
    if (top != "host") return top;
    const std::size_t second = path.find('/', first + 1);
    return second == std::string::npos ? top : path.substr(0, second);
}

// The file of ours that an include means, by its path from the top or beside the file; nothing where there is none.
std::string file_meant(const Tree& tree, const SourceFile& from, const Include& include) {
    if (include.target.rfind("flutebook/", 0) == 0) return "sdk/include/" + include.target;
    if (tree.find(include.target)) return include.target;
    const std::string beside =
        (std::filesystem::path(from.folder()) / include.target).lexically_normal().generic_string();
    return tree.find(beside) ? beside : "";
}

// A header of C++, or one of the two of C that the contract needs.
bool is_standard(const std::string& target) {
    return target == "stddef.h" || target == "stdint.h" || target.find_first_of("./") == std::string::npos;
}

bool may_see(const SourceFile& from, const std::string& meant) {
    const std::string room = room_of(from.path);
    if (room == "tests") return true;
    // One cost model knows nothing of another.
    if (room == "plugins" && is_under(meant, "plugins")) return is_under(meant, from.folder());
    const auto allowed = arrows().find(room);
    return room == room_of(meant) || (allowed != arrows().end() && allowed->second.count(room_of(meant)) == 1);
}

}  // namespace

Faults wrong_arrows(const Tree& tree) {
    Faults faults;
    for (const SourceFile& file : tree.files) {
        if (!is_source(file)) continue;
        const std::string room = room_of(file.path);
        for (const Include& include : includes_of(file)) {
            const std::string meant = file_meant(tree, file, include);
            const std::string where = at(file, include.line_index);
            if (!meant.empty()) {
                if (!may_see(file, meant)) faults.push_back(where + room + " may not see " + meant);
            } else if (include.is_quoted) {
                faults.push_back(where + "no file of the tree is called " + include.target);
            } else if ((room == "sdk" || room == "plugins") && !is_standard(include.target)) {
                faults.push_back(where + room + " may use nothing but the standard library, not " + include.target);
            }
        }
    }
    return faults;
}

Faults libraries_out_of_place(const Tree& tree) {
    Faults faults;
    for (const SourceFile& file : tree.files) {
        if (!is_source(file)) continue;
        for (const Include& include : includes_of(file))
            for (const Keeper& keeper : keepers())
                if (include.target.rfind(keeper.include, 0) == 0 && file.path != keeper.file)
                    faults.push_back(at(file, include.line_index) + keeper.library + " is kept in " + keeper.file);
    }
    return faults;
}

}  // namespace flutebook::house
