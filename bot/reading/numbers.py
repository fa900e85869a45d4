"""Numbers as people write and say them: 12, 2.2, 1/2, 10 1/4, twelve, two point one, half a
dozen, four and a half, a couple. One function finds the number that starts at a token."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from bot.reading.tidy import tidy
from bot.reading.tokens import Token, tokens, word_at

SMALL: dict[str, float] = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14,
    "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
    "zero": 0, "forteen": 14,
}  # fmt: skip
_TENS: dict[str, float] = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60,
    "seventy": 70, "eighty": 80, "ninety": 90, "ninty": 90,
}  # fmt: skip
_DIGITS = {name: str(int(value)) for name, value in SMALL.items() if value < 10} | {"oh": "0"}
_PARTS: dict[str, float] = {
    "half": 1 / 2, "halves": 1 / 2, "quarter": 1 / 4, "quarters": 1 / 4, "qtr": 1 / 4,
    "fifth": 1 / 5, "fifths": 1 / 5, "sixth": 1 / 6, "tenth": 1 / 10, "tenths": 1 / 10,
    "third": 1 / 3, "thirds": 1 / 3, "eighth": 1 / 8, "eighths": 1 / 8,
}  # fmt: skip
_VAGUE: dict[str, float] = {"few": 3, "several": 5, "bunch": 0, "some": 0}
BEGIN = frozenset(
    (
        *(*SMALL, *_TENS, *_VAGUE, "point", "hundred", "dozen", "couple", "a", "an", "another"),
        *("half", "quarter", "third", "qtr", "fifth", "sixth", "eighth", "tenth"),
    )
)
"""The words that a number in words can begin with: no other is looked at as one."""
NUMBER_WORDS = frozenset((*SMALL, *_TENS, *_PARTS, *_VAGUE, "hundred", "dozen", "couple", "point"))


MOST = 1e9
"""No figure of ours is as large: a longer row of digits is a slip."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number of `length` tokens. `vague`: said as few or several. `article`: only "a"."""

    value: float
    length: int
    vague: bool = False
    article: bool = False
    part: bool = False


def match(run: Sequence[Token], i: int) -> Number | None:
    """The number that starts at token i of the run, or None."""
    token = run[i]
    if token.shape == "number":
        pointed = _pointed(run, i)
        value = min(float(token.text), MOST)
        if pointed is None and 0 < value < 1 and word_at(run, i + 1) == "of":
            return _of(run, i, Number(value, 1, part=True))  # "0.6 of a cord"
        return pointed or _tail(run, i, Number(value, 1))
    if token.shape == "mixed":
        whole, part = token.text.replace("and", " ").replace("-", " ").split()
        fraction = _fraction(part)
        return None if fraction is None else _tail(run, i, Number(float(whole) + fraction, 1))
    if token.shape == "slash":
        fraction = _fraction(token.text)
        return None if fraction is None else _of(run, i, Number(fraction, 1, part=True))
    return _spoken(run, i) if token.text in BEGIN else None


def _pointed(run: Sequence[Token], i: int) -> Number | None:
    """`210 point 6`: a voice-typed decimal that begins in figures."""
    if word_at(run, i + 1) != "point" or not run[i].text.isdigit():
        return None
    digits = _DIGITS.get(word_at(run, i + 2), word_at(run, i + 2))
    return Number(float(f"{run[i].text}.{digits}"), 3) if digits.isdigit() else None


def _fraction(text: str) -> float | None:
    parts = text.split("/")
    if len(parts) != 2 or int(parts[1]) == 0:
        return None
    return int(parts[0]) / int(parts[1])


