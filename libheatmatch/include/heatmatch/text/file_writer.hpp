#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace heatmatch {

/// What a file may take the place of.
struct WriteOptions {
    bool replace = true;              //!< a file that exists
    std::string only_kind{};          //!< if so, one with this text near its beginning, or empty
    std::optional<unsigned> mode{};   //!< of a new file, less the umask; 0666 unless given
    std::string_view what = "write";  //!< for messages: `cannot write "x"`
};

/// A file being written, written under a name of its own in the folder of its target, so that
/// nobody ever reads half of it. `keep()` puts it in its place; without that nothing changes and
/// nothing is left. A symbolic link stays one and what it leads to is replaced; a file that is
/// replaced keeps its mode and owner. Of several writers at once, the last wins whole.
///
/// Never replaced: a catalog or another SQLite database and the `-wal`, `-shm` and `-journal`
/// beside one, under any name or link; and what is no regular file.
class FileWriter {
  public:
    /// Throws FileError if no file may be written there; it names the path and the reason.
    explicit FileWriter(const std::string& path, const WriteOptions& options = {});
    FileWriter(const FileWriter&) = delete;
    FileWriter& operator=(const FileWriter&) = delete;
    ~FileWriter();

    /// The name it has until it is kept, for what writes by itself.
    [[nodiscard]] const std::string& partial() const { return partial_; }
    /// Appends. Throws FileError.
    void write(std::string_view bytes);
    /// Brings it to the disk and into its place. Throws FileError; unless that says otherwise, what
    /// was there before is as it was.
    void keep();

  private:
    [[noreturn]] void fail(const std::string& reason) const;
    void open_partial();
    void take_after();
    void sync_partial();
    void put();
    void sync_folder() const;

    std::string shown_{};  //!< the path as the caller named it, for messages
    WriteOptions options_{};
    std::string target_{};  //!< links followed
    std::string folder_{};
    std::string partial_{};
    bool exists_ = false;  //!< the target, when this began
    int file_ = -1;
};

}  // namespace heatmatch
