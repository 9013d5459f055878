#pragma once

#include "pybind.hpp"

#include "heatmatch/heat/sheath_temperature.hpp"

namespace heatmatch::python {

/// A bed with its inputs, for repr and pickles.
struct ChargedBed {
    Medium medium{};
    Store store{};
    Element element{};
    int elements = 1;
    StoreCharge charge{};
    ConductivityEnd end = ConductivityEnd::low;
    BedCharge bed{};
};

/// Throws InvalidInput for times and temperatures out of range, and as bed_charge() does.
[[nodiscard]] ChargedBed charged_bed(Medium medium, Store store, Element element, int elements,
                                     const StoreCharge& charge, ConductivityEnd end);
/// `low`, `typical` or `high`. Throws InvalidInput.
[[nodiscard]] ConductivityEnd conductivity_end_from(const std::string& name);
/// The fill of a store: a given Medium, or for a Catalog (None: the starter) the part named by the
/// store. Throws InvalidInput and NotFound.
[[nodiscard]] Medium medium_from(const py::object& medium, const Store& store);

[[nodiscard]] py::tuple state_of(const TemperatureBand& band);
[[nodiscard]] TemperatureBand temperature_band_from(const py::tuple& state);

}  // namespace heatmatch::python
