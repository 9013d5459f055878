#pragma once

#include "pybind.hpp"

#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

/// The parts of a catalog; other Python threads run while it waits for one that uses the catalog.
[[nodiscard]] std::shared_ptr<const Parts> snapshot_of(const Catalog& catalog);

/// What a part from a catalog was read as, which its object and changed copies of it carry: by that
/// a replacement is known to be stale.
struct ReadAs {
    std::string path{};                    //!< of the catalog
    std::shared_ptr<const Parts> parts{};  //!< with the part as it was
};
/// Has the object of a part carry it.
void carry(const py::object& part, const ReadAs& read_as);
/// Has the object of a changed part carry what the part it was made from does.
void carry_on(const py::handle& from, const py::object& changed);
/// The part as it was read from that catalog; nothing for one made otherwise.
[[nodiscard]] std::optional<Part> read_from(const Catalog& catalog, const py::handle& object,
                                            const Part& part);

/// What imports and histories give.
void register_catalog_reports(py::module_& module);

/// Gives the catalog one mapping a kind: `catalog.panels` and so on.
void add_parts_views(py::class_<Catalog>& cls);

}  // namespace heatmatch::python
