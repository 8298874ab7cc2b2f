#include "host/sandbox/shared_object.hpp"

#include <elf.h>

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <sstream>
#include <stdexcept>

namespace flutebook::sandbox {
namespace {

#if defined(__x86_64__)
constexpr Elf64_Half this_machine = EM_X86_64;
#elif defined(__aarch64__)
constexpr Elf64_Half this_machine = EM_AARCH64;
#else
constexpr Elf64_Half this_machine = EM_NONE;
#endif

constexpr std::size_t most_names = 100'000;

// Thrown and caught in this file: the bytes are no valid library.
struct Damaged : std::runtime_error {
    using std::runtime_error::runtime_error;
};

class ElfReader {
public:
    explicit ElfReader(std::span<const std::byte> bytes) : bytes_(bytes) {}

    SharedObject read() {
        check_header();
        read_parts();
        read_dynamic();
        SharedObject result;
        for (const Elf64_Dyn& entry : dynamic_) {
            if (entry.d_tag == DT_NEEDED) result.needed.push_back(text(entry.d_un.d_val));
            if (entry.d_tag == DT_RUNPATH || entry.d_tag == DT_RPATH) add_folders(result.searched, entry.d_un.d_val);
        }
        read_symbols(result.exported);
        result.needs_executable_stack = needs_executable_stack();
        return result;
    }

private:
    template <typename T>
    T at(std::uint64_t offset) const {
        if (offset > bytes_.size() || sizeof(T) > bytes_.size() - offset)
            throw Damaged("a part of it lies past its end");
        T result;
        std::memcpy(&result, bytes_.data() + offset, sizeof result);
        return result;
    }

    void check_header() {
        if (bytes_.size() < SELFMAG || std::memcmp(bytes_.data(), ELFMAG, SELFMAG) != 0)
            throw Damaged("it does not begin with the ELF mark");
        header_ = at<Elf64_Ehdr>(0);
        if (header_.e_ident[EI_CLASS] != ELFCLASS64 || header_.e_ident[EI_DATA] != ELFDATA2LSB ||
            (this_machine != EM_NONE && header_.e_machine != this_machine))
            throw Damaged("it was built for another kind of machine");
        if (header_.e_type != ET_DYN) throw Damaged("it is a program or a piece of one");
        if (header_.e_phentsize != sizeof(Elf64_Phdr)) throw Damaged("its table of parts is damaged");
    }

    void read_parts() {
        for (std::uint64_t i = 0; i < header_.e_phnum; ++i)
            parts_.push_back(at<Elf64_Phdr>(header_.e_phoff + i * sizeof(Elf64_Phdr)));
    }

    // The place in the file of what is loaded at this address.
    std::uint64_t offset_of(std::uint64_t address) const {
        for (const Elf64_Phdr& part : parts_)
            if (part.p_type == PT_LOAD && address >= part.p_vaddr && address - part.p_vaddr < part.p_filesz)
                return part.p_offset + (address - part.p_vaddr);
        throw Damaged("an address in it is outside every part");
    }

    // Without a part that describes the stack, the loader makes it executable.
    bool needs_executable_stack() const {
        const auto part = std::find_if(parts_.begin(), parts_.end(),
                                       [](const Elf64_Phdr& elf64_phdr) { return elf64_phdr.p_type == PT_GNU_STACK; });
        return part == parts_.end() || (part->p_flags & PF_X) != 0;
    }

    void read_dynamic() {
        const auto part = std::find_if(parts_.begin(), parts_.end(),
                                       [](const Elf64_Phdr& elf64_phdr) { return elf64_phdr.p_type == PT_DYNAMIC; });
        if (part == parts_.end()) throw Damaged("it has no dynamic section");
        for (std::uint64_t done = 0; done + sizeof(Elf64_Dyn) <= part->p_filesz; done += sizeof(Elf64_Dyn)) {
            const auto entry = at<Elf64_Dyn>(part->p_offset + done);
            if (entry.d_tag == DT_NULL) break;
            dynamic_.push_back(entry);
        }
        texts_ = offset_of(value(DT_STRTAB));
        texts_size_ = value(DT_STRSZ);
    }

