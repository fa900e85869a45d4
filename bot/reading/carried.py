"""Units that are said once for several figures: `ridge 12, brook 8 gal`; `8 x 500 mL and 6 x 250`.

The figures that go without one take it over, where each stands behind a name, a day or an "x" of
its own, so that nothing else can be meant.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.reading.items import Item

_NAMES = ("lot", "tree", "date")
_TIMES = ("x", "*", "of")
LEAST_AMOUNT = 8.0
"""A decimal up to this may be sugar, in Brix (our own), and takes no unit over."""


def with_cents(found: Sequence[Item]) -> list[Item]:
    """The items, with `eight dollars and seventy-five cents` and `50 cents` as money."""
    if _CENTS.isdisjoint([item.text for item in found]):
        return list(found)
    out: list[Item] = []
    for item in found:
        if item.text not in _CENTS or not out or out[-1].sort != "number" or out[-1].part:
            out.append(item)
            continue
        cents = out.pop()
        whole = out[-1] if out else None
        if whole is not None and whole.text in ("and", "&") and len(out) > 1:
            whole = out[-2]
        if whole is not None and whole.sort == "money" and cents.value < 100:
            while out[-1] is not whole:
                out.pop()
            out[-1] = replace(whole, value=whole.value + cents.value / 100, end=item.end)
        else:
            out.append(replace(cents, sort="money", value=cents.value / 100, unit="dollar"))
    return out


_CENTS = frozenset(("cents", "cent"))


def with_units(found: Sequence[Item]) -> list[Item]:
    """The items, with each figure of a list in the unit that is said for all of them."""
    sorts = {item.sort for item in found}
    out = list(found)
    if {"number", "length", "tree"} <= sorts:
        out = _across(out)
    if {"number", "volume"} <= sorts:
        out = _alike(_sizes(_list_of_names(out)))
    return out


def _across(found: list[Item]) -> list[Item]:
    """`tree 5 is 64 inches around and tree 6 is 49 around`."""
    unit: str | None = None
    for at, item in enumerate(found):
        if item.sort == "length":
            unit = item.unit
        behind = found[at + 1].text if at + 1 < len(found) else ""
        if unit is not None and item.sort == "number" and behind in _ACROSS and _is_plain(item):
            found[at] = replace(item, sort="length", unit=unit)
    return found


_ACROSS = frozenset(("around", "across", "round"))


def _alike(found: list[Item]) -> list[Item]:
    """`11 gal from the hill and 8 from the creek`, `eleven gal monday, nine tuesday and fourteen
    today`: what stands between the same words is in the same unit."""
    model: tuple[Item, str, str] | None = None
    for at, item in enumerate(found):
        if item.sort == "volume" and not item.article and not item.parts:
            model = (item, _side(found, at - 1), _side(found, at + 1))
        if model is None or item.sort != "number" or item.used or not _is_plain(item):
            continue
        unit, before, behind = model
        ahead = found[at - 1].text if at else ""
        parallel = behind in _SIDES and _side(found, at + 1) == behind and ahead in _JOINED
        parallel = parallel or (before == "date" == _side(found, at - 1) and at + 1 < len(found))
        if parallel and unit.unit in _OF_SAP:
            word = unit.text.split()[-1]
            found[at] = replace(item, sort="volume", unit=unit.unit, text=f"{item.value:g} {word}")
    return found


def _side(found: Sequence[Item], at: int) -> str:
    """What stands there: a day, its sugar, or a word that leads to a place."""
    if not 0 <= at < len(found):
        return ""
    if found[at].text in ("at", "@"):
        tested = at + 1 < len(found) and "." in found[at + 1].text
        return "its sugar" if tested else ""
    return "date" if found[at].sort == "date" else found[at].text


_SIDES = frozenset(("date", "from", "off", "out of", "its sugar"))
_JOINED = frozenset((",", "and", "&", "then", "+", "plus", "gave", "had", "made"))
_OF_SAP = frozenset(("gallon", "liter", "quart"))


def _list_of_names(found: list[Item]) -> list[Item]:
    """`ridge 12, brook 8 gal`, `mon 10 tue 11 wed 12 gal`."""
    figures = [at for at, item in enumerate(found) if item.sort in ("number", "volume")]
    volumes = [at for at in figures if found[at].sort == "volume"]
    bare = [at for at in figures if found[at].sort == "number"]
    if len(volumes) != 1 or volumes[0] != figures[-1] or not bare:
        return found
    if not all(_is_named(found, at) and _is_plain(found[at]) for at in figures):
        return found
    unit = found[volumes[0]]
    for at in bare:
        item = found[at]
        word = unit.text.split()[-1]
        found[at] = replace(item, sort="volume", unit=unit.unit, text=f"{item.value:g} {word}")
    return found


def _is_named(found: Sequence[Item], at: int) -> bool:
    return at > 0 and found[at - 1].sort in _NAMES


def _is_plain(item: Item) -> bool:
    if item.article or item.part or item.vague or item.negative or item.low is not None:
        return False
    return item.sort == "volume" or "." not in item.text or item.value > LEAST_AMOUNT


def _sizes(found: list[Item]) -> list[Item]:
    """`8 x 500 ml and 6 x 250`: jars of another size in the same unit."""
    unit: Item | None = None
    for at in range(2, len(found)):
        count, times, size = found[at - 2], found[at - 1], found[at]
        if count.sort != "number" or times.text not in _TIMES:
            continue
        if size.sort == "volume":
            unit = size
        elif unit is not None and size.sort == "number" and times.text != "of" and not size.used:
            word = unit.text.split()[-1]
            found[at] = replace(size, sort="volume", unit=unit.unit, text=f"{size.value:g} {word}")
    return found
