#include "host/sandbox/confine.hpp"

#include <asm/ioctls.h>
#include <fcntl.h>
#include <sched.h>
#include <seccomp.h>
#include <sys/resource.h>
#include <unistd.h>

#include <cerrno>

#include "host/sandbox/build.hpp"

namespace flutebook::sandbox {
namespace {

constexpr rlim_t most_address_space = rlim_t{4} << 30;

// The system calls that a model, the loader and the C library may make with any arguments: read files, compute, wait,
// start threads.
constexpr int allowed[] = {
    SCMP_SYS(read),
    SCMP_SYS(readv),
    SCMP_SYS(pread64),
    SCMP_SYS(preadv),
    SCMP_SYS(lseek),
    SCMP_SYS(close),
    SCMP_SYS(fstat),
    SCMP_SYS(stat),
    SCMP_SYS(lstat),
    SCMP_SYS(newfstatat),
    SCMP_SYS(statx),
    SCMP_SYS(statfs),
    SCMP_SYS(fstatfs),
    SCMP_SYS(access),
    SCMP_SYS(faccessat),
    SCMP_SYS(faccessat2),
    SCMP_SYS(readlink),
    SCMP_SYS(readlinkat),
    SCMP_SYS(getdents64),
    SCMP_SYS(getcwd),
    SCMP_SYS(fadvise64),
    SCMP_SYS(close_range),
    // Allowed because the rules of plugins look at their effect: the folder, the mode of new files, descriptors,
    // signals.
    SCMP_SYS(chdir),
    SCMP_SYS(fchdir),
    SCMP_SYS(umask),
    SCMP_SYS(dup),
    SCMP_SYS(dup2),
    SCMP_SYS(dup3),
    SCMP_SYS(rt_sigaction),
    SCMP_SYS(rt_sigprocmask),
    SCMP_SYS(rt_sigreturn),
    SCMP_SYS(rt_sigpending),
    SCMP_SYS(rt_sigtimedwait),
    SCMP_SYS(sigaltstack),
    // The size of written files is limited to 0 bytes; pipes and memory stay writable.
    SCMP_SYS(write),
    SCMP_SYS(writev),
    SCMP_SYS(pipe),
    SCMP_SYS(pipe2),
    SCMP_SYS(eventfd2),
    SCMP_SYS(poll),
    SCMP_SYS(ppoll),
    SCMP_SYS(select),
    SCMP_SYS(pselect6),
    SCMP_SYS(mmap),
    SCMP_SYS(munmap),
    SCMP_SYS(mremap),
    SCMP_SYS(mprotect),
    SCMP_SYS(madvise),
    SCMP_SYS(brk),
    SCMP_SYS(mincore),
    SCMP_SYS(membarrier),
    SCMP_SYS(futex),
    SCMP_SYS(set_robust_list),
    SCMP_SYS(get_robust_list),
    SCMP_SYS(rseq),
    SCMP_SYS(set_tid_address),
    SCMP_SYS(arch_prctl),
    SCMP_SYS(prctl),
    SCMP_SYS(exit),
    SCMP_SYS(exit_group),
    SCMP_SYS(restart_syscall),
    SCMP_SYS(sched_yield),
    SCMP_SYS(sched_getaffinity),
    SCMP_SYS(sched_getparam),
    SCMP_SYS(sched_getscheduler),
    SCMP_SYS(getcpu),
    SCMP_SYS(getpid),
    SCMP_SYS(getppid),
    SCMP_SYS(gettid),
    SCMP_SYS(getuid),
    SCMP_SYS(geteuid),
    SCMP_SYS(getgid),
    SCMP_SYS(getegid),
    SCMP_SYS(getpgrp),
    SCMP_SYS(uname),
    SCMP_SYS(sysinfo),
    SCMP_SYS(getrandom),
    SCMP_SYS(getrlimit),
    SCMP_SYS(getrusage),
    SCMP_SYS(times),
    SCMP_SYS(time),
    SCMP_SYS(gettimeofday),
    SCMP_SYS(clock_gettime),
    SCMP_SYS(clock_getres),
    SCMP_SYS(nanosleep),
    SCMP_SYS(pause),
    SCMP_SYS(clock_nanosleep),
};

// What a call that is not allowed does, for the messages.
struct Meaning {
    int call;
    const char* text;
};

constexpr const char* starts = "starts a process";
constexpr const char* writes = "changes the file system";
constexpr const char* connects = "opens a connection";
constexpr const char* leaves = "leaves its process group";
constexpr const char* meddles = "meddles with other processes";
constexpr const char* unknown = "makes a system call that no model needs";

constexpr Meaning meanings[] = {
    {SCMP_SYS(clone), starts},
    {SCMP_SYS(fork), starts},
    {SCMP_SYS(vfork), starts},
    {SCMP_SYS(execve), starts},
    {SCMP_SYS(execveat), starts},
    {SCMP_SYS(open), writes},
    {SCMP_SYS(openat), writes},
    {SCMP_SYS(creat), writes},
    {SCMP_SYS(rename), writes},
    {SCMP_SYS(renameat), writes},
    {SCMP_SYS(renameat2), writes},
    {SCMP_SYS(unlink), writes},
    {SCMP_SYS(unlinkat), writes},
    {SCMP_SYS(mkdir), writes},
    {SCMP_SYS(mkdirat), writes},
    {SCMP_SYS(rmdir), writes},
    {SCMP_SYS(link), writes},
    {SCMP_SYS(linkat), writes},
    {SCMP_SYS(symlink), writes},
    {SCMP_SYS(symlinkat), writes},
    {SCMP_SYS(mknod), writes},
    {SCMP_SYS(mknodat), writes},
    {SCMP_SYS(truncate), writes},
    {SCMP_SYS(ftruncate), writes},
    {SCMP_SYS(fallocate), writes},
    {SCMP_SYS(chmod), writes},
    {SCMP_SYS(fchmod), writes},
    {SCMP_SYS(fchmodat), writes},
    {SCMP_SYS(chown), writes},
    {SCMP_SYS(lchown), writes},
    {SCMP_SYS(fchown), writes},
    {SCMP_SYS(fchownat), writes},
    {SCMP_SYS(setxattr), writes},
    {SCMP_SYS(utimensat), writes},
    {SCMP_SYS(mount), writes},
    {SCMP_SYS(socket), connects},
    {SCMP_SYS(socketpair), connects},
    {SCMP_SYS(setsid), leaves},
    {SCMP_SYS(setpgid), leaves},
    {SCMP_SYS(kill), meddles},
    {SCMP_SYS(tkill), meddles},
    {SCMP_SYS(tgkill), meddles},
    {SCMP_SYS(rt_sigqueueinfo), meddles},
    {SCMP_SYS(rt_tgsigqueueinfo), meddles},
    {SCMP_SYS(pidfd_send_signal), meddles},
    {SCMP_SYS(ptrace), meddles},
    {SCMP_SYS(process_vm_readv), meddles},
    {SCMP_SYS(process_vm_writev), meddles},
    {SCMP_SYS(prlimit64), meddles},
    {SCMP_SYS(fcntl), meddles},
    {SCMP_SYS(io_uring_setup), meddles},
};

constexpr scmp_datum_t writing = O_WRONLY | O_RDWR | O_CREAT | O_TRUNC;

// The allow list of a thread. Every call that no rule allows raises SIGSYS, also a call of another architecture.
class Filter {
public:
    Filter() : context_(seccomp_init(SCMP_ACT_TRAP)) {
        if (context_ != nullptr) seccomp_attr_set(context_, SCMP_FLTATR_ACT_BADARCH, SCMP_ACT_TRAP);
    }
    ~Filter() { seccomp_release(context_); }
    Filter(const Filter&) = delete;
    Filter& operator=(const Filter&) = delete;

