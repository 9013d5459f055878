#include "progress_call.hpp"

namespace heatmatch::python {

namespace {

py::object progress_from(const py::object& progress) {
    if (!py::isinstance<py::bool_>(progress)) return progress;
    if (!progress.cast<bool>()) return py::none();
    return py::module_::import("heatmatch._progress").attr("bar")();
}

}  // namespace

ProgressCall::ProgressCall(const py::object& progress, Clock::duration between)
    : progress_(progress_from(progress)), between_(between) {}

Progress ProgressCall::callback() {
    return [this](double share) { return tell(share); };
}

bool ProgressCall::tell(double share) {
    const Clock::time_point now = Clock::now();
    if (share < 1.0 && now - told_at_ < between_) return true;
    told_at_ = now;
    const py::gil_scoped_acquire acquire;
    if (PyErr_CheckSignals() != 0) raised_ = true;
    if (raised_) return false;
    if (progress_.is_none() || share <= told_) return true;
    told_ = share;
    try {
        progress_(share);
    } catch (py::error_already_set& error) {
        error.restore();
        raised_ = true;
    }
    return !raised_;
}

}  // namespace heatmatch::python
