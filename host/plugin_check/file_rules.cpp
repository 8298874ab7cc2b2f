// The rules of the groups `file`, `load` and `description`: what the file exports and needs, read from its bytes; what
// loading it does; what it declares.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/stat.h>

#include <algorithm>
#include <cctype>
#include <string_view>

#include "host/base/errors.hpp"
#include "host/base/near_spellings.hpp"
#include "host/engine/facts.hpp"
#include "host/fields/units.hpp"
#include "host/plugin_check/plugin_under_test.hpp"
#include "host/plugin_check/trial_rows.hpp"
#include "host/sandbox/shared_object.hpp"

namespace flutebook::plugin_check {
namespace {

using contract::Model;
using sandbox::ReadObject;
using sandbox::SharedObject;

constexpr const char* promised = "flutebook_plugin";
constexpr std::size_t most_named = 5;

// The libraries that every machine with the host has: those of the languages, and those of a compiler's sanitizers.
constexpr std::string_view of_the_languages[] = {
    "libc.so",  "libm.so",  "libstdc++.so", "libgcc_s.so", "libc++.so",   "libc++abi.so", "libpthread.so",
    "libdl.so", "librt.so", "ld-linux",     "libasan.so",  "libubsan.so", "libtsan.so",   "libclang_rt."};
// The symbols that linkers add to every library.
constexpr std::string_view of_the_linker[] = {"_init", "_fini", "__bss_start", "_edata", "_end"};

// The bytes of the sealed file in memory: no process can shorten the file while it is mapped.
class Bytes {
public:
    explicit Bytes(int file) {
        struct stat about {};
        if (::fstat(file, &about) != 0 || about.st_size <= 0) return;
        void* at = ::mmap(nullptr, static_cast<std::size_t>(about.st_size), PROT_READ, MAP_PRIVATE, file, 0);
        if (at != MAP_FAILED) all_ = {static_cast<const std::byte*>(at), static_cast<std::size_t>(about.st_size)};
    }
    ~Bytes() {
        if (!all_.empty()) ::munmap(const_cast<std::byte*>(all_.data()), all_.size());
    }
    Bytes(const Bytes&) = delete;
    Bytes& operator=(const Bytes&) = delete;
    [[nodiscard]] std::span<const std::byte> all() const { return all_; }

private:
    std::span<const std::byte> all_;
};

ReadObject read(const PluginUnderTest& plugin) {
    return sandbox::read_shared_object(Bytes(plugin.file().descriptor()).all());
}

// For a file that is known to be a library.
SharedObject object_of(const PluginUnderTest& plugin) {
    return read(plugin).object.value_or(SharedObject{});
}

std::string some_of(const std::vector<std::string>& names) {
    const std::vector<std::string> shown(
        names.begin(), names.begin() + static_cast<std::ptrdiff_t>(std::min(names.size(), most_named)));
    return fmt::format("{}{}", fmt::join(shown, ", "),
                       names.size() > most_named ? fmt::format(" and {} more", names.size() - most_named) : "");
}

bool is_of_the_languages(const std::string& library) {
    return std::any_of(std::begin(of_the_languages), std::end(of_the_languages),
                       [&](std::string_view item) { return library.rfind(item, 0) == 0; });
}

bool is_of_the_linker(const std::string& name) {
    return std::find(std::begin(of_the_linker), std::end(of_the_linker), name) != std::end(of_the_linker);
}

// The host's own message about the file, without the file's name.
Violation said_by_host(const PluginUnderTest& plugin, const ModelError& error) {
    const std::string begin = plugin.file().where() + ": ";
    const std::string& line = error.lines().front();
    return line.compare(0, begin.size(), begin) == 0 ? line.substr(begin.size()) : line;
}

// Whether the text explains something: it has letters and does not repeat the name.
bool says_something(const std::string& text, const std::string& name) {
    const auto is_letter = [](unsigned char sign) { return std::isalpha(sign) != 0 || sign >= 0x80; };
    return text != name && std::any_of(text.begin(), text.end(), is_letter);
}

const KnownName* find_known(const std::string& name) {
    const auto& all = known_names();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const KnownName& known_name) { return known_name.name == name; });
    return found == all.end() ? nullptr : &*found;
}

Violation other_than_known(const contract::Name& name, const char* verb) {
    const KnownName* known = find_known(name.name);
    if (known == nullptr) return std::nullopt;
    if (known->axis != name.axis)
        return fmt::format("{} {} by {}; it is known by {}", verb, name.name, to_text(name.axis), to_text(known->axis));
    if (!fields::conversion(known->unit, name.unit))
        return fmt::format("{} {} in {}; it is known in {}", verb, name.name, name.unit, known->unit);
    return std::nullopt;
}

// A need that is a slip of a known name, or that begins with a word that only the host's facts begin with.
Violation needed_in_vain(const std::string& name) {
    std::vector<std::string> names;
    for (const KnownName& known : known_names()) names.push_back(known.name);
    if (const auto near = base::nearest(name, names))
        return fmt::format("needs {}, which nobody gives; did you mean {}?", name, *near);
    const std::string first = name.substr(0, name.find('.') + 1);
    const auto& facts = engine::facts();
    if (std::any_of(facts.begin(), facts.end(),
                    [&](const engine::Fact& fact) { return fact.name.name.rfind(first, 0) == 0; }))
        return fmt::format("needs {}, and the host has no such fact; see the facts in the SDK's page", name);
    return std::nullopt;
}

}  // namespace

