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

/// What an import did.
struct ImportReport {
    int added = 0;
    int replaced = 0;
    int removed = 0;
    int unchanged = 0;
    int entry = 0;                      //!< its number in the history; 0 if nothing was changed
    std::vector<RefusedRow> refused{};  //!< only where the good ones were to be kept
};

/// The parts a user works with: the starter catalog, and over it the rows and removals of the
/// user's own file (same id wins). The file is one SQLite database; every change is one
/// transaction and one entry of its history, or it throws and leaves everything as it was; only an
/// OutcomeUnknown leaves open which, and the Catalog then accepts no change until it is opened
/// again. References between parts are checked on the merged view inside the transaction. Several
/// threads may call one Catalog: each call waits for the one before. The Parts it gives are plain
/// values to share. A file is never believed: triggers, views and tables that are not ours are
/// refused. One that is replaced or deleted while it is open can still be read, and accepts no
/// change.
class Catalog {
  public:
    /// The starter catalog alone; read-only.
    [[nodiscard]] static Catalog starter();
    /// Opens the user's file over the starter, creating it if absent; an empty one stays empty
    /// until its first change, one that cannot be written is opened for reading. Waits up to
    /// `wait_ms` for another program's lock. Throws FileError if the file cannot be opened or
    /// created, and CatalogError if it is not a heatmatch catalog, was written by a newer version
    /// or holds what no version writes.
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
    /// Replaces the part of that id. Throws NotFound if there is none, and CatalogError if it would
    /// take back what another hand changed since the part was read. `read_as` is the part as it was
    /// read; without it, what this Catalog showed or wrote last is compared.
    void replace(const Part& part, const std::optional<Part>& read_as = std::nullopt);
    /// Sets fields of the part of that id as it is in the file at that moment, so that changes of
    /// other fields stay; gives the part as it is then. Numbers may be texts with a unit, an empty
    /// value makes a field unknown. Throws NotFound, and InvalidInput for what cannot be set.
    Part edit(PartKind kind, const std::string& id, const std::map<std::string, Value>& values);
    /// Removes a part. Throws NotFound if there is none, CatalogError if other parts name it.
    void remove(PartKind kind, const std::string& id);

    [[nodiscard]] std::vector<HistoryEntry> history() const;
    /// Takes back the change of that number, or the newest not yet taken back, as a new entry; a
    /// row falls back to the starter's where the change had hidden it. Throws CatalogError if there
    /// is nothing to undo, the change was taken back already or a row was changed since by
    /// something else. Returns the new entry. To try again after an OutcomeUnknown, name the
    /// number: an entry is never taken back twice.
    HistoryEntry undo(std::optional<int> number = std::nullopt);

    /// Writes a consistent copy. Throws FileError if the path exists or cannot be written.
    void save_copy(const std::string& path) const;

    /// Puts all rows of a JSON file in, adding or replacing. All or nothing, unless keep_good: then
    /// refused rows are reported by line and the others go in.
    ImportReport import_json(const std::string& path, bool keep_good = false);
    /// The same from text; `origin` opens messages.
    ImportReport import_json_text(std::string_view text, const std::string& origin,
                                  bool keep_good = false);
    /// Puts rows of one kind in from CSV text whose header names fields. Refused rows are told by
    /// line, or by their number among the records with number_records.
    ImportReport import_csv_text(PartKind kind, std::string_view text, const std::string& origin,
                                 bool keep_good = false, bool number_records = false);
    /// Puts panels in from the public module-rating list (three header rows). @cite cec-module-list
    ImportReport import_module_csv(const std::string& path, bool keep_good = false);

    /// The user's own rows and removals as JSON; importing it into an empty file and exporting that
    /// gives the same bytes.
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
