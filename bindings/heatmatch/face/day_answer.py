"""Result of a simulation of days, and the highest temperature of every part."""

from __future__ import annotations

from typing import TYPE_CHECKING

from heatmatch._faces import Face, Held
from heatmatch.face.margin import Margin

if TYPE_CHECKING:
    from heatmatch._core import DarkHours


class PartPeak(Face):
    """Highest temperature that a part reached, against its limit.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> year = hm.Weather.from_installation(hm.demo())
    >>> peak = hm.simulate_day(circuit, year, month=1, days=1).answer.peaks[0]
    >>> 0 < peak.hours <= 24
    True
    """

    __slots__ = ()
    _made_by = "DayAnswer.peaks"

    margin: Held[Margin] = Held("Check of that part; its value is the highest temperature.")
    hours: Held[float] = Held("Time since the beginning at which it was reached [h].")


class DayAnswer(Face):
    """Result of a simulation of days.

    Examples
    --------
    >>> import heatmatch as hm
    >>> circuit = hm.assess(hm.Catalog.starter(), hm.demo())
    >>> year = hm.Weather.from_installation(hm.demo())
    >>> run = hm.simulate_day(circuit, year, month=1, days=1)
    >>> run.answer.all.delivered_kwh_day > 0
    True
    """

    __slots__ = ()
    _made_by = "DayRun.answer"

    all: Held[DarkHours] = Held("Dark hours and heat of all days.")
    months: Held[list[DarkHours]] = Held("Dark hours and heat by month, in the order of time.")
    dusk_lift_k: Held[float] = Held("Warming of the space at dusk, mean of the nights [K].")
    dawn_lift_k: Held[float] = Held("Warming of the space at dawn, mean of the nights [K].")
    carry_over_h: Held[float | None] = Held(
        "Time after dusk until heat falls to half of the night's highest, mean [h]; None if never."
    )
    most_lift_k: Held[float] = Held("Highest warming of the space in the mean night [K].")
    most_lift_hour: Held[float] = Held("Hour of the day of the highest warming [h].")
    warmer_from_hour: Held[float | None] = Held(
        "Hour from which the store warms the space 0.5 K [h]; None if from dusk on, or never."
    )
    warmer_until_hour: Held[float | None] = Held(
        "Hour until which the store warms the space 0.5 K in the mean night [h]; None if never."
    )
    lid_until_hour: Held[float | None] = Held(
        "Hour until which the lid is 4 K above the space, mean of the nights [h]; None if never."
    )
    peaks: Held[list[PartPeak]] = Held("Highest temperature of every part.")
    sentences: Held[list[str]] = Held("Result in words, the most important first.")
