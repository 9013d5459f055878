#pragma once

#include "pybind.hpp"

#include <chrono>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch::python {

/// A long call of the library from Python: reports progress and checks for signals. An exception
/// from a signal handler or a progress function stops it and is passed on.
class ProgressCall {
  public:
    using Clock = std::chrono::steady_clock;

    /// From None, True for a bar, or a function of the share done. More frequent calls than
    /// `between` are omitted, because acquiring the interpreter lock takes time while other threads
    /// run.
    explicit ProgressCall(const py::object& progress, Clock::duration between = {});

    /// For the library; valid as long as this object.
    [[nodiscard]] Progress callback();

    /// Runs work without the interpreter lock, and raises the exception that stopped it.
    template <class Work>
    auto run(Work work) {
        try {
            const py::gil_scoped_release release;
            return work();
        } catch (const Interrupted&) {
            if (PyErr_Occurred() != nullptr) throw py::error_already_set();
            throw;
        }
    }

  private:
    [[nodiscard]] bool tell(double share);

    py::object progress_;
    Clock::duration between_;
    Clock::time_point told_at_{};
    double told_ = 0.0;
    bool raised_ = false;
};

/// Interval of the checks for signals, where progress is reported more often.
inline constexpr std::chrono::milliseconds between_looks(30);

}  // namespace heatmatch::python
