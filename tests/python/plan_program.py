"""Which circuits of a yard to build, as a 0/1 program of HiGHS."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

import highspy
import numpy as np

if TYPE_CHECKING:
    from plan_referee import Referee

CIRCUITS = 3  # where the goals say no number


def typical(record: Any) -> float:
    """The middle of its prices."""
    return (record.price_low + record.price_high) / 2


class Program:
    """Which circuits, as a 0/1 program of HiGHS."""

    def __init__(self, referee: Referee, headroom: float, *, careful: bool) -> None:
        self.referee = referee
        goals, yard = referee.goals, referee.yard
        most = goals.get("circuits_max", CIRCUITS)
        counts = [group["count"] for group in yard["panels"]]
        self.columns: list[int] = []  # the single of each; twice where it fits twice
        for i, single in enumerate(referee.singles):
            alone = single.alone
            if alone.headroom < headroom or (careful and not alone.careful):
                continue
            if alone.cold_v > goals.get("volts_max", float("inf")):
                continue
            if not referee.passes((i,), headroom, careful):
                continue
            fits = min(n // used for n, used in zip(counts, single.panels, strict=True) if used)
            for element, count in single.elements.items():
                if element not in referee.for_sale:
                    fits = min(fits, referee.owned[element] // count)
            self.columns += [i] * min(fits, most)
        singles = [referee.singles[i] for i in self.columns]
        self.highs = highspy.Highs()
        for option, value in (
            ("output_flag", False),
            ("threads", 1),
            ("mip_heuristic_effort", 0.0),
            ("mip_rel_gap", 0.0),
            ("mip_abs_gap", 0.0),
            ("mip_feasibility_tolerance", 1e-9),
            ("primal_feasibility_tolerance", 1e-9),
            ("dual_feasibility_tolerance", 1e-9),
        ):
            self.highs.setOptionValue(option, value)
        self.highs.changeObjectiveSense(highspy.ObjSense.kMaximize)
        for single in singles:
            self.add_column(single.kwh, 1.0, whole=True)
        numbers = list(range(len(singles)))
        self.add_row(numbers, [1.0] * len(singles), most)
        for g, count in enumerate(counts):
            self.add_row(numbers, [single.panels[g] for single in singles], count)
        for i in range(1, len(singles)):  # of two equal columns the first one is chosen first
            if self.columns[i] == self.columns[i - 1]:
                self.add_row([i, i - 1], [1.0, -1.0], 0.0)
        prices: dict[int, float] = {}
        for name in referee.most:
            used = [single.elements[name] for single in singles]
            extra = 0.0 if name not in referee.for_sale else float("inf")
            price = typical(referee.catalog.elements[name])
            prices[self.buy(used, referee.owned[name], extra)] = price
        for part, owned in referee.owned_of_runs.items():
            used = [single.runs[part] for single in singles]
            prices[self.buy(used, owned, float("inf"))] = referee.price_of[part]
        if "budget" in goals:  # of all but devices, which are counted once a choice is made
            self.add_row(list(prices), list(prices.values()), goals["budget"] * (1 + 1e-9))

    def add_column(self, heat: float, most: float, *, whole: bool) -> int:
        self.highs.addCol(heat, 0.0, most, 0, np.array([], dtype=np.int32), np.array([]))
        column = self.highs.getNumCol() - 1
        if whole:
            self.highs.changeColIntegrality(column, highspy.HighsVarType.kInteger)
        return column

    def add_row(self, columns: list[int], values: Any, most: float) -> None:
        pairs = [(c, float(v)) for c, v in zip(columns, values, strict=True) if v]
        self.highs.addRow(
            -float("inf"),
            float(most),
            len(pairs),
            np.array([c for c, _ in pairs], dtype=np.int32),
            np.array([v for _, v in pairs]),
        )

    def buy(self, used: list[Any], owned: float, most: float) -> int:
        """What is used beyond what is owned."""
        bought = self.add_column(0.0, most, whole=False)
        self.add_row([*range(len(used)), bought], [*used, -1.0], owned)
        return bought

    def solve(self) -> tuple[int, ...] | None:
        if not self.columns:
            return None
        self.highs.run()
        status = self.highs.getModelStatus()
        if status == highspy.HighsModelStatus.kInfeasible:
            return None
        assert status == highspy.HighsModelStatus.kOptimal, status
        values = self.highs.getSolution().col_value[: len(self.columns)]
        chosen = tuple(i for i, value in zip(self.columns, values, strict=True) if value > 0.5)
        return chosen or None

    def never(self, chosen: tuple[int, ...]) -> None:
        """Nor with more circuits: what fails stays, and a bill grows."""
        wanted, used = Counter(chosen), Counter[int]()
        columns: list[int] = []
        for column, i in enumerate(self.columns):  # of equal ones the first are chosen first
            used[i] += 1
            if used[i] == wanted[i]:
                columns.append(column)
        if len(columns) == len(wanted):
            self.add_row(columns, [1.0] * len(columns), len(columns) - 1)

    def cut_off(self, chosen: tuple[int, ...]) -> None:
        """Never exactly these again, in whichever of equal columns."""
        left = Counter(chosen)
        signs = []
        for i in self.columns:
            signs.append(1.0 if left[i] > 0 else -1.0)
            left[i] -= 1
        self.add_row(list(range(len(signs))), signs, len(chosen) - 1)
