"""Putting the last record right: which record is meant, which of its fields, and is it sane."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from bot import units
from bot.conversation.asking_which import ask_field, ask_which
from bot.conversation.fits import Fit, already_so, changes_of, fits_of, is_near, tells, with_field
from bot.conversation.pending import WhichRecord
from bot.conversation.recording import entry_of, moved
from bot.conversation.turn import Turn
from bot.conversation.words import gallons_in_its_unit, nearest_unit
from bot.entry import AMOUNT_FIELDS, Entry
from bot.ledger import Kept
from bot.reading import Choice, Doubt
from bot.reading.kinds import Amend, Jar, Tree
from bot.wording import amounts, questions, receipts

# How far back a correction may reach: it is about what was texted lately (our own).
_TEXTS_BACK = 3
_LATELY = timedelta(hours=36)
# A bare figure goes to the field it is nearest to, if the next is this many times further
# off, by ratio (our own).
_CLEARLY_NEARER = 3.0

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
_WHOLE_COUNTS = frozenset({"count", "taps"})


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
    same = already_so(texts or told, reading)
    if same is not None:
        _stands_so(turn, same)
        return
    if not texts:
        _does_not_fit(turn, told[0])
        return
    if not turn.is_settled and reading.was is None and is_long_ago(turn, told[0]):
        _ask_if_that_one(turn, told[0])
        return
    reading, texts = _of_its_day(reading, texts)
    changes = changes_of(reading)
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
        fits = fits_of(text, changes, reading, may_take=depth == 0)
        if fits:
            _settle(turn, fits, reading)
            return
        if any(tells(kept.entry, changes) for kept in text):
            # This is what is meant, but it cannot be so: nothing older is touched instead.
            break
    _does_not_fit(turn, texts[0])


def amend_chosen(turn: Turn, which: WhichRecord, record_id: int) -> bool:
    """The answer to "which one?". Says whether that record still stands."""
    for text in lately(turn):
        for kept in text:
            if kept.id == record_id:
                reading = _reading_of(which.amend)
                changes = changes_of(reading)
                fits = (
                    _bare_fits(turn, [kept], reading)
                    if _is_bare(reading, changes)
                    else fits_of([kept], changes, reading, may_take=True)
                )
                if fits:
                    nearest = min(fits, key=lambda fit: fit.distance)
                    if nearest.distance > _FAR_OFF and nearest.field == "gallons":
                        _ask_if_that_far(turn, nearest, _told_whole(nearest))
                        return True
                    _write_unless_doubtful(turn, nearest)
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


def is_long_ago(turn: Turn, text: Sequence[Kept]) -> bool:
    """Whether a text came so long before this one that a correction is hardly about it."""
    return turn.ago(text[0].text_id) > _LATELY


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
    amounts_told = set(changes_of(reading)) - {"on", "tree", "lot"}
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
    told = reading.value is not None or bool(set(changes_of(reading)) - {"on"})
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
        return old is not None and is_near(old, figure)
    if entry.kind == "boil" and entry.hours is None and reading.hours is not None:
        return True  # the hours of a fire are reckoned, and stand in no record
    if entry.kind == "jars":
        return any(jar["count"] == figure for jar in entry.detail.get("jars", ()))
    return any(
        old is not None and is_near(old, _as_said(turn, name, figure))
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


# A kind's figure may stand in a record of another.
_LIKE = {"sap": "sugar"}


# --- a bare figure ---------------------------------------------------------------------------


def _bare(turn: Turn, text: Sequence[Kept], reading: Amend) -> None:
    could_be = _bare_fits(turn, text, reading)
    as_it_is = [fit for fit in could_be if fit.becomes == fit.kept.entry]
    if as_it_is:
        _stands_so(turn, as_it_is[0].kept)
        return
    fits = sorted(_named_in(turn.words, could_be), key=lambda fit: fit.distance)
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
        ask_field(turn, same_record, reading)
        return
    ask_which(turn, _nearest_of_each(fits), reading)


# Nobody mistakes an amount by more than this, by ratio of 20: another figure is meant (our own).
_FAR_OFF = math.log(20)


def _ask_if_that_far(turn: Turn, fit: Fit, words: str | None = None) -> None:
    """words: what makes the change where it is agreed to, None for the words of this text."""
    old, new = (receipts.short(one, turn.style) for one in (fit.kept.entry, fit.becomes))
    question = questions.so_far_off(old, new)
    turn.ask(question, Doubt(question, (Choice(_AGREES, turn.words if words is None else words),)))


def _told_whole(fit: Fit) -> str:
    """A change of gallons as a text that names the record by what it was."""
    was, becomes = fit.kept.entry.gallons or 0.0, fit.becomes.gallons or 0.0
    return f"the {was:g} gal was {becomes:g} gal"


def _bare_fits(turn: Turn, text: Sequence[Kept], reading: Amend) -> list[Fit]:
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
            becomes = with_field(kept.entry, name, int(value) if name in _WHOLE_COUNTS else value)
            if reading.on is not None:
                becomes = moved(becomes, reading.on)
            fits.append(Fit(kept, name, becomes, _distance(old, value)))
    return fits


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


def _nearest_of_each(fits: Sequence[Fit]) -> list[Fit]:
    best: dict[int, Fit] = {}
    for fit in fits:
        if fit.kept.id not in best or fit.distance < best[fit.kept.id].distance:
            best[fit.kept.id] = fit
    return sorted(best.values(), key=lambda fit: fit.kept.id)


# --- settling it -----------------------------------------------------------------------------


def _settle(turn: Turn, fits: Sequence[Fit], reading: Amend) -> None:
    if len(fits) > 1:
        fits = _named_in(turn.words, fits)
    if len(fits) > 1:
        ask_which(turn, fits, reading)
        return
    _write_unless_doubtful(turn, fits[0])


def _write_unless_doubtful(turn: Turn, fit: Fit) -> None:
    doubt = _doubtful(turn, fit)
    if doubt is not None and not (turn.is_settled and doubt.choices):
        turn.ask(doubt.question, doubt)
        return
    _write(turn, fit)


def _named_in(words: str, fits: Sequence[Fit]) -> Sequence[Fit]:
    """Those whose tree or lot the text names; all, when it names none."""
    spoken = f" {' '.join(words.casefold().replace(',', ' ').split())} "
    named = [
        fit
        for fit in fits
        if (fit.kept.entry.lot is not None and f" {fit.kept.entry.lot.casefold()} " in spoken)
        or (fit.kept.entry.tree is not None and f" tree {fit.kept.entry.tree} " in spoken)
    ]
    return named or fits


def _write(turn: Turn, fit: Fit) -> None:
    if fit.becomes == fit.kept.entry:
        _stands_so(turn, fit.kept)
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


def _doubtful(turn: Turn, fit: Fit) -> Doubt | None:
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
    # What may be so can be agreed to; what cannot be, not.
    agreed = any("ok" in choice.words for choice in doubt.choices)
    choices = (Choice(_AGREES, turn.words),) if agreed else ()
    return Doubt(doubt.question, choices, _FILLS.get(fit.field), number_only=True)


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


def _stands_so(turn: Turn, kept: Kept) -> None:
    """Tells what is written already."""
    turn.reply.answers.append(questions.already_so(receipts.line(kept.entry, turn.style)))


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
