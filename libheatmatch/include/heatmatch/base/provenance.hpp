#pragma once

#include <array>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"

namespace heatmatch {

/// Origin of a source's numbers.
enum class SourceKind {
    measured,
    nameplate,
    datasheet,
    derived,
    class_default,
    representative,
    from_memory
};
inline constexpr auto source_kind_words =
    std::to_array<std::string_view>({"measured", "nameplate", "datasheet", "derived",
                                     "class default", "representative", "from memory"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(SourceKind) {
    return source_kind_words;
}

/// Source of the numbers of a part.
struct Provenance {
    std::string source{};  //!< key of catalog/sources.json, or free text
    std::optional<SourceKind> source_kind{};
    std::map<std::string, std::string> source_of{};  //!< field -> source, where one field differs

    friend bool operator==(const Provenance&, const Provenance&) = default;
};

/// Price of a part. Currency is the three-letter code of ISO 4217.
struct Price {
    std::optional<double> low{};   //!< lowest purchase price
    std::optional<double> high{};  //!< highest purchase price
    std::string currency{};

    friend bool operator==(const Price&, const Price&) = default;
    /// Middle of low and high, or the one that is given; empty if neither is.
    [[nodiscard]] std::optional<double> typical() const;
};

}  // namespace heatmatch
