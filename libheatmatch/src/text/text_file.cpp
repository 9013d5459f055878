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

void write_text_file(const std::string& path, std::string_view text, const WriteOptions& options) {
    FileWriter file(path, options);
    file.write(text);
    file.keep();
}

}  // namespace heatmatch
