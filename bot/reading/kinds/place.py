"""Where the trees are, in the words of the text."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

CUES = {
    "AMIN": (
        "put_us_down_as put_me_down_as put_us_in put_me_in put_us_down_for sign_us_up_in "
        "set_us_up_in "
        "sugarhouse_is_at place_is_at sugarhouse_at bush_is_at sugarbush_is_at farm_is_at "
        "camp_is_at trees_at we_sugar_at sugaring_at zip's location location_is place_is i'm_in "
        "im_in i_am_in we're_in we_are_in were_in i'm_at im_at i_am_at we're_at we_are_at "
        "i'm_near im_near we're_near we_are_near i'm_from im_from located_in located live_in "
        "we_live_in i_live_in zip zip_code zipcode postal_code postal trees_are_in "
        "trees_are_near sugarbush_is_in sugarbush_is_near bush_is_in place_is_in farm_is_in "
        "farm_is_near based_in up_in out_in over_in down_in my_zip_is woods_are_in sugaring_in "
        "near_the_town_of i'm_outside we're_outside we're_just_outside we're_out_in my_zip "
        "our_zip my_place_is_in moved_to i'm_up_in trees_are_at sugarhouse_is_in sugarhouse_in "
        "sugarbush_is_just_outside sugarbush_is_outside we_sugar_near we_sugar_in "
        "woods_are_near woods_are_outside sugarbush_near sugarbush_outside "
        "trees_are_up_in bush_near "
        "live_outside live_near live_by we_live_outside we_live_near i_live_near i_live_outside "
        "sugarhouse_is_near sugarhouse_is_just_outside camp_is_in camp_is_near "
        "maples_are_in maples_are_near set_me_up_in place trees_in "
    ),
}

STATES = frozenset(
    "alabama alaska arizona arkansas california colorado "
    "connecticut delaware florida georgia hawaii idaho "
    "illinois indiana iowa kansas kentucky louisiana "
    "maine maryland massachusetts michigan minnesota "
    "mississippi missouri montana nebraska nevada ohio "
    "oklahoma oregon pennsylvania tennessee texas utah "
    "vermont virginia washington wisconsin wyoming ontario quebec manitoba saskatchewan alberta "
    "newfoundland mass penn mich minn wisc conn".split()
) | {
    "new hampshire",
    "new jersey",
    "new mexico",
    "new york",
    "north carolina",
    "north dakota",
    "rhode island",
    "south carolina",
    "south dakota",
    "west virginia",
    "nova scotia",
    "new brunswick",
    "british columbia",
    "prince edward",
}
STATE_CODES = frozenset(
    "al ak az ar ca co ct de fl ga hi id il in ia ks ky "
    "la me md ma mi mn ms mo mt ne nv nh nj nm ny nc nd "
    "oh ok or pa ri sc sd tn tx ut vt va wa wv wi wy on qc pq nb ns pe nl mb sk ab bc".split()
)
AMBIGUOUS_CODES = frozenset("in or me ok hi pa ma oh la de on id co al mo ms".split())
"""Codes that are words too: they name a state only after "I'm in" and the like."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place(Reading):
    """Where the trees are, in the words of the text."""

    kind: ClassVar[str] = "place"

    text: str


_WE_ARE = re.compile(
    r"(?:we're|we are|were|i'm|im|i am)(?: up| over| out| down| just| here| right)*"
    r" (?:by|near|in|around|at) \d{5}\b"
)
_OUR_PLACE = re.compile(
    r"(?:\b(?:live|located)\b|\b(?:shack|cent(?:re|er)|camp|farm|woods|trees|sugarhouse|house|place"
    r"|home|bush|barn|sugarbush|cabin|property|land|maples|school)(?:'s| is| are)?)"
    r"(?: up| over| out| down| right)* (?:by|near|in|around|at) \d{5}\b"
)
_KIN = frozenset(
    "sister brother mom mother dad father son daughter cousin aunt uncle friend boss parents "
    "neighbor neighbour grandma grandpa folks".split()
)

_OTHERS_ARE = frozenset("she he they she's he's they're moving".split())


