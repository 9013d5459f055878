#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "heatmatch/catalog/history.hpp"
#include "heatmatch/catalog/outcome_unknown.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch {

/// Result of an import.
struct ImportReport {
    int added = 0;
    int replaced = 0;
    int removed = 0;
    int unchanged = 0;
    int entry = 0;                      //!< its number in the history; 0 if nothing was changed
    std::vector<RefusedRow> refused{};  //!< only with keep_good
};

/// The parts available to a user: the starter catalog, and over it the rows and removals of the
/// user's own file (for equal ids, the user's row is used). The file is one SQLite database. Every
/// change is one transaction and one entry of its history; on an exception nothing is changed. The
/// exception is OutcomeUnknown: whether the change was kept is then open, and the Catalog accepts
/// no change until it is opened again.
/// References between parts are checked on the merged view inside the transaction. Several threads
/// may call one Catalog; calls are serialized. The returned Parts are plain values. Files are
/// checked: unknown triggers, views and tables are rejected. A file that is replaced or deleted
/// while open can still be read, but accepts no change.
/// change.
class Catalog {
  public:
    /// The starter catalog alone; read-only.
    [[nodiscard]] static Catalog starter();
    /// Opens the user's file over the starter, and creates it if absent. An empty file stays empty
    /// until its first change; one that is not writable is opened for reading. Waits up to
    /// `wait_ms` for another program's lock. Throws FileError if the file cannot be opened or
    /// created, and CatalogError if it is not a heatmatch catalog, was written by a newer version,
    /// or contains objects that no version writes.
    [[nodiscard]] static Catalog open(const std::string& path, int wait_ms = 2000);

    Catalog(Catalog&&) noexcept;
    Catalog& operator=(Catalog&&) noexcept;
    Catalog(const Catalog&) = delete;
    Catalog& operator=(const Catalog&) = delete;
    ~Catalog();

    /// Closes the file; every later use throws CatalogError. Closing twice does nothing.
    void close();

    /// Path of the file; empty for the starter.
    [[nodiscard]] const std::string& path() const;
    /// Snapshot of the merged view, kinds in order of id.
    [[nodiscard]] Parts parts() const;
    /// The same, shared instead of copied; read again only when the file has changed.
    [[nodiscard]] std::shared_ptr<const Parts> snapshot() const;
    /// Whether a part is the user's own (added or changed), not the starter's.
    [[nodiscard]] bool is_own(PartKind kind, const std::string& id) const;

    /// Adds a part. Throws CatalogError if the id is taken, InvalidInput if the part is unusable.
    void add(const Part& part);
    /// Replaces the part of that id. Throws NotFound if there is none, and CatalogError if that
    /// would undo a change made elsewhere since the part was read. `read_as` is the part as it was
    /// read; without it, the comparison uses the part that this Catalog last returned or wrote.
    void replace(const Part& part, const std::optional<Part>& read_as = std::nullopt);
    /// Sets fields of the part of that id as it is in the file at that moment, so that changes of
    /// other fields are kept. Returns the resulting part. Numbers may be texts with a unit; an
    /// empty value makes a field unknown. Throws NotFound, and InvalidInput for values that cannot
    /// be set.
    Part edit(PartKind kind, const std::string& id, const std::map<std::string, Value>& values);
    /// Removes a part. Throws NotFound if there is none, CatalogError if other parts refer to it.
    void remove(PartKind kind, const std::string& id);

    [[nodiscard]] std::vector<HistoryEntry> history() const;
    /// Undoes the change of that number, or the newest one not yet undone, as a new entry. A row
    /// that the change had replaced in the starter becomes the starter's row again. Throws
    /// CatalogError if there is nothing to undo, the change was already undone, or a row was
    /// changed since. Returns the new entry. After an OutcomeUnknown, retry with the number: no
    /// entry is undone twice.
    HistoryEntry undo(std::optional<int> number = std::nullopt);

    /// Writes a consistent copy. Throws FileError if the path exists or cannot be written.
    void save_copy(const std::string& path) const;

    /// Imports all rows of a JSON file, adding or replacing. All or nothing, unless keep_good: then
    /// rejected rows are reported by line and the others are imported.
    ImportReport import_json(const std::string& path, bool keep_good = false);
    /// The same from text; `origin` starts the messages.
    ImportReport import_json_text(std::string_view text, const std::string& origin,
                                  bool keep_good = false);
    /// Imports rows of one kind from CSV text whose header names fields. Rejected rows are reported
    /// by line, or by record number with number_records.
    ImportReport import_csv_text(PartKind kind, std::string_view text, const std::string& origin,
                                 bool keep_good = false, bool number_records = false);
    /// Imports panels from the public module-rating list (three header rows). @cite cec-module-list
    ImportReport import_module_csv(const std::string& path, bool keep_good = false);

    /// The user's own rows and removals as JSON. Importing it into an empty file and exporting
    /// again yields the same bytes.
    [[nodiscard]] std::string export_json_text() const;
    /// The same to a file. Throws FileError if it exists, unless `force`; a catalog is never
    /// replaced.
    void export_json(const std::string& path, bool force = false) const;
    /// The whole merged view instead.
    [[nodiscard]] std::string export_all_json_text() const;

  private:
    struct Impl;
    explicit Catalog(std::unique_ptr<Impl> impl);
    std::unique_ptr<Impl> impl_;
};

}  // namespace heatmatch
