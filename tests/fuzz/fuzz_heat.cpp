#include "odd_records.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>

#include "heatmatch/base/error.hpp"
#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/heat/sheath_temperature.hpp"
#include "heatmatch/heat/wire_temperature.hpp"

using namespace heatmatch;

namespace {

void banded(const char* what, const TemperatureBand& band) {
    ordered(what, band.low_c, band.typical_c);
    ordered(what, band.typical_c, band.high_c);
}

/// Either refused with the library's own error, or done.
template <class Function>
void try_it(const Function& function) {
    try {
        function();
    } catch (const Error&) {
    }
}

/// The starter's dry sand, or something changed.
Medium medium_of(Bytes& bytes) {
    Medium medium{.id = "sand",
                  .form = heatmatch::MediumForm::granular,
                  .grain_mm = 0.5,
                  .k20_w_mk = 0.27,
                  .k20_low_w_mk = 0.20,
                  .k20_high_w_mk = 0.35,
                  .density_kg_m3 = 1550.0,
                  .heat_capacity_j_kgk =
                      {{20, 737}, {100, 850}, {300, 1045}, {573, 1650}, {600, 1130}, {900, 1156}},
                  .moist_k_w_mk = 1.8};
    if (bytes.byte() % 3 == 0) return medium;
    constexpr const char* forms[] = {"granular", "solid", "liquid", "granular", ""};
    medium.form = heatmatch::find_choice<heatmatch::MediumForm>(bytes.word(forms));
    medium.k20_w_mk = bytes.number(0.01, 500.0);
    medium.k20_low_w_mk = bytes.maybe(0.01, 500.0);
    medium.k20_high_w_mk = bytes.maybe(0.01, 500.0);
    medium.density_kg_m3 = bytes.number(50.0, 20000.0);
    medium.grain_mm = bytes.maybe(0.001, 500.0);
    medium.moist_k_w_mk = bytes.maybe(0.01, 500.0);
    medium.moist_k_low_w_mk = bytes.maybe(0.01, 500.0);
    medium.moist_k_high_w_mk = bytes.maybe(0.01, 500.0);
    for (auto* table : {&medium.heat_capacity_j_kgk, &medium.conductivity_w_mk}) {
        const bool conductivity = table == &medium.conductivity_w_mk;
        const unsigned points = bytes.byte() % 5;
        if (points == 4) continue;
        table->clear();
        for (unsigned i = 0; i < points; ++i) {
            const double t_c = bytes.number(-100.0, 2000.0);
            table->push_back(
                {t_c, conductivity ? bytes.number(0.01, 500.0) : bytes.number(50.0, 10000.0)});
        }
        if (bytes.byte() % 4 != 0) {
            std::sort(table->begin(), table->end(),
                      [](const auto& a, const auto& b) { return std::isless(a.t_c, b.t_c); });
        }
    }
    return medium;
}

Element element_of(Bytes& bytes) {
    Element element{.id = "rod"};
    element.sheath_diameter_mm = bytes.maybe(0.3, 200.0);
    if (bytes.byte() % 2 == 0) element.sheath_diameter_mm = 8.0;
    element.heated_length_mm =
        bytes.byte() % 4 == 0 ? bytes.maybe(5.0, 200000.0) : bytes.number(50.0, 3000.0);
    if (bytes.byte() % 3 != 0) element.legs = bytes.whole(1, 60);
    element.leg_spacing_mm = bytes.maybe(1.0, 2000.0);
    return element;
}

Store store_of(Bytes& bytes) {
    constexpr const char* shapes[] = {"cylinder", "box", "cylinder", ""};
    Store store{.shape = heatmatch::find_choice<heatmatch::StoreShape>(bytes.word(shapes))};
    const double most_m = bytes.byte() % 2 == 0 ? 1.0 : 20.0;
    store.diameter_m = bytes.number(0.02, most_m);
    store.width_m = bytes.number(0.02, most_m);
    store.depth_m = bytes.number(0.02, most_m);
    store.height_m = bytes.maybe(0.02, most_m);
    if (bytes.byte() % 2 == 0) store.height_m = 0.5 * most_m;
    store.wall_emissivity = bytes.maybe(0.01, 1.0);
    store.top_u_w_m2k = bytes.maybe(0.01, 100.0);
    store.side_u_w_m2k = bytes.maybe(0.01, 100.0);
    store.bottom_u_w_m2k = bytes.maybe(0.01, 100.0);
    store.element_spacing_mm = bytes.maybe(1.0, 5000.0);
    store.spreader_diameter_mm = bytes.maybe(3.0, 300.0);
    if (bytes.byte() % 2 == 0) store.spreader_diameter_mm.reset();
    return store;
}

void heat_a_bed(Bytes& bytes) {
    const Medium medium = medium_of(bytes);
    const Element element = element_of(bytes);
    const Store store = store_of(bytes);
    const int elements = bytes.byte() % 2 == 0 ? 1 : bytes.whole(1, 12);
    const StoreCharge charge{.power_w = bytes.number(0.0, bytes.byte() % 2 == 0 ? 1000.0 : 1e6),
                             .hours = bytes.number(0.01, 24.0),
                             .air_c = bytes.number(-60.0, 80.0),
                             .days = bytes.number(1.0, 30.0),
                             .moist = bytes.byte() % 4 == 0};
    try_it([&] {
        const LegLayout layout = leg_layout(element, elements, store);
        finite("leg length", layout.leg_length_m);
        finite("outer radius", layout.outer_radius_m());
        for (const double distance : layout.distances_m()) finite("distance of legs", distance);
    });
    try_it([&] {
        const SheathTemperature at = sheath_temperature(medium, store, element, elements, charge);
        banded("sheath", at.sheath_c);
        banded("coil", at.coil_c);
        banded("bed mean", at.bed_mean_c);
        banded("wall", at.wall_c);
        banded("lid", at.lid_c);
        ordered("verdict over sheath", at.sheath_c.high_c, at.sheath_verdict_c);
        ordered("sheath over bed", at.bed_mean_c.high_c, at.sheath_c.high_c);
        ordered("bed over air", charge.air_c, at.bed_mean_c.low_c);
        finite("W/cm", at.w_per_cm);
    });
    const double limit_c = bytes.number(-60.0, 1500.0);
    const double factor = bytes.number(1.0, 1.5);
    const double longest_h = bytes.number(1.0, 10000.0);
    const double distance_m = bytes.number(0.0, 1.0);
    BedCharge bed;
    const bool raw = bytes.byte() % 2 == 0;
    try_it([&] {
        bed = bed_charge(medium, store, element, elements, charge, ConductivityEnd::low);
        if (raw) {  // what bed_charge() would not make
            bed.gap_m = bytes.number(0.0, 0.01);
            bed.rod_j_m_k = bytes.number(0.0, 1000.0);
            bed.fill.density_kg_m3 = bytes.number(50.0, 20000.0);
            bed.shell.volume_m3 = bytes.number(0.001, 10.0);
            bed.shell.side_u_w_m2k = bytes.number(0.0, 10.0);
            bed.legs.leg_length_m = bytes.number(0.01, 2.0);
            bed.legs.radius_m = bytes.number(0.001, 0.1);
            if (bytes.byte() % 8 == 0) bed.legs.legs.clear();
        }
    });
    try_it([&] {
        const BedTemperatures at = bed_temperatures(bed, charge.power_w);
        for (const double each : {at.bed_mean_c, at.edge_c, at.wall_c, at.lid_c}) {
            ordered("sheath over bed, edge, wall and lid", each, at.sheath_c);
            ordered("all over air", bed.air_c, each);
        }
    });
    try_it([&] {
        const double beside_c = bed_temperature_c(bed, charge.power_w, distance_m);
        ordered("beside over air", bed.air_c, beside_c);
    });
    try_it([&] {
        const double power_w = largest_power_w(bed, limit_c, factor);
        ordered("largest power", 0.0, power_w);
        if (power_w <= 0.0 || power_w >= 1e7) return;
        const double rise_k = bed_temperatures(bed, power_w).sheath_c - bed.air_c;
        ordered("at the largest power", bed.air_c + factor * rise_k, limit_c + 0.5);
    });
    try_it([&] {
        const auto hours = hours_to_limit(bed, charge.power_w, limit_c, longest_h);
        if (hours) ordered("hours to the limit", 0.0, *hours);
    });
}

Wire wire_of(Bytes& bytes) {
    constexpr const char* metals[] = {"copper", "nickel", "nickel-clad copper", "aluminium", ""};
    Wire wire{.id = "lead",
              .conductor = heatmatch::find_choice<heatmatch::ConductorMetal>(bytes.word(metals)),
              .plating = heatmatch::Plating::bare};
    wire.area_mm2 = bytes.byte() % 2 == 0 ? 2.08 : bytes.number(0.01, 500.0);
    if (bytes.byte() % 2 == 0) wire.strands = bytes.whole(1, 100);
    wire.resistance_ohm_per_km = bytes.maybe(0.01, 1e5);
    wire.outer_diameter_mm = bytes.maybe(0.2, 60.0);
    return wire;
}

void heat_a_wire(Bytes& bytes) {
    const Wire wire = wire_of(bytes);
    const Insulation insulation{.id = "sleeve", .conductivity_w_mk = bytes.maybe(0.01, 100.0)};
    const Insulation* around = bytes.byte() % 4 == 0 ? nullptr : &insulation;
    const double current_a = bytes.number(0.0, bytes.byte() % 2 == 0 ? 30.0 : 10000.0);
    constexpr const char* kinds[] = {"open air", "sunlit", "conduit", "bed", "cavity"};
    Surroundings surroundings{
        .kind = *heatmatch::find_choice<heatmatch::SurroundingsKind>(bytes.word(kinds))};
    surroundings.air_c = bytes.maybe(-60.0, 500.0);
    surroundings.irradiance_w_m2 = bytes.maybe(0.0, 1400.0);
    surroundings.wind_m_s = bytes.maybe(0.0, 50.0);
    if (bytes.byte() % 2 == 0) surroundings.loaded_conductors = bytes.whole(1, 50);
    const BedAround bed{.temperature_c = bytes.maybe(-60.0, 1500.0),
                        .conductivity_w_mk = bytes.maybe(0.01, 500.0)};
    try_it([&] {
        const auto at = conductor_temperature(wire, around, current_a, surroundings, bed);
        if (!at) return;
        ordered("conductor over its surface", at->surface_c, at->conductor_c);
    });
    const double limit_c = bytes.number(-60.0, 1000.0);
    try_it([&] {
        const auto most_a = ampacity_by_balance_a(wire, around, limit_c, surroundings, bed);
        if (most_a) ordered("ampacity", 0.0, *most_a);
    });
    HotTail tail{.sheath_c = bytes.number(-60.0, 1500.0),
                 .bed_c = bytes.number(-60.0, 1500.0),
                 .bed_conductivity_w_mk = bytes.number(0.01, 500.0),
                 .air_c = bytes.number(-60.0, 200.0),
                 .sheath_diameter_mm = bytes.number(1.0, 100.0),
                 .sheath_conductivity_w_mk = bytes.number(1.0, 500.0),
                 .sheath_emissivity = bytes.number(0.0, 1.0),
                 .cold_length_m = bytes.number(0.0, 2.0),
                 .place = static_cast<TerminalPlace>(bytes.byte() % 3),
                 .wall_m = bytes.number(0.0, 1.0),
                 .beyond_m = bytes.number(0.0, 1.0)};
    if (bytes.byte() % 2 == 0) tail.buried_wire_m = bytes.number(0.0, 10.0);
    tail.box_wire_m = bytes.number(0.0, 1.0);
    tail.box_area_m2 = bytes.number(0.001, 1.0);
    tail.box_u_w_m2k = bytes.number(0.1, 50.0);
    tail.contact_ohm = bytes.number(0.0, 1.0);
    tail.current_a = current_a;
    tail.sheath_loss_w_mk = bytes.maybe(0.001, 100.0);
    tail.wire_loss_w_mk = bytes.maybe(0.001, 100.0);
    const double from_terminal_m = bytes.number(0.0, 2.0);
    try_it([&] {
        const TailTemperatures at = tail_temperatures(tail, wire, around);
        finite("end of heat", at.heated_end_c);
        finite("terminal", at.terminal_c);
        finite("far wire", at.far_wire_c);
        if (at.wall_c) finite("wall", *at.wall_c);
        if (at.box_c) finite("box", *at.box_c);
        if (at.runaway) return;
        finite("wire", at.wire_c(from_terminal_m));
        if (const auto reach = at.distance_for_limit_m(limit_c)) {
            ordered("reach of the heat", 0.0, *reach);
        }
    });
}

}  // namespace

/// A bed and a wire of any numbers are refused, or their temperatures are finite and in order.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    Bytes bytes(data, size);
    if (bytes.byte() % 2 == 0) {
        heat_a_bed(bytes);
    } else {
        heat_a_wire(bytes);
    }
    return 0;
}
