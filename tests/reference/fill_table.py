"""Prints the sheath of two rods of the starter in each fill, for the table in tests/README.md."""

import heatmatch as hm

CASES = (
    ("dry-sand", {}),
    ("dry-gravel", {}),
    ("crushed-basalt", {}),
    ("fire-brick", {}),
    ("fire-brick", {"rods_packed": True}),
    ("water", {}),
)

if __name__ == "__main__":
    catalog = hm.Catalog.starter()
    rod = catalog.elements["storage-rod-1000-240"]
    for medium, told in CASES:
        store = hm.Store(medium=medium, shape="cylinder", diameter_m=0.58, height_m=0.85, **told)
        watts = 1500 if medium == "water" else 400
        at = hm.sheath_temperature(
            rod, store, power_w=watts, elements=2, hours=6, air_c=20, medium=catalog
        )
        sheath, bulk = at.sheath_c.typical_c, at.bed_mean_c.typical_c
        print(f"{medium} {told} {sheath:.1f} {at.sheath_verdict_c:.1f} {bulk:.1f}")
