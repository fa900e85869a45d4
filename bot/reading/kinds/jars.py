"""Syrup bottled: how many jars of which size."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot import units
from bot.reading.kinds.base import Reading
from bot.reading.kinds.cost import sold_at
from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.volumes import CONTAINER_UNITS, is_given, role

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("BOTTLE", "JARN")
CUES = {
    "BOTTLE": (
        "i_put_up we_put_up canning jarring bottling bottled bottle bottles_up canned can_up "
        "jarred jarred_up "
        "put_it_in_jars put_them_in_jars put_it_up put_in_jars in_jars into_jars it_in_jars "
        "put_by laid_by did_up jar_up jugged jugging put_up "
        "packed packaged bottled_up canned_up capped sealed "
        "filled "
    ),
    "JARN": (
        "tin tins jar jars bottle bottles mason masons canning_jar canning_jars "
        "jugs_of_syrup growler growlers leaf_bottle flask flasks glass_jug "
    ),
}

LARGEST_GALLONS = 1.0
"""What the largest jar or jug for syrup holds (common practice, no source)."""
MOST_JARS = 2000
"""More than the syrup of 300 taps fills in a season of half pints (NASS: 0.3 gal a tap)."""


@dataclass(frozen=True, slots=True)
class Jar:
    """`count` jars that hold `gallons_each` US gallons."""

    count: int
    gallons_each: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Jars(Reading):
    """Syrup bottled: how many jars of which size."""

    kind: ClassVar[str] = "jars"

    jars: tuple[Jar, ...]
    on: date


def find(clause: Clause, notes: Notes) -> None:
    """Counts of jars with a known size. All jars of one sentence are one reading."""
    if not (clause.about("BOTTLE") or clause.has("JARN")) or clause.about("COSTV", "POUR"):
        return
    bottled = clause.has("BOTTLE") and not {"sold", "sell"} & set(clause.words())
    if is_given(clause) or clause.has("BUY", "BROKEN"):
        return
    if clause.has("PRICE", "EARN") and not bottled:
        return
    prices = clause.of_sort("money")
    if prices and not (bottled and all(sold_at(clause, item) for item in prices)):
        return
    if not (clause.has("JARN") or _bottled(clause)) or _packed(clause):
        return
    if not clause.about("BOTTLE", "DRAW") and _paid_beside(clause, notes):
        return
    if _some_of_them(clause, notes) or _empty(clause):
        return
    if any(_of_something_else(clause, item) for item in clause.free("volume")):
        notes.ask("Of syrup? If so, text it like: bottled 6 pints.")
        for item in clause.free("volume"):
            item.used = True
        return  # "canned 14 quarts of tomatoes"
    said = notes.text[clause.items[0].start : clause.items[-1].end]
    if clause.has("TWICE") or _SIZES_BOTH_WAYS.search(said):
        notes.ask(
            "How many jars, and of what size? Like 6 pints.", fill="bottled {}", number_only=False
        )
        return
    found: list[Jar] = []
    start = clause.items[0].start
    listed = _listed(clause, notes)
    volumes = [item for item in clause.free("volume") if role(clause, item) == "jars"]
    if listed:
        volumes = []
    for item in volumes:
        made = _sized(clause, notes, item)
        if made is None:
            return
        found += made
    if found:
        for item in clause.free("number"):
            item.used = True
        _write(notes, clause, found, start)
        return
    _unsized(clause, notes)


_NOT_FILLED = frozenset(
    "washed wash empty bought ordered need needs found left sterilize sterilized sterilizing "
    "cleaned clean scrubbed arrived unpacked spare".split()
)


def _paid_beside(clause: Clause, notes: Notes) -> bool:
    """`receipt: $53.20, 48 half pint bottles`: what was bought."""
    return any(
        item.sort == "money" and not sold_at(other, item)
        for other in notes.sentence(clause)
        for item in other.items
    )


def _empty(clause: Clause) -> bool:
    """`washed 24 pint jars`, `picked up 24 half pint jars`, `18 empty jars left`."""
    words = set(clause.words())
    boiled = clause.has("BOIL") and not clause.has("BOTTLE")
    picked = "picked up" in clause.text and not clause.has("BOTTLE")
    return boiled or picked or bool(words & _NOT_FILLED and "BOTTLE" not in clause.tags)


def _some_of_them(clause: Clause, notes: Notes) -> bool:
    """`12 quart jars, filled 5 of them`: those that stand there, and those that hold syrup."""
    sizes = clause.free("volume")
    following = notes.clause_after()
    if clause.has("BOTTLE") or len(sizes) != 1 or sizes[0].parts or not sizes[0].value:
        return False
    if following is None or following.sentence != clause.sentence or following.negated:
        return False
    counts = following.free("number")
    deed = following.has("BOTTLE") or "used" in following.words()
    filled = deed and not following.free("volume", "vessels")
    if not filled or len(counts) != 1 or not {"them", "those"} & set(following.words()):
        return False
    sizes[0].used = counts[0].used = True
    measured = sizes[0].unit in ("fluid_ounce", "milliliter")  # "16 oz bottles - filled 13 of them"
    stand = MOST_JARS if measured else sizes[0].value
    count, each = counts[0].value, sizes[0].gallons / (1.0 if measured else sizes[0].value)
    if not 0 < count <= stand or count != int(count):
        notes.ask("How many jars were filled? Like 6 pints.", fill="bottled {}", number_only=False)
        return True
    _write(notes, following if following.on else clause, [Jar(int(count), each)], sizes[0].start)
    return True


_GRADES = frozenset(
    "amber medium dark gold golden light fancy goodness grade liquid robust".split()
)


def _of_something_else(clause: Clause, item: Item) -> bool:
    """`14 quarts of tomatoes`: of what we do not know."""
    behind = clause.following(item, 2)
    thing = behind[1] if len(behind) > 1 and behind[0].text == "of" else None
    return (
        thing is not None
        and thing.sort == "word"
        and not thing.tags
        and thing.text.isalpha()
        and thing.text not in PLAIN_WORDS | _GRADES
    )


def _packed(clause: Clause) -> bool:
    """`a case of 12 quart jars`: as they are sold, empty."""
    return not clause.has("BOTTLE") and any(
        item.text.removeprefix("a ") in ("case", "box", "flat", "crate")
        and [each.text for each in clause.following(item, 1)] == ["of"]
        for item in clause.items
    )


def _bottled(clause: Clause) -> bool:
    """Was it bottled, and not a bucket or a pan filled?"""
    deed = clause.first("BOTTLE")
    if deed is not None and deed.text == "filled":
        sized = any(i.unit in CONTAINER_UNITS for i in clause.items) and not clause.has(
            "BUCKET", "STORE"
        )
        return clause.has("JARN") or sized or bool({"jug", "jugs"} & clause.each_word)
    if deed is None:
        return True
    return not (clause.has("STORE") and deed.text == "put up")


def _sized(clause: Clause, notes: Notes, item: Item) -> list[Jar] | None:
    """The jars that one amount tells of; None after a question."""
    item.used = True
    pieces = item.parts or (item,)
    out: list[Jar] = []
    for piece in pieces:
        count, each = _count_and_size(clause, notes, item, piece)
        if count is None:
            notes.ask(
                f"Bottled {piece.text}: in what jars? Text the count and size, like 6 pints.",
                fill="bottled {}",
                number_only=False,
            )
            return None
        if not 0 < count <= MOST_JARS or count != int(count):
            notes.ask(f"{count:g} jars? How many was it?", fill=f"bottled {{}} x {piece.text}")
            return None
        out.append(Jar(int(count), each))
    return out


def _count_and_size(
    clause: Clause, notes: Notes, whole: Item, piece: Item
) -> tuple[float | None, float]:
    one = piece.gallons / piece.value if piece.value else 0.0
    named = [each for each in clause.free("number") if each.start < piece.start and not each.part]
    small = piece.unit in ("milliliter", "fluid_ounce") and piece is whole
    noun = any(each.tags & {"JARN", "BOTTLE"} for each in clause.items if each.start < piece.start)
    if small and len(named) == 1 and noun and named[0].value % 1 == 0:
        named[0].used = True
        return named[0].value, piece.gallons  # "9 maple leaf bottles 250ml"
    if piece is whole and any(
        each.text in ("each", "apiece", "ea", "a piece") for each in clause.following(piece, 1)
    ):
        return _counted_before(clause, notes), piece.gallons
    if piece is whole:
        ahead = clause.preceding(piece, 5)
        of_the = next((n for n, each in enumerate(ahead) if each.text == "of"), None)
        if of_the is not None and all(
            each.sort == "word" and not each.tags for each in ahead[:of_the]
        ):
            ahead = ahead[of_the:]  # "14 of the cute little 4 oz bottles"
        before = [each for each in ahead[:3] if each.text not in _BETWEEN]
        if before and before[0].sort == "number" and not before[0].used:
            before[0].used = True
            return before[0].value, piece.gallons
        after = [
            each
            for each in clause.following(piece, 4)
            if each.text not in ("x", "jars", "bottles", "-", "*", "jar", "bottle")
        ]
        if (
            after
            and after[0].sort == "number"
            and not after[0].used
            and any(each.text in ("x", "*") for each in clause.following(piece, 3))
        ):
            after[0].used = True
            return after[0].value, piece.gallons
        jar_follows = any(
            "JARN" in each.tags or each.text in ("jug", "jugs")
            for each in clause.following(piece, 1)
        )
        article_before = bool(before) and before[0].text in ("a", "an", "one")
        if piece.unit in ("fluid_ounce", "milliliter") or (jar_follows and article_before):
            several = any(
                each.text in ("bottles", "jars", "jugs") for each in clause.following(piece, 1)
            )
            if several and not article_before:
                return _counted_after(clause, notes), piece.gallons
            return (
                (1.0, piece.gallons) if jar_follows or piece.unit == "milliliter" else (None, 0.0)
            )
    behind = _counted_behind(clause, notes) if piece is whole and clause.has("JARN") else None
    if behind is not None and not piece.value > 1:
        behind.used = True
        return behind.value, piece.gallons
    if piece is whole and piece.value < 1 and _one_jar(clause, piece):
        return 1.0, piece.gallons
    if piece is whole and piece.unit in ("gallon", "liter", "imperial_gallon"):
        jar_follows = any(
            "JARN" in each.tags or each.text in ("jug", "jugs")
            for each in clause.following(piece, 1)
        )
        if not jar_follows:
            return None, 0.0
    return piece.value, one


def _one_jar(clause: Clause, size: Item) -> bool:
    """`a half gallon jar`: one of that size, and not half a one."""
    behind = [each.text for each in clause.following(size, 1)]
    return behind in (["jar"], ["jug"], ["bottle"], ["growler"])


def _counted_after(clause: Clause, notes: Notes) -> float | None:
    """`put it in 12 oz bottles, got eight of them`."""
    following = notes.clause_after()
    if following is None or following.sentence != clause.sentence or following.free("volume"):
        return None
    counts = following.free("number")
    if len(counts) != 1:
        return None
    counts[0].used = True
    return counts[0].value


def _counted_behind(clause: Clause, notes: Notes) -> Item | None:
    """`1/2 gal jars, three of them`: the count that follows the size of one, and no more."""
    following = notes.clause_after()
    counts = clause.free("number")
    if not counts and following is not None and following.sentence == clause.sentence:
        counts = [] if following.free("volume") or following.plan else following.free("number")
        if counts and following.items[0] is not counts[0]:
            return None
        clause = following
    if len(counts) != 1 or counts[0].part:
        return None
    behind = [each.text for each in clause.following(counts[0], 3)]
    return counts[0] if behind in ([], ["of", "them"], ["of", "those"], ["of", "em"]) else None


def _counted_before(clause: Clause, notes: Notes) -> float | None:
    """`filled 30 nips, 50 ml each`: the count that stands before the size."""
    for other in (clause, notes.clause_before() or clause):
        for item in other.free("number"):
            item.used = True
            return item.value
    return None


_BETWEEN = frozenset(
    (
        "x",
        "of",
        "-",
        "*",
        "the",
        "little",
        "full",
        "@",
        "bottles",
        "jars",
        "bottle",
        "jar",
        "tins",
        "cans",
        "at",
    )
)


def _write(notes: Notes, clause: Clause, found: list[Jar], start: int) -> None:
    """Puts jars to those that the text told already of the same day, or begins a reading."""
    before, on = notes.last(Jars), notes.day(clause)
    if before is not None and isinstance(before.reading, Jars):
        told, old = notes.clauses[before.clause], before.reading
        if told.on is None and told.sentence == clause.sentence:
            old = replace(old, on=on)  # "filled 9 pints + 3 quarts on monday"
        if old.on == on:
            before.reading = replace(old, jars=old.jars + tuple(found))
            return
    notes.add(Jars(jars=tuple(found), on=on), start)


_SIZES = frozenset(("pint", "pints", "quart", "quarts", "half pint", "half pints"))


def _size_next(clause: Clause, notes: Notes) -> Item | None:
    """`20 leaf bottles of syrup, 250 ml`: the size follows the count."""
    following = notes.clause_after()
    if following is None or following.sentence != clause.sentence or following.free("number"):
        return None
    sizes = following.free("volume")
    one = len(sizes) == 1 and len(following.items) <= 3 and sizes[0].gallons <= LARGEST_GALLONS
    return sizes[0] if one and not following.has("BOIL", "GATHER", "DRAW") else None


def _listed(clause: Clause, notes: Notes) -> list[tuple[Item, Jar]]:
    """`half pints: 10`, `pints - 4`: the size before the count."""
    said = notes.text[clause.items[0].start : clause.items[-1].end]
    numbers = clause.free("number")
    made = []
    for found in _SIZE_FIRST.finditer(said):
        count = next((item for item in numbers if item.text == found[2]), None)
        if count is None:
            continue
        numbers.remove(count)
        made.append((count, Jar(int(found[2]), _gallons_of(found[1]))))
    return made


def _gallons_of(size: str) -> float:
    """US gallons in a jar of that name: `pints`, `half pint`."""
    unit = size.removesuffix("s").removeprefix("half ")
    return units.factor(unit, "gallon") / (2 if size.startswith("half") else 1)


_SIZES_BOTH_WAYS = re.compile(r"\b(?:pints?|quarts?) ?[:=] ?\d+ (?:half )?(?:pints?|quarts?) ?[:=]")
_SIZE_FIRST = re.compile(r"\b(half pints?|pints?|quarts?) ?[:=-] ?(\d+)\b")


def _unsized(clause: Clause, notes: Notes) -> None:
    numbers = [item for item in clause.free("number") if not item.part]
    listed = _listed(clause, notes)
    for number, jar in listed:
        number.used = True
        for item in clause.free("volume"):
            item.used = True
        _write(notes, clause, [jar], number.start)
    if listed:
        return
    if not numbers:
        behind = _counted_behind(clause, notes)
        sizes = [word for word in clause.words() if word in _SIZES]
        if behind is not None and len(sizes) == 1:
            behind.used = True
            _write(notes, clause, [Jar(int(behind.value), _gallons_of(sizes[0]))], behind.start)
            return
        if clause.has("BOTTLE") and ("JARN" in clause.tags or _SIZES & set(clause.words())):
            notes.ask(
                "How many jars, and of what size? Like 6 pints.",
                fill="bottled {}",
                number_only=False,
            )
        return
    size = _size_next(clause, notes)
    if size is not None and clause.has("JARN"):
        size.used = numbers[0].used = True
        _write(notes, clause, [Jar(int(numbers[0].value), size.gallons)], numbers[0].start)
        return
    named = [word for word in clause.words() if word in _SIZES]
    goes_on = notes.last(Jars) is not None and clause.about("BOTTLE") and len(named) == 1
    if not clause.has("JARN") and not clause.has("BOTTLE") and not goes_on:
        return
    if len(named) == 1 and len(numbers) == 1 and numbers[0].value % 1 == 0 and numbers[0].value > 0:
        numbers[0].used = True  # "filled 10 of the quart jars"
        _write(notes, clause, [Jar(int(numbers[0].value), _gallons_of(named[0]))], numbers[0].start)
        return
    count = numbers[0].value
    numbers[0].used = True
    if notes.profile.units == "metric":
        notes.ask(
            f"{count:g} jars of what size: 250 mL, 500 mL or 1 L?",
            ("250|250 ml", f"bottled {count:g} x 250 ml"),
            ("500|500 ml|half litre|half liter|half a litre", f"bottled {count:g} x 500 ml"),
            ("1|1 l|1l|1 litre|1 liter|litre|litres", f"bottled {count:g} x 1 litre"),
            fill=f"bottled {count:g} x {{}}",
            number_only=False,
        )
        return
    notes.ask(
        f"{count:g} jars of what size: pint, half pint or quart?",
        ("pint|pints", f"bottled {count:g} pints"),
        ("half pint|half pints|half", f"bottled {count:g} half pints"),
        ("quart|quarts", f"bottled {count:g} quarts"),
        fill=f"bottled {count:g} x {{}}",
        number_only=False,
    )
