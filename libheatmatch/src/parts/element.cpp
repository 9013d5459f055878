#include "heatmatch/parts/element.hpp"

#include "common_fields.hpp"

#include <cmath>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

constexpr Range ohms{.low = 0.001, .high = 1e6};
constexpr Range tolerance{.low = 0.0, .high = 60.0};

}  // namespace

std::span<const Field> element_fields() {
    static const std::vector<Field> fields = with_common_fields<Element>({
        bind<&Element::family>({.name = "family",
                                .kind = FieldKind::text,
                                .required = true,
                                .meaning = "intended use, for example oven lower"}),
        bind<&Element::rated_v>({.name = "rated_v",
                                 .kind = FieldKind::number,
                                 .unit = unit::volt,
                                 .range = {.low = 1.0, .high = 1000.0},
                                 .meaning = "rated voltage"}),
        bind<&Element::rated_w>({.name = "rated_w",
                                 .kind = FieldKind::number,
                                 .unit = unit::watt,
                                 .range = {.low = 0.1, .high = 50000.0},
                                 .meaning = "power at rated voltage"}),
        bind<&Element::resistance_ohm>({.name = "resistance_ohm",
                                        .kind = FieldKind::number,
                                        .unit = unit::ohm,
                                        .range = ohms,
                                        .meaning = "printed resistance, cold"}),
        bind<&Element::measured_resistance_ohm>(
            {.name = "measured_resistance_ohm",
             .kind = FieldKind::number,
             .unit = unit::ohm,
             .range = ohms,
             .meaning =
                 "resistance measured by the owner, cold, leads subtracted; overrides the others"}),
        bind<&Element::power_tolerance_plus_pct>(
            {.name = "power_tolerance_plus_pct",
             .kind = FieldKind::number,
             .unit = unit::percent,
             .range = tolerance,
             .meaning = "tolerance of power above its rating"}),
        bind<&Element::power_tolerance_minus_pct>(
            {.name = "power_tolerance_minus_pct",
             .kind = FieldKind::number,
             .unit = unit::percent,
             .range = tolerance,
             .meaning = "tolerance of power below its rating"}),
        bind<&Element::alloy>({.name = "alloy",
                               .kind = FieldKind::reference,
                               .meaning = "metal of the coil",
                               .refers_to = "alloy"}),
        bind<&Element::sheath>({.name = "sheath",
                                .kind = FieldKind::reference,
                                .meaning = "outer tube or body",
                                .refers_to = "sheath"}),
        bind<&Element::sheath_diameter_mm>(
            {.name = "sheath_diameter_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 0.3, .high = 200.0},
             .meaning = "diameter of the sheath, or of a circle of equal perimeter"}),
        bind<&Element::heated_length_mm>(
            {.name = "heated_length_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 5.0, .high = 200000.0},
             .meaning = "heated length of the whole element: all its legs together"}),
        bind<&Element::legs>(
            {.name = "legs",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 1, .high = 60},
             .meaning = "number of legs side by side into which the element is bent"}),
        bind<&Element::leg_spacing_mm>({.name = "leg_spacing_mm",
                                        .kind = FieldKind::number,
                                        .unit = unit::millimetre,
                                        .range = {.low = 1.0, .high = 2000.0},
                                        .meaning = "distance between neighboring legs"}),
        bind<&Element::cold_length_mm>({.name = "cold_length_mm",
                                        .kind = FieldKind::number,
                                        .unit = unit::millimetre,
                                        .range = {.low = 0.0, .high = 5000.0},
                                        .meaning = "unheated length at each end"}),
        bind<&Element::terminal>({.name = "terminal",
                                  .kind = FieldKind::text,
                                  .meaning = "kind of terminal, for example 6.3 mm tabs"}),
        bind<&Element::terminal_limit_c>({.name = "terminal_limit_c",
                                          .kind = FieldKind::number,
                                          .unit = unit::celsius,
                                          .range = {.low = 40.0, .high = 1000.0},
                                          .meaning = "highest temperature of the terminal"}),
        bind<&Element::intended_medium>({.name = "intended_medium",
                                         .kind = FieldKind::text,
                                         .meaning = "medium for which it was made"}),
        bind<&Element::insulation_resistance_mohm>(
            {.name = "insulation_resistance_mohm",
             .kind = FieldKind::number,
             .unit = unit::megohm,
             .range = {.low = 0.0, .high = 1e6},
             .meaning = "insulation resistance of coil to sheath with 500 V, measured cold before "
                        "burying"}),
        bind<&Element::built_in_ac_control>({.name = "built_in_ac_control",
                                             .kind = FieldKind::flag,
                                             .meaning = "an AC thermostat or cut-out is built in"}),
        bind<&Element::rated_dc>(
            {.name = "rated_dc",
             .kind = FieldKind::flag,
             .meaning = "its rated voltage is DC: its insulation is not made for the peak of an AC "
                        "voltage",
             .careful = true,
             .careful_source = "from-memory"}),
    });
    return fields;
}

std::optional<double> Element::watt_density_w_cm2() const {
    if (!rated_w || !sheath_diameter_mm || !heated_length_mm) return std::nullopt;
    return *rated_w / (pi * *sheath_diameter_mm * *heated_length_mm / 100.0);
}

bool is_made_for_liquid(const Element& element) {
    const auto holds = [](const std::string& text, std::string_view word) {
        return text.find(word) != std::string::npos;
    };
    if (holds(element.family, "immersion") || holds(element.family, "screw-in")) return true;
    const std::string& medium = element.intended_medium;
    return medium.starts_with("water") || medium.starts_with("oil") || holds(medium, "liquid");
}

void check_element(const Element& element) {
    const std::string title = "element \"" + element.id + '"';
    const bool has_rating = element.rated_v && element.rated_w;
    if (!element.measured_resistance_ohm && !element.resistance_ohm && !has_rating) {
        refuse_part(title, "measured_resistance_ohm", "(missing)", "given",
                    parts_sentences::say<"parts.give_ohms">());
    }
    if (!has_rating) return;
    const double by_rating = *element.rated_v * *element.rated_v / *element.rated_w;
    const auto check = [&](const std::optional<double>& given, const char* field) {
        // Lamps and PTC elements differ widely when cold: their alloy states that, and their
        // resistance is kept.
        constexpr double largest_share = 0.25;
        if (!given || !element.alloy.empty()) return;
        if (std::fabs(*given / by_rating - 1.0) <= largest_share) return;
        refuse_part(title, field, format_quantity(*given, unit::ohm, UnitSystem::si, 6),
                    "within 25% of rated_v² / rated_w = " +
                        format_quantity(by_rating, unit::ohm, UnitSystem::si, 6),
                    parts_sentences::say<"parts.measure_ohms">());
    };
    check(element.resistance_ohm, "resistance_ohm");
    check(element.measured_resistance_ohm, "measured_resistance_ohm");
}

}  // namespace heatmatch
