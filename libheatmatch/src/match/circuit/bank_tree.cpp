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

/// Walks a tree in the order of its text; `next` counts the elements passed.
class BankWalk {
  public:
    BankWalk(std::span<const double> ohm, std::vector<OperatingPoint>* points)
        : ohm_(ohm), points_(points) {}

    double resistance(const Layout& layout) {
        double conductance = 0.0;
        for (const Layout::Series& series : layout.strings) conductance += 1.0 / of_series(series);
        return 1.0 / conductance;
    }

    void share(const Layout& layout, double voltage_v) {
        for (const Layout::Series& series : layout.strings) {
            BankWalk ahead(ohm_, nullptr);
            ahead.next_ = next_;
            const double total = ahead.of_series(series);
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

double BankTree::resistance_ohm(std::span<const double> ohm) const {
    return BankWalk(ohm, nullptr).resistance(layout);
}

std::vector<OperatingPoint> BankTree::at_voltage(std::span<const double> ohm,
                                                 double voltage_v) const {
    std::vector<OperatingPoint> points(elements.size());
    BankWalk(ohm, &points).share(layout, voltage_v);
    return points;
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
