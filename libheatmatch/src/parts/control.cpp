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

}  // namespace

std::span<const Field> control_fields() {
    static const std::vector<Field> fields = with_common_fields<Control>({
        bind<&Control::family>({.name = "family",
                                .kind = FieldKind::text,
                                .required = true,
                                .meaning = "what it is, for example isolator or thermostat"}),
        bind<&Control::dc_ratings>(
            {.name = "dc_ratings",
             .kind = FieldKind::rows,
             .meaning = "pairs of direct volts and amperes with the poles in series; none printed: "
                        "leave out",
             .columns = dc_rating_columns}),
        bind<&Control::ac_only>({.name = "ac_only",
                                 .kind = FieldKind::flag,
                                 .meaning = "marked for alternating current only"}),
        bind<&Control::v_ac>({.name = "v_ac",
                              .kind = FieldKind::number,
                              .unit = unit::volt,
                              .range = {.low = 1.0, .high = 1500.0},
                              .meaning = "alternating voltage"}),
        bind<&Control::a_ac>({.name = "a_ac",
                              .kind = FieldKind::number,
                              .unit = unit::ampere,
                              .range = {.low = 0.01, .high = 2000.0},
                              .meaning = "alternating current at v_ac"}),
        bind<&Control::polarised>(
            {.name = "polarised",
             .kind = FieldKind::flag,
             .meaning = "breaks current in one direction only; unknown counts as yes"}),
        bind<&Control::utilisation_mark>({.name = "utilisation_mark",
                                          .kind = FieldKind::text,
                                          .meaning = "utilisation category, for example DC-PV2"}),
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
        bind<&Control::differential_k>({.name = "differential_k",
                                        .kind = FieldKind::number,
                                        .unit = unit::kelvin,
                                        .range = {.low = 0.0, .high = 100.0},
                                        .meaning = "between opening and closing"}),
        bind<&Control::reset>(
            {.name = "reset", .kind = FieldKind::choice, .meaning = "how it closes again"}),
        bind<&Control::failure>({.name = "failure",
                                 .kind = FieldKind::choice,
                                 .meaning = "the state it usually fails in"}),
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
}

bool stays_open(const Control& control) {
    return control.reset == ResetKind::manual || control.reset == ResetKind::latching ||
           control.reset == ResetKind::replace;
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
