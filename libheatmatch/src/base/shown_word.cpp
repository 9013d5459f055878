#include "heatmatch/base/shown_word.hpp"

#include <algorithm>
#include <array>

namespace heatmatch {

namespace {

constexpr auto words_in_text = std::to_array<ShownWord>({
    // materials and wire
    {"galvanised steel", "galvanized steel"},
    {"aluminium", "aluminum"},
    {"ceramic fibre", "ceramic fiber"},
    {"sheathed indoor cable", "nonmetallic-sheathed cable"},
    {"lead for hot places", "high-temperature lead wire"},
    {"building wire for dry places", "dry-location building wire"},
    // duties of devices, and failures of a simulated day
    {"breaks dc", "interrupts DC"},
    {"carries dc", "carries DC"},
    {"earth fault", "ground fault"},
    {"thermostat welded", "thermostat welded closed"},
    {"breaker welded", "breaker welded closed"},
    // codes
    {"nec", "NEC"},
    {"iec", "IEC"},
    {"nobody stated", "not stated"},
    {"not due", "does not apply"},
    // faults
    {"panels hooked otherwise", "panels wired differently"},
    {"bank hooked otherwise", "bank wired differently"},
    {"hot joint", "high-resistance joint"},
    {"low sun", "low irradiance"},
});

}  // namespace

std::span<const ShownWord> shown_words() {
    return words_in_text;
}

std::string shown_word(std::string_view word) {
    const auto* const found =
        std::find_if(words_in_text.begin(), words_in_text.end(),
                     [word](const ShownWord& known) { return known.word == word; });
    return std::string(found == words_in_text.end() ? word : found->shown);
}

}  // namespace heatmatch
