#include "answer/start_draft.hpp"
#include "answer/start_names.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace heatmatch {

using start_sentences::say;

namespace {

constexpr double same_share = 0.03;  // of the rating of an element

bool rated_so(const Element& element, const std::vector<double>& watts,
              const std::vector<double>& volts) {
    const auto same = [](const std::optional<double>& rated, const std::vector<double>& given) {
        return given.empty() || (rated && std::fabs(*rated / given.front() - 1.0) <= same_share);
    };
    return same(element.rated_w, watts) && same(element.rated_v, volts);
}

/// An element that the catalog does not have, by its rating.
Understanding own_element(StartDraft& draft, const PlainAnswer& answer, int count, double watts,
                          double volts) {
    for (const auto& [name, value, what] :
         {std::tuple("rated_w", watts, say<"start.what_watts">()),
          std::tuple("rated_v", volts, say<"start.what_volts">())}) {
        Sentence beyond = out_of_range(start_field(element_fields(), name), value, what);
        if (!beyond.empty()) return refused(std::move(beyond));
    }
    Element element{
        .id = "own-element-" + std::to_string(draft.made.elements.size() + 1),
        .label = "Own element, " + format_number(watts) + " W " + format_number(volts) + " V",
        .family = "own",
        .rated_v = volts,
        .rated_w = watts,
        .provenance = {.source = "its label", .source_kind = SourceKind::nameplate},
        .notes = answer.note};
    draft.made.elements.push_back({.element = element.id, .count = count});
    draft.made.parts.put(std::move(element));
    return {.said = say<"start.is_own_element">(with<"count">(static_cast<double>(count)),
                                                with<"watts">(watts, unit::watt),
                                                with<"volts">(volts, unit::volt))};
}

/// Shop words of one family as that word of the catalog.
void use_catalog_words(std::vector<std::string>& words) {
    bool boils = false;
    for (const char* shop : {"water", "geyser", "boiler", "hot-water", "water-heater"}) {
        boils = std::erase(words, shop) > 0 || boils;
    }
    const bool named = std::find(words.begin(), words.end(), "immersion") != words.end();
    if (boils && !named) words.emplace_back("immersion");
}

Understanding answer_element_group(StartDraft& draft, const PlainAnswer& answer) {
    const AnsweredNumber pieces =
        pieces_of_answer(answer, start_field(allowed_elements_fields(), "count"));
    if (!pieces.refused.empty()) return refused(pieces.refused);
    const int count = static_cast<int>(pieces.value);
    const std::vector<double> watts = answer.of(unit::watt);
    const std::vector<double> volts = answer.of(unit::volt);
    std::vector<std::string> words = naming_words(answer);
    use_catalog_words(words);
    const std::size_t used = (answer.pieces() ? 1U : 0U) + watts.size() + volts.size();
    if (answer.amounts.size() > used || watts.size() > 1 || volts.size() > 1) {
        return refused(leftover(answer, format_number(answer.amounts.back().value)));
    }
    if (watts.empty() && words.empty()) {
        return not_understood(draft, QuestionKind::elements, answer);
    }
    std::vector<std::string> fitting;
    std::vector<std::string> labels;
    const Element* found = nullptr;
    for (const Element& element : draft.parts.elements) {
        const bool named = std::find(words.begin(), words.end(), element.id) != words.end();
        const bool fits =
            rated_so(element, watts, volts) &&
            has_all(in_lower_case(element.label + ' ' + element.family + ' ' + element.id), words);
        if (!named && !fits) continue;
        if (named) fitting.clear();
        fitting.push_back(element.id);
        labels.push_back(element.label);
        found = &element;
        if (named) break;
    }
    if (fitting.empty() && words.empty() && !watts.empty() && !volts.empty()) {
        return own_element(draft, answer, count, watts.front(), volts.front());
    }
    if (fitting.empty()) {
        return no_such_part(draft.parts.elements, say<"start.element_kind">(), joined_words(words));
    }
    if (fitting.size() > 1) {
        return refused(say<"start.which_element">(
            with<"text">(answer.text), with<"count">(static_cast<double>(fitting.size())),
            with<"names">(listed_names(fitting, labels))));
    }
    draft.made.elements.push_back({.element = found->id, .count = count});
    const auto count_said = with<"count">(pieces.value);
    const auto label = with<"label">(found->label);
    if (std::find(words.begin(), words.end(), found->id) != words.end()) {
        return {.said = say<"start.is_elements">(count_said, label)};
    }
    return {.said = say<"start.taken">(count_said, label, with<"id">(Name{found->id}))};
}

}  // namespace

Understanding answer_elements(StartDraft& draft, const PlainAnswer& answer) {
    if (answer.has_word("none") || answer.has_word("no")) {
        return {.said = say<"start.elements.open">()};
    }
    return answer_in_groups(draft, answer, answer_element_group);
}

Understanding answer_spend(StartDraft& draft, const PlainAnswer& answer) {
    const bool nothing = answer.has_word("nothing") || answer.has_word("none") ||
                         answer.has_word("no") ||
                         (answer.amounts.size() == 1 && answer.amounts.front().value == 0.0);
    if (nothing) {
        if (draft.made.elements.empty()) return refused(say<"start.nothing_left">());
        draft.buys = false;
        draft.made.goals.budget = 0.0;
        draft.made.goals.currency = "USD";
        return {.said = say<"start.is_no_budget">()};
    }
    PlainAnswer without = answer;
    std::string currency;
    for (const auto& [sign, code] :
         {std::pair("$", "USD"), std::pair("\u20ac", "EUR"), std::pair("\u00a3", "GBP")}) {
        const std::size_t at = answer.text.find(sign);
        if (at == std::string::npos) continue;
        currency = code;
        std::string text = answer.text;
        text.erase(at, std::string_view(sign).size());
        without = read_plain_answer(text);
    }
    for (const std::string& word : without.words) {
        if (word.size() != 3 || !currency.empty()) continue;
        for (const char c : word) currency += static_cast<char>(c >= 'a' ? c - 'a' + 'A' : c);
    }
    const Field& field = start_field(goals_fields(), "budget");
    auto read = only_number(draft, QuestionKind::spend, without, field, say<"start.what_amount">());
    if (!read.refused.empty()) return refused(std::move(read.refused));
    if (!currency.empty() && currency != "USD") {
        return refused(say<"start.other_currency">(with<"currency">(currency)));
    }
    draft.made.goals.budget = read.value;
    draft.made.goals.currency = currency.empty() ? "USD" : currency;
    return {.said = say<"start.is_budget">(
                with<"amount">(Amount{.value = read.value, .unit = unit::money, .digits = 6}),
                with<"currency">(draft.made.goals.currency))};
}

}  // namespace heatmatch