def _two_something(run: Sequence[Token], i: int) -> tuple[float, int] | None:
    """`two eleven`, `two nineteen point five`: how a thermometer near boiling is read out."""
    if run[i].text != "two":
        return None
    tens = word_at(run, i + 1)
    value, j = SMALL.get(tens, _TENS.get(tens, 0.0)), i + 2
    if tens in _TENS and 0 < SMALL.get(word_at(run, j), 0.0) < 10:
        value, j = value + SMALL[word_at(run, j)], j + 1
    ends = j >= len(run) or run[j].shape != "word" or word_at(run, j) in _AFTER_A_TEMPERATURE
    return (200.0 + value, j) if 10 <= value <= 30 and ends else None


_AFTER_A_TEMPERATURE = frozenset("point degrees degree deg f now here today on in and".split())


def _spoken(run: Sequence[Token], i: int) -> Number | None:
    text = run[i].text
    if text in SMALL or text in _TENS:
        value, j = SMALL.get(text, 0.0), i + 1
        if word_at(run, j) == "teen" and 3 <= value <= 9:
            return Number(value + 10, 2)
        if text in _TENS:
            value = _TENS[text]
            k = j + 1 if word_at(run, j) == "-" else j
            unit = SMALL.get(word_at(run, k), 0.0)
            if 0 < unit < 10:
                value, j = value + unit, k + 1
        hundreds = _two_something(run, i)
        if hundreds is not None:
            value, j = hundreds
        if word_at(run, j) == "hundred":
            value, j = value * 100, j + 1
            if word_at(run, j) == "and":
                rest = match(run, j + 1)
                if rest is not None and rest.value < 100 and not rest.part and not rest.article:
                    return Number(value + rest.value, j + 1 + rest.length - i)
            elif j < len(run):
                rest = _spoken(run, j)
                if rest is not None and 1 <= rest.value < 100 and not rest.article:
                    return Number(value + rest.value, j + rest.length - i)
        if word_at(run, j) == "thousand":
            value, j = value * 1000, j + 1
        if word_at(run, j) == "point":
            digits, k = "", j + 1
            while k < len(run) and (run[k].text in _DIGITS or run[k].text.isdigit()):
                digits, k = digits + _DIGITS.get(run[k].text, run[k].text), k + 1
            if digits:
                return Number(float(f"{value:.0f}.{digits}"), k - i)
            tens = _TENS.get(word_at(run, k))
            if tens is not None:
                unit = SMALL.get(word_at(run, k + 1), 0.0)
                more = 1 if 0 < unit < 10 else 0
                return Number(value + (tens + unit * more) / 100, k + 1 + more - i)
        if (
            word_at(run, j)
            in (
                "third",
                "thirds",
                "quarter",
                "quarters",
                "eighths",
                "fifths",
                "tenths",
            )
            and value < 8
        ):
            return _of(run, i, Number(value * _PARTS[run[j].text], j + 1 - i, part=True))
        return _tail(run, i, Number(value, j - i))
    if text == "point" and word_at(run, i + 1) in _DIGITS:
        return Number(float("0." + _DIGITS[run[i + 1].text]), 2)
    if text == "hundred":
        rest = match(run, i + 2) if word_at(run, i + 1) == "and" and i + 2 < len(run) else None
        if rest is not None and rest.value < 100 and not (rest.part or rest.article):
            return Number(100 + rest.value, 2 + rest.length)
        return Number(100, 1)
    if text == "dozen":
        return _tail_half(run, i, Number(12, 1), 12)
    if text == "couple":
        if word_at(run, i + 1) == "dozen":
            return Number(24, 2)
        return Number(2, 2 if word_at(run, i + 1) == "of" else 1)
    if text in _VAGUE:
        return Number(_VAGUE[text], 1, vague=True)
    if text in (
        "half",
        "quarter",
        "third",
        "qtr",
        "fifth",
        "sixth",
        "eighth",
        "tenth",
    ) and not _half_pint(run, i):
        if word_at(run, i + 1) == "dozen":
            return Number(12 * _PARTS[text], 2)
        if word_at(run, i + 1) in ("a", "of", "an") and word_at(run, i + 2) == "dozen":
            return Number(12 * _PARTS[text], 3)
        if text in _ORDINALS_TOO and word_at(run, i + 1) in _IN_A_ROW:
            return None  # "first draw a pint, third a quart", "a third grader"
        return _of(run, i, Number(_PARTS[text], 1, part=True))
    if text in ("a", "an", "another"):
        inner = _spoken(run, i + 1) if i + 1 < len(run) and run[i + 1].shape == "word" else None
        if inner is not None and word_at(run, i + 1) in (
            "fifth",
            "sixth",
            "eighth",
            "tenth",
            "half",
            "quarter",
            "third",
            "dozen",
            "couple",
            "hundred",
            "few",
            "qtr",
            "bunch",
        ):
            return Number(inner.value, inner.length + 1, inner.vague, part=inner.part)
        return Number(1, 1, article=True)
    return None


