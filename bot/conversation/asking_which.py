"""Which record, or which of its fields, a correction means: asked shortly."""

from __future__ import annotations

from collections.abc import Sequence

from bot.conversation.fits import Fit
from bot.conversation.pending import WhichRecord
from bot.conversation.turn import Turn
from bot.entry import Entry
from bot.reading import Choice, Doubt
from bot.reading.kinds import Amend
from bot.wording import amounts, questions, receipts
from bot.wording.compose import sentence


def ask_field(turn: Turn, fits: Sequence[Fit], reading: Amend) -> None:
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


def ask_which(turn: Turn, fits: Sequence[Fit], reading: Amend) -> None:
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
