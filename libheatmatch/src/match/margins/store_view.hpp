#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Input for the margins of a store.
struct StoreView {
    const Circuit& circuit;
    const BankHeat& heat;
    const HeatPoint& point;
    std::string element{};
    std::string store{};

    StoreView(const Circuit& circuit_, const HeatPoint& point_)
        : circuit(circuit_),
          heat(*circuit_.heat),
          point(point_),
          element("element \"" + circuit_.bank.element.id + '"'),
          store("store of " + circuit_.heat->store->medium.id) {}
};

/// A temperature margin of the store.
[[nodiscard]] Margin heat_margin(const StoreView& view, const char* name, Severity consequence,
                                 double value_c, std::optional<double> limit_c, Sentence said,
                                 std::string source);

/// Subject of a heat margin: the same whether it can be assessed or not.
enum class Of { element, store };

/// Those margins as not assessed: the store, its sizes or the element's lengths are not known, or
/// the element does not fit. Without a store the subject of all is the element.
[[nodiscard]] std::vector<Margin> margins_without_heat(const Circuit& circuit,
                                                       std::span<const char* const> names,
                                                       Of subject = Of::element);

}  // namespace heatmatch
