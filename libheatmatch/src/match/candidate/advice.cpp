#include "heatmatch/match/candidate/advice.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <optional>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"

namespace heatmatch {

namespace {

using candidate_sentences::say;

constexpr int most_elements = 16;
constexpr int most_legs = 24;

/// The same bank with one change, and the largest power of one element then.
class Changed {
  public:
    Changed(const Circuit& circuit, bool with_stagnation)
        : store_(*circuit.heat->store),
          element_(circuit.bank.element),
          elements_(circuit.heat->elements),
          bank_(&circuit.bank),
          with_stagnation_(with_stagnation) {}

    FilledStore& store() { return store_; }
    Element& element() { return element_; }
    void set_elements(int count) { elements_ = count; }

    [[nodiscard]] std::shared_ptr<const BankHeat> heat() const {
        return bank_heat(std::make_shared<const FilledStore>(store_), element_, bank_->sheath,
                         bank_->alloy, elements_);
    }
    [[nodiscard]] double largest_w() const {
        return heat()->largest_element_w(with_stagnation_).value_or(0.0);
    }

  private:
    FilledStore store_;
    Element element_;
    int elements_;
    const Bank* bank_;
    bool with_stagnation_;
};

/// Smallest x of a range where `passes` is true, by bisection; empty where it is false at the high
/// end.
template <class Passes>
std::optional<double> smallest(double low, double high, const Passes& passes) {
    if (!passes(high)) return std::nullopt;
    constexpr int halvings = 24;
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (low + high);
        (passes(middle) ? high : low) = middle;
    }
    return high;
}

void advise_length(Advice& advice, const Circuit& circuit, bool with_stagnation) {
    const double now_mm = *circuit.bank.element.heated_length_mm;
    Changed changed(circuit, with_stagnation);
    const auto passes = [&](double length_mm) {
        changed.element().heated_length_mm = length_mm;
        return changed.largest_w() >= advice.element_w;
    };
    constexpr double longest = 20.0;
    constexpr double longest_field_mm = 200000.0;  // limit of the field
    const double longest_mm = std::min(longest * now_mm, longest_field_mm);
    // Grows by an eighth until it passes. Longer legs than the vessel do not fit, so the present
    // largest power per centimeter is used for them.
    double length_mm = now_mm;
    while (length_mm <= longest_mm && !passes(length_mm)) length_mm *= 1.125;
    if (length_mm <= longest_mm) {
        advice.heated_length_mm = smallest(now_mm, length_mm, passes);
        advice.length_fits = true;
        return;
    }
    if (advice.largest_element_w && *advice.largest_element_w > 0.0) {
        advice.heated_length_mm = now_mm * advice.element_w / *advice.largest_element_w;
    }
}

void advise_spacing(Advice& advice, const Circuit& circuit, bool with_stagnation) {
    if (circuit.heat->elements < 2) return;
    Changed changed(circuit, with_stagnation);
    const auto passes = [&](double spacing_mm) {
        changed.store().store.element_spacing_mm = spacing_mm;
        return changed.largest_w() >= advice.element_w;
    };
    constexpr double step = 1.1;
    constexpr double widest_field_mm = 5000.0;  // limit of the field
    const double widest_mm =
        std::min(2000.0 * circuit.heat->careful.shell.radius_m, widest_field_mm);
    const double now_mm = circuit.heat->store->store.element_spacing_mm.value_or(60.0);
    double spacing_mm = now_mm;
    while (spacing_mm <= widest_mm && !passes(spacing_mm)) spacing_mm *= step;
    if (spacing_mm <= widest_mm) {
        advice.element_spacing_mm = smallest(now_mm, spacing_mm, passes);
    }
}

void advise_count(Advice& advice, const Circuit& circuit, bool with_stagnation) {
    const int now = circuit.heat->elements;
    const double bank_w = advice.element_w * now;
    Changed changed(circuit, with_stagnation);
    for (int count = now + 1; count <= most_elements; ++count) {
        changed.set_elements(count);
        if (changed.largest_w() * count < bank_w) continue;
        advice.elements = count;
        return;
    }
}

void advise_legs(Advice& advice, const Circuit& circuit) {
    Changed changed(circuit, false);
    const int now = circuit.bank.element.legs.value_or(1);
    for (int legs = now + 1; legs <= most_legs; ++legs) {
        changed.element().legs = legs;
        if (!changed.heat()->misfit.empty()) continue;
        advice.legs = legs;
        return;
    }
}

void tell(Advice& advice, const Circuit& circuit) {
    Sentences& told = advice.sentences;
    if (advice.largest_element_w) {
        told.push_back(
            say<"advice.may_take">(with<"element">(circuit.bank.element.id),
                                   with<"most">(*advice.largest_element_w, unit::watt),
                                   with<"density">(*advice.largest_w_per_cm, unit::watt_per_cm),
                                   with<"takes">(advice.element_w, unit::watt)));
    }
    if (advice.within_limit) return;
    if (advice.elements) {
        told.push_back(say<"advice.more_elements">(with<"count">(*advice.elements)));
    }
    if (advice.heated_length_mm) {
        const auto length = with<"length">(*advice.heated_length_mm, unit::millimetre);
        const auto now = with<"now">(*circuit.bank.element.heated_length_mm, unit::millimetre);
        told.push_back(advice.length_fits ? say<"advice.longer">(length, now)
                                          : say<"advice.longer_than_fits">(length, now));
    }
    if (advice.element_spacing_mm) {
        told.push_back(
            say<"advice.apart">(with<"spacing">(*advice.element_spacing_mm, unit::millimetre)));
    }
    if (!advice.elements && !advice.heated_length_mm && !advice.element_spacing_mm) {
        told.push_back(say<"advice.nothing">());
    }
}

/// For the element of an unlike bank that is nearest to its limit, beside the others.
Advice advise_nearest(const Candidate& candidate) {
    std::optional<Candidate> nearest;
    double smallest = std::numeric_limits<double>::infinity();
    for (const ElementSeen& one : elements_seen(candidate.circuit, candidate.bright)) {
        const double most_w = one.circuit.heat->largest_element_w(true).value_or(0.0);
        const double share = most_w / std::max(one.bright.element_power_w, 1e-9);
        if (share >= smallest) continue;
        smallest = share;
        nearest = Candidate{.circuit = one.circuit, .site = candidate.site, .bright = one.bright};
    }
    return nearest ? advise(*nearest) : Advice{};
}

}  // namespace

