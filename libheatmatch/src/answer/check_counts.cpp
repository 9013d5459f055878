#include "heatmatch/answer/check_counts.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <utility>

#include "heatmatch/answer/duties_table.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

Amount whole_number(int count) {
    return number(static_cast<double>(count), 0);
}

/// Those of one kind: the checks for each field, with fields of the same checks combined.
std::vector<NotChecked> by_field(const Candidate& candidate, bool judged) {
    std::vector<NotChecked> fields;
    for (const Margin& margin : candidate.margins()) {
        const bool assessed = margin.severity != Severity::not_assessed;
        if (assessed != judged || (assessed && margin.missing.empty())) continue;
        std::vector<std::string> missing = margin.missing;
        if (missing.empty()) missing.emplace_back();
        for (const std::string& field : missing) {
            auto found = std::find_if(
                fields.begin(), fields.end(),
                [&field](const NotChecked& each) { return each.missing.front() == field; });
            if (found == fields.end()) {
                found = fields.insert(found, {.missing = {field}, .judged = judged});
            }
            CheckName check{margin.name, margin.subject};
            if (std::find(found->checks.begin(), found->checks.end(), check) ==
                found->checks.end()) {
                found->checks.push_back(std::move(check));
            }
        }
    }
    std::vector<NotChecked> groups;
    for (NotChecked& field : fields) {
        const auto same =
            std::find_if(groups.begin(), groups.end(), [&field](const NotChecked& group) {
                return group.checks == field.checks && !group.missing.front().empty();
            });
        if (same != groups.end() && !field.missing.front().empty()) {
            same->missing.push_back(std::move(field.missing.front()));
        } else {
            groups.push_back(std::move(field));
        }
    }
    for (NotChecked& group : groups) {
        if (group.missing.front().empty()) group.missing.clear();
    }
    std::stable_sort(groups.begin(), groups.end(), [](const NotChecked& a, const NotChecked& b) {
        return a.checks.size() > b.checks.size();
    });
    return groups;
}

/// The names of checks in a list, with their subject once: `joint, joint current (run "a")`.
Sentences named_checks(const std::vector<CheckName>& checks) {
    std::vector<std::pair<std::string, Sentences>> subjects;
    for (const CheckName& check : checks) {
        auto found = std::find_if(subjects.begin(), subjects.end(), [&check](const auto& subject) {
            return subject.first == check.subject;
        });
        if (found == subjects.end()) found = subjects.insert(found, {check.subject, {}});
        found->second.push_back(margin_cell(check.name));
    }
    Sentences named;
    for (auto& [subject, names] : subjects) {
        named.push_back(
            say<"counts.names">(with<"names">(std::move(names)), with<"subject">(subject)));
    }
    return named;
}

Sentence line_of_unchecked(const NotChecked& group) {
    Sentences checks = named_checks(group.checks);
    if (group.missing.empty()) return say<"counts.no_field">(with<"checks">(std::move(checks)));
    Sentences fields;
    for (const std::string& field : group.missing) fields.push_back(name_cell(field));
    if (group.judged) {
        return say<"counts.judged">(with<"fields">(std::move(fields)),
                                    with<"checks">(std::move(checks)));
    }
    return say<"counts.not_made">(with<"fields">(std::move(fields)),
                                  with<"checks">(std::move(checks)));
}

/// The warnings by name, each once; empty without any.
Sentence names_of_warnings(const Candidate& candidate) {
    Sentences names;
    for (const Margin& margin : candidate.margins()) {
        if (margin.severity != Severity::warning) continue;
        const Sentence name = margin_cell(margin.name);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return names.empty() ? Sentence{} : say<"counts.named">(with<"margins">(std::move(names)));
}

}  // namespace

CheckCounts check_counts(const Candidate& candidate) {
    CheckCounts counts;
    for (const Margin& margin : candidate.margins()) {
        counts.made += margin.severity == Severity::not_assessed ? 0 : 1;
        switch (margin.severity) {
            case Severity::none:
                ++counts.no_finding;
                break;
            case Severity::caution:
                ++counts.cautions;
                break;
            case Severity::warning:
                ++counts.warnings;
                break;
            case Severity::danger:
                ++counts.dangers;
                break;
            case Severity::not_assessed:
                ++counts.not_made;
                break;
        }
    }
    return counts;
}

std::vector<NotChecked> not_checked(const Candidate& candidate) {
    std::vector<NotChecked> all = by_field(candidate, false);
    for (NotChecked& group : by_field(candidate, true)) all.push_back(std::move(group));
    return all;
}

Sentence counts_sentence(const Candidate& candidate) {
    const CheckCounts counts = check_counts(candidate);
    return say<"counts.all">(with<"made">(whole_number(counts.made)),
                             with<"not_made">(whole_number(counts.not_made)),
                             with<"dangers">(whole_number(counts.dangers)),
                             with<"warnings">(whole_number(counts.warnings)),
                             with<"named">(names_of_warnings(candidate)),
                             with<"cautions">(whole_number(counts.cautions)),
                             with<"none">(whole_number(counts.no_finding)));
}

Sentences not_checked_lines(const Candidate& candidate) {
    Sentences lines;
    for (const NotChecked& group : not_checked(candidate)) {
        lines.push_back(line_of_unchecked(group));
    }
    Sentences duties;
    for (const CodeDuty& duty : duties_of(candidate)) {
        if (duty.met_by != DutyMeans::nobody_stated) continue;
        const Sentence name = duty_cell(duty);
        if (std::find(duties.begin(), duties.end(), name) == duties.end()) duties.push_back(name);
    }
    if (!duties.empty()) {
        lines.push_back(say<"counts.duties">(with<"duties">(std::move(duties))));
    }
    lines.push_back(say<"counts.never">());
    return lines;
}

}  // namespace heatmatch
