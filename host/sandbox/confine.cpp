#include "host/sandbox/confine.hpp"

#include <fcntl.h>
#include <linux/audit.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <sched.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <cerrno>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "host/sandbox/build.hpp"

namespace flutebook::sandbox {
namespace {

#if defined(__x86_64__)
constexpr std::uint32_t architecture = AUDIT_ARCH_X86_64;
#elif defined(__aarch64__)
constexpr std::uint32_t architecture = AUDIT_ARCH_AARCH64;
#else
constexpr std::uint32_t architecture = 0;  // no filter is known for it
#endif

constexpr rlim_t most_address_space = rlim_t{4} << 30;

struct Forbidden {
    int call;
    const char* meaning;
};

constexpr const char* starts = "starts a process";
constexpr const char* writes = "changes the file system";
constexpr const char* connects = "opens a connection";
constexpr const char* leaves = "leaves its process group";
constexpr const char* meddles = "meddles with other processes";

// The last would have the system make calls that no filter sees.
constexpr Forbidden forbidden[] = {
#if defined(__x86_64__)
    {SYS_fork, starts},
    {SYS_vfork, starts},
    {SYS_creat, writes},
    {SYS_rename, writes},
    {SYS_unlink, writes},
    {SYS_mkdir, writes},
    {SYS_rmdir, writes},
    {SYS_link, writes},
    {SYS_symlink, writes},
    {SYS_mknod, writes},
    {SYS_chmod, writes},
    {SYS_chown, writes},
    {SYS_lchown, writes},
#endif
    {SYS_execve, starts},
    {SYS_execveat, starts},
    {SYS_renameat, writes},
    {SYS_renameat2, writes},
    {SYS_unlinkat, writes},
    {SYS_mkdirat, writes},
    {SYS_linkat, writes},
    {SYS_symlinkat, writes},
    {SYS_mknodat, writes},
    {SYS_truncate, writes},
    {SYS_fchmod, writes},
    {SYS_fchmodat, writes},
    {SYS_fchownat, writes},
    {SYS_setxattr, writes},
    {SYS_utimensat, writes},
    {SYS_mount, writes},
    {SYS_socket, connects},
    {SYS_socketpair, connects},
    {SYS_setsid, leaves},
    {SYS_setpgid, leaves},
    {SYS_kill, meddles},
    {SYS_tkill, meddles},
    {SYS_rt_sigqueueinfo, meddles},
    {SYS_rt_tgsigqueueinfo, meddles},
    {SYS_pidfd_send_signal, meddles},
    {SYS_ptrace, meddles},
    {SYS_process_vm_writev, meddles},
    {SYS_io_uring_setup, meddles},
};

constexpr std::uint32_t of_another_kind = 0x4000'0000;  // the numbers of x32
constexpr std::uint32_t writing = O_WRONLY | O_RDWR | O_CREAT | O_TRUNC;

// The filter is a little program over each call's number and arguments.
class Filter {
public:
    Filter() {
        load(offsetof(seccomp_data, arch));
        // The same calls have other numbers where a program asks as if it were built for another machine.
        add(BPF_JMP | BPF_JEQ | BPF_K, architecture, 1, 0);
        add(BPF_RET | BPF_K, SECCOMP_RET_TRAP);
        load(offsetof(seccomp_data, nr));
        add(BPF_JMP | BPF_JSET | BPF_K, of_another_kind, 0, 1);
        add(BPF_RET | BPF_K, SECCOMP_RET_TRAP);
    }
    void forbid(int call) {
        add(BPF_JMP | BPF_JEQ | BPF_K, static_cast<std::uint32_t>(call), 0, 1);
        add(BPF_RET | BPF_K, SECCOMP_RET_TRAP);
    }
    // As if the system were too old for it: callers then take the call that can be looked into.
    void hide(int call) {
        add(BPF_JMP | BPF_JEQ | BPF_K, static_cast<std::uint32_t>(call), 0, 1);
        add(BPF_RET | BPF_K, SECCOMP_RET_ERRNO | ENOSYS);
    }
    // Forbidden where the argument is another.
    void forbid_unless(int call, int argument, std::uint32_t value) {
        add(BPF_JMP | BPF_JEQ | BPF_K, static_cast<std::uint32_t>(call), 0, 4);
        load(offsetof(seccomp_data, args) + sizeof(std::uint64_t) * static_cast<std::size_t>(argument));
        add(BPF_JMP | BPF_JEQ | BPF_K, value, 0, 1);
        add(BPF_RET | BPF_K, SECCOMP_RET_ALLOW);
        add(BPF_RET | BPF_K, SECCOMP_RET_TRAP);
    }
    // Forbidden where the argument has, or lacks, any of the bits.
    enum class Where { has_any, has_none };
    void forbid_if(int call, int argument, Where where, std::uint32_t bits) {
        const bool if_set = where == Where::has_any;
        add(BPF_JMP | BPF_JEQ | BPF_K, static_cast<std::uint32_t>(call), 0, 4);
        load(offsetof(seccomp_data, args) + sizeof(std::uint64_t) * static_cast<std::size_t>(argument));
        add(BPF_JMP | BPF_JSET | BPF_K, bits, if_set ? 1 : 0, if_set ? 0 : 1);
        add(BPF_RET | BPF_K, SECCOMP_RET_ALLOW);
        add(BPF_RET | BPF_K, SECCOMP_RET_TRAP);
    }
    void install() {
        add(BPF_RET | BPF_K, SECCOMP_RET_ALLOW);
        const sock_fprog program{static_cast<unsigned short>(steps_.size()), steps_.data()};
        if (::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) == 0) ::prctl(PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program);
    }

private:
    void load(std::size_t offset) { add(BPF_LD | BPF_W | BPF_ABS, static_cast<std::uint32_t>(offset)); }
    void add(int code, std::uint32_t value, int if_true = 0, int if_false = 0) {
        steps_.push_back({static_cast<std::uint16_t>(code), static_cast<std::uint8_t>(if_true),
                          static_cast<std::uint8_t>(if_false), value});
    }
    std::vector<sock_filter> steps_;
};

void limit(__rlimit_resource_t what, rlim_t most) {
    const rlimit both{most, most};
    ::setrlimit(what, &both);
}

}  // namespace

void limit_processor_time(std::chrono::seconds most) {
    limit(RLIMIT_CPU, static_cast<rlim_t>(most.count()));
}

void limit_resources() {
    limit(RLIMIT_CORE, 0);
    limit(RLIMIT_FSIZE, 0);
    if (!has_address_sanitizer) limit(RLIMIT_AS, most_address_space);
}

void forbid_calls() {
    if (architecture == 0) return;
    Filter filter;
    filter.hide(SYS_clone3);
    filter.hide(SYS_openat2);
    filter.forbid_if(SYS_clone, 0, Filter::Where::has_none, CLONE_THREAD);
    filter.forbid_if(SYS_openat, 2, Filter::Where::has_any, writing);
#if defined(SYS_open)
    filter.forbid_if(SYS_open, 1, Filter::Where::has_any, writing);
#endif
    // Whoever gives up sends the signal to a thread of his own.
    filter.forbid_unless(SYS_tgkill, 0, static_cast<std::uint32_t>(::getpid()));
    for (const Forbidden& one : forbidden) filter.forbid(one.call);
    filter.install();
}

const char* meaning_of(int system_call) {
    for (const Forbidden& one : forbidden)
        if (one.call == system_call) return one.meaning;
    if (system_call == SYS_tgkill) return meddles;
    return system_call == SYS_clone ? starts : writes;
}

}  // namespace flutebook::sandbox
