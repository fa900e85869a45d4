"""Third stage: tokens become items: quantities with their units, dates, names, words with tags.

Order of work at each token: the sender's own names, a date phrase, a quantity, a phrase of
our word list, a word (corrected if misspelt).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from functools import lru_cache

from rapidfuzz.distance import OSA

from bot import units
from bot.reading import dates, lexicon, numbers, spelling
from bot.reading.tidy import tidy
from bot.reading.tokens import Token, tokens
from bot.reading.understanding import Profile

_NO_TAGS: frozenset[str] = frozenset()
_FACTORS_IN_PINT = {"half_gallon": ("gallon", 0.5), "half_pint": ("pint", 0.5)}


@dataclass(slots=True)
class Item:
    """One meaningful piece of a text.

    sort: volume, brix, temp, length, hours, cords, mass, money, number, date, clock, tree,
    lot, phone, email, postal, word or sign. value: in the unit as written. unit: Pint's name
    of the unit as written. parts: a compound amount's pieces. low, high: ends of a range.
    """

    sort: str
    text: str
    start: int
    end: int
    value: float = 0.0
    unit: str = ""
    tags: frozenset[str] = _NO_TAGS
    on: date | None = None
    ahead: bool = False
    parts: tuple[Item, ...] = ()
    low: float | None = None
    high: float | None = None
    vague: bool = False
    article: bool = False
    negative: bool = False
    part: bool = False
    used: bool = field(default=False, compare=False)

    @property
    def gallons(self) -> float:
        """A volume in US gallons."""
        if self.parts:
            return sum(piece.gallons for piece in self.parts)
        return volume_gallons(self.value, self.unit)

    def degrees_f(self, celsius_below: float) -> float:
        """A temperature in Fahrenheit; one with no scale is Celsius below `celsius_below`."""
        bare = self.unit not in ("degC", "degF")
        is_celsius = self.unit == "degC" or (bare and self.value < celsius_below)
        return units.fahrenheit(self.value) if is_celsius else self.value


def volume_gallons(value: float, unit: str) -> float:
    """`value` of a unit in US gallons."""
    name, share = _FACTORS_IN_PINT.get(unit, (unit, 1.0))
    return value * share * units.factor(name, "gallon")


def items(run: Sequence[Token], sent: datetime, profile: Profile) -> list[Item]:
    """The items of one text, in order. `sent` is local time."""
    names = _names(profile)
    _correct(run, {word for words, _, _ in names for word in words})
    found: list[Item] = []
    i = 0
    while i < len(run):
        lone = _by_initial(run, i, profile) if len(run[i].text) == 1 else None
        item, length = lone or _at(run, i, sent, names, found)
        found.append(item)
        i += length or 1
    sorts = {item.sort for item in found}
    if "tree" in sorts:
        _name_more_trees(found)
    return _joined(found) if "volume" in sorts else found


_TREE_DOES = frozenset("gave gives had has made did ran yielded produced got filled".split())


def _name_more_trees(found: list[Item]) -> None:
    """`tree 12 had 3 gal, 13 had 1 gal`, `from tree 4, 3 gal. from 11, 1.5 gal`: once a tree was
    named, a whole number in its place is one too."""
    named = False
    for n, item in enumerate(found):
        if item.sort == "tree":
            named = True
        if not named or item.sort != "number" or not item.text.isdigit() or item.low is not None:
            continue
        heads = n == 0 or found[n - 1].sort == "sign" or found[n - 1].text in ("and", "&")
        behind = [each.text for each in found[n + 1 : n + 2]]
        figure = [each.sort in ("volume", "brix") for each in found[n + 1 : n + 4]]
        does = behind[:1] and behind[0] in _TREE_DOES and any(figure)
        first = n > 1 and found[n - 1].text == "from" and found[n - 2].sort == "sign"
        whence = first and behind in ([","], [":"]) and figure[1:2] == [True]
        if (heads and does) or whence:
            item.sort = "tree"


def _correct(run: Sequence[Token], own: set[str]) -> None:
    """Puts misspelt words right, but for the sender's own names."""
    for token in run:
        if token.shape == "word" and token.text not in own:
            token.text = spelling.corrected(token.text)
            if own and len(token.text) >= LEAST_OF_A_NAME:
                token.text = _own_name(token.text, own)


LEAST_OF_A_NAME = 6
"""Letters of a sender's own name from which one slip in it is forgiven (our own)."""