_IN_A_ROW = frozenset("a an one grader graders grade time year boil run draw tree batch".split())
_ORDINALS_TOO = frozenset("third fifth sixth eighth tenth".split())


def _half_pint(run: Sequence[Token], i: int) -> bool:
    """`half pints` is a size of jar, no half of one."""
    following = word_at(run, i + 1)
    if following == "-":
        following = word_at(run, i + 2)
    return run[i].text == "half" and following in ("pint", "pints", "pt", "pts")


def _tail(run: Sequence[Token], i: int, number: Number) -> Number:
    """What may follow a number: `and a half`, `and three quarter`, `dozen`, `hundred`."""
    j = i + number.length
    word = word_at(run, j)
    if _and_a_half(run, j):
        if word_at(run, j + 3) == "dozen":
            return Number((number.value + 0.5) * 12, number.length + 4)
        return Number(number.value + 0.5, number.length + 3)
    if word == "dozen":
        return _tail_half(run, i, Number(number.value * 12, number.length + 1), 12)
    if word == "hundred":
        return Number(number.value * 100, number.length + 1)
    if word == "&" or word == "and":
        rest = match(run, j + 1) if j + 1 < len(run) else None
        if rest is not None and rest.part and rest.value < 1:
            after = word_at(run, j + 1 + rest.length)
            two = "." in run[i].text and word_at(run, j + rest.length) in ("of", "a", "an")
            if after not in ("of", "a") and not two:  # "2.2 and three-quarters of a gallon"
                return Number(number.value + rest.value, number.length + 1 + rest.length)
    return number


def _and_a_half(run: Sequence[Token], j: int) -> bool:
    return (
        word_at(run, j) in ("and", "an", "&")
        and word_at(run, j + 1) == "a"
        and word_at(run, j + 2) == "half"
        and word_at(run, j + 3) not in ("of", "a")
    )


def _tail_half(run: Sequence[Token], i: int, number: Number, share: float) -> Number:
    """`a dozen and a half`: half a dozen more."""
    if _and_a_half(run, i + number.length):
        return Number(number.value + share / 2, number.length + 3)
    return number


def _of(run: Sequence[Token], i: int, number: Number) -> Number:
    """Passes over `of a`, `a`, `of an` after a part: half a gallon, a quarter of a cord."""
    j = i + number.length
    if word_at(run, j) == "of" and word_at(run, j + 1) in ("a", "an", "one"):
        return Number(number.value, number.length + 2, part=True)
    if word_at(run, j) in ("a", "an", "of"):
        return Number(number.value, number.length + 1, part=True)
    return number


def figures_spoken(text: str) -> list[float]:
    """The numbers that a text says in words, in its order: 9 of "undo nine gallons"."""
    run = tokens(tidy(text))
    found: list[float] = []
    at = 0
    while at < len(run):
        number = match(run, at) if run[at].shape == "word" else None
        if number is None or number.article or number.vague or run[at].text in ("one", "couple"):
            at += 1
            continue
        found.append(number.value)
        at += number.length
    return found
