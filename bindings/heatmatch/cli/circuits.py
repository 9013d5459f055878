"""Which circuits a command is about: existing ones, or one of the ranking."""

from __future__ import annotations

import argparse
from typing import Any

from heatmatch import _library as _core
from heatmatch.cli.output import complain, say
from heatmatch.cli.shared import BUILD, KEPT, make_ranking
from heatmatch.errors import InvalidInput


def chosen_candidate(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
) -> _core.Candidate:
    """The existing circuit, or one of the ranking."""
    if from_ranking(arguments, installation):
        return ranked(arguments, catalog, installation, year)[1]
    return _of_name(arguments.circuit, existing_circuits(catalog, installation, year))


def from_ranking(arguments: argparse.Namespace, installation: _core.Installation) -> bool:
    """Whether a circuit of the ranking is meant: one is named, or none exists."""
    if arguments.rank is not None:
        return True
    return arguments.circuit is None and not stands(installation)


def ranked(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
) -> tuple[_core.Ranking, _core.Candidate]:
    """The ranking, and its circuit that was named: the recommended one by default."""
    place: int = arguments.rank or BUILD
    ranking = make_ranking(arguments, catalog, installation, year, top=max(place, KEPT))
    return ranking, row_of(ranking, place)


def row_of(ranking: _core.Ranking, place: int) -> _core.Candidate:
    """The N-th of a ranking, or the recommended one; of the rejected ones where nothing is left."""
    if place == BUILD and ranking.recommended is not None:
        return ranking.recommended
    if place == BUILD:
        shown: _core.Candidate | None = next(iter([*ranking, *ranking.rejected]), None)
        if shown is None:
            raise InvalidInput(f"--rank build: {_core.nothing_left(ranking)}")
        complain(str(_core.nearest_instead(ranking, shown)))
        return shown
    if len(ranking) == 0 and place <= len(ranking.rejected):
        complain(f"{_core.nothing_left(ranking)} The circuit shown is a rejected one.")
        return ranking.rejected[place - 1]
    if place > len(ranking):
        remedy = f"give 1 to {len(ranking)}" if len(ranking) else "heatmatch rank says why"
        raise InvalidInput(f"--rank {place}: the ranking has {len(ranking)} circuits; {remedy}")
    return ranking[place - 1]


def existing_circuits(
    catalog: _core.Catalog, installation: _core.Installation, year: _core.Weather | None
) -> list[_core.Candidate]:
    """All existing circuits, assessed together."""
    if not stands(installation):
        raise InvalidInput(
            "installation: circuit = (missing) must be given; describe the existing "
            "circuit, or use the recommended one with --rank build"
        )
    return _core.assess_circuits(catalog, installation, year)


def circuits_and_shown(
    arguments: argparse.Namespace,
    catalog: _core.Catalog,
    installation: _core.Installation,
    year: _core.Weather | None,
) -> tuple[list[_core.Candidate], list[int]]:
    """All circuits of the store, and the places of those to show: with --circuit one."""
    if from_ranking(arguments, installation):
        return [chosen_candidate(arguments, catalog, installation, year)], [0]
    circuits = existing_circuits(catalog, installation, year)
    if arguments.circuit is None:
        return circuits, list(range(len(circuits)))
    return circuits, [circuits.index(_of_name(arguments.circuit, circuits))]


def say_circuit(candidate: _core.Candidate, count: int) -> None:
    """Print the name of a circuit where several are shown."""
    if count > 1:
        say(f'\ncircuit "{candidate.circuit.name}":\n')


def of_circuits(shown: list[_core.Candidate], data: list[dict[str, Any]]) -> dict[str, Any]:
    """The data of one circuit, or of several under their names."""
    if len(data) == 1:
        return data[0]
    named = zip(shown, data, strict=True)
    return {"circuits": [{"circuit": each.circuit.name} | item for each, item in named]}


def _of_name(name: str | None, circuits: list[_core.Candidate]) -> _core.Candidate:
    """The circuit of that name, or the only one."""
    if name is None and len(circuits) == 1:
        return circuits[0]
    for each in circuits:
        if each.circuit.name == name:
            return each
    names = ", ".join(f'"{each.circuit.name}"' for each in circuits)
    given = "(missing)" if name is None else f'"{name}"'
    raise InvalidInput(f"--circuit = {given} must be one of {names}; name one of them")


def stands(installation: _core.Installation) -> bool:
    """Whether the installation describes an existing circuit."""
    plain = installation.to_dict()
    return plain.get("circuit") is not None or bool(plain.get("circuits"))
