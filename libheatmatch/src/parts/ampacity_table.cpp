#include "heatmatch/parts/ampacity_table.hpp"

#include "ampacity_cells.hpp"

#include <algorithm>

#include "heatmatch/base/awg.hpp"

namespace heatmatch {

namespace {

namespace cells = ampacity_cells;
using M = LayingMethod;
using G = AmpacityGroup;
constexpr WiringCode nec = WiringCode::nec;
constexpr WiringCode iec = WiringCode::iec;

// By the NEC, touching wires and wires in thermal insulation use the table of a raceway or cable.
// By IEC they count as clipped to a wall (C) and in a pipe in an insulated wall (A1, A2). In free
// air the column of a cable (E) is used for single wires, which have no column below 25 mm2; in the
// ground that of a duct (D1), the smaller of two.
constexpr auto columns = std::to_array<AmpacityColumn>({
    {nec, M::bundle, G::single, 30.0, 60.0, "nec-310-16", cells::awg_14_up, cells::nec_310_16_60},
    {nec, M::raceway, G::single, 30.0, 60.0, "nec-310-16", cells::awg_14_up, cells::nec_310_16_60},
    {nec, M::thermal_insulation, G::single, 30.0, 60.0, "nec-310-16", cells::awg_14_up,
     cells::nec_310_16_60},
    {nec, M::earth, G::single, 30.0, 60.0, "nec-310-16", cells::awg_14_up, cells::nec_310_16_60},
    {nec, M::bundle, G::single, 30.0, 75.0, "nec-310-16", cells::awg_14_up, cells::nec_310_16_75},
    {nec, M::raceway, G::single, 30.0, 75.0, "nec-310-16", cells::awg_14_up, cells::nec_310_16_75},
    {nec, M::thermal_insulation, G::single, 30.0, 75.0, "nec-310-16", cells::awg_14_up,
     cells::nec_310_16_75},
    {nec, M::earth, G::single, 30.0, 75.0, "nec-310-16", cells::awg_14_up, cells::nec_310_16_75},
    {nec, M::bundle, G::single, 30.0, 90.0, "nec-310-16", cells::awg_18_up, cells::nec_310_16_90},
    {nec, M::raceway, G::single, 30.0, 90.0, "nec-310-16", cells::awg_18_up, cells::nec_310_16_90},
    {nec, M::thermal_insulation, G::single, 30.0, 90.0, "nec-310-16", cells::awg_18_up,
     cells::nec_310_16_90},
    {nec, M::earth, G::single, 30.0, 90.0, "nec-310-16", cells::awg_18_up, cells::nec_310_16_90},
    {nec, M::free_air, G::single, 30.0, 60.0, "nec-310-17", cells::awg_14_up, cells::nec_310_17_60},
    {nec, M::free_air, G::single, 30.0, 75.0, "nec-310-17", cells::awg_14_up, cells::nec_310_17_75},
    {nec, M::free_air, G::single, 30.0, 90.0, "nec-310-17", cells::awg_18_up, cells::nec_310_17_90},
    {nec, M::bundle, G::single, 40.0, 150.0, "nec-310-18", cells::awg_14_up, cells::nec_310_18_150},
    {nec, M::raceway, G::single, 40.0, 150.0, "nec-310-18", cells::awg_14_up,
     cells::nec_310_18_150},
    {nec, M::bundle, G::single, 40.0, 200.0, "nec-310-18", cells::awg_14_up, cells::nec_310_18_200},
    {nec, M::raceway, G::single, 40.0, 200.0, "nec-310-18", cells::awg_14_up,
     cells::nec_310_18_200},
    {nec, M::bundle, G::single, 40.0, 250.0, "nec-310-18", cells::awg_14_up, cells::nec_310_18_250},
    {nec, M::raceway, G::single, 40.0, 250.0, "nec-310-18", cells::awg_14_up,
     cells::nec_310_18_250},
    {nec, M::free_air, G::single, 40.0, 150.0, "nec-310-19", cells::awg_14_up,
     cells::nec_310_19_150},
    {nec, M::free_air, G::single, 40.0, 200.0, "nec-310-19", cells::awg_14_up,
     cells::nec_310_19_200},
    {nec, M::free_air, G::single, 40.0, 250.0, "nec-310-19", cells::awg_14_up,
     cells::nec_310_19_250},
    {nec, M::bundle, G::pv_wire, 30.0, 105.0, "nec-690-31", cells::awg_18_up,
     cells::nec_690_31_105},
    {nec, M::raceway, G::pv_wire, 30.0, 105.0, "nec-690-31", cells::awg_18_up,
     cells::nec_690_31_105},
    {nec, M::earth, G::pv_wire, 30.0, 105.0, "nec-690-31", cells::awg_18_up, cells::nec_690_31_105},
    {nec, M::bundle, G::pv_wire, 30.0, 125.0, "nec-690-31", cells::awg_18_up,
     cells::nec_690_31_125},
    {nec, M::raceway, G::pv_wire, 30.0, 125.0, "nec-690-31", cells::awg_18_up,
     cells::nec_690_31_125},
    {nec, M::earth, G::pv_wire, 30.0, 125.0, "nec-690-31", cells::awg_18_up, cells::nec_690_31_125},
    {nec, M::bundle, G::cord, 30.0, 60.0, "nec-400-5", cells::awg_18_up_nec_400_5,
     cells::nec_400_5},
    {nec, M::free_air, G::cord, 30.0, 60.0, "nec-400-5", cells::awg_18_up_nec_400_5,
     cells::nec_400_5},
    {iec, M::thermal_insulation, G::single, 30.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up,
     cells::iec_a1_70},
    {iec, M::thermal_insulation, G::cable, 30.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up,
     cells::iec_a2_70},
    {iec, M::raceway, G::single, 30.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_b1_70},
    {iec, M::raceway, G::cable, 30.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_b2_70},
    {iec, M::bundle, G::single, 30.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_c_70},
    {iec, M::earth, G::single, 20.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_d1_70},
    {iec, M::free_air, G::single, 30.0, 70.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_e_70},
    {iec, M::thermal_insulation, G::single, 30.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up,
     cells::iec_a1_90},
    {iec, M::thermal_insulation, G::cable, 30.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up,
     cells::iec_a2_90},
    {iec, M::raceway, G::single, 30.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_b1_90},
    {iec, M::raceway, G::cable, 30.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_b2_90},
    {iec, M::bundle, G::single, 30.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_c_90},
    {iec, M::earth, G::single, 20.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_d1_90},
    {iec, M::free_air, G::single, 30.0, 90.0, "iec-60364-5-52", cells::mm2_1_5_up, cells::iec_e_90},
    {iec, M::free_air, G::pv_cable, 60.0, 120.0, "en-50618", cells::mm2_1_5_up,
     cells::en_50618_single},
    {iec, M::bundle, G::pv_cable, 60.0, 120.0, "en-50618", cells::mm2_1_5_up, cells::en_50618_pair},
});

/// Sizes that differ by no more than rounding count as equal.
constexpr double same_size = 0.02;

double area_of(WiringCode code, double size) {
    return code == nec ? awg_area_mm2(size) : size;
}

std::optional<double> cell_of(const AmpacityColumn& column, double area_mm2) {
    std::optional<double> current_a;
    double nearest = 0.0;
    for (std::size_t i = 0; i < column.sizes.size(); ++i) {
        const double area = area_of(column.code, column.sizes[i]);
        if (area > area_mm2 * (1.0 + same_size) || area < nearest) continue;
        nearest = area;
        current_a = column.currents_a[i];
    }
    return current_a;
}

std::optional<TabulatedAmpacity> hottest(WiringCode code, LayingMethod method, AmpacityGroup group,
                                         double area_mm2, double rating_c) {
    std::optional<TabulatedAmpacity> found;
    for (const AmpacityColumn& column : columns) {
        if (column.code != code || column.method != method || column.group != group) continue;
        const bool stands = group == G::pv_cable || column.conductor_c <= rating_c;
        if (!stands || (found && found->conductor_c >= column.conductor_c)) continue;
        const std::optional<double> current_a = cell_of(column, area_mm2);
        if (!current_a) continue;
        found = TabulatedAmpacity{.current_a = *current_a,
                                  .ambient_c = column.ambient_c,
                                  .conductor_c = column.conductor_c,
                                  .source = column.source};
    }
    return found;
}

}  // namespace

std::span<const AmpacityColumn> ampacity_columns() {
    return columns;
}

std::optional<TabulatedAmpacity> tabulated_ampacity(WiringCode code, LayingMethod method,
                                                    AmpacityGroup group, double area_mm2,
                                                    double rating_c) {
    if (auto own = hottest(code, method, group, area_mm2, rating_c)) return own;
    if (group == G::cord && code == nec) return std::nullopt;
    if (group == G::cord && method != M::free_air && method != M::bundle) return std::nullopt;
    return hottest(code, method, G::single, area_mm2, rating_c);
}

std::optional<TabulatedAmpacity> coolest_ampacity(WiringCode code, LayingMethod method,
                                                  AmpacityGroup group, double area_mm2) {
    const auto coolest_of = [&](AmpacityGroup of) {
        std::optional<double> coolest_c;
        for (const AmpacityColumn& column : columns) {
            if (column.code != code || column.method != method || column.group != of) continue;
            if (!cell_of(column, area_mm2)) continue;
            coolest_c = std::min(coolest_c.value_or(column.conductor_c), column.conductor_c);
        }
        return coolest_c;
    };
    // Insulation with a lower limit uses the columns of single wires: their coolest counts as well.
    std::optional<TabulatedAmpacity> coolest;
    for (const AmpacityGroup of : {group, G::single}) {
        const auto coolest_c = coolest_of(of);
        if (coolest_c && (!coolest || *coolest_c < coolest->conductor_c))
            coolest = hottest(code, method, of, area_mm2, *coolest_c);
        const bool open = method == M::free_air || method == M::bundle;
        if (group == G::cord && (code == nec || !open)) break;
    }
    return coolest;
}

}  // namespace heatmatch
