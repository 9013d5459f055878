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
    std::vector<std::string> words = naming_words(answer);
    std::erase(words, "old");
    for (const Panel& panel : draft.parts.panels) {
        if (std::find(words.begin(), words.end(), panel.id) != words.end()) {
            found = panel;
            return {};
        }
    }
    const std::vector<double> watts = answer.of(unit::watt);
    if (watts.empty() && words.empty()) return not_understood(draft, QuestionKind::panels, answer);
    std::vector<std::string> fitting;
    std::vector<std::string> labels;
    for (const Panel& panel : draft.parts.panels) {
        const double rated_w = panel.v_mp.value_or(0.0) * panel.i_mp.value_or(0.0);
        const bool near = watts.empty() || std::fabs(rated_w / watts.front() - 1.0) <= near_share;
        if (near && has_all(in_lower_case(panel.label + ' ' + panel.id), words)) {
            fitting.push_back(panel.id);
            labels.push_back(panel.label);
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
                                      with<"names">(listed_names(fitting, labels))));
}

}  // namespace

Sentence open_panels() {
    return say<"start.panels.open">(with<"count">(static_cast<double>(start_panel_count)),
                                    with<"panel">(start_panel));
}

namespace {

Understanding answer_panel_group(StartDraft& draft, const PlainAnswer& answer) {
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
    std::vector<std::string> words = naming_words(answer);
    if (!age.empty()) std::erase(words, "old");
    std::string rest = by_label ? joined_words(words) : std::string();
    if (!by_label && answer.has_word("old") && age.empty()) rest = "old";
    // The label's watts follow from Vmp and Imp: they are not a field of their own.
    const bool rated = by_label && !answer.of(unit::watt).empty();
    if (rated && (volts.size() < 2 || amperes.size() < 2)) rest = "W";
    if (by_label && (volts.size() > 2 || amperes.size() > 2)) rest = "V, A";
    if (!by_label && !volts.empty()) rest = "V";
    if (!by_label && !amperes.empty()) rest = "A";
    const std::size_t pieces = answer.pieces() ? 1 : 0;
    if (answer.bare().size() > pieces) rest = format_number(answer.bare().back());
    if (!rest.empty()) return refused(leftover(answer, rest));
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
    const Sentence mpp = panel.v_mp && panel.i_mp
                             ? say<"start.and_vmp">(with<"volts">(*panel.v_mp, unit::volt),
                                                    with<"amperes">(*panel.i_mp, unit::ampere))
                             : Sentence{};
    const Sentence system =
        panel.max_system_voltage_v
            ? say<"start.and_system">(with<"volts">(*panel.max_system_voltage_v, unit::volt))
            : Sentence{};
    const Sentence years =
        owned.age_years ? say<"start.aged">(with<"age">(*owned.age_years, unit::year)) : Sentence{};
    return {.said = say<"start.is_panels">(
                with<"count">(count.value), with<"label">(panel.label),
                with<"volts">(panel.v_oc, unit::volt), with<"amperes">(panel.i_sc, unit::ampere),
                with<"mpp">(mpp), with<"system">(system), with<"age">(years))};
}

}  // namespace

Understanding answer_panels(StartDraft& draft, const PlainAnswer& answer) {
    return answer_in_groups(draft, answer, answer_panel_group);
}

}  // namespace heatmatch
