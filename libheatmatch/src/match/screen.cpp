#include "screen.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "heatmatch/match/array_margins.hpp"
#include "heatmatch/match/bank_margins.hpp"
#include "heatmatch/match/device_margins.hpp"
#include "heatmatch/match/run_margins.hpp"
#include "heatmatch/match/store_margins.hpp"

namespace heatmatch {

namespace {

constexpr double unknown_price = std::numeric_limits<double>::infinity();
constexpr std::size_t bright_points = 256;

int count_not_assessed(const std::vector<Margin>& margins) {
    return static_cast<int>(std::count_if(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.severity == Severity::not_assessed;
    }));
}

/// An array with its runs, in numbers.
struct Wiring {
    Hookup panels{};
    double ln_factor = 0.0;       //!< ln of S/P
    double cold_voltage_v = 0.0;  //!< of the array
    double wire_ohm = 0.0;
    double run_price = 0.0;  //!< of chosen wire; infinite if unknown
    Screened screened{};     //!< over the margins that no element changes
    std::uint32_t reason = 0;
    int not_assessed = 0;
    std::optional<double> terminal_c{};  //!< where the wire meets the elements
};

/// One group while its pairings are screened.
class GroupScreen {
  public:
    GroupScreen(const ScreenContext& context, std::size_t group, Tally& tally)
        : context_(context),
          group_(group),
          tally_(tally),
          panel_(panel_of(context, group)),
          noon_ohm_(*panel_.panel.v_mp / *panel_.panel.i_mp),
          bright_diode_(brightest_panel(panel_)),
          budget_(context.installation->goals.budget.value_or(unknown_price)),
          has_budget_(context.installation->goals.budget.has_value()) {
        const Site& site = context.installation->site;
        const VectorWidth width = context.options->vector_width;
        const WeatherNodes brightest{.irradiance_w_m2 = {site.bright_irradiance_w_m2},
                                     .base_c = {site.record_low_c + bright_cold_rise_k},
                                     .warming_w_m2 = {0.0},
                                     .hours = {1000.0}};  // kWh over 1000 h: watts
        bright_ = EnergyCurve(bright_diode_, *panel_.panel.noct_c, brightest, noon_ohm_, width,
                              bright_points);
        ln_bright_best_ = std::log(bright_.best_resistance_ohm());
        bright_most_w_ = bright_.table().at(ln_bright_best_);
        if (context.season != nullptr) {
            energy_ = EnergyCurve(panel_.today, *panel_.panel.noct_c, context.season->season,
                                  noon_ohm_, width);
        } else {
            for (const Condition& condition : context.options->conditions) {
                conditions_.push_back(
                    panel_.today.at(condition.irradiance_w_m2, condition.cell_temperature_c));
            }
        }
        for (const char* name : {"sheath voltage", "terminal temperature", "element power",
                                 "budget", "price not known"}) {
            numbers_of_reasons_.push_back(context.reasons->number(name));
        }
    }

    void run() {
        for (Hookup panels : hookups_up_to(context_.installation->panels[group_].count)) {
            Wiring wiring;
            for (std::size_t b = 0; b < context_.bank_hookups.size(); ++b) {
                if (b == 0 || context_.branch_runs) {
                    wiring = lay(panels, context_.bank_hookups[b]);
                }
                if (wiring.wire_ohm > 0.0) {
                    screen<true>(wiring, context_.numbers[b]);
                } else {
                    screen<false>(wiring, context_.numbers[b]);
                }
            }
            tally_.left_out += context_.not_fixed;
        }
    }

  private:
    enum Reason { sheath, terminal, power, budget, price };

