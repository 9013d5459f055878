#include "store_fit.hpp"

#include <cmath>
#include <utility>

namespace heatmatch {

namespace {

constexpr double seconds_of_hour = 3600.0;
constexpr double longest_step_s = 900.0;  // of second order: a log is hardly finer

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

}  // namespace

StoreFit::StoreFit(const BankHeat& heat, const StoreLog& log, Pulse pulse)
    : heat_(&heat), log_(&log), start_c_(first_mean_c(log)), pulse_(std::move(pulse)) {
    for (const auto& list : log.temperature_c) {
        for (std::size_t row = 1; row < list.size(); ++row) {
            if (std::isfinite(list[row])) measured_.push_back(list[row]);
        }
    }
}

std::vector<double> StoreFit::model(const Sought& sought) const {
    Medium medium = heat_->store->medium;
    medium.k20_low_w_mk = std::exp(sought[0]);
    Store store = heat_->store->store;
    store.loss_factor = store.loss_factor.value_or(1.0) * std::exp(sought[1]);
    BedField bed(bed_fill(medium, ConductivityEnd::low), store_shell(store),
                 leg_layout(heat_->element, heat_->elements, store), log_->air_c.front(), start_c_,
                 {.longest_step_s = longest_step_s}, heat_->likely.rod_j_m_k);
    std::vector<std::vector<double>> read(log_->probes.size());
    for (std::size_t row = 1; row < log_->size(); ++row) {
        if (pulse_) pulse_();
        bed.set_air_c(0.5 * (log_->air_c[row - 1] + log_->air_c[row]));
        bed.step(log_->power_w[row], (log_->hours[row] - log_->hours[row - 1]) * seconds_of_hour);
        for (std::size_t i = 0; i < read.size(); ++i) {
            if (std::isfinite(log_->temperature_c[i][row])) {
                read[i].push_back(at(bed, log_->probes[i]));
            }
        }
    }
    std::vector<double> all;
    all.reserve(measured_.size());
    for (const auto& list : read) all.insert(all.end(), list.begin(), list.end());
    return all;
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
