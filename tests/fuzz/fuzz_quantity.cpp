#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/quantity.hpp"

namespace unit = heatmatch::unit;

namespace {

constexpr heatmatch::Unit kept_units[] = {unit::none,
                                          unit::volt,
                                          unit::year,
                                          unit::percent,
                                          unit::ohm,
                                          unit::celsius,
                                          unit::kelvin,
                                          unit::millimetre,
                                          unit::metre,
                                          unit::degree,
                                          unit::square_millimetre,
                                          unit::watt};

}  // namespace

/// A text is either refused or a finite number.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    try {
        if (!std::isfinite(heatmatch::parse_quantity(text).value)) std::abort();
    } catch (const heatmatch::Error&) {
    }
    for (const heatmatch::Unit& kept : kept_units) {
        try {
            if (!std::isfinite(heatmatch::parse_quantity(text, kept))) std::abort();
        } catch (const heatmatch::Error&) {
        }
    }
    return 0;
}
