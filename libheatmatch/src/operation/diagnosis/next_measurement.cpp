#include "next_measurement.hpp"

#include "fault_variants.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/shown_word.hpp"

namespace heatmatch {

using diagnosis_sentences::say;

namespace {

constexpr double least_separation = 0.5;
constexpr double open_counts = 1e3;  // resistance above which it counts as open, in errors

/// Compares explanations for one measurement after the other.
class Comparison {
  public:
    Comparison(const FitProblem& problem, const std::vector<Explained>& explanations,
               const Circuit& circuit, const DiagnosisOptions& options)
        : problem_(problem), all_(explanations), circuit_(circuit), options_(options) {
        for (const FitRow& row : problem.rows) {
            for (std::size_t k = 0; k < quantities; ++k) {
                if (!std::isnan(row.read[k])) read_[k] = true;
            }
        }
        for (std::size_t e = 0; e < all_.size(); ++e) {
            states_.push_back(brightest(e));
            values_.push_back(
                predict(all_[e].fit->plant, states_[e].irradiance_w_m2, states_[e].cell_c));
        }
    }

    [[nodiscard]] std::vector<NextMeasurement> found() {
        meters();
        by_hand();
        other_sun();
        std::stable_sort(next_.begin(), next_.end(),
                         [](const auto& a, const auto& b) { return a.separation > b.separation; });
        return std::move(next_);
    }

  private:
    /// The sun of the brightest row that was fitted; a typical one without any.
    [[nodiscard]] SunAndCells brightest(std::size_t e) const {
        SunAndCells best{.irradiance_w_m2 = 0.0};
        for (std::size_t i = 0; i < problem_.rows.size(); ++i) {
            const SunAndCells& state = all_[e].fit->rows[i];
            if (problem_.rows[i].live() && state.irradiance_w_m2 > best.irradiance_w_m2) {
                best = state;
            }
        }
        constexpr double too_dark = 20.0;
        if (best.irradiance_w_m2 > too_dark) return best;
        return {.irradiance_w_m2 = options_.typical_sun_w_m2, .cell_c = 45.0};
    }

    void offer(Sentence reading, Sentence how, const Unit& unit, double share, double floor,
               const std::vector<double>& values) {
        const auto [low, high] = std::minmax_element(values.begin(), values.end());
        const double error = share * std::max(std::fabs(*low), 1e-9) + floor;
        const double separation = std::min((*high - *low) / error, open_counts);
        if (!(separation > least_separation)) return;
        Sentences each;
        for (std::size_t e = 0; e < all_.size(); ++e) {
            constexpr double as_good_as_open = 1e5;
            const auto fault = with<"fault">(shown_choice(all_[e].variant->kind));
            each.push_back(values[e] > as_good_as_open
                               ? say<"next.told_open">(fault)
                               : say<"next.told">(fault, with<"value">(values[e], unit)));
        }
        next_.push_back({.reading = std::move(reading),
                         .how = std::move(how),
                         .predictions = say<"next.predictions">(with<"each">(std::move(each))),
                         .separation = separation});
    }

    void quantity(std::size_t k, const char* field, Sentence how, const Unit& unit, double share,
                  double floor) {
        if (read_[k]) return;
        std::vector<double> values;
        for (const Values& each : values_) values.push_back(each[k]);
        offer(sentence_of(Name{field}), std::move(how), unit, share, floor, values);
    }

    void meters() {
        const DiagnosisOptions& o = options_;
        quantity(open_v, "open_v", say<"next.open_v.how">(), unit::volt, o.volt_share, o.volt_v);
        quantity(short_a, "short_a", say<"next.short_a.how">(), unit::ampere, o.ampere_share,
                 o.ampere_a);
        quantity(array_v, "array_v", say<"next.array_v.how">(), unit::volt, o.volt_share, o.volt_v);
        quantity(bank_v, "bank_v", say<"next.bank_v.how">(), unit::volt, o.volt_share, o.volt_v);
        quantity(bank_a, "bank_a", say<"next.bank_a.how">(), unit::ampere, o.ampere_share,
                 o.ampere_a);
        quantity(bank_ohm, "bank_ohm", say<"next.bank_ohm.how">(), unit::ohm, o.ohm_share,
                 o.ohm_ohm);
        quantity(irradiance, "irradiance_w_m2", say<"next.irradiance.how">(), unit::watt_per_m2,
                 o.irradiance_share, 5.0);
        std::vector<double> ohms;
        for (const Explained& each : all_) {
            const Plant& plant = each.fit->plant;
            ohms.push_back(plant.faulty_element_ohm > 0.0 ? plant.faulty_element_ohm
                                                          : plant.element_ohm);
        }
        offer(sentence_of(Name{"element_ohm"}), say<"next.element_ohm.how">(), unit::ohm,
              o.ohm_share, o.ohm_ohm, ohms);
    }

