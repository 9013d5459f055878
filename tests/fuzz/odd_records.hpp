#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <limits>
#include <optional>
#include <span>
#include <string>

/// Records out of bytes: mostly numbers within a range, some that nobody would state.
class Bytes {
  public:
    Bytes(const std::uint8_t* data, std::size_t size) : left_(data, size) {
        wild_ = byte() % 4 == 0;
    }
    [[nodiscard]] unsigned byte() {
        if (left_.empty()) return 0;
        const unsigned first = left_.front();
        left_ = left_.subspan(1);
        return first;
    }
    [[nodiscard]] double number(double low, double high) {
        const unsigned kind = byte();
        if (wild_ && kind >= 224) return odd(kind);
        if (kind == 1) return low;
        if (kind == 2) return high;
        const double share = (256.0 * byte() + byte()) / 65535.0;
        // Half of the kinds by ratio, where both ends allow it.
        if (low > 0.0 && kind % 2 == 0) return low * std::pow(high / low, share);
        return low + share * (high - low);
    }
    [[nodiscard]] std::optional<double> maybe(double low, double high) {
        if (byte() % 4 == 0) return std::nullopt;
        return number(low, high);
    }
    [[nodiscard]] int whole(int low, int high) {
        const unsigned kind = byte();
        if (wild_ && kind >= 240) {
            constexpr int odd_ones[] = {0, -1, 1000000, std::numeric_limits<int>::max(),
                                        std::numeric_limits<int>::min()};
            return odd_ones[kind % std::size(odd_ones)];
        }
        return low +
               static_cast<int>((256 * kind + byte()) % static_cast<unsigned>(high - low + 1));
    }
    template <std::size_t N>
    [[nodiscard]] std::string word(const char* const (&words)[N]) {
        return words[byte() % N];
    }

  private:
    [[nodiscard]] double odd(unsigned kind) {
        constexpr double infinity = std::numeric_limits<double>::infinity();
        constexpr double odd_ones[] = {
            0.0,      -0.0,      -1.0,  std::numeric_limits<double>::quiet_NaN(),
            infinity, -infinity, 1e300, -1e300,
            5e-324,   1e-30,     1e12,  -273.15,
            1e6,      -1e-9};
        if (kind < 240) return odd_ones[kind % std::size(odd_ones)];
        std::uint8_t raw[sizeof(double)];
        for (std::uint8_t& each : raw) each = static_cast<std::uint8_t>(byte());
        double value = 0.0;
        std::memcpy(&value, raw, sizeof value);
        return value;
    }
    std::span<const std::uint8_t> left_;
    bool wild_ = false;
};

[[noreturn]] inline void fail(const char* what, double value) {
    std::fprintf(stderr, "%s: %g\n", what, value);
    std::abort();
}

inline void finite(const char* what, double value) {
    if (!std::isfinite(value)) fail(what, value);
}

inline void ordered(const char* what, double low, double high) {
    finite(what, low);
    finite(what, high);
    if (low > high + 1e-6 * (1.0 + std::fabs(high))) fail(what, low - high);
}