def _own_name(word: str, own: set[str]) -> str:
    """`pavillion` as the pavilion that the sender named a lot by; every other word as it came."""
    if word in own or lexicon.TAGS.get(word):
        return word
    close = [
        name
        for name in own
        if len(name) >= LEAST_OF_A_NAME
        and name[:2] == word[:2]
        and OSA.distance(word, name, score_cutoff=1) <= 1
    ]
    return close[0] if len(close) == 1 else word


@lru_cache(maxsize=1024)
def _words_of(label: str) -> tuple[str, ...]:
    """A sender's own name as it would stand in a text."""
    return tuple(token.text for token in tokens(tidy(label)))


def _names(profile: Profile) -> list[tuple[tuple[str, ...], str, str]]:
    """The sender's own names as (words, sort, name), the longest first."""
    out = [
        (_words_of(label), sort, label)
        for sort, labels in (("tree", profile.tree_labels), ("lot", profile.lots))
        for label in labels
        if label.strip()
    ]
    return sorted(out, key=lambda entry: -len(entry[0]))


def _at(
    run: Sequence[Token],
    i: int,
    sent: datetime,
    names: list[tuple[tuple[str, ...], str, str]],
    before: list[Item],
) -> tuple[Item, int]:
    token = run[i]
    named = _named(run, i, names) if names else None
    if named is not None:
        return named
    shape = token.shape
    if shape == "word" and token.text not in _BEGIN_MORE:
        return _word_or_deed(run, i, sent)
    if shape in ("email", "phone", "postal"):
        return Item(shape, token.text, token.start, token.end), 1
    if shape == "money":
        return Item(
            "money", token.text, token.start, token.end, float(token.text.strip("$ ")), "dollar"
        ), 1
    if shape == "clock":
        return Item("clock", token.text, token.start, token.end, _clock(token.text)), 1
    tree = _tree(run, i)
    if tree is not None:
        return tree
    if shape in ("sign", "newline"):
        return Item("sign", "\n" if shape == "newline" else token.text, token.start, token.end), 1
    if token.text in _MIDDAYS:
        return Item("clock", token.text, token.start, token.end, _MIDDAYS[token.text]), 1
    dated = dates.match(run, i, sent)
    if dated is not None:
        end = run[i + dated.length - 1].end
        words = " ".join(t.text for t in run[i : i + dated.length])
        return Item("date", words, token.start, end, on=dated.on, ahead=dated.ahead), dated.length
    quantity = _quantity(run, i, before)
    if quantity is not None:
        return quantity
    return _word_or_deed(run, i, sent)


_SPOKEN_UNITS = frozenset(("gallon", "pint", "quart", "litre", "liter"))
_HALF_PINTS = frozenset(("half", "halfpint", "halfpints"))
_MIDDAYS = {"noon": 12.0, "midday": 12.0, "midnight": 0.0}
_TREE_WORDS = frozenset(("tree", "trees"))
_NUMBER_SIGNS = frozenset(("no", "number", "nr"))
_BEGIN_MORE = frozenset(
    (
        *(*dates.BEGIN, *numbers.BEGIN, *_MIDDAYS),
        *(*_TREE_WORDS, *_NUMBER_SIGNS, *_SPOKEN_UNITS, *_HALF_PINTS),
    )
)
"""The words that can begin more than themselves or a phrase of our word list."""


def _word_or_deed(run: Sequence[Token], i: int, sent: datetime) -> tuple[Item, int]:
    """A word or a phrase; a deed without the `on` of a day behind it."""
    item, length = _word(run, i)
    last = i + length - 1
    lit = length > 1 and run[last].text == "on" and "LIT" in item.tags
    if lit and dates.match(run, last, sent) is not None:
        return _word(run[:last], i)  # "in the syrup pan | on monday"
    return item, length


def _by_initial(run: Sequence[Token], i: int, profile: Profile) -> tuple[Item, int] | None:
    """`E lot`, where one lot's name begins so."""
    letter = run[i].text
    if letter in ("a", "i") or i + 1 >= len(run) or run[i + 1].text != "lot":
        return None
    meant = [lot for lot in profile.lots if lot.casefold().startswith(letter)]
    if len(meant) != 1:
        return None
    return Item("lot", meant[0], run[i].start, run[i + 1].end), 2


_LOT_NOUNS = frozenset(("lot", "woodlot", "bush", "stand", "woods"))


