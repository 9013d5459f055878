"""Makes rear_light.csv: light on the backs of panels in 20 layouts, by two other programs.

    pip install solarfactors "pvlib>=0.16"; python tests/reference/rear_light.py > rear_light.csv

ANTS-2D stands in pvlib; solarfactors is the maintained fork of pvfactors; both see rows without an
end over level ground, here under an isotropic sky. `sheds` is pvlib's infinite_sheds, which takes
the mean of the ground between two rows for what the back sees.
"""

from __future__ import annotations

import sys
import warnings

import numpy as np
import pandas as pd
from pvfactors.engine import PVEngine
from pvfactors.geometry import OrderedPVArray
from pvfactors.irradiance import IsotropicOrdered
from pvlib import bifacial, irradiance, location
from pvlib.bifacial import ants2d

# tilt, lower edge, slant, pitch (none: one row), albedo
LAYOUTS = [
    (60, 0.5, 1.7, None, 0.2), (60, 1.0, 1.7, None, 0.2), (30, 1.0, 1.7, None, 0.2),
    (90, 0.3, 1.7, None, 0.6), (20, 1.5, 1.7, None, 0.3), (30, 0.5, 1.7, 4.0, 0.2),
    (30, 1.0, 1.7, 4.0, 0.2), (30, 1.0, 1.7, 6.0, 0.2), (45, 1.0, 1.7, 5.0, 0.25),
    (60, 0.7, 1.7, 5.0, 0.7), (20, 1.0, 2.0, 4.0, 0.2), (20, 2.0, 2.0, 4.0, 0.3),
    (25, 1.5, 3.4, 8.0, 0.25), (35, 0.8, 1.1, 3.0, 0.2), (40, 1.2, 2.3, 7.0, 0.2),
    (70, 0.4, 1.7, 6.0, 0.8), (15, 0.3, 1.7, 3.0, 0.2), (30, 3.0, 1.7, 5.0, 0.2),
    (50, 1.0, 2.0, 10.0, 0.5), (90, 0.5, 1.0, 4.0, 0.2),
]  # fmt: skip
ONE_ROW_PITCHES = 20  # slants between rows that stand for one row alone


def moments() -> pd.DataFrame:
    """Hours of five days at 44 degrees north, cloudless and under cloud."""
    days = pd.to_datetime(["2023-01-15", "2023-03-20", "2023-06-21", "2023-09-10", "2023-11-20"])
    hours = [day + pd.Timedelta(hours=h) for day in days for h in (6.5, 9.5, 12.5, 15.5)]
    times = pd.DatetimeIndex(hours).tz_localize("UTC")
    place = location.Location(44.0, 0.0, "UTC")
    sun = place.get_solarposition(times)
    clear = place.get_clearsky(times, model="haurwitz")["ghi"]
    frames = []
    for share in (1.0, 0.35):
        split = irradiance.erbs(share * clear, sun["apparent_zenith"], times)
        frames.append(
            pd.DataFrame(
                {
                    "zenith_deg": sun["apparent_zenith"].round(3),
                    "azimuth_deg": sun["azimuth"].round(3),
                    "dni_w_m2": split["dni"].round(2),
                    "dhi_w_m2": split["dhi"].round(2),
                }
            )
        )
    rows = pd.concat(frames)
    return rows[rows["zenith_deg"] < 85.0]


def solarfactors_back(layout: tuple, sky: pd.DataFrame) -> np.ndarray:
    """On the back of the middle row of seven, or of one alone; its rows reflect 1 and 3 %."""
    tilt, lower, slant, pitch, albedo = layout
    rows = 7 if pitch else 1
    array = OrderedPVArray.init_from_dict(
        {
            "n_pvrows": rows,
            "pvrow_height": lower + slant / 2 * np.sin(np.radians(tilt)),
            "pvrow_width": slant,
            "axis_azimuth": 90.0,
            "gcr": slant / (pitch or ONE_ROW_PITCHES * slant),
            "cut": {},
        }
    )
    engine = PVEngine(array, irradiance_model=IsotropicOrdered())
    same = np.ones(len(sky))
    engine.fit(
        np.array([stamp.to_pydatetime() for stamp in sky.index]),
        sky["dni_w_m2"].to_numpy(),
        sky["dhi_w_m2"].to_numpy(),
        sky["zenith_deg"].to_numpy(),
        sky["azimuth_deg"].to_numpy(),
        tilt * same,
        180.0 * same,
        albedo * same,
    )
    return engine.run_full_mode(
        fn_build_report=lambda made: made.ts_pvrows[rows // 2].back.get_param_weighted("qinc")
    )


def main() -> None:
    """Prints the file."""
    warnings.filterwarnings("ignore")
    sky = moments()
    zenith, azimuth = sky["zenith_deg"].to_numpy(), sky["azimuth_deg"].to_numpy()
    dni, dhi = sky["dni_w_m2"].to_numpy(), sky["dhi_w_m2"].to_numpy()
    ghi = dni * np.cos(np.radians(zenith)) + dhi
    out = sys.stdout
    out.write(
        "# Light on the backs of panels that look south [W/m2], isotropic sky, rows without "
        "an end. Made by rear_light.py with pvlib 0.16.1 (ants2d, infinite_sheds) and "
        "solarfactors 1.6.1; "
        "no pitch: one row, for ants2d and sheds rows 20 slants apart.\n"
        "layout,tilt_deg,height_m,slant_m,pitch_m,albedo,zenith_deg,azimuth_deg,dni_w_m2,dhi_w_m2,"
        "ants2d,solarfactors,sheds\n"
    )
    for number, layout in enumerate(LAYOUTS, 1):
        tilt, lower, slant, pitch, albedo = layout
        apart = pitch or ONE_ROW_PITCHES * slant
        middle = lower + slant / 2 * np.sin(np.radians(tilt))
        ants = ants2d.get_irradiance(
            np.full(len(sky), float(tilt)), 90, zenith, azimuth, slant / apart, middle, apart,
            ghi, dhi, dni, albedo, model="isotropic", ground_segments=40 if pitch else 400,
        )["poa_back"]  # fmt: skip
        sheds = bifacial.infinite_sheds.get_irradiance_poa(
            180 - tilt, 0, zenith, azimuth, slant / apart, middle, apart, ghi, dhi, dni, albedo,
            npoints=200,
        )["poa_global"]  # fmt: skip
        factors = solarfactors_back(layout, sky)
        for i in range(len(sky)):
            out.write(
                f"{number},{tilt},{lower},{slant},{pitch or ''},{albedo},{zenith[i]},{azimuth[i]},"
                f"{dni[i]},{dhi[i]},{ants[i]:.2f},{factors[i]:.2f},{sheds[i]:.2f}\n"
            )


if __name__ == "__main__":
    main()
