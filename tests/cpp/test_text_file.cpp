#include "temp_folder.hpp"

#include <filesystem>
#include <string>
#include <tuple>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::FileError;
using heatmatch::read_text_file;
using heatmatch::write_text_file;
namespace fs = std::filesystem;

namespace {

std::size_t files_in(const std::string& folder) {
    std::size_t count = 0;
    for (const auto& entry : fs::directory_iterator(folder)) count += entry.exists() ? 1 : 0;
    return count;
}

}  // namespace

TEST_CASE("a text is read back unchanged, byte by byte") {
    const TempFolder folder;
    const std::string path = folder.file("a.json");
    for (const std::string& text :
         {std::string(), std::string("a\r\nb\n"), std::string("\0\xFF\n", 3),
          std::string(3000000, 'x'), std::string("Süd")}) {
        write_text_file(path, text);
        CHECK((read_text_file(path) == text));
        CHECK(files_in(folder.file("")) == 1);
    }
}

TEST_CASE("a file that cannot be read is named with the reason") {
    const TempFolder folder;
    const auto message_of = [](const std::string& path) {
        try {
            std::ignore = read_text_file(path);
        } catch (const FileError& error) {
            CHECK(error.detail().part == path);
            return std::string(error.what());
        }
        return std::string("(read)");
    };
    const std::string missing = folder.file("missing.json");
    CHECK(message_of(missing).find("cannot read \"" + missing + "\": No such file") == 0);
    CHECK(message_of(folder.file("")).find("it is a folder; name a file") != std::string::npos);
    CHECK(message_of("").find("cannot read \"\"") == 0);
    CHECK(message_of(folder.file("no/such/folder/a.json")).find("check the path") !=
          std::string::npos);
}

TEST_CASE("a file that cannot be written is named, and nothing is left behind") {
    const TempFolder folder;
    const std::string missing = folder.file("no/such/folder/a.json");
    CHECK_THROWS_AS(write_text_file(missing, "x"), FileError);
    CHECK_FALSE(fs::exists(missing));
    CHECK_THROWS_AS(write_text_file("/proc/heatmatch.json", "x"), FileError);
    CHECK_THROWS_AS(write_text_file("", "x"), FileError);
    // A folder cannot be replaced by a file.
    fs::create_directories(folder.file("taken.json/inside"));
    CHECK_THROWS_AS(write_text_file(folder.file("taken.json"), "x"), FileError);
    CHECK(files_in(folder.file("")) == 1);
}

TEST_CASE("a neighbour of the user's is not overwritten on the way") {
    const TempFolder folder;
    write_text_file(folder.file("a.json.new"), "mine");
    write_text_file(folder.file("a.json"), "text");
    CHECK(read_text_file(folder.file("a.json")) == "text");
    REQUIRE(fs::exists(folder.file("a.json.new")));
    CHECK(read_text_file(folder.file("a.json.new")) == "mine");
}
