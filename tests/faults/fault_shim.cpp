// The names of the C library through which files are changed: each asks the plan first. Nothing is
// synced in truth, for a process that is killed loses nothing that it wrote.
#include "fault_plan.hpp"

#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstring>

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/uio.h>
#include <unistd.h>

namespace {

using faults::Kind;
using faults::Verdict;

/// The function of that name that this one stands before.
template <typename Function>
Function* beyond(const char* name) {
    return reinterpret_cast<Function*>(::dlsym(RTLD_NEXT, name));
}

bool watches(int file) {
    return file > 0 && faults::is_watched(faults::path_of(file));
}

bool fails(Kind kind) {
    return faults::judge(kind) == Verdict::fail;
}

/// A write of so many bytes by `real`, which is given how many it may write.
template <typename Real>
ssize_t written(int file, std::size_t size, const char* data, off64_t offset, Real real) {
    if (!watches(file)) return real(size);
    const Verdict verdict = faults::judge(Kind::write);
    if (verdict == Verdict::fail) return -1;
    const ssize_t done = real(verdict == Verdict::pass ? size : (size + 1) / 2);
    if (verdict == Verdict::half_and_die) ::kill(::getpid(), SIGKILL);
    if (done > 0 && faults::is_recorded()) {
        const off64_t from = offset >= 0 ? offset : ::lseek64(file, 0, SEEK_CUR) - done;
        faults::record('w', faults::path_of(file), from, {data, static_cast<std::size_t>(done)});
    }
    return done;
}

bool may_write(int flags) {
    return (flags & O_ACCMODE) != O_RDONLY || (flags & (O_CREAT | O_TRUNC)) != 0;
}

/// An opening by `real`, recorded where it makes a file or empties one.
template <typename Real>
int opened(const std::string& path, int flags, Real real) {
    if (!may_write(flags) || !faults::is_watched(path)) return real();
    if (fails(Kind::open)) return -1;
    const bool made = (flags & O_CREAT) != 0 && ::access(path.c_str(), F_OK) != 0;
    const int file = real();
    if (file >= 0 && faults::is_recorded()) {
        if (made) faults::record('c', path, 0, "");
        if ((flags & O_TRUNC) != 0) faults::record('t', path, 0, "");
    }
    return file;
}

template <typename Real>
int synced(int file, Real real) {
    if (!watches(file)) return real();
    if (fails(Kind::sync)) return -1;
    if (faults::is_recorded()) faults::record('s', faults::path_of(file), 0, "");
    return 0;
}

template <typename Real>
int truncated(const std::string& path, off64_t size, Real real) {
    if (!faults::is_watched(path)) return real();
    if (fails(Kind::truncate)) return -1;
    const int done = real();
    if (done == 0 && faults::is_recorded()) faults::record('t', path, size, "");
    return done;
}

template <typename Real>
int renamed(char what, const std::string& from, const std::string& to, Real real) {
    if (!faults::is_watched(from) && !faults::is_watched(to)) return real();
    if (fails(Kind::rename)) return -1;
    const int done = real();
    if (done == 0 && faults::is_recorded()) faults::record(what, from, 0, to);
    return done;
}

template <typename Real>
int removed(const std::string& path, Real real) {
    if (!faults::is_watched(path)) return real();
    if (fails(Kind::unlink)) return -1;
    const int done = real();
    if (done == 0 && faults::is_recorded()) faults::record('u', path, 0, "");
    return done;
}

std::FILE* opened_stream(const char* name, const char* path, const char* mode) {
    const auto real = beyond<std::FILE*(const char*, const char*)>(name);
    if (std::strpbrk(mode, "wa+") == nullptr) return real(path, mode);
    std::FILE* file = nullptr;
    const int flags = O_RDWR | (mode[0] == 'r' ? 0 : O_CREAT) | (mode[0] == 'w' ? O_TRUNC : 0);
    const int done = opened(faults::path_from(AT_FDCWD, path), flags, [&] {
        file = real(path, mode);
        return file == nullptr ? -1 : 0;
    });
    return done < 0 ? nullptr : file;
}

/// The mode that follows the flags of an opening which may make the file.
mode_t mode_after(int flags, std::va_list rest) {
    return (flags & O_CREAT) != 0 || (flags & O_TMPFILE) == O_TMPFILE ? va_arg(rest, mode_t) : 0;
}

int opened_at(int folder, const char* path, int flags, mode_t mode) {
    static const auto real = beyond<int(int, const char*, int, mode_t)>("openat64");
    return opened(faults::path_from(folder, path), flags,
                  [&] { return real(folder, path, flags, mode); });
}

int controlled(int file, int command, void* argument) {
    static const auto real = beyond<int(int, int, void*)>("fcntl64");
    const bool locks = command == F_SETLK || command == F_SETLKW || command == F_OFD_SETLK ||
                       command == F_OFD_SETLKW;
    if (locks && watches(file) && fails(Kind::lock)) return -1;
    return real(file, command, argument);
}

}  // namespace

