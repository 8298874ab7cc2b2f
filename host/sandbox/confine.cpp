#include "host/sandbox/confine.hpp"

#include <asm/ioctls.h>
#include <fcntl.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <sched.h>
#include <seccomp.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <array>
#include <cerrno>

#include "host/sandbox/build.hpp"
#include "host/sandbox/readable_folders.hpp"

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
    SCMP_SYS(getitimer),
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
constexpr const char* sets_timer = "sets a timer";
constexpr const char* sets_limit = "changes a limit or a property of a process";
constexpr const char* shares_memory = "takes memory that others can share";
constexpr const char* controls_device = "controls a terminal or a device";
constexpr const char* opens_file = "opens a file";
constexpr const char* reads_file = "reads a file";
constexpr const char* unknown = "makes a system call that no model needs";

constexpr Meaning meanings[] = {
    {SCMP_SYS(clone), starts},
    {SCMP_SYS(fork), starts},
    {SCMP_SYS(vfork), starts},
    {SCMP_SYS(execve), starts},
    {SCMP_SYS(execveat), starts},
    {SCMP_SYS(open), opens_file},
    {SCMP_SYS(openat), opens_file},
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
    {SCMP_SYS(lsetxattr), writes},
    {SCMP_SYS(fsetxattr), writes},
    {SCMP_SYS(removexattr), writes},
    {SCMP_SYS(lremovexattr), writes},
    {SCMP_SYS(fremovexattr), writes},
    {SCMP_SYS(utime), writes},
    {SCMP_SYS(utimes), writes},
    {SCMP_SYS(futimesat), writes},
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
    {SCMP_SYS(prlimit64), sets_limit},
    {SCMP_SYS(setrlimit), sets_limit},
    {SCMP_SYS(setpriority), sets_limit},
    {SCMP_SYS(sched_setaffinity), sets_limit},
    {SCMP_SYS(sched_setscheduler), sets_limit},
    {SCMP_SYS(prctl), sets_limit},
    {SCMP_SYS(alarm), sets_timer},
    {SCMP_SYS(setitimer), sets_timer},
    {SCMP_SYS(timer_create), sets_timer},
    {SCMP_SYS(timerfd_create), sets_timer},
    {SCMP_SYS(shmget), shares_memory},
    {SCMP_SYS(shmat), shares_memory},
    {SCMP_SYS(memfd_create), shares_memory},
    {SCMP_SYS(ioctl), controls_device},
    {SCMP_SYS(read), reads_file},
    {SCMP_SYS(readv), reads_file},
    {SCMP_SYS(pread64), reads_file},
    {SCMP_SYS(preadv), reads_file},
    {SCMP_SYS(getdents64), reads_file},
    {SCMP_SYS(fcntl), meddles},
    {SCMP_SYS(io_uring_setup), meddles},
};

constexpr scmp_datum_t writing = O_WRONLY | O_RDWR | O_CREAT | O_TRUNC;

// The rules for the system calls of a thread. Calls of another architecture raise SIGSYS.
class Filter {
public:
    /// `other` is what happens to a call that no rule names.
    explicit Filter(std::uint32_t other) : context_(seccomp_init(other)) {
        if (context_ != nullptr) seccomp_attr_set(context_, SCMP_FLTATR_ACT_BADARCH, SCMP_ACT_TRAP);
    }
    ~Filter() { seccomp_release(context_); }
    Filter(const Filter&) = delete;
    Filter& operator=(const Filter&) = delete;