def _named(
    run: Sequence[Token], i: int, names: list[tuple[tuple[str, ...], str, str]]
) -> tuple[Item, int] | None:
    for words, sort, name in names:
        if run[i].text != words[0] and run[i].text != words[0] + "'s":
            continue
        if tuple(token.text for token in run[i : i + len(words)]) == words or (
            len(words) == 1 and run[i].text == words[0] + "'s"
        ):
            if sort == "tree" and len(words) == 1 and (len(name) == 1 or name.isdigit()):
                continue  # a tree called 7 or A is told from 7 and a gallon by the word "tree"
            length = len(words)
            after = run[i + length].text if i + length < len(run) else ""
            if sort == "lot" and after in _LOT_NOUNS and not name.endswith(after):
                length += 1  # "home lot"
            end = run[i + length - 1].end
            return Item(sort, name, run[i].start, end), length
    return None


def _is_a_letter(run: Sequence[Token], j: int) -> bool:
    """`tree b`, and `tree a sugar maple`; but not `tree a day`."""
    text = run[j].text
    if len(text) != 1 or not text.isalpha() or run[j].shape != "word" or text == "i":
        return False
    following = run[j + 1] if j + 1 < len(run) else None
    if text != "a" or following is None:
        return True
    told = following.text in _OF_A_TREE_CALLED_A or following.shape == "number"
    return told or "SPECIES" in _word(run, j + 1)[0].tags


_OF_A_TREE_CALLED_A = frozenset("gave gives is has had was filled tested ran doing : ?".split())


_OF_A_TREE = frozenset("is gave has looks".split())
"""Behind `no. 8` at the start of a text: a tree is spoken of, and nothing is put right."""


def _tree(run: Sequence[Token], i: int) -> tuple[Item, int] | None:
    """`tree 7`, `tree #7`, `tree no 7`, `tree a3`, `#7` where no run or boil is counted."""
    token = run[i]
    j = i
    if token.text == "trees" or (token.text == "tree" and _is_joined(run, i)):
        several = _several_trees(run, i)
        if several is not None:
            return several
    if i == 0 and token.text.isdigit() and len(run) > 3 and run[1].text in _GAVE:
        amount = numbers.match(run, 2)
        if amount is not None and _unit(run, 2 + amount.length) is not None:
            return Item("tree", token.text, token.start, token.end), 1  # "7 gave 2 gal"
    if token.text in _NUMBER_SIGNS and i == 0:
        dotted = len(run) > i + 1 and run[i + 1].text == "."
        if token.text == "no" and not dotted:
            return None  # "no 14 is right"
        j = i + 1 + dotted
        following = run[j + 1].text if j + 1 < len(run) else ""
        if j < len(run) and run[j].text.isdigit() and following in _OF_A_TREE:
            return Item("tree", run[j].text, token.start, run[j].end), j + 1 - i
    counted = token.text == "trees" and i > 0 and run[i - 1].shape == "number"
    if counted and i + 1 < len(run) and run[i + 1].shape == "number":
        return None  # "9 trees 14 buckets"
    if token.text in _TREE_WORDS:
        j = i + 1
        while j < len(run) and run[j].text in ("#", "no", "number", "num", ".", "nr"):
            j += 1
        if j >= len(run):
            return None
        name = run[j]
        if _unit(run, j + 1) is not None and run[j + 1].text not in ("in", "inch", "inches", '"'):
            return None  # "yard trees 6 gal", "big tree 3 gal"
        if _is_a_letter(run, j):
            return Item("tree", name.text.upper(), token.start, name.end), j + 1 - i
        if name.shape == "label" or (name.shape == "number" and name.text.isdigit()):
            return Item("tree", name.text, token.start, name.end), j + 1 - i
        if token.text == "trees":
            return None  # "8 trees one tap each"
        spoken = numbers.match(run, j) if name.shape == "word" else None
        counted = spoken is not None and not (spoken.article or spoken.vague or spoken.part)
        if spoken is None or not counted or spoken.value != int(spoken.value):
            return None
        end = run[j + spoken.length - 1].end
        return Item("tree", str(int(spoken.value)), token.start, end), j + spoken.length - i
    if token.shape == "label":
        return Item("tree", token.text, token.start, token.end), 1
    if token.text == "#" and i + 1 < len(run) and run[i + 1].shape == "number":
        ahead = run[i - 1].text if i > 0 else ""
        if run[i + 1].text.isdigit() and ahead not in dates._COUNTED | {"boiling", "gather", "day"}:
            return Item("tree", run[i + 1].text, token.start, run[i + 1].end), 2
    return None


