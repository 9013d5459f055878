#include <algorithm>
#include <optional>

#include "heatmatch/match/candidate/bill.hpp"

namespace heatmatch {

namespace {

std::optional<double> priced(const BillLine& line, const std::optional<double>& each) {
    if (line.state == BillState::no_part) return std::nullopt;
    if (line.to_buy <= 0.0) return 0.0;
    return each ? std::optional(line.to_buy * *each) : std::nullopt;
}

std::optional<double> total(const Bill& bill, std::optional<double> (BillLine::*of)() const) {
    if (!bill.complete()) return std::nullopt;
    double sum = 0.0;
    for (const BillLine& line : bill.lines) sum += (line.*of)().value_or(0.0);
    return sum;
}

}  // namespace

std::optional<double> BillLine::low() const {
    return priced(*this, price.low ? price.low : price.high);
}

std::optional<double> BillLine::typical() const {
    return priced(*this, price.typical());
}

std::optional<double> BillLine::high() const {
    return priced(*this, price.high ? price.high : price.low);
}

const Unit& BillLine::unit() const {
    return kind == PartKind::wire ? unit::metre : unit::none;
}

bool Bill::complete() const {
    return std::all_of(lines.begin(), lines.end(),
                       [](const BillLine& line) { return line.state == BillState::known; });
}

std::optional<double> Bill::low() const {
    return total(*this, &BillLine::low);
}

std::optional<double> Bill::typical() const {
    return total(*this, &BillLine::typical);
}

std::optional<double> Bill::high() const {
    return total(*this, &BillLine::high);
}

Answer Bill::within_budget() const {
    if (!budget) return Answer::yes;
    const auto sum = typical();
    if (!sum) return Answer::unknown;
    return *sum <= *budget ? Answer::yes : Answer::no;
}

}  // namespace heatmatch