    std::optional<std::uint64_t> find(std::int64_t tag) const {
        const auto found =
            std::find_if(dynamic_.begin(), dynamic_.end(), [&](const Elf64_Dyn& entry) { return entry.d_tag == tag; });
        return found == dynamic_.end() ? std::nullopt : std::optional<std::uint64_t>(found->d_un.d_val);
    }

    std::uint64_t value(std::int64_t tag) const {
        if (const auto found = find(tag)) return *found;
        throw Damaged("it lacks a table that a loader needs");
    }

    std::string text(std::uint64_t index) const {
        if (index >= texts_size_ || texts_ > bytes_.size() || texts_size_ > bytes_.size() - texts_)
            throw Damaged("a name in it lies past its end");
        const auto* first = reinterpret_cast<const char*>(bytes_.data()) + texts_ + index;
        return {first, ::strnlen(first, texts_size_ - index)};
    }

    void add_folders(std::vector<std::string>& folders, std::uint64_t index) const {
        std::istringstream list(text(index));
        for (std::string folder; std::getline(list, folder, ':');)
            if (!folder.empty()) folders.push_back(folder);
    }

    // The symbol table does not store its length: it follows from the hash table.
    std::uint64_t symbol_count() const {
        if (const auto plain = find(DT_HASH)) return at<std::uint32_t>(offset_of(*plain) + sizeof(std::uint32_t));
        const auto quick = find(DT_GNU_HASH);
        if (!quick) return 0;
        const std::uint64_t table = offset_of(*quick);
        const auto buckets = at<std::uint32_t>(table);
        const auto first_hashed = at<std::uint32_t>(table + 4);
        const auto words = at<std::uint32_t>(table + 8);
        const std::uint64_t bucket = table + 16 + std::uint64_t{words} * 8;
        std::uint64_t last = 0;
        for (std::uint64_t i = 0; i < buckets; ++i)
            last = std::max<std::uint64_t>(last, at<std::uint32_t>(bucket + i * 4));
        if (last < first_hashed) return first_hashed;
        const std::uint64_t chain = bucket + std::uint64_t{buckets} * 4;
        while ((at<std::uint32_t>(chain + (last - first_hashed) * 4) & 1U) == 0) ++last;
        return last + 1;
    }

    void read_symbols(std::vector<SharedObject::Symbol>& exported) const {
        const std::uint64_t table = offset_of(value(DT_SYMTAB));
        const std::uint64_t count = symbol_count();
        if (count > most_names) throw Damaged("it has more names than any plugin");
        for (std::uint64_t i = 1; i < count; ++i) {
            const auto symbol = at<Elf64_Sym>(table + i * sizeof(Elf64_Sym));
            const auto binding = ELF64_ST_BIND(symbol.st_info);
            const auto seen = ELF64_ST_VISIBILITY(symbol.st_other);
            if (symbol.st_shndx == SHN_UNDEF || symbol.st_shndx == SHN_ABS || binding == STB_LOCAL) continue;
            if (seen != STV_DEFAULT && seen != STV_PROTECTED) continue;
            exported.push_back(
                {text(symbol.st_name), ELF64_ST_TYPE(symbol.st_info) == STT_OBJECT, binding == STB_GNU_UNIQUE});
        }
    }

    std::span<const std::byte> bytes_;
    Elf64_Ehdr header_{};
    std::vector<Elf64_Phdr> parts_;
    std::vector<Elf64_Dyn> dynamic_;
    std::uint64_t texts_ = 0, texts_size_ = 0;
};

}  // namespace

ReadObject read_shared_object(std::span<const std::byte> bytes) {
    try {
        return {ElfReader(bytes).read(), ""};
    } catch (const Damaged& damaged) {
        return {std::nullopt, std::string("is no library that could be loaded: ") + damaged.what()};
    }
}

}  // namespace flutebook::sandbox
