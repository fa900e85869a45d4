"""The whole way from a text to what it means.

1. A lone carrier's word is settled at once.
2. tidy -> tokens -> items -> clauses.
3. A text that joins, undoes or amends is that and nothing else.
4. Clauses that ask, plan or suppose record nothing; what is asked is looked up.
5. Every kind is let at every other clause, in its order, and takes what is its own.
6. Totals that repeat their parts go; what is left over with a figure in it is asked about.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot.reading import items as item_stage
from bot.reading import kinds, tidy, tokens, topics
from bot.reading.clauses import Clause, clauses
from bot.reading.kinds import Chat, Question, Reading, Sap, helper
from bot.reading.kinds.help import KEYWORDS as HELP_WORDS
from bot.reading.kinds.help import SAID_HELP, Help
from bot.reading.kinds.start import KEYWORDS as START_WORDS
from bot.reading.kinds.start import SAID_IN, Start
from bot.reading.kinds.stop import KEYWORDS as STOP_WORDS
from bot.reading.kinds.stop import SAID_OUT, Stop
from bot.reading.kinds.undo import Undo
from bot.reading.notes import Noted, Notes
from bot.reading.understanding import Choice, Doubt, Profile, Understanding

_WHOLE = tuple(module for module in kinds.FAMILY if hasattr(module, "find_whole"))
_BY_CLAUSE = tuple(module for module in kinds.FAMILY if hasattr(module, "find"))
_KEYWORDS: dict[str, type[Reading]] = {
    **dict.fromkeys(STOP_WORDS, Stop),
    **dict.fromkeys(START_WORDS, Start),
    **dict.fromkeys(HELP_WORDS, Help),
}
MOST_CLAUSES = 80
"""Pieces of the longest text that is taken apart: three times what a long text has."""
_PLANNED_STILL = frozenset(("helper", "place", "bucket_size", "tree"))
"""Kinds that a word of planning does not undo: "my buckets will hold 2 gal"."""


def read(text: str, sent: datetime, profile: Profile | None = None) -> Understanding:
    """What one text means. `sent` is local, without offset. Never raises."""
    profile = profile if profile is not None else Profile()
    if len(text) > tidy.LONGEST:
        return Understanding((), Doubt("That is too long for me to read. Text it in pieces."))
    plain = tidy.tidy(text)
    keyword = plain.strip(" .!\n\t\"'")
    if keyword.rstrip("? ") in HELP_WORDS or keyword.rstrip("? ") in SAID_HELP:
        return Understanding((Help(),))
    if keyword in _KEYWORDS:
        return Understanding((_KEYWORDS[keyword](),))
    run = tokens.tokens(plain)
    if not any(token.shape != "sign" for token in run):
        return _nothing(plain)
    if len(run) < 12 and any(said in plain for said in SAID_OUT) and not _about_alerts(plain):
        return Understanding((Stop(),))
    if keyword in SAID_IN:
        return Understanding((Start(),))
    found = clauses(item_stage.items(run, sent, profile))
    if len(found) > MOST_CLAUSES:
        return Understanding((), Doubt("That is too much for one text. Text it in pieces."))
    notes = Notes(plain, sent, profile, found)
    if any(module.find_whole(notes) for module in _WHOLE):
        if notes.last(Undo) is not None:
            _add_questions(notes)
        return _understood(notes)
    for number, clause in enumerate(found):
        notes.clause_number = number
        _take(clause, notes)
    _settle_totals(notes)
    _add_questions(notes)
    if not notes.noted and not notes.doubts:
        _leftover(notes)
    return _understood(notes)


def _about_alerts(plain: str) -> bool:
    """`stop sending the morning alerts` is about the alerts, not about every text."""
    return any(word in plain for word in ("morning", "alert", "reminder", "weekly", "daily"))


def _take(clause: Clause, notes: Notes) -> None:
    if helper.meant(notes) and any(i.sort in ("phone", "email") for i in clause.items):
        clause.question = False
        helper.find(clause, notes)
        return
    if clause.question or clause.hypothetical:
        return
    if clause.has("OTHERS") and not clause.has("ADD") and not _from_others_trees(clause):
        return
    if _unsure(clause, notes):
        return
    if clause.near("KILL"):
        return
    if not clause.plan and not clause.negated and _doubtful(clause, notes):
        return
    for module in _BY_CLAUSE:
        name = module.__name__.rpartition(".")[2]
        if clause.plan and name not in _PLANNED_STILL:
            continue
        if clause.negated and name != "sap":
            continue
        if clause.negated and any(i.sort in ("volume", "vessels") for i in clause.items):
            continue
        module.find(clause, notes)
    _dangling(clause, notes)


def _dangling(clause: Clause, notes: Notes) -> None:
    """`sap: 14`, `got 5`: a bare figure right behind a word for sap must not be lost."""
    if clause.plan or clause.negated:
        return
    for item in clause.free("number"):
        before = clause.preceding(item, 2)
        after = clause.following(item, 1)
        near = next((each for each in before if each.sort == "word"), None)
        if near is None or not near.tags & {"SAP", "GATHER"} or item.part:
            continue
        if before and before[0].text in ("#", "no", "."):
            continue
        if (
            after
            and after[0].sort == "word"
            and after[0].text not in ("today", "total", "in", "now", "more", "so")
        ):
            continue
        item.used = True
        _ask_what(notes, f"{item.value:g}")
        return


_MEASURED = frozenset(
    ("number", "volume", "brix", "temp", "vessels", "hours", "mass", "length", "money", "cords")
)


def _doubtful(clause: Clause, notes: Notes) -> bool:
    """Asks about what no kind may take: a minus, a range, "a few", a day to come."""
    item = next(
        (
            i
            for i in clause.items
            if i.sort in _MEASURED and (i.negative or i.low is not None or i.vague)
        ),
        None,
    )
    fragment = notes.text[clause.items[0].start : clause.items[-1].end]
    if item is not None and not clause.has("FOREIGN") and _matters(clause, item):
        said = " ".join(notes.text[item.start : item.end].split())
        unit = said.split()[-1] if item.sort not in ("number", "vessels") and " " in said else ""
        fill = _safe_fill(fragment, notes.text[item.start : item.end], unit)
        if item.low is not None and item.high is not None:
            notes.ask(
                f"{item.low:g} to {item.high:g}: which shall I write down, "
                f"{item.low:g}, {item.value:g} or {item.high:g}?",
                fill=fill,
            )
        elif item.negative:
            notes.ask(f"I can't take minus {item.value:g}. What was it?", fill=fill)
        else:
            notes.ask(f'How many is "{said}"? Text the number.', fill=fill)
        return True
    vague_day = clause.first("OTHERDAY")
    if vague_day is not None and any(i.sort in _MEASURED for i in clause.items):
        fill = _safe_fill(fragment, notes.text[vague_day.start : vague_day.end], "")
        notes.ask("Which day was that?", fill=fill, number_only=False)
        return True
    days = [i for i in clause.items if i.sort == "date"]
    no_day = next((i for i in days if i.on is None and not i.ahead), None)
    if no_day is not None or len({i.on for i in days}) > 1:
        notes.ask("Which day was that? I can't tell from what you wrote.")
        return True
    less = clause.first("LESS")
    if less is not None and any(i.sort == "volume" for i in clause.following(less, 1)):
        volume = clause.following(less, 1)[0]
        fill = _safe_fill(fragment, notes.text[less.start : volume.end], volume.text.split()[-1])
        notes.ask("How much was it, then? Text the number.", fill=fill)
        return True
    day = next((i for i in days if i.ahead), None)
    if day is not None or clause.ahead:
        shown = "That day" if day is None else _short(day.text)
        open_day = (
            None if day is None else _safe_fill(fragment, notes.text[day.start : day.end], "")
        )
        notes.ask(f"{shown} is still to come. Which day was it?", fill=open_day, number_only=False)
        return True
    return False


def _from_others_trees(clause: Clause) -> bool:
    """`7 gal from the neighbor's trees`: sap of ours, from trees of theirs."""
    who = clause.first("OTHERS")
    if who is None:
        return False
    before = [each.text for each in clause.preceding(who, 2)]
    return bool({"from", "off"} & set(before)) and any(i.sort == "volume" for i in clause.items)


def _unsure(clause: Clause, notes: Notes) -> bool:
    """`8 pints, or was it 9`: nothing of such a sentence is taken."""
    if not clause.near("UNSURE", "PERHAPS") and " or " not in notes.text:
        return False
    here = [other for other in notes.clauses if other.sentence == clause.sentence]
    maybes = sum(_maybe_amounts(other) for other in here)
    bare = any(i.sort == "number" and not i.article for i in clause.items)
    twice = (
        maybes > 1
        or (maybes == 1 and bare and any(i.sort == "volume" for i in clause.items))
        or _one_or_other(clause)
    )
    if not twice and not (clause.near("UNSURE") or any(map(_or_amount, here))):
        return False
    if not notes.doubts and any(i.sort in _MEASURED for i in clause.items):
        notes.ask("Which of the two shall I write down? Text the whole thing again.")
    return True


def _maybe_amounts(clause: Clause) -> int:
    """How many amounts are said with a maybe."""
    return sum(
        "PERHAPS" in item.tags and any(n.sort in _MEASURED for n in clause.following(item, 1))
        for item in clause.items
    )


def _one_or_other(clause: Clause) -> bool:
    """`$12 or $15 for gaskets`."""
    return any(
        b.text == "or" and a.sort == c.sort and a.sort in _MEASURED
        for a, b, c in zip(clause.items, clause.items[1:], clause.items[2:], strict=False)
    )


def _or_amount(clause: Clause) -> bool:
    """`tapped 12, well 10, | or 12`."""
    return (
        len(clause.items) == 2
        and clause.items[0].text == "or"
        and clause.items[1].sort in _MEASURED
    )


def _matters(clause: Clause, item: object) -> bool:
    from bot.reading.items import Item

    assert isinstance(item, Item)
    if item.sort != "number" or item.negative:
        return True
    if item.vague:
        return clause.about("SETV", "PULLV", "COSTV", "BOTTLE", "POUR") and bool(
            clause.has("TAPN", "JARN", "BUCKET")
            or clause.about("COSTV")
            or "tapped" in clause.words()
        )
    return (
        bool(
            clause.frame
            & {
                "SETV",
                "PULLV",
                "TAPN",
                "BOTTLE",
                "SUGAR",
                "STORE",
                "PANN",
                "COSTV",
                "WATERN",
                "GATHER",
                "BUCKET",
            }
        )
        or clause.tree is not None
    )


def _safe_fill(fragment: str, part: str, unit: str) -> str:
    """The fragment with one part of it left open for the answer."""
    before, _, after = fragment.partition(part)
    before = before.replace("{", "").replace("}", "").rstrip("-").removesuffix("minus ")
    return f"{before}{{}} {unit}".rstrip() + after.replace("{", "").replace("}", "")


SURE_MARGIN = 6.0
"""How far a second question in one text must be ahead of its next topic to be answered too."""


def _add_questions(notes: Notes) -> None:
    """What is asked. Words that recorded nothing help to tell what the question is about."""
    found = notes.clauses
    sentences: dict[int, list[int]] = {}
    for number, clause in enumerate(found):
        if clause.question or (clause.hypothetical and _asks(found, clause.sentence)):
            sentences.setdefault(clause.sentence, []).append(number)
    if not sentences:
        return
    recorded = {noted.clause for noted in notes.noted}
    idle = [n for n in range(len(found)) if n not in recorded]
    if len(sentences) > 1:
        each = [(numbers[0], topics.asked(_text(found, numbers))) for numbers in sentences.values()]
        sure = [(at, hit) for at, hit in each if hit is not None and hit.margin >= SURE_MARGIN]
        if len({(hit.topic, hit.howto) for _, hit in sure}) > 1:
            for at, sure_hit in sure:
                _add_question(notes, at, sure_hit)
            return
    numbers = next(iter(sentences.values()))
    hit = topics.asked(_text(found, idle if len(idle) <= MOST_IDLE_CLAUSES else numbers))
    if hit is None:
        return
    plain_talk = not any(_speaks_of_the_trade(found[n]) for n in numbers)
    weak = hit.margin < WEAK_MARGIN and hit.score < WEAK_SCORE
    if plain_talk and notes.noted and numbers[0] < notes.noted[0].clause:
        return  # "know what we got? 12 gal": a way of telling
    if plain_talk and weak:
        notes.add(Chat(), found[numbers[0]].items[0].start)
        return
    _add_question(notes, numbers[0], hit)


WEAK_MARGIN = 1.5
WEAK_SCORE = 4.0
"""A question without a word of the trade that is no liker to any topic is small talk."""
_EVERYDAY = frozenset(
    (
        "ASKHOW ASKDO ASKME NOT PLAN IF PERHAPS ABOUT TOTAL MORE RATE GREET THANKS SMALLTALK IS "
        "HAVE INTO OBJECT ALL OVER GATHER WEAK STACK HOLD BURNISH KILL OTHERS FOREIGN COMPASS "
        "LOTN BOTH EACHN TWICE ADD "
    ).split()
)


def _speaks_of_the_trade(clause: Clause) -> bool:
    return bool(clause.tags - _EVERYDAY) or any(
        item.sort in ("volume", "brix", "temp", "length", "cords", "tree", "lot")
        for item in clause.items
    )


MOST_IDLE_CLAUSES = 5


def _text(found: list[Clause], numbers: list[int]) -> str:
    return " ".join(found[n].text for n in numbers)


def _add_question(notes: Notes, at: int, hit: topics.Asked) -> None:
    notes.clause_number = at
    start = notes.clauses[at].items[0].start
    if hit.topic == topics.NONE:
        notes.add(Chat(), start)
    else:
        notes.add(Question(topic=hit.topic, howto=hit.howto), start)


def _asks(found: list[Clause], sentence: int) -> bool:
    return any(clause.question for clause in found if clause.sentence == sentence)


def _settle_totals(notes: Notes) -> None:
    """`9 am and 5 pm, 14 total`: a total that repeats its parts is not one more amount."""
    saps = notes.all(Sap)
    if len(saps) < 2:
        return
    totals = [s for s in saps if notes.clauses[s.clause].has("TOTAL")]
    for total in totals:
        others = [s for s in saps if s is not total and _gallons(s) > 0]
        if not others:
            continue
        whole = sum(_gallons(s) for s in others)
        if abs(whole - _gallons(total)) < 0.01 * whole:
            notes.noted.remove(total)
            if isinstance(total.reading, Sap) and total.reading.brix is not None:
                for other in others:
                    if isinstance(other.reading, Sap) and other.reading.brix is None:
                        other.reading = replace(other.reading, brix=total.reading.brix)
            return
        if all(
            notes.clauses[s.clause].sentence == notes.clauses[total.clause].sentence for s in others
        ):
            for noted in (*others, total):
                notes.noted.remove(noted)
            notes.ask(
                f"The parts make {whole:g} gal, you say {_gallons(total):g} in all. Which?",
                fill="{} gal of sap",
            )
            return


def _gallons(noted: Noted) -> float:
    return noted.reading.gallons if isinstance(noted.reading, Sap) else 0.0


UNMARKED_SCORE = 12.0
"""How surely words that are not put as a question must be like one of the examples."""
SURE_SCORE = 20.0
"""The same, where a figure stands in the words: those had rather be asked about."""
MOST_UNMARKED_WORDS = 25


def _leftover(notes: Notes) -> None:
    """Nothing was recorded or asked: an unmarked question ("bags or buckets"), small talk,
    or a figure that needs a question."""
    figures = [
        (clause, item)
        for clause in notes.clauses
        for item in clause.items
        if item.sort
        in (
            "number",
            "volume",
            "brix",
            "temp",
            "vessels",
            "hours",
            "mass",
            "length",
            "tree",
            "money",
            "cords",
        )
        and not item.article
    ]
    idle = [
        clause
        for clause, _ in figures
        if clause.plan
        or clause.hypothetical
        or clause.has("FOREIGN", "OTHERS", "GIFT", "PRICE", "EARN", "KILL")
    ]
    plain_figures = figures and len(idle) < len(figures)
    hit = topics.asked(" ".join(clause.text for clause in notes.clauses))
    words = sum(len(clause.words()) for clause in notes.clauses)
    wanted = UNMARKED_SCORE if not figures else SURE_SCORE
    if any(clause.has("OTHERS", "KILL", "GIFT") for clause in notes.clauses):
        hit = None
    if (
        hit is not None and hit.topic != topics.NONE and hit.score >= wanted
        and words <= MOST_UNMARKED_WORDS
    ):  # fmt: skip
        notes.add(Question(topic=hit.topic, howto=hit.howto), 0)
        return
    if any(
        clause.has("GATHER")
        and clause.has("STORE", "SAP")
        and not clause.plan
        and not clause.negated
        for clause in notes.clauses
    ):
        notes.ask("How many gal of sap was that?", fill="{} gal of sap")
        return
    if "of sap" in notes.text or any(
        item.text[:1].isdigit() and item.sort == "word"
        for clause in notes.clauses
        for item in clause.items
    ):
        notes.ask("How many gal of sap was that?", fill="{} gal of sap")
        return
    if plain_figures:
        clause, item = next((c, i) for c, i in figures if c not in idle)
        if len(notes.clauses) > 6:
            notes.add(Chat(), 0)
            return
        _ask_about(clause, item, notes)
        return
    talk = any(
        clause.has(
            "GREET", "THANKS", "SMALLTALK", "PLAN", "FOREIGN", "OTHERS", "GIFT", "NOT", "PERHAPS"
        )
        for clause in notes.clauses
    )
    if talk or words >= 3:
        notes.add(Chat(), 0)
        return
    notes.ask(f'I can\'t make out "{_short(notes.text)}". Text it like: 12 gal at 2.2.')


def _ask_about(clause: Clause, item: object, notes: Notes) -> None:
    from bot.reading.items import Item

    assert isinstance(item, Item)
    said = f"{item.value:g}"
    if item.sort == "tree":
        notes.ask(f"Tree {item.text}: how many gal?", fill=f"tree {item.text} {{}} gal")
        return
    if item.sort == "number" and len(clause.items) <= 4:
        _ask_what(notes, said)
        return
    notes.ask(f'I can\'t tell what "{_short(notes.text)}" says. Text it like: 12 gal at 2.2.')


def _ask_what(notes: Notes, said: str) -> None:
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


def _short(text: str) -> str:
    """A piece of a text that fits a question."""
    line = " ".join(text.split())
    return line if len(line) <= 40 else line[:37].rstrip() + "..."


def _nothing(plain: str) -> Understanding:
    shown = _short(plain)
    question = f'I can\'t read "{shown}".' if shown else "Nothing came through."
    return Understanding((), Doubt(question + " What do you mean? Text it like: 12 gal at 2.2."))


def _understood(notes: Notes) -> Understanding:
    ordered = sorted(notes.noted, key=lambda noted: noted.at)
    doubt = notes.doubts[0] if notes.doubts else None
    return Understanding(tuple(noted.reading for noted in ordered), doubt)


def settle(doubt: Doubt, answer: str) -> str | None:
    """The text that an answer to a doubt makes; "" records nothing, None does not fit."""
    said = tidy.tidy(answer).strip(" .!?\n")
    for choice in doubt.choices:
        if said in choice.words:
            return choice.text
    bare = said.removeprefix("it was ").removeprefix("it's ").removeprefix("was ")
    bare = bare.removeprefix("the ").removeprefix("a ").removeprefix("of ").strip()
    for choice in doubt.choices:
        if bare in choice.words:
            return choice.text
    return _filled(doubt, bare)


def _filled(doubt: Doubt, said: str) -> str | None:
    if doubt.fill is None or not said or len(said) > LONGEST_ANSWER:
        return None
    if not doubt.number_only:
        return doubt.fill.format(said)
    run = tokens.tokens(said)
    from bot.reading import numbers

    number = numbers.match(run, 0) if run else None
    if number is None or number.article or number.vague:
        return None
    rest = " ".join(token.text for token in run[number.length :])
    before, _, after = doubt.fill.partition("{}")
    if rest and not after.strip().startswith(rest.rstrip("s")) and rest not in _SAYABLE_UNITS:
        return None
    if rest and rest in _SAYABLE_UNITS and after.strip().split(" ")[0] in _SAYABLE_UNITS:
        after = " " + rest + " " + " ".join(after.split()[1:])
    return f"{before}{number.value:g}{after}"


LONGEST_ANSWER = 40
_SAYABLE_UNITS = frozenset(
    "gal gals gallon gallons l litres liters litre liter qt "
    "qts quart quarts pint pints brix % percent f c "
    "hours hrs hour inches in taps lb lbs cord cords dollars bucks of".split()
)

__all__ = ["Choice", "read", "settle"]
