#include "file_place.hpp"

#include <array>
#include <cerrno>
#include <filesystem>
#include <string_view>
#include <system_error>

#include <fcntl.h>
#include <unistd.h>

namespace heatmatch {

namespace {

namespace fs = std::filesystem;
using namespace std::string_view_literals;

// "Database File Format", sqlite.org/fileformat2.html, 1.3, 4.1 and walformat.html, 1.1: the
// header of the file; of its log, in either byte order; of the index of the log. from-memory
constexpr auto database_beginnings = std::to_array<std::string_view>(
    {"SQLite format 3\0"sv, "\x37\x7f\x06\x82"sv, "\x37\x7f\x06\x83"sv, "\x18\xe2\x2d\x00"sv,
     "\x00\x2d\xe2\x18"sv, "\xd9\xd5\x05\xf9\x20\xa1\x63\xd7"sv});
constexpr auto database_endings = std::to_array<std::string_view>({"-wal", "-shm", "-journal"});

bool begins_as_database(const std::string& path) {
    std::error_code ignored;
    if (!fs::is_regular_file(path, ignored)) return false;
    const std::string beginning = beginning_of(path);
    for (const std::string_view known : database_beginnings) {
        if (std::string_view(beginning).substr(0, known.size()) == known) return true;
    }
    return false;
}

}  // namespace

std::string followed_path(const std::string& path) {
    constexpr int most_links = 40;  // as on Linux
    fs::path place(path);
    for (int links = 0; fs::is_symlink(fs::symlink_status(place)); ++links) {
        if (links == most_links) {
            throw fs::filesystem_error(
                "links", std::make_error_code(std::errc::too_many_symbolic_link_levels));
        }
        place = place.parent_path() / fs::read_symlink(place);
    }
    return place.string();
}

std::string beginning_of(const std::string& path) {
    constexpr std::size_t enough = 65536;
    const auto refuse = [] { throw std::system_error(errno, std::generic_category()); };
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (file < 0) refuse();
    std::string text(enough, '\0');
    std::size_t size = 0;
    while (size < enough) {
        const ssize_t got = ::read(file, text.data() + size, enough - size);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) {
            const int reason = errno;
            ::close(file);
            errno = reason;
            refuse();
        }
        if (got == 0) break;
        size += static_cast<std::size_t>(got);
    }
    ::close(file);
    text.resize(size);
    return text;
}

bool is_of_database(const std::string& path) {
    if (begins_as_database(path)) return true;
    for (const std::string_view ending : database_endings) {
        if (path.size() <= ending.size() || !path.ends_with(ending)) continue;
        if (begins_as_database(path.substr(0, path.size() - ending.size()))) return true;
    }
    return false;
}

}  // namespace heatmatch
