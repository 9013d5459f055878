#pragma once

#include <memory>

namespace heatmatch {

/// Keeps what the heat of banks allows in one store, for the next ranking in the same store, on the
/// same run at the element and with the same devices. Several threads may use one.
class HeatMemory {
  public:
    struct Held;  //!< what is kept, with all that it was made of

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
