#include "heatmatch/parts/wire.hpp"

#include "base/sentences.hpp"
#include "common_fields.hpp"

#include <cmath>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

using parts_sentences::say;

namespace {

constexpr double rho_copper = 1.0 / 58.0;  // ohm mm2/m at 20 °C, IEC 60028

struct Metal {
    double rho20 = rho_copper;  // ohm mm2/m
    double alpha = 0.00393;     // 1/K
};

Metal metal_of(std::optional<ConductorMetal> metal) {
    if (metal == ConductorMetal::nickel_clad_copper) return {.rho20 = 1.4 * rho_copper};
    if (metal == ConductorMetal::nickel) return {.rho20 = 0.090, .alpha = 0.0061};
    if (metal == ConductorMetal::aluminium) return {.rho20 = 0.028264, .alpha = 0.00403};
    return {};
}

bool is_stranded(const Wire& wire) {
    return wire.strands.value_or(1) > 1;
}

}  // namespace

std::span<const Field> wire_fields() {
    static const std::vector<Field> fields = with_common_fields<Wire>({
        bind<&Wire::marking>(
            {.name = "marking", .kind = FieldKind::text, .meaning = "type letters on the jacket"}),
        bind<&Wire::conductor>({.name = "conductor",
                                .kind = FieldKind::choice,
                                .required = true,
                                .meaning = "metal of the conductor"}),
        bind<&Wire::plating>({.name = "plating",
                              .kind = FieldKind::choice,
                              .required = true,
                              .meaning = "plating of the strands; limits their temperature"}),
        bind<&Wire::area_mm2>({.name = "area_mm2",
                               .kind = FieldKind::number,
                               .unit = unit::square_millimetre,
                               .range = {.low = 0.01, .high = 500.0},
                               .required = true,
                               .meaning = "cross-section of metal, for example \"14 AWG\""}),
        bind<&Wire::strands>({.name = "strands",
                              .kind = FieldKind::count,
                              .unit = unit::count,
                              .range = {.low = 1, .high = 10000},
                              .meaning = "number of strands"}),
        bind<&Wire::resistance_ohm_per_km>(
            {.name = "resistance_ohm_per_km",
             .kind = FieldKind::number,
             .unit = unit::ohm_per_km,
             .range = {.low = 0.01, .high = 1e5},
             .meaning =
                 "resistance at 20 °C, printed or from a standard's table; otherwise computed"}),
        bind<&Wire::insulation>({.name = "insulation",
                                 .kind = FieldKind::reference,
                                 .required = true,
                                 .meaning = "insulation that covers it",
                                 .refers_to = "insulation"}),
        bind<&Wire::outer_diameter_mm>({.name = "outer_diameter_mm",
                                        .kind = FieldKind::number,
                                        .unit = unit::millimetre,
                                        .range = {.low = 0.2, .high = 60.0},
                                        .meaning = "diameter over the insulation"}),
        bind<&Wire::voltage_rating_v>({.name = "voltage_rating_v",
                                       .kind = FieldKind::number,
                                       .unit = unit::volt,
                                       .range = {.low = 1.0, .high = 50000.0},
                                       .meaning = "rated voltage"}),
        bind<&Wire::sunlight_resistant>({.name = "sunlight_resistant",
                                         .kind = FieldKind::flag,
                                         .meaning = "it is marked for sunlight"}),
        bind<&Wire::direct_burial>({.name = "direct_burial",
                                    .kind = FieldKind::flag,
                                    .meaning = "it is marked for direct burial in soil"}),
        bind<&Wire::ampacity_a>({.name = "ampacity_a",
                                 .kind = FieldKind::number,
                                 .unit = unit::ampere,
                                 .range = {.low = 0.1, .high = 2000.0},
                                 .meaning = "ampacity in the code's table, before correction"}),
        bind<&Wire::ampacity_ambient_c>({.name = "ampacity_ambient_c",
                                         .kind = FieldKind::number,
                                         .unit = unit::celsius,
                                         .range = {.low = 0.0, .high = 100.0},
                                         .meaning = "ambient temperature of the ampacity table"}),
        bind<&Wire::ampacity_conductor_c>(
            {.name = "ampacity_conductor_c",
             .kind = FieldKind::number,
             .unit = unit::celsius,
             .range = {.low = 40.0, .high = 1200.0},
             .meaning = "conductor temperature of the ampacity column"}),
        bind<&Wire::ampacity_method>({.name = "ampacity_method",
                                      .kind = FieldKind::choice,
                                      .meaning = "installation method for which the ampacity is "
                                                 "valid; if not stated, it gives warnings only"}),
        bind<&Wire::ampacity_source>({.name = "ampacity_source",
                                      .kind = FieldKind::text,
                                      .meaning = "table and column of the ampacity"}),
    });
    return fields;
}

void check_wire(const Wire& wire) {
    const std::string title = "wire \"" + wire.id + '"';
    const bool own_surface = wire.conductor && wire.conductor != ConductorMetal::copper;
    if (own_surface && wire.plating != Plating::bare) {
        refuse_part(title, "plating", text_of_choice(wire.plating),
                    "bare for " + text_of_choice(wire.conductor), say<"parts.own_surface">());
    }
    const bool complete = wire.ampacity_ambient_c && wire.ampacity_conductor_c;
    if (wire.ampacity_a && !complete) {
        refuse_part(title, "ampacity_a", format_number(*wire.ampacity_a) + " A",
                    "given together with ampacity_ambient_c and ampacity_conductor_c",
                    say<"parts.name_temperatures">());
    }
    if (complete && *wire.ampacity_conductor_c <= *wire.ampacity_ambient_c) {
        refuse_part(title, "ampacity_conductor_c",
                    format_number(*wire.ampacity_conductor_c) + " °C",
                    "above ampacity_ambient_c = " + format_number(*wire.ampacity_ambient_c) + " °C",
                    base_sentences::say<"base.exchanged">());
    }
}

double resistance_ohm_per_m(const Wire& wire, double temperature_c) {
    const Metal metal = metal_of(wire.conductor);
    const double lay = is_stranded(wire) ? 1.02 : 1.0;
    const double at_20_c = wire.resistance_ohm_per_km ? *wire.resistance_ohm_per_km / 1000.0
                                                      : metal.rho20 * lay / wire.area_mm2;
    return at_20_c * (1.0 + metal.alpha * (temperature_c - 20.0));
}

double conductor_limit_c(const Wire& wire) {
    const bool nickel_skin = wire.conductor == ConductorMetal::nickel_clad_copper ||
                             wire.conductor == ConductorMetal::nickel;
    if (nickel_skin) return 450.0;
    if (wire.conductor == ConductorMetal::aluminium) return 90.0;
    if (wire.plating == Plating::silver) return 200.0;
    if (wire.plating == Plating::nickel) return 260.0;
    return 150.0;
}

double conductor_diameter_mm(const Wire& wire) {
    const double fill = is_stranded(wire) ? 0.75 : 1.0;
    return std::sqrt(4.0 * wire.area_mm2 / (pi * fill));
}

}  // namespace heatmatch
