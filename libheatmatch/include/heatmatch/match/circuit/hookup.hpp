#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace heatmatch {

/// Connection of equal things: `series` in a string, `parallel` strings. Printed `2S1P`.
struct Hookup {
    int series = 1;
    int parallel = 1;

    friend bool operator==(const Hookup&, const Hookup&) = default;
    [[nodiscard]] int count() const { return series * parallel; }
    /// Resistance of equal resistors in this connection, over that of one.
    [[nodiscard]] double resistance_factor() const;
    [[nodiscard]] std::string label() const;
};

/// Reads `2S1P`. Throws InvalidInput naming `part` and `field`.
[[nodiscard]] Hookup parse_hookup(std::string_view text, std::string_view part,
                                  std::string_view field);

/// Every hook-up of up to `count` things, by count, most in series first.
[[nodiscard]] std::vector<Hookup> hookups_up_to(int count);

}  // namespace heatmatch
