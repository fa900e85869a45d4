"""What is left when nothing was recorded or asked, and the words for it."""

from __future__ import annotations

import itertools

from bot.reading import topics
from bot.reading.clause import Clause
from bot.reading.frames import FRAME_TAGS
from bot.reading.items import Item
from bot.reading.kinds import Chat, Question
from bot.reading.kinds.sugar import MOST_BRIX
from bot.reading.notes import Notes
from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.understanding import Doubt, Understanding

UNMARKED_SCORE = 12.0
"""How surely words that are not put as a question must be like one of the examples."""
SURE_SCORE = 20.0
"""The same, where a figure stands in the words: those had rather be asked about."""
WORD_OR_TWO = 2
SURE_OF_A_WORD = 6.0
"""The same for one word or two ("total"), which can be no liker."""
MOST_UNMARKED_WORDS = 25


_FIGURES = frozenset("number volume brix temp vessels hours mass length tree money cords".split())
_NOT_OURS = ("FOREIGN", "OTHERS", "GIFT", "PRICE", "EARN", "KILL")
_TALK = (*_NOT_OURS, "GREET", "THANKS", "SMALLTALK", "PLAN", "NOT", "PERHAPS")
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
    counts = any(item.sort != "tree" for _, item in figures)
    alone = len(figures) == 1 and all(len(clause.items) <= 2 for clause in notes.clauses)
    alone = alone and not any(clause.has("GIFT", "THANKS") for clause in notes.clauses)
    if alone and counts and len(notes.clauses) == 1:
        _ask_about(*figures[0], notes)
        return
    if _unmarked_question(notes, counts):
        return
    if _sap_without_amount(notes):
        notes.ask("How many gal of sap was that?", fill="{} gal of sap")
        return
    ours = [
        (clause, item)
        for clause, item in figures
        if not (clause.plan or clause.hypothetical or clause.has(*_NOT_OURS))
        and not _is_of_the_weather(clause, item)
        and not (item.vague and clause.has("THANKS"))
        and not _counts_other_things(clause, item)
    ]
    if ours and not notes.is_letter:
        _ask_about(*ours[0], notes)
        return
    words = sum(len(clause.words()) for clause in notes.clauses)
    talk = words >= TALK_WORDS or any(clause.has(*_TALK) for clause in notes.clauses)
    if ours or counts or talk or _speaks_of_the_weather(notes):
        notes.add(Chat(), 0)
        return
    notes.ask(f'I can\'t make out "{short(notes.text)}". Text it like: 12 gal at 2.2.')


def _speaks_of_the_weather(notes: Notes) -> bool:
    """`cold out there`, `snow stopped`: no misspelt record."""
    words = {word for clause in notes.clauses for word in clause.each_word}
    return not words.isdisjoint(_SKY) and words <= _SKY | _AROUND


_SKY = frozenset(
    "cold chilly warm hot windy wind snow snowing rain raining sleet sleeting freezing fog foggy "
    "sun sunny moon stars mud muddy icy hail".split()
)
_AROUND = frozenset(
    "it's its it is was are the so very really too pretty hard still out outside there here today "
    "tonight now again everywhere came came stopped quit started br brr brrr and man boy this "
    "morning".split()
)
_WEATHER = frozenset("outside sunny cloudy windy below high low highs lows".split())


_CORRECTS = ("that was ", "it was ", "that's ", "no ", "no, ")


def _is_of_the_weather(clause: Clause, item: Item) -> bool:
    """`45 outside and sunny`, `its 5 below`, `high of 6 today`, `minus 5 last night`."""
    if item.negative:
        return True
    return (
        item.sort == "number"
        and not _WEATHER.isdisjoint(clause.words())
        and not clause.has("SAP", "STORE", "BUCKET", "SUGAR", "TAPN")
    )


def _counts_other_things(clause: Clause, item: Item) -> bool:
    """`saw 3 turkeys`, `be there in 20`."""
    behind = clause.following(item, 1)
    before = [each.text for each in clause.preceding(item, 2)]
    if item.sort != "number" or "." in item.text:
        return False
    if not behind:
        return before[:1] == ["in"] and not clause.has("GATHER", "TAPN", "SETV")
    thing = behind[0]
    return (
        thing.sort == "word"
        and not thing.tags
        and thing.text.endswith("s")
        and thing.text not in PLAIN_WORDS | {"euros"}
        and not clause.has("GATHER", "SETV", "BOTTLE", "PULLV", "BURN", "BUCKET")
    )


