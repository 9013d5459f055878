#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace heatmatch {

/// Which existing file may be replaced.
struct WriteOptions {
    bool replace = true;              //!< an existing file
    std::string only_kind{};          //!< only one with this text near its beginning, or an empty
                                      //!< one
    std::optional<unsigned> mode{};   //!< mode of a new file, minus the umask; default 0666
    std::string_view what = "write";  //!< for messages: `cannot write "x"`
};

/// A file being written, under a temporary name in the folder of its target, so that no reader gets
/// half of it. `keep()` moves it to the target; without that nothing changes and the temporary file
/// is removed. A symbolic link remains and its target is replaced; a replaced file keeps its mode
/// and owner. With several writers at once, the last replaces the whole file.
///
/// Never replaced: a catalog or another SQLite database and the `-wal`, `-shm` and `-journal` files
/// beside one, under any name or link; and anything that is not a regular file.
class FileWriter {
  public:
    /// Throws FileError if no file may be written there, naming the path and the reason.
    explicit FileWriter(const std::string& path, const WriteOptions& options = {});
    FileWriter(const FileWriter&) = delete;
    FileWriter& operator=(const FileWriter&) = delete;
    ~FileWriter();

    /// Its temporary name until it is kept, for code that writes it directly.
    [[nodiscard]] const std::string& partial() const { return partial_; }
    /// Appends. Throws FileError.
    void write(std::string_view bytes);
    /// Syncs it to disk and moves it to its target. Throws FileError; unless the message states
    /// otherwise, the previous file is unchanged.
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
    bool exists_ = false;  //!< state of the target at construction
    int file_ = -1;
};

}  // namespace heatmatch
