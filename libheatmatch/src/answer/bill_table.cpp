#include "heatmatch/answer/bill_table.hpp"

#include "answer/cells.hpp"
#include "answer/sentences.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "heatmatch/answer/duties_table.hpp"

namespace heatmatch {

using answer_sentences::say;

namespace {

/// Requirements that a device meets, except for the disconnect, which is on the bill.
constexpr auto of_devices = std::to_array<std::string_view>(
    {"earth-fault protection", "earth-fault detection", "arc-fault protection", "rapid shutdown"});

Sentence money(double value, const std::string& currency) {
    Sentence amount = sentence_of(Amount{.value = value, .unit = unit::money});
    if (currency.empty()) return amount;
    return say<"cell.money">(with<"amount">(std::move(amount)), with<"currency">(currency));
}

Sentence reason_of(const BillLine& line, const Bill& bill) {
    if (line.state == BillState::no_part) return say<"bill.no_such_part">();
    if (line.state == BillState::price_not_known) {
        return say<"bill.no_price">(with<"part">(line.part));
    }
    return say<"bill.in_other">(with<"part">(line.part), with<"other">(line.price.currency),
                                with<"currency">(bill.currency));
}

Sentence budget_of(const Bill& bill) {
    if (!bill.budget) return {};
    const auto said = with<"money">(money(*bill.budget, bill.currency));
    const Answer within = bill.within_budget();
    if (within == Answer::unknown) return say<"bill.not_within">(said);
    if (within == Answer::no) return say<"bill.above">(said);
    return bill.high().value_or(0.0) > *bill.budget ? say<"bill.within_middle">(said)
                                                    : say<"bill.within">(said);
}

Sentence amount_cell(const BillLine& line, double value) {
    return sentence_of(Amount{.value = value, .unit = line.unit()});
}

Sentence price_cell_of(const std::optional<double>& price) {
    return price ? sentence_of(Amount{.value = *price, .unit = unit::money}) : unknown_cell();
}

/// Typical price, or why it is not added.
Sentence typical_cell(const BillLine& line) {
    if (line.state == BillState::known) return price_cell_of(line.typical());
    return name_cell(word_of(line.state));
}

Sentence line_price(const BillLine& line) {
    const auto low = line.low();
    const auto high = line.high();
    if (!low || !high) return name_cell(word_of(BillState::price_not_known));
    const std::string& currency = line.price.currency;
    if (*low == *high) return money(*low, currency);
    return say<"bill.range">(with<"low">(sentence_of(Amount{.value = *low, .unit = unit::money})),
                             with<"high">(money(*high, currency)));
}

Sentence bill_line(const BillLine& line) {
    if (line.state == BillState::no_part) {
        return say<"bill.line_no_part">(with<"why">(line.why));
    }
    if (line.to_buy <= 0.0) {
        return say<"bill.line_owned">(with<"part">(line.part), with<"why">(line.why));
    }
    Sentence owned;
    if (line.owned > 0.0) {
        owned = say<"bill.of_it_owned">(with<"owned">(amount_cell(line, line.owned)));
    }
    return say<"bill.line">(with<"part">(line.part), with<"to_buy">(amount_cell(line, line.to_buy)),
                            with<"owned">(std::move(owned)), with<"price">(line_price(line)),
                            with<"why">(line.why));
}

}  // namespace

Sentence bill_sentence(const Bill& bill) {
    const auto budget = with<"budget">(budget_of(bill));
    if (!bill.complete()) {
        Sentences reasons;
        for (const BillLine& line : bill.lines) {
            if (line.state == BillState::known) continue;
            Sentence reason = reason_of(line, bill);
            if (std::find(reasons.begin(), reasons.end(), reason) == reasons.end()) {
                reasons.push_back(std::move(reason));
            }
        }
        return say<"bill.not_known">(with<"reasons">(std::move(reasons)), budget);
    }
    const bool nothing = std::all_of(bill.lines.begin(), bill.lines.end(),
                                     [](const BillLine& line) { return line.to_buy <= 0.0; });
    if (nothing) return say<"bill.nothing_to_buy">(budget);
    const auto amount = [](double value) {
        return sentence_of(Amount{.value = value, .unit = unit::money});
    };
    return say<"bill.total">(with<"typical">(money(*bill.typical(), bill.currency)),
                             with<"low">(amount(*bill.low())), with<"high">(amount(*bill.high())),
                             budget);
}

Table bill_table(const Bill& bill) {
    Sentence currency;
    if (!bill.currency.empty()) {
        currency = say<"bill.in_currency">(with<"currency">(bill.currency));
    }
    const auto in_it = with<"currency">(currency);
    Table table{.title = say<"bill.title">(),
                .columns = {{.head = say<"bill.part">()},
                            {.head = say<"bill.needed">(), .number = true},
                            {.head = say<"bill.owned">(), .number = true},
                            {.head = say<"bill.to_buy">(), .number = true},
                            {.head = say<"bill.low">(in_it), .number = true},
                            {.head = say<"bill.typical">(in_it), .number = true},
                            {.head = say<"bill.high">(in_it), .number = true},
                            {.head = say<"bill.what_for">()}},
                .legend = {bill_sentence(bill)}};
    for (const BillLine& line : bill.lines) {
        const bool added = line.state == BillState::known;
        table.rows.push_back(
            {line.part.empty() ? name_cell(word_of(BillState::no_part)) : name_cell(line.part),
             amount_cell(line, line.quantity), amount_cell(line, line.owned),
             amount_cell(line, line.to_buy), added ? price_cell_of(line.low()) : unknown_cell(),
             typical_cell(line), added ? price_cell_of(line.high()) : unknown_cell(), line.why});
    }
    return table;
}

Sentences bill_lines(const Bill& bill) {
    Sentences lines;
    // What is to buy comes first.
    for (const bool owned : {false, true}) {
        for (const BillLine& line : bill.lines) {
            if ((line.to_buy <= 0.0) == owned) lines.push_back(bill_line(line));
        }
    }
    return lines;
}

Sentences bill_remarks(const Candidate& candidate) {
    Sentences remarks = candidate.bill.remarks;
    Sentences names;
    for (const CodeDuty& duty : duties_of(candidate)) {
        const bool of_device =
            std::find(of_devices.begin(), of_devices.end(), duty.name) != of_devices.end();
        const bool open =
            duty.met_by == DutyMeans::not_met || duty.met_by == DutyMeans::nobody_stated;
        if (of_device && open) names.push_back(name_cell(duty.name));
    }
    if (!names.empty()) {
        remarks.push_back(say<"bill.no_code_devices">(with<"duties">(std::move(names))));
    }
    return remarks;
}

}  // namespace heatmatch