_TELLS = ("burned ", "used up ", "we burned ", "i burned ", "burnt a ", "burnt half ", "burnt up ")
"""How a text begins that tells of wood, and asks nothing."""


def _unmarked_question(notes: Notes, has_figures: bool) -> bool:
    """`bags or buckets`, `finish temp`: like one of the examples, though no question in form."""
    words = sum(len(clause.words()) for clause in notes.clauses)
    strangers = any(clause.has("OTHERS", "KILL", "GIFT", "BROKEN") for clause in notes.clauses)
    priced = any(clause.has("PRICE", "RATE") for clause in notes.clauses) and "$" in notes.text
    denied = any(
        clause.negated and clause.frame & FRAME_TAGS and not clause.has("ASKHOW")
        for clause in notes.clauses
    )
    if notes.text.startswith(_CORRECTS) or notes.text.startswith(_TELLS):
        return False
    if not words or words > MOST_UNMARKED_WORDS or strangers or priced or denied:
        return False
    wanted = SURE_SCORE if has_figures else UNMARKED_SCORE
    hit = topics.asked(" ".join(clause.spoken() for clause in notes.clauses))
    first = [clause for clause in notes.clauses if clause.sentence == notes.clauses[0].sentence]
    if len(first) < len(notes.clauses) and (hit is None or hit.score < wanted):
        hit = topics.asked(
            " ".join(clause.spoken() for clause in first)
        )  # "am i overtapped. tired"
    if has_figures and any(clause.holds("lot") for clause in notes.clauses):
        return False  # "home lot 12, upper lot 8"
    named = any(clause.holds("tree") for clause in notes.clauses)
    if words <= WORD_OR_TWO and not has_figures and not named:
        wanted = SURE_OF_A_WORD
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
    unsaid = any(
        item.text in ("gallons", "gals", "quarts", "litres", "liters")
        for clause in notes.clauses
        for item in clause.of_sort("word")
        if clause.has("SAP", "GATHER")
    )
    full = any(
        clause.has("BUCKET") and clause.has("FULL") and not (clause.plan or clause.negated)
        for clause in notes.clauses
    )
    return gathered or garbled or unsaid or full or "of sap" in notes.text


def _talks(clause: Clause) -> bool:
    """`A2 bark is splitting`: words that we do not know, and no amount that is missing."""
    strange = any(
        item.sort == "word" and not item.tags and item.text not in PLAIN_WORDS
        for item in clause.items
    )
    return strange and not clause.has("GATHER", "SAP", "FULL", "SPECIES", "SUGAR")


def _ask_about(clause: Clause, item: Item, notes: Notes) -> None:
    if _is_a_list(notes):
        _ask_of_all(notes)
        return
    if item.sort == "tree":
        if _talks(clause):
            notes.add(Chat(), item.start)  # "A2 bark is splitting"
            return
        notes.ask(f"Tree {item.text}: how many gal?", fill=f"tree {item.text} {{}} gal")
        return
    if item.sort == "vessels" or (item.part and clause.has("BUCKET", "FULL")):
        where = f"tree {clause.tree} " if clause.tree else f"{clause.lot} " if clause.lot else ""
        notes.ask("How many gal of sap was that in all?", fill=f"{where}{{}} gal of sap")
        return
    if item.sort == "number" and len(clause.items) <= SHORT:
        ask_what(notes, clause, item)
        return
    notes.ask(f'I can\'t tell what "{short(notes.text)}" says. Text it like: 12 gal at 2.2.')


SHORT = 5
"""Items of a clause short enough for its figure to be asked about alone."""
_SAP_IN = {
    False: (
        ("gal|gals|gallons|sap|gallons of sap|gal of sap|gal sap|g|gallon", "gal of sap"),
        ("l|litres|liters|litre", "litres of sap"),
    ),
    True: (
        ("l|litres|liters|litre|sap|litres of sap|liters of sap", "litres of sap"),
        ("gal|gals|gallons|g|gallon", "gal of sap"),
    ),
}
_COUNTED_THINGS = (
    ("taps|tap|spiles", "taps"),
    ("syrup|gal of syrup|gallons of syrup", "gal of syrup"),
    ("brix|sugar|percent|%", "brix sap sugar"),
    ("pints", "pints bottled"),
    ("buckets|pails|full buckets", "full buckets"),
    ("dollars|bucks|dollar|$|money", "dollars"),
)
"""The words that answer "12 what?", and what then stands behind the figure."""


