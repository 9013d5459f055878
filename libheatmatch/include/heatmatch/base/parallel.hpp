#pragma once

#include <cstddef>
#include <exception>
#include <functional>

namespace heatmatch {

/// Thrown where a progress callback requests a stop.
class Interrupted : public std::exception {
  public:
    [[nodiscard]] const char* what() const noexcept override { return "interrupted"; }
};

/// Called with the share done, 0 to 1; returning false stops with an Interrupted.
using Progress = std::function<bool(double)>;

/// Reports a share to a callback, if there is one. Throws Interrupted where the callback requests a
/// stop.
void tell_progress(const Progress& progress, double share);

/// Number of threads for so many items: the number requested, or the number of processors for 0;
/// never more than the items.
[[nodiscard]] std::size_t worker_count(std::size_t wanted, std::size_t items);

/// Callback for work on one item, to be called from time to time; throws Interrupted where it
/// should stop.
using Pulse = std::function<void()>;

/// Calls `work(item, worker, pulse)` once for every item below `items`, from `workers` threads. The
/// worker's number is below `workers`. The calling thread is worker 0, and only it calls
/// `progress`, whose share never decreases. An exception in one call stops the others and is
/// rethrown here.
void parallel_for(std::size_t items, std::size_t workers,
                  const std::function<void(std::size_t, std::size_t, const Pulse&)>& work,
                  const Progress& progress = {});

}  // namespace heatmatch
