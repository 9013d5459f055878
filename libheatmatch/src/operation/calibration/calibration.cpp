#include "heatmatch/operation/calibration/calibration.hpp"

#include "sentences.hpp"
#include "store_fit.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using calibration_sentences::say;

namespace {

constexpr std::size_t least_readings = 12;
// What the cells of the field add, against one of twice as many: tests print it.
constexpr double cells_share_k20 = 0.003;
constexpr double cells_share_loss = 0.02;
constexpr double joint_99 = 3.035;  // sqrt of the chi-square of two at 0.99

[[noreturn]] void refuse(const char* field, const std::string& value, const char* allowed,
                         Sentence remedy) {
    throw InvalidInput({.part = "calibration",
                        .field = field,
                        .value = value,
                        .allowed = allowed,
                        .remedy = std::move(remedy)});
}

double square_sum(std::span<const double> list) {
    double sum = 0.0;
    for (const double each : list) sum += each * each;
    return sum;
}

/// How much residuals follow each other, between neighbours of one list; 0 for noise.
double following(std::span<const double> list) {
    double both = 0.0;
    for (std::size_t i = 1; i < list.size(); ++i) both += list[i - 1] * list[i];
    const double all = square_sum(list);
    return all > 0.0 ? std::clamp(both / all, 0.0, 0.95) : 0.0;
}

struct Normal {  //!< J'J and J'r of two numbers
    double a = 0.0;
    double b = 0.0;
    double c = 0.0;
    Sought right{};

    [[nodiscard]] double determinant() const { return a * c - b * b; }
};

Normal normal_at(const StoreFit& fit, const Sought& at, std::span<const double> left) {
    constexpr double nudge = 0.01;
    std::array<std::vector<double>, 2> slope;
    for (std::size_t i = 0; i < 2; ++i) {
        Sought up = at;
        Sought down = at;
        up[i] += nudge;
        down[i] -= nudge;
        slope[i] = fit.model(up);
        const std::vector<double> low = fit.model(down);
        for (std::size_t k = 0; k < low.size(); ++k) {
            slope[i][k] = (slope[i][k] - low[k]) / (2.0 * nudge);
        }
    }
    Normal normal;
    for (std::size_t k = 0; k < left.size(); ++k) {
        normal.a += slope[0][k] * slope[0][k];
        normal.b += slope[0][k] * slope[1][k];
        normal.c += slope[1][k] * slope[1][k];
        normal.right[0] += slope[0][k] * left[k];
        normal.right[1] += slope[1][k] * left[k];
    }
    return normal;
}

Fitted fitted(double logarithm, double error, double scale) {
    const double value = scale * std::exp(logarithm);
    return {.value = value,
            .standard_error = value * error,
            .low = value * std::exp(-joint_99 * error),
            .high = value * std::exp(joint_99 * error)};
}

void check_heat(const Candidate& candidate, const StoreLog& log) {
    const auto& heat = candidate.circuit.heat;
    if (!heat || !heat->known()) {
        refuse("store", heat ? "sizes or lengths missing, or legs that do not fit" : "(missing)",
               "known", say<"calibration.describe_store">());
    }
    if (heat->liquid) {
        refuse("medium", "a liquid", "a bed of grains or a solid", say<"calibration.water">());
    }
    double most_w = 0.0;
    for (const double power : log.power_w) most_w = std::max(most_w, power);
    if (most_w <= 0.0) {
        refuse("power_w", "0 W in every row", "above 0 W in some rows",
               say<"calibration.log_heated">());
    }
}

void tell(Calibration& result, const Medium& medium) {
    const auto number = [](double k20_w_mk) {
        return Amount{.value = k20_w_mk, .unit = unit::watt_per_m_k, .shown = Shown::number};
    };
    const Fitted& k20 = result.k20_w_mk;
    const Fitted& loss = result.loss_factor;
    result.sentences.push_back(say<"calibration.found">(
        with<"fill">(number(k20.value)), with<"fill_low">(number(k20.low)),
        with<"fill_high">(number(k20.high)),
        with<"unit">(Amount{.unit = unit::watt_per_m_k, .shown = Shown::unit}),
        with<"at">(20.0, unit::celsius), with<"before">(number(medium.k20_w_mk)),
        with<"loss">(loss.value), with<"loss_low">(loss.low), with<"loss_high">(loss.high)));
    result.sentences.push_back(
        say<"calibration.residual">(with<"left">(result.residual_k, unit::kelvin),
                                    with<"readings">(static_cast<double>(result.readings)),
                                    with<"before">(result.residual_before_k, unit::kelvin)));
    constexpr double entangled = 0.95;
    if (std::fabs(result.correlation) > entangled) {
        result.remarks.push_back(say<"calibration.entangled">());
    }
    constexpr double low_w_mk = 0.1;
    constexpr double moist_w_mk = 0.8;
    if (medium.form == MediumForm::granular && result.k20_w_mk.value > moist_w_mk) {
        constexpr double dry_low_w_mk = 0.2;
        constexpr double dry_high_w_mk = 0.4;
        result.remarks.push_back(say<"calibration.damp">(
            with<"low">(number(dry_low_w_mk)), with<"high">(dry_high_w_mk, unit::watt_per_m_k)));
    } else if (result.k20_w_mk.value < low_w_mk) {
        result.remarks.push_back(say<"calibration.too_little">());
    }
}

}  // namespace

