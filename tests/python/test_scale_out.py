"""What-ifs ranked in other processes, plain or under Dask, come back as ranked in this one."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from pathlib import Path
from typing import Any

import heatmatch as hm
import numpy as np
import pytest

WhatIf = tuple[hm.Catalog, hm.Installation, hm.Weather]


def ranked(what_if: WhatIf) -> tuple[hm.Ranking, hm.EnergyCurve, str]:
    """A ranking, a curve of the same weather, and the catalog it was made from."""
    catalog, installation, weather = what_if
    ranking = hm.rank(catalog, installation, weather, top=5, keep_rejected=3, threads=1)
    curve = hm.EnergyCurve(ranking[0].circuit.diode_today, weather)
    return ranking, curve, catalog.path


def plain(result: tuple[hm.Ranking, hm.EnergyCurve, str]) -> list[Any]:
    """What two results must share to be the same."""
    ranking, curve, path = result
    rows = [
        (c.circuit.title, c.objective, c.season.kwh_low, c.season.kwh, c.season.kwh_high,
         [(m.name, m.subject, m.severity, m.value, m.headroom) for m in c.margins])
        for c in (*ranking.candidates, *ranking.rejected)
    ]  # fmt: skip
    counts = ranking.evaluated, ranking.reasons, ranking.remarks, ranking.by_season
    energies = curve.delivered_kwh([2.0, 4.0, 8.0]).tolist(), curve.mpp_kwh
    return [rows, counts, energies, path]


@pytest.fixture(scope="module")
def what_ifs(
    tmp_path_factory: pytest.TempPathFactory, starter: hm.Catalog, demo: hm.Installation
) -> list[WhatIf]:
    """Two sites, each with two tilts, from the starter and from a catalog with an element more."""
    own = hm.Catalog.open(tmp_path_factory.mktemp("catalogs") / "own.heatmatch")
    rod = own.elements["storage-rod-1000-240"]
    own.add(rod.replace(id="rod-1400", label="Rod of 1400 W", rated_w=1400.0, resistance_ohm=None))
    made: list[WhatIf] = []
    for latitude, sun in ((44.1, 1.0), (52.0, 0.8)):
        for tilt in (40.0, 70.0):
            data = demo.to_dict()
            data["site"] |= {"latitude_deg": latitude, "tilt_deg": tilt}
            normals = data["weather"]
            normals["sun_hours"] = [sun * hours for hours in normals["sun_hours"]]
            installation = hm.Installation.from_dict(data)
            weather = hm.Weather.from_months(installation.site, *normals.values())
            made += [(catalog, installation, weather) for catalog in (starter, own)]
    return made


@pytest.fixture(scope="module")
def here(what_ifs: list[WhatIf]) -> list[list[Any]]:
    return [plain(ranked(what_if)) for what_if in what_ifs]


def test_the_what_ifs_differ(what_ifs: list[WhatIf], here: list[list[Any]]) -> None:
    best = {result[0][0][1] for result in here}
    assert len(best) >= len(what_ifs) // 2
    assert {Path(result[3]).name for result in here} == {"", "own.heatmatch"}


def test_a_pool_of_processes_gives_the_same(what_ifs: list[WhatIf], here: list[list[Any]]) -> None:
    with ProcessPoolExecutor(2, mp_context=get_context("spawn")) as pool:
        assert [plain(result) for result in pool.map(ranked, what_ifs)] == here


@pytest.fixture(scope="module")
def client() -> Iterator[Any]:
    """Two workers in separate processes, which find the same heatmatch."""
    distributed = pytest.importorskip("distributed")
    folders = [str(Path(hm.__file__).parents[1]), str(Path(__file__).parent)]
    with (
        distributed.LocalCluster(
            n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None
        ) as cluster,
        distributed.Client(cluster) as client,
    ):
        client.run(lambda: __import__("sys").path.extend(folders))
        yield client


@pytest.mark.long
@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_dask_gives_the_same(client: Any, what_ifs: list[WhatIf], here: list[list[Any]]) -> None:
    results = client.gather(client.map(ranked, what_ifs))
    assert [plain(result) for result in results] == here


@pytest.mark.long
@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_weather_is_scattered_once_and_used_by_many(client: Any, what_ifs: list[WhatIf]) -> None:
    weather = what_ifs[0][2]
    ranking, curve, _ = ranked(what_ifs[0])
    far = client.scatter(weather, broadcast=True)
    calls = [
        client.submit(hm.EnergyCurve, candidate.circuit.diode_today, far) for candidate in ranking
    ]
    curves = client.gather(calls)
    assert curves[0].delivered_kwh(5.0) == curve.delivered_kwh(5.0)
    assert client.submit(lambda sky: sky, far).result() == weather
    assert np.isfinite([each.mpp_kwh for each in curves]).all()
