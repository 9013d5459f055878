#include "fault_plan.hpp"

#include <array>
#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdint>
#include <string>

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <unistd.h>

namespace faults {

namespace {

struct Plan {
    std::string folder{};
    std::atomic<int> kind{-1};
    long nth = 0;  //!< counted from 1; 0 for none
    int error = 0;
    Fate fate = Fate::fail_once;
    std::atomic<long> failed{0};
    std::array<std::atomic<long>, kind_count> seen{};
    std::atomic<int> record{-1};
    void (*first)() = nullptr;  //!< called before the first call that is seen
};

Plan& plan() {
    // Never destroyed: files are closed after the last destructor of ours would have run.
    static Plan* const only = new Plan;
    return *only;
}

}  // namespace

std::string path_of(int file) {
    std::string path(4096, '\0');
    const std::string link = "/proc/self/fd/" + std::to_string(file);
    const ssize_t length = ::readlink(link.c_str(), path.data(), path.size());
    path.resize(length < 0 ? 0 : static_cast<std::size_t>(length));
    return path;
}

std::string path_from(int folder, const char* path) {
    if (path == nullptr) return {};
    if (path[0] == '/') return path;
    std::string base(4096, '\0');
    if (folder == AT_FDCWD) {
        if (::getcwd(base.data(), base.size()) == nullptr) return {};
        base.resize(base.find('\0'));
    } else {
        base = path_of(folder);
    }
    return base + '/' + path;
}

bool is_watched(const std::string& path) {
    const std::string& folder = plan().folder;
    return !folder.empty() && path.starts_with(folder) &&
           (path.size() == folder.size() || path[folder.size()] == '/');
}

Verdict judge(Kind kind) {
    Plan& now = plan();
    if (void (*const first)() = now.first; first != nullptr) {
        now.first = nullptr;
        first();
    }
    const long number = ++now.seen[static_cast<std::size_t>(kind)];
    const int wanted = now.kind;
    if (now.nth == 0 || (wanted != static_cast<int>(kind) && wanted != kind_count)) {
        return Verdict::pass;
    }
    // Of all kinds together.
    long count = number;
    if (wanted == kind_count) {
        count = 0;
        for (const auto& seen : now.seen) count += seen;
    }
    if (count < now.nth || (count > now.nth && now.fate == Fate::fail_once)) return Verdict::pass;
    ++now.failed;
    switch (now.fate) {
        case Fate::die:
            ::kill(::getpid(), SIGKILL);
            break;
        case Fate::die_halfway:
            return Verdict::half_and_die;
        case Fate::fall_short:
            if (count == now.nth) return Verdict::half;
            break;
        case Fate::fail_once:
        case Fate::fail_for_good:
            break;
    }
    errno = now.error;
    return Verdict::fail;
}

bool is_planned() {
    return plan().nth != 0;
}

bool is_recorded() {
    return plan().record >= 0;
}

void record(char what, const std::string& path, long long offset, std::string_view data) {
    struct Head {
        std::int64_t offset;
        std::uint32_t path_size;
        std::uint32_t data_size;
        char what;
        std::array<char, 7> unused;
    };
    const int kept = errno;
    Head head{.offset = offset,
              .path_size = static_cast<std::uint32_t>(path.size()),
              .data_size = static_cast<std::uint32_t>(data.size()),
              .what = what,
              .unused = {}};
    std::string all(reinterpret_cast<const char*>(&head), sizeof head);
    all += path;
    all += data;
    // The record lies outside the watched folder; the call goes past the names of ours.
    ::syscall(SYS_write, plan().record.load(), all.data(), all.size());
    errno = kept;
}

}  // namespace faults

// What the driver calls, through ctypes.
extern "C" {

/// Watches the files of a folder, named from the root and without links; "" for none.
void faults_watch(const char* folder) {
    faults::plan().folder = folder;
}

/// Plans what becomes of the n-th call of a kind (`kind_count` for all kinds together) from now on;
/// n = 0 only counts.
void faults_plan(int kind, long nth, int error, int fate) {
    faults::Plan& plan = faults::plan();
    plan.kind = kind;
    plan.nth = nth;
    plan.error = error;
    plan.fate = static_cast<faults::Fate>(fate);
    plan.failed = 0;
    for (auto& seen : plan.seen) seen = 0;
}

/// How many calls of a kind were seen since the plan.
long faults_seen(int kind) {
    return faults::plan().seen[static_cast<std::size_t>(kind)];
}

/// How many calls were made to fail since the plan.
long faults_failed() {
    return faults::plan().failed;
}

/// Calls that function before the next call on a watched file.
void faults_before_first(void (*first)()) {
    faults::plan().first = first;
}

/// Records what is done to watched files in that open file; -1 for no more.
void faults_record(int file) {
    faults::plan().record = file;
}

/// Marks a moment in the record.
void faults_mark(int number) {
    if (faults::is_recorded()) faults::record('m', "", number, "");
}
}
