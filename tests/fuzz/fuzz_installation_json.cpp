#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/installation_json.hpp"

/// What was read is written, read again and written: the bytes are the same.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    heatmatch::Installation installation;
    try {
        installation = heatmatch::installation_from_json(text);
    } catch (const heatmatch::Error&) {
        return 0;
    }
    const std::string once = heatmatch::installation_to_json(installation);
    const heatmatch::Installation again = heatmatch::installation_from_json(once);
    if (heatmatch::installation_to_json(again) != once) std::abort();
    try {
        heatmatch::check_references(installation,
                                    heatmatch::merged_parts(heatmatch::Parts{}, installation));
    } catch (const heatmatch::Error&) {
    }
    return 0;
}
