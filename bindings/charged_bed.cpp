#include "charged_bed.hpp"

#include "parts_view.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

ConductivityEnd conductivity_end_from(const std::string& name) {
    if (const auto end = find_choice<ConductivityEnd>(name)) return *end;
    throw InvalidInput(
        ErrorDetail{.field = "conductivity",
                    .value = quote(name),
                    .allowed = "\"low\", \"typical\" or \"high\"",
                    .remedy = verbatim("use low for the highest sheath temperature")});
}

Medium medium_from(const py::object& medium, const Store& store) {
    if (medium.is_none()) return find_medium(*Catalog::starter().snapshot(), store.medium);
    if (py::isinstance<Medium>(medium)) return medium.cast<Medium>();
    if (py::isinstance<Catalog>(medium)) {
        return find_medium(*snapshot_of(medium.cast<const Catalog&>()), store.medium);
    }
    const auto type = py::str(py::type::of(medium).attr("__name__")).cast<std::string>();
    throw InvalidInput(
        ErrorDetail{.field = "medium",
                    .value = type,
                    .allowed = "a Medium, a Catalog or None",
                    .remedy = verbatim("give catalog.media[\"dry-sand\"], or the catalog")});
}

ChargedBed charged_bed(Medium medium, Store store, Element element, int elements,
                       const StoreCharge& charge, ConductivityEnd end) {
    check_argument("hours", charge.hours, unit::hour, {.low = 0.0, .high = 24.0, .low_open = true});
    check_argument("air_c", charge.air_c, unit::celsius, {.low = -60.0, .high = 80.0});
    check_argument("days", charge.days, unit::none, {.low = 1.0, .high = 3660.0});
    BedCharge bed = bed_charge(medium, store, element, elements, charge, end);
    return {.medium = std::move(medium),
            .store = std::move(store),
            .element = std::move(element),
            .elements = elements,
            .charge = charge,
            .end = end,
            .bed = std::move(bed)};
}

py::tuple state_of(const TemperatureBand& band) {
    return py::make_tuple(band.low_c, band.typical_c, band.high_c);
}

TemperatureBand temperature_band_from(const py::tuple& state) {
    return {state[0].cast<double>(), state[1].cast<double>(), state[2].cast<double>()};
}

}  // namespace heatmatch::python
