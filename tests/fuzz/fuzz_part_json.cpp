#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>
#include <vector>

#include "heatmatch/base/error.hpp"
#include "heatmatch/text/part_json.hpp"

namespace {

/// A file that was read is written, read again and written: the bytes are the same.
void read_catalog(std::string_view text, std::vector<heatmatch::RefusedRow>* refused) {
    heatmatch::CatalogText catalog;
    try {
        catalog = heatmatch::catalog_from_json(text, "fuzz", refused);
    } catch (const heatmatch::Error&) {
        return;
    }
    const std::string once = heatmatch::catalog_to_json(catalog);
    if (heatmatch::catalog_to_json(heatmatch::catalog_from_json(once, "fuzz")) != once) {
        std::abort();
    }
}

void read_part(heatmatch::PartKind kind, std::string_view text) {
    heatmatch::Part part;
    try {
        part = heatmatch::part_from_json(kind, text);
    } catch (const heatmatch::Error&) {
        return;
    }
    const std::string once = heatmatch::part_to_json(part);
    if (!(heatmatch::part_from_json(kind, once) == part)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    read_catalog(text, nullptr);
    std::vector<heatmatch::RefusedRow> refused;
    read_catalog(text, &refused);
    for (const heatmatch::PartKindInfo& info : heatmatch::part_kinds()) {
        read_part(info.kind, text);
    }
    return 0;
}
