#include "heatmatch/solar/panel_in_service.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/mixed_array.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double loss_per_year = 0.005;
constexpr double loss_per_year_low = 0.001;
constexpr double loss_per_year_high = 0.009;
constexpr double default_tolerance_pct = 3.0;
constexpr double measured_spread = 0.03;  // clamp meter and irradiance of the reading

void apply_age(PanelInService& service, double age_years) {
    service.current_factor = 1.0 - loss_per_year * age_years;
    service.current_factor_low = 1.0 - loss_per_year_high * age_years;
    service.current_factor_high = 1.0 - loss_per_year_low * age_years;
}

void apply_tolerance(PanelInService& service) {
    const auto& given = service.panel.power_tolerance_pct;
    const double tolerance = given.value_or(default_tolerance_pct) / 100.0;
    service.current_factor_low *= 1.0 - tolerance;
    service.current_factor_high *= 1.0 + tolerance;
    if (given) return;
    service.assumed.push_back({.part = "panel \"" + service.panel.id + '"',
                               .field = "power_tolerance_pct",
                               .value = sentence_of(Amount{default_tolerance_pct, unit::percent}),
                               .source = sentence_of(Name{"common-practice"})});
}

/// @cite upm-structure-shading the low end; the high end is ours, from memory.
RearShare rear_share(const Panel& panel, const OwnedPanels& owned) {
    constexpr double least = 0.7;
    constexpr double most = 1.3;
    const double share = panel.bifaciality.value_or(0.0);
    if (share <= 0.0 || owned.rear_blocked.value_or(false)) return {};
    return {
        .low = owned.rear_blocked ? least * share : 0.0, .typical = share, .high = most * share};
}

/// A meter on a panel includes the current from rear light: at the nameplate irradiance.
double light_behind_a_reading(PanelInService& service) {
    if (service.rear.none()) return 1.0;
    service.assumed.push_back(
        {.part = "panel \"" + service.panel.id + '"',
         .field = "light behind it while measuring",
         .value = say<"solar.light_behind">(with<"rear">(nameplate_rear_w_m2, unit::watt_per_m2),
                                            with<"front">(stc_irradiance_w_m2, unit::watt_per_m2)),
         .source = sentence_of(Name{"iec-61215-1"})});
    return 1.0 + service.rear.typical * nameplate_rear_w_m2 / stc_irradiance_w_m2;
}

/// Currents and voltages scale separately: each factor is measured over modeled at the same
/// irradiance.
void apply_measurement(PanelInService& service, const PanelMeasurement& measured) {
    const double sun = measured.irradiance_w_m2 * light_behind_a_reading(service);
    const DiodeCurve then = service.as_new.at(sun, measured.cell_temperature_c);
    if (measured.i_sc) {
        service.current_factor = *measured.i_sc / then.short_circuit_current_a();
        service.current_factor_low = service.current_factor * (1.0 - measured_spread);
        service.current_factor_high = service.current_factor * (1.0 + measured_spread);
        service.assumed.push_back(
            {.part = "panel \"" + service.panel.id + '"',
             .field = "spread of the reading",
             .value = sentence_of(Amount{100.0 * measured_spread, unit::percent}),
             .source = say<"solar.two_meters">()});
    }
    if (measured.v_oc) service.voltage_factor = *measured.v_oc / then.open_circuit_voltage_v();
    service.measured = true;
    constexpr double noticeable = 0.1;
    const auto name = with<"panel">(service.panel.id);
    const auto share = [](double factor) { return with<"share">(100.0 * factor, unit::percent); };
    if (std::fabs(service.voltage_factor - 1.0) > noticeable) {
        service.remarks.push_back(say<"solar.measured_volts">(name, share(service.voltage_factor)));
    }
    if (std::fabs(service.current_factor - 1.0) > 2.0 * noticeable) {
        service.remarks.push_back(
            say<"solar.measured_amperes">(name, share(service.current_factor)));
    }
}

}  // namespace

PanelInService PanelInService::at_careful_end() const {
    PanelInService careful = *this;
    if (!careful.panel.bifaciality) careful.panel.bifaciality = careful_bifaciality;
    return careful;
}

PanelInService panel_in_service(const OwnedPanels& owned, const Panel& of_kind,
                                double record_low_c) {
    Panel panel = of_kind;
    if (owned.bypass_diodes) panel.bypass_diodes = owned.bypass_diodes;
    PanelInService service{.given = panel, .record_low_c = record_low_c};
    const FilledPanel filled = fill_class_defaults(panel);
    service.panel = filled.panel;
    service.as_new = fit_single_diode(panel);
    service.assumed = filled.assumed;
    fill_bifaciality(service.panel, owned.age_years, service.assumed);
    service.rear = rear_share(service.panel, owned);
    service.rear_blocked = owned.rear_blocked.value_or(false);
    if (!service.rear.none() && !owned.rear_blocked) {
        service.assumed.push_back({.part = "panels \"" + owned.group + '"',
                                   .field = "rear_blocked",
                                   .value = say<"solar.back_is_free">(),
                                   .source = say<"solar.class_default">()});
    }
    service.blocking = owned.blocking.value_or(false);
    if (owned.shaded_substrings) {
        service.shaded_substrings = *owned.shaded_substrings;
        if (!panel.bypass_diodes) {
            service.assumed.push_back({.part = "panel \"" + panel.id + '"',
                                       .field = "bypass_diodes",
                                       .value = say<"solar.number">(with<"number">(
                                           static_cast<double>(bypass_diodes_of(panel)))),
                                       .source = say<"solar.common_practice">()});
        }
    }
    const bool has_current = owned.measured && owned.measured->i_sc;
    if (!has_current) {
        if (owned.age_years) apply_age(service, *owned.age_years);
        apply_tolerance(service);
    }
    if (owned.measured) apply_measurement(service, *owned.measured);
    service.today = service.as_new.scaled(service.current_factor, service.voltage_factor);

    service.cold = cold_voltage(panel, record_low_c, panel.v_oc * service.voltage_factor);
    service.i_sc_limit_a = panel.i_sc * std::max(1.0, has_current ? service.current_factor : 1.0);
    return service;
}

}  // namespace heatmatch
