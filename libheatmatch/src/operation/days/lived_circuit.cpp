#include "lived_circuit.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

constexpr double seconds_per_hour = 3600.0;

}  // namespace

LivedCircuit::LivedCircuit(const Candidate& candidate, const DayWeather& weather,
                           const DayOptions& options, std::size_t bank)
    : candidate_(&candidate),
      weather_(&weather),
      electrical_step_s_(options.electrical_step_s),
      bank_(bank),
      circuit_(candidate.circuit),
      tail_(tail_heat(candidate.circuit)) {
    const BankHeat& heat = *candidate.circuit.heat;
    const Store& store = heat.store->store;
    run_.title = candidate.circuit.title();
    run_.days = weather.hours() / hours_of_day;
    run_.first_hour = weather.first_hour;
    run_.bed_model = heat.liquid ? BedModel::water : BedModel::r_z_field;
    run_.remarks = weather.remarks;
    run_.assumed = weather.assumed;
    const auto add = [this](const std::vector<Assumption>& more) {
        run_.assumed.insert(run_.assumed.end(), more.begin(), more.end());
    };
    add(heat.assumed);
    const auto kinds = candidate.circuit.kinds_of_panels();
    const bool bifacial = std::any_of(kinds.begin(), kinds.end(), [](const PanelInService* panel) {
        return !panel->rear.none();
    });
    if (bifacial) add(weather.rear_assumed);
    if (tail_.known()) add(tail_.assumed);
    run_.heats_space = candidate.space && candidate.space->known() && !options.air_around_c;
    if (run_.heats_space) {
        add(candidate.space->assumed);
        run_.remarks.push_back(say<"days.space_alone">());
        if (!store.stands) {
            run_.assumed.push_back({"store", "stands", sentence_of(Name{"in space"}),
                                    sentence_of(Name{"class default"})});
        }
    } else if (!options.air_around_c) {
        run_.remarks.push_back(say<"days.space_not_known">());
    }
    if (store.moist.value_or(false) && !heat.liquid) {
        run_.remarks.push_back(say<"days.counts_as_dry">());
    }
    switches_ =
        DaySwitches(store_switches(candidate.circuit, run_.remarks, opening_site(candidate.site)),
                    options.switches);
}

void LivedCircuit::take_sun(std::size_t row) {
    if (row_taken_ && row == row_) return;
    row_ = row;
    row_taken_ = true;
    circuit_.set_sun(*weather_, row);
}

LivedCircuit::Electric LivedCircuit::electric(const StoreModel& store, double from_h,
                                              double step_h) {
    const double row_s = weather_->step_h * seconds_per_hour;
    const double longest_s = std::min(electrical_step_s_, row_s);
    const auto parts =
        std::max(1L, static_cast<long>(std::ceil(step_h * seconds_per_hour / longest_s - 1e-9)));
    const double share = 1.0 / static_cast<double>(parts);
    const bool open = switches_.open();
    const double heated_m = candidate_->circuit.heat->heated_length_m;
    const double sheath_c = store.sheath_c(bank_);
    circuit_.set_wire_current(current_a_);
    Electric sum;
    for (long part = 0; part < parts; ++part) {
        const double at_h = from_h + (static_cast<double>(part) + 0.5) * share * step_h;
        const auto row =
            std::min(weather_->size() - 1, static_cast<std::size_t>(at_h / weather_->step_h));
        take_sun(row);
        const double bare = weather_->bare_share[row];
        sum.irradiance_w_m2 += weather_->irradiance_w_m2[row] * share;
        sum.available_w += circuit_.maximum_power_w() * bare * share;
        Flow flow;
        if (!open) {
            circuit_.set_coil_c(sheath_c + coil_above_sheath_k(power_w_ / heated_m));
            flow = circuit_.flow();
        }
        power_w_ = flow.power_w * bare;
        current_a_ = flow.current_a;
        sum.power_w += power_w_ * share;
        sum.wire_w += flow.wire_w * bare * share;
        sum.voltage_v += flow.voltage_v * share;
        sum.current_a += flow.current_a * share;
    }
    return sum;
}

void LivedCircuit::record(const Electric& now, const StoreModel& store, double step_h) {
    run_.energy.available_kwh += now.available_w * step_h / 1000.0;
    run_.energy.delivered_kwh += now.power_w * step_h / 1000.0;
    run_.energy.wire_kwh += now.wire_w * step_h / 1000.0;
    DaySeries& series = run_.series;
    const double sheath_c = store.sheath_c(bank_);
    series.irradiance_w_m2.push_back(now.irradiance_w_m2);
    series.available_w.push_back(now.available_w);
    series.power_w.push_back(now.power_w);
    series.bank_v.push_back(now.voltage_v);
    series.bank_a.push_back(now.current_a);
    series.sheath_c.push_back(sheath_c);
    series.coil_c.push_back(
        sheath_c + coil_above_sheath_k(now.power_w / candidate_->circuit.heat->heated_length_m));
    if (tail_.known()) series.terminal_c.push_back(terminal_c(now, store));
}

double LivedCircuit::terminal_c(const Electric& now, const StoreModel& store) const {
    constexpr double hottest_c = 1500.0;
    HotTail hot = tail_.beside_wall(store.edge_c(), store.wall_c());
    hot.bed_c = std::min(hottest_c, store.near_leg_c(tail_.bed_distance_m, bank_));
    hot.sheath_c = std::clamp(store.sheath_c(bank_), hot.bed_c, hottest_c);
    hot.bed_conductivity_w_mk = store.conductivity_w_mk(hot.bed_c);
    hot.pin_a = now.current_a / candidate_->circuit.bank.hookup.parallel;
    hot.current_a = tail_.run.run.carries == Carried::branch ? *hot.pin_a : now.current_a;
    const auto& insulation = tail_.run.insulation;
    const TailTemperatures at =
        tail_temperatures(hot, *tail_.run.wire, insulation ? &*insulation : nullptr);
    return at.runaway ? hottest_c : at.terminal_c;
}

}  // namespace heatmatch
