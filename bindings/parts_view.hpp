#pragma once

#include "pybind.hpp"

#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

/// The parts of a catalog; other Python threads run while it waits for one that uses the catalog.
[[nodiscard]] std::shared_ptr<const Parts> snapshot_of(const Catalog& catalog);

/// The part as read from a catalog, attached to its object and to changed copies of it, to detect a
/// stale replacement.
struct ReadAs {
    std::string path{};                    //!< of the catalog
    std::shared_ptr<const Parts> parts{};  //!< with the part as it was
};
/// Attaches it to the object of a part.
void carry(const py::object& part, const ReadAs& read_as);
/// Attaches to the object of a changed part the original of the part from which it was made.
void carry_on(const py::handle& from, const py::object& changed);
/// The part as it was read from that catalog; empty for any other part.
[[nodiscard]] std::optional<Part> read_from(const Catalog& catalog, const py::handle& object,
                                            const Part& part);

/// Results of imports and histories.
void register_catalog_reports(py::module_& module);

/// Adds one mapping for each kind to the catalog: `catalog.panels` and so on.
void add_parts_views(py::class_<Catalog>& cls);

}  // namespace heatmatch::python
