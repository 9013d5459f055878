#include "heatmatch/match/circuit/bank_tree.hpp"

#include "match/circuit/sentences.hpp"

#include <cmath>
#include <limits>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

void collect_names(const Layout& layout, std::vector<std::string>& names) {
    for (const Layout::Series& series : layout.strings) {
        for (const Layout::Item& item : series) {
            for (int i = 0; i < item.count; ++i) {
                if (item.bracketed.empty()) {
                    names.push_back(item.name);
                } else {
                    collect_names(item.bracketed.front(), names);
                }
            }
        }
    }
}

/// The layout whose strings are the branches of the whole bank: without brackets around all of it.
const Layout& outermost(const Layout& layout) {
    const Layout* at = &layout;
    while (at->strings.size() == 1 && at->strings.front().size() == 1 &&
           at->strings.front().front().count == 1 &&
           !at->strings.front().front().bracketed.empty()) {
        at = &at->strings.front().front().bracketed.front();
    }
    return *at;
}

/// Walks a tree in the order of its text; `next` counts the elements passed.
class BankWalk {
  public:
    BankWalk(std::span<const double> ohm, std::vector<OperatingPoint>* points)
        : ohm_(ohm), points_(points) {}

    /// `more_ohm` is in series with each string.
    double resistance(const Layout& layout, double more_ohm = 0.0) {
        double conductance = 0.0;
        for (const Layout::Series& series : layout.strings) {
            conductance += 1.0 / (of_series(series) + more_ohm);
        }
        return 1.0 / conductance;
    }

    void share(const Layout& layout, double voltage_v, double more_ohm = 0.0) {
        for (const Layout::Series& series : layout.strings) {
            BankWalk ahead(ohm_, nullptr);
            ahead.next_ = next_;
            const double total = ahead.of_series(series) + more_ohm;
            const double current = std::isinf(total) ? 0.0 : voltage_v / total;
            for (const Layout::Item& item : series) {
                for (int i = 0; i < item.count; ++i) share_item(item, current);
            }
        }
    }

  private:
    double of_series(const Layout::Series& series) {
        double sum = 0.0;
        for (const Layout::Item& item : series) {
            for (int i = 0; i < item.count; ++i) {
                sum += item.bracketed.empty() ? ohm_[next_++] : resistance(item.bracketed.front());
            }
        }
        return sum;
    }

    void share_item(const Layout::Item& item, double current_a) {
        if (item.bracketed.empty()) {
            const double ohm = ohm_[next_];
            const double voltage = std::isinf(ohm) ? 0.0 : current_a * ohm;
            (*points_)[next_++] = {
                .voltage_v = voltage, .current_a = current_a, .power_w = voltage * current_a};
            return;
        }
        BankWalk ahead(ohm_, nullptr);
        ahead.next_ = next_;
        const double ohm = ahead.resistance(item.bracketed.front());
        share(item.bracketed.front(), std::isinf(ohm) ? 0.0 : current_a * ohm);
    }

    std::span<const double> ohm_;
    std::vector<OperatingPoint>* points_;
    std::size_t next_ = 0;
};

}  // namespace

BankTree BankTree::parse(std::string_view text, std::string_view part, std::string_view field) {
    BankTree bank{.layout = Layout::parse(text, part, field)};
    if (bank.layout.count() > most_bank_elements) {
        throw InvalidInput(
            ErrorDetail{.part = std::string(part),
                        .field = std::string(field),
                        .value = quote(text),
                        .allowed = "up to " + std::to_string(most_bank_elements) + " elements",
                        .remedy = say<"circuit.fewer_elements">()});
    }
    collect_names(bank.layout, bank.elements);
    return bank;
}

double BankTree::resistance_ohm(std::span<const double> ohm, double branch_ohm) const {
    return BankWalk(ohm, nullptr).resistance(outermost(layout), branch_ohm);
}

std::vector<OperatingPoint> BankTree::at_voltage(std::span<const double> ohm, double voltage_v,
                                                 double branch_ohm) const {
    std::vector<OperatingPoint> points(elements.size());
    BankWalk(ohm, &points).share(outermost(layout), voltage_v, branch_ohm);
    return points;
}

std::size_t BankTree::branches() const {
    return outermost(layout).strings.size();
}

std::vector<std::size_t> BankTree::branch_of_each() const {
    std::vector<std::size_t> branches;
    const Layout& whole = outermost(layout);
    for (std::size_t branch = 0; branch < whole.strings.size(); ++branch) {
        const Layout alone{.strings = {whole.strings[branch]}};
        branches.insert(branches.end(), static_cast<std::size_t>(alone.count()), branch);
    }
    return branches;
}

std::vector<std::vector<OperatingPoint>> with_each_open(const BankTree& bank,
                                                        std::span<const double> ohm,
                                                        const LoadedSource& source) {
    std::vector<std::vector<OperatingPoint>> result;
    std::vector<double> left(ohm.begin(), ohm.end());
    for (std::size_t open = 0; open < left.size(); ++open) {
        const double kept = left[open];
        left[open] = std::numeric_limits<double>::infinity();
        const OperatingPoint point = source(bank.resistance_ohm(left));
        result.push_back(bank.at_voltage(left, point.voltage_v));
        left[open] = kept;
    }
    return result;
}

}  // namespace heatmatch
