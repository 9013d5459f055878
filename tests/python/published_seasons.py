"""Published results of panels wired straight to a resistance, beside ours. A study: it prints.

    python tests/python/published_seasons.py

The publications leave out module, load and months, so nothing here can be held to a bar. That a
curve of energy is the sum of its hours is checked in tests/cpp/test_energy_curve.cpp.

Sources: T. Matuska, B. Sourek, Performance Analysis of Photovoltaic Water Heating System,
International Journal of Photoenergy 2017, 7540250 (open access; abstract and table 2 were at hand,
its tracker, module and load were not). J. Appelbaum, The Degree of Load-Matching in Photovoltaic
Systems, Seventh E.C. Photovoltaic Solar Energy Conference, 1987 (abstract at hand).
"""

from __future__ import annotations

from collections.abc import Iterator

import heatmatch as hm
import numpy as np
import numpy.typing as npt
from weather_years import GREENSBORO, MIAMI, SAND_POINT, site_of, tmy2, tmy3

# Table 2: mean air [°C] and yearly sun on a plane 45 degrees to the south [kWh/m2]; latitudes from
# memory. The table has no months and no hours.
TOWNS = {
    "Madrid": (40.4, 13.9, 1864),
    "Istanbul": (41.0, 14.1, 1805),
    "Athens": (38.0, 17.6, 1696),
    "Genova": (44.4, 15.8, 1637),
    "Bordeaux": (44.8, 12.7, 1448),
    "Milano": (45.5, 11.6, 1342),
    "Zurich": (47.4, 9.1, 1237),
    "Stockholm": (59.3, 5.3, 1232),
    "Prague": (50.1, 7.9, 1115),
}
TRACKER = 0.95  # what is left behind a tracker and its converter; common practice, no source
DAYS = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])


def town_weather(latitude_deg: float, air_c: float, sun_kwh_m2: float) -> hm.Weather:
    """A year of the town's sun, each month the same share of its clear sky.

    The swing of the air, 9 K over the year and 4 K over the day, is from memory.
    """
    site = hm.Site(
        record_low_c=-30,
        latitude_deg=latitude_deg,
        longitude_deg=15,
        elevation_m=200,
        tilt_deg=45,
        azimuth_deg=180,
        albedo=0.2,
    )
    clear = hm.Weather.clear_days(site)
    sums = (
        np.bincount(clear.month, clear.heating_irradiance_w_m2 * clear.hours, minlength=13)[1:]
        / 1000
    )
    daily = sums / DAYS * sun_kwh_m2 / sums.sum()
    mean = air_c - 9 * np.cos(2 * np.pi * (np.arange(12) - 0.5) / 12)
    return hm.Weather.from_months(site, daily, mean - 4, mean + 4)


def hourly_years() -> Iterator[tuple[str, hm.Weather]]:
    """The measured years at hand, on a plane of 45 degrees."""
    for name, path in (("Greensboro", GREENSBORO), ("Sand Point", SAND_POINT), ("Miami", MIAMI)):
        frame, meta = tmy2(path) if path == MIAMI else tmy3(path)
        yield name, hm.Weather.from_frame(frame, site_of(meta, 45), label="right")


def gain_pct(curve: hm.EnergyCurve, tracker: float = 1.0) -> float:
    """What a tracker gives above the best fixed resistance."""
    best = curve.delivered_kwh(curve.best_resistance_ohm)
    return float(100 * (tracker * curve.mpp_kwh / best - 1))


def powers(
    panel: hm.Panel,
    sun: npt.NDArray[np.float64],
    cell: npt.NDArray[np.float64],
    ohms: npt.NDArray[np.float64],
) -> tuple[npt.NDArray[np.float64], npt.NDArray[np.float64]]:
    """Power into each resistance and at the maximum, in each row [W]."""
    diode = hm.fit_single_diode(panel)
    into = np.zeros((len(sun), len(ohms)))
    most = np.zeros(len(sun))
    for row in np.flatnonzero(sun > 0):
        at = diode.at(irradiance_w_m2=float(sun[row]), cell_temperature_c=float(cell[row]))
        into[row] = at.into_resistance(ohms).power_w
        most[row] = at.maximum_power().power_w
    return into, most


