#pragma once

#include "broadcast.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/clear_sky.hpp"
#include "heatmatch/solar/plane_irradiance.hpp"

namespace heatmatch::python {

using Numbers = py::array_t<double>;

inline constexpr Range zenith_range{.low = 0.0, .high = 180.0};
inline constexpr Range irradiance_range{.low = 0.0, .high = 3000.0};
// The earth's orbit allows 1320 to 1415; a value on the horizontal is a mistake.
inline constexpr Range extraterrestrial_range{.low = 1300.0, .high = 1450.0};
inline constexpr double solar_constant_w_m2 = ClearAir{}.extraterrestrial_w_m2;

/// Irradiance on a plane, as arrays.
struct PlaneIrradiances {
    Numbers beam_w_m2{};
    Numbers circumsolar_w_m2{};
    Numbers sky_w_m2{};
    Numbers ground_w_m2{};
    Numbers total_w_m2{};
};

/// Irradiance on a plane: one for numbers, arrays for arrays.
template <class Shape>
py::object plane_result(const Shape& shape, const std::array<Numbers, 5>& out) {
    if (!shape.empty()) return py::cast(PlaneIrradiances{out[0], out[1], out[2], out[3], out[4]});
    return py::cast(
        PlaneIrradiance{*out[0].data(), *out[1].data(), *out[2].data(), *out[3].data()});
}

inline std::array<double, 5> in_parts(const PlaneIrradiance& on) {
    return {on.beam_w_m2, on.circumsolar_w_m2, on.sky_w_m2, on.ground_w_m2, on.total_w_m2()};
}

[[noreturn]] inline void refuse_word(const char* name, const std::string& word,
                                     const char* allowed) {
    throw InvalidInput(ErrorDetail{.field = name,
                                   .value = quote(word),
                                   .allowed = allowed,
                                   .remedy = verbatim("correct the argument")});
}

/// The model of the sky of that name; throws InvalidInput for another word.
inline SkyModel sky_model_named(const std::string& model) {
    const auto known = find_choice<SkyModel>(model);
    if (!known) refuse_word("model", model, "\"hay_davies\" or \"isotropic\"");
    return *known;
}

/// A pickle of all members, in their order.
template <class Class, class... Member>
auto pickle_of(Member Class::*... members) {
    return py::pickle(
        [members...](const Class& thing) { return py::make_tuple(thing.*members...); },
        [members...](const py::tuple& state) {
            Class thing{};
            std::size_t i = 0;
            ((thing.*members = state[i++].cast<Member>()), ...);
            return thing;
        });
}

}  // namespace heatmatch::python
