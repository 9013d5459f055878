#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "heatmatch/base/error.hpp"
#include "heatmatch/setting/layout.hpp"

using heatmatch::Layout;

/// A text is refused or read; what is written of it reads as the same layout and the same text.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    try {
        const Layout layout = Layout::parse(text, "circuit", "panels");
        const std::string written = layout.text();
        const Layout again = Layout::parse(written, "circuit", "panels");
        if (!(again == layout) || again.text() != written) std::abort();
    } catch (const heatmatch::Error&) {
    }
    return 0;
}
