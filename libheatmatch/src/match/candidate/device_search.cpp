#include "device_search.hpp"

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

bool is_commanded(const Control& control) {
    const auto operated = operated_of(control);
    return operated == OperatedKind::by_coil || operated == OperatedKind::by_signal;
}

bool in_range(const Control& control, const std::optional<double>& set_c) {
    if (!set_c) return true;
    return *set_c <= *control.sense_high_c && *set_c >= control.sense_low_c.value_or(*set_c);
}

DeviceSearch::DeviceSearch(const Circuit& circuit, const Site& site, const Parts& catalog,
                           std::string_view currency)
    : circuit_(circuit), at_(opening_site(site)), by_hand_(at_), currency_(currency) {
    circuit_.heat.reset();
    by_hand_.floating = at_.floating || site.code != WiringCode::nec;
    by_price_.reserve(catalog.controls.size());
    for (const Control& control : catalog.controls) by_price_.push_back(&control);
    std::stable_sort(
        by_price_.begin(), by_price_.end(),
        [this](const Control* a, const Control* b) { return price_of(a) < price_of(b); });
    for (const RunParts& parts : circuit_.runs) {
        if (circuit_.current_share(parts.run) >= 1.0) whole_.push_back(parts.run.name);
    }
    if (!whole_.empty()) return;
    whole_.emplace_back("(new run)");
    circuit_.runs.push_back({.run = {.name = whole_.front()}});
}

double DeviceSearch::price_of(const Control* control) const {
    if (control == nullptr) return no_price;
    const Price& price = control->price;
    const bool other = !currency_.empty() && !price.currency.empty() && price.currency != currency_;
    return other ? no_price : price.typical().value_or(no_price);
}

PlacedDevice DeviceSearch::in_run(const Control& control, const std::string& run) {
    return {.device = {.part = control.id,
                       .run = run,
                       .duty = Duty::breaks_dc,
                       .poles_used = poles_of(control).value_or(1)},
            .control = control};
}

Answer DeviceSearch::driven(std::vector<std::string> ids, Occasion occasion) const {
    constexpr double anything_c = 100.0;
    // Its reset makes it a limit; a thermostat needs none.
    const PlacedDevice sensor{
        .device = {.duty = Duty::senses_only, .set_c = anything_c, .drives = std::move(ids)},
        .control = {.sense_high_c = anything_c, .reset = ResetKind::manual}};
    return opens(circuit_, sensor, occasion, at_).answer;
}

std::optional<PlacedDevice> DeviceSearch::breaker(const Control& control, Occasion occasion) {
    if (!is_commanded(control)) return std::nullopt;
    std::optional<PlacedDevice> found;
    for (std::size_t i = 0; i < whole_.size() && !found; ++i) {
        if (!withstands(control, whole_[i])) continue;
        add(in_run(control, whole_[i]));
        if (driven({control.id}, occasion) == Answer::yes) found = circuit_.devices.back();
        circuit_.devices.pop_back();
    }
    return found;
}

std::vector<std::string> DeviceSearch::breakers() const {
    std::vector<std::string> ids;
    for (const PlacedDevice& placed : circuit_.devices) {
        if (placed.device.duty == Duty::breaks_dc) ids.push_back(placed.control.id);
    }
    return ids;
}

bool DeviceSearch::can_act(const PlacedDevice& sensor) const {
    if (!in_range(sensor.control, sensor.device.set_c)) return false;
    if (sensor.device.duty != Duty::breaks_dc) return true;
    PlacedDevice set = sensor;
    set.device.set_c = sensor.device.set_c.value_or(*sensor.control.sense_high_c);
    const Occasion occasion = is_limit(sensor) ? Occasion::limit : Occasion::thermostat;
    return opens(circuit_, set, occasion, at_).answer != Answer::no;
}

Amount DeviceSearch::volts() const {
    return {.value = circuit_.cold_voltage_v(), .unit = unit::volt};
}

Amount DeviceSearch::amperes() const {
    return {.value = lasting_current_a(circuit_.short_circuit_current_a(), at_.irradiance_w_m2),
            .unit = unit::ampere};
}

bool DeviceSearch::withstands(const Control& control, const std::string& run) const {
    for (const RunParts& parts : circuit_.runs) {
        if (parts.run.name != run) continue;
        const auto& air_c = parts.run.surroundings.air_c;
        return !air_c || !control.own_limit_c || *air_c <= *control.own_limit_c;
    }
    return true;
}

}  // namespace heatmatch
