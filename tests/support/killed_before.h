/// Runs something in a process of its own that is killed (SIGKILL) before one of its system calls.
#pragma once

#include <gtest/gtest.h>
#include <sys/ptrace.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <functional>

namespace support {

/// The calls that change a file system, or may.
inline bool touchesFiles(std::uint64_t call) {
    constexpr long kCalls[] = {
        SYS_openat,    SYS_write,     SYS_pwrite64, SYS_renameat2, SYS_unlinkat,
        SYS_ftruncate, SYS_fdatasync, SYS_fsync,    SYS_mkdirat,
#ifdef SYS_open
        SYS_open,      SYS_rename,    SYS_unlink,   SYS_mkdir,
#endif
    };
    return std::ranges::find(kCalls, static_cast<long>(call)) != std::end(kCalls);
}

/// Whether it was killed before its `count`-th call that touches files, counted from 1; false when
/// it ended before. What it did until then is on the disk.
inline bool killedBefore(int count, const std::function<void()>& work) {
    const pid_t child = fork();
    if (child == 0) {
        ptrace(PTRACE_TRACEME, 0, nullptr, nullptr);
        raise(SIGSTOP);
        work();
        _exit(0);
    }
    int status = 0;
    EXPECT_EQ(waitpid(child, &status, 0), child);
    EXPECT_TRUE(WIFSTOPPED(status)) << "a child cannot be traced here";
    ptrace(PTRACE_SETOPTIONS, child, nullptr, PTRACE_O_TRACESYSGOOD | PTRACE_O_EXITKILL);
    while (WIFSTOPPED(status)) {
        __ptrace_syscall_info call{};
        ptrace(PTRACE_GET_SYSCALL_INFO, child, sizeof call, &call);
        const bool isTheOne =
            call.op == PTRACE_SYSCALL_INFO_ENTRY && touchesFiles(call.entry.nr) && --count == 0;
        if (isTheOne) kill(child, SIGKILL);
        ptrace(PTRACE_SYSCALL, child, nullptr, nullptr);
        if (waitpid(child, &status, 0) != child) break;
        if (isTheOne) return true;
    }
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << "it ended by itself: " << status;
    return false;
}

}  // namespace support
