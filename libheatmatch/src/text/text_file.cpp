#include "heatmatch/text/text_file.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

namespace {

std::string system_reason() {
    return errno != 0 ? std::strerror(errno) : "the system gives no reason";
}

/// A name beside the path that nobody uses yet.
std::string unused_neighbour(const std::string& path) {
    for (int n = 0;; ++n) {
        std::string name = path + ".writing-" + std::to_string(n);
        std::error_code failed;
        if (!std::filesystem::exists(name, failed) || failed) return name;
    }
}

}  // namespace

std::string read_text_file(const std::string& path) {
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored)) {
        throw FileError("cannot read \"" + path + "\": it is a folder; name a file",
                        ErrorDetail{.part = path});
    }
    errno = 0;
    std::ifstream file(path, std::ios::binary);
    std::ostringstream content;
    if (file) content << file.rdbuf();
    if (!file.is_open() || file.bad()) {
        throw FileError("cannot read \"" + path + "\": " + system_reason() + "; check the path",
                        ErrorDetail{.part = path});
    }
    return content.str();
}

void write_text_file(const std::string& path, std::string_view text) {
    const std::string beside = unused_neighbour(path);
    errno = 0;
    std::ofstream file(beside, std::ios::binary | std::ios::trunc);
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    file.close();
    if (!file) {
        const std::string reason = system_reason();
        std::error_code ignored;
        std::filesystem::remove(beside, ignored);
        throw FileError(
            "cannot write \"" + path + "\": " + reason + "; choose a folder you may write to",
            ErrorDetail{.part = path});
    }
    std::error_code failed;
    std::filesystem::rename(beside, path, failed);
    if (failed) {
        std::error_code ignored;
        std::filesystem::remove(beside, ignored);
        throw FileError("cannot write \"" + path + "\": " + failed.message(),
                        ErrorDetail{.part = path});
    }
}

}  // namespace heatmatch
