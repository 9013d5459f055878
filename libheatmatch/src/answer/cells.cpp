#include "answer/cells.hpp"

#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <variant>
#include <vector>

#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using answer_sentences::say;

Sentence name_cell(std::string_view name) {
    return sentence_of(Name{std::string(name)});
}

Sentence margin_cell(std::string_view name) {
    return name_cell(shown_margin_name(name));
}

Sentence duty_cell(const CodeDuty& duty) {
    const bool ground = duty.code == WiringCode::nec && duty.name == "earth-fault protection";
    return ground ? say<"duties.ground_fault">() : name_cell(duty.name);
}

Sentence severity_cell(Severity severity) {
    return severity == Severity::none ? say<"cell.no_finding">() : name_cell(word_of(severity));
}

Amount number(double value, int decimals, const Unit& unit) {
    return {.value = value, .unit = unit, .shown = Shown::number, .decimals = decimals};
}

Sentence number_cell(double value, int decimals, const Unit& unit) {
    return sentence_of(number(value, decimals, unit));
}

Amount fitted(double value, const Unit& unit) {
    return number(value, Amount::fit_decimals, unit);
}

Sentence unit_cell(const Unit& unit) {
    return sentence_of(Amount{.unit = unit, .shown = Shown::unit});
}

Sentence unknown_cell() {
    return say<"cell.unknown">();
}

Sentence degrees_cell(const std::optional<double>& celsius) {
    return celsius ? number_cell(*celsius, 0, unit::celsius) : unknown_cell();
}

Amount percent_number(double share) {
    return number(100.0 * share, 0, unit::percent);
}

Sentence panels_cell(const Circuit& circuit) {
    if (circuit.unlike) return sentence_of(Name{circuit.array_title()});
    return say<"cell.panels">(with<"group">(circuit.owned.group),
                              with<"panels">(circuit.panels.label()));
}

Sentence elements_cell(const Circuit& circuit) {
    if (circuit.bank.unlike) return name_cell(circuit.bank.label());
    return say<"cell.elements">(with<"element">(circuit.bank.element.id),
                                with<"bank">(circuit.bank.hookup.label()));
}

Sentence headroom_cell(const Margin& margin) {
    if (!margin.headroom) return {};
    return number_cell(std::min(*margin.headroom, 1.0), 2);
}

Sentence headroom_left_cell(const Candidate& candidate) {
    if (candidate.heat_unknown()) return unknown_cell();
    return number_cell(std::min(candidate.smallest_headroom(), 1.0), 2);
}

Sentence price_cell(const Candidate& candidate) {
    if (!candidate.price_to_buy) return unknown_cell();
    return number_cell(*candidate.price_to_buy, 0, unit::money);
}

Sentence month_word(int month) {
    static const std::array<Sentence, 12> words{
        say<"month.jan">(), say<"month.feb">(), say<"month.mar">(), say<"month.apr">(),
        say<"month.may">(), say<"month.jun">(), say<"month.jul">(), say<"month.aug">(),
        say<"month.sep">(), say<"month.oct">(), say<"month.nov">(), say<"month.dec">()};
    return words.at(static_cast<std::size_t>(month - 1));
}

}  // namespace heatmatch
