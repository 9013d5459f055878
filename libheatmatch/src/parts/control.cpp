#include "heatmatch/parts/control.hpp"

#include "base/sentences.hpp"
#include "common_fields.hpp"

#include <algorithm>

namespace heatmatch {

template <>
struct RowShape<DcRating> {
    static std::vector<double> to_row(const DcRating& rating) {
        return {rating.v_dc, rating.a_dc, static_cast<double>(rating.poles)};
    }
    static DcRating from_row(const std::vector<double>& row) {
        return {.v_dc = row.at(0), .a_dc = row.at(1), .poles = static_cast<int>(row.at(2))};
    }
};

namespace {

constexpr auto dc_rating_columns = std::to_array<Column>({
    {"v_dc", unit::volt, {0.0, 3000.0, true}, "direct voltage"},
    {"a_dc", unit::ampere, {0.0, 2000.0, true}, "current it breaks at that voltage"},
    {"poles", unit::count, {1.0, 8.0}, "poles wired in series for that pair"},
});

/// Properties of families of controls; common practice, no source.
struct FamilyFacts {
    std::string_view family{};
    OperatedKind operated = OperatedKind::by_hand;
    bool semiconductor = false;
};
constexpr auto families = std::to_array<FamilyFacts>({
    {"isolator", OperatedKind::by_hand},
    {"switch-disconnector", OperatedKind::by_hand},
    {"switch-disconnector with fuses", OperatedKind::by_hand},
    {"breaker", OperatedKind::by_hand},
    {"switch", OperatedKind::by_hand},
    {"shorting switch", OperatedKind::by_hand},
    {"fuse", OperatedKind::by_current},
    {"contactor", OperatedKind::by_coil},
    {"relay", OperatedKind::by_coil},
    {"solid-state relay", OperatedKind::by_signal, true},
    {"snap disc", OperatedKind::by_temperature},
    {"surface thermostat", OperatedKind::by_temperature},
    {"capillary thermostat", OperatedKind::by_temperature},
    {"thermal link", OperatedKind::by_temperature},
    {"temperature switch", OperatedKind::by_temperature},
    {"limit controller", OperatedKind::by_temperature},
    {"thermostat", OperatedKind::by_temperature},
    {"limit switch", OperatedKind::by_signal},
    {"earth-fault indicator", OperatedKind::by_signal},
    {"insulation monitor", OperatedKind::by_signal},
    {"earth-fault fuse", OperatedKind::by_current},
    {"meter", OperatedKind::by_signal},
    {"surge protector", OperatedKind::by_current},
});

const FamilyFacts* facts_of(const Control& control) {
    const auto found = std::find_if(
        families.begin(), families.end(),
        [&control](const FamilyFacts& facts) { return facts.family == control.family; });
    return found == families.end() ? nullptr : &*found;
}

}  // namespace

std::span<const Field> control_fields() {
    static const std::vector<Field> fields = with_common_fields<Control>({
        bind<&Control::family>({.name = "family",
                                .kind = FieldKind::text,
                                .required = true,
                                .meaning = "kind of control, for example isolator or thermostat"}),
        bind<&Control::dc_ratings>(
            {.name = "dc_ratings",
             .kind = FieldKind::rows,
             .meaning =
                 "printed pairs of DC voltage and current with the poles in series; omit if none"
                 " is printed",
             .columns = dc_rating_columns}),
        bind<&Control::ac_only>(
            {.name = "ac_only", .kind = FieldKind::flag, .meaning = "it is marked for AC only"}),
        bind<&Control::v_ac>({.name = "v_ac",
                              .kind = FieldKind::number,
                              .unit = unit::volt,
                              .range = {.low = 1.0, .high = 1500.0},
                              .meaning = "rated AC voltage"}),
        bind<&Control::a_ac>({.name = "a_ac",
                              .kind = FieldKind::number,
                              .unit = unit::ampere,
                              .range = {.low = 0.01, .high = 2000.0},
                              .meaning = "rated AC current at v_ac"}),
        bind<&Control::polarised>(
            {.name = "polarised",
             .kind = FieldKind::flag,
             .meaning = "it interrupts current in one direction only; unknown counts as yes",
             .careful = true,
             .careful_source = "dc-breaker-polarity"}),
        bind<&Control::utilisation_mark>({.name = "utilisation_mark",
                                          .kind = FieldKind::text,
                                          .meaning = "utilization category, for example DC-PV2"}),
        bind<&Control::own_limit_c>({.name = "own_limit_c",
                                     .kind = FieldKind::number,
                                     .unit = unit::celsius,
                                     .range = {.low = 20.0, .high = 600.0},
                                     .meaning = "highest temperature of its own body"}),
        bind<&Control::sense_low_c>({.name = "sense_low_c",
                                     .kind = FieldKind::number,
                                     .unit = unit::celsius,
                                     .range = {.low = -100.0, .high = 2000.0},
                                     .meaning = "lowest set point"}),
        bind<&Control::sense_high_c>({.name = "sense_high_c",
                                      .kind = FieldKind::number,
                                      .unit = unit::celsius,
                                      .range = {.low = -100.0, .high = 2000.0},
                                      .meaning = "highest set point"}),
        bind<&Control::differential_k>(
            {.name = "differential_k",
             .kind = FieldKind::number,
             .unit = unit::kelvin,
             .range = {.low = 0.0, .high = 100.0},
             .meaning = "difference between opening and closing temperature"}),
        bind<&Control::reset>({.name = "reset",
                               .kind = FieldKind::choice,
                               .meaning = "way in which it closes again"}),
        bind<&Control::failure>({.name = "failure",
                                 .kind = FieldKind::choice,
                                 .meaning = "state in which it usually fails"}),
        bind<&Control::poles>(
            {.name = "poles",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 1, .high = 8},
             .meaning = "poles that open together; unless stated, those of the printed pairs"}),
        bind<&Control::operated>(
            {.name = "operated",
             .kind = FieldKind::choice,
             .meaning = "way in which it opens; if not stated, that of its family"}),
        bind<&Control::contains_fuses>(
            {.name = "contains_fuses",
             .kind = FieldKind::flag,
             .meaning = "it is a switch with fuses inside, not a bare fuse holder"}),
        bind<&Control::detects>(
            {.name = "detects", .kind = FieldKind::choice, .meaning = "fault that it detects"}),
        bind<&Control::terminal_limit_c>({.name = "terminal_limit_c",
                                          .kind = FieldKind::number,
                                          .unit = unit::celsius,
                                          .range = {.low = 20.0, .high = 600.0},
                                          .meaning = "highest temperature of its terminals; "
                                                     "unstated counts as 60 °C"}),
        bind<&Control::semiconductor>(
            {.name = "semiconductor",
             .kind = FieldKind::flag,
             .meaning =
                 "it switches with a semiconductor, which fails shorted; unless stated, as its "
                 "family"}),
    });
    return fields;
}

