#pragma once

#include "circuit_model.hpp"

#include <cstddef>
#include <functional>
#include <vector>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

/// One row in the fit; NaN for a missing reading.
struct FitRow {
    Values read{};
    Values sigma{};
    double air_c = std::numeric_limits<double>::quiet_NaN();
    Wanted wanted{};

    [[nodiscard]] bool live() const { return wanted.load || wanted.open || wanted.shorted; }
};

/// Logarithm of a known quantity, relative to its typical value.
struct Prior {
    double sigma_low = 0.01;
    double sigma_high = 0.01;
};

/// Unknowns of a sound circuit, as logarithms over the typical value.
enum Nuisance : std::size_t { cold_ohms, hot_over_cold, panel_current, panel_volts, nuisances };

/// A number fitted by an explanation.
struct FaultParameter {
    Sentence name{};
    double low = 0.0;
    double high = 0.0;
    Unit unit{};
    bool logarithm = false;     //!< the fit uses its logarithm
    bool mild_at_high = false;  //!< the fault is smallest at the high end, otherwise at the low end
};

/// One explanation in the fit.
struct FaultVariant {
    FaultKind kind = FaultKind::as_expected;
    double rarity = 0.0;
    std::vector<FaultParameter> parameters{};
    std::vector<std::vector<double>> starts{};  //!< of the parameters
    std::function<void(Plant&, const double*)> apply{};
    int count = 0;             //!< number of open, bypassed or missing parts
    bool string_lost = false;  //!< a whole string is missing, not a panel of one
    Sentence words{};          //!< the same, or its place, for the sentence
    Hookup hookup{};           //!< of the other hook-up or number
};

/// Readings and known values of the sound circuit.
struct FitProblem {
    Plant sound{};
    std::array<Prior, nuisances> priors{};
    std::vector<FitRow> rows{};
};

/// Irradiance and cell temperature of one row.
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

/// Whether every number of a fault is at its mildest end: the readings do not require it.
[[nodiscard]] bool at_mildest(const FaultVariant& variant, const VariantFit& fit);

/// Residual of a reading in units of its error; both resistances may be infinite.
[[nodiscard]] double residual(const Plant& plant, const FitRow& row, const Values& predicted,
                              std::size_t quantity);

/// The circuit of an explanation with its unknowns set.
[[nodiscard]] Plant plant_of(const FitProblem& problem, const FaultVariant& variant,
                             const std::vector<double>& x);

/// Least squares, robust beyond three errors, by damped Gauss-Newton steps over the unknowns of the
/// circuit and the irradiance and cell temperature of every row together; those of the rows are
/// eliminated first. The pulse is called at every step.
[[nodiscard]] VariantFit fit_variant(const FitProblem& problem, const FaultVariant& variant,
                                     const Pulse& pulse = {});

}  // namespace heatmatch
