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

StoreModel store_of(std::span<const Candidate* const> candidates, const DayOptions& options,
                    double air_c) {
    std::vector<std::shared_ptr<const BankHeat>> heats;
    std::vector<const BankHeat*> banks;
    for (const Candidate* candidate : candidates) {
        for (const Circuit& seen : seen_in_store(candidate->circuit)) {
            heats.push_back(seen.heat);
            banks.push_back(heats.back().get());
        }
    }
    return {banks, options.conductivity, air_c, options.start_c.value_or(air_c)};
}

bool within(const HeatExtraction& take, double hour) {
    if (take.from_hour <= take.until_hour) return hour >= take.from_hour && hour < take.until_hour;
    return hour >= take.from_hour || hour < take.until_hour;
}

}  // namespace

DayLife::DayLife(std::span<const Candidate* const> candidates, std::span<const DayWeather> weathers,
                 const DayOptions& options)
    : weather_(&weathers.front()),
      options_(options),
      store_(store_of(candidates, options, first_air_c(weathers.front(), options))) {
    std::size_t bank = 0;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        circuits_.emplace_back(*candidates[i], weathers.size() > 1 ? weathers[i] : weathers.front(),
                               options, bank);
        const Bank& own = candidates[i]->circuit.bank;
        bank += own.unlike ? static_cast<std::size_t>(own.count()) : 1U;
    }
    const Candidate& first = *candidates.front();
    outdoors_ = first.circuit.heat->store->store.stands == StorePlace::outside;
    heats_space_ = circuits_.front().run().heats_space;
    if (heats_space_) space_ = *first.space;
    without_c_ = weather_->air_c.front();
    space_c_ = without_c_;
}

/// Air temperature of the space from its losses and the store, for the present state of the store.
double DayLife::air_around_c(double outside_c, double step_h) const {
    if (options_.air_around_c) return *options_.air_around_c;
    if (outdoors_ || !heats_space_) return outside_c;
    constexpr double least_k = 0.05;
    const double over_k = store_.edge_c() - space_c_;
    const double store_w_k =
        std::fabs(over_k) > least_k ? std::max(0.0, store_.loss_w() / over_k) : 0.0;
    const SpaceBalance& space = *space_;
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
    std::vector<LivedCircuit::Electric> now;
    std::vector<double> power_w;
    for (LivedCircuit& circuit : circuits_) {
        now.push_back(circuit.electric(store_, from_h, step_h));
        const std::vector<double>& banks_w = now.back().banks_w;
        power_w.insert(power_w.end(), banks_w.begin(), banks_w.end());
    }
    const Held before = held();
    store_.step(power_w, step_h * seconds_of_hour);
    const Held after = held();
    const double lost_kwh = after.lost - before.lost;
    const double taken_kwh = after.taken - before.taken;
    const double to_space_kwh = heats_space_ ? taken_kwh + (outdoors_ ? 0.0 : lost_kwh) : 0.0;
    const double to_space_w = to_space_kwh * 1000.0 / step_h;
    if (heats_space_) {
        const SpaceBalance& space = *space_;
        space_c_ = space.after_c(space_c_, outside_c, to_space_w, step_h);
        without_c_ = space.after_c(without_c_, outside_c, 0.0, step_h);
    } else {
        space_c_ = options_.air_around_c.value_or(outside_c);
        without_c_ = space_c_;
    }
    for (std::size_t i = 0; i < circuits_.size(); ++i) {
        LivedCircuit& circuit = circuits_[i];
        circuit.switches().act([this](SensedPlace place) { return sensed_c(place); },
                               from_h + step_h, record, circuit.run());
        if (!record) continue;
        circuit.record(now[i], store_, step_h);
        DayRun& run = circuit.run();
        run.energy.to_space_kwh += to_space_kwh;
        run.energy.outside_kwh += lost_kwh + taken_kwh - to_space_kwh;
        DaySeries& series = run.series;
        series.hours.push_back(from_h + step_h);
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
    double delivered_kwh = 0.0;
    for (LivedCircuit& circuit : circuits_) delivered_kwh += circuit.run().energy.delivered_kwh;
    for (LivedCircuit& circuit : circuits_) {
        DayRun& run = circuit.run();
        DayEnergy& energy = run.energy;
        energy.stored_kwh = after.stored - before.stored;
        energy.steam_kwh = after.steam - before.steam;
        run.circuits = static_cast<int>(circuits_.size());
        const auto& bed = run.series.bed_mean_c;
        if (store_.liquid() && *std::min_element(bed.begin(), bed.end()) < 0.0) {
            run.remarks.push_back(say<"days.ice">(with<"freezing">(0.0, unit::celsius)));
        }
        if (circuits_.size() > 1) {
            run.remarks.push_back(
                say<"days.shared">(with<"count">(static_cast<double>(circuits_.size()))));
        }
        const double moved = std::max({delivered_kwh, std::fabs(energy.stored_kwh), 1e-9});
        energy.unbalanced_share = std::fabs(delivered_kwh - energy.stored_kwh -
                                            energy.to_space_kwh - energy.outside_kwh) /
                                  moved;
    }
}

std::vector<DayRun> DayLife::runs() {
    const double first_day_h = std::min(hours_of_day, weather_->hours());
    for (int day = 0; day < options_.warm_up_days; ++day) live(first_day_h, false);
    const Held before = held();
    live(weather_->hours(), true);
    finish(before);
    tell_progress(options_.progress, 1.0);
    std::vector<DayRun> runs;
    for (LivedCircuit& circuit : circuits_) runs.push_back(std::move(circuit.run()));
    return runs;
}

}  // namespace heatmatch