Advice advise(const Candidate& candidate) {
    const Circuit& circuit = candidate.circuit;
    Advice advice{.element_w = candidate.bright.element_power_w};
    if (!circuit.heat || !circuit.heat->missing.empty()) {
        advice.sentences.push_back(
            circuit.heat ? say<"advice.missing">(with<"field">(circuit.heat->missing.front()))
                         : say<"advice.no_store">());
        return advice;
    }
    if (!circuit.heat->misfit.empty()) {
        if (!circuit.bank.unlike) advise_legs(advice, circuit);
        advice.sentences.push_back(say<"advice.misfit">(with<"misfit">(circuit.heat->misfit)));
        if (advice.legs) {
            advice.sentences.push_back(say<"advice.more_legs">(with<"legs">(*advice.legs)));
        }
        return advice;
    }
    if (circuit.bank.unlike) return advise_nearest(candidate);
    // The limit counts if it acts in time.
    const auto by_day = circuit.heat->largest_element_w(false);
    const bool with_stagnation =
        !by_day || !limit_counts(circuit, *by_day, opening_site(candidate.site));
    // In a liquid only burnout limits the sheath, and burnout is not modeled.
    if (!circuit.heat->liquid) {
        advice.largest_element_w = circuit.heat->largest_element_w(with_stagnation);
    }
    if (!advice.largest_element_w) {
        advice.sentences.push_back(circuit.heat->liquid ? say<"advice.liquid">()
                                                        : say<"advice.unknown_sheath">());
        return advice;
    }
    advice.largest_w_per_cm = *advice.largest_element_w * circuit.heat->elements /
                              (100.0 * circuit.heat->heated_length_m);
    advice.within_limit = advice.element_w <= *advice.largest_element_w;
    if (!advice.within_limit) {
        advise_length(advice, circuit, with_stagnation);
        advise_spacing(advice, circuit, with_stagnation);
        if (!circuit.bank.place) advise_count(advice, circuit, with_stagnation);
    }
    tell(advice, circuit);
    return advice;
}

}  // namespace heatmatch
