#pragma once

#include <memory>

namespace heatmatch {

/// Keeps the heat limits of banks in one store for the next ranking with the same store, run at the
/// element and devices. Several threads may use one.
class HeatMemory {
  public:
    struct Held;  //!< results with all their inputs

    HeatMemory();
    ~HeatMemory();
    HeatMemory(const HeatMemory&) = delete;
    HeatMemory& operator=(const HeatMemory&) = delete;
    HeatMemory(HeatMemory&&) = delete;
    HeatMemory& operator=(HeatMemory&&) = delete;

    [[nodiscard]] Held& held() { return *held_; }

  private:
    std::unique_ptr<Held> held_;
};

}  // namespace heatmatch