    Wiring lay(Hookup panels, Hookup bank) {
        Wiring wiring{.panels = panels,
                      .ln_factor = std::log(panels.resistance_factor()),
                      .cold_voltage_v = panel_.cold.v_oc * panels.series};
        if (context_.plain) {
            const ArrayScreened array = screen_array(panel_, panels);
            wiring.screened = array.screened;
            wiring.not_assessed = array.not_assessed;
        } else {
            const Installation& installation = *context_.installation;
            frame_ = frame_of(context_, group_, panel_, panels, bank);
            const Circuit& frame = *frame_;
            std::vector<Margin> margins = array_margins(frame, installation.site);
            for (auto&& more :
                 {run_margins(frame, installation.site), device_margins(frame, installation)}) {
                margins.insert(margins.end(), more.begin(), more.end());
            }
            wiring.screened = screen_margins(margins);
            wiring.not_assessed = count_not_assessed(margins);
            wiring.wire_ohm = frame.wire_ohm();
            wiring.terminal_c = terminal_temperature_c(frame, installation.site);
            Circuit only_runs = frame;
            only_runs.bank.owned = bank.count();
            wiring.run_price = price_to_buy(only_runs).value_or(unknown_price);
        }
        if (wiring.screened.headroom < 0.0) {
            wiring.reason = context_.reasons->number(wiring.screened.reason);
        }
        return wiring;
    }

    /// Season energy, or mean power over the conditions, of the array into the bank.
    template <bool has_wire>
    double merit(const Wiring& wiring, const BankNumbers& bank, const CurveTable& energy) const {
        const double total = has_wire ? bank.typical_ohm + wiring.wire_ohm : bank.typical_ohm;
        if (context_.season != nullptr) {
            const double ln_total = has_wire ? std::log(total) : bank.ln_typical;
            return wiring.panels.count() * energy.at(ln_total - wiring.ln_factor) *
                   (has_wire ? bank.typical_ohm / total : 1.0);
        }
        const double each = total / wiring.panels.resistance_factor();
        double sum = 0.0;
        for (const DiodeCurve& curve : conditions_) {
            const double current = curve.into_resistance(each).current_a * wiring.panels.parallel;
            sum += current * current * bank.typical_ohm;
        }
        return sum / static_cast<double>(conditions_.size());
    }

    /// The most that the bank can be given within its band of ohms, never too low.
    double most_power_w(const Wiring& wiring, const BankNumbers& bank,
                        const CurveTable& bright) const {
        const bool wire = wiring.wire_ohm > 0.0;
        const double low =
            (wire ? std::log(bank.low_ohm + wiring.wire_ohm) : bank.ln_low) - wiring.ln_factor;
        const double high =
            (wire ? std::log(bank.high_ohm + wiring.wire_ohm) : bank.ln_high) - wiring.ln_factor;
        if (high < ln_bright_best_) return wiring.panels.count() * bright.at(high);
        if (low > ln_bright_best_) return wiring.panels.count() * bright.at(low);
        return wiring.panels.count() * bright_most_w_;
    }

    Extremes exact_extremes(const Wiring& wiring, const Bank& bank) const {
        const ArrayCurve bright = bright_curve(panel_, wiring.panels, context_.installation->site);
        return extremes(bright, bank, wiring.wire_ohm);
    }

    /// Whether an element takes more than it may; bounds first, for they cost little.
    bool overloads(const Wiring& wiring, const BankNumbers& bank, const CurveTable& bright) const {
        if (!bank.limits.element_power_w) return false;
        const double limit = *bank.limits.element_power_w;
        constexpr double table_error = 1e-3;
        const double most = most_power_w(wiring, bank, bright) * bank.largest_share;
        if (most < limit * (1.0 - table_error)) return false;
        const Bank& whole = context_.banks[bank.bank];
        const double total = bank.typical_ohm + wiring.wire_ohm;
        const double typical = wiring.panels.count() *
                               bright.at(std::log(total) - wiring.ln_factor) * bank.typical_ohm /
                               total / whole.hookup.count();
        if (typical > limit * (1.0 + table_error)) return true;
        return exact_extremes(wiring, whole).element_power_w > limit;
    }

