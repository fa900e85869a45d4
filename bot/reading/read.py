"""The whole way from a text to what it means.

1. A lone carrier's word is settled at once.
2. tidy -> put_right -> in_pieces -> in_passing -> plain_deeds (these two of each
   sentence too) -> tokens -> items -> what stands apart put together (carried, shares, parted)
   -> clauses. A form of words that can be read in two ways is asked (two_ways).
3. Gear that is told and instruments that are asked about are taken apart (apart.py).
4. A text that joins, undoes or amends is that and nothing else.
5. Clauses that ask, plan or suppose record nothing; what is asked is looked up.
6. Every kind is let at every other clause, in its order, and takes what is its own.
7. Totals that repeat their parts go; a sentence with a figure that no reading took is not
   recorded; what is left over with a figure in it is asked about.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from functools import lru_cache

from bot.reading import items as item_stage
from bot.reading import kinds, sentences, tidy, tokens
from bot.reading.apart import apart
from bot.reading.asides import set_aside
from bot.reading.asking import add_questions
from bot.reading.carried import with_cents, with_units
from bot.reading.clause import Clause
from bot.reading.clauses import clauses
from bot.reading.danger import danger
from bot.reading.doubting import dangling, doubtful, unsure
from bot.reading.in_passing import without_asides, without_asides_in
from bot.reading.in_pieces import put_together
from bot.reading.items import Item
from bot.reading.kinds import Amend, Chat, Question, Reading, cost, helper, wish
from bot.reading.kinds.help import KEYWORDS as HELP_WORDS
from bot.reading.kinds.help import SAID_HELP, Help
from bot.reading.kinds.start import KEYWORDS as START_WORDS
from bot.reading.kinds.start import SAID_IN, Start
from bot.reading.kinds.stop import KEYWORDS as STOP_WORDS
from bot.reading.kinds.stop import PLEASE_STOP, SAID_OUT, Stop
from bot.reading.kinds.undo import Undo
from bot.reading.leftovers import leftover, nothing
from bot.reading.notes import Notes
from bot.reading.parted import rejoined
from bot.reading.plain_deeds import in_plain_words, sentence_in_plain_words
from bot.reading.put_right import before_idle_talk, plain_correction
from bot.reading.questioned import told_with_a_mark
from bot.reading.shares import of_a_whole
from bot.reading.totals import settle_totals
from bot.reading.two_ways import two_ways, two_ways_in
from bot.reading.unclaimed import unclaimed
from bot.reading.understanding import Doubt, Profile, Understanding
from bot.reading.whence import whence
from bot.reading.whose import is_theirs, of_whom

_COMMAND = re.compile(
    r"\W*(?:update \w+ set|delete from|insert into|drop table)\b|.*</?[a-z]+[^>]*>", re.S
)
"""Orders to a database and pages of the web are no notes from the woods."""
_WHOLE = tuple(module for module in kinds.FAMILY if hasattr(module, "find_whole"))
_Find = Callable[[Clause, Notes], None]
_BY_CLAUSE: tuple[tuple[str, frozenset[str], _Find], ...] = tuple(
    (module.__name__.rpartition(".")[2], frozenset(getattr(module, "NEEDS", ())), module.find)
    for module in kinds.FAMILY
    if hasattr(module, "find")
)
"""Each kind by its name, with what a clause must have one of (nothing: any will do)."""
_NEEDED = frozenset().union(*(needs for _, needs, _ in _BY_CLAUSE))


@lru_cache(maxsize=1024)
def _kinds_for(has: frozenset[str]) -> tuple[tuple[str, _Find], ...]:
    """The kinds that look at a clause that has these."""
    return tuple(
        (name, find) for name, needs, find in _BY_CLAUSE if not needs or not needs.isdisjoint(has)
    )


_KEYWORDS: dict[str, type[Reading]] = {
    **dict.fromkeys(STOP_WORDS, Stop),
    **dict.fromkeys(START_WORDS, Start),
    **dict.fromkeys(HELP_WORDS, Help),
}
MOST_CLAUSES = 80
"""Pieces of the longest text that is taken apart: three times what a long text has."""
_GO_ON = re.compile(r"\b(?:don't|dont|do not|never|can't|cant) (?:\w+ ){0,2}stop")
"""`don't stop sending these` asks for more."""
_PLANNED_STILL = frozenset(("helper", "place", "bucket_size", "tree"))
"""Kinds that a word of planning does not undo: "my buckets will hold 2 gal"."""


def read(text: str, sent: datetime, profile: Profile | None = None) -> Understanding:
    """What one text means. `sent` is local, without offset. Never raises."""
    profile = profile if profile is not None else Profile()
    if len(text) > tidy.LONGEST:
        return Understanding((), Doubt("That is too long for me to read. Text it in pieces."))
    if _of_another_year(text, sent):
        return Understanding((), Doubt("Is that of now? If so, text it without the year."))
    plain = _in_plain(text)
    keyword = plain.strip(" .!\n\t\"'")
    if keyword.rstrip("? ") in HELP_WORDS or keyword.rstrip("? ") in SAID_HELP:
        return Understanding((Help(),))
    if keyword in _KEYWORDS:
        return Understanding((_KEYWORDS[keyword](),))
    if danger(plain) is not None:
        return Understanding((Question(topic="howto", howto="safety"),))
    run = tokens.tokens(plain)
    if _COMMAND.match(plain):
        return nothing(plain)
    if not any(token.shape != "sign" for token in run):
        return nothing(plain)
    said_out = SAID_OUT.search(plain) or PLEASE_STOP.search(plain)
    if said_out and len(run) < 12 and not _about_alerts(plain) and not _GO_ON.search(plain):
        return Understanding((Stop(),))
    if keyword in SAID_IN:
        return Understanding((Start(),))
    doubt = _in_two_ways(plain)
    if doubt is not None:
        return Understanding((), doubt)
    meant = _put_right_and_more(plain, sent, profile)
    if meant is not None:
        return meant
    meant = apart(plain, profile, lambda rest: read(rest, sent, profile))
    if meant is not None:
        return meant
    found = clauses(_pieces(item_stage.items(run, sent, profile)))
    if len(found) > MOST_CLAUSES:
        return Understanding((), Doubt("That is too much for one text. Text it in pieces."))
    notes = Notes(plain, sent, profile, found)
    if any(module.find_whole(notes) for module in _WHOLE):
        if notes.last(Undo) is not None:
            add_questions(notes)
        return _understood(notes)
    for number, clause in enumerate(found):
        notes.clause_number = number
        _take(clause, notes)
    settle_totals(notes)
    unclaimed(notes)
    whence(notes)
    add_questions(notes)
    if not notes.noted and not notes.doubts:
        _nothing_of_ours(notes)
    return told_with_a_mark(_understood(notes), notes, lambda rest: read(rest, sent, profile))


_YEAR = re.compile(
    r"\b(?:in|of|season|spring|for) (20\d\d|'[012]\d)\b(?! ?(?:gal|l\b|lit|taps|lb))"
)
_WITH_A_FIGURE = re.compile(
    r"\d.*\b(?:in|of|season|spring|for) (?:20\d\d|'\d\d)|(?:20\d\d|'\d\d)\D.*\d"
)


def _of_another_year(text: str, sent: datetime) -> bool:
    """`made 12 gal of syrup in 2025`: told with a year that is not this one."""
    said = _YEAR.search(text.lower()) if "20" in text or "'" in text else None
    if said is None or "?" in text or not _WITH_A_FIGURE.search(text.lower()):
        return False
    return int(said[1][-2:]) != sent.year % 100


def _nothing_of_ours(notes: Notes) -> None:
    """What an outsider did is talk; of all else that recorded nothing a figure is asked about."""
    if all(is_theirs(clause) for clause in notes.clauses):
        notes.add(Chat(), 0)
    else:
        leftover(notes)


def _in_plain(text: str) -> str:
    """A text as the stages from the tokens on take it."""
    plain = in_plain_words(without_asides(put_together(plain_correction(tidy.tidy(text)))))
    return sentences.in_each(plain, lambda said: sentence_in_plain_words(without_asides_in(said)))


def _put_right_and_more(plain: str, sent: datetime, profile: Profile) -> Understanding | None:
    """`brix was 1.9, not 2.9. tired.`: a correction, whatever idle talk follows it."""
    first = before_idle_talk(plain)
    meant = None if first is None else read(first, sent, profile)
    if meant is None or not any(isinstance(one, Amend | Undo) for one in meant.readings):
        return None
    return meant


def _in_two_ways(plain: str) -> Doubt | None:
    """The first that has to be asked of the text or of one of its sentences; but a sentence that
    begins with a figure may say what those before it leave open: `got my taps in. 9 total`."""
    whole = two_ways(plain)
    if whole is not None:
        return whole
    each = list(sentences.each(plain))
    goes_on = any(said[:1].isdigit() for said in each)
    return None if goes_on else next(filter(None, map(two_ways_in, each)), None)


def _pieces(found: list[Item]) -> list[Item]:
    """The items with what stands apart put together."""
    return rejoined(of_a_whole(with_units(with_cents(found))))


def _about_alerts(plain: str) -> bool:
    """`stop sending the morning alerts` is about the alerts, not about every text; so is
    `don't text me about boiling`."""
    return wish.about_one_thing(plain) or any(
        word in plain
        for word in (
            "morning",
            "alert",
            "reminder",
            "weekly",
            "daily",
            " before ",
            " after ",
            "so early",
            " during ",
            " while ",
            " when ",
            " until ",
            " at night",
        )
    )


def _take(clause: Clause, notes: Notes) -> None:
    if helper.meant(notes) and clause.holds("phone", "email"):
        clause.question = False
        helper.find(clause, notes)
        return
    if clause.question or clause.hypothetical or clause.aside or _ORDERS.match(clause.text):
        return
    ours = _from_others_trees(clause) or _for_others(clause) or cost.pays_others(clause)
    others = (clause.has("OTHERS") or _of_them(clause) or is_theirs(clause)) and not ours
    if others and not clause.has("ADD"):
        return
    if clause.negated and not _TOLD_IT.isdisjoint(clause.words()):
        clause.negated = False  # "never told you about the 11 gal from friday"
    set_aside(clause, notes)
    if unsure(clause, notes) or (not clause.plan and not clause.negated and of_whom(clause, notes)):
        return
    if _killed(clause, notes):
        return
    if clause.carried and clause.free("volume", "vessels"):
        said = clause.free("volume", "vessels")[0].text
        for item in clause.items:
            item.used = True
        notes.ask(
            f"{said}: done, or still to come? If done, text it like: got 12 gal.",
            ("done|it's done|yes done|got it", f"got {clause.spoken()}"),
            ("to come|not yet|later|planned", ""),
        )
        return
    if not clause.plan and not clause.negated and doubtful(clause, notes):
        return
    for name, find in _kinds_for(_NEEDED & (clause.sorts | clause.tags | clause.frame)):
        if clause.plan and name not in _PLANNED_STILL:
            continue
        if clause.negated and name != "sap":
            continue
        if clause.negated and clause.holds("volume", "vessels"):
            continue
        find(clause, notes)
    dangling(clause, notes)


_ORDERS = re.compile(
    r"(?:please |guys,? |hey,? |ok,? )*(?:stop|quit|no more|keep|start) "
    r"(?:putting|leaving|dumping|setting|throwing|filling|stacking|pouring|letting|spilling|using"
    r"|taking|pulling) (?!\d)|(?:please |guys,? |hey,? )*(?:remember to|make sure|be sure to|don't"
    r" forget to) (?!log|add|count|record|note|put|write|mark|text|save|keep)"
)
"""`stop putting full bags on the ground`: what others are told to do, or not to."""
_TOLD_IT = frozenset("told mentioned logged texted reported".split())


def _for_others(clause: Clause) -> bool:
    """`jarred 5 half pints for the neighbors`, `boiled 26 gal with my brother in law`: ours."""
    who = clause.first("OTHERS")
    return (
        who is not None
        and clause.has("BOTTLE", "DRAW", "BOIL")
        and any(each.text in ("for", "with") for each in clause.preceding(who, 3))
    )


def _killed(clause: Clause, notes: Notes) -> bool:
    """What is said of another year, of a book or in jest takes its whole sentence with it; only
    an amount beside it, in a clause of its own, is asked about."""
    here = [c for c in notes.sentence(clause) if not c.question]
    if not any(c.has("KILL") and not c.aside for c in here):
        return False
    past = any("last " in c.text for c in here)
    own = not clause.has("KILL") and clause.joint in ("", ",", "but", "and")
    if past and own and clause.free("volume") and not notes.doubts:
        notes.ask(f"{clause.free('volume')[0].text}: is that of now? If so, text it by itself.")
    return True


def _of_them(clause: Clause) -> bool:
    """`dave says his own tank overflowed and he is boiling`: theirs, as what came before."""
    if not clause.near("OTHERS"):
        return False
    first = clause.items[0]
    deed = clause.joint == "," and bool(first.tags & {"GATHER", "BOIL", "DRAW", "BOTTLE"})
    return deed or first.text in ("he", "she", "they", "he's", "she's")


def _from_others_trees(clause: Clause) -> bool:
    """`7 gal from the neighbor's trees`: sap of ours, from trees of theirs."""
    who = clause.first("OTHERS")
    if who is None:
        return False
    before = [each for each in clause.items if each.start < who.start]
    amounts = [each for each in before if each.sort == "volume"]
    return bool(amounts) and any(
        each.text in ("from", "off") and each.start > amounts[0].start for each in before
    )


def _understood(notes: Notes) -> Understanding:
    ordered = sorted(notes.noted, key=lambda noted: noted.at)
    doubt = _first_of(notes.doubts) if notes.doubts else None
    return Understanding(tuple(noted.reading for noted in ordered), doubt)


def _first_of(doubts: list[Doubt]) -> Doubt:
    """One question at a time; whoever is asked is told that more was left out."""
    if len(doubts) == 1:
        return doubts[0]
    return replace(doubts[0], question=f"{doubts[0].question} (Text the rest again after.)")
