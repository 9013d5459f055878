#include "pybind.hpp"

#include "heatmatch/text/file_writer.hpp"

namespace heatmatch::python {

void register_files(py::module_& module) {
    module.def(
        "write_file",
        [](const py::bytes& path, const py::bytes& content, bool replace,
           const std::string& only_kind) {
            const auto name = path.cast<std::string>();
            const auto text = content.cast<std::string_view>();
            const py::gil_scoped_release release;
            FileWriter file(name, {.replace = replace, .only_kind = only_kind});
            file.write(text);
            file.keep();
        },
        py::arg("path"), py::arg("content"), py::pos_only(), py::kw_only(),
        py::arg("replace") = true, py::arg("only_kind") = "",
        "Writes a file whole or not at all. A file that exists is replaced only with `replace`, "
        "and with `only_kind` only if that text is near its beginning or it is empty; a "
        "catalog never is.");
    module.def(
        "check_file",
        [](const py::bytes& path, bool replace) {
            const auto name = path.cast<std::string>();
            const py::gil_scoped_release release;
            const FileWriter tried(name, {.replace = replace});
        },
        py::arg("path"), py::pos_only(), py::kw_only(), py::arg("replace") = true,
        "Refuses a path that write_file would refuse, before the work is done.");
}

}  // namespace heatmatch::python
