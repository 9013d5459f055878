#include "evaluation.hpp"
#include "fact_path.hpp"
#include "recommend.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

namespace {

using rank_sentences::say;

/// The context with fewer requirements; restored at the end.
class Asking {
  public:
    Asking(ScreenContext& context, Installation& judged)
        : context_(context), judged_(judged), options_(context.options), goals_(judged.goals) {
        few_ = *options_;
        few_.top = 0;
        few_.keep_rejected = 1;
        if (options_->progress) {
            // It can still be stopped.
            few_.progress = [this](double) { return options_->progress(screening_share); };
        }
        context_.options = &few_;
    }
    Asking(const Asking&) = delete;
    Asking& operator=(const Asking&) = delete;
    Asking(Asking&&) = delete;
    Asking& operator=(Asking&&) = delete;
    ~Asking() {
        context_.options = options_;
        context_.relaxed = false;
        judged_.goals = goals_;
    }

    [[nodiscard]] bool has_budget() const { return judged_.goals.budget.has_value(); }
    void forget_budget() { judged_.goals.budget.reset(); }
    [[nodiscard]] bool has_volts() const { return judged_.goals.volts_max.has_value(); }
    void forget_volts() { judged_.goals.volts_max.reset(); }
    void remember_volts() { judged_.goals.volts_max = goals_.volts_max; }
    void relax() { context_.relaxed = true; }
    [[nodiscard]] Candidate candidate_of(const Pairing& pairing) const {
        return Evaluation(context_, {{pairing}}).run().front().front();
    }
    [[nodiscard]] const Goals& goals() const { return goals_; }

  private:
    ScreenContext& context_;
    Installation& judged_;
    const RankOptions* options_;
    Goals goals_;
    RankOptions few_{};
};

Sentence money(double amount, const std::string& currency) {
    const Amount number{.value = amount, .unit = unit::money};
    return currency.empty()
               ? sentence_of(number)
               : say<"lacks.money">(with<"amount">(number), with<"currency">(currency));
}

Sentence above_budget(const Candidate& cheapest, const Goals& goals) {
    const std::string& currency = cheapest.bill.currency;
    return say<"lacks.budget">(with<"budget">(money(goals.budget.value_or(0.0), currency)),
                               with<"bill">(money(cheapest.bill.typical().value_or(0.0), currency)),
                               with<"circuit">(cheapest.circuit.title()));
}

Amount volts_of(double volts) {
    return {.value = volts, .unit = unit::volt, .decimals = 0};
}

/// What could be recommended without the voltage of the goals.
Sentence above_volts(const Candidate& other, const Goals& goals) {
    return say<"lacks.volts">(with<"volts">(volts_of(goals.volts_max.value_or(0.0))),
                              with<"circuit">(other.circuit.title()),
                              with<"cold">(volts_of(other.circuit.cold_voltage_v())));
}

/// Facts that the deciding margins lack, each once, with the margins that need it.
Sentences missing_facts(const Candidate& candidate, const Installation& place) {
    std::vector<std::pair<Sentence, Sentences>> facts;
    for (const Margin* margin : undecided_margins(candidate)) {
        const Sentence name = sentence_of(Name{shown_margin_name(margin->name)});
        Sentences paths;
        for (const std::string& field : margin->missing) {
            paths.push_back(fact_path(place, candidate, *margin, field));
        }
        if (paths.empty()) paths.push_back(sentence_of(Name{margin->subject}));
        for (const Sentence& path : paths) {
            auto found = std::find_if(facts.begin(), facts.end(),
                                      [&path](const auto& fact) { return fact.first == path; });
            if (found == facts.end()) found = facts.insert(facts.end(), {path, {}});
            auto& names = found->second;
            if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
        }
    }
    Sentences lines;
    for (auto& [path, names] : facts) {
        lines.push_back(say<"lacks.fact">(with<"fact">(path), with<"margins">(std::move(names))));
    }
    return lines;
}

/// The first line of a bill whose price is not known.
Sentence missing_price(const Bill& bill) {
    for (const BillLine& line : bill.lines) {
        if (line.state == BillState::known) continue;
        if (line.state == BillState::no_part) return say<"lacks.part">(with<"why">(line.why));
        if (line.state == BillState::other_currency) {
            return say<"lacks.currency">(with<"part">(line.part));
        }
        return say<"lacks.price">(with<"part">(line.part));
    }
    return {};
}

/// The danger of a rejected pairing, and the device to buy that opens its circuit.
Sentence its_danger(const Candidate& rejected) {
    const Margin* const worst = rejected.worst();
    if (worst == nullptr) return {};
    for (const BillLine& line : rejected.bill.lines) {
        if (line.kind != PartKind::control || line.to_buy <= 0.0 || line.part.empty()) continue;
        return say<"lacks.purchase">(with<"circuit">(rejected.circuit.title()),
                                     with<"why">(worst->whole()), with<"part">(line.label));
    }
    return say<"lacks.danger">(with<"circuit">(rejected.circuit.title()),
                               with<"why">(worst->whole()));
}

/// All facts at once, at most six of them, then a price that is not known.
Sentence what_it_lacks(const Candidate& candidate, const Installation& place) {
    constexpr std::size_t most = 6;
    Sentences facts = missing_facts(candidate, place);
    Sentence price = missing_price(candidate.bill);
    if (facts.empty()) return price;
    Sentence more;
    if (facts.size() > most) {
        const auto rest = static_cast<double>(facts.size() - most);
        more = say<"lacks.more">(with<"count">(rest));
        facts.resize(most);
    }
    if (!price.empty()) price = say<"lacks.also">(with<"price">(std::move(price)));
    return say<"lacks.facts">(with<"facts">(std::move(facts)), with<"more">(std::move(more)),
                              with<"price">(std::move(price)));
}

}  // namespace

Sentence what_lacks(ScreenContext& context, Installation& judged) {
    if (context.banks.empty()) return say<"rank.no_element">();
    Asking asking(context, judged);
    if (asking.has_volts()) {
        asking.forget_volts();
        const Tally tally = screen_all(context);
        if (const Pairing* found = tally.shortlist.recommended()) {
            return above_volts(asking.candidate_of(*found), asking.goals());
        }
        asking.remember_volts();
    }
    if (asking.has_budget()) {
        asking.forget_budget();
        const Tally tally = screen_all(context);
        if (const Pairing* found = tally.shortlist.alternative(AlternativeKind::least_money)) {
            return above_budget(asking.candidate_of(*found), asking.goals());
        }
    }
    asking.relax();
    const Tally tally = screen_all(context);
    if (const Pairing* found = tally.shortlist.recommended()) {
        return what_it_lacks(asking.candidate_of(*found), judged);
    }
    const std::vector<Pairing> rejected = tally.rejected.sorted();
    if (rejected.empty() && tally.above_volts > 0) {
        const double volts = asking.goals().volts_max.value_or(0.0);
        return say<"lacks.no_array">(with<"volts">(volts_of(volts)));
    }
    if (rejected.empty()) return say<"rank.no_element">();
    return its_danger(asking.candidate_of(rejected.front()));
}

}  // namespace heatmatch