extern "C" {

ssize_t write(int file, const void* data, size_t size) {
    static const auto real = beyond<ssize_t(int, const void*, size_t)>("write");
    return written(file, size, static_cast<const char*>(data), -1,
                   [&](std::size_t most) { return real(file, data, most); });
}

ssize_t pwrite64(int file, const void* data, size_t size, off64_t offset) {
    static const auto real = beyond<ssize_t(int, const void*, size_t, off64_t)>("pwrite64");
    return written(file, size, static_cast<const char*>(data), offset,
                   [&](std::size_t most) { return real(file, data, most, offset); });
}

ssize_t pwrite(int file, const void* data, size_t size, off_t offset) {
    return pwrite64(file, data, size, offset);
}

ssize_t writev(int file, const iovec* parts, int count) {
    static const auto real = beyond<ssize_t(int, const iovec*, int)>("writev");
    if (!watches(file)) return real(file, parts, count);
    std::string all;
    for (int i = 0; i < count; ++i) {
        all.append(static_cast<const char*>(parts[i].iov_base), parts[i].iov_len);
    }
    return write(file, all.data(), all.size());
}

int open64(const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_after(flags, rest);
    va_end(rest);
    return opened_at(AT_FDCWD, path, flags, mode);
}

int open(const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_after(flags, rest);
    va_end(rest);
    return opened_at(AT_FDCWD, path, flags, mode);
}

int openat64(int folder, const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_after(flags, rest);
    va_end(rest);
    return opened_at(folder, path, flags, mode);
}

int openat(int folder, const char* path, int flags, ...) {
    std::va_list rest;
    va_start(rest, flags);
    const mode_t mode = mode_after(flags, rest);
    va_end(rest);
    return opened_at(folder, path, flags, mode);
}

std::FILE* fopen(const char* path, const char* mode) {
    return opened_stream("fopen", path, mode);
}

std::FILE* fopen64(const char* path, const char* mode) {
    return opened_stream("fopen64", path, mode);
}

int fsync(int file) {
    static const auto real = beyond<int(int)>("fsync");
    return synced(file, [&] { return real(file); });
}

int fdatasync(int file) {
    static const auto real = beyond<int(int)>("fdatasync");
    return synced(file, [&] { return real(file); });
}

int ftruncate64(int file, off64_t size) noexcept {
    static const auto real = beyond<int(int, off64_t)>("ftruncate64");
    return truncated(faults::path_of(file), size, [&] { return real(file, size); });
}

int ftruncate(int file, off_t size) noexcept {
    return ftruncate64(file, size);
}

int truncate64(const char* path, off64_t size) noexcept {
    static const auto real = beyond<int(const char*, off64_t)>("truncate64");
    return truncated(faults::path_from(AT_FDCWD, path), size, [&] { return real(path, size); });
}

int truncate(const char* path, off_t size) noexcept {
    return truncate64(path, size);
}

int fcntl64(int file, int command, ...) {
    std::va_list rest;
    va_start(rest, command);
    void* const argument = va_arg(rest, void*);
    va_end(rest);
    return controlled(file, command, argument);
}

int fcntl(int file, int command, ...) {
    std::va_list rest;
    va_start(rest, command);
    void* const argument = va_arg(rest, void*);
    va_end(rest);
    return controlled(file, command, argument);
}

/// What waits for a lock asks again at once: the faults here do not pass with time.
int usleep(useconds_t microseconds) {
    static const auto real = beyond<int(useconds_t)>("usleep");
    return faults::is_planned() ? 0 : real(microseconds);
}

int flock(int file, int operation) noexcept {
    static const auto real = beyond<int(int, int)>("flock");
    return watches(file) && fails(Kind::lock) ? -1 : real(file, operation);
}

int renameat(int from_folder, const char* from, int to_folder, const char* to) noexcept {
    static const auto real = beyond<int(int, const char*, int, const char*)>("renameat");
    return renamed('r', faults::path_from(from_folder, from), faults::path_from(to_folder, to),
                   [&] { return real(from_folder, from, to_folder, to); });
}

int rename(const char* from, const char* to) noexcept {
    return renameat(AT_FDCWD, from, AT_FDCWD, to);
}

int renameat2(int from_folder, const char* from, int to_folder, const char* to,
              unsigned flags) noexcept {
    static const auto real = beyond<int(int, const char*, int, const char*, unsigned)>("renameat2");
    return renamed('r', faults::path_from(from_folder, from), faults::path_from(to_folder, to),
                   [&] { return real(from_folder, from, to_folder, to, flags); });
}

int linkat(int from_folder, const char* from, int to_folder, const char* to, int flags) noexcept {
    static const auto real = beyond<int(int, const char*, int, const char*, int)>("linkat");
    return renamed('l', faults::path_from(from_folder, from), faults::path_from(to_folder, to),
                   [&] { return real(from_folder, from, to_folder, to, flags); });
}

int link(const char* from, const char* to) noexcept {
    return linkat(AT_FDCWD, from, AT_FDCWD, to, 0);
}

int unlinkat(int folder, const char* path, int flags) noexcept {
    static const auto real = beyond<int(int, const char*, int)>("unlinkat");
    return removed(faults::path_from(folder, path), [&] { return real(folder, path, flags); });
}

int unlink(const char* path) noexcept {
    return unlinkat(AT_FDCWD, path, 0);
}

int remove(const char* path) noexcept {
    static const auto real = beyond<int(const char*)>("remove");
    return removed(faults::path_from(AT_FDCWD, path), [&] { return real(path); });
}
}