    void by_hand() {
        constexpr double k_per_w = 5.0;  // a bare joint in still air, from memory
        constexpr double hottest_k = 300.0;
        std::vector<double> joints;
        std::vector<double> cleaned;
        std::vector<double> panels;
        std::vector<double> counts;
        for (std::size_t e = 0; e < all_.size(); ++e) {
            const Plant& plant = all_[e].fit->plant;
            const FaultVariant& variant = *all_[e].variant;
            const bool of_number = variant.kind == FaultKind::another_number_of_elements;
            counts.push_back(of_number ? variant.hookup.count() : circuit_.bank.hookup.count());
            const double a = values_[e][bank_a];
            const double ohm = plant.joint_ohm + plant.array_joint_ohm;
            joints.push_back(std::min(a * a * ohm * k_per_w, hottest_k));
            const bool dirty = variant.kind == FaultKind::dirt;
            cleaned.push_back(dirty ? 1.0 / plant.sun_factor : 1.0);
            const double each =
                plant.diode.at(states_[e].irradiance_w_m2 * plant.sun_factor, states_[e].cell_c)
                    .open_circuit_voltage_v();
            const bool sections = variant.kind == FaultKind::section_bypassed;
            const double lost = sections ? std::min(1.0, static_cast<double>(variant.count) /
                                                             sections_of(circuit_.panel.panel))
                                         : 0.0;
            panels.push_back(each * (1.0 - lost));
        }
        offer(say<"next.count">(), say<"next.count.how">(), unit::count, 0.0, 0.1, counts);
        offer(say<"next.joints">(), say<"next.joints.how">(), unit::kelvin, 0.0,
              options_.temperature_k, joints);
        offer(say<"next.cleaned">(), say<"next.cleaned.how">(), unit::none, 0.03, 0.0, cleaned);
        offer(say<"next.each_panel">(with<"field">(Name{"open_v"})), say<"next.each_panel.how">(),
              unit::volt, options_.volt_share, options_.volt_v, panels);
    }

    /// The same meters at another irradiance: explanations that agree at one load may differ at
    /// another.
    void other_sun() {
        double other = 1.0;
        std::vector<double> currents;
        for (std::size_t e = 0; e < all_.size(); ++e) {
            const double here = states_[e].irradiance_w_m2;
            constexpr double bright = 500.0;
            other = here > bright ? 0.35 : 2.5;
            const Values there = predict(all_[e].fit->plant, here * other, states_[e].cell_c);
            currents.push_back(there[bank_a]);
        }
        const auto volts = with<"volts">(Name{"bank_v"});
        const auto amperes = with<"amperes">(Name{"bank_a"});
        offer(other < 1.0 ? say<"next.dim">(volts, amperes) : say<"next.bright">(volts, amperes),
              say<"next.other_sun.how">(), unit::ampere, options_.ampere_share, options_.ampere_a,
              currents);
    }

    const FitProblem& problem_;
    const std::vector<Explained>& all_;
    const Circuit& circuit_;
    const DiagnosisOptions& options_;
    std::array<bool, quantities> read_{};
    std::vector<SunAndCells> states_{};
    std::vector<Values> values_{};
    std::vector<NextMeasurement> next_{};
};

}  // namespace

std::vector<NextMeasurement> next_measurements(const FitProblem& problem,
                                               const std::vector<Explained>& explanations,
                                               const Circuit& circuit,
                                               const DiagnosisOptions& options) {
    if (explanations.size() < 2) return {};
    return Comparison(problem, explanations, circuit, options).found();
}

NextMeasurement fill_measurement() {
    return {.reading =
                say<"next.fill">(with<"sheath">(Name{"sheath_c"}), with<"store">(Name{"store_c"})),
            .how = say<"next.fill.how">(),
            .predictions = say<"next.fill.tells">()};
}

}  // namespace heatmatch
