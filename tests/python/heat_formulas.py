"""Heat-transfer quantities by open libraries and by integrals, for the rows of the reference files.

Nothing here comes from heatmatch: `ht` and `fluids` (MIT), SciPy quadrature, and textbook equations
(Carslaw-Jaeger, Incropera, VDI Heat Atlas, NIST) written down a second time.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import ht
from fluids import ATMOSPHERE_1976
from ht import conduction, conv_external
from scipy import constants, integrate, optimize, special

Inputs = Mapping[str, float]
ZERO_C = 273.15

# NIST WebBook (Chase 1998), quartz: below and above the transition at 847 K, J/molK, t = T/1000.
SHOMATE_LOW = (-6.076591, 251.6755, -324.7964, 168.5604, 0.002548)
SHOMATE_HIGH = (58.75340, 10.27925, -0.131384, 0.025210, 0.025601)
QUARTZ_KG_MOL = 0.0600843
TRANSITION_K = 847.0


def quadrature(f: Callable[[float], float], low: float, high: float) -> float:
    """Integral to about ten digits."""
    value, _ = integrate.quad(f, low, high, limit=400, epsabs=0.0, epsrel=1e-11)
    return float(value)


def quartz_cp(t_k: float) -> float:
    """Heat capacity of quartz [J/kgK] by the Shomate polynomial."""
    a, b, c, d, e = SHOMATE_LOW if t_k <= TRANSITION_K else SHOMATE_HIGH
    t = t_k / 1000.0
    return (a + b * t + c * t**2 + d * t**3 + e / t**2) / QUARTZ_KG_MOL


def air_diffusivity_and_viscosity(t_k: float, prandtl: float) -> tuple[float, float, float]:
    """Conductivity, kinematic viscosity and thermal diffusivity of air at sea level."""
    density = 101325.0 * 0.0289644 / (8.31446 * t_k)
    nu = ATMOSPHERE_1976.viscosity(t_k) / density
    return ATMOSPHERE_1976.thermal_conductivity(t_k), nu, nu / prandtl


def grashof(length_m: float, hot_k: float, cold_k: float, nu: float) -> float:
    film = 0.5 * (hot_k + cold_k)
    return constants.g * abs(hot_k - cold_k) / film * length_m**3 / nu**2


def rod_in_still_air(q: Inputs) -> float:
    """Surface [C] of a long horizontal rod that gives its heat by convection and radiation."""
    air = q["Ta_C"] + ZERO_C

    def surplus(t_k: float) -> float:
        k, nu, _ = air_diffusivity_and_viscosity(0.5 * (t_k + air), 0.70)
        gr = grashof(q["D_m"], t_k, air, nu)
        h = ht.Nu_horizontal_cylinder_Churchill_Chu(0.70, gr) * k / q["D_m"]
        return h * (t_k - air) + ht.q_rad(q["eps"], t_k, air) - q["flux_W_m2"]

    return float(optimize.brentq(surplus, air + 1.0, 2500.0)) - ZERO_C


def vertical_plate_heat(q: Inputs) -> float:
    """Heat [W] by free convection from one face of a vertical plate."""
    hot, cold = q["Ts_C"] + ZERO_C, q["Tinf_C"] + ZERO_C
    k, nu, _ = air_diffusivity_and_viscosity(0.5 * (hot + cold), 0.69)
    nusselt = ht.Nu_vertical_plate_Churchill(0.69, grashof(q["height_m"], hot, cold, nu))
    return nusselt * k / q["height_m"] * q["height_m"] * q["width_m"] * (hot - cold)


def line_source(q: Inputs) -> float:
    """Rise [K] at r from an endless line in an endless medium. Carslaw-Jaeger 10.4."""
    argument = q["r_m"] ** 2 * q["rho"] * q["cp"] / (4.0 * q["k"] * q["t_s"])
    return q["q_W_m"] / (4.0 * math.pi * q["k"]) * float(special.exp1(argument))


def cylinder_source(q: Inputs) -> float:
    """G at the surface of an endless hollow cylinder of constant flux. Carslaw-Jaeger 13.5.

    G = (1/pi^2) int (exp(-b^2 Fo) - 1) (J0 Y1 - Y0 J1)/(b^2 (J1^2 + Y1^2)) db, rise = q'/k G; the
    bracket of Bessel functions at equal arguments is -2/(pi b) by their Wronskian. With u = ln b.
    """

    def part(u: float) -> float:
        b = math.exp(u)
        weight = 2.0 / (math.pi * b) / (special.j1(b) ** 2 + special.y1(b) ** 2)
        return float(-math.expm1(-b * b * q["Fo"]) * weight / b)

    pieces = [-25.0, -8.0, -4.0, -2.0, 0.0, 2.0, 4.0, 7.0, 12.0]
    total = sum(quadrature(part, low, high) for low, high in zip(pieces, pieces[1:], strict=False))
    return total / math.pi**2


def finite_line_mean(q: Inputs) -> float:
    """Mean rise [K] over the length of a finite line under a surface of constant temperature.

    Vertical, its top `cover_m` deep, at radius r. Integral of the point source along line and
    point, its mirror image taken off (Claesson and Javed 2011; recalled).
    """
    length, cover = q["L_m"], q["cover_m"]

    def ierf(x: float) -> float:
        return x * math.erf(x) + math.expm1(-x * x) / math.sqrt(math.pi)

    def part(s: float) -> float:
        total = 2.0 * ierf(length * s) + 2.0 * ierf((length + 2.0 * cover) * s)
        total -= ierf((2.0 * length + 2.0 * cover) * s) + ierf(2.0 * cover * s)
        return math.exp(-((q["r_m"] * s) ** 2)) * total / (length * s * s)

    start = math.sqrt(q["rho"] * q["cp"] / (4.0 * q["k"] * q["t_s"]))
    return q["q_W_m"] / (4.0 * math.pi * q["k"]) * quadrature(part, start, 12.0 / q["r_m"])


def smoluchowski_ratio(t_k: float, grain_m: float) -> float:
    """Conductivity of air in the gaps over that of free air. VDI Heat Atlas D6.3; recalled."""
    per_kg = constants.R / 0.0289644
    sticking = 1.0 / (1.0 + 10.0 ** (0.6 - (1000.0 / t_k + 1.0) / 2.8))
    path = 2.0 * (2.0 - sticking) / sticking * math.sqrt(2.0 * math.pi * per_kg * t_k)
    path *= ATMOSPHERE_1976.thermal_conductivity(t_k) / (101325.0 * (2.0 * 1006.0 - per_kg))
    return 1.0 / (1.0 + path / grain_m)


def zehner_bauer_schlunder(q: Inputs) -> float:
    """Conductivity [W/mK] of a bed of grains in air. VDI Heat Atlas D6.3; recalled."""
    t, d, void = q["T_K"], q["d_mm"] / 1000.0, q["porosity"]
    kf = ATMOSPHERE_1976.thermal_conductivity(t)
    kg = smoluchowski_ratio(t, d)
    kp = q["k_solid"] / kf
    kr = 4.0 * constants.sigma / (2.0 / q["eps"] - 1.0) * t**3 * d / kf
    b = q["Cf"] * ((1.0 - void) / void) ** (10.0 / 9.0)
    n = (1.0 + (kr - b * kg) / kp) / kg - b * (1.0 / kg - 1.0) * (1.0 + kr / kp)
    core = math.log((kp + kr) / (b * (kg + (1.0 - kg) * (kp + kr))))
    core *= b * (kp + kr - 1.0) / (n**2 * kg * kp)
    core += (b + 1.0) / (2.0 * b) * (kr / kg - b * (1.0 + (1.0 - kg) * kr / kg))
    core -= (b - 1.0) / (n * kg)
    core *= 2.0 / n
    s = math.sqrt(1.0 - void)
    gas = (1.0 - s) * void * (1.0 / (void - 1.0 + 1.0 / kg) + kr)
    return kf * (gas + s * (q["phi"] * kp + (1.0 - q["phi"]) * core))


def inner_temperature_linear_k(q: Inputs) -> float:
    """Inner wall [C] of a long cylinder with k = k0 (1 + beta (T - 20)), step by step."""

    def slope(_: float, t: list[float]) -> list[float]:
        return [q["q_W_m"] / (2.0 * math.pi * q["k0"] * (1.0 + q["beta_per_K"] * (t[0] - 20.0)))]

    span = (0.0, math.log(q["R_m"] / q["r0_m"]))
    path = integrate.solve_ivp(slope, span, [q["T_outer_C"]], rtol=1e-11, atol=1e-9)
    return float(path.y[0, -1])


def fin_flow(q: Inputs) -> float:
    """Heat [W] into a fin with a bare, heat-tight tip, by the boundary-value problem itself."""
    g, ka = q["g_W_mK"], q["kA_W_m"]
    result = integrate.solve_bvp(
        lambda _, y: [y[1], g / ka * y[0]],
        lambda base, tip: [base[0] - q["excess_K"], tip[1]],
        [q["L_m"] * n / 200.0 for n in range(201)],
        [[q["excess_K"]] * 201, [0.0] * 201],
        tol=1e-9,
        max_nodes=20000,
    )
    return float(-ka * result.y[1, 0])


def depth_of_freezing(q: Inputs) -> float:
    share = (q["T_C"] - q["Ts_C"]) / (q["Ti_C"] - q["Ts_C"])
    return float(special.erfinv(share)) * 2.0 * math.sqrt(q["a_m2_s"] * q["t_s"])


FORMULAS: dict[str, Callable[[Inputs], float]] = {
    "shape_factor_two_pipes": lambda q: conduction.S_isothermal_pipe_to_isothermal_pipe(
        q["D1_m"], q["D2_m"], q["spacing_m"], q["L_m"]
    ),
    "shape_factor_eccentric": lambda q: conduction.S_isothermal_pipe_eccentric_to_isothermal_pipe(
        q["D1_m"], q["D2_m"], q["offset_m"], q["L_m"]
    ),
    "shape_factor_buried_pipe": lambda q: conduction.S_isothermal_pipe_to_plane(
        q["D_m"], q["depth_m"], q["L_m"]
    ),
    "shape_factor_pipe_midway": lambda q: conduction.S_isothermal_pipe_to_two_planes(
        q["D_m"], q["depth_m"], q["L_m"]
    ),
    "shape_factor_upright_rod": lambda q: conduction.S_isothermal_pipe_normal_to_plane(
        q["D_m"], q["L_m"]
    ),
    "shape_factor_sphere": lambda q: conduction.S_isothermal_sphere_to_plane(
        q["D_m"], q["depth_m"]
    ),
    "nusselt_horizontal_cylinder": lambda q: ht.Nu_horizontal_cylinder_Churchill_Chu(
        q["Pr"], q["Ra"] / q["Pr"]
    ),
    "nusselt_vertical_plate": lambda q: ht.Nu_vertical_plate_Churchill(q["Pr"], q["Ra"] / q["Pr"]),
    "nusselt_cylinder_in_wind": lambda q: conv_external.Nu_cylinder_Churchill_Bernstein(
        q["Re"], q["Pr"]
    ),
    "nusselt_lid_upward": lambda q: ht.conv_free_immersed.Nu_horizontal_plate_McAdams(
        q["Pr"], q["Ra"] / q["Pr"], buoyancy=True
    ),
    "air_conductivity": lambda q: ATMOSPHERE_1976.thermal_conductivity(q["T_K"]),
    "air_viscosity": lambda q: ATMOSPHERE_1976.viscosity(q["T_K"]),
    "radiation": lambda q: ht.q_rad(q["eps"], q["T_K"], q["T_around_K"]),
    "rod_in_still_air": rod_in_still_air,
    "vertical_plate_heat": vertical_plate_heat,
    "line_source": line_source,
    "line_source_growth": lambda q: (
        q["q_W_m"] / (4.0 * math.pi * q["k"]) * math.log(q["t2_s"] / q["t1_s"])
    ),
    "cylinder_source": cylinder_source,
    "finite_line_middle": lambda q: (
        q["q_W_m"]
        / (4.0 * math.pi * q["k"])
        * quadrature(lambda z: 1.0 / math.hypot(q["r_m"], z), -0.5 * q["L_m"], 0.5 * q["L_m"])
    ),
    "finite_line_mean": finite_line_mean,
    "long_cylinder_wall": lambda q: (
        q["q_W_m"] / (2.0 * math.pi * q["k"]) * quadrature(lambda r: 1.0 / r, q["r0_m"], q["R_m"])
    ),
    "long_cylinder_linear_k": inner_temperature_linear_k,
    "bed_conductivity": zehner_bauer_schlunder,
    "quartz_heat_capacity": lambda q: quartz_cp(q["T_K"]),
    "quartz_mean_heat_capacity": lambda q: (
        quadrature(quartz_cp, q["T1_C"] + ZERO_C, q["T2_C"] + ZERO_C) / (q["T2_C"] - q["T1_C"])
    ),
    "fin_flow": fin_flow,
    "lumped_time": lambda q: (
        q["rho"]
        * q["cp"]
        * q["D_m"]
        / (6.0 * q["h"])
        * math.log((q["Ti_C"] - q["Tinf_C"]) / (q["T_C"] - q["Tinf_C"]))
    ),
    "half_space_depth": depth_of_freezing,
    "space_lift": lambda q: (
        q["heat_W"] / (q["A_cover_m2"] * q["U"] + 0.34 * q["ach"] * q["volume_m3"])
    ),
}
