"""Putting the last record right: which record is meant, which of its fields, and is it sane."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from bot import units
from bot.conversation.pending import WhichRecord
from bot.conversation.recording import entry_of, jar_gallons, moved, with_detail
from bot.conversation.turn import Turn
from bot.conversation.words import gallons_in_its_unit, nearest_unit
from bot.entry import AMOUNT_FIELDS, Entry
from bot.ledger import Kept
from bot.reading import Choice, Doubt
from bot.reading.kinds import Amend, Jar, Tree
from bot.wording import amounts, questions, receipts
from bot.wording.compose import sentence

# How far back a correction may reach: it is about what was texted lately (our own).
_TEXTS_BACK = 3
_LATELY = timedelta(hours=36)
# A bare figure goes to the field it is nearest to, if the next is this many times further
# off, by ratio (our own).
_CLEARLY_NEARER = 3.0

# The fields that a record of a kind can take though its text did not tell them.
_CAN_TAKE: Mapping[str, frozenset[str]] = {
    "sap": frozenset({"gallons", "brix", "tree", "lot"}),
    "sugar": frozenset({"brix", "tree", "lot"}),
    "poured_out": frozenset({"gallons"}),
    "boil": frozenset({"gallons", "hours"}),
    "syrup": frozenset({"gallons", "brix"}),
    "jars": frozenset({"jars", "count"}),
    "taps_set": frozenset({"count", "lot"}),
    "taps_pulled": frozenset({"count"}),
    "tree": frozenset({"species", "diameter_in", "taps"}),
    "cost": frozenset({"dollars", "item"}),
    "fuel": frozenset({"cords", "propane_lb"}),
    "bucket_size": frozenset({"gallons"}),
}
# What a bare figure can be in a record of a kind, and between which bounds it is believed.
_BARE: Mapping[str, Mapping[str, tuple[float, float]]] = {
    "sap": {"gallons": (0.0, math.inf), "brix": (0.2, 8.0)},
    "sugar": {"brix": (0.2, 8.0)},
    "poured_out": {"gallons": (0.0, math.inf)},
    "boil": {"gallons": (0.0, math.inf), "hours": (0.0, 48.0)},
    "syrup": {"gallons": (0.0, 100.0), "brix": (50.0, 75.0)},
    "jars": {"count": (1.0, math.inf)},
    "taps_set": {"count": (0.0, math.inf)},
    "taps_pulled": {"count": (0.0, math.inf)},
    "tree": {"diameter_in": (1.0, 100.0)},
    "store_temp": {"fahrenheit": (20.0, 120.0)},
    "water_boils": {"fahrenheit": (195.0, 216.0)},
    "pan_temp": {"fahrenheit": (180.0, 260.0)},
    "cost": {"dollars": (0.0, math.inf)},
    "fuel": {"cords": (0.0, 50.0), "propane_lb": (0.0, 2000.0)},
    "bucket_size": {"gallons": (0.2, 20.0)},
}
# Figures nearer than this, by ratio, are one figure.
_SAME = 1e-6
# Fewer gallons than this are not boiled (our own).
_LEAST_BOILED = 1.0
_WHOLE_COUNTS = frozenset({"count", "taps"})


@dataclass(frozen=True, slots=True)
class _Fit:
    """A record that a correction may mean, what it would become, and how far off that is."""

    kept: Kept
    field: str
    becomes: Entry
    distance: float = 0.0


def amend(turn: Turn, reading: Amend) -> None:
    """Put the last record right, or ask what is meant."""
    if _tells_a_tree(reading):
        _tree_anew(turn, reading)
        return
    told = lately(turn)
    if not told:
        _nothing_to_change(turn, reading)
        return
    texts = _meant(turn, told, reading)
    if not texts:
        _does_not_fit(turn, told[0])
        return
    if not turn.is_settled and reading.was is None and _is_long_ago(turn, told[0]):
        _ask_if_that_one(turn, told[0])
        return
    reading, texts = _of_its_day(reading, texts)
    changes = _changes(reading)
    if not texts:
        _does_not_fit(turn, told[0])
        return
    if set(changes) == {"on"} and reading.value is None:
        _move(turn, texts[0], reading)
        return
    if _is_bare(reading, changes):
        _bare(turn, texts[0], reading)
        return
    for depth, text in enumerate(texts):
        fits = _fits(text, changes, reading, may_take=depth == 0)
        if fits:
            _settle(turn, fits, reading)
            return
        if any(_tells(kept.entry, changes) for kept in text):
            # This is what is meant, but it cannot be so: nothing older is touched instead.
            break
    _does_not_fit(turn, texts[0])


def amend_chosen(turn: Turn, which: WhichRecord, record_id: int) -> bool:
    """The answer to "which one?". Says whether that record still stands."""
    for text in lately(turn):
        for kept in text:
            if kept.id == record_id:
                reading = _reading_of(which.amend)
                changes = _changes(reading)
                fits = (
                    _bare_fits(turn, [kept], reading)
                    if _is_bare(reading, changes)
                    else _fits([kept], changes, reading, may_take=True)
                )
                if fits:
                    _write(turn, min(fits, key=lambda fit: fit.distance))
                    return True
    return False


def lately(turn: Turn) -> list[list[Kept]]:
    """What counts of this person's last texts, if they are recent by the wall clock's day."""
    texts = turn.book.records.last_texts(
        turn.who.sugarbush_id, turn.who.person_id, _TEXTS_BACK, skip_kinds=("helper", "place")
    )
    if not texts:
        return []
    times = turn.book.inbox.times([text[0].text_id for text in texts])
    recent = [text for text in texts[1:] if turn.now_utc - times[text[0].text_id] <= _LATELY]
    return [texts[0], *recent]


def _is_long_ago(turn: Turn, text: Sequence[Kept]) -> bool:
    """Whether a text came so long before this one that a correction is hardly about it."""
    text_id = text[0].text_id
    return turn.now_utc - turn.book.inbox.times([text_id])[text_id] > _LATELY


def _ask_if_that_one(turn: Turn, text: Sequence[Kept]) -> None:
    receipt = "; ".join(receipts.line(kept.entry, turn.style) for kept in text[:2])
    question = questions.change_that(receipt)
    turn.ask(question, Doubt(question, (Choice(_AGREES, turn.words),)))


_AGREES = ("ok", "y", "yes", "yep", "yeah", "change it", "change", "that one", "right")


def _is_bare(reading: Amend, changes: Mapping[str, Any]) -> bool:
    """A figure that names no field; a tree or a lot beside it picks the record."""
    return reading.value is not None and not set(changes) - {"on", "tree", "lot"}


def _tells_a_tree(reading: Amend) -> bool:
    """`actually tree 2 is only 20 in`: a tree told anew, and no other record put right."""
    told = (reading.diameter_in, reading.species, reading.taps)
    amounts_told = (reading.gallons, reading.brix, reading.value)
    return (
        reading.tree is not None
        and any(one is not None for one in told)
        and all(one is None for one in amounts_told)
    )


def _tree_anew(turn: Turn, reading: Amend) -> None:
    """The latest word on a tree counts."""
    assert reading.tree is not None
    tree = Tree(
        tree=reading.tree,
        species=reading.species,
        diameter_in=reading.diameter_in,
        taps=reading.taps,
    )
    entry = entry_of(tree, turn.sent)
    turn.add(entry)
    turn.recorded_again(entry)


def _meant(turn: Turn, texts: list[list[Kept]], reading: Amend) -> list[list[Kept]]:
    """The records that have the old figure, and are of the kind, that the correction names: all
    where it names neither."""
    named = [[kept for kept in text if _is_named(turn, kept.entry, reading)] for text in texts]
    amounts_told = set(_changes(reading)) - {"on", "tree", "lot"}
    own = [[kept for kept in text if _is_of(kept.entry, reading)] for text in named]
    if amounts_told and any(own):
        named = own
    return [text for text in named if text]


def _is_of(entry: Entry, reading: Amend) -> bool:
    """Whether a record is of the lot or tree that the correction names."""
    told = [(reading.tree, entry.tree), (reading.lot, entry.lot)]
    named = [(name, has) for name, has in told if name is not None]
    return bool(named) and all(
        has is not None and has.casefold() == name.casefold() for name, has in named
    )


def _of_its_day(reading: Amend, texts: list[list[Kept]]) -> tuple[Amend, list[list[Kept]]]:
    """`saturday should be 50`: a day beside a figure picks the records of that day."""
    told = reading.value is not None or bool(set(_changes(reading)) - {"on"})
    if reading.on is None or not told:
        return reading, texts
    of_it = [[kept for kept in text if kept.entry.on == reading.on] for text in texts]
    of_it = [text for text in of_it if text]
    return replace(reading, on=None), of_it


def _is_named(turn: Turn, entry: Entry, reading: Amend) -> bool:
    if reading.about is not None and entry.kind not in (reading.about, _LIKE.get(reading.about)):
        return False
    if reading.thing is not None and not went_on(entry, reading.thing):
        return False
    if reading.value is not None:
        for told, has in ((reading.tree, entry.tree), (reading.lot, entry.lot)):
            if told is not None and (has is None or has.casefold() != told.casefold()):
                return False
    if reading.was is None:
        return True
    field, figure = reading.was
    if field != "value":
        old = getattr(entry, field)
        return old is not None and _is_near(old, figure)
    if entry.kind == "boil" and entry.hours is None and reading.hours is not None:
        return True  # the hours of a fire are reckoned, and stand in no record
    if entry.kind == "jars":
        return any(jar["count"] == figure for jar in entry.detail.get("jars", ()))
    return any(
        old is not None and _is_near(old, _as_said(turn, name, figure))
        for name in _BARE.get(entry.kind, ())
        for old in [_old_value(entry, name)]
    )


def went_on(entry: Entry, thing: str) -> bool:
    """Whether the money of a cost went on what is named; nobody knows where none was told."""
    item = entry.detail.get("item")
    if item is None:
        return True
    told, named = ({word.rstrip("s") for word in name.casefold().split()} for name in (item, thing))
    return bool(told & named)


def _is_near(old: float, figure: float) -> bool:
    """The same figure, as far as people say it."""
    return abs(old - figure) <= _SAID_NEAR * max(abs(old), abs(figure))


_SAID_NEAR = 0.01  # by ratio (our own)
# A kind's figure may stand in a record of another.
_LIKE = {"sap": "sugar"}


def _changes(reading: Amend) -> dict[str, Any]:
    told = reading.as_dict()
    for name in ("kind", "value", "pieces", "was", "about", "thing"):
        told.pop(name, None)
    return told


def _fits(
    text: Sequence[Kept], changes: Mapping[str, Any], reading: Amend, *, may_take: bool
) -> list[_Fit]:
    """The records of one text that the changes fit, those that told the fields first.

    A tree or lot beside an amount picks the record when several could be meant.
    """
    named = [
        kept
        for kept in text
        if (reading.tree is not None and kept.entry.tree == reading.tree)
        or (reading.lot is not None and kept.entry.lot == reading.lot)
    ]
    amounts_told = {name: value for name, value in changes.items() if name not in ("tree", "lot")}
    if named and amounts_told:
        text, changes = named, amounts_told
    having: list[_Fit] = []
    taking: list[_Fit] = []
    for kept in text:
        becomes = _changed(kept.entry, changes, reading)
        if becomes is None:
            continue
        fit = _Fit(kept, next(iter(changes)), becomes)
        (having if _tells(kept.entry, changes) else taking).append(fit)
    return having or (taking if may_take else [])


def _tells(entry: Entry, changes: Mapping[str, Any]) -> bool:
    """Whether the record tells one of the amounts already."""
    return any(
        getattr(entry, name, None) is not None or name in entry.detail
        for name in changes
        if name != "on"
    ) or (entry.kind == "jars" and "gallons" in changes)


def _changed(entry: Entry, changes: Mapping[str, Any], reading: Amend) -> Entry | None:
    """The record with the changes, None if its kind cannot take one of them."""
    if entry.kind == "jars" and "gallons" in changes:
        if reading.pieces is None or not _are_jars(entry, reading.pieces):
            return None
        jars = _jars_put_right(entry, reading.pieces)
        if jars is None:
            return None
        changes = {name: value for name, value in changes.items() if name != "gallons"}
        changes["jars"] = jars
    if entry.kind == "boil" and entry.detail.get("state") == "start":
        return None
    if entry.kind in ("taps_set", "taps_pulled") and "taps" in changes:
        changes = {**{k: v for k, v in changes.items() if k != "taps"}, "count": changes["taps"]}
    out = entry
    for name, value in changes.items():
        if name == "on":
            out = moved(out, reading.on) if reading.on is not None else out
            continue
        if entry.kind == "boil" and name == "gallons" and value < _LEAST_BOILED:
            return None  # "it was only 3 quarts" is no word about a boil
        can_take = name in _CAN_TAKE.get(entry.kind, ()) or _tells(entry, {name: value})
        if not can_take:
            return None
        out = _with(out, name, value)
    return out


def _jars_put_right(entry: Entry, pieces: Sequence[Jar]) -> list[dict[str, Any]] | None:
    """The jars with those of a size counted anew, the others as they were; None where a size is
    new among several, so that nobody knows which it stands for."""
    had = [dict(jar) for jar in entry.detail.get("jars", ())]
    if len(had) <= 1:
        return [jar_json(jar) for jar in pieces]
    for piece in pieces:
        same = [jar for jar in had if _is_near(jar["gallons_each"], piece.gallons_each)]
        if len(same) != 1:
            return None
        same[0]["count"] = piece.count
    return had


def _are_jars(entry: Entry, pieces: Sequence[Jar]) -> bool:
    """Whether counted containers are jars: not gallons, unless there were such jars before."""
    had = [jar["gallons_each"] for jar in entry.detail.get("jars", ())]
    return all(
        piece.gallons_each <= _LARGEST_JAR
        or any(abs(piece.gallons_each - size) < 0.01 for size in had)
        for piece in pieces
    )


# US gallons; larger ones are sold, but then a text says so from the start (our own).
_LARGEST_JAR = 0.5


def _with(entry: Entry, name: str, value: Any) -> Entry:
    if name == "jars":
        jars = list(value)
        return replace(with_detail(entry, {"jars": jars}), gallons=jar_gallons(jars))
    if entry.kind == "jars" and name == "count":
        jars = [{**jar, "count": int(value)} for jar in entry.detail["jars"]]
        return _with(entry, "jars", jars)
    if name in AMOUNT_FIELDS:
        changed = replace(entry, **{name: value})
        if entry.kind == "taps_pulled" and name == "count":
            return replace(changed, detail={k: v for k, v in entry.detail.items() if k != "all"})
        return changed
    return with_detail(entry, {name: value})


def jar_json(jar: Jar) -> dict[str, Any]:
    """A jar as plain JSON."""
    return {"count": jar.count, "gallons_each": jar.gallons_each}


# --- a bare figure ---------------------------------------------------------------------------


def _bare(turn: Turn, text: Sequence[Kept], reading: Amend) -> None:
    fits = sorted(
        _named_in(turn.words, _bare_fits(turn, text, reading)), key=lambda fit: fit.distance
    )
    if not fits:
        _does_not_fit(turn, text)
        return
    if len(fits) == 1 or fits[0].distance * _CLEARLY_NEARER <= fits[1].distance:
        if fits[0].distance > _FAR_OFF and not turn.is_settled:
            _ask_if_that_far(turn, fits[0])
            return
        _settle(turn, fits[:1], reading)
        return
    same_record = [fit for fit in fits if fit.kept.id == fits[0].kept.id]
    if len(same_record) > 1 and len(same_record) == len(fits):
        _ask_field(turn, same_record, reading)
        return
    _ask_which(turn, _nearest_of_each(fits), reading)


# Nobody mistakes an amount by more than this, by ratio of 20: another figure is meant (our own).
_FAR_OFF = math.log(20)


def _ask_if_that_far(turn: Turn, fit: _Fit) -> None:
    old, new = (receipts.short(one, turn.style) for one in (fit.kept.entry, fit.becomes))
    question = questions.so_far_off(old, new)
    turn.ask(question, Doubt(question, (Choice(_AGREES, turn.words),)))


def _bare_fits(turn: Turn, text: Sequence[Kept], reading: Amend) -> list[_Fit]:
    """What a bare figure could be: every field of every record that is near enough."""
    assert reading.value is not None
    fits = []
    for kept in text:
        for name, (low, high) in _BARE.get(kept.entry.kind, {}).items():
            old = _old_value(kept.entry, name)
            if old is None:
                continue
            value = _as_said(turn, name, reading.value, kept)
            if not low <= value <= high or (name in _WHOLE_COUNTS and value != int(value)):
                continue
            becomes = _with(kept.entry, name, int(value) if name in _WHOLE_COUNTS else value)
            if reading.on is not None:
                becomes = moved(becomes, reading.on)
            fits.append(_Fit(kept, name, becomes, _distance(old, value)))
    # Nobody corrects a figure into itself.
    return [fit for fit in fits if fit.distance > _SAME or fit.becomes.on != fit.kept.entry.on]


def _old_value(entry: Entry, name: str) -> float | None:
    if entry.kind == "jars":
        jars = entry.detail.get("jars", [])
        return float(jars[0]["count"]) if len(jars) == 1 else None
    if entry.kind == "boil" and entry.detail.get("state") == "start":
        return None
    value = getattr(entry, name, None) if name in AMOUNT_FIELDS else entry.detail.get(name)
    return None if value is None else float(value)


def _as_said(turn: Turn, name: str, value: float, kept: Kept | None = None) -> float:
    """A bare figure in the record's unit: that of the text that told it, and litres and Celsius
    for somebody metric."""
    if not turn.style.is_metric:
        if name != "gallons" or kept is None:
            return value
        unit = gallons_in_its_unit(turn.book.inbox.words(kept.text_id))
        if unit is None:
            unit = nearest_unit(value, kept.entry.gallons or 0.0)
        return value * unit
    if name == "gallons":
        return units.gallons(value, "liter")
    if name == "fahrenheit" and value <= 110:
        return units.fahrenheit(value)
    return value


def _distance(old: float, new: float) -> float:
    """How far off by ratio; a change from or to nothing is far."""
    if old <= 0 or new <= 0:
        return 0.0 if old == new else 3.0
    return abs(math.log(new / old))


def _nearest_of_each(fits: Sequence[_Fit]) -> list[_Fit]:
    best: dict[int, _Fit] = {}
    for fit in fits:
        if fit.kept.id not in best or fit.distance < best[fit.kept.id].distance:
            best[fit.kept.id] = fit
    return sorted(best.values(), key=lambda fit: fit.kept.id)


# --- settling it -----------------------------------------------------------------------------


def _settle(turn: Turn, fits: Sequence[_Fit], reading: Amend) -> None:
    if len(fits) > 1:
        fits = _named_in(turn.words, fits)
    if len(fits) > 1:
        _ask_which(turn, fits, reading)
        return
    doubt = _doubtful(turn, fits[0])
    if doubt is not None:
        turn.ask(doubt.question, doubt)
        return
    _write(turn, fits[0])


def _named_in(words: str, fits: Sequence[_Fit]) -> Sequence[_Fit]:
    """Those whose tree or lot the text names; all, when it names none."""
    spoken = f" {' '.join(words.casefold().replace(',', ' ').split())} "
    named = [
        fit
        for fit in fits
        if (fit.kept.entry.lot is not None and f" {fit.kept.entry.lot.casefold()} " in spoken)
        or (fit.kept.entry.tree is not None and f" tree {fit.kept.entry.tree} " in spoken)
    ]
    return named or fits


def _write(turn: Turn, fit: _Fit) -> None:
    if fit.becomes == fit.kept.entry:
        _does_not_fit(turn, [fit.kept])
        return
    turn.amend(fit.kept, fit.becomes)
    turn.recorded_again(fit.becomes)


def _move(turn: Turn, text: Sequence[Kept], reading: Amend) -> None:
    """Another day: the whole text moves."""
    assert reading.on is not None
    for kept in text:
        becomes = moved(kept.entry, reading.on)
        turn.amend(kept, becomes)
        turn.recorded_again(becomes)


# How the changed record would be texted afresh, to have it doubted as a new one would be.
_AFRESH = {
    "sap": "{gallons:g} gal of sap",
    "syrup": "drew off {gallons:g} gal of syrup",
    "water_boils": "water boils at {fahrenheit:g} F",
    "sugar": "sugar {brix:g} brix",
}
_FILLS = {
    "gallons": "make that {} gal",
    "brix": "make that {} brix",
    "fahrenheit": "make that {} F",
}


def _doubtful(turn: Turn, fit: _Fit) -> Doubt | None:
    """The question that the changed record would raise if it were texted afresh."""
    entry = fit.becomes
    phrase = _AFRESH.get(entry.kind)
    if phrase is None:
        return None
    words = phrase.format(
        gallons=entry.gallons or 0.0, brix=entry.brix or 0.0, fahrenheit=entry.fahrenheit or 0.0
    )
    if entry.kind in ("sap", "syrup") and entry.brix is not None:
        words += f" at {entry.brix:g} brix"
    doubt = turn.understand(words).doubt
    if doubt is None:
        return None
    return Doubt(doubt.question, (), _FILLS.get(fit.field), number_only=True)


def _ask_field(turn: Turn, fits: Sequence[_Fit], reading: Amend) -> None:
    """`no, 3` after `5 gal at 2.2`: gallons or Brix?"""
    names = {"gallons": "L" if turn.style.is_metric else "gal", "brix": "Brix", "hours": "h"}
    said = [names.get(fit.field, fit.field) for fit in fits]
    figure = amounts.number(reading.value or 0.0, 2)
    shown = receipts.line(fits[0].kept.entry, turn.style)
    choices = tuple(
        Choice((name.casefold(), *_FIELD_WORDS.get(fit.field, ())), f"make that {figure} {word}")
        for fit, name, word in zip(
            fits, said, (_TEXTED.get(name, name) for name in said), strict=True
        )
    )
    question = f"{sentence(shown)[:-1]}: {figure} {said[0]} or {figure} {said[1]}?"
    turn.ask(question, Doubt(question, choices))


_TEXTED = {"Brix": "brix", "h": "hours", "L": "litres"}
_FIELD_WORDS = {
    "gallons": ("gal", "gals", "gallons", "sap", "l", "litres", "liters"),
    "brix": ("sugar", "percent", "%"),
    "hours": ("hours", "hrs", "hour"),
}


def _ask_which(turn: Turn, fits: Sequence[_Fit], reading: Amend) -> None:
    """Several records could be meant: name each, shortly."""
    entries = [fit.kept.entry for fit in fits]
    labels = _labels(entries, turn)
    options = tuple(
        ((label.casefold(), *_short_forms(fit.kept.entry, at)), fit.kept.id)
        for at, (label, fit) in enumerate(zip(labels, fits, strict=True), start=1)
    )
    named = [
        receipts.short(entry, turn.style)
        if label in _shown(entry, turn)
        else f"{label} ({receipts.short(entry, turn.style)})"
        for label, entry in zip(labels, entries, strict=True)
    ]
    turn.ask(questions.which(named), WhichRecord(options, reading.as_dict()))


def _shown(entry: Entry, turn: Turn) -> str:
    return receipts.short(entry, turn.style)


_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth")


def _labels(entries: Sequence[Entry], turn: Turn) -> list[str]:
    places = [receipts.where(entry) for entry in entries]
    if all(places) and len(set(places)) == len(places):
        return places
    kinds = [entry.kind.replace("_", " ") for entry in entries]
    if len(set(kinds)) == len(kinds):
        return kinds
    if len(entries) <= len(_ORDINALS):
        return list(_ORDINALS[: len(entries)])
    return [receipts.short(entry, turn.style) for entry in entries]


def _short_forms(entry: Entry, at: int) -> tuple[str, ...]:
    """Other words that pick a record: the bare tree or lot, its kind, its place in the row."""
    forms = [entry.kind.replace("_", " ")]
    if entry.tree is not None:
        forms.append(entry.tree.casefold())
    elif at <= len(_ORDINALS):
        forms += [_ORDINALS[at - 1], str(at)]
    if entry.lot is not None:
        forms.append(entry.lot.casefold())
    return tuple(forms)


def _nothing_to_change(turn: Turn, reading: Amend) -> None:
    if reading.gallons is None:
        turn.reply.answers.append(questions.nothing_to_change(None))
        return
    said = amounts.volume(reading.gallons, turn.style)
    question = questions.nothing_to_change(said)
    words = f"{said} of sap"
    if reading.brix is not None:
        words += f" at {reading.brix:g} brix"
    turn.ask(question, Doubt(question, (Choice(("ok", "y", "yep", "yeah", "sap"), words),)))


def _does_not_fit(turn: Turn, text: Sequence[Kept]) -> None:
    receipt = "; ".join(receipts.line(kept.entry, turn.style) for kept in text[:2])
    turn.reply.answers.append(questions.does_not_fit(turn.words, receipt))


def _reading_of(told: Mapping[str, Any]) -> Amend:
    """The correction back from its JSON object."""
    fields = {name: value for name, value in told.items() if name != "kind"}
    for name in ("jars", "pieces"):
        if name in fields:
            fields[name] = tuple(Jar(**jar) for jar in fields[name])
    if "on" in fields:
        fields["on"] = date.fromisoformat(fields["on"])
    if "was" in fields:
        fields["was"] = tuple(fields["was"])
    return Amend(**fields)
