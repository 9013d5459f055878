"""Errors planted where the room `match` takes one of several: the worst, a place, an end."""

from __future__ import annotations

from mutant import Mutant

MARGINS, CIRCUIT = "match/margins", "match/circuit"
CANDIDATE, RANK = "match/candidate", "match/rank"
SURVIVORS, OF_SEVERAL = "test_survivors", "test_worst_of_several"
OF_DEVICES = "test_worst_of_devices"
MUTANTS_OF_MATCH = (
    Mutant(
        "the distance along a wire is told in another unit",
        f"{MARGINS}/tail_margins.cpp",
        "100.0 * *distance_m, unit::centimetre",
        "*distance_m, unit::centimetre",
        (SURVIVORS,),
    ),
    Mutant(
        "the cooler of wall and lid is what wood meets",
        f"{MARGINS}/store_margins.cpp",
        "const double hottest_c = std::max(view.point.wall_c, view.point.lid_c);",
        "const double hottest_c = std::min(view.point.wall_c, view.point.lid_c);",
        (SURVIVORS, OF_DEVICES),
    ),
    Mutant(
        "use and stagnation change their days",
        f"{CIRCUIT}/bank_heat.cpp",
        "stagnation ? stagnation_days : bright_days",
        "stagnation ? bright_days : stagnation_days",
        ("test_bank_heat",),
    ),
    Mutant(
        "the hot side of a vessel is that of the fill that conducts least",
        f"{CIRCUIT}/bank_heat.cpp",
        ".inner_c = std::max({low.inner_c, typical.inner_c, high.inner_c})",
        ".inner_c = low.inner_c",
        ("test_bank_heat",),
    ),
    Mutant(
        "joints carry the current of the sun at hand",
        f"{MARGINS}/run_margins.cpp",
        ".value = lasting_current_factor * run.code_isc_a,",
        ".value = lasting_current_factor * run.current_a,",
        (SURVIVORS,),
    ),
    Mutant(
        "a terminal is judged at the cooler end of the fill's conductivity",
        f"{CIRCUIT}/tail_heat.cpp",
        "conducting.terminal_c > hotter.terminal_c",
        "conducting.terminal_c < hotter.terminal_c",
        ("test_tail_heat",),
    ),
    Mutant(
        "a season's watts are shared by branches alone",
        f"{CANDIDATE}/season.cpp",
        "array_w / circuit.bank.hookup.count()",
        "array_w / circuit.bank.hookup.parallel",
        ("test_season",),
    ),
    Mutant(
        "a season's watts are those before the wire",
        f"{CANDIDATE}/season.cpp",
        "largest(each).power_w * ohm / (ohm + wire)",
        "largest(each).power_w",
        ("test_season",),
    ),
    Mutant(
        "of several string fuses the last counts",
        f"{MARGINS}/array_margins.cpp",
        "largest = std::max(largest.value_or(0.0), *rated_a);",
        "largest = *rated_a;",
        (OF_SEVERAL,),
    ),
    Mutant(
        "a fuse lets through more than is fed",
        f"{MARGINS}/array_margins.cpp",
        "margin.value = std::min(*margin.value, *fuse_a);",
        "margin.value = *fuse_a;",
        (OF_SEVERAL,),
    ),
    Mutant(
        "a load is told per metre with the unit of centimetres",
        f"{MARGINS}/sheath_margins.cpp",
        'with<"load">(view.point.w_per_cm, unit::watt_per_cm)',
        'with<"load">(100.0 * view.point.w_per_cm, unit::watt_per_cm)',
        (SURVIVORS,),
    ),
    Mutant(
        "a bound of the screen is steeper than a sheath",
        f"{RANK}/screen.cpp",
        "const double by_heat = steeper * (1.0 - watts / numbers.heat_w) + slack;",
        "const double by_heat = 1.0 - steeper * watts / numbers.heat_w;",
        ("test_front",),
    ),
    Mutant(
        "of several strings' wires the first counts for the fuse",
        f"{MARGINS}/fuse_margins.cpp",
        "if (margin.limit && fuse_a >= *margin.limit) continue;",
        "if (margin.limit) continue;",
        (OF_SEVERAL,),
    ),
    Mutant(
        "of several wires the last is what terminals meet",
        f"{MARGINS}/limits.cpp",
        "hottest = std::max(hottest.value_or(found->conductor_c), found->conductor_c);",
        "hottest = found->conductor_c;",
        (OF_SEVERAL,),
    ),
    Mutant(
        "of several that are no disconnect the first counts",
        f"{MARGINS}/opening_margins.cpp",
        "if (listed && found <= margin.severity) continue;",
        "if (listed) continue;",
        (OF_DEVICES,),
    ),
    Mutant(
        "of several devices in a run the last one's terminals count",
        f"{MARGINS}/run_ampacity.cpp",
        "found.column_c = std::min(found.column_c.value_or(column_c), column_c);",
        "found.column_c = column_c;",
        (OF_DEVICES,),
    ),
    Mutant(
        "what senses the lid is as hot as the wall",
        f"{MARGINS}/sensor_margins.cpp",
        "if (place == SensedPlace::lid) return point.lid_c;",
        "if (place == SensedPlace::lid) return point.wall_c;",
        (OF_DEVICES,),
    ),
    Mutant(
        "of vessel, liner and lagging the vessel alone is weak",
        f"{MARGINS}/material_margins.cpp",
        "return std::any_of(layers.begin(), layers.end(),",
        "return std::any_of(layers.begin(), layers.begin() + 1,",
        (OF_DEVICES,),
    ),
)
