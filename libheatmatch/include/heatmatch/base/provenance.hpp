#pragma once

#include <map>
#include <optional>
#include <string>

namespace heatmatch {

/// Where the numbers of a part come from.
struct Provenance {
    std::string source{};                            //!< key of catalog/sources.json, or free text
    std::string source_kind{};                       //!< one of source_kinds
    std::map<std::string, std::string> source_of{};  //!< field -> source, where one field differs

    friend bool operator==(const Provenance&, const Provenance&) = default;
};

/// What a part costs. Currency is the three-letter code of ISO 4217.
struct Price {
    std::optional<double> low{};   //!< what one would pay at best
    std::optional<double> high{};  //!< and at worst
    std::string currency{};

    friend bool operator==(const Price&, const Price&) = default;
    /// Middle of low and high, or the one that is given; nothing if neither is.
    [[nodiscard]] std::optional<double> typical() const;
};

}  // namespace heatmatch
