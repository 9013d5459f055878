#pragma once

#include <string>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// Temperature limits for any part of a store.
inline constexpr double coldest_c = -100.0;
inline constexpr double hottest_c = 1500.0;

/// Rejects invalid inputs of a model of the bed, and names the model.
struct BedChecks {
    const char* part;

    [[noreturn]] void refuse(const std::string& field, const std::string& value,
                             const std::string& allowed, Sentence remedy) const;
    void temperature(const char* field, double at_c) const;
    /// Finite and above zero.
    void size(const char* field, double value) const;
};

}  // namespace heatmatch