    void allow(int call) { seccomp_rule_add_array(context_, SCMP_ACT_ALLOW, call, 0, nullptr); }
    void allow_if(int call, scmp_arg_cmp argument) {
        seccomp_rule_add_array(context_, SCMP_ACT_ALLOW, call, 1, &argument);
    }
    // Fails as in an older system: callers then use the older call, whose arguments the filter can check.
    void hide(int call) { seccomp_rule_add_array(context_, SCMP_ACT_ERRNO(ENOSYS), call, 0, nullptr); }
    void install() {
        if (context_ != nullptr) seccomp_load(context_);
    }

private:
    scmp_filter_ctx context_;
};

constexpr scmp_arg_cmp equals(unsigned argument, scmp_datum_t value) {
    return {argument, SCMP_CMP_EQ, value, 0};
}
constexpr scmp_arg_cmp has(unsigned argument, scmp_datum_t mask, scmp_datum_t bits) {
    return {argument, SCMP_CMP_MASKED_EQ, mask, bits};
}

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
    Filter filter;
    for (const int call : allowed) filter.allow(call);
    filter.hide(SCMP_SYS(clone3));
    filter.hide(SCMP_SYS(openat2));
    filter.allow_if(SCMP_SYS(clone), has(0, CLONE_THREAD, CLONE_THREAD));
    filter.allow_if(SCMP_SYS(openat), has(2, writing, 0));
    filter.allow_if(SCMP_SYS(open), has(1, writing, 0));
    // abort() sends its signal to a thread of its own process.
    filter.allow_if(SCMP_SYS(tgkill), equals(0, static_cast<scmp_datum_t>(::getpid())));
    filter.allow_if(SCMP_SYS(prlimit64), equals(0, 0));
    // TCGETS only: whether a descriptor is a terminal.
    filter.allow_if(SCMP_SYS(ioctl), equals(1, TCGETS));
    for (const int command : {F_GETFD, F_SETFD, F_GETFL, F_DUPFD, F_DUPFD_CLOEXEC, F_GET_SEALS})
        filter.allow_if(SCMP_SYS(fcntl), equals(1, static_cast<scmp_datum_t>(command)));
    filter.install();
}

const char* meaning_of(int system_call) {
    for (const Meaning& meaning : meanings)
        if (meaning.call == system_call) return meaning.text;
    return unknown;
}

}  // namespace flutebook::sandbox
