#include "heatmatch/match/plan/unlocks.hpp"

#include "plan_answers.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "heatmatch/match/candidate/wiring.hpp"

namespace heatmatch {

using plan_sentences::say;

namespace {

/// Rejected circuits that are looked at for each reason.
constexpr int most_of_a_reason = 2;

/// A change of the installation that is not tried yet.
struct Change {
    Installation changed{};
    Sentence said{};
};

/// A circuit that fails alone.
struct Rejected {
    ExistingCircuit circuit{};
    PlanVerdict verdict{};
    double kwh = 0.0;
};

/// The best plan at a headroom, without what is told beside it.
struct Quick {
    explicit Quick(const Parts& catalog, const Installation& installation,
                   const RankOptions& options)
        : task(PlanTask::make(catalog, installation, options)), pool(*task), search(pool) {}

    PlanOutcome best(const PlanRequirement& needed, const Progress& progress) {
        PlanRequirement few = needed;
        constexpr std::size_t most_checks = 400;
        few.most_checks = most_checks;
        few.most_ties = 0;
        few.unlike_banks = false;
        return search.best(few, progress);
    }

    std::unique_ptr<PlanTask> task;
    CircuitPool pool;
    PlanSearch search;
};

class UnlockFinder {
  public:
    UnlockFinder(const Parts& catalog, const Installation& installation, const Plan& plan,
                 const RankOptions& options)
        : catalog_(catalog),
          options_(options),
          plan_(plan),
          yard_(installation),
          now_(catalog, installation, options) {}

    std::vector<Unlock> find() {
        const PlanOutcome outcome =
            now_.best(requirement_of(yard_.goals, plan_.headroom), progress(0.0, first_part));
        for (const Rejected& rejected : rejected_circuits()) add_parts(rejected);
        add_goals(outcome);
        for (std::size_t i = 0; i < changes_.size(); ++i) {
            const double each = (1.0 - first_part) / static_cast<double>(changes_.size());
            attempt(changes_[i], progress(first_part + each * static_cast<double>(i), each));
        }
        std::stable_sort(unlocks_.begin(), unlocks_.end(),
                         [](const Unlock& a, const Unlock& b) { return a.kwh > b.kwh; });
        return std::move(unlocks_);
    }

  private:
    static constexpr double first_part = 0.2;

    [[nodiscard]] Progress progress(double from, double part) const {
        if (!options_.progress) return {};
        return [this, from, part](double share) { return options_.progress(from + part * share); };
    }

    /// Circuits that fail alone, by falling heat, few of each reason.
    std::vector<Rejected> rejected_circuits() {
        std::vector<Rejected> all;
        for (const auto& [choice, made] : now_.pool.made()) {
            if (!made || !made->judged) continue;
            const bool fails = made->verdict.danger || !made->verdict.assessed ||
                               made->verdict.headroom < plan_.headroom;
            if (!fails) continue;
            all.push_back({.circuit = now_.task->circuit(choice.array, choice.bank),
                           .verdict = made->verdict,
                           .kwh = made->kwh});
        }
        std::stable_sort(all.begin(), all.end(),
                         [](const Rejected& a, const Rejected& b) { return a.kwh > b.kwh; });
        std::map<std::pair<std::string, std::string>, int> of_reason;
        std::erase_if(all, [&](const Rejected& one) {
            return ++of_reason[{one.verdict.reason, one.verdict.subject}] > most_of_a_reason;
        });
        return all;
    }

    /// Whether a circuit meets the requirement alone in a changed installation.
    [[nodiscard]] bool frees(const Installation& changed, const ExistingCircuit& circuit) const {
        const PlanJudge judge(now_.task->parts, changed, options_, now_.task->weather);
        const PlanVerdict verdict = judge.judge({&circuit, 1});
        return !verdict.danger && verdict.assessed && verdict.headroom >= plan_.headroom;
    }

    /// Parts that its own bill lists beyond what the installation has: as a new device, or in the
    /// place of one; and another wire for the run that fails.
    void add_parts(const Rejected& rejected) {
        for (const WireRun& run : yard_.runs) {
            if (run.chooses() || rejected.verdict.subject != "run \"" + run.name + '"') continue;
            Installation changed = yard_;
            for (WireRun& other : changed.runs) {
                if (other.name == run.name) other.wire = "choose";
            }
            offer(rejected, std::move(changed),
                  say<"unlock.wire">(with<"run">(Name{run.name}), with<"wire">(Name{run.wire})));
        }
        const Circuit wired = now_.task->judge->wired(rejected.circuit);
        for (const BillLine& line : now_.task->judge->bill({&wired, 1}).lines) {
            if (line.kind != PartKind::control || line.part.empty() || is_listed(line.part)) {
                continue;
            }
            add_device(rejected, line.part);
        }
    }

    /// The name of a control in a shop.
    [[nodiscard]] std::string label_of(const std::string& part) const {
        const auto& controls = now_.task->parts->controls;
        const auto found = std::find_if(controls.begin(), controls.end(),
                                        [&](const Control& control) { return control.id == part; });
        return found == controls.end() || found->label.empty() ? part : found->label;
    }

    [[nodiscard]] bool is_listed(const std::string& part) const {
        return std::any_of(yard_.devices.begin(), yard_.devices.end(),
                           [&](const Device& device) { return device.part == part; });
    }

