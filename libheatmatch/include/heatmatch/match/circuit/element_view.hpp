#pragma once

#include <memory>
#include <span>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// A bank in a store, of equal or of unlike elements. Null without a store.
[[nodiscard]] std::shared_ptr<const BankHeat> bank_heat(std::shared_ptr<const FilledStore> store,
                                                        const Bank& bank);

/// What that bank is for other circuits of its store: one entry for equal elements, one for each
/// unlike element, with its power [W].
[[nodiscard]] std::vector<OtherBank> other_banks(const Bank& bank, const std::string& circuit,
                                                 std::span<const double> element_w, bool limited);

/// One element of an unlike bank as a circuit of its own: its runs, devices and panels are those of
/// the circuit, its bank is that element alone, and the other elements lie in the bed beside it
/// with their powers at that moment [W].
[[nodiscard]] Circuit element_view(const Circuit& circuit, std::size_t element,
                                   std::span<const double> element_w);

}  // namespace heatmatch
