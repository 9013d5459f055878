#pragma once

#include "screen.hpp"
#include "screen_wiring.hpp"

#include <optional>

namespace heatmatch {

/// The backs of panels whose bifaciality nobody tells, at its careful end.
class UntoldBack {
  public:
    UntoldBack(const PanelInService& panel, const ScreenContext& context);

    /// Whether light on them may make a danger of what the elements of a bank take; `circuit` with
    /// that bank in its store, null without a store. False where the back is told.
    [[nodiscard]] bool may_be_danger(const Wiring& wiring, const BankNumbers& numbers,
                                     const Circuit* circuit) const;

  private:
    const ScreenContext* context_;
    std::optional<PanelInService> careful_{};
};

}  // namespace heatmatch
