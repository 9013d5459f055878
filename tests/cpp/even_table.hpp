#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

/// A rising function at even places, straight between them.
class EvenTable {
  public:
    EvenTable() = default;
    template <typename Function>
    EvenTable(double first, double last, std::size_t steps, Function function)
        : first_(first), per_(static_cast<double>(steps) / (last - first)), values_(steps + 1) {
        for (std::size_t i = 0; i <= steps; ++i)
            values_[i] = function(first + static_cast<double>(i) / per_);
    }
    [[nodiscard]] double at(double x) const {
        const std::size_t i = place(x);
        return values_[i] +
               (values_[i + 1] - values_[i]) * ((x - first_) * per_ - static_cast<double>(i));
    }
    [[nodiscard]] double slope(double x) const {
        const std::size_t i = place(x);
        return (values_[i + 1] - values_[i]) * per_;
    }

  private:
    [[nodiscard]] std::size_t place(double x) const {
        const double cells = (x - first_) * per_;
        if (!(cells > 0.0)) return 0;
        return std::min(static_cast<std::size_t>(cells), values_.size() - 2);
    }

    double first_ = 0.0;
    double per_ = 1.0;
    std::vector<double> values_{0.0, 1.0};
};
