"""What was understood, said back: one function a kind, in the table at the end.

Each gives the words without a capital or a full stop, and without the day; `lines` puts those
in. A kind that is not in the table is said by its name and its amounts.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from datetime import date, datetime
from fractions import Fraction
from typing import Any

from bot.entry import Entry
from bot.units import factor, litres
from bot.wording import amounts, wishes
from bot.wording.compose import sentence
from bot.wording.days import day
from bot.wording.gsm import plain
from bot.wording.style import Style

Receipt = Callable[[Entry, Style], str]

# More parts than this are summed without naming each.
_MOST_NAMED = 4

SIGNS = {
    "buds": "buds",
    "cloudy_sap": "cloudy sap",
    "yellow_sap": "yellow sap",
    "off_smell": "off smell",
    "moths": "moths",
}
SPECIES_MOST = 20


def lines(entries: Sequence[Entry], style: Style) -> list[str]:
    """One sentence a thing, in order; sap told in parts makes one sentence with its sum."""
    said: list[tuple[str, date | None]] = []
    done: set[int] = set()
    for index, entry in enumerate(entries):
        if index in done:
            continue
        together = [
            at
            for at, other in enumerate(entries)
            if at >= index and other.kind == entry.kind == "sap" and other.on == entry.on
        ]
        if len(together) > 1:
            done.update(together)
            said.append((_sap_in_parts([entries[at] for at in together], style), entry.on))
        else:
            said.append((short(entry, style), None if entry.kind in _TIMELESS else entry.on))
    return _dated(said, style)


def line(entry: Entry, style: Style) -> str:
    """One thing with its day: "12 gal at 2.2, Tue"."""
    words = short(entry, style)
    if entry.kind in _TIMELESS:
        return words
    return f"{words}, {day(entry.on, style.today)}"


def short(entry: Entry, style: Style) -> str:
    """One thing without its day: "12 gal at 2.2"."""
    return RECEIPTS.get(entry.kind, _by_name)(entry, style)


def _dated(said: list[tuple[str, date | None]], style: Style) -> list[str]:
    out = []
    last: date | None = None
    for words, on in said:
        if on is not None and on != last:
            words = f"{words}, {day(on, style.today)}"
            last = on
        out.append(sentence(words))
    return out


def tree_name(label: str) -> str:
    """A tree as it is called: "tree 7", "tree A2", "Bertha"."""
    if label[:1].isdigit() or len(label) == 1:
        return f"tree {label}"
    return f"tree {label.upper()}" if _LETTER_AND_FIGURES.fullmatch(label) else label


_LETTER_AND_FIGURES = re.compile("[A-Za-z][0-9]{1,3}")


def where(entry: Entry) -> str:
    """The tree or the lot: "tree 4", "east", or nothing."""
    if entry.tree is not None:
        name = plain(entry.tree)
        return tree_name(name)
    return "" if entry.lot is None else plain(entry.lot)


def _sap(entry: Entry, style: Style) -> str:
    if entry.gallons == 0:
        place = where(entry)
        return f"no sap from {place}" if place else "no sap"
    said = amounts.volume(entry.gallons or 0.0, style)
    if entry.brix is not None:
        said += f" at {amounts.brix(entry.brix)}"
    return f"{where(entry)}: {said}" if where(entry) else said


def _sap_in_parts(entries: Sequence[Entry], style: Style) -> str:
    total = amounts.volume(sum(entry.gallons or 0.0 for entry in entries), style)
    if len(entries) > _MOST_NAMED:
        trees = sum(entry.tree is not None for entry in entries)
        what = "trees" if trees == len(entries) else "amounts"
        return f"{total} in all ({len(entries)} {what})"
    return f"{total} in all ({', '.join(_sap(entry, style) for entry in entries)})"


def _sugar(entry: Entry, style: Style) -> str:
    return f"{where(entry) or 'sap'} at {amounts.brix(entry.brix or 0.0)} Brix"


def _poured_out(entry: Entry, style: Style) -> str:
    if entry.gallons is None:
        return "sap poured out"
    return f"{amounts.volume(entry.gallons, style)} poured out"


def _boil(entry: Entry, style: Style) -> str:
    if entry.detail.get("state") == "start":
        lit = f"fire lit {amounts.clock(entry.at_local.time())}"
        if entry.gallons is None:
            return lit
        return f"{lit}, {amounts.volume(entry.gallons, style)} on the boil"
    took = None if entry.hours is None else amounts.hours(entry.hours)
    if entry.gallons is not None:
        volume = amounts.volume(entry.gallons, style)
        if entry.detail.get("manner") == "in":
            return f"{volume} on the boil"
        said = f"boiled {volume}"
        return said if took is None else f"{said} in {took}"
    return "boil over" if took is None else f"boiled {took}"


def _syrup(entry: Entry, style: Style) -> str:
    said = f"{amounts.syrup(entry.gallons or 0.0, style)} of syrup"
    return said if entry.brix is None else f"{said} at {amounts.brix(entry.brix)} Brix"


def _jars(entry: Entry, style: Style) -> str:
    named = [
        amounts.plural(jar["count"], amounts.jar_size(jar["gallons_each"], style))
        if not style.is_metric
        else f"{jar['count']} x {amounts.jar_size(jar['gallons_each'], style)}"
        for jar in entry.detail.get("jars", ())
    ]
    in_all = amounts.in_pints(entry.gallons or 0.0, style)
    said = f"{', '.join(named)} bottled"
    return said if named == [in_all] else f"{said} ({in_all})"


def _taps_set(entry: Entry, style: Style) -> str:
    place = f" ({plain(entry.lot)})" if entry.lot is not None else ""
    more = " more" if entry.detail.get("manner") == "add" and entry.detail.get("more") else ""
    return f"{entry.count}{more} {'tap' if entry.count == 1 else 'taps'} in{place}"


def _taps_pulled(entry: Entry, style: Style) -> str:
    place = f" ({plain(entry.lot)})" if entry.lot is not None else ""
    if entry.count is None:
        return f"all taps out{place}"
    return f"{amounts.plural(entry.count, 'tap')} out{place}"


def _tree(entry: Entry, style: Style) -> str:
    told = []
    if entry.detail.get("species") is not None:
        told.append(plain(str(entry.detail["species"]), SPECIES_MOST))
    if entry.detail.get("diameter_in") is not None:
        inches = float(entry.detail["diameter_in"])
        size = (
            f"{amounts.number(inches * factor('inch', 'cm'))} cm"
            if style.is_metric
            else f"{amounts.number(inches)} in"
        )
        told.append(f"{size} across")
    if entry.detail.get("taps") is not None:
        told.append(amounts.plural(int(entry.detail["taps"]), "tap"))
    return f"{where(entry)}: {', '.join(told)}" if told else f"{where(entry)} noted"


def _store_temp(entry: Entry, style: Style) -> str:
    return f"stored sap at {amounts.temperature(entry.fahrenheit or 0.0, style)}"


def _water_boils(entry: Entry, style: Style) -> str:
    return f"water boils at {amounts.temperature(entry.fahrenheit or 0.0, style)}"


def _pan_temp(entry: Entry, style: Style) -> str:
    return f"pan at {amounts.temperature(entry.fahrenheit or 0.0, style)}"


def _cost(entry: Entry, style: Style) -> str:
    item = entry.detail.get("item")
    said = amounts.dollars(entry.dollars or 0.0)
    return said if item is None else f"{said} for {plain(str(item))}"


def _fuel(entry: Entry, style: Style) -> str:
    if entry.cords is not None:
        return f"{amounts.cords(entry.cords)} burned"
    return f"{amounts.propane(entry.propane_lb or 0.0, style)} burned"


def _sign(entry: Entry, style: Style) -> str:
    sign = str(entry.detail.get("sign"))
    return f"{SIGNS.get(sign, sign.replace('_', ' '))} noted"


def _place(entry: Entry, style: Style) -> str:
    return place_name(entry.detail)


def _bucket_size(entry: Entry, style: Style) -> str:
    return f"buckets hold {amounts.volume(entry.gallons or 0.0, style)}"


def _helper(entry: Entry, style: Style) -> str:
    return f"{plain(str(entry.detail.get('address', '')))} invited"


def _pan(entry: Entry, style: Style) -> str:
    said = entry.detail.get("said") or amounts.surface(float(entry.detail["value"]), style)
    return f"pan {plain(str(said))}"


def _elevation(entry: Entry, style: Style) -> str:
    return f"trees at {amounts.height(float(entry.detail['value']), style)}"


def _bit(entry: Entry, style: Style) -> str:
    inches = float(entry.detail["value"])
    if style.is_metric:
        return f"{amounts.number(inches * factor('inch', 'mm'))} mm bit"
    return f"{Fraction(inches).limit_denominator(64)} in bit"


def _stem(entry: Entry, style: Style) -> str:
    return f"sap hydrometer made for {amounts.temperature(float(entry.detail['value']), style)}"


def _fire(entry: Entry, style: Style) -> str:
    return f"you boil on {plain(str(entry.detail['value']))}"


def _barometer(entry: Entry, style: Style) -> str:
    inches = float(entry.detail["value"])
    if style.is_metric:
        return f"barometer {amounts.number(inches * factor('inHg', 'hectopascal'), 0)} hPa"
    return f"barometer {amounts.number(inches, 2)} in"


def _price(entry: Entry, style: Style) -> str:
    gallon = float(entry.detail["value"])
    if style.is_metric:
        return f"price {amounts.dollars(gallon / litres(1.0))} a L"
    return f"price {amounts.dollars(gallon)} a gal"


def _wish(entry: Entry, style: Style) -> str:
    return wishes.short(entry.detail)


def _by_name(entry: Entry, style: Style) -> str:
    told = [entry.kind.replace("_", " ")]
    if entry.gallons is not None:
        told.append(amounts.volume(entry.gallons, style))
    if entry.count is not None:
        told.append(str(entry.count))
    if entry.dollars is not None:
        told.append(amounts.dollars(entry.dollars))
    return " ".join(told)


def place_name(told: Mapping[str, Any]) -> str:
    """ "Orwell VT", or the province alone where no more is known of it."""
    name = plain(str(told.get("name", "")))
    is_partial = told.get("latitude") is None
    return name if is_partial or not told.get("region") else f"{name} {told['region']}"


def started(began_at: datetime, style: Style) -> str:
    """When a boil was begun: "2 pm", with the day if it was not today."""
    said = amounts.clock(began_at.time())
    if began_at.date() == style.today:
        return said
    return f"{said} {day(began_at.date(), style.today)}"


def _season_over(_entry: Entry, _style: Style) -> str:
    return "season over, alerts rest"


_TIMELESS = frozenset(
    (
        "place",
        "bucket_size",
        "tree",
        "helper",
        "wish",
        "pan",
        "elevation",
        "bit",
        "stem",
        "fire",
        "price",
    )
)

RECEIPTS: dict[str, Receipt] = {
    "sap": _sap,
    "sugar": _sugar,
    "poured_out": _poured_out,
    "boil": _boil,
    "syrup": _syrup,
    "jars": _jars,
    "taps_set": _taps_set,
    "taps_pulled": _taps_pulled,
    "tree": _tree,
    "store_temp": _store_temp,
    "water_boils": _water_boils,
    "pan_temp": _pan_temp,
    "cost": _cost,
    "fuel": _fuel,
    "sign": _sign,
    "place": _place,
    "bucket_size": _bucket_size,
    "helper": _helper,
    "pan": _pan,
    "elevation": _elevation,
    "bit": _bit,
    "stem": _stem,
    "fire": _fire,
    "barometer": _barometer,
    "price": _price,
    "wish": _wish,
    "season_over": _season_over,
}