def ask_what(notes: Notes, clause: Clause, item: Item) -> None:
    """Asks what a bare figure counts. The day, the tree and all else that was said is kept."""
    if item.vague:
        notes.ask("How much was it? Text it like: 12 gal, or 3 pints of syrup.")
        return
    if _is_a_list(notes):
        _ask_of_all(notes)
        return
    fragment = notes.text[clause.items[0].start : clause.items[-1].end]
    figure = notes.text[item.start : item.end]
    if clause.has("DRAW"):
        _ask_what_was_drawn(notes, item)
        return
    counts = any("ITEMS" in each.tags for each in clause.following(item, 2))
    if clause.has("ITEMS") and not counts and not clause.has("GATHER", "SAP", "SYRUP", "SETV"):
        notes.ask(
            f"{figure}: is that dollars? If so, text it like: lids $6.",
            ("dollars|dollar|bucks|ok|yep|yeah|it is", fragment.replace(figure, f"${figure}", 1)),
        )
        return
    other = "Brix" if item.value <= MOST_BRIX else "gal of syrup"
    if float(item.value).is_integer():
        other = "taps"
    notes.ask(
        f"{item.value:g} what: gal of sap, or {other}?",
        *(
            (words, fragment.replace(figure, f"{figure} {thing}", 1))
            for words, thing in (*_SAP_IN[notes.profile.units == "metric"], *_COUNTED_THINGS)
        ),
    )


def _ask_what_was_drawn(notes: Notes, item: Item) -> None:
    """`drew 3.2`: syrup, of an unsaid measure."""
    metric = notes.profile.units == "metric"
    first, second = ("L", "mL") if metric else ("qt", "pints")
    units = (
        ("l|litres|liters|litre|liter", "ml") if metric else ("qt|qts|quarts|quart", "pints|pint")
    )
    notes.ask(
        f"{item.value:g} what did you draw off: {first} or {second}?",
        *(
            (words, f"drew off {item.value:g} {unit} of syrup")
            for words, unit in zip(units, (first, second), strict=True)
        ),
        ("gal|gallons|gallon", f"drew off {item.value:g} gal of syrup"),
    )


def _listed(notes: Notes) -> list[Item]:
    """The bare figures of a text that stand behind a lot, a tree or a day each."""
    items = [item for clause in notes.clauses for item in clause.items if item.sort != "sign"]
    return [
        item
        for before, item in itertools.pairwise(items)
        if item.sort == "number" and not item.article and before.sort in ("lot", "tree", "date")
    ]


def _is_a_list(notes: Notes) -> bool:
    """`ridge 12, brook 8`: all of it is asked about at once."""
    figures = [i for c in notes.clauses for i in c.items if i.sort in _FIGURES - {"tree"}]
    return len(figures) > 1 and len(_listed(notes)) == len(figures)


def _ask_of_all(notes: Notes) -> None:
    figures = _listed(notes)
    said = ", ".join(f"{item.value:g}" for item in figures[:3])

    def of(thing: str) -> str:
        text = notes.text
        for item in reversed(figures):
            text = f"{text[: item.end]} {thing}{text[item.end :]}"
        return text

    metric = notes.profile.units == "metric"
    notes.ask(
        f"{said} what: gal of sap, or Brix?",
        *((words, of(thing)) for words, thing in (*_SAP_IN[metric], *_COUNTED_THINGS)),
    )


def short(text: str) -> str:
    """A piece of a text that fits a question."""
    line = " ".join(text.split())
    return line if len(line) <= 40 else line[:37].rstrip() + "..."


def nothing(plain: str) -> Understanding:
    shown = short(plain)
    question = f'I can\'t read "{shown}".' if shown else "Nothing came through."
    return Understanding((), Doubt(question + " What do you mean? Text it like: 12 gal at 2.2."))
