#include "pybind.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/outcome_unknown.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch::python {

namespace {

/// Raises the Python class of that name in heatmatch.errors, with the pieces of the message.
void raise(const char* name, const Error& error) {
    try {
        const py::object type = py::module_::import("heatmatch.errors").attr(name);
        const ErrorDetail& detail = error.detail();
        const py::object instance = type(error.what(), detail.part, detail.field, detail.value,
                                         detail.allowed, detail.remedy);
        PyErr_SetObject(type.ptr(), instance.ptr());
    } catch (py::error_already_set& interruption) {
        // Ctrl-C came while Python was looking for the class.
        interruption.restore();
    }
}

}  // namespace

void register_errors(py::module_& module) {
    static_cast<void>(module);
    py::register_local_exception_translator([](std::exception_ptr pointer) {
        if (!pointer) return;
        try {
            std::rethrow_exception(pointer);
        } catch (const InvalidInput& error) {
            raise("InvalidInput", error);
        } catch (const NotFound& error) {
            raise("NotFound", error);
        } catch (const FileError& error) {
            raise("FileError", error);
        } catch (const CatalogError& error) {
            raise("CatalogError", error);
        } catch (const OutcomeUnknown& error) {
            raise("OutcomeUnknown", error);
        } catch (const Error& error) {
            raise("Error", error);
        } catch (const Interrupted&) {
            PyErr_SetNone(PyExc_KeyboardInterrupt);
        }
    });
}

}  // namespace heatmatch::python
