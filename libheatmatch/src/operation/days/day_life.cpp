#include "day_life.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/margins/margin.hpp"
#include "heatmatch/solar/cell_temperature.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

constexpr double seconds_of_hour = 3600.0;

double first_air_c(const DayWeather& weather, const DayOptions& options) {
    return options.air_around_c.value_or(weather.air_c.front());
}

bool within(const HeatExtraction& take, double hour) {
    if (take.from_hour <= take.until_hour) return hour >= take.from_hour && hour < take.until_hour;
    return hour >= take.from_hour || hour < take.until_hour;
}

}  // namespace

DayLife::DayLife(const Candidate& candidate, const DayWeather& weather, const DayOptions& options)
    : candidate_(&candidate),
      weather_(&weather),
      options_(options),
      noct_c_(candidate.circuit.panel.panel.noct_c.value_or(usual_noct_c)),
      circuit_(candidate.circuit),
      store_(*candidate.circuit.heat, options.conductivity, first_air_c(weather, options),
             options.start_c.value_or(first_air_c(weather, options))),
      tail_(tail_heat(candidate.circuit)) {
    const Store& store = candidate.circuit.heat->store->store;
    outdoors_ = store.stands == StorePlace::outside;
    run_.title = candidate.circuit.title();
    run_.days = weather.hours() / hours_of_day;
    run_.first_hour = weather.first_hour;
    run_.bed_model = store_.liquid() ? BedModel::water : BedModel::r_z_field;
    run_.remarks = weather.remarks;
    run_.assumed = weather.assumed;
    const auto add = [this](const std::vector<Assumption>& more) {
        run_.assumed.insert(run_.assumed.end(), more.begin(), more.end());
    };
    add(candidate.circuit.heat->assumed);
    if (!candidate.circuit.panel.rear.none()) add(weather.rear_assumed);
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
    if (store.moist.value_or(false) && !store_.liquid()) {
        run_.remarks.push_back(say<"days.counts_as_dry">());
    }
    switches_ =
        DaySwitches(store_switches(candidate.circuit, run_.remarks, opening_site(candidate.site)),
                    options.switches);
    without_c_ = weather.air_c.front();
    space_c_ = without_c_;
}

void DayLife::take_sun(std::size_t row) {
    if (row_taken_ && row == row_) return;
    row_ = row;
    row_taken_ = true;
    const double rear = candidate_->circuit.panel.rear.typical;
    circuit_.set_sun(weather_->sun_w_m2(row, rear),
                     weather_->cell_temperature_c(row, noct_c_, rear));
}

