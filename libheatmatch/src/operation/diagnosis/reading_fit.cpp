#include "reading_fit.hpp"

#include "fit_residuals.hpp"
#include "small_system.hpp"

#include <algorithm>
#include <cmath>

namespace heatmatch {

namespace {

constexpr double brightest_w_m2 = 1400.0;

double prior_residual(const Prior& prior, double x) {
    return x / (x < 0.0 ? prior.sigma_low : prior.sigma_high);
}

/// Normal equations for the irradiance and temperature of one row.
struct RowBlock {
    double c00 = 0.0;
    double c01 = 0.0;
    double c11 = 0.0;
    double b0 = 0.0;
    double b1 = 0.0;
    std::vector<double> cross0{};
    std::vector<double> cross1{};
};

/// One fit from one start.
class Fit {
  public:
    Fit(const FitProblem& problem, const FaultVariant& variant, const std::vector<double>& start)
        : problem_(problem), variant_(variant), x_(nuisances, 0.0) {
        for (std::size_t p = 0; p < variant.parameters.size(); ++p) {
            const bool logarithm = variant.parameters[p].logarithm;
            x_.push_back(logarithm ? std::log(start[p]) : start[p]);
        }
        start_rows();
    }

    VariantFit run(const Pulse& pulse) {
        double cost = cost_of(x_, rows_);
        double damping = 1e-3;
        constexpr int most_steps = 40;
        for (int step = 0; step < most_steps; ++step) {
            if (pulse) pulse();
            linearise();
            bool better = false;
            double gain = 0.0;
            for (int attempt = 0; attempt < 6 && !better; ++attempt) {
                std::vector<double> x;
                std::vector<SunAndCells> rows;
                if (!moved(damping, x, rows)) break;
                const double trial = cost_of(x, rows);
                if (trial < cost) {
                    gain = cost - trial;
                    better = true;
                    x_ = std::move(x);
                    rows_ = std::move(rows);
                    cost = trial;
                    damping = std::max(damping * 0.2, 1e-9);
                } else {
                    damping *= 8.0;
                }
            }
            if (!better || gain < 1e-4 * (1.0 + 0.01 * cost)) break;
        }
        VariantFit result{.misfit = cost, .x = x_, .rows = rows_};
        result.plant = plant_of(problem_, variant_, x_);
        linearise();
        deviations(result);
        return result;
    }

  private:
    [[nodiscard]] double bound(std::size_t p, bool high) const {
        constexpr double widest = 1.0;
        if (p < nuisances) return high ? widest : -widest;
        const FaultParameter& parameter = variant_.parameters[p - nuisances];
        const double value = high ? parameter.high : parameter.low;
        return parameter.logarithm ? std::log(value) : value;
    }

    void start_rows() {
        const Plant plant = plant_of(problem_, variant_, x_);
        for (const FitRow& row : problem_.rows) {
            SunAndCells best;
            double least = std::numeric_limits<double>::infinity();
            const auto consider = [&](double g) {
                SunAndCells state{.irradiance_w_m2 = std::clamp(g, 0.0, brightest_w_m2)};
                const double read = row.read[panel_temperature];
                state.cell_c = std::isnan(read)
                                   ? (std::isfinite(row.air_c) ? row.air_c : 15.0) + 0.034 * g
                                   : read + cell_above_back_k;
                const double cost = square(residuals_of(plant, row, state));
                if (cost < least) {
                    least = cost;
                    best = state;
                }
            };
            if (!std::isnan(row.read[irradiance])) consider(row.read[irradiance]);
            for (const double g : {30.0, 100.0, 200.0, 350.0, 550.0, 800.0, 1050.0}) consider(g);
            rows_.push_back(best);
        }
    }

    [[nodiscard]] double cost_of(const std::vector<double>& x,
                                 const std::vector<SunAndCells>& rows) const {
        const Plant plant = plant_of(problem_, variant_, x);
        double sum = 0.0;
        for (std::size_t p = 0; p < nuisances; ++p) {
            const double r = prior_residual(problem_.priors[p], x[p]);
            sum += r * r;
        }
        for (std::size_t i = 0; i < rows.size(); ++i) {
            sum += square(residuals_of(plant, problem_.rows[i], rows[i]));
        }
        return sum;
    }