    template <bool has_wire>
    void screen(const Wiring& wiring, const std::vector<BankNumbers>& banks) {
        const CurveTable energy = energy_.grid_ohm().empty() ? CurveTable{} : energy_.table();
        const CurveTable bright = bright_.table();
        for (const BankNumbers& bank : banks) {
            ++tally_.evaluated;
            Pairing pairing{.group = group_,
                            .bank = bank.bank,
                            .panels = wiring.panels,
                            .merit = merit<has_wire>(wiring, bank, energy),
                            .headroom = wiring.screened.headroom,
                            .price = wiring.run_price + bank.price,
                            .reason = wiring.reason};
            const auto keep_smaller = [&](const std::optional<double>& limit, double value,
                                          double rest, Reason reason) {
                if (!limit) return;
                pairing.headroom = std::min(pairing.headroom, (*limit - value) / (*limit - rest));
                const bool fails = value > *limit && pairing.reason == 0;
                if (fails) pairing.reason = numbers_of_reasons_[reason];
            };
            keep_smaller(bank.limits.sheath_voltage_v, wiring.cold_voltage_v, 0.0, sheath);
            if (wiring.terminal_c) {
                keep_smaller(bank.limits.terminal_c, *wiring.terminal_c, room_c, terminal);
            }
            if (pairing.reason == 0 && overloads(wiring, bank, bright)) {
                pairing.reason = numbers_of_reasons_[power];
            }
            if (pairing.reason != 0) {
                tally_.count(pairing.reason);
                if (tally_.rejected.may_enter(pairing.merit)) tally_.rejected.offer(pairing);
                continue;
            }
            if (has_budget_ && pairing.price > budget_) {
                tally_.count(numbers_of_reasons_[std::isinf(pairing.price) ? price : budget]);
                continue;
            }
            keep(wiring, bank, pairing);
        }
    }

    /// Only what may be kept gets its exact headroom and its count of unknowns.
    void keep(const Wiring& wiring, const BankNumbers& numbers, Pairing& pairing) {
        const bool may_be_kept = tally_.kept.may_enter(pairing.merit);
        const bool may_be_front =
            tally_.front.may_enter(pairing.merit, pairing.headroom, pairing.price);
        if (!may_be_kept && !may_be_front) return;
        const Bank& bank = context_.banks[numbers.bank];
        const Screened by_bank = screen_bank(exact_extremes(wiring, bank), numbers.limits,
                                             wiring.cold_voltage_v, wiring.terminal_c);
        pairing.headroom = std::min(by_bank.headroom, wiring.screened.headroom);
        pairing.not_assessed = wiring.not_assessed + bank_not_assessed(wiring, bank, numbers.bank);
        if (may_be_kept) tally_.kept.offer(pairing);
        tally_.front.offer(pairing);
    }

    /// How many margins of the bank and the store lack data; the operating point does not matter.
    int bank_not_assessed(const Wiring& wiring, const Bank& bank, std::size_t index) {
        auto& lacking = wiring.terminal_c ? lacking_with_terminal_ : lacking_;
        if (lacking.empty()) lacking.assign(context_.banks.size(), -1);
        if (lacking[index] < 0) {
            const Installation& installation = *context_.installation;
            if (context_.plain) {
                frame_ = frame_of(context_, group_, panel_, wiring.panels, bank.hookup);
            }
            Circuit circuit = *frame_;
            circuit.bank = bank;
            lacking[index] =
                count_not_assessed(bank_margins(circuit, installation.site, Extremes{})) +
                count_not_assessed(store_margins(circuit, installation));
        }
        return lacking[index];
    }

    const ScreenContext& context_;
    std::size_t group_;
    Tally& tally_;
    PanelInService panel_;
    double noon_ohm_;
    SingleDiode bright_diode_;
    double budget_;
    bool has_budget_;
    EnergyCurve bright_{};
    double ln_bright_best_ = 0.0;
    double bright_most_w_ = 0.0;
    EnergyCurve energy_{};
    std::vector<DiodeCurve> conditions_{};
    std::vector<std::uint32_t> numbers_of_reasons_{};
    std::optional<Circuit> frame_{};  //!< of the wiring at hand
    std::vector<int> lacking_{};
    std::vector<int> lacking_with_terminal_{};
};

}  // namespace

void screen_group(const ScreenContext& context, std::size_t group, Tally& tally) {
    GroupScreen(context, group, tally).run();
}

}  // namespace heatmatch
