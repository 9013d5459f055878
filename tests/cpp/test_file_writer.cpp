#include "own_parts.hpp"
#include "refusal.hpp"
#include "temp_folder.hpp"

#include <csignal>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include <doctest/doctest.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/text/text_file.hpp"

using heatmatch::Catalog;
using heatmatch::FileError;
using heatmatch::FileWriter;
using heatmatch::read_text_file;
using heatmatch::write_text_file;
namespace fs = std::filesystem;

namespace {

unsigned mode_of(const std::string& path) {
    struct stat found {};
    REQUIRE(::stat(path.c_str(), &found) == 0);
    return found.st_mode & 07777U;
}

std::size_t entries_of(const TempFolder& folder) {
    std::size_t count = 0;
    for ([[maybe_unused]] const auto& entry : fs::directory_iterator(folder.file(""))) ++count;
    return count;
}

/// Error of a rejected write.
std::string write_refusal(const std::string& path, const heatmatch::WriteOptions& options = {}) {
    return refusal_of([&] { write_text_file(path, "new", options); });
}

}  // namespace

// POSIX.1-2017, open(): a new file has the requested mode minus the umask.
TEST_CASE("a new file has the mode of the umask, a replaced one keeps its own") {
    const TempFolder folder;
    const std::string path = folder.file("a");
    const mode_t before = ::umask(027);
    write_text_file(path, "one");
    CHECK(mode_of(path) == 0640);
    ::umask(0);
    for (const unsigned mode : {0600U, 0664U, 0640U}) {
        REQUIRE(::chmod(path.c_str(), mode) == 0);
        FileWriter file(path);
        CHECK(mode_of(file.partial()) == 0600);
        file.write("two");
        file.keep();
        CHECK(mode_of(path) == mode);
    }
    ::umask(before);
    CHECK(read_text_file(path) == "two");
    CHECK(entries_of(folder) == 1);
}

TEST_CASE("a link stays a link and its target is replaced") {
    const TempFolder folder;
    fs::create_directories(folder.file("there"));
    write_text_file(folder.file("there/file"), "old");
    fs::create_symlink("there/file", folder.file("one"));
    fs::create_symlink("one", folder.file("two"));
    write_text_file(folder.file("two"), "new");
    CHECK(fs::is_symlink(folder.file("one")));
    CHECK(fs::is_symlink(folder.file("two")));
    CHECK(read_text_file(folder.file("there/file")) == "new");
    // A link to a missing file creates its target.
    fs::create_symlink("there/later", folder.file("dangling"));
    write_text_file(folder.file("dangling"), "made");
    CHECK(fs::is_symlink(folder.file("dangling")));
    CHECK(read_text_file(folder.file("there/later")) == "made");
    fs::create_symlink("round", folder.file("round"));
    CHECK(holds(write_refusal(folder.file("round")), "nothing was changed"));
}