_GAVE = frozenset("gave gives yielded".split())
_OF_SEVERAL = frozenset("give are were both had have together dry quit".split())


def _is_joined(run: Sequence[Token], i: int) -> bool:
    """`tree 3 & 4 gave nothing`; but `tree 3 and 4 gal`."""
    joined = len(run) > i + 4 and run[i + 2].text in ("&", "and") and run[i + 3].text.isdigit()
    return joined and run[i + 1].text.isdigit() and run[i + 4].text in _GAVE | _OF_SEVERAL


def _several_trees(run: Sequence[Token], i: int) -> tuple[Item, int] | None:
    """`trees 3 and 4`, `trees 3, 4 and 7`: one item for all of them, labels in its text."""
    labels: list[str] = []
    j = i + 1
    while j < len(run):
        if labels and _unit(run, j + 1) is not None:
            break  # "trees 4 and 5 1 gal each"
        if run[j].shape == "label" or (run[j].shape == "number" and run[j].text.isdigit()):
            labels.append(run[j].text)
        elif run[j].text not in ("and", "&", ",") or not labels:
            break
        j += 1
    while j > i and run[j - 1].text in ("and", "&", ","):
        j -= 1
    if len(labels) < 2:
        return None
    return Item("trees", " ".join(labels), run[i].start, run[j - 1].end), j - i


def _clock(text: str) -> float:
    """A time of day in hours after midnight. Without am or pm as written."""
    digits = text.replace(".", "").replace(" ", "")
    half = "p" if "p" in digits else "a" if "a" in digits else ""
    hours, _, minutes = digits.rstrip("apm").partition(":")
    value = int(hours) % 24 + (int(minutes) if minutes else 0) / 60
    if half == "p" and value < 12:
        value += 12
    if half == "a" and value >= 12:
        value -= 12
    return value


def _unit(run: Sequence[Token], j: int) -> tuple[tuple[str, str], int] | None:
    """The unit word at token j: ((dimension, unit), how many tokens)."""
    if j >= len(run):
        return None
    text = run[j].text
    if text in lexicon.UNIT_PHRASES_BEGIN:
        three = tuple(token.text for token in run[j : j + 3])
        for size in (3, 2):
            hit = lexicon.UNIT_PHRASES.get(three[:size])
            if hit is not None and len(three) >= size:
                return hit, size
    unit = lexicon.UNITS.get(text)
    return None if unit is None else (unit, 1)


_BEFORE_A_UNIT = frozenset(
    "full more whole good big heaping or so odd scant generous level skimpy plus additional "
    "extra fresh lonely measly lousy single solid whopping mere meager paltry lovely glorious "
    "beautiful precious nice pretty golden dark amber straight long hard cold full-on honest "
    "bonus".split()
)
"""What may stand between a number and its unit: `12 good gallons`, `3 or so gal`."""


