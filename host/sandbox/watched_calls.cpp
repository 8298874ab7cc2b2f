#include "host/sandbox/watched_calls.hpp"

#include <elf.h>
#include <link.h>
#include <malloc.h>
#include <pthread.h>
#include <sys/mman.h>
#include <sys/random.h>
#include <sys/time.h>
#include <unistd.h>

#include <algorithm>
#include <clocale>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <ctime>
#include <new>
#include <string_view>
#include <vector>

namespace flutebook::sandbox {
namespace {

thread_local CallNotes* noting = nullptr;

// Records the call, then calls the real function. Calls of the program itself are not recorded.
template <auto Function, typename Result, typename... Given>
Result stand_in(Given... given) {
    if (noting != nullptr) noting->take(reinterpret_cast<const void*>(Function));
    return Function(given...);
}

enum class Kind { allocation, outside };

struct Watched {
    const char* symbol;  // in the tables
    const char* name;    // in messages
    Kind kind;
    const void* real;
    const void* stand_in;
};

template <auto Function, typename Result, typename... Given>
const void* stand_in_for(Result (*)(Given...)) {
    return reinterpret_cast<const void*>(&stand_in<Function, Result, Given...>);
}

template <auto Function>
Watched watched(const char* symbol, Kind kind, const char* name = nullptr) {
    return {symbol, name == nullptr ? symbol : name, kind, reinterpret_cast<const void*>(Function),
            stand_in_for<Function>(Function)};
}

// The operators, each as a function with a name. Not every compiler has the sized ones.
void* new_one(std::size_t size) {
    return ::operator new(size);
}
void* new_many(std::size_t size) {
    return ::operator new[](size);
}
void* new_aligned(std::size_t size, std::align_val_t on) {
    return ::operator new(size, on);
}
void* new_many_aligned(std::size_t size, std::align_val_t on) {
    return ::operator new[](size, on);
}
void* new_quietly(std::size_t size, const std::nothrow_t& quietly) {
    return ::operator new(size, quietly);
}
void* new_many_quietly(std::size_t size, const std::nothrow_t& quietly) {
    return ::operator new[](size, quietly);
}
void delete_one(void* at) {
    ::operator delete(at);
}
void delete_many(void* at) {
    ::operator delete[](at);
}
void delete_sized(void* at, std::size_t) {
    ::operator delete(at);
}
void delete_many_sized(void* at, std::size_t) {
    ::operator delete[](at);
}
void delete_aligned(void* at, std::align_val_t on) {
    ::operator delete(at, on);
}
void delete_sized_aligned(void* at, std::size_t, std::align_val_t on) {
    ::operator delete(at, on);
}

void add_allocations(std::vector<Watched>& all) {
    constexpr Kind kind = Kind::allocation;
    for (const Watched& one :
         {watched<::malloc>("malloc", kind), watched<::calloc>("calloc", kind), watched<::realloc>("realloc", kind),
          watched<::reallocarray>("reallocarray", kind), watched<::free>("free", kind),
          watched<::posix_memalign>("posix_memalign", kind), watched<::aligned_alloc>("aligned_alloc", kind),
          watched<::memalign>("memalign", kind), watched<::mmap>("mmap", kind), watched<::mmap64>("mmap64", kind),
          watched<::munmap>("munmap", kind), watched<::sbrk>("sbrk", kind), watched<::brk>("brk", kind)})
        all.push_back(one);
}

void add_operators(std::vector<Watched>& all) {
    constexpr Kind kind = Kind::allocation;
    const char* taken = "operator new";
    const char* given_back = "operator delete";
    for (const Watched& one :
         {watched<new_one>("_Znwm", kind, taken), watched<new_many>("_Znam", kind, taken),
          watched<new_aligned>("_ZnwmSt11align_val_t", kind, taken),
          watched<new_many_aligned>("_ZnamSt11align_val_t", kind, taken),
          watched<new_quietly>("_ZnwmRKSt9nothrow_t", kind, taken),
          watched<new_many_quietly>("_ZnamRKSt9nothrow_t", kind, taken),
          watched<delete_one>("_ZdlPv", kind, given_back), watched<delete_many>("_ZdaPv", kind, given_back),
          watched<delete_sized>("_ZdlPvm", kind, given_back), watched<delete_many_sized>("_ZdaPvm", kind, given_back),
          watched<delete_aligned>("_ZdlPvSt11align_val_t", kind, given_back),
          watched<delete_sized_aligned>("_ZdlPvmSt11align_val_t", kind, given_back)})
        all.push_back(one);
}

void add_outside_calls(std::vector<Watched>& all) {
    constexpr Kind kind = Kind::outside;
    for (const Watched& one : {watched<::time>("time", kind),
                               watched<::clock>("clock", kind),
                               watched<::clock_gettime>("clock_gettime", kind),
                               watched<::gettimeofday>("gettimeofday", kind),
                               watched<::nanosleep>("nanosleep", kind),
                               watched<::usleep>("usleep", kind),
                               watched<::rand>("rand", kind),
                               watched<::random>("random", kind),
                               watched<::drand48>("drand48", kind),
                               watched<::getrandom>("getrandom", kind),
                               watched<::getentropy>("getentropy", kind),
                               watched<::pthread_mutex_lock>("pthread_mutex_lock", kind),
                               watched<::pthread_mutex_trylock>("pthread_mutex_trylock", kind),
                               watched<::pthread_rwlock_rdlock>("pthread_rwlock_rdlock", kind),
                               watched<::pthread_rwlock_wrlock>("pthread_rwlock_wrlock", kind),
                               watched<::pthread_spin_lock>("pthread_spin_lock", kind),
                               watched<::pthread_create>("pthread_create", kind),
                               watched<::getenv>("getenv", kind),
                               watched<::setenv>("setenv", kind),
                               watched<::setlocale>("setlocale", kind),
                               watched<::fopen>("fopen", kind),
                               watched<::fopen64>("fopen64", kind),
                               watched<::fputs>("fputs", kind),
                               watched<::puts>("puts", kind),
                               watched<::fwrite>("fwrite", kind),
                               watched<::fread>("fread", kind),
                               watched<::read>("read", kind),
                               watched<::write>("write", kind)})
        all.push_back(one);
}

const std::vector<Watched>& all_watched() {
    static const std::vector<Watched> all = [] {
        std::vector<Watched> result;
        add_allocations(result);
        add_operators(result);
        add_outside_calls(result);
        return result;
    }();
    return all;
}

#if defined(__x86_64__)
constexpr std::uint64_t of_calls = R_X86_64_JUMP_SLOT, of_addresses = R_X86_64_GLOB_DAT, of_pointers = R_X86_64_64;
#elif defined(__aarch64__)
constexpr std::uint64_t of_calls = R_AARCH64_JUMP_SLOT, of_addresses = R_AARCH64_GLOB_DAT,
                        of_pointers = R_AARCH64_ABS64;
#else
constexpr std::uint64_t of_calls = 0, of_addresses = 0, of_pointers = 0;  // unknown architecture: nothing is recorded
#endif

// The tables of one loaded library.
class Tables {
public:
    Tables(std::uintptr_t base, const ElfW(Dyn) * entries) : base_(base), entries_(entries) {}