Calibration calibrate(const Candidate& candidate, const StoreLog& given, const Progress& progress) {
    const StoreLog log = checked_log(given);
    check_heat(candidate, log);
    const BankHeat& heat = *candidate.circuit.heat;
    double rows = 0.0;
    const Pulse pulse = [&] {
        // A fit that settles in four turns is at three quarters.
        constexpr double usual_models = 8.0;
        rows += 1.0;
        const double models = rows / static_cast<double>(log.size());
        tell_progress(progress, models / (models + usual_models));
    };
    const StoreFit fit(heat, log, pulse);
    if (fit.readings() < least_readings) {
        refuse("readings", std::to_string(fit.readings()), "at least 12 after the first row",
               say<"calibration.log_both">());
    }
    const Medium& medium = heat.store->medium;
    Sought at{std::log(medium.k20_w_mk), 0.0};
    std::vector<double> left = fit.residuals(at);
    Calibration result{.readings = fit.readings(),
                       .medium = medium.id,
                       .loss_factor_before = heat.store->store.loss_factor.value_or(1.0),
                       .remarks = log.remarks};
    const auto count = static_cast<double>(fit.readings());
    result.residual_before_k = std::sqrt(square_sum(left) / count);
    constexpr int most_turns = 30;
    constexpr double furthest = 0.7;  // a factor of two a turn
    constexpr double close_enough = 1e-5;
    Normal normal;
    double damping = 0.0;
    bool settled = false;
    for (int turn = 0; turn < most_turns && !settled; ++turn) {
        normal = normal_at(fit, at, left);
        if (!(normal.determinant() > 1e-12 * normal.a * normal.c)) {
            refuse("log", "the same for every conductivity and loss", "one that tells them apart",
                   say<"calibration.probe_in_bed">());
        }
        for (int trial = 0; trial < 12; ++trial) {
            Normal damped = normal;
            damped.a *= 1.0 + damping;
            damped.c *= 1.0 + damping;
            const double d = damped.determinant();
            const Sought by{
                std::clamp((damped.c * damped.right[0] - damped.b * damped.right[1]) / d, -furthest,
                           furthest),
                std::clamp((damped.a * damped.right[1] - damped.b * damped.right[0]) / d, -furthest,
                           furthest)};
            const Sought next{at[0] + by[0], at[1] + by[1]};
            std::vector<double> next_left = fit.residuals(next);
            const bool near = std::fabs(by[0]) < close_enough && std::fabs(by[1]) < close_enough;
            if (square_sum(next_left) <= square_sum(left) || near) {
                settled = near;
                at = next;
                left = std::move(next_left);
                damping = damping < 1e-3 ? 0.0 : damping / 10.0;
                break;
            }
            damping = std::max(1e-2, damping * 10.0);
        }
        constexpr double most_damping = 1e9;
        if (damping > most_damping) break;
    }
    if (!settled) {
        result.remarks.push_back(say<"calibration.not_settled">());
    }
    normal = normal_at(fit, at, left);
    const double rho = following(left);
    const double variance = square_sum(left) / (count - 2.0) * (1.0 + rho) / (1.0 - rho);
    const double d = normal.determinant();
    result.residual_k = std::sqrt(square_sum(left) / count);
    result.k20_w_mk =
        fitted(at[0], std::hypot(std::sqrt(variance * normal.c / d), cells_share_k20), 1.0);
    result.loss_factor =
        fitted(at[1], std::hypot(std::sqrt(variance * normal.a / d), cells_share_loss),
               result.loss_factor_before);
    result.correlation = -normal.b / std::sqrt(normal.a * normal.c);
    tell(result, medium);
    tell_progress(progress, 1.0);
    return result;
}

Installation Calibration::applied_to(Installation installation, const Parts& parts) const {
    if (!installation.store || installation.store->medium != medium) {
        refuse("installation", installation.store ? installation.store->medium : "(no store)",
               "the installation whose store was logged", say<"calibration.same_store">());
    }
    const Parts merged = merged_parts(parts, installation);
    Medium measured = find_medium(merged, medium);
    for (TablePoint& point : measured.conductivity_w_mk) {
        point.value *= k20_w_mk.value / measured.k20_w_mk;
    }
    measured.k20_w_mk = k20_w_mk.value;
    measured.k20_low_w_mk = k20_w_mk.low;
    measured.k20_high_w_mk = k20_w_mk.high;
    for (const char* field : {"k20_w_mk", "k20_low_w_mk", "k20_high_w_mk"}) {
        measured.provenance.source_of[field] = "measured";
    }
    const auto same =
        std::find_if(installation.parts.media.begin(), installation.parts.media.end(),
                     [&measured](const Medium& inlined) { return inlined.id == measured.id; });
    if (same == installation.parts.media.end()) {
        installation.parts.media.push_back(std::move(measured));
    } else {
        *same = std::move(measured);
    }
    installation.store->loss_factor = loss_factor.value;
    return installation;
}

}  // namespace heatmatch
