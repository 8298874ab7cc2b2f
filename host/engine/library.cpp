#include "host/engine/library.hpp"

#include <elf.h>

#include <array>
#include <boost/dll/shared_library.hpp>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <memory>
#include <mutex>
#include <vector>

#include "host/engine/floating_point.hpp"
#include "host/errors.hpp"

namespace flutebook::engine {
namespace {

// Never closed: code of a plugin may be running, or its strings be shown, until the very end. The vector itself is
// never freed either, so that no destructor closes what it holds.
void keep_for_ever(std::unique_ptr<boost::dll::shared_library> library) {
    static std::mutex mutex;
    static auto* kept = new std::vector<std::unique_ptr<boost::dll::shared_library>>();
    const std::lock_guard lock(mutex);
    kept->push_back(std::move(library));
}

template <typename T>
bool read(std::ifstream& from, T& into) {
    std::array<char, sizeof(T)> bytes;
    if (!from.read(bytes.data(), bytes.size())) return false;
    std::memcpy(&into, bytes.data(), bytes.size());
    return true;
}

// Whether a part that the loader maps lies past the end of the file, as after a copy that was broken off. The loader
// itself would not say so: the process would die at the first touch. All else that may be wrong it says.
bool is_cut_short(const std::filesystem::path& path) {
    const std::uintmax_t size = std::filesystem::file_size(path);
    std::ifstream file(path, std::ios::binary);
    Elf64_Ehdr header;
    if (!read(file, header) || std::memcmp(header.e_ident, ELFMAG, SELFMAG) != 0) return false;
    if (header.e_ident[EI_CLASS] != ELFCLASS64 || header.e_phentsize != sizeof(Elf64_Phdr)) return false;
    file.seekg(static_cast<std::streamoff>(header.e_phoff));
    Elf64_Phdr part;
    for (unsigned i = 0; i < header.e_phnum && read(file, part); ++i)
        if (part.p_type == PT_LOAD && (part.p_offset > size || part.p_filesz > size - part.p_offset)) return true;
    return false;
}

// What the system's loader said. The library wraps it in words of its own, the path, and a code that misleads ("Bad
// file descriptor").
std::string loader_text(const std::exception& error, const std::string& path) {
    const std::string text = error.what();
    const std::string mark = "(dlerror system message: ";
    const auto begin = text.find(mark);
    const auto end = text.rfind("): ");
    if (begin == std::string::npos || end == std::string::npos || end < begin + mark.size()) return text;
    const std::string said = text.substr(begin + mark.size(), end - begin - mark.size());
    const std::string of_path = path + ": ";
    return said.starts_with(of_path) ? said.substr(of_path.size()) : said;
}

}  // namespace

const flutebook_model& open_plugin(const std::string& file) {
    // A relative path without a folder would be searched for elsewhere.
    const auto path = std::filesystem::absolute(file);
    const std::string where = file + ": model " + path.stem().string();
    if (!std::filesystem::is_regular_file(path))
        throw ModelError(where + ": no such plugin file; build it, or take the model off plugins.yaml");
    if (is_cut_short(path)) throw ModelError(where + ": the file is cut short: its end is missing; copy it again");
    const FloatingPointGuard guard;
    auto library = std::make_unique<boost::dll::shared_library>();
    try {
        library->load(path, boost::dll::load_mode::rtld_now | boost::dll::load_mode::rtld_local);
    } catch (const std::exception& error) {
        throw ModelError(where + ": cannot be loaded as a plugin: " + loader_text(error, path.string()) +
                         "; build it as a shared library for this machine, with all it calls linked in");
    }
    const bool exports = library->has("flutebook_plugin");
    const flutebook_model* model = exports ? &library->get<const flutebook_model>("flutebook_plugin") : nullptr;
    keep_for_ever(std::move(library));
    if (const auto change = guard.change())
        throw ModelError(where + ": loading it changed how the whole program computes: " + *change +
                         "; link it without fast arithmetic");
    if (!exports)
        throw ModelError(where + ": exports no symbol flutebook_plugin; end the source with FLUTEBOOK_MODEL(...)");
    return *model;
}

}  // namespace flutebook::engine
