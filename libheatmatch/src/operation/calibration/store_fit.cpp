#include "store_fit.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace heatmatch {

namespace {

constexpr double seconds_of_hour = 3600.0;
constexpr double longest_step_s = 900.0;  // second order; logs are hardly finer

double first_mean_c(const StoreLog& log) {
    double sum = 0.0;
    double count = 0.0;
    for (const auto& list : log.temperature_c) {
        if (!std::isfinite(list.front())) continue;
        sum += list.front();
        count += 1.0;
    }
    return count > 0.0 ? sum / count : log.air_c.front();
}

template <class Value>
std::vector<Value> joined(const std::vector<std::vector<Value>>& lists) {
    std::vector<Value> all;
    for (const auto& list : lists) all.insert(all.end(), list.begin(), list.end());
    return all;
}

}  // namespace

StoreFit::StoreFit(const BankHeat& heat, const StoreLog& log, Pulse pulse)
    : heat_(&heat), log_(&log), start_c_(first_mean_c(log)), pulse_(std::move(pulse)) {
    for (const auto& list : log.temperature_c) {
        for (std::size_t row = 1; row < list.size(); ++row) {
            if (std::isfinite(list[row])) measured_.push_back(list[row]);
        }
    }
}

void StoreFit::live(
    const Sought& sought,
    const std::function<void(const BedField&, std::size_t, std::size_t)>& visit) const {
    Medium medium = heat_->store->medium;
    medium.k20_low_w_mk = std::exp(sought[0]);
    Store store = heat_->store->store;
    store.loss_factor = store.loss_factor.value_or(1.0) * std::exp(sought[1]);
    BedField bed(bed_fill(medium, ConductivityEnd::low), store_shell(store),
                 leg_layout(heat_->element, heat_->elements, store), log_->air_c.front(), start_c_,
                 {.longest_step_s = longest_step_s}, heat_->likely.rod_j_m_k);
    for (std::size_t row = 1; row < log_->size(); ++row) {
        if (pulse_) pulse_();
        bed.set_air_c(0.5 * (log_->air_c[row - 1] + log_->air_c[row]));
        bed.step(log_->power_w[row], (log_->hours[row] - log_->hours[row - 1]) * seconds_of_hour);
        for (std::size_t i = 0; i < log_->probes.size(); ++i) {
            if (std::isfinite(log_->temperature_c[i][row])) visit(bed, i, row);
        }
    }
}

std::vector<double> StoreFit::model(const Sought& sought) const {
    std::vector<std::vector<double>> read(log_->probes.size());
    live(sought, [&](const BedField& bed, std::size_t probe, std::size_t) {
        read[probe].push_back(at(bed, log_->probes[probe]));
    });
    return joined(read);
}

ModelError StoreFit::model_error(const Sought& sought) const {
    std::vector<std::vector<ErrorSizes>> sizes(log_->probes.size());
    const double most_w = *std::max_element(log_->power_w.begin(), log_->power_w.end());
    live(sought, [&](const BedField& bed, std::size_t probe, std::size_t row) {
        const Probe& here = log_->probes[probe];
        sizes[probe].push_back({.rise_k = at(bed, here) - log_->air_c[row],
                                .power_k = log_->power_w[row] / most_w,
                                .place_k = place_error_k(bed, here)});
    });
    std::vector<std::vector<ErrorShapes>> shapes(sizes.size());
    std::vector<std::size_t> counts;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        double most_k = 0.0;
        for (const ErrorSizes& each : sizes[i]) most_k = std::max(most_k, each.rise_k);
        for (ErrorSizes each : sizes[i]) {
            each.power_k *= most_k;
            shapes[i].push_back(model_error_k(log_->probes[i].place, each));
        }
        counts.push_back(sizes[i].size());
    }
    return {joined(shapes), std::move(counts)};
}

std::vector<double> StoreFit::residuals(const Sought& sought) const {
    std::vector<double> left = model(sought);
    for (std::size_t i = 0; i < left.size(); ++i) left[i] = measured_[i] - left[i];
    return left;
}

double StoreFit::at(const BedField& bed, const Probe& probe) {
    if (probe.place == ProbePlace::wall) return bed.wall_mean_c();
    if (probe.place == ProbePlace::lid) return bed.lid_c();
    if (probe.place == ProbePlace::sheath) return bed.sheath_c();
    return bed.at_c(*probe.radius_m, *probe.height_m);
}

}  // namespace heatmatch
