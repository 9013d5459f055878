#include "stuck_readings.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace heatmatch {

using meter_sentences::say;

namespace {

struct Thermocouple {
    std::optional<double> Reading::*member = nullptr;
    std::string_view name{};
};
// The air temperature may be constant.
constexpr auto thermocouples = std::to_array<Thermocouple>({
    {&Reading::panel_temperature_c, "panel_temperature_c"},
    {&Reading::sheath_c, "sheath_c"},
    {&Reading::store_c, "store_c"},
});

}  // namespace

Sentence counted(std::size_t count, std::string_view field, Sentence what) {
    if (count == 1) {
        return say<"readings.value">(with<"count">(1.0), with<"field">(std::string(field)),
                                     with<"what">(std::move(what)));
    }
    constexpr int all = 12;
    return say<"readings.values">(with<"count">(static_cast<double>(count), unit::count, all),
                                  with<"field">(std::string(field)), with<"what">(std::move(what)));
}

void leave_out_stuck(Readings& readings) {
    std::vector<double> drive(readings.rows.size(), std::nan(""));
    double most = 0.0;
    for (std::size_t i = 0; i < drive.size(); ++i) {
        const Reading& row = readings.rows[i];
        if (row.bank_a) drive[i] = *row.bank_a * *row.bank_a;
        if (std::isfinite(drive[i])) most = std::max(most, drive[i]);
    }
    if (most <= 0.0) return;
    for (const Thermocouple& column : thermocouples) {
        const bool slow = column.member == &Reading::store_c;
        const std::size_t shortest = slow ? 36 : 12;
        const double shortest_s = slow ? 10800.0 : 600.0;
        std::size_t count = 0;
        for (std::size_t begin = 0; begin < drive.size();) {
            const auto first = readings.rows[begin].*column.member;
            std::size_t end = begin + 1;
            double low = drive[begin];
            double high = drive[begin];
            while (first && end < drive.size() && readings.rows[end].*column.member == first) {
                low = std::fmin(low, drive[end]);
                high = std::fmax(high, drive[end]);
                ++end;
            }
            const auto& since = readings.rows[begin].unix_time_s;
            const auto& until = readings.rows[end - 1].unix_time_s;
            const bool long_enough = !since || !until || *until - *since >= shortest_s;
            if (first && end - begin >= shortest && long_enough && high - low > 0.5 * most) {
                for (std::size_t i = begin; i < end; ++i) {
                    (readings.rows[i].*column.member).reset();
                }
                count += end - begin;
            }
            begin = end;
        }
        if (count > 0) {
            readings.remarks.push_back(counted(count, column.name, say<"readings.stuck">()));
        }
    }
}

}  // namespace heatmatch