    void add_device(const Rejected& rejected, const std::string& part) {
        std::vector<std::string> places{""};
        for (const WireRun& run : yard_.runs) places.push_back(run.name);
        for (const Duty duty : {Duty::protects_a_string, Duty::breaks_dc}) {
            for (const std::string& run : places) {
                Installation changed = yard_;
                changed.devices.push_back({.part = part, .run = run, .duty = duty});
                Sentence said = run.empty()
                                    ? say<"unlock.add">(with<"device">(Name{label_of(part)}),
                                                        with<"duty">(word_of(duty)))
                                    : say<"unlock.add_in_run">(with<"device">(Name{label_of(part)}),
                                                               with<"run">(Name{run}),
                                                               with<"duty">(word_of(duty)));
                if (offer(rejected, std::move(changed), std::move(said))) return;
            }
        }
        for (std::size_t i = 0; i < yard_.devices.size(); ++i) {
            if (yard_.devices[i].duty != Duty::breaks_dc) continue;
            Installation changed = yard_;
            const std::string old = changed.devices[i].part;
            changed.devices[i].part = part;
            changed.devices[i].owned = 0;
            for (Device& device : changed.devices) {
                std::replace(device.drives.begin(), device.drives.end(), old, part);
            }
            Sentence said = say<"unlock.replace">(with<"old">(Name{label_of(old)}),
                                                  with<"device">(Name{label_of(part)}));
            if (offer(rejected, std::move(changed), std::move(said))) return;
        }
    }

    /// Keeps a change once, if it frees that circuit.
    bool offer(const Rejected& rejected, Installation changed, Sentence said) {
        if (!frees(changed, rejected.circuit)) return false;
        add(std::move(changed), std::move(said));
        return true;
    }

    void add(Installation changed, Sentence said) {
        const bool known = std::any_of(changes_.begin(), changes_.end(),
                                       [&](const Change& other) { return other.said == said; });
        if (!known) changes_.push_back({std::move(changed), std::move(said)});
    }

    /// Each goal that rejects a plan, without its limit.
    void add_goals(const PlanOutcome& outcome) {
        const Goals& goals = yard_.goals;
        const auto without = [this](auto Goals::*goal, Sentence said) {
            Installation changed = yard_;
            changed.goals.*goal = {};
            add(std::move(changed), std::move(said));
        };
        if (goals.budget && outcome.reasons.contains("budget")) {
            without(&Goals::budget, say<"unlock.budget">());
        }
        if (goals.volts_max) without(&Goals::volts_max, say<"unlock.volts">());
        if (goals.parts_max) without(&Goals::parts_max, say<"unlock.parts">());
        const int circuits = requirement_of(goals, 0.0).circuits_max;
        if (static_cast<int>(plan_.circuits.size()) < circuits) return;
        if (circuits >= most_planned_circuits) return;
        Installation changed = yard_;
        changed.goals.circuits_max = circuits + 1;
        add(std::move(changed),
            say<"unlock.circuits">(with<"count">(static_cast<double>(circuits + 1))));
    }

    /// Plans the changed yard, and keeps the change if its heat is worth it.
    void attempt(Change& change, const Progress& shown) {
        Quick then(catalog_, change.changed, options_);
        const PlanOutcome outcome =
            then.best(requirement_of(change.changed.goals, plan_.headroom), shown);
        if (!outcome.chosen) return;
        const FoundPlan& found = *outcome.chosen;
        Unlock unlock{.kwh = found.kwh - plan_.kwh, .change = change.said};
        if (unlock.kwh < least_unlocked_share * plan_.kwh || unlock.kwh <= 0.0) return;
        const double before = plan_.bill.typical().value_or(0.0);
        if (std::isfinite(found.verdict.price)) unlock.price = found.verdict.price - before;
        unlock.crosses_v = crossed_v(then, found);
        unlock.changed = std::move(change.changed);
        unlock.said = said_of(unlock);
        unlocks_.push_back(std::move(unlock));
    }

    /// The highest of the voltages from which more duties apply, if only the new plan exceeds it.
    [[nodiscard]] std::optional<double> crossed_v(Quick& then, const FoundPlan& found) const {
        double now_v = 0.0;
        double then_v = 0.0;
        for (const Candidate& candidate : plan_.circuits) {
            now_v = std::max(now_v, candidate.circuit.cold_voltage_v());
        }
        for (const PlanChoice& choice : found.circuits) {
            then_v = std::max(then_v, then.pool.at(choice).cold_v);
        }
        const double touch_v = yard_.site.counts_as_wet() ? 30.0 : 60.0;
        for (const double volts : {80.0, 60.0, 30.0}) {
            if (volts >= touch_v && then_v > volts && now_v <= volts) return volts;
        }
        return std::nullopt;
    }

    [[nodiscard]] Sentence said_of(const Unlock& unlock) const {
        const auto heat =
            with<"heat">(Amount{.value = unlock.kwh / plan_.days, .unit = unit::kilowatt_hour});
        const auto change = with<"change">(unlock.change);
        Sentence said =
            unlock.price
                ? say<"unlock.said">(change, heat,
                                     with<"price">(Amount{.value = *unlock.price, .decimals = 0}),
                                     with<"currency">(Name{plan_.bill.currency}))
                : say<"unlock.said_unpriced">(change, heat);
        if (!unlock.crosses_v) return said;
        return sentence_of(
            Sentences{std::move(said), say<"unlock.crosses">(with<"volts">(Amount{
                                           .value = *unlock.crosses_v, .unit = unit::volt}))});
    }

    const Parts& catalog_;
    const RankOptions& options_;
    const Plan& plan_;
    const Installation& yard_;
    Quick now_;
    std::vector<Change> changes_{};
    std::vector<Unlock> unlocks_{};
};

}  // namespace

double Unlock::price_per_kwh() const {
    return price ? *price / kwh : std::numeric_limits<double>::infinity();
}

std::vector<Unlock> unlocks(const Parts& catalog, const Installation& installation,
                            const Plan& plan, const RankOptions& options) {
    return UnlockFinder(catalog, installation, plan, options).find();
}

}  // namespace heatmatch