    void allow(int call) { seccomp_rule_add_array(context_, SCMP_ACT_ALLOW, call, 0, nullptr); }
    void allow_if(int call, scmp_arg_cmp argument) {
        seccomp_rule_add_array(context_, SCMP_ACT_ALLOW, call, 1, &argument);
    }
    template <std::size_t Count>
    void allow_if(int call, const std::array<scmp_arg_cmp, Count>& arguments) {
        seccomp_rule_add_array(context_, SCMP_ACT_ALLOW, call, Count, arguments.data());
    }
    void forbid(int call) { seccomp_rule_add_array(context_, SCMP_ACT_TRAP, call, 0, nullptr); }
    // Fails as in an older system: callers then use the older call, whose arguments the filter can check.
    void hide(int call) { seccomp_rule_add_array(context_, SCMP_ACT_ERRNO(ENOSYS), call, 0, nullptr); }
    void install() {
        if (context_ != nullptr) seccomp_load(context_);
    }
    /// The rules as the system takes them, in `into`; returns their number, 0 where they cannot be had.
    template <std::size_t Most>
    std::size_t write_to(std::array<sock_filter, Most>& into) {
        int ends[2];  // of a pipe, which no limit of files stops
        if (context_ == nullptr || ::pipe2(ends, O_CLOEXEC) != 0) return 0;
        const bool is_written = seccomp_export_bpf(context_, ends[1]) == 0;
        ::close(ends[1]);
        const ssize_t bytes = is_written ? ::read(ends[0], into.data(), sizeof into) : 0;
        ::close(ends[0]);
        return bytes <= 0 || static_cast<std::size_t>(bytes) == sizeof into
                   ? 0
                   : static_cast<std::size_t>(bytes) / sizeof(sock_filter);
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

constexpr scmp_datum_t lower_half = 0xffffffffU;  // of an argument that is an int: the system ignores the rest

// The filter of forbid_files(), made before the filter of forbid_calls() forbids to make one. That filter allows to
// install this one and no other.
struct FileFilter {
    std::array<sock_filter, 200> rules;
    sock_fprog program;
};
FileFilter file_filter{};

void prepare_file_filter() {
    Filter filter(SCMP_ACT_ALLOW);
    for (const int call : {SCMP_SYS(open), SCMP_SYS(openat), SCMP_SYS(read), SCMP_SYS(readv), SCMP_SYS(pread64),
                           SCMP_SYS(preadv), SCMP_SYS(getdents64)})
        filter.forbid(call);
    file_filter.program = {static_cast<unsigned short>(filter.write_to(file_filter.rules)), file_filter.rules.data()};
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
    limit(RLIMIT_NOFILE, most_descriptors);
    if (!has_address_sanitizer) limit(RLIMIT_AS, most_address_space);
}

void forbid_calls() {
    prepare_file_filter();
    allow_folders_of_libraries();
    Filter filter(SCMP_ACT_TRAP);
    for (const int call : allowed) filter.allow(call);
    filter.hide(SCMP_SYS(clone3));
    filter.hide(SCMP_SYS(openat2));
    filter.allow_if(SCMP_SYS(clone), has(0, CLONE_THREAD, CLONE_THREAD));
    filter.allow_if(SCMP_SYS(openat), has(2, writing, 0));
    filter.allow_if(SCMP_SYS(open), has(1, writing, 0));
    // abort() sends its signal to a thread of its own process.
    filter.allow_if(SCMP_SYS(tgkill), equals(0, static_cast<scmp_datum_t>(::getpid())));
    // Asking for a limit of this process, not setting one.
    filter.allow_if(SCMP_SYS(prlimit64), std::array{equals(0, 0), equals(2, 0)});
    // TCGETS only: whether a descriptor is a terminal.
    filter.allow_if(SCMP_SYS(ioctl), has(1, lower_half, TCGETS));
    for (const int command : {F_GETFD, F_SETFD, F_GETFL, F_DUPFD, F_DUPFD_CLOEXEC, F_GET_SEALS})
        filter.allow_if(SCMP_SYS(fcntl), has(1, lower_half, static_cast<scmp_datum_t>(command)));
    filter.allow_if(SCMP_SYS(prctl), has(0, lower_half, PR_GET_NAME));
    if (has_address_sanitizer) filter.allow(SCMP_SYS(prctl));
    filter.allow_if(SCMP_SYS(seccomp), std::array{equals(0, SECCOMP_SET_MODE_FILTER), equals(1, 0),
                                                  equals(2, reinterpret_cast<scmp_datum_t>(&file_filter.program))});
    filter.install();
}

void forbid_files() {
    // AddressSanitizer reads files when it reports an error.
    if (file_filter.program.len == 0 || has_address_sanitizer) return;
    ::syscall(SYS_seccomp, SECCOMP_SET_MODE_FILTER, 0, &file_filter.program);
}

const char* meaning_of(int system_call) {
    for (const Meaning& meaning : meanings)
        if (meaning.call == system_call) return meaning.text;
    return unknown;
}

}  // namespace flutebook::sandbox
