#include "heatmatch/operation/calibration/calibration.hpp"

#include "sentences.hpp"
#include "settled_fit.hpp"
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
// The sheath of a field is accurate within 3 % of its rise and the loss within 6 % (BedField),
// however many probes agree: 3.035 standard errors.
constexpr double model_share_k20 = 0.01;
constexpr double model_share_loss = 0.02;
constexpr double joint_99 = 3.035;  // sqrt of the chi-square of two at 0.99

[[noreturn]] void refuse(const char* field, const std::string& value, const char* allowed,
                         Sentence remedy) {
    throw InvalidInput({.part = "calibration",
                        .field = field,
                        .value = value,
                        .allowed = allowed,
                        .remedy = std::move(remedy)});
}

double root_mean_square(std::span<const double> list) {
    double sum = 0.0;
    for (const double each : list) sum += each * each;
    return std::sqrt(sum / static_cast<double>(list.size()));
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
    if (candidate.circuit.bank.unlike) {
        refuse("elements", candidate.circuit.bank.label(), "equal elements",
               say<"calibration.equal_elements">());
    }
    if (!heat->store->others.empty()) {
        refuse("store", "heated by other circuits too", "one circuit",
               say<"calibration.one_circuit">());
    }
    double most_w = 0.0;
    for (const double power : log.power_w) most_w = std::max(most_w, power);
    if (most_w <= 0.0) {
        refuse("power_w", "0 W in every row", "above 0 W in some rows",
               say<"calibration.log_heated">());
    }
}

bool reads_sheath(const StoreLog& log) {
    for (std::size_t i = 0; i < log.probes.size(); ++i) {
        const auto& list = log.temperature_c[i];
        if (log.probes[i].place == ProbePlace::sheath &&
            std::any_of(list.begin() + 1, list.end(),
                        [](double each) { return std::isfinite(each); })) {
            return true;
        }
    }
    return false;
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
        // A fit that converges in four iterations reports three quarters.
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
    const Sought described{std::log(medium.k20_w_mk), 0.0};
    const SettledFit settled = settled_fit(fit, described);
    if (!settled.tells) {
        refuse("log", "equally probable for every conductivity and loss",
               "a log in which their effects differ", say<"calibration.probe_in_bed">());
    }
    Calibration result{.correlation = settled.correlation,
                       .residual_k = root_mean_square(settled.left),
                       .residual_before_k = root_mean_square(fit.residuals(described)),
                       .readings = fit.readings(),
                       .medium = medium.id,
                       .loss_factor_before = heat.store->store.loss_factor.value_or(1.0),
                       .remarks = log.remarks};
    if (!settled.settled) result.remarks.push_back(say<"calibration.not_settled">());
    result.k20_w_mk = fitted(settled.at[0], std::hypot(settled.error[0], model_share_k20), 1.0);
    result.loss_factor = fitted(settled.at[1], std::hypot(settled.error[1], model_share_loss),
                                result.loss_factor_before);
    tell(result, medium);
    if (!reads_sheath(log)) result.remarks.push_back(say<"calibration.no_sheath">());
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