    /// Normal equations at the present point.
    void linearise() {
        const std::size_t n = x_.size();
        a_.assign(n, std::vector<double>(n, 0.0));
        b_.assign(n, 0.0);
        blocks_.clear();
        for (std::size_t p = 0; p < nuisances; ++p) {
            const Prior& prior = problem_.priors[p];
            const double sigma = x_[p] < 0.0 ? prior.sigma_low : prior.sigma_high;
            a_[p][p] += 1.0 / (sigma * sigma);
            b_[p] -= x_[p] / (sigma * sigma);
        }
        const Plant plant = plant_of(problem_, variant_, x_);
        std::vector<Plant> moved_plants;
        std::vector<double> steps;
        for (std::size_t p = 0; p < n; ++p) {
            std::vector<double> x = x_;
            constexpr double small = 1e-4;
            const double step = x[p] + small > bound(p, true) ? -small : small;
            x[p] += step;
            steps.push_back(step);
            moved_plants.push_back(plant_of(problem_, variant_, x));
        }
        std::vector<RowResiduals> jacobian(n);
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const FitRow& row = problem_.rows[i];
            const SunAndCells& state = rows_[i];
            const RowResiduals r = residuals_of(plant, row, state);
            const auto difference = [&](const RowResiduals& there, double step) {
                RowResiduals d{};
                for (std::size_t q = 0; q < row_residuals; ++q) d[q] = (there[q] - r[q]) / step;
                return d;
            };
            for (std::size_t p = 0; p < n; ++p) {
                jacobian[p] = difference(residuals_of(moved_plants[p], row, state), steps[p]);
            }
            constexpr double g_step = 0.05;
            constexpr double t_step = 0.01;
            SunAndCells brighter = state;
            brighter.irradiance_w_m2 += g_step;
            SunAndCells hotter = state;
            hotter.cell_c += t_step;
            const RowResiduals dg = difference(residuals_of(plant, row, brighter), g_step);
            const RowResiduals dt = difference(residuals_of(plant, row, hotter), t_step);
            RowBlock block{.cross0 = std::vector<double>(n, 0.0),
                           .cross1 = std::vector<double>(n, 0.0)};
            for (std::size_t q = 0; q < row_residuals; ++q) {
                block.c00 += dg[q] * dg[q];
                block.c01 += dg[q] * dt[q];
                block.c11 += dt[q] * dt[q];
                block.b0 -= dg[q] * r[q];
                block.b1 -= dt[q] * r[q];
                for (std::size_t p = 0; p < n; ++p) {
                    block.cross0[p] += jacobian[p][q] * dg[q];
                    block.cross1[p] += jacobian[p][q] * dt[q];
                    b_[p] -= jacobian[p][q] * r[q];
                    for (std::size_t s = 0; s < n; ++s) a_[p][s] += jacobian[p][q] * jacobian[s][q];
                }
            }
            blocks_.push_back(std::move(block));
        }
    }

    /// The system of the circuit's unknowns, with those of the rows eliminated.
    void reduce(double damping, bool hold, SmallMatrix& a, std::vector<double>& b) const {
        const std::size_t n = x_.size();
        a = a_;
        b = b_;
        for (const RowBlock& block : blocks_) {
            const double c00 = block.c00 * (1.0 + damping) + 1e-12;
            const double c11 = block.c11 * (1.0 + damping) + 1e-12;
            const double det = c00 * c11 - block.c01 * block.c01;
            for (std::size_t p = 0; p < n; ++p) {
                const double u0 = (c11 * block.cross0[p] - block.c01 * block.cross1[p]) / det;
                const double u1 = (c00 * block.cross1[p] - block.c01 * block.cross0[p]) / det;
                b[p] -= u0 * block.b0 + u1 * block.b1;
                for (std::size_t s = 0; s < n; ++s) {
                    a[p][s] -= u0 * block.cross0[s] + u1 * block.cross1[s];
                }
            }
        }
        for (std::size_t p = 0; p < n; ++p) {
            a[p][p] += damping * a_[p][p] + 1e-9;
            // A parameter at its bound with a step beyond it stays there.
            const bool at_low = x_[p] <= bound(p, false) && b[p] < 0.0;
            const bool at_high = x_[p] >= bound(p, true) && b[p] > 0.0;
            if (!hold || (!at_low && !at_high)) continue;
            for (std::size_t s = 0; s < n; ++s) a[p][s] = a[s][p] = 0.0;
            a[p][p] = 1.0;
            b[p] = 0.0;
        }
    }

    bool moved(double damping, std::vector<double>& x, std::vector<SunAndCells>& rows) const {
        SmallMatrix a;
        std::vector<double> b;
        reduce(damping, true, a, b);
        std::vector<double> step;
        if (!solve_small(a, b, step)) return false;
        x = x_;
        for (std::size_t p = 0; p < x.size(); ++p) {
            x[p] = std::clamp(x[p] + step[p], bound(p, false), bound(p, true));
            step[p] = x[p] - x_[p];
        }
        rows = rows_;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const RowBlock& block = blocks_[i];
            double b0 = block.b0;
            double b1 = block.b1;
            for (std::size_t p = 0; p < x.size(); ++p) {
                b0 -= block.cross0[p] * step[p];
                b1 -= block.cross1[p] * step[p];
            }
            const double c00 = block.c00 * (1.0 + damping) + 1e-12;
            const double c11 = block.c11 * (1.0 + damping) + 1e-12;
            const double det = c00 * c11 - block.c01 * block.c01;
            rows[i].irradiance_w_m2 = std::clamp(
                rows[i].irradiance_w_m2 + (c11 * b0 - block.c01 * b1) / det, 0.0, brightest_w_m2);
            rows[i].cell_c =
                std::clamp(rows[i].cell_c + (c00 * b1 - block.c01 * b0) / det, -50.0, 105.0);
        }
        return true;
    }

    void deviations(VariantFit& result) const {
        SmallMatrix a;
        std::vector<double> unused;
        reduce(0.0, false, a, unused);
        for (std::size_t p = 0; p < x_.size(); ++p) {
            std::vector<double> unit(x_.size(), 0.0);
            unit[p] = 1.0;
            std::vector<double> column;
            const bool known = solve_small(a, unit, column) && column[p] > 0.0;
            result.deviation.push_back(known ? std::sqrt(column[p]) : 0.0);
        }
    }

    const FitProblem& problem_;
    const FaultVariant& variant_;
    std::vector<double> x_;
    std::vector<SunAndCells> rows_{};
    SmallMatrix a_{};
    std::vector<double> b_{};
    std::vector<RowBlock> blocks_{};
};

}  // namespace

VariantFit fit_variant(const FitProblem& problem, const FaultVariant& variant, const Pulse& pulse) {
    VariantFit best;
    static const std::vector<std::vector<double>> none{{}};
    for (const auto& start : variant.starts.empty() ? none : variant.starts) {
        VariantFit found = Fit(problem, variant, start).run(pulse);
        if (found.misfit < best.misfit) best = std::move(found);
    }
    return best;
}

}  // namespace heatmatch
