#pragma once

#include "circuit_model.hpp"

#include <cstddef>
#include <functional>
#include <vector>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

/// One row as the fit takes it; NaN where nothing was read.
struct FitRow {
    Values read{};
    Values sigma{};
    double air_c = std::numeric_limits<double>::quiet_NaN();
    Wanted wanted{};

    [[nodiscard]] bool live() const { return wanted.load || wanted.open || wanted.shorted; }
};

/// Logarithm of something known: its typical value counts as 0.
struct Prior {
    double sigma_low = 0.01;
    double sigma_high = 0.01;
};

/// What is not known of a sound circuit, as logarithms over the typical value.
enum Nuisance : std::size_t { cold_ohms, hot_over_cold, panel_current, panel_volts, nuisances };

/// A number that an explanation fits.
struct FaultParameter {
    Sentence name{};
    double low = 0.0;
    double high = 0.0;
    Unit unit{};
    bool logarithm = false;     //!< the fit moves its logarithm
    bool mild_at_high = false;  //!< the fault is smallest there, else at the low end
};

/// One explanation as the fit takes it.
struct FaultVariant {
    FaultKind kind = FaultKind::as_expected;
    double rarity = 0.0;
    std::vector<FaultParameter> parameters{};
    std::vector<std::vector<double>> starts{};  //!< of the parameters
    std::function<void(Plant&, const double*)> apply{};
    int count = 0;     //!< of what is open, bypassed, missing
    Sentence words{};  //!< the same, or where it is, for the sentence
    Hookup hookup{};   //!< of what is hooked up otherwise, or is of another number
};

/// Readings and what is known of the sound circuit.
struct FitProblem {
    Plant sound{};
    std::array<Prior, nuisances> priors{};
    std::vector<FitRow> rows{};
};

/// Sun and cells of one row.
struct SunAndCells {
    double irradiance_w_m2 = 600.0;
    double cell_c = 40.0;
};

/// A fitted explanation.
struct VariantFit {
    double misfit = std::numeric_limits<double>::infinity();
    std::vector<double> x{};  //!< nuisances, then parameters
    std::vector<double> deviation{};
    std::vector<SunAndCells> rows{};
    Plant plant{};
};

/// Whether every number of a fault lies at its mildest end: the readings do not ask for it.
[[nodiscard]] bool at_mildest(const FaultVariant& variant, const VariantFit& fit);

/// Residual of a reading in its error; ohms may be infinite on either side.
[[nodiscard]] double residual(const Plant& plant, const FitRow& row, const Values& predicted,
                              std::size_t quantity);

/// The plant of an explanation with its unknowns put in.
[[nodiscard]] Plant plant_of(const FitProblem& problem, const FaultVariant& variant,
                             const std::vector<double>& x);

/// Least squares, robust beyond three errors, by damped Gauss-Newton steps over the unknowns of the
/// circuit and the sun and cell temperature of every row together; the rows' are eliminated first.
/// The pulse is called at every step.
[[nodiscard]] VariantFit fit_variant(const FitProblem& problem, const FaultVariant& variant,
                                     const Pulse& pulse = {});

}  // namespace heatmatch
