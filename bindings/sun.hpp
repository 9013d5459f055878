#pragma once

#include "broadcast.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/clear_sky.hpp"

namespace heatmatch::python {

using Numbers = py::array_t<double>;

inline constexpr Range zenith_range{.low = 0.0, .high = 180.0};
inline constexpr Range irradiance_range{.low = 0.0, .high = 3000.0};
// The earth's orbit allows 1320 to 1415; a value on the horizontal is a mistake.
inline constexpr Range extraterrestrial_range{.low = 1300.0, .high = 1450.0};
inline constexpr double solar_constant_w_m2 = ClearAir{}.extraterrestrial_w_m2;

/// What falls on a plane, as arrays.
struct PlaneIrradiances {
    Numbers beam_w_m2{};
    Numbers circumsolar_w_m2{};
    Numbers sky_w_m2{};
    Numbers ground_w_m2{};
    Numbers total_w_m2{};
};

[[noreturn]] inline void refuse_word(const char* name, const std::string& word,
                                     const char* allowed) {
    throw InvalidInput(ErrorDetail{.field = name,
                                   .value = quote(word),
                                   .allowed = allowed,
                                   .remedy = verbatim("correct the argument")});
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
