#pragma once

#include "pybind.hpp"

#include <chrono>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch::python {

/// A long call of the library seen from Python: reports progress and looks for signals. A signal's
/// handler or a progress function that raises stops it, and that exception goes on.
class ProgressCall {
  public:
    using Clock = std::chrono::steady_clock;

    /// Of None, True for a bar, or a function of the share done. What happens more often than
    /// `between` is left out: asking for the interpreter takes time where other threads run.
    explicit ProgressCall(const py::object& progress, Clock::duration between = {});

    /// For the library; valid as long as this object.
    [[nodiscard]] Progress callback();

    /// Does work without the interpreter lock, and raises what stopped it.
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

/// Between two looks for signals, where progress is reported more often than needed.
inline constexpr std::chrono::milliseconds between_looks(30);

}  // namespace heatmatch::python