void check_control(const Control& control) {
    const std::string title = "control \"" + control.id + '"';
    if (control.ac_only.value_or(false) && !control.dc_ratings.empty()) {
        refuse_part(title, "ac_only", "yes", "no where dc_ratings are given",
                    parts_sentences::say<"parts.keep_printed">());
    }
    if (control.sense_low_c && control.sense_high_c &&
        *control.sense_low_c > *control.sense_high_c) {
        refuse_part(title, "sense_low_c", format_number(*control.sense_low_c) + " °C",
                    "<= sense_high_c = " + format_number(*control.sense_high_c) + " °C",
                    base_sentences::say<"base.exchange">());
    }
    for (const DcRating& rating : control.dc_ratings) {
        if (!control.poles || rating.poles <= *control.poles) continue;
        refuse_part(title, "poles", std::to_string(*control.poles),
                    ">= " + std::to_string(rating.poles) + ", the poles of a pair in dc_ratings",
                    parts_sentences::say<"parts.count_poles">());
    }
}

bool stays_open(const Control& control) {
    return control.reset == ResetKind::manual || control.reset == ResetKind::latching ||
           control.reset == ResetKind::replace;
}

std::optional<OperatedKind> operated_of(const Control& control) {
    if (control.operated) return control.operated;
    if (const FamilyFacts* facts = facts_of(control)) return facts->operated;
    if (control.sense_high_c) return OperatedKind::by_temperature;
    if (control.reset == ResetKind::by_hand) return OperatedKind::by_hand;
    return std::nullopt;
}

std::optional<bool> is_semiconductor(const Control& control) {
    if (control.semiconductor) return control.semiconductor;
    if (const FamilyFacts* facts = facts_of(control)) return facts->semiconductor;
    return std::nullopt;
}

bool is_fuse(const Control& control) {
    const auto named = [&control](std::string_view word) {
        return control.family.find(word) != std::string::npos;
    };
    if (named("switch") || named("isolator") || named("breaker")) return false;
    const bool switches = operated_of(control) == OperatedKind::by_hand;
    const bool holds_fuses = control.contains_fuses.value_or(false);
    if (named("fuse")) return !(control.operated == OperatedKind::by_hand && holds_fuses);
    return holds_fuses && !switches;
}

bool protects_strings(const Control& control) {
    // A fuse to earth and a surge protector also open by current, but do not protect a string.
    constexpr auto others =
        std::to_array<std::string_view>({"earth-fault fuse", "surge protector"});
    if (control.detects || std::find(others.begin(), others.end(), control.family) != others.end())
        return false;
    return is_fuse(control) || control.contains_fuses.value_or(false) ||
           control.family == "breaker" || operated_of(control) == OperatedKind::by_current;
}

std::optional<int> poles_of(const Control& control) {
    std::optional<int> most = control.poles;
    for (const DcRating& rating : control.dc_ratings) {
        most = std::max(most.value_or(1), rating.poles);
    }
    return most;
}

std::optional<double> breaking_current_a(const Control& control, double voltage_v, int poles) {
    std::optional<double> largest;
    for (const DcRating& rating : control.dc_ratings) {
        if (rating.v_dc < voltage_v || rating.poles > poles) continue;
        largest = std::max(largest.value_or(0.0), rating.a_dc);
    }
    return largest;
}

}  // namespace heatmatch