Violation try_library(PluginUnderTest& plugin) {
    const ReadObject result = read(plugin);
    if (result.object) return std::nullopt;
    return result.problem + "; build it as a shared library for this machine, or copy it again";
}

Violation try_exports(PluginUnderTest& plugin) {
    const auto exported = object_of(plugin).exported;
    std::vector<std::string> others;
    const SharedObject::Symbol* found = nullptr;
    for (const auto& symbol : exported)
        if (symbol.name == promised)
            found = &symbol;
        else if (!is_of_the_linker(symbol.name))
            others.push_back(symbol.name);
    if (found == nullptr)
        return fmt::format("exports no {}{}; end the source with FLUTEBOOK_MODEL(...)", promised,
                           others.empty() ? "" : fmt::format(", but {}", some_of(others)));
    if (!found->is_data) return fmt::format("exports {} as a function; it is constant data", promised);
    if (!others.empty())
        plugin.report().say("note", fmt::format("it exports symbols that the host does not use: {}; build it by "
                                                "flutebook_add_plugin, or hide all but {}",
                                                some_of(others), promised));
    return std::nullopt;
}

Violation try_libraries(PluginUnderTest& plugin) {
    const SharedObject object = object_of(plugin);
    std::vector<std::string> foreign;
    for (const std::string& library : object.needed)
        if (!is_of_the_languages(library)) foreign.push_back(library);
    if (!foreign.empty())
        return fmt::format("needs {}, which a plant's machine may not have; link it statically", some_of(foreign));
    if (!object.searched.empty())
        return fmt::format("has a search path for libraries: {}; link it without one", some_of(object.searched));
    if (!object.needed.empty()) plugin.report().say("note", "it needs " + some_of(object.needed));
    return std::nullopt;
}

Violation try_unique_symbols(PluginUnderTest& plugin) {
    std::vector<std::string> shared;
    for (const auto& symbol : object_of(plugin).exported)
        if (symbol.is_unique) shared.push_back(symbol.name);
    if (shared.empty()) return std::nullopt;
    return fmt::format(
        "exports {}, which every plugin that has the same name shares (GNU_UNIQUE); build it by flutebook_add_plugin, "
        "or "
        "with -fno-gnu-unique and hidden visibility",
        some_of(shared));
}

Violation try_stack(PluginUnderTest& plugin) {
    if (!object_of(plugin).needs_executable_stack) return std::nullopt;
    return "makes the stack of the whole program executable; link it with -z noexecstack, and use no nested function";
}

Violation try_loading(PluginUnderTest& plugin) {
    try {
        static_cast<void>(plugin.library());
    } catch (const ModelError& error) {
        return said_by_host(plugin, error);
    }
    return std::nullopt;
}

Violation try_loading_floating_point(PluginUnderTest& plugin) {
    const auto& change = plugin.library().computes_apart;
    if (!change) return std::nullopt;
    return "loading it changed how the whole program computes: " + *change + "; link it without fast arithmetic";
}

Violation try_description(PluginUnderTest& plugin) {
    try {
        static_cast<void>(plugin.model());
    } catch (const ModelError& error) {
        return said_by_host(plugin, error);
    }
    return std::nullopt;
}

Violation try_documented(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    const auto wrong = [](const std::string& what) { return "does not describe " + what + "; write a few words"; };
    if (!says_something(model.title, "")) return wrong("itself: its title is empty");
    for (const auto* list : {&model.needs, &model.provides})
        for (const contract::Name& name : *list)
            if (!says_something(name.meaning, name.name)) return wrong("the meaning of " + name.name);
    for (const contract::Setting& setting : model.settings)
        if (!says_something(setting.meaning, setting.name)) return wrong("the meaning of " + setting.name);
    for (const contract::Line& line : model.lines)
        if (!says_something(line.title, "")) return wrong("the line " + line.name + ": its title is empty");
    for (const contract::Loss& loss : model.losses)
        if (!says_something(loss.title, "")) return wrong("the loss " + loss.cause + ": its title is empty");
    for (std::size_t i = 0; i < model.reasons.size(); ++i)
        if (!says_something(model.reasons[i], "")) return wrong(fmt::format("its reason {}", i + 1));
    return std::nullopt;
}

Violation try_known_names(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    std::vector<std::string> foreign;
    for (const contract::Name& need : model.needs) {
        if (auto wrong = other_than_known(need, "needs")) return wrong;
        if (find_known(need.name) != nullptr) continue;
        if (auto wrong = needed_in_vain(need.name)) return wrong;
        foreign.push_back(need.name);
    }
    for (const contract::Name& provide : model.provides) {
        if (auto wrong = other_than_known(provide, "provides")) return wrong;
        const KnownName* known = find_known(provide.name);
        if (known != nullptr && !known->may_be_provided)
            return fmt::format("provides {}, a fact that no model may replace; give it another name", provide.name);
    }
    if (!foreign.empty())
        plugin.report().say("note", fmt::format("it needs {}, which neither the host nor a model of its own gives: the "
                                                "plant must have a model that provides it",
                                                some_of(foreign)));
    return std::nullopt;
}

Violation try_shedding(PluginUnderTest& plugin) {
    const Model& model = plugin.model();
    const bool lays_out_the_run = std::any_of(model.provides.begin(), model.provides.end(),
                                              [](const contract::Name& item) { return item.name == "run.good"; });
    if (model.losses.empty() || lays_out_the_run) return std::nullopt;
    return fmt::format("sheds {} and does not provide run.good; only the model that provides run.good may shed paper",
                       model.losses.front().cause);
}

}  // namespace flutebook::plugin_check
