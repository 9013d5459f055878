#include "answer/start_draft.hpp"
#include "answer/start_names.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace heatmatch {

using start_sentences::say;

namespace {

constexpr double near_share = 0.1;  // of the watts of a panel

std::string group_name(const Installation& made) {
    const std::size_t number = made.panels.size() + 1;
    return number == 1 ? "panels" : "panels " + std::to_string(number);
}

/// A panel by its label: two voltages and two currents, or one of each.
Understanding panel_by_label(Panel& panel, const std::vector<double>& volts,
                             const std::vector<double>& amperes) {
    for (const auto& [name, values, what] :
         {std::tuple("v_oc", &volts, say<"start.what_volts">()),
          std::tuple("i_sc", &amperes, say<"start.what_amperes">())}) {
        for (const double value : *values) {
            Sentence beyond = out_of_range(start_field(panel_fields(), name), value, what);
            if (!beyond.empty()) return refused(std::move(beyond));
        }
    }
    panel.v_oc = volts.front();
    panel.i_sc = amperes.front();
    if (volts.size() < 2 || amperes.size() < 2) return {};
    if (!(volts[0] > volts[1] && amperes[0] > amperes[1])) {
        return refused(say<"start.swapped">(
            with<"volts">(volts[0], unit::volt), with<"lower">(volts[1], unit::volt),
            with<"amperes">(amperes[0], unit::ampere), with<"less">(amperes[1], unit::ampere)));
    }
    panel.v_mp = volts[1];
    panel.i_mp = amperes[1];
    return {};
}

/// The panel of the catalog that an answer names or describes; empty with a refusal.
Understanding find_answered_panel(const StartDraft& draft, const PlainAnswer& answer,
                                  Panel& found) {
    const std::vector<std::string> words = naming_words(answer);
    for (const Panel& panel : draft.parts.panels) {
        if (std::find(words.begin(), words.end(), panel.id) != words.end()) {
            found = panel;
            return {};
        }
    }
    const std::vector<double> watts = answer.of(unit::watt);
    if (watts.empty() && words.empty()) return not_understood(draft, QuestionKind::panels, answer);
    std::vector<std::string> fitting;
    for (const Panel& panel : draft.parts.panels) {
        const double rated_w = panel.v_mp.value_or(0.0) * panel.i_mp.value_or(0.0);
        const bool near = watts.empty() || std::fabs(rated_w / watts.front() - 1.0) <= near_share;
        if (near && has_all(in_lower_case(panel.label + ' ' + panel.id), words)) {
            fitting.push_back(panel.id);
            found = panel;
        }
    }
    if (fitting.empty()) {
        return words.empty() ? not_understood(draft, QuestionKind::panels, answer)
                             : no_such_part(draft.parts.panels, say<"start.panel_kind">(),
                                            joined_words(words));
    }
    // The voltage does not follow from watts alone, even if only one kind of the catalog fits.
    if (fitting.size() == 1 && !words.empty()) return {};
    return refused(say<"start.which">(with<"text">(answer.text),
                                      with<"count">(static_cast<double>(fitting.size())),
                                      with<"names">(listed_names(fitting))));
}

}  // namespace

Sentence open_panels() {
    return say<"start.panels.open">(with<"count">(static_cast<double>(start_panel_count)),
                                    with<"panel">(start_panel));
}

Understanding answer_panels(StartDraft& draft, const PlainAnswer& answer) {
    OwnedPanels owned{.group = group_name(draft.made), .notes = answer.note};
    const AnsweredNumber count =
        pieces_of_answer(answer, start_field(owned_panels_fields(), "count"));
    if (!count.refused.empty()) return refused(count.refused);
    owned.count = static_cast<int>(count.value);
    const std::vector<double> age = answer.of(unit::year);
    if (!age.empty()) {
        Sentence beyond = out_of_range(start_field(owned_panels_fields(), "age_years"), age.front(),
                                       say<"start.what_age">());
        if (!beyond.empty()) return refused(std::move(beyond));
        owned.age_years = age.front();
    }
    std::vector<double> volts = answer.of(unit::volt);
    std::optional<double> system_v;
    const bool names_system =
        answer.has_word("max") || answer.has_word("maximum") || answer.has_word("system");
    if (names_system && volts.size() > 1) {
        const auto most = std::max_element(volts.begin(), volts.end());
        system_v = *most;
        volts.erase(most);
    }
    const std::vector<double> amperes = answer.of(unit::ampere);
    Panel panel;
    const bool by_label = !volts.empty() && !amperes.empty();
    Understanding read = by_label ? panel_by_label(panel, volts, amperes)
                                  : find_answered_panel(draft, answer, panel);
    if (!read.accepted) return read;
    if (by_label) {
        panel.id = "own-panel-" + std::to_string(draft.made.panels.size() + 1);
        panel.label =
            "Own panel, " + format_number(panel.v_oc) + " V " + format_number(panel.i_sc) + " A";
        panel.max_system_voltage_v = system_v;
        panel.provenance = {.source = "its label", .source_kind = SourceKind::nameplate};
        draft.made.parts.put(panel);
    }
    owned.panel = panel.id;
    draft.made.panels.push_back(owned);
    const Sentence years =
        owned.age_years ? say<"start.aged">(with<"age">(*owned.age_years, unit::year)) : Sentence{};
    return {.said = say<"start.is_panels">(with<"count">(count.value), with<"label">(panel.label),
                                           with<"volts">(panel.v_oc, unit::volt),
                                           with<"amperes">(panel.i_sc, unit::ampere),
                                           with<"age">(years))};
}

}  // namespace heatmatch
