#include "unlike_extremes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

namespace heatmatch {

namespace {

constexpr double opened_ohm = std::numeric_limits<double>::infinity();
constexpr std::size_t nothing_open = std::numeric_limits<std::size_t>::max();

/// The bank with any of its elements open.
class WornBank {
  public:
    WornBank(const LoadedSource& source, const UnlikeBank& bank, BankWire wire)
        : source_(source), bank_(bank), wire_(wire) {}

    /// The largest load on an element, with another one open.
    [[nodiscard]] UnlikeLoad worst_of(std::size_t element, std::size_t open) {
        UnlikeLoad worst;
        const std::size_t count = bank_.elements.size();
        // Each corner of the others once; the bits of the element itself and of an open one count
        // nothing.
        for (std::size_t corner = 0; corner < std::size_t{1} << count; ++corner) {
            const bool again = bit(corner, element) || (open != nothing_open && bit(corner, open));
            if (again) continue;
            set_corner(corner);
            if (open != nothing_open) ohm_[open] = opened_ohm;
            keep_largest(worst, element);
        }
        return worst;
    }

    [[nodiscard]] double most_current_a() const { return most_current_a_; }

  private:
    [[nodiscard]] static bool bit(std::size_t corner, std::size_t at) {
        return ((corner >> at) & 1U) != 0;
    }

    void set_corner(std::size_t corner) {
        ohm_.resize(bank_.elements.size());
        for (std::size_t i = 0; i < ohm_.size(); ++i) {
            const ElementResistance& each = bank_.elements[i].each;
            ohm_[i] = bit(corner, i) ? each.high_ohm : each.low_ohm;
        }
    }

    OperatingPoint point_of(std::size_t element, double own_ohm) {
        ohm_[element] = own_ohm;
        const double bank_ohm = bank_.tree.resistance_ohm(ohm_, wire_.branch_ohm);
        if (std::isinf(bank_ohm)) return {};
        const double current_a = source_(bank_ohm + wire_.common_ohm).current_a;
        most_current_a_ = std::max(most_current_a_, current_a);
        return bank_.tree.at_voltage(ohm_, current_a * bank_ohm, wire_.branch_ohm)[element];
    }

    /// The power over the element's own resistance: samples, because strings of unlike panels make
    /// several maxima, then the golden section of the steps beside the best.
    void keep_largest(UnlikeLoad& worst, std::size_t element) {
        const ElementResistance& each = bank_.elements[element].each;
        constexpr int steps = 8;
        const double step = (each.high_ohm - each.low_ohm) / steps;
        double best_ohm = each.low_ohm;
        double best_w = -1.0;
        const auto power_at = [&](double ohm) {
            const OperatingPoint point = point_of(element, ohm);
            worst.power_w = std::max(worst.power_w, point.power_w);
            worst.voltage_v = std::max(worst.voltage_v, point.voltage_v);
            if (point.power_w > best_w) {
                best_w = point.power_w;
                best_ohm = ohm;
            }
            return point.power_w;
        };
        for (int i = 0; i <= steps; ++i) {
            static_cast<void>(power_at(i == steps ? each.high_ohm : each.low_ohm + i * step));
        }
        if (best_w <= 0.0 || step <= 0.0) return;
        double low = std::max(each.low_ohm, best_ohm - step);
        double high = std::min(each.high_ohm, best_ohm + step);
        constexpr double golden = 0.6180339887498949;
        constexpr int halvings = 16;
        for (int i = 0; i < halvings; ++i) {
            const double right = low + golden * (high - low);
            const double left = high - golden * (high - low);
            if (power_at(right) > power_at(left)) {
                low = left;
            } else {
                high = right;
            }
        }
    }

    const LoadedSource& source_;
    const UnlikeBank& bank_;
    BankWire wire_;
    std::vector<double> ohm_{};
    double most_current_a_ = 0.0;
};

}  // namespace

double UnlikeLoad::survivor_power_w() const {
    return with_open_w.empty() ? 0.0 : *std::max_element(with_open_w.begin(), with_open_w.end());
}

Extremes unlike_extremes(const LoadedSource& source, const UnlikeBank& bank, BankWire wire) {
    WornBank worn(source, bank, wire);
    Extremes result;
    const std::size_t count = bank.elements.size();
    for (std::size_t element = 0; element < count; ++element) {
        result.elements.push_back(worn.worst_of(element, nothing_open));
    }
    // An open element does not increase the current of the array.
    result.current_a = worn.most_current_a();
    for (std::size_t element = 0; element < count; ++element) {
        UnlikeLoad& load = result.elements[element];
        for (std::size_t open = 0; open < count; ++open) {
            load.with_open_w.push_back(open == element ? 0.0
                                                       : worn.worst_of(element, open).power_w);
        }
        result.element_power_w = std::max(result.element_power_w, load.power_w);
        result.element_voltage_v = std::max(result.element_voltage_v, load.voltage_v);
        result.survivor_power_w = std::max(result.survivor_power_w, load.survivor_power_w());
    }
    return result;
}

}  // namespace heatmatch
