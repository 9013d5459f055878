#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <vector>

/// Errors of many cases, in all and by the number of legs.
class ErrorSpread {
  public:
    void add(double error, int legs) {
        errors_[0].push_back(error);
        errors_[legs].push_back(error);
    }
    [[nodiscard]] double rms() const { return rms_of(errors_.at(0)); }
    [[nodiscard]] double smallest() const { return *std::ranges::min_element(errors_.at(0)); }
    [[nodiscard]] double largest() const { return *std::ranges::max_element(errors_.at(0)); }

  private:
    static double rms_of(const std::vector<double>& errors) {
        double sum = 0.0;
        for (const double error : errors) sum += error * error;
        return std::sqrt(sum / static_cast<double>(errors.size()));
    }
    std::map<int, std::vector<double>> errors_{};  //!< by legs; 0: all
};
