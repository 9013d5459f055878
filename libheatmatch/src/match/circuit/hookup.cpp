#include "heatmatch/match/circuit/hookup.hpp"

#include "match/circuit/sentences.hpp"

#include <algorithm>
#include <charconv>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using circuit_sentences::say;

namespace {

constexpr int largest_count = 1000;

/// Reads a count and the letter after it; 0 if they are missing.
int take_count(std::string_view& rest, char letter) {
    int count = 0;
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), count);
    const auto used = static_cast<std::size_t>(end - rest.data());
    if (error != std::errc{} || used >= rest.size() || rest[used] != letter) return 0;
    rest.remove_prefix(used + 1);
    return count >= 1 && count <= largest_count ? count : 0;
}

}  // namespace

double Hookup::resistance_factor() const {
    return static_cast<double>(series) / parallel;
}

std::string Hookup::label() const {
    return std::to_string(series) + 'S' + std::to_string(parallel) + 'P';
}

Hookup parse_hookup(std::string_view text, std::string_view part, std::string_view field) {
    std::string_view rest = text;
    const int series = take_count(rest, 'S');
    const int parallel = series == 0 ? 0 : take_count(rest, 'P');
    if (parallel == 0 || !rest.empty()) {
        const Hookup example{.series = 2, .parallel = 1};
        throw InvalidInput(
            ErrorDetail{.part = std::string(part),
                        .field = std::string(field),
                        .value = quote(text),
                        .allowed = "a hook-up such as 2S1P",
                        .remedy = say<"circuit.hookup">(with<"example">(example.label()))});
    }
    return {.series = series, .parallel = parallel};
}

std::vector<Hookup> hookups_up_to(int count) {
    std::vector<Hookup> hookups;
    for (int used = 1; used <= count; ++used) {
        for (int parallel = 1; parallel <= used; ++parallel) {
            if (used % parallel == 0) {
                hookups.push_back({.series = used / parallel, .parallel = parallel});
            }
        }
    }
    return hookups;
}

}  // namespace heatmatch
