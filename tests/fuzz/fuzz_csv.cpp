#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/error.hpp"
#include "heatmatch/operation/calibration/store_log.hpp"
#include "heatmatch/operation/meter/readings.hpp"
#include "heatmatch/text/module_csv.hpp"
#include "heatmatch/text/part_csv.hpp"

namespace {

/// Whatever a file gives can be written and read again.
void check_written(const heatmatch::Part& part) {
    const std::string text = heatmatch::part_to_json(part);
    if (!(heatmatch::part_from_json(heatmatch::part_kind(part).kind, text) == part)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const heatmatch::PartKindInfo& info : heatmatch::part_kinds()) {
        std::vector<heatmatch::RefusedRow> refused;
        try {
            for (const auto& part :
                 heatmatch::parts_from_csv(info.kind, text, "fuzz", refused).rows) {
                check_written(part);
            }
        } catch (const heatmatch::Error&) {
        }
    }
    std::vector<heatmatch::RefusedRow> refused;
    try {
        for (const auto& panel : heatmatch::panels_from_module_csv(text, "fuzz", refused)) {
            check_written(panel);
        }
    } catch (const heatmatch::Error&) {
    }
    try {
        const heatmatch::StoreLog log = heatmatch::store_log_from_csv(text);
        if (log.temperature_c.size() != log.probes.size()) std::abort();
    } catch (const heatmatch::Error&) {
    }
    try {
        // With its line break it is a text, never a path.
        (void)heatmatch::read_readings_csv(std::string(text) + '\n');
    } catch (const heatmatch::Error&) {
    }
    return 0;
}