def _quantity(run: Sequence[Token], i: int, before: list[Item]) -> tuple[Item, int] | None:
    """A number, a range, or a number with its unit."""
    first = numbers.match(run, i)
    if (
        run[i].text == "one"
        and i > 0
        and (run[i - 1].text in _ONE_OF_THEM or _is_the_one(run, i))
        and _unit(run, i + 1) is None
    ):
        return None
    if first is None and i == 0 and run[i].text in _SPOKEN_UNITS and i + 1 < len(run):
        return _bare_unit(run, i)
    if first is None:
        bare = _unit(run, i) if run[i].text in _HALF_PINTS else None
        if bare is None:
            return None
        (sort, unit), size = bare
        return Item(
            sort, run[i].text, run[i].start, run[i + size - 1].end, 1.0, unit, article=True
        ), size
    j = i + first.length
    low = high = None
    value = first.value
    between = i > 0 and run[i - 1].text == "between"
    if not first.article and j + 1 < len(run) and run[j].text in _RANGE_WORDS[between]:
        second = numbers.match(run, j + 1)
        if (
            second is not None
            and second.value > value
            and not second.article
            and (between or _in_range(run, i, j, j + 1 + second.length))
        ):
            low, high = value, second.value
            value = (low + high) / 2
            j += 1 + second.length
    k = j
    if k < len(run) and run[k].text == "-" and _unit(run, k + 1) is not None:
        k += 1
    while k < len(run) and run[k].text in _BEFORE_A_UNIT:
        k += 1
    unit_hit = _unit(run, k)
    if unit_hit is None:
        k = j
    something = j < len(run) and run[j].text in ("something", "point") and not first.article
    if something and run[j + 1 : j + 2] and run[j].text == "point":
        something = run[j + 1].text == "something"
    if first.article and run[k : k + 1] and run[k].text in ("g", "c"):
        unit_hit = None  # "a g", "a c": no amount
    sign_before = before[-1].text if before else ""
    negative = sign_before in ("minus", "negative") or (
        sign_before == "-" and before[-1].end == run[i].start
        and (len(before) < 2 or before[-2].end < before[-1].start)
    )  # fmt: skip
    made = Item("number", run[i].text, run[i].start, run[j - 1].end, value,
                low=low, high=high, vague=first.vague or something, article=first.article,
                negative=negative, part=first.part)  # fmt: skip
    if any(token.text == "point" for token in run[i:j]) and low is None:
        made.text = f"{value:.2f}".rstrip("0") + ("0" if value % 1 == 0 else "")  # "two point oh"
    if unit_hit is None:
        vessels = _vessels(run, i, j, made) or _more_half_full(run, i, j, made, before)
        if vessels is not None:
            return vessels
        if k < len(run) and run[k].text == '"':
            return replace(made, sort="length", unit="inch", end=run[k].end), k + 1 - i
        if first.article:
            return None
        return made, j - i
    (sort, unit), size = unit_hit
    if sort in ("money", "brix") and first.article:
        return None
    made.sort, made.unit, made.end = sort, unit, run[k + size - 1].end
    made.text = " ".join(token.text for token in run[i : k + size])
    j = k + size
    shared = _after(run, j)[:1] == ("and",) and _unit(run, j + 2) is not None
    other = _unit(run, j + 3) is not None  # "30 gal and a quarter cord"
    if not (shared or other) and _after(run, j) in (
        ("and", "a", "half"),
        ("an", "a", "half"),
        ("and", "a", "quarter"),
    ):
        made.value += 0.5 if run[j + 2].text == "half" else 0.25
        made.end = run[j + 2].end
        j += 3
    share = None
    if j + 1 < len(run) and run[j].text in ("and", "&"):
        share = numbers.match(run, j + 1)
    if share is not None and share.part and share.value < 1:
        after = j + 1 + share.length
        if _unit(run, after) is None and (after == len(run) or run[after].text in _ENDS_A_SHARE):
            made.value += share.value
            made.end, j = run[after - 1].end, after
    return made, j - i


def _bare_unit(run: Sequence[Token], i: int) -> tuple[Item, int] | None:
    """`gallon and a half of sap`, at the start of a text: one, and a part more."""
    unit = _unit(run, i)
    if unit is None or run[i + 1].text not in ("and", "&") or i + 2 >= len(run):
        return None
    share = numbers.match(run, i + 2)
    if share is None or not share.part or not 0 < share.value < 1:
        return None
    (sort, name), _ = unit
    length = 2 + share.length
    text = " ".join(token.text for token in run[i : i + length])
    end = run[i + length - 1].end
    return Item(sort, text, run[i].start, end, 1.0 + share.value, name), length


_ENDS_A_SHARE = frozenset(
    (".", ",", "!", ";", "sap", "syrup", "off", "out", "from", "at", "today", "so", "in", "of")
)
"""What may follow "and three quarters": of "12 gal and half the pails" nothing is added."""
_RANGE_WORDS = {False: ("to", "-", "or"), True: ("and", "to", "-", "or")}


_ONE_OF_THEM = frozenset(
    "that this last wrong other first second third old new each big every which good nice".split()
)


def _is_the_one(run: Sequence[Token], i: int) -> bool:
    """`the upper one`, `the thursday one`, `the upper lot one`."""
    ends = i + 1 == len(run) or run[i + 1].text not in _AFTER_A_ONE_THAT_COUNTS
    if run[i - 1].text in _BEFORE_A_ONE_THAT_COUNTS:
        return False  # "the sap was one point eight"
    return (
        ends
        and run[i - 1].shape == "word"
        and any(run[j].text in ("the", "that") for j in range(max(i - 3, 0), i - 1))
    )


_AFTER_A_ONE_THAT_COUNTS = frozenset("gal gallon pint quart point and half third dozen".split())
_BEFORE_A_ONE_THAT_COUNTS = frozenset(
    "was is were had gave made got at only about says said reads tested measured".split()
)


