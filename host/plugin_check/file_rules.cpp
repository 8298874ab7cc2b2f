// The rules of the group `file`: what the file exports and needs, read from its bytes.
#include "host/plugin_check/rule_groups.hpp"

#include <fmt/format.h>
#include <sys/mman.h>
#include <sys/stat.h>

#include <algorithm>
#include <string_view>

#include "host/plugin_check/shared_object.hpp"
#include "host/plugin_check/subject.hpp"

namespace flutebook::plugin_check {
namespace {

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

ReadObject read(const Subject& subject) {
    return read_shared_object(Bytes(subject.file().descriptor()).all());
}

// For a file that is known to be a library.
SharedObject object_of(const Subject& subject) {
    return read(subject).object.value_or(SharedObject{});
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

}  // namespace

Wrong try_library(Subject& subject) {
    const ReadObject result = read(subject);
    if (result.object) return std::nullopt;
    return result.problem + "; build it as a shared library for this machine, or copy it again";
}

Wrong try_exports(Subject& subject) {
    const auto exported = object_of(subject).exported;
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
        subject.report().say("note", fmt::format("it exports symbols that the host does not use: {}; build it by "
                                                 "flutebook_add_plugin, or hide all but {}",
                                                 some_of(others), promised));
    return std::nullopt;
}

Wrong try_libraries(Subject& subject) {
    const SharedObject object = object_of(subject);
    std::vector<std::string> foreign;
    for (const std::string& library : object.needed)
        if (!is_of_the_languages(library)) foreign.push_back(library);
    if (!foreign.empty())
        return fmt::format("needs {}, which a plant's machine may not have; link it statically", some_of(foreign));
    if (!object.searched.empty())
        return fmt::format("has a search path for libraries: {}; link it without one", some_of(object.searched));
    if (!object.needed.empty()) subject.report().say("note", "it needs " + some_of(object.needed));
    return std::nullopt;
}

}  // namespace flutebook::plugin_check
