#include "heatmatch/answer/checks_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <utility>

namespace heatmatch {

using answer_sentences::say;

Table checks_table(const MeterSheet& sheet) {
    Table table{.title = say<"checks.title">(), .columns = {TableColumn{}}};
    for (Sentence head : {say<"checks.reading">(), say<"checks.how">(), say<"checks.expect">(),
                          say<"checks.if_less">(), say<"checks.if_more">()}) {
        table.columns.push_back({.head = std::move(head)});
    }
    for (const MeterCheck& check : sheet.checks) {
        table.rows.push_back({name_cell(check.letter), check.reading, check.how, check.expect,
                              check.if_low, check.if_high});
    }
    return table;
}

Sentences check_lines(const MeterCheck& check) {
    Sentences lines{say<"checks.line">(with<"letter">(check.letter), with<"reading">(check.reading),
                                       with<"expect">(check.expect)),
                    check.how};
    if (!check.if_low.empty()) lines.push_back(say<"checks.less">(with<"means">(check.if_low)));
    if (!check.if_high.empty()) lines.push_back(say<"checks.more">(with<"means">(check.if_high)));
    return lines;
}

Sentences not_known_sentences(const MeterSheet& sheet) {
    Sentences sentences;
    for (const Sentence& what : sheet.missing) {
        sentences.push_back(say<"checks.not_known">(with<"what">(what)));
    }
    return sentences;
}

}  // namespace heatmatch