def _in_range(run: Sequence[Token], i: int, joint: int, after: int) -> bool:
    """Are two numbers with "to", "or" or a dash between them the ends of a range? They are
    where a unit or a noun that is counted follows, or nothing does."""
    if run[joint].text == "-" and run[joint].start > run[joint - 1].end != run[joint + 1].start:
        return False
    if after >= len(run) or run[after].text in (".", ",", "!", ";", "\n"):
        return run[joint].text != "-" or i > 0
    if _unit(run, after) is not None:
        return True
    if i > 0 and 150 < float(numbers.match(run, i).value) < 240:  # type: ignore[union-attr]
        return True
    noun = run[after].text
    return bool(
        lexicon.TAGS.get(noun, _NO_TAGS) & {"TAPN", "BUCKET", "JARN", "ACROSS", "ROUND", "FULL"}
    )


_VESSEL_FILLERS = frozenset(
    "full more big heaping whole good metal plastic overflowing "
    "brimming small large old blue sap of the my our".split()
)


def _vessels(run: Sequence[Token], i: int, j: int, made: Item) -> tuple[Item, int] | None:
    """`3 full buckets`, `half a bucket`, `a pail and a half`, `4 buckets half full`, `5 half full
    buckets`."""
    k, full = j, False
    each = numbers.match(run, j) if j < len(run) and not (made.article or made.part) else None
    if each is not None and each.part and not each.article and each.value < 1:
        made = replace(made, value=made.value * each.value)
        k = j + each.length
    while k < len(run) and run[k].text in _VESSEL_FILLERS:
        full = full or run[k].text in ("full", "heaping", "overflowing", "brimming")
        k += 1
    if k >= len(run) or run[k].shape != "word":
        return None
    if "BUCKET" not in lexicon.TAGS.get(run[k].text, _NO_TAGS):
        return None
    k += 1
    if k < len(run) and run[k].shape == "number" and made.article:
        return None
    about = k + 1 if k < len(run) and run[k].text in _NEARLY else k
    if about > k and _share_full(run, about):
        k = about
    if _after(run, k) == ("and", "a", "half"):
        made.value, k = made.value + 0.5, k + 3
    elif _after(run, k) == ("and", "a", "quarter"):
        made.value, k = made.value + 0.25, k + 3
    elif _after(run, k) == ("and", "three", "quarters"):
        made.value, k = made.value + 0.75, k + 3
    elif _after(run, k)[:2] == ("half", "full") or _after(run, k)[:2] == ("1/2", "full"):
        made.value, k, full = made.value / 2, k + 2, True
    else:
        share = (
            numbers.match(run, k) if k < len(run) and run[k].shape in ("slash", "word") else None
        )
        if (
            share is not None
            and share.part
            and share.value < 1
            and _after(run, k + share.length)[:1] == ("full",)
        ):
            made.value, k, full = made.value * share.value, k + share.length + 1, True
        elif k < len(run) and run[k].text == "full":
            k, full = k + 1, True
    made.sort, made.unit, made.end = "vessels", "full" if full else "", run[k - 1].end
    made.text = " ".join(token.text for token in run[i:k])
    return made, k - i


_NEARLY = frozenset("about around maybe only roughly nearly each all like".split())


def _share_full(run: Sequence[Token], k: int) -> bool:
    """Does `half full`, `2/3 full` stand here?"""
    share = numbers.match(run, k) if k < len(run) else None
    if share is None or not share.part or share.value >= 1:
        return False
    return _after(run, k + share.length)[:1] == ("full",)


def _more_half_full(
    run: Sequence[Token], i: int, j: int, made: Item, before: list[Item]
) -> tuple[Item, int] | None:
    """`6 buckets full and 2 half full`: more of the vessels before."""
    full = [each for each in before if each.sort == "vessels" and each.unit == "full"]
    if not full or made.article or made.part:
        return None
    k = j + 1 if _after(run, j)[:1] and run[j].text in _NEARLY | {"at"} else j
    if _after(run, k)[:1] != ("half",):
        return None
    half_full = _after(run, k)[:2] == ("half", "full")
    if not half_full and not (k + 1 >= len(run) or run[k + 1].shape in ("sign", "newline")):
        return None
    k += 2 if half_full else 1
    text = " ".join(token.text for token in run[i:k])
    half = replace(made, sort="vessels", unit="full", value=made.value / 2, text=text)
    return replace(half, end=run[k - 1].end), k - i