def find(clause: Clause, notes: Notes) -> None:
    """Where the trees are: a ZIP, a Canadian postal code, or a town with its state."""
    if notes.last(Place) is not None or clause.negated or notes.has_address:
        return
    whose = _KIN | _OTHERS_ARE
    if not whose.isdisjoint(clause.words()) and not {"trees", "bush", "maples"} & set(
        clause.words()
    ):
        return  # "my sister is in 05401", "she is moving to florida"
    postal = next(iter(clause.free("postal")), None)
    if postal is not None:
        postal.used = True
        notes.add(Place(text=postal.text.upper()), postal.start)
        return
    said = clause.first("AMIN")
    zipped = next((item for item in clause.free("number") if _is_zip(notes, item)), None)
    if zipped is not None and _home_of_two(clause, notes):
        zipped.used = True
        return  # "we live in 54521, trees are in 54529"
    if zipped is not None:
        zipped.used = True
        digits = notes.text[zipped.start : zipped.end]
        alone = notes.text.strip(" .!").removesuffix(" here") == digits
        lone = len(clause.items) == 1 and len(notes.clauses) > 1
        if (
            lone
            or _WE_ARE.match(clause.text)
            or _OUR_PLACE.search(clause.text) is not None
            or said is not None
            or digits.startswith("0")
            or _state_in(clause) is not None
        ):
            notes.add(Place(text=digits), zipped.start)
        elif alone:
            notes.ask(f"Is {digits} your ZIP?", ("ok|zip|yep|yeah|y", f"zip {digits}"))
        return
    if clause.free("volume", "brix", "temp"):
        return
    state = _state_in(clause)
    if state is not None:
        town = _town_before(clause, notes, state, said)
        if town:
            notes.add(Place(text=town), state[0])
            return
    if said is not None and said.text not in _NO_TOWN_BEHIND:
        rest = clause.items[clause.items.index(said) + 1 :]
        words = [item for item in rest if item.sort in ("word", "lot")]
        if (
            not words
            or words[0].text in _NO_TOWN
            or len(rest) > 4
            or any(item.sort == "number" for item in rest)
        ):
            return
        if any(
            item.tags & {"STORE", "BUCKET", "TAPN", "SAP", "SYRUP", "FOREIGN", "BOIL"}
            for item in words
        ):
            return
        following = notes.clause_after()
        text = " ".join(notes.text[item.start : item.end] for item in words)
        if (
            following is not None
            and following.joint == ","
            and len(following.items) <= 2
            and _state_in(following) is not None
        ):
            for item in following.items:
                item.used = True
            text += " " + following.text
        notes.add(Place(text=text), said.start)


_NO_TOWN_BEHIND = frozenset(
    (
        "up in", "out in", "over in", "down in", "place", "located", "trees in", "zip", "postal",
        "i'm at", "im at", "i am at", "we're at", "we are at",
    )
)  # fmt: skip
_NO_TOWN = frozenset(
    "the a my our love luck trouble bed it this that "
    "town need for no on here for good business all "
    "back charge awe over with deep".split()
)


_TREES_ARE = re.compile(r"\b(?:trees|woods|sugarbush|bush|maples|camp)\b")


def _home_of_two(clause: Clause, notes: Notes) -> bool:
    """Whether another clause tells the ZIP of the trees."""
    return _TREES_ARE.search(clause.text) is None and any(
        other is not clause
        and _TREES_ARE.search(other.text)
        and any(_is_zip(notes, item) for item in other.of_sort("number"))
        for other in notes.clauses
    )


def _is_zip(notes: Notes, item: Item) -> bool:
    digits = notes.text[item.start : item.end]
    return len(digits) == 5 and digits.isdigit()


def _state_in(clause: Clause) -> tuple[int, int] | None:
    """The last words that name a state or province: (index of the first, how many)."""
    texts = [item.text for item in clause.items]
    for i in range(len(texts) - 1, -1, -1):
        two = " ".join(texts[i : i + 2])
        if two in STATES and len(texts[i : i + 2]) == 2:
            return i, 2
        if texts[i] in STATES:
            return i, 1
        if texts[i] in STATE_CODES and i == len(texts) - 1:
            return i, 1
    return None


_PREPOSITIONS = frozenset("in near outside at by from is around of".split())


def _after_preposition(clause: Clause) -> list[Item]:
    """The words that may name a town: behind the last in, near or the like."""
    words = [item for item in clause.items if item.sort in ("word", "lot") and item.text != ":"]
    starts = [
        n for n, item in enumerate(words) if item.text in _PREPOSITIONS or "AMIN" in item.tags
    ]
    if not starts and len(words) > 2:
        return []
    return (
        words[starts[-1] + 1 :] if starts else [item for item in words if not item.tags & {"GREET"}]
    )


def _town_before(clause: Clause, notes: Notes, state: tuple[int, int], said: Item | None) -> str:
    """`lanark ontario`, `near hardwick, vermont`: the town and the state, as they were put."""
    at, length = state
    first = 0 if said is None else clause.items.index(said) + 1
    words = clause.items[first:at]
    name = " ".join(item.text for item in clause.items[at : at + length])
    if not words:
        before = notes.clause_before()
        if (
            clause.joint == ","
            and before is not None
            and before.sentence == clause.sentence
            and notes.last(Place) is None
        ):
            tail = _after_preposition(before)
            if name in AMBIGUOUS_CODES and not before.has("AMIN"):
                return ""
            if 0 < len(tail) <= 3:
                return " ".join(notes.text[item.start : item.end] for item in tail) + " " + name
        return name if said is not None and name in STATES else ""
    if len(words) > 4 or any(item.sort not in ("word", "lot") for item in words):
        return ""
    if (
        clause.tags & {"SAP", "SYRUP", "BOIL", "GATHER", "TAPN", "BUCKET", "SPECIES", "ASKHOW"}
        and said is None
    ):
        return ""
    texts = [notes.text[item.start : item.end] for item in words]
    while texts and texts[0] in (
        "in",
        "near",
        "outside",
        "around",
        "from",
        "at",
        "by",
        "of",
        "the",
        "here",
        "just",
        "my",
        "our",
        "trees",
        "are",
        "is",
        "it's",
        "we",
        "i",
    ):
        texts = texts[1:]
    if not texts:
        return name
    if name in STATE_CODES and said is None and name in AMBIGUOUS_CODES:
        return ""
    return " ".join(texts) + " " + name
