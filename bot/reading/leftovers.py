"""What is left when nothing was recorded or asked, and the words for it."""

from __future__ import annotations

from bot.reading import topics
from bot.reading.clauses import Clause
from bot.reading.items import Item
from bot.reading.kinds import Chat, Question
from bot.reading.notes import Notes
from bot.reading.understanding import Doubt, Understanding

UNMARKED_SCORE = 12.0
"""How surely words that are not put as a question must be like one of the examples."""
SURE_SCORE = 20.0
"""The same, where a figure stands in the words: those had rather be asked about."""
MOST_UNMARKED_WORDS = 25


_FIGURES = frozenset("number volume brix temp vessels hours mass length tree money cords".split())
_NOT_OURS = ("FOREIGN", "OTHERS", "GIFT", "PRICE", "EARN", "KILL")
_TALK = (*_NOT_OURS, "GREET", "THANKS", "SMALLTALK", "PLAN", "NOT", "PERHAPS")
LONG_TALK = 6
"""Clauses beyond which a text with stray figures is a letter, and no note."""
TALK_WORDS = 3


def leftover(notes: Notes) -> None:
    """What a text is that records and asks nothing: a question that is not put as one ("bags or
    buckets"), small talk, or a figure that needs a question."""
    figures = [
        (clause, item)
        for clause in notes.clauses
        for item in clause.items
        if item.sort in _FIGURES and not item.article
    ]
    if _unmarked_question(notes, bool(figures)):
        return
    if _sap_without_amount(notes):
        notes.ask("How many gal of sap was that?", fill="{} gal of sap")
        return
    ours = [
        (clause, item)
        for clause, item in figures
        if not (clause.plan or clause.hypothetical or clause.has(*_NOT_OURS))
    ]
    if ours and len(notes.clauses) <= LONG_TALK:
        _ask_about(*ours[0], notes)
        return
    words = sum(len(clause.words()) for clause in notes.clauses)
    if ours or words >= TALK_WORDS or any(clause.has(*_TALK) for clause in notes.clauses):
        notes.add(Chat(), 0)
        return
    notes.ask(f'I can\'t make out "{short(notes.text)}". Text it like: 12 gal at 2.2.')


def _unmarked_question(notes: Notes, has_figures: bool) -> bool:
    """`bags or buckets`, `finish temp`: like one of the examples, though no question in form."""
    words = sum(len(clause.words()) for clause in notes.clauses)
    strangers = any(clause.has("OTHERS", "KILL", "GIFT") for clause in notes.clauses)
    if words > MOST_UNMARKED_WORDS or strangers:
        return False
    hit = topics.asked(" ".join(clause.text for clause in notes.clauses))
    wanted = SURE_SCORE if has_figures else UNMARKED_SCORE
    if hit is None or hit.topic == topics.NONE or hit.score < wanted:
        return False
    notes.add(Question(topic=hit.topic, howto=hit.howto, also=hit.also), 0)
    return True


def _sap_without_amount(notes: Notes) -> bool:
    """`filled the big barrel`, `a stockpot of sap`, `12.5.3 gallons`."""
    gathered = any(
        clause.has("GATHER")
        and clause.has("STORE", "SAP")
        and not clause.plan
        and not clause.negated
        for clause in notes.clauses
    )
    garbled = any(
        item.sort == "word" and item.text[:1].isdigit()
        for clause in notes.clauses
        for item in clause.items
    )
    return gathered or garbled or "of sap" in notes.text


def _ask_about(clause: Clause, item: Item, notes: Notes) -> None:
    said = f"{item.value:g}"
    if item.sort == "tree":
        notes.ask(f"Tree {item.text}: how many gal?", fill=f"tree {item.text} {{}} gal")
        return
    if item.sort == "number" and len(clause.items) <= 4:
        ask_what(notes, said)
        return
    notes.ask(f'I can\'t tell what "{short(notes.text)}" says. Text it like: 12 gal at 2.2.')


def ask_what(notes: Notes, said: str) -> None:
    """Asks what a bare figure counts."""
    notes.ask(
        f"{said} what: gal of sap, or taps?",
        ("gal|gals|gallons|sap|gallons of sap|gal of sap|gal sap|g", f"{said} gal of sap"),
        ("taps|tap|spiles", f"{said} taps"),
        ("l|litres|liters|litre", f"{said} litres of sap"),
        ("syrup|gal of syrup|gallons of syrup", f"{said} gal of syrup"),
        ("brix|sugar|percent|%", f"sugar {said} brix"),
        ("pints", f"bottled {said} pints"),
        ("buckets|pails|full buckets", f"{said} full buckets"),
    )


def short(text: str) -> str:
    """A piece of a text that fits a question."""
    line = " ".join(text.split())
    return line if len(line) <= 40 else line[:37].rstrip() + "..."


def nothing(plain: str) -> Understanding:
    shown = short(plain)
    question = f'I can\'t read "{shown}".' if shown else "Nothing came through."
    return Understanding((), Doubt(question + " What do you mean? Text it like: 12 gal at 2.2."))