def _after(run: Sequence[Token], j: int) -> tuple[str, ...]:
    return tuple(token.text for token in run[j : j + 3])


def _word(run: Sequence[Token], i: int) -> tuple[Item, int]:
    """A phrase of our word list, or a word, corrected where it is misspelt."""
    token = run[i]
    text = token.text
    following = run[i + 1].text if i + 1 < len(run) else ""
    for phrase, tags in lexicon.PHRASES.get((text, following), ()):
        if len(phrase) <= len(run) - i and all(
            run[i + n].text == part for n, part in enumerate(phrase) if n > 1
        ):
            end = run[i + len(phrase) - 1].end
            return Item("word", " ".join(phrase), token.start, end, tags=tags), len(phrase)
    tags = lexicon.TAGS.get(text, _NO_TAGS)
    if not tags and text.endswith("'s"):
        tags = lexicon.TAGS.get(text[:-2], _NO_TAGS)
        text = text[:-2] if tags else text
    return Item("word", text, token.start, token.end, tags=tags), 1


def _summed(found: list[Item]) -> list[Item]:
    """`6 + 5 + 8 gal` is 19 gal."""
    out: list[Item] = []
    for item in found:
        while (
            item.sort == "volume" and not item.article and len(out) >= 2
            and out[-1].text in ("+", "plus") and out[-2].sort == "number"
        ):  # fmt: skip
            item = replace(item, value=item.value + out[-2].value, start=out[-2].start)
            del out[-2:]
        out.append(item)
    return out


def _joined(found: list[Item]) -> list[Item]:
    """Compound amounts (12 gal 3 qt) and sums (3 gal + 4 gal) become one volume."""
    out: list[Item] = []
    found = _summed(found)
    i = 0
    while i < len(found):
        item = found[i]
        if item.sort == "volume" and item.low is None:
            pieces, i = [item], i + 1
            while i < len(found):
                j = i
                linked = (
                    found[j].text if found[j].text in ("+", "and", "&", "plus", "another") else ""
                )
                plus = linked in ("+", "plus")
                while j < len(found) and found[j].text in ("+", "and", "&", "plus", "another"):
                    plus = plus or found[j].text == "another"
                    j += 1
                if j >= len(found) or found[j].sort != "volume" or found[j].low is not None:
                    break
                following = found[j]
                last = pieces[-1]
                another = run_starts_with_another(following)
                if _of_syrup(found, j) and item.gallons >= _MOST_SYRUP:
                    break  # "boiled 30 gal and 2 quarts of syrup"
                if linked and item is not found[0] and _is_lost(found, j):
                    break  # "collected 5.75 gal and 3 qts of sap slopped out"
                one_more = (plus and following.unit == last.unit) or (another and linked)
                if not (one_more or _smaller_measure(following.unit, last.unit)):
                    break
                pieces.append(following)
                i = j + 1
            if len(pieces) > 1:
                item = replace(item, parts=tuple(pieces), end=pieces[-1].end)
            out.append(item)
            continue
        out.append(item)
        i += 1
    return out


_MOST_SYRUP = 8.0
"""US gallons from which an amount before one of syrup is hardly syrup itself (our own)."""


def _of_syrup(found: Sequence[Item], j: int) -> bool:
    """Is the amount at j said to be of syrup, or to be bottled?"""
    behind = [each for each in found[j + 1 : j + 4] if each.text != "of"]
    return bool(behind) and bool(behind[0].tags & {"SYRUP", "BOTTLE", "DRAW"})


def _is_lost(found: Sequence[Item], j: int) -> bool:
    """Is the amount at j said to be poured out, with nothing between?"""
    behind = [each for each in found[j + 1 : j + 5] if each.text not in ("of", "sap", "was", "got")]
    return bool(behind) and "POUR" in behind[0].tags


def run_starts_with_another(item: Item) -> bool:
    """Was the amount said as `another half gallon`?"""
    return item.text.startswith("another")


_US = frozenset(("gallon", "half_gallon", "quart", "pint", "half_pint", "cup", "fluid_ounce"))


def _smaller_measure(unit: str, than: str) -> bool:
    """Is one unit a smaller one of the same system, as quarts are of gallons?"""
    smaller = volume_gallons(1, unit) < volume_gallons(1, than)
    return unit != than and smaller and (unit in _US) == (than in _US)