TEST_CASE("anything but a regular file is refused and unchanged") {
    const TempFolder folder;
    const std::string pipe = folder.file("pipe");
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    const std::string socket = folder.file("socket");
    sockaddr_un address{};
    address.sun_family = AF_UNIX;
    REQUIRE(socket.size() < sizeof address.sun_path);
    socket.copy(address.sun_path, socket.size());
    const int bound = ::socket(AF_UNIX, SOCK_STREAM, 0);
    REQUIRE(::bind(bound, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0);
    fs::create_symlink(pipe, folder.file("link"));
    for (const std::string& path : {pipe, socket, folder.file("link"), std::string("/dev/null")}) {
        CAPTURE(path);
        CHECK(holds(write_refusal(path), "it is a device, a pipe or a socket"));
    }
    CHECK(holds(write_refusal(folder.file("")), "it is a folder; name a file in it"));
    ::close(bound);
    CHECK(fs::is_fifo(pipe));
    CHECK(fs::is_socket(socket));
    CHECK(fs::is_character_file("/dev/null"));
    CHECK(entries_of(folder) == 3);
}

TEST_CASE("no output replaces a catalog or its files, by any name") {
    const TempFolder folder;
    const std::string path = folder.file("mine.heatmatch");
    Catalog catalog = Catalog::open(path);
    catalog.add(own_panel("own"));
    fs::create_hard_link(path, folder.file("same"));
    fs::create_hard_link(path + "-wal", folder.file("log"));
    fs::create_hard_link(path + "-shm", folder.file("index"));
    fs::create_symlink(path, folder.file("link"));
    const std::string bytes = read_text_file(path);
    for (const std::string& name :
         {path, path + "-wal", path + "-shm", path + "-journal", folder.file("same"),
          folder.file("log"), folder.file("index"), folder.file("link")}) {
        CAPTURE(name);
        CHECK(holds(write_refusal(name), "it belongs to a catalog"));
        CHECK_THROWS_AS(catalog.export_json(name, true), FileError);
        CHECK_THROWS_AS(catalog.save_copy(name), FileError);
    }
    CHECK((read_text_file(path) == bytes));
    CHECK_FALSE(fs::exists(path + "-journal"));
    CHECK(catalog.history().size() == 1);
    catalog.undo();
    CHECK(catalog.history().size() == 2);
}

TEST_CASE("an export refuses an existing file unless replacing is requested") {
    const TempFolder folder;
    Catalog catalog = Catalog::open(folder.file("mine.heatmatch"));
    write_text_file(folder.file("taken"), "mine");
    const auto exporting = [&] { catalog.export_json(folder.file("taken")); };
    CHECK(holds(refusal_of(exporting), "it exists; name another file"));
    CHECK(read_text_file(folder.file("taken")) == "mine");
    catalog.export_json(folder.file("taken"), true);
    CHECK((read_text_file(folder.file("taken")) == catalog.export_json_text()));
}

TEST_CASE("a copy of a catalog has the catalog's permissions, and leaves no other file") {
    const TempFolder folder;
    const std::string path = folder.file("mine.heatmatch");
    Catalog catalog = Catalog::open(path);
    catalog.add(own_panel("own"));
    REQUIRE(::chmod(path.c_str(), 0600) == 0);
    fs::create_directories(folder.file("copies"));
    catalog.save_copy(folder.file("copies/copy"));
    CHECK(mode_of(folder.file("copies/copy")) == 0600);
    std::size_t count = 0;
    for ([[maybe_unused]] const auto& entry : fs::directory_iterator(folder.file("copies"))) {
        ++count;
    }
    CHECK(count == 1);
    CHECK(Catalog::open(folder.file("copies/copy")).history().size() == 1);
}

TEST_CASE("only a file of the same kind is replaced where that is requested") {
    const TempFolder folder;
    const std::string path = folder.file("a.json");
    const heatmatch::WriteOptions own{.only_kind = "\"kind\""};
    for (const char* may : {"", "{\"kind\": 1}"}) {
        write_text_file(path, may);
        CHECK(write_refusal(path, own) == "(accepted)");
    }
    write_text_file(path, "mine");
    CHECK(holds(write_refusal(path, own), "another kind of file"));
    CHECK(read_text_file(path) == "mine");
}

TEST_CASE("a file created meanwhile is not replaced where none was to be") {
    const TempFolder folder;
    const std::string path = folder.file("a");
    {
        FileWriter file(path, {.replace = false});
        file.write("ours");
        write_text_file(path, "theirs");
        CHECK(holds(refusal_of([&] { file.keep(); }), "nothing was changed"));
    }
    CHECK(read_text_file(path) == "theirs");
    CHECK(entries_of(folder) == 1);
}

TEST_CASE("an interrupted write leaves the file unchanged, and no other file") {
    const TempFolder folder;
    const std::string path = folder.file("a");
    write_text_file(path, "before");
    { FileWriter(path).write("half"); }
    CHECK(read_text_file(path) == "before");
    // POSIX.1-2017, write(): beyond the limit of a file's size it fails with EFBIG.
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    rlimit before{};
    REQUIRE(::getrlimit(RLIMIT_FSIZE, &before) == 0);
    rlimit little = before;
    little.rlim_cur = 1000;
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &little) == 0);
    const std::string refusal = refusal_of([&] { write_text_file(path, std::string(5000, 'x')); });
    REQUIRE(::setrlimit(RLIMIT_FSIZE, &before) == 0);
    std::signal(SIGXFSZ, handler);
    CHECK(holds(refusal, "nothing was changed"));
    CHECK(read_text_file(path) == "before");
    CHECK(entries_of(folder) == 1);
}

TEST_CASE("of writers at once none fails, and one of them wins whole") {
    const TempFolder folder;
    const std::string path = folder.file("a");
    constexpr std::size_t size = 100000;
    std::vector<int> accepted(4);
    {
        std::vector<std::jthread> writers;
        for (std::size_t i = 0; i < accepted.size(); ++i) {
            writers.emplace_back([&, i] {
                const std::string text(size, static_cast<char>('a' + i));
                for (int n = 0; n < 10; ++n) {
                    const auto writing = [&] { write_text_file(path, text); };
                    accepted[i] += refusal_of(writing) == "(accepted)" ? 1 : 0;
                }
            });
        }
    }
    for (const int count : accepted) CHECK(count == 10);
    const std::string text = read_text_file(path);
    CHECK(text.size() == size);
    CHECK((text == std::string(size, text.front())));
    CHECK(entries_of(folder) == 1);
}

TEST_CASE("names of any bytes and of the longest that there are can be written") {
    const TempFolder folder;
    for (const std::string& name :
         {std::string(255, 'n'), std::string("\xff\xfe"), std::string("a\nb"), std::string(" ")}) {
        write_text_file(folder.file(name), "text");
        CHECK((read_text_file(folder.file(name)) == "text"));
    }
    CHECK(holds(write_refusal(folder.file(std::string(256, 'n'))), "File name too long"));
}
