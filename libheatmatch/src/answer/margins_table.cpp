#include "heatmatch/answer/margins_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace heatmatch {

using answer_sentences::say;

namespace {

constexpr std::array order{Severity::danger, Severity::warning, Severity::caution,
                           Severity::not_assessed, Severity::none};

std::ptrdiff_t rank_of(Severity severity) {
    return std::find(order.begin(), order.end(), severity) - order.begin();
}

Sentence told(const Margin& margin, bool missing) {
    if (!missing || margin.missing.empty()) return margin.whole();
    Sentences fields;
    for (const std::string& field : margin.missing) fields.push_back(name_cell(field));
    return sentence_of(
        Sentences{margin.whole(), say<"margins.missing">(with<"fields">(std::move(fields)))});
}

Sentence line_of(const Margin& margin, Sentences names, Sentence says) {
    return say<"margins.line">(with<"severity">(severity_cell(margin.severity)),
                               with<"margins">(std::move(names)), with<"subject">(margin.subject),
                               with<"says">(std::move(says)));
}

/// Margins that share subject and sentence in one line.
Sentences lines_of_not_assessed(const std::vector<const Margin*>& margins) {
    struct Line {
        const Margin* margin = nullptr;
        Sentence says{};
        Sentences names{};
    };
    std::vector<Line> lines;
    for (const Margin* margin : margins) {
        Sentence says = margin->whole();
        auto same = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
            return line.margin->subject == margin->subject && line.says == says;
        });
        if (same == lines.end()) {
            same = lines.insert(same, {.margin = margin, .says = std::move(says)});
        }
        same->names.push_back(margin_cell(margin->name));
    }
    Sentences all;
    for (Line& line : lines) {
        all.push_back(line_of(*line.margin, std::move(line.names), std::move(line.says)));
    }
    return all;
}

}  // namespace

std::vector<const Margin*> by_severity(const Candidate& candidate) {
    std::vector<const Margin*> margins;
    for (const Margin& margin : candidate.margins()) margins.push_back(&margin);
    std::stable_sort(margins.begin(), margins.end(), [](const Margin* a, const Margin* b) {
        return rank_of(a->severity) < rank_of(b->severity);
    });
    return margins;
}

Table margins_table(const Candidate& candidate, const MarginsTableOptions& options) {
    Table table{.title = say<"margins.title">(),
                .columns = {{.head = say<"head.severity">()},
                            {.head = say<"head.margin">()},
                            {.head = say<"head.subject">()},
                            {.head = say<"head.headroom">(), .number = true},
                            {.head = options.missing ? say<"head.says">() : Sentence{}}}};
    if (options.source) table.columns.push_back({.head = say<"head.source">()});
    for (const Margin* margin : by_severity(candidate)) {
        Sentences row{severity_cell(margin->severity), margin_cell(margin->name),
                      name_cell(margin->subject), headroom_cell(*margin),
                      told(*margin, options.missing)};
        if (options.source) row.push_back(name_cell(margin->source));
        table.rows.push_back(std::move(row));
    }
    return table;
}

Sentence margins_plain_title() {
    return say<"margins.plain_title">();
}

Sentences margin_lines(const Candidate& candidate, bool everything) {
    const std::vector<const Margin*> all = by_severity(candidate);
    Sentences lines;
    for (const Severity severity : order) {
        std::vector<const Margin*> margins;
        std::copy_if(all.begin(), all.end(), std::back_inserter(margins),
                     [severity](const Margin* margin) { return margin->severity == severity; });
        if (margins.empty()) continue;
        if (severity == Severity::none && !everything) {
            lines.push_back(say<"margins.others">(
                with<"count">(number(static_cast<double>(margins.size()), 0))));
        } else if (severity == Severity::not_assessed && !everything) {
            for (Sentence& line : lines_of_not_assessed(margins)) lines.push_back(std::move(line));
        } else {
            for (const Margin* margin : margins) {
                lines.push_back(line_of(*margin, {margin_cell(margin->name)}, margin->whole()));
            }
        }
    }
    return lines;
}

Sentence no_finding_line(const Candidate& candidate) {
    const std::vector<Margin>& margins = candidate.margins();
    const auto count = std::count_if(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.severity == Severity::none;
    });
    if (count == 0) return {};
    return say<"margins.others">(with<"count">(number(static_cast<double>(count), 0)));
}

Sentence margin_reason(const Margin& margin) {
    return say<"margins.reason">(with<"subject">(margin.subject), with<"says">(margin.whole()));
}

}  // namespace heatmatch