def what_a_tracker_gives_above_the_best_resistance(panel: hm.Panel) -> None:
    print("\nPublished: a tracker gives 20 to 35 % above the best fixed resistance in Europe.")
    print("             kWh/m2 behind glass  best R/(Vmp/Imp)  gain [%]  by cloud  tracker 0.95")
    years = [(name, town_weather(*data)) for name, data in TOWNS.items()]
    for name, weather in [*years, *hourly_years()]:
        curve = hm.EnergyCurve(panel, weather)
        within = gain_pct(hm.EnergyCurve(panel, weather.split_by_cloud()))
        ratio = curve.best_resistance_ohm / curve.stc_match_ohm
        sun = weather.irradiation_kwh_m2
        gains = gain_pct(curve), within, gain_pct(curve, TRACKER)
        print(
            f"{name:12} {sun:19.0f} {ratio:17.2f} {gains[0]:9.1f} {gains[1]:9.1f} {gains[2]:13.1f}"
        )


def a_tank_that_is_full_in_summer_lowers_what_a_tracker_gives(panel: hm.Panel) -> None:
    print("\nHeat that a tank takes in a day, as a share of the panels' mean day; gain [%]")
    ohms = np.geomspace(0.6, 4.0, 80) * panel.v_mp / panel.i_mp
    for name in ("Madrid", "Prague"):
        weather = town_weather(*TOWNS[name])
        cell = weather.cell_temperature_c(noct_c=panel.noct_c)
        into, most = powers(panel, weather.plane_irradiance_w_m2, cell, ohms)
        daily = into.reshape(365, -1, len(ohms)).sum(1)
        possible = most.reshape(365, -1).sum(1)
        for share in (np.inf, 2.0, 1.5, 1.0, 0.7):
            tank = share * possible.mean()
            best = np.minimum(daily, tank).sum(0).max()
            gain = 100 * (np.minimum(possible, tank).sum() / best - 1)
            print(f"{name:8} {share:5.1f} {gain:6.1f}")


def a_clear_day_into_the_best_resistance(panel: hm.Panel) -> None:
    print("\nPublished: an ohmic load has a daily average utilization of 73 %.")
    hours = (np.arange(720) + 0.5) / 720
    ohms = np.geomspace(0.5, 4, 300) * panel.v_mp / panel.i_mp
    site = hm.Site(
        record_low_c=0, latitude_deg=32, longitude_deg=35, elevation_m=50, tilt_deg=32,
        azimuth_deg=180, albedo=0.2,
    )  # fmt: skip
    sine = 1000 * np.sin(np.pi * hours)
    days = {
        "half a sine to 1000 W/m2, cells 25 °C": (sine, np.full(720, 25.0)),
        "half a sine to 1000 W/m2, cells by NOCT": (sine, 20 + sine * (panel.noct_c - 20) / 800),
    }
    clear = hm.Weather.clear_days(site)
    cells = clear.cell_temperature_c(noct_c=panel.noct_c)
    for name, day in (("March 21", 79), ("June 21", 171), ("December 21", 354)):
        hours_of_day = slice(24 * day, 24 * day + 24)
        sun = clear.plane_irradiance_w_m2[hours_of_day]
        days[f"clear sky, 32 degrees, {name}"] = sun, cells[hours_of_day]
    for name, (sun, cell) in days.items():
        lit = sun > 0
        into, most = powers(panel, sun[lit], cell[lit], ohms)
        energy = into.sum(0) / most.sum()
        best = int(energy.argmax())
        mean = float((into[:, best] / most).mean())
        ratio = ohms[best] * panel.i_mp / panel.v_mp
        print(
            f"{name:40} best R/(Vmp/Imp) {ratio:.2f}: {100 * energy[best]:.0f} % of the energy, "
            f"mean of P/Pmax over the day {100 * mean:.0f} %"
        )


if __name__ == "__main__":
    label = hm.Catalog.starter().panels["silicon-60-cell-245"]
    what_a_tracker_gives_above_the_best_resistance(label)
    a_tank_that_is_full_in_summer_lowers_what_a_tracker_gives(label)
    a_clear_day_into_the_best_resistance(label)
