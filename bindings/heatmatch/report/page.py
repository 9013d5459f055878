"""A report of a ranking, a plan or circuits: one HTML file that needs nothing else."""

from __future__ import annotations

import os
from collections.abc import Sequence
from datetime import date
from importlib import resources
from pathlib import Path
from typing import Any

from heatmatch import _library as _core
from heatmatch import weather as weather_files
from heatmatch.errors import InvalidInput
from heatmatch.io.files import write_text
from heatmatch.text import look
from heatmatch.text.columns import clip
from heatmatch.text.plain import plain
from heatmatch.text.results import notes_of
from heatmatch.text.units import checked_units

Reported = _core.Ranking | _core.Plan | _core.Candidate | Sequence[_core.Candidate]
_TEMPLATE = "page.html.j2"
_GENERATOR = 'name="generator" content="heatmatch"'


def _environment() -> Any:
    """The template engine, which escapes every text."""
    try:
        import jinja2
        import matplotlib  # noqa: F401
    except ImportError as error:
        raise ImportError(
            "report needs Jinja2 and matplotlib; install them with "
            "pip install 'libheatmatch[report]'"
        ) from error
    return jinja2.Environment(
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=lambda text: plain(text) if type(text) is str else text,
    )


def _circuits(what: Reported) -> list[_core.Candidate]:
    """The circuits to report in full."""
    if isinstance(what, _core.Candidate):
        return [what]
    if isinstance(what, _core.Plan):
        if not what.circuits:
            raise InvalidInput(f"plan: circuits = none must be at least one; {what.summary()[0]}")
        return list(what.circuits)
    if isinstance(what, _core.Ranking):
        everyone = [*what, *what.rejected]
        if not everyone:
            raise InvalidInput(
                "ranking: candidates = none must be at least one; rank with top and keep_rejected"
            )
        return [what.recommended or everyone[0]]
    several = list(what) if isinstance(what, Sequence) and not isinstance(what, str) else []
    if not several or not all(isinstance(one, _core.Candidate) for one in several):
        raise InvalidInput(
            f"what = {type(what).__name__} must be a Ranking, a Plan, a Candidate or several; "
            "hm.rank, hm.plan, hm.assess and hm.assess_circuits give them"
        )
    return several


def _drawn(circuits: list[_core.Candidate], plan: _core.Plan | None) -> list[_core.Candidate]:
    """The circuits of the drawing: all of the plan to which a single one belongs."""
    names = [] if plan is None else [one.circuit.name for one in plan.circuits]
    name = circuits[0].circuit.name
    if plan is not None and len(circuits) == 1 and name and name in names:
        return list(plan.circuits)
    return circuits


def _own_weather(
    installation: _core.Installation | None, weather: _core.Weather | None
) -> _core.Weather | None:
    if weather is not None or installation is None:
        return weather
    plain = installation.to_dict()
    placed = all(plain["site"].get(name) is not None for name in ("latitude_deg", "tilt_deg"))
    if plain.get("weather") is None or not placed:
        return None  # as in the ranking, whose remarks name missing values of the months
    return weather_files.from_installation(installation)


def report(
    what: _core.Ranking | _core.Plan | _core.Candidate | Sequence[_core.Candidate],
    path: str | os.PathLike[str],
    *,
    installation: _core.Installation | None = None,
    weather: _core.Weather | None = None,
    plan: _core.Plan | None = None,
    ranking: _core.Ranking | None = None,
    units: str = "si",
    force: bool = False,
) -> Path:
    """Write a report of a ranking, a plan or circuits as one HTML file.

    Four pages: answer and bill, drawing and wiring, limits and code requirements, season and meter
    sheet. An appendix has every check, plot, formula and source. It needs no network and contains
    no script.

    Parameters
    ----------
    what : Ranking, Plan, Candidate or sequence of Candidate
        Of a ranking, the page shows the best, the trade-offs, and the first candidate in full; of a
        plan or several candidates, all circuits in one drawing and each in full.
    path : str or os.PathLike
        HTML file to write. It is written whole or not at all.
    installation : Installation, optional
        Supplies the title and, unless `weather` is given, monthly means for the simulated days.
    weather : Weather, optional
        Weather of the simulated days and of the season plots.
    plan : Plan, optional
        A plan that was made: one more line beside the answer of a ranking. With one of its circuits
        as `what`, the drawing has all of them.
    ranking : Ranking, optional
        The ranking of which a single candidate is a row: the page says where that row is not the
        recommended circuit, and why.
    units : {"si", "us"}
        Unit set shown first; the page holds both.
    force : bool
        Also replace a file that is not an earlier report. A catalog is never replaced.

    Returns
    -------
    pathlib.Path
        The file written.

    Raises
    ------
    InvalidInput
        `what` is none of these, or is empty; or `units` is unknown.
    FileError
        The file cannot be written, or `path` holds something other than a report.
    ImportError
        Jinja2 or matplotlib is not installed; the message says how to install it.

    Examples
    --------
    >>> import heatmatch as hm, os, tempfile
    >>> catalog = hm.Catalog.starter()
    >>> place = hm.Installation(
    ...     site=hm.Site(record_low_c=-20),
    ...     panels=[{"group": "pair", "panel": "silicon-60-cell-245", "count": 2}],
    ...     elements=[{"element": "tubular-1000-120", "count": 1}],
    ... )
    >>> ranking = hm.rank(catalog, place)
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     hm.report(ranking, os.path.join(folder, "pair.html")).name
    'pair.html'
    """
    checked_units(units)
    circuits = _circuits(what)
    row_of = ranking
    ranking = what if isinstance(what, _core.Ranking) else None
    planned = what if isinstance(what, _core.Plan) else None
    environment = _environment()
    from heatmatch.report import pictures, tables

    heats = [one.circuit.heat for one in circuits]
    in_liquid = any(heat is not None and heat.liquid for heat in heats)
    if installation is None and planned is not None:
        installation = planned.installation

    own = _own_weather(installation, weather)
    runs = [tables.lived_days(one, own) if len(circuits) == 1 else None for one in circuits]
    shown = [
        tables.sections(one, run, ranking, row_of)
        | {"pictures": pictures.pictures(one, ranking, own, run), "titled": len(circuits) > 1}
        for one, run in zip(circuits, runs, strict=True)
    ]
    name = "" if installation is None else installation.name
    titles = list(dict.fromkeys(one.circuit.title for one in circuits))
    template = resources.files("heatmatch.report").joinpath(_TEMPLATE).read_text(encoding="utf-8")
    text = environment.from_string(template).render(
        title=clip(name or titles[0], 160),
        circuit=clip("; ".join(titles), 200),
        circuits=shown,
        drawing=pictures.drawing(_drawn(circuits, plan)),
        today=date.today().isoformat(),
        units=units,
        version=_core.library_version(),
        cautions=_core.cautions(in_liquid=in_liquid),
        light=look.variables(look.LIGHT),
        dark=look.variables(look.DARK),
        font=look.FONT,
        **tables.common(circuits, ranking, planned or plan, runs, planned=planned is not None),
        unused=tables.unused(ranking or row_of, installation),
        notes=[] if installation is None else notes_of(installation),
    )
    return write_text(path, text, force=force, only_kind=_GENERATOR)
