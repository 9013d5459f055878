#pragma once

#include <cstddef>
#include <exception>
#include <functional>

namespace heatmatch {

/// Thrown where a progress callback asked to stop.
class Interrupted : public std::exception {
  public:
    [[nodiscard]] const char* what() const noexcept override { return "interrupted"; }
};

/// Called with the share done, 0 to 1; returning false stops with an Interrupted.
using Progress = std::function<bool(double)>;

/// Tells a share to a callback, if there is one. Throws Interrupted where that asks to stop.
void tell_progress(const Progress& progress, double share);

/// Threads to use for that many items: as many as wanted, or as the machine has for 0, and not more
/// than there are items.
[[nodiscard]] std::size_t worker_count(std::size_t wanted, std::size_t items);

/// What work on an item may call from time to time: throws an Interrupted where it should stop.
using Pulse = std::function<void()>;

/// Calls `work(item, worker, pulse)` once for every item below `items`, from `workers` threads; the
/// worker is below `workers`, and the calling thread is worker 0 and the only one to call
/// `progress`, whose share never falls. What a call throws stops the others and is thrown here.
void parallel_for(std::size_t items, std::size_t workers,
                  const std::function<void(std::size_t, std::size_t, const Pulse&)>& work,
                  const Progress& progress = {});

}  // namespace heatmatch
