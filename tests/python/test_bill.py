"""The bill of a circuit: what is owned, what is to buy, and the budget."""

from __future__ import annotations

import json
from typing import Any

import heatmatch as hm
import pytest
from heatmatch.cli import main


def plain_demo() -> dict[str, Any]:
    plain: dict[str, Any] = json.loads(hm.demo().to_json_text())
    return plain


def assessed(plain: dict[str, Any]) -> hm.Candidate:
    return hm.assess(hm.Catalog.starter(), hm.Installation.from_dict(plain))


def nothing_owned() -> dict[str, Any]:
    plain = plain_demo()
    for record in [*plain["runs"], *plain["devices"]]:
        for name in ("owned", "owned_m", "owned_connectors"):
            record.pop(name, None)
    return plain


def price(catalog: hm.Catalog, kind: str, part: str) -> float:
    """The middle of low and high."""
    record = getattr(catalog, kind)[part]
    return (record.price_low + record.price_high) / 2


def test_the_demo_owns_all_but_the_home_run() -> None:
    catalog = hm.Catalog.starter()
    bill = assessed(plain_demo()).bill
    wire = price(catalog, "wires", "pv-wire-12-awg")
    assert [line.part for line in bill.lines if line.to_buy > 0] == ["pv-wire-12-awg"]
    assert bill.typical == pytest.approx(2 * 9 * wire)
    assert (bill.complete, bill.within_budget, bill.budget) == (True, "yes", 150)
    assert "within the budget of 150 USD" in str(bill)


def test_with_nothing_owned_every_part_is_to_buy() -> None:
    # Source: a sum by hand of the catalog's prices; the elements of an existing circuit are there.
    catalog = hm.Catalog.starter()
    bill = assessed(nothing_owned()).bill
    controls = [
        "pv-isolator-2-pole",
        "dc-contactor-sealed-450-v",
        "snap-disc-fixed",
        "snap-disc-manual-reset",
    ]
    total = sum(price(catalog, "controls", part) for part in controls)
    total += 2 * 9 * price(catalog, "wires", "pv-wire-12-awg")
    total += 2 * 3 * price(catalog, "wires", "thhn-12-awg")
    total += 2 * 0.3 * price(catalog, "wires", "silicone-14-awg")
    total += 4 * price(catalog, "connectors", "pv-plug-4-mm")
    total += 4 * price(catalog, "connectors", "ring-terminal-nickel")
    assert bill.typical == pytest.approx(total)
    assert bill.within_budget == "no"
    assert "above the budget of 150 USD" in str(bill)


def test_a_required_device_that_is_not_listed_is_on_the_bill() -> None:
    plain = nothing_owned()
    all_listed = assessed(plain).bill
    del plain["devices"]
    bill = assessed(plain).bill
    needed = [line for line in bill.lines if line.kind == "control"]
    assert len(needed) == 3
    assert any(line.why.startswith("Disconnect") for line in needed)
    assert any(line.why.startswith("Overtemperature limit") for line in needed)
    assert all_listed.typical is not None
    assert bill.typical is not None
    for line in needed:
        assert line.to_buy == 1


def test_an_unknown_price_is_not_within_the_budget() -> None:
    plain = plain_demo()
    catalog = hm.Catalog.starter()
    part = catalog.wires["thhn-12-awg"].to_dict()
    for name in ("price_low", "price_high", "price_currency"):
        part.pop(name, None)
    plain["parts"] = {"wires": [part]}
    plain["runs"][1]["owned_m"] = 0
    plain["goals"]["budget"] = 1000000
    candidate = assessed(plain)
    assert candidate.price_to_buy is None
    assert candidate.bill.within_budget == "unknown"
    assert "Bill not known: no price for thhn-12-awg" in str(candidate.bill)
    ranking = hm.rank(catalog, hm.Installation.from_dict(plain), top=5)
    assert len(ranking) > 0
    assert any("bill" in remark and "not known" in remark for remark in ranking.remarks)
    part |= {"price_low": 1, "price_currency": "EUR"}
    plain["parts"] = {"wires": [part]}
    other = assessed(plain).bill
    assert other.within_budget == "unknown"
    assert "EUR" in str(other)


def test_no_part_is_shown() -> None:
    plain = plain_demo()
    plain["devices"][3]["set_c"] = 1199
    limit = hm.Catalog.starter().controls["limit-controller-thermocouple"].to_dict()
    plain["parts"] = {"controls": [limit | {"sense_high_c": 900}]}
    bill = assessed(plain).bill
    assert [line.state for line in bill.lines if line.part is None] == ["no part"]
    assert "no part" in str(bill)
    assert "no part" in bill._repr_html_()
    assert bill.typical is None


@pytest.mark.parametrize(
    ("change", "field"),
    [
        (lambda d: d["devices"][0].update(owned=-1), "owned"),
        (lambda d: d["devices"][0].update(owned=0.5), "owned"),
        (lambda d: d["runs"][1].update(owned_m=-2), "owned_m"),
        (lambda d: d["runs"][1].update(owned_connectors=1.5), "owned_connectors"),
    ],
)
def test_bad_input_is_one_sentence(change: Any, field: str) -> None:
    plain = plain_demo()
    change(plain)
    with pytest.raises(hm.InvalidInput) as caught:
        hm.Installation.from_dict(plain)
    said = str(caught.value)
    assert field in said
    assert "\n" not in said
    assert len(said) < 300


def test_frame_json_and_html_have_the_same_lines(capsys: Any, tmp_path: Any) -> None:
    bill = assessed(plain_demo()).bill
    frame = bill.to_frame()
    assert list(frame["part"]) == [line.part for line in bill.lines]
    assert bill._repr_html_().count("<tr>") == len(bill.lines) + 1
    path = tmp_path / "demo.json"
    path.write_text(json.dumps(plain_demo()))
    main(["assess", str(path), "--json"])
    data = json.loads(capsys.readouterr().out)["bill"]
    assert [line["part"] for line in data["lines"]] == list(frame["part"])
    assert data["typical"] == bill.typical
    assert data["within_budget"] == "yes"
    assert any("earth-fault protection" in remark for remark in data["remarks"])


def test_owned_wire_counts_for_a_named_wire_only() -> None:
    plain = plain_demo()
    before = assessed(plain).bill
    plain["runs"][0]["owned_m"] = 18
    bill = assessed(plain).bill
    assert bill.typical == before.typical
    assert any("home run" in remark and "Name the wire" in remark for remark in bill.remarks)


def test_of_a_replaced_part_nothing_is_owned() -> None:
    changed = hm.demo().replace({"devices.snap-disc-fixed.part": "capillary-thermostat-90"})
    assert [device.owned for device in changed.devices] == [1, 1, 0, 1]
    stated = hm.demo().replace({"runs.hot tail.wire": "fep-14-awg", "runs.hot tail.owned_m": 0.4})
    assert (stated.runs[2].owned_m, stated.runs[2].owned_connectors) == (0.4, 4)
    assert hm.demo().replace({"runs.hot tail.wire": "fep-14-awg"}).runs[2].owned_m == 0
