#pragma once

#include <filesystem>
#include <random>
#include <string>
#include <system_error>

/// A folder of its own that goes away with it.
struct TempFolder {
    std::filesystem::path path = std::filesystem::temp_directory_path() /
                                 ("heatmatch-" + std::to_string(std::random_device{}()) +
                                  std::to_string(std::random_device{}()));
    TempFolder() { std::filesystem::create_directories(path); }
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;
    ~TempFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path, ignored);
    }
    [[nodiscard]] std::string file(const std::string& name) const { return (path / name).string(); }
};
