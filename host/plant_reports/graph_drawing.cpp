// The graph in Graphviz's language is given to `dot` as a file without a name, and the drawing comes back through a
// pipe: neither side waits for the other.
#include "host/plant_reports/graph_drawing.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <map>
#include <memory>
#include <system_error>
#include <utility>
#include <vector>

#include "host/plant_answers/plugin_answer.hpp"
#include "host/render/text.hpp"

extern char** environ;

namespace flutebook::plant_reports {

namespace {

using contract::Model;
using engine::Graph;

// In a quoted text of the language, left-justified lines end in \l.
std::string escaped(const std::string& text) {
    std::string result;
    for (const char c : render::cleaned(text)) {
        if (c == '"' || c == '\\') result += '\\';
        result += c;
    }
    return result;
}

std::string typed(const std::string& name, const std::string& unit) {
    return escaped(fmt::format("{} [{}]", name, unit));
}

// From whom to whom, and what on the way: the numbers as they are given, each once.
struct Arrow {
    std::vector<std::string> names;
    bool is_replacing = false;
};
using Arrows = std::map<std::pair<std::string, std::string>, Arrow>;

bool is_preferred(const plant::Plant& plant, const std::string& name, const std::string& giver) {
    const auto& preferences = plant.preferences;
    return std::any_of(preferences.begin(), preferences.end(),
                       [&](const auto& item) { return item.name == name && item.model == giver; });
}

class DotWriter {
public:
    DotWriter(const plant::Plant& plant, const engine::Graph& graph) : plant_(plant), graph_(graph) {}

    std::string text() {
        std::string nodes;
        for (std::size_t m = 0; m < graph_.models.size(); ++m) nodes += node(m);
        const engine::HostLinks& host = graph_.host;
        for (const engine::Link* link :
             {&host.fed, &host.good, &host.web_length, &host.web_area, &host.issued, &host.adhesive})
            take(*link, "host");
        std::string result =
            "digraph plugins {\n"
            "    rankdir=LR;\n"
            "    node [shape=box, fontname=\"sans-serif\", fontsize=11];\n"
            "    edge [fontname=\"sans-serif\", fontsize=9];\n" +
            nodes + "    \"host\" [label=\"the host: balance,\\ncost sheet, reports\", shape=ellipse];\n";
        for (const auto& [ends, arrow] : arrows_) {
            std::string label;
            for (const std::string& name : arrow.names) label += name + "\\l";
            result += fmt::format("    \"{}\" -> \"{}\" [label=\"{}\"{}];\n", escaped(ends.first), escaped(ends.second),
                                  label, arrow.is_replacing ? ", style=dashed" : "");
        }
        return result + "}\n";
    }

private:
    void take(const engine::Link& link, const std::string& taker) {
        const plant_answers::Feed feed = plant_answers::feed_of(graph_, link.source);
        Arrow& arrow = arrows_[{feed.model, taker}];
        const std::string name = typed(feed.name, feed.unit);
        if (std::find(arrow.names.begin(), arrow.names.end(), name) == arrow.names.end()) arrow.names.push_back(name);
        arrow.is_replacing = arrow.is_replacing || is_preferred(plant_, feed.name, feed.model);
    }

    // What a model takes from other models becomes arrows; facts stand in its own box.
    std::string node(std::size_t m) {
        const Model& model = graph_.models[m];
        std::string facts;
        for (std::size_t n = 0; n < model.needs.size(); ++n) {
            const engine::Link& link = graph_.needs[m][n];
            if (link.source.kind == engine::Source::Kind::fact)
                facts += typed(model.needs[n].name, model.needs[n].unit) + "\\l";
            else
                take(link, model.id);
        }
        for (const auto& replaced : graph_.settings[m])
            if (replaced) take(*replaced, model.id);
        return fmt::format("    \"{0}\" [label=\"{1}. {0}\\n{2}\"];\n", escaped(model.id), m + 1, facts);
    }

    const plant::Plant& plant_;
    const Graph& graph_;
    Arrows arrows_;
};

}  // namespace

std::string plugin_graph_dot(const plant::Plant& plant, const engine::Graph& graph) {
    return DotWriter(plant, graph).text();
}

namespace {

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, CloseFile>;

struct FileActions {
    FileActions() { posix_spawn_file_actions_init(&actions); }
    ~FileActions() { posix_spawn_file_actions_destroy(&actions); }
    FileActions(const FileActions&) = delete;
    FileActions& operator=(const FileActions&) = delete;
    posix_spawn_file_actions_t actions{};
};

Drawn failed(const std::string& why) {
    return {"", fmt::format("plugin graph: cannot be drawn: {}, or draw what --dot answers elsewhere", why)};
}

std::string reason(int error) {
    return std::generic_category().message(error);
}

std::string read_all(int from) {
    std::string result;
    std::array<char, 65536> piece{};
    for (ssize_t got = 0; (got = ::read(from, piece.data(), piece.size())) != 0;) {
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) break;
        result.append(piece.data(), static_cast<std::size_t>(got));
    }
    return result;
}

int status_of(pid_t child) {
    int status = -1;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) continue;
    return status;
}

}  // namespace

Drawn drawn_as_svg(const std::string& dot) {
    const File graph(std::tmpfile());
    if (!graph || std::fwrite(dot.data(), 1, dot.size(), graph.get()) != dot.size() || std::fflush(graph.get()) != 0)
        return failed(reason(errno) + "; try again");
    std::rewind(graph.get());
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) return failed(reason(errno) + "; try again");
    const File out(::fdopen(ends[0], "r"));
    FileActions given;
    posix_spawn_file_actions_adddup2(&given.actions, ::fileno(graph.get()), STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&given.actions, ends[1], STDOUT_FILENO);
    std::string program = "dot", form = "-Tsvg";
    const std::array<char*, 3> words = {program.data(), form.data(), nullptr};
    pid_t child = 0;
    const int error = ::posix_spawnp(&child, "dot", &given.actions, nullptr, words.data(), environ);
    ::close(ends[1]);
    if (error == ENOENT) return failed("there is no program `dot`; install graphviz");
    if (error != 0) return failed(reason(error) + "; try again");
    std::string svg = read_all(ends[0]);
    if (status_of(child) != 0 || svg.empty()) return failed("the program `dot` did not finish; see what it said");
    return {std::move(svg), ""};
}

}  // namespace flutebook::plant_reports
