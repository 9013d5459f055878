#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <vector>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/observed_weather.hpp"

namespace {

/// Numbers from the bytes: most near what weather is, some anything.
std::vector<double> numbers_from(const std::uint8_t* data, std::size_t size) {
    std::vector<double> numbers;
    for (std::size_t i = 0; i + 1 < size; i += 2) {
        double number = 6.0 * data[i] + data[i + 1] - 128.0;
        if (data[i] == 255 && i + 8 <= size) std::memcpy(&number, data + i, sizeof number);
        numbers.push_back(number);
    }
    return numbers;
}

void check_energy(const heatmatch::Weather& weather) {
    const heatmatch::SingleDiode diode{.light_current_a = 8.7,
                                       .ln_saturation_current = -21.9,
                                       .series_resistance_ohm = 0.3,
                                       .shunt_conductance_s = 0.004,
                                       .modified_ideality_v = 1.58,
                                       .alpha_isc_a_per_k = 0.005};
    const heatmatch::EnergyCurve curve(diode, 45.0, weather_nodes(weather), 3.7);
    const double most = curve.mpp_kwh();
    for (double ohm : {0.0, 0.01, 1.0, 3.7, 20.0, 1000.0}) {
        const double kwh = curve.delivered_kwh(ohm);
        if (!(kwh >= 0.0 && kwh <= most * 1.01 + 1e-9)) std::abort();
    }
    const double best = curve.best_resistance_ohm();
    if (!(best > 0.0 && std::isfinite(best))) std::abort();
}

}  // namespace

/// Weather that is taken gives energies between nothing and the maximum power point's.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size < 8) return 0;
    const std::vector<double> numbers = numbers_from(data, size);
    const std::size_t half = numbers.size() / 2;
    const std::span<const double> sun(numbers.data(), half);
    const std::span<const double> cells(numbers.data() + half, half);
    try {
        check_energy(heatmatch::weather_from_plane(sun, cells, 1.0));
    } catch (const heatmatch::Error&) {
    }
    std::vector<double> times;
    for (std::size_t i = 0; i < half; ++i) {
        times.push_back(1.7e9 + 3600.0 * static_cast<double>(i + (data[i] > 250 ? 1 : 0)));
    }
    const heatmatch::Site site{
        .latitude_deg = 44.0, .longitude_deg = -72.0, .tilt_deg = 60.0, .record_low_c = -32.0};
    try {
        check_energy(heatmatch::weather_from_observations(
            {.unix_time_s = times, .ghi_w_m2 = sun, .air_c = cells}, site));
    } catch (const heatmatch::Error&) {
    }
    return 0;
}