    void redirect() const {
        if (of_calls == 0) return;
        redirect(value(DT_JMPREL), value(DT_PLTRELSZ));
        redirect(value(DT_RELA), value(DT_RELASZ));
    }

private:
    std::uintptr_t value(std::int64_t tag) const {
        for (const auto* entry = entries_; entry->d_tag != DT_NULL; ++entry)
            if (entry->d_tag == tag) return entry->d_un.d_ptr;
        return 0;
    }

    void redirect(std::uintptr_t first, std::size_t bytes) const {
        const auto* entries = reinterpret_cast<const ElfW(Rela)*>(first);
        for (std::size_t i = 0; first != 0 && i < bytes / sizeof(ElfW(Rela)); ++i) redirect(entries[i]);
    }

    void redirect(const ElfW(Rela) & entry) const {
        const auto type = ELF64_R_TYPE(entry.r_info);
        if (type != of_calls && type != of_addresses && (type != of_pointers || entry.r_addend != 0)) return;
        const auto* symbols = reinterpret_cast<const ElfW(Sym)*>(value(DT_SYMTAB));
        const auto* names = reinterpret_cast<const char*>(value(DT_STRTAB));
        const std::string_view name = names + symbols[ELF64_R_SYM(entry.r_info)].st_name;
        const auto found = std::find_if(all_watched().begin(), all_watched().end(),
                                        [&](const Watched& watched) { return name == watched.symbol; });
        if (found != all_watched().end()) put(base_ + entry.r_offset, found->stand_in);
    }

    // The loader may have made the page read-only.
    static void put(std::uintptr_t place, const void* address) {
        const auto page = static_cast<std::uintptr_t>(::sysconf(_SC_PAGESIZE));
        if (::mprotect(reinterpret_cast<void*>(place / page * page), page, PROT_READ | PROT_WRITE) != 0) return;
        std::memcpy(reinterpret_cast<void*>(place), &address, sizeof address);
    }

    std::uintptr_t base_;
    const ElfW(Dyn) * entries_;
};

int visit(dl_phdr_info* library, std::size_t, void*) {
    const std::string_view name = library->dlpi_name;
    // The program itself, and what the kernel maps into every process.
    if (name.empty() || name.find("vdso") != std::string_view::npos) return 0;
    for (std::size_t i = 0; i < library->dlpi_phnum; ++i)
        if (library->dlpi_phdr[i].p_type == PT_DYNAMIC)
            Tables(library->dlpi_addr,
                   reinterpret_cast<const ElfW(Dyn)*>(library->dlpi_addr + library->dlpi_phdr[i].p_vaddr))
                .redirect();
    return 0;
}

}  // namespace

void watch_calls() {
    static_cast<void>(all_watched());
    static const int once = ::dl_iterate_phdr(visit, nullptr);
    static_cast<void>(once);
}

void CallNotes::begin() {
    noting = this;
}

void CallNotes::end() {
    noting = nullptr;
}

void CallNotes::take(const void* function) {
    const auto found = std::find_if(all_watched().begin(), all_watched().end(),
                                    [&](const Watched& watched) { return watched.real == function; });
    if (found == all_watched().end()) return;
    const char*& first = found->kind == Kind::allocation ? allocation_ : outside_call_;
    if (first == nullptr) first = found->name;
}

}  // namespace flutebook::sandbox