DayLife::Electric DayLife::electric(double from_h, double step_h) {
    const double row_s = weather_->step_h * seconds_of_hour;
    const double longest_s = std::min(options_.electrical_step_s, row_s);
    const auto parts =
        std::max(1L, static_cast<long>(std::ceil(step_h * seconds_of_hour / longest_s - 1e-9)));
    const double share = 1.0 / static_cast<double>(parts);
    const bool open = switches_.open();
    const double heated_m = candidate_->circuit.heat->heated_length_m;
    const double sheath_c = store_.sheath_c();
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

/// Air temperature of the space from its losses and the store, for the present state of the store.
double DayLife::air_around_c(double outside_c, double step_h) const {
    if (options_.air_around_c) return *options_.air_around_c;
    if (outdoors_ || !run_.heats_space) return outside_c;
    constexpr double least_k = 0.05;
    const double over_k = store_.edge_c() - space_c_;
    const double store_w_k =
        std::fabs(over_k) > least_k ? std::max(0.0, store_.loss_w() / over_k) : 0.0;
    const SpaceBalance& space = *candidate_->space;
    const double all_w_k = space.loss_w_k() + store_w_k + extraction_w_k_;
    const double tends_c = (space.loss_w_k() * outside_c + store_w_k * store_.edge_c() +
                            extraction_w_k_ * store_.bed_mean_c()) /
                           all_w_k;
    if (space.heat_capacity_wh_k <= 0.0) return tends_c;
    return tends_c + (space_c_ - tends_c) * std::exp(-step_h * all_w_k / space.heat_capacity_wh_k);
}

void DayLife::set_extraction(double hour_of_day, double outside_c) {
    extraction_w_k_ = within(options_.extraction, hour_of_day) ? options_.extraction.w_k : 0.0;
    double from_store_w_k = extraction_w_k_;
    // The store model has one air temperature: the fan blows into the space even if the store is
    // outside.
    if (outdoors_ && extraction_w_k_ > 0.0) {
        const double bed_c = store_.bed_mean_c();
        const double to_air_k = bed_c - outside_c;
        const double to_space_k = bed_c - space_c_;
        from_store_w_k = to_air_k > 1.0 && to_space_k > 0.0
                             ? extraction_w_k_ * std::min(1.0, to_space_k / to_air_k)
                             : 0.0;
    }
    store_.set_extraction_w_k(from_store_w_k);
}

DayLife::Held DayLife::held() const {
    return {.stored = store_.stored_kwh(),
            .lost = store_.lost_kwh(),
            .taken = store_.taken_kwh(),
            .steam = store_.steam_kwh()};
}

void DayLife::advance(double from_h, double step_h, bool record) {
    const auto middle_row = std::min(
        weather_->size() - 1, static_cast<std::size_t>((from_h + 0.5 * step_h) / weather_->step_h));
    const double outside_c = weather_->air_c[middle_row];
    set_extraction(weather_->hour_of_day(from_h + 0.5 * step_h), outside_c);
    store_.set_air_c(air_around_c(outside_c, step_h));
    const Electric now = electric(from_h, step_h);
    const Held before = held();
    store_.step(now.power_w, step_h * seconds_of_hour);
    const Held after = held();
    const double lost_kwh = after.lost - before.lost;
    const double taken_kwh = after.taken - before.taken;
    const double to_space_kwh = run_.heats_space ? taken_kwh + (outdoors_ ? 0.0 : lost_kwh) : 0.0;
    const double to_space_w = to_space_kwh * 1000.0 / step_h;
    if (run_.heats_space) {
        const SpaceBalance& space = *candidate_->space;
        space_c_ = space.after_c(space_c_, outside_c, to_space_w, step_h);
        without_c_ = space.after_c(without_c_, outside_c, 0.0, step_h);
    } else {
        space_c_ = options_.air_around_c.value_or(outside_c);
        without_c_ = space_c_;
    }
    switches_.act([this](SensedPlace place) { return sensed_c(place); }, from_h + step_h, record,
                  run_);
    if (!record) return;
    run_.energy.available_kwh += now.available_w * step_h / 1000.0;
    run_.energy.delivered_kwh += now.power_w * step_h / 1000.0;
    run_.energy.wire_kwh += now.wire_w * step_h / 1000.0;
    run_.energy.to_space_kwh += to_space_kwh;
    run_.energy.outside_kwh += lost_kwh + taken_kwh - to_space_kwh;
    DaySeries& series = run_.series;
    const double sheath_c = store_.sheath_c();
    series.hours.push_back(from_h + step_h);
    series.irradiance_w_m2.push_back(now.irradiance_w_m2);
    series.available_w.push_back(now.available_w);
    series.power_w.push_back(now.power_w);
    series.bank_v.push_back(now.voltage_v);
    series.bank_a.push_back(now.current_a);
    series.sheath_c.push_back(sheath_c);
    series.coil_c.push_back(
        sheath_c + coil_above_sheath_k(now.power_w / candidate_->circuit.heat->heated_length_m));
    if (tail_.known()) series.terminal_c.push_back(terminal_c(now));
    series.bed_mean_c.push_back(store_.bed_mean_c());
    series.wall_c.push_back(store_.wall_c());
    series.lid_c.push_back(store_.lid_c());
    series.released_w.push_back((lost_kwh + taken_kwh) * 1000.0 / step_h);
    series.to_space_w.push_back(to_space_w);
    series.space_c.push_back(space_c_);
    series.space_unheated_c.push_back(without_c_);
    series.outside_c.push_back(outside_c);
    series.month.push_back(weather_->month[middle_row]);
}

double DayLife::terminal_c(const Electric& now) const {
    constexpr double hottest_c = 1500.0;
    HotTail hot = tail_.beside_wall(store_.edge_c(), store_.wall_c());
    hot.bed_c = std::min(hottest_c, store_.near_leg_c(tail_.bed_distance_m));
    hot.sheath_c = std::clamp(store_.sheath_c(), hot.bed_c, hottest_c);
    hot.bed_conductivity_w_mk = store_.conductivity_w_mk(hot.bed_c);
    hot.pin_a = now.current_a / candidate_->circuit.bank.hookup.parallel;
    hot.current_a = tail_.run.run.carries == Carried::branch ? *hot.pin_a : now.current_a;
    const auto& insulation = tail_.run.insulation;
    const TailTemperatures at =
        tail_temperatures(hot, *tail_.run.wire, insulation ? &*insulation : nullptr);
    return at.runaway ? hottest_c : at.terminal_c;
}

double DayLife::sensed_c(SensedPlace place) const {
    if (place == SensedPlace::lid) return store_.lid_c();
    if (place == SensedPlace::bed) return store_.bed_mean_c();
    return place == SensedPlace::space ? space_c_ : store_.wall_c();
}

void DayLife::live(double hours, bool record) {
    const double step_h = options_.thermal_step_s / seconds_of_hour;
    const auto steps = static_cast<long>(std::ceil(hours / step_h - 1e-9));
    for (long step = 0; step < steps; ++step) {
        advance(static_cast<double>(step) * hours / static_cast<double>(steps),
                hours / static_cast<double>(steps), record);
        tell(lived_h_ + static_cast<double>(step + 1) * hours / static_cast<double>(steps));
    }
    lived_h_ += hours;
}

void DayLife::tell(double lived_h) const {
    const double warm_up_h = options_.warm_up_days * std::min(hours_of_day, weather_->hours());
    tell_progress(options_.progress, std::min(1.0, lived_h / (warm_up_h + weather_->hours())));
}

void DayLife::finish(const Held& before) {
    const Held after = held();
    DayEnergy& energy = run_.energy;
    energy.stored_kwh = after.stored - before.stored;
    energy.steam_kwh = after.steam - before.steam;
    const auto& bed = run_.series.bed_mean_c;
    if (store_.liquid() && *std::min_element(bed.begin(), bed.end()) < 0.0) {
        run_.remarks.push_back(say<"days.ice">(with<"freezing">(0.0, unit::celsius)));
    }
    const double moved = std::max({energy.delivered_kwh, std::fabs(energy.stored_kwh), 1e-9});
    energy.unbalanced_share = std::fabs(energy.delivered_kwh - energy.stored_kwh -
                                        energy.to_space_kwh - energy.outside_kwh) /
                              moved;
}

DayRun DayLife::run() {
    const double first_day_h = std::min(hours_of_day, weather_->hours());
    for (int day = 0; day < options_.warm_up_days; ++day) live(first_day_h, false);
    const Held before = held();
    live(weather_->hours(), true);
    finish(before);
    tell_progress(options_.progress, 1.0);
    return std::move(run_);
}

}  // namespace heatmatch
