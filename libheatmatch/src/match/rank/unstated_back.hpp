#pragma once

#include "screen.hpp"
#include "screen_wiring.hpp"

#include <optional>

namespace heatmatch {

/// Panels of unstated bifaciality, at its careful end.
class UnstatedBack {
  public:
    UnstatedBack(const PanelInService& panel, const ScreenContext& context);

    /// Whether rear light may make the power of the elements of a bank a danger; `circuit` with
    /// that bank in its store, null without a store. False where bifaciality is stated.
    [[nodiscard]] bool may_be_danger(const Wiring& wiring, const BankNumbers& numbers,
                                     const Circuit* circuit) const;

  private:
    const ScreenContext* context_;
    std::optional<PanelInService> careful_{};
};

}  // namespace heatmatch
