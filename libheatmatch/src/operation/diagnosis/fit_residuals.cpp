#include "fit_residuals.hpp"

#include <cmath>

namespace heatmatch {

namespace {

constexpr double robust_beyond = 3.0;
constexpr double open_circuit_ohm = 1e5;

/// A residual whose square grows logarithmically beyond three, so that one outlier does not
/// outweigh all others: r² up to 3, then 9 + 18 ln(r/3), smooth at the transition.
double robust(double r) {
    const double size = std::fabs(r);
    if (size <= robust_beyond) return r;
    constexpr double there = robust_beyond * robust_beyond;
    return std::copysign(std::sqrt(there + 2.0 * there * std::log(size / robust_beyond)), r);
}

/// Panels of unknown temperature are 15 to 40 K above the air in good sun; without air data, 15 °C
/// air with a wide band (from memory).
double temperature_prior(const FitRow& row, const SunAndCells& state) {
    constexpr double rise_k_per_w_m2 = 0.034;
    const bool known_air = std::isfinite(row.air_c);
    const double mean = (known_air ? row.air_c : 15.0) + rise_k_per_w_m2 * state.irradiance_w_m2;
    return (state.cell_c - mean) / (known_air ? 8.0 : 14.0);
}

}  // namespace

RowResiduals residuals_of(const Plant& plant, const FitRow& row, const SunAndCells& state) {
    RowResiduals r{};
    const Values predicted = predict(plant, state.irradiance_w_m2, state.cell_c, row.wanted);
    for (std::size_t q = 0; q < quantities; ++q) {
        if (std::isnan(row.read[q])) continue;
        r[q] = robust(residual(plant, row, predicted, q));
    }
    if (std::isnan(row.read[panel_temperature])) r[quantities] = temperature_prior(row, state);
    r[quantities + 1] = (state.irradiance_w_m2 - 600.0) / 3000.0;  // any irradiance, weakly
                                                                   // constrained
    return r;
}

double square(const RowResiduals& r) {
    double sum = 0.0;
    for (const double value : r) sum += value * value;
    return sum;
}

bool at_mildest(const FaultVariant& variant, const VariantFit& fit) {
    if (variant.parameters.empty()) return false;
    for (std::size_t p = 0; p < variant.parameters.size(); ++p) {
        const FaultParameter& parameter = variant.parameters[p];
        const double x = fit.x[nuisances + p];
        const double value = parameter.logarithm ? std::exp(x) : x;
        const double mild = parameter.mild_at_high ? parameter.high : parameter.low;
        constexpr double close = 0.01;
        if (std::fabs(value - mild) > close * mild) return false;
        // Readings without information on it do not favor the mild end.
        const double range = parameter.logarithm ? std::log(parameter.high / parameter.low)
                                                 : parameter.high - parameter.low;
        constexpr double held = 0.15;
        if (fit.deviation[nuisances + p] > held * range) return false;
    }
    return true;
}

double residual(const Plant& plant, const FitRow& row, const Values& predicted,
                std::size_t quantity) {
    constexpr double surely_not = 30.0;
    const double read = row.read[quantity];
    const auto against = [&](double model) {
        const bool open_model = model > open_circuit_ohm;
        const bool open_read = read > open_circuit_ohm;
        if (open_model || open_read) return open_model == open_read ? 0.0 : surely_not;
        return (model - read) / row.sigma[quantity];
    };
    if (quantity != element_ohm && quantity != bank_ohm) {
        return (predicted[quantity] - read) / row.sigma[quantity];
    }
    const double sound = against(predicted[quantity]);
    if (quantity == bank_ohm || plant.measured == Measured::sound) return sound;
    const double faulty = against(plant.faulty_element_ohm);
    if (plant.measured == Measured::faulty) return faulty;
    // A choice between two in every row costs two times its logarithm.
    const double nearer = std::fabs(faulty) < std::fabs(sound) ? faulty : sound;
    return std::copysign(std::sqrt(nearer * nearer + 2.0 * std::log(2.0)), nearer);
}

Plant plant_of(const FitProblem& problem, const FaultVariant& variant,
               const std::vector<double>& x) {
    Plant plant = problem.sound;
    const double ohms = std::exp(x[cold_ohms]);
    plant.element_ohm *= ohms;
    plant.bank_ohm *= ohms;
    plant.hot_ratio *= std::exp(x[hot_over_cold]);
    plant.diode = plant.diode.scaled(std::exp(x[panel_current]), std::exp(x[panel_volts]));
    std::array<double, 2> parameters{};
    for (std::size_t p = 0; p < variant.parameters.size(); ++p) {
        const double value = x[nuisances + p];
        parameters[p] = variant.parameters[p].logarithm ? std::exp(value) : value;
    }
    if (variant.apply) variant.apply(plant, parameters.data());
    return plant;
}

}  // namespace heatmatch
