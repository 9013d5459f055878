#include "heatmatch/text/file_writer.hpp"

#include "file_place.hpp"

#include <array>
#include <atomic>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <random>
#include <system_error>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

namespace {

constexpr mode_t usual_mode = 0666;
constexpr mode_t mode_bits = 07777;
constexpr mode_t group_bits = 0070;

/// Repeats a call that a signal interrupted.
template <class Call>
auto unbroken(Call call) {
    auto result = call();
    while (result < 0 && errno == EINTR) result = call();
    return result;
}

/// An unpredictable name, so that it is unique among writers and cannot be prepared by others.
std::string own_name() {
    static std::atomic<unsigned> calls{0};
    constexpr std::string_view digits = "0123456789abcdefghijklmnopqrstuv";
    std::random_device dice;
    std::string name = ".heatmatch-";
    for (int i = 0; i < 16; ++i) name += digits[dice() % digits.size()];
    return name + std::to_string(calls++) + ".part";
}

/// Whether the file system lacks this call, as opposed to a failed call.
bool has_no_sync(int reason) {
    return reason == EINVAL || reason == ENOTSUP || reason == ENOSYS;
}

bool has_no_links(int reason) {
    return reason == EPERM || reason == ENOTSUP || reason == ENOSYS || reason == EMLINK ||
           reason == EXDEV;
}

}  // namespace

void FileWriter::fail(const std::string& reason) const {
    throw FileError("cannot " + std::string(options_.what) + " " + shown_ + ": " + reason,
                    ErrorDetail{.part = shown_.substr(1, shown_.size() - 2)});
}

FileWriter::FileWriter(const std::string& path, const WriteOptions& options) : options_(options) {
    constexpr std::size_t longest = 4096;
    shown_ = quote(path, longest);
    try {
        struct stat found {};
        exists_ = ::stat(path.c_str(), &found) == 0;
        if (exists_ && S_ISDIR(found.st_mode)) fail("it is a folder; name a file in it");
        if (exists_ && !S_ISREG(found.st_mode)) {
            fail("it is a device, a pipe or a socket; name a regular file");
        }
        target_ = followed_path(path);
        folder_ = std::filesystem::path(target_).parent_path().string();
        if (folder_.empty()) folder_ = ".";
        if (is_of_database(target_)) {
            fail("it belongs to a catalog, which no output replaces; name another file");
        }
        const char* const remedy = "; name another file, or overwrite it with force";
        if (exists_ && !options_.replace) fail(std::string("it exists") + remedy);
        if (exists_ && !options_.only_kind.empty()) {
            const std::string beginning = beginning_of(target_);
            if (!beginning.empty() && beginning.find(options_.only_kind) == std::string::npos) {
                fail(std::string("it exists and is another kind of file") + remedy);
            }
        }
        if (exists_ && ::access(target_.c_str(), W_OK) != 0) {
            throw std::system_error(errno, std::generic_category());
        }
    } catch (const std::system_error& error) {
        fail(error.code().message() + "; nothing was changed: check the folder");
    }
    open_partial();
}

FileWriter::~FileWriter() {
    if (file_ >= 0) ::close(file_);
    if (!partial_.empty()) ::unlink(partial_.c_str());
}

void FileWriter::open_partial() {
    // A replacement of a private file is never readable by others, not even temporarily.
    const mode_t mode = exists_ ? S_IRUSR | S_IWUSR : options_.mode.value_or(usual_mode);
    constexpr int most_tries = 100;
    for (int tries = 0; file_ < 0; ++tries) {
        partial_ = folder_ + "/" + own_name();
        file_ = unbroken([this, mode] {
            return ::open(partial_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        });
        if (file_ >= 0) return;
        const int reason = errno;
        partial_.clear();
        if (reason == EEXIST && tries < most_tries) continue;
        fail(std::string(std::strerror(reason)) + "; nothing was changed: check the folder");
    }
}

void FileWriter::write(std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written =
            unbroken([this, bytes] { return ::write(file_, bytes.data(), bytes.size()); });
        if (written < 0) {
            fail(std::string(std::strerror(errno)) + "; nothing was changed: check the disk");
        }
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
}

/// Gives the partial file owner, group and mode of the one it replaces.
void FileWriter::take_after() {
    struct stat found {};
    struct stat made {};
    if (!options_.replace || ::stat(target_.c_str(), &found) != 0) return;
    if (::fstat(file_, &made) != 0) return;
    mode_t mode = found.st_mode & mode_bits;
    if (found.st_uid != made.st_uid && ::fchown(file_, found.st_uid, found.st_gid) == 0) {
        made.st_gid = found.st_gid;
    }
    // Another group must not get the permissions of the former group.
    if (found.st_gid != made.st_gid && ::fchown(file_, static_cast<uid_t>(-1), found.st_gid) != 0) {
        mode &= ~group_bits;
    }
    if (::fchmod(file_, mode) != 0) {
        fail(std::string(std::strerror(errno)) + "; nothing was changed: check the folder");
    }
}

void FileWriter::sync_partial() {
    if (unbroken([this] { return ::fsync(file_); }) != 0 && !has_no_sync(errno)) {
        fail(std::string(std::strerror(errno)) + "; nothing was changed: check the disk");
    }
    const int closed = ::close(file_);
    const int reason = errno;
    file_ = -1;
    if (closed != 0 && reason != EINTR) {
        fail(std::string(std::strerror(reason)) + "; nothing was changed: check the disk");
    }
}

void FileWriter::put() {
    if (!options_.replace) {
        // A link fails for a name that was created meanwhile; a rename would replace it.
        if (::link(partial_.c_str(), target_.c_str()) == 0) {
            if (::unlink(partial_.c_str()) == 0) partial_.clear();
            return;
        }
        const int reason = errno;
        struct stat found {};
        if (!has_no_links(reason) || ::stat(target_.c_str(), &found) == 0) {
            fail(std::string(std::strerror(reason)) + "; nothing was changed: name another file");
        }
    }
    if (::rename(partial_.c_str(), target_.c_str()) == 0) {
        partial_.clear();
        return;
    }
    const std::string reason = std::strerror(errno);
    // A network file system may fail after it has renamed.
    const bool gone = ::access(partial_.c_str(), F_OK) != 0 && errno == ENOENT;
    fail(reason + (gone ? "; whether it was replaced is not known: look at it"
                        : "; nothing was changed: check the folder"));
}

void FileWriter::sync_folder() const {
    const int folder =
        unbroken([this] { return ::open(folder_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); });
    if (folder < 0 && errno == EACCES) return;  // the folder is writable, but not readable
    const bool synced = folder >= 0 && unbroken([folder] { return ::fsync(folder); }) == 0;
    const int reason = errno;
    if (folder >= 0) ::close(folder);
    if (synced || (folder >= 0 && has_no_sync(reason))) return;
    throw FileError(shown_ + " was written, but the disk did not confirm its place: " +
                        std::strerror(reason) + "; a power failure may undo that: write it again",
                    ErrorDetail{.part = shown_.substr(1, shown_.size() - 2)});
}

void FileWriter::keep() {
    take_after();
    sync_partial();
    put();
    sync_folder();
}

}  // namespace heatmatch
