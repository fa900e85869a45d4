"""A boil: its start, its end, how much went in and how long it took."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date, time
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.sap import Sap
from bot.reading.puzzling import PLAIN_WORDS, behind_a_preposition
from bot.reading.signs import Sought
from bot.reading.volumes import boiled_down, into_the_pan, is_gone, is_so_much_in_hours, role

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

CUES = {
    "BOIL": (
        "through_boiling all_through_boiling through_with_the_boil done_with_the_boil "
        "on_the_boil at_a_rolling_boil rolling_boil at_a_boil to_a_boil "
        "boiling's_over boiling_is_over boiling_is_done boil_is_over boil's_over processed "
        "process cook_off cooked_off reduced boiled boil boiling boils cooked_down cook_down "
        "cooking_down cooked cooking evaporated evaporating evaporate simmered simmering "
        "ran_the_pan ran_the_evaporator ran_the_arch ran_the_rig ran_the_pans "
        "sugaring_off run_through_the_pan went_through_the_pan into_steam off_as_steam "
    ),
    "PAST": "processed cooked_off reduced boiled cooked_down cooked evaporated simmered",
    "LIT": (
        "lit_her_up just_lit_her_up just_lit_her just_lit_it just_lit_it_up relit relit_it "
        "relit_the_fire fire_back_on roasting_pans_are_on "
        "firing_commenced boil_commenced commenced_boiling commenced_firing "
        "touched_off touched_it_off touched_her_off fire's_on fires_on "
        "fire_is_on fire_is_already_on fryer_is_on fryer's_on "
        "fryer_is_already_on "
        "lite_the_fire lite_the_arch "
        "on_to_boil got_the_pan_on got_the_pans_on pan_on firing_up fired_up firing_it_up "
        "lighting_up on_the_burner lit lit_it lit_up is_lit fired_it_up fired_her_up lit_her "
        "fire_on got_a_fire_under fire_under_her fire_under_it fire_under_the_pan got_a_fire_going "
        "turned_the_burner_on turned_on_the_burner burner_on burner's_on burner_is_on "
        "burners_on pans_are_on pans_on pan's_on pan_is_on pan_went_on pans_went_on "
        "kettle_went_on over_the_fire over_the_coals on_the_coals "
    ),
    "FIRE": (
        "fires_dead fire's_dead fire_is_dead fire_dead arch_is_dead arch_dead "
        "fires_out closed_the_fire close_the_fire closed_the_arch "
        "letting_the_fire_die letting_it_die letting_the_fire_go_out letting_the_fire_go "
        "letting_it_go_out letting_the_fire_burn_out letting_the_fire_burn_down "
        "fire's_out let_the_fire_die let_the_fire_go_out put_the_fire_out "
        "fryer fryers fryer's turkey_fryer turkey_fryer's "
        "let_the_fire_burn_down on_the_fire put_the_fire_to fire fire's fires arch evaporator "
        "evaporator's firebox burner burners stove woodstove "
    ),
    "START": (
        "firing_up firing lighting_up stoking steaming steaming_away getting_started cranked_up "
        "struck_a_match lit_a_match match_is_to_the_kindling match_to match_is_to on_to_boil "
        "light lighting start started "
        "starting fired_up fired going cranking cranked cranking_up fire_up get_going got_going "
        "lit_up under_way underway on_the_fire on_the_boil roaring rolling kicked_off "
        "kicking_off began begun beginning just_lit turned_on put_the_fire_to getting_hot "
        "heating_up stoked is_lit lit_it burning away_we_go at_a_boil to_a_boil "
        "at_a_rolling_boil reached_a_rolling_boil "
        "reached_a_boil hit_a_rolling_boil up_and_running fired_the is_on "
    ),
    "END": (
        "letting_the_fire_die letting_it_die letting_the_fire_go_out letting_the_fire_go "
        "letting_it_go_out letting_the_fire_burn_out letting_the_fire_burn_down "
        "fires_dead fire's_dead fire_is_dead fire_dead arch_is_dead arch_dead "
        "fires_out closed_the_fire close_the_fire closed_the_arch "
        "through_boiling all_through_boiling through_with_the_boil done_with_the_boil "
        "boiling's_over boiling_is_over boiling_is_done boil_is_over boil's_over fire's_out "
        "let_the_fire_die let_the_fire_go_out put_the_fire_out let_the_fire_burn_down "
        "that's_a_wrap thats_a_wrap a_wrap_on "
        "that's_it_for thats_it_for that_does_it_for done_for_the_night done_for_today "
        "done_for_the_day shut_down shutting_down shut_it_down shut_her_down calling_it_a_night "
        "calling_it call_it_a_night called_it_a_night called_it wrapped_up wrapping_up "
        "quit_for_the_night dying_down died_down dying burned_out burnt_out burning_down died "
        "put_out let_it_go_out let_it_burn_out "
        "let_her_burn_out let_her_go_out let_her_die_out go_out let_die all_done "
        "that's_it_for_tonight banked turned_off "
        "killed pulled_the_pan pan_is_off pan's_off knocked_off finishing_up end_of gone_out "
        "went_out going_out is_out out_for_the_night let_it_die stopped doused snuffed "
        "cooling_down cold let_her_go_cold let_it_go_cold let_her_cool "
    ),
    "OVER": "out off over done finished ended through",
    "DONE": "done finished finish end ended stopped wrapped quit",
    "THROUGH": (
        "started_with went_through gone_through go_through get_through got_through put_through "
        "ran_through burned_through burnt_through "
        "to_get_through through_the_evaporator through_the_pan through_the_rig through_the_pans "
        "to_boil through_the_arch into_the_pan "
    ),
    "PANN": "cauldron pot pot's pots pan pans pan's flue_pan roaster roasting_pan roasting_pans",
}

MOST_HOURS = 24.0
MOST_GALLONS_A_BOIL = 2000.0
"""More than any evaporator of our people boils in a day: 300 taps' biggest two days of sap."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Boil(Reading):
    """A boil: its start, its end, how much went in and how long it took. manner: "in" for sap
    that goes into the pan, of which nobody says that it is boiled; "rest" for all that was left;
    "going" for hours after which the fire still burns."""

    kind: ClassVar[str] = "boil"

    on: date
    gallons: float | None = None
    hours: float | None = None
    state: str | None = None
    at: time | None = None
    manner: str | None = None


def find(clause: Clause, notes: Notes) -> None:
    """A boil's start, end, gallons and hours; pieces told apart are one boil."""
    if any(
        n.reading.kind == "water_boils" and notes.clauses[n.clause].sentence == clause.sentence
        for n in notes.noted
    ) and not (clause.free("volume", "hours") or clause.has("LIT")):
        return
    if (clause.has("WATERN") and clause.has("BOIL")) or clause.has("PRICE", "BROKEN", "TAPN"):
        return
    if _OTHER_THINGS.search(clause.text) or _on_each_day(clause, notes):
        return
    if _boiled_or_gathered(clause, notes) or _some_of_it(clause, notes):
        return
    if _in_the_pan(clause, notes) or _sap_put_on(clause, notes):
        return
    gallons = [
        item
        for item in clause.free("volume")
        if role(clause, item) == "boil" and not came_of_it(clause, notes, item)
    ]
    so_far = _in_so_far(clause, notes)
    gallons += _gallons_unsaid(clause, notes)
    gallons += [item for item in so_far if item not in gallons]
    gallons += [item for item in _beside_the_hours(clause, notes) if item not in gallons]
    state = _state(clause, notes)
    if _going_on(clause, notes):
        return
    told = (
        _hours_of_the_boil(clause, notes)
        or clause.about("BOIL", "FIRE", "THROUGH", "END", "SHUT", "LIT")
        or state is not None
        or bool(gallons and (clause.free("hours") or into_the_pan(clause) or so_far))
        or bool(gallons and _lit_just_before(notes))
        or any(is_gone(clause, item) or boiled_down(clause, item) for item in gallons)
    )
    if not told:
        return
    hours, asked = _hours(clause, notes)
    if asked:
        return
    if notes.clause_number in notes.spans:
        state = "end"
    if hours is None and gallons:
        hours = _hours_said_before(clause, notes)
    if hours is not None and state == "start":
        state = "end"  # "10 hours on the burner"
    at = _clock(clause, notes, state)
    wanted = clause.has("BOIL", "FIRE", "PANN") or state is not None
    if state is None and clause.has("PAST") and _all_of_it(clause) and notes.last(Sap):
        state = "end"  # "got 14 gal, boiled it"
    if state is None and clause.has("PAST") and not gallons and _BOILED_ALL.search(clause.text):
        state = "end"
    if state is None and clause.has("PAST") and _ALL_DAY.search(clause.text):
        state = "end"  # "boiled all afternoon"
    if not gallons and hours is None and state is None and not (wanted and at is not None):
        return
    amount: float | None = None
    for item in gallons:
        item.used = True
        amount = (amount or 0.0) + item.gallons
    if amount is not None and amount > MOST_GALLONS_A_BOIL:
        notes.ask(f"{amount:g} gal boiled in a day? How many was it?", fill="boiled {} gal")
        return
    goes_on = clause.has("SOFAR") and not clause.has("END", "SHUT", "DONE")
    if state is None and goes_on and hours is None:
        piece = Boil(on=notes.day(clause), gallons=amount)
        _join(notes, piece, clause.items[0].start, clause)
        return  # "boiled 20 gal so far"
    burns_still = state is None and hours is not None and amount is None and _burns_still(clause)
    if (
        state is None
        and not burns_still
        and (clause.has("PAST") or hours is not None)
        and (amount is not None or hours is not None)
    ):
        state = "end"
    start = clause.items[0].start
    going_in = amount is not None and state is None and _goes_in(clause)
    rest = not gallons and clause.has("PAST") and bool(_BOILED_ALL.search(clause.text))
    piece = Boil(
        on=notes.day(clause),
        gallons=amount,
        hours=hours,
        state=state,
        at=at,
        manner="in" if going_in else "rest" if rest else "going" if burns_still else None,
    )
    _join(notes, piece, start, clause)


_OTHER_THINGS = Sought(
    "boil|through the ",
    r"\bboil(?:ed|ing)? (?:the |my |our |some |\d+ )*(?:\w+ )?"
    r"(?:filters?|cloths?|felts?|lids?|jars?|bottles?|eggs|hot dogs|water|spiles|taps)\b"
    r"|\bthrough the (?:ro|membrane)\b",
)
"""`boiled the filters 10 minutes`, `ran 50 gal through the RO`: no boil of sap."""


def _on_each_day(clause: Clause, notes: Notes) -> bool:
    """`boiled friday and saturday, 20 gal each day`: asked for one day at a time."""
    if "each" not in notes.text:
        return False
    here = notes.sentence(clause)
    days = {item.on for other in here for item in other.items if item.sort == "date"}
    each = any("each" in other.words() for other in here)
    boils = any(other.has("BOIL", "FIRE") for other in here)
    if len(days) < _TWO_DAYS or not each or not boils or not clause.free("volume", "hours"):
        return False
    for item in clause.free("volume", "hours"):
        item.used = True
    notes.ask("One day at a time, please, like: boiled 20 gal friday.")
    return True


_TWO_DAYS = 2


def _lit_just_before(notes: Notes) -> bool:
    """`we're boiling! 28 gal in the tank to start with`."""
    before = notes.last(Boil)
    lit = before.reading if before is not None else None
    return isinstance(lit, Boil) and lit.state == "start" and lit.gallons is None


_ALL_DAY = re.compile(r"\b(?:all (?:day|afternoon|night|morning|evening)|for hours)\b")


def _burns_still(clause: Clause) -> bool:
    """`been boiling for 6 hours`, `6 hours of boiling so far`."""
    words = set(clause.words())
    so_far = not {"so far", "already", "now"}.isdisjoint(words)
    if "into the boil" in clause.text or (clause.has("PAST") and "so far" in clause.text):
        return True
    return not _COOKING.isdisjoint(words) and ("been" in words or so_far)


def _in_the_pan(clause: Clause, notes: Notes) -> bool:
    """`40 gal in the pan`: asks whether it was put in just now."""
    if not clause.has("PANN"):
        return False
    standing = [item for item in clause.free("volume") if role(clause, item) == "pan"]
    for item in standing:
        item.used = True
        notes.ask(
            f"{item.text} in the pan: put in just now?",
            ("put in|in|ok|yep|yeah|just now|added", f"poured {item.text} into the pan"),
            ("no|nope|there|still there|left", ""),
        )
    return bool(standing)


_SAP_IS_ON = Sought(
    " pan| evaporator",
    r"(?:.* )?(?:the |our |some |first |fresh )*sap(?:'s| is)?(?: now| finally)? (?:in|on)(?:to)?"
    r" (?:the |my |our )?(?:\w+ )?(?:pans?|evaporator)(?: now| already| and steaming)?",
)


_INTO = re.compile(r"\binto\b|\b(?:put|poured|threw|added|loaded)\b")


def _sap_put_on(clause: Clause, notes: Notes) -> bool:
    """`threw the first sap in the pan`: the boil begins; a pan that boils has more, and how much
    is asked."""
    put = into_the_pan(clause) and clause.has("SAP")
    if not put and not _SAP_IS_ON.fullmatch(clause.text):
        return False
    if clause.negated or clause.free("volume", "number", "vessels", "hours", "temp"):
        return False
    if {"rest", "more", "all", "everything"} & set(clause.words()) or notes.profile.boiling:
        if put:
            notes.ask("How many gal went into the pan?", fill="poured {} gal into the pan")
        return put
    if clause.has("POUR") and not _INTO.search(clause.text):
        notes.ask(
            "Sap in the pan: put on to boil, or poured out?",
            ("boil|put on|to boil|on", "lit the fire"),
            ("poured out|out|dumped", "dumped the sap"),
        )
        return True
    piece = Boil(on=notes.day(clause), state="start", at=_clock(clause, notes, "start"))
    _join(notes, piece, clause.items[0].start, clause)
    return True


def came_of_it(clause: Clause, notes: Notes, item: Item) -> bool:
    """`boiled 60 L in 5 h and got 1.4 L`: what the boil made."""
    before = notes.last(Boil)
    if before is None or not isinstance(before.reading, Boil) or before.reading.gallons is None:
        return False
    if clause.own_tree:
        return False  # "boiled 22 gal, tree 12 gave us a gallon"
    here = notes.clauses[before.clause].sentence == clause.sentence
    made = not _CAME.isdisjoint(clause.words())
    return here and made and item.gallons * LEAST_BOILED_FOR_ONE <= before.reading.gallons


_CAME = frozenset("got made got: gives gave ended".split())
LEAST_BOILED_FOR_ONE = 8.0
"""Sap to syrup by volume, at the very least: sap of 8 Brix (kinds/sugar.py) makes one of ten."""


def _goes_in(clause: Clause) -> bool:
    """`added 12 gal to the pan`, `cooking 8 gal more`."""
    return into_the_pan(clause) or not _COOKING.isdisjoint(clause.words())


_COOKING = frozenset("boiling cooking simmering evaporating".split())


def _boiled_or_gathered(clause: Clause, notes: Notes) -> bool:
    """`15 gal in 2 hrs`: asks which it was, unless the fire burns or a boil was told of."""
    volumes, hours = clause.free("volume"), clause.free("hours")
    if not (volumes and hours and is_so_much_in_hours(clause)):
        return False
    if notes.profile.boiling or notes.last(Boil) is not None:
        return False
    volumes[0].used = hours[0].used = True
    much, long = volumes[0].text, hours[0].text
    notes.ask(
        f"{much} in {long}: boiled, or gathered?",
        ("boiled|boil|cooked", f"boiled {much} in {long}"),
        ("gathered|sap|collected", f"{much} of sap"),
    )
    return True


_BOILED_ALL = re.compile(r"\b(?:the rest|all of it|it all|all of them|everything|the lot)\b")


def _some_of_it(clause: Clause, notes: Notes) -> bool:
    """`fire out, boiled 25 of the 40`, `fire's out, boiled 30`: an amount in no unit."""
    if not clause.has("PAST") or notes.last(Sap):
        return False
    part = next(
        (
            item
            for item in clause.free("number")
            if not item.part
            and not item.article
            and [e.text for e in clause.following(item, 1)] in (["of"], [])
            and any("PAST" in e.tags for e in clause.preceding(item, 1))
        ),
        None,
    )
    behind = part is not None and any(one.start > part.start for one in clause.free("volume"))
    if part is None or behind:
        return False
    for item in clause.free("volume"):
        item.used = True  # "with joe's 20 gal we boiled 55"
    for item in clause.free("number"):
        item.used = True
    said = f"boiled {part.value:g} gal"
    over = ", fire out" if clause.has("FIRE", "END") else ""
    notes.ask(
        f"{part.value:g} what did you boil: gal?",
        ("gal|gallons|sap|ok", f"{said}{over}"),
        ("hours|hrs|hour|h", f"boiled {part.value:g} hours{over}"),
    )
    return True


def _all_of_it(clause: Clause) -> bool:
    return bool({"it", "all", "everything"} & set(clause.words())) and len(clause.items) <= 4


def _hours_said_before(clause: Clause, notes: Notes) -> float | None:
    """`finished at 10: 5 hrs, 27 gal boiled`: the hours that nothing else has taken."""
    before = notes.clause_before()
    if before is None or before.sentence != clause.sentence or before.free("volume"):
        return None
    if any(noted.clause == notes.clause_number - 1 for noted in notes.noted):
        return None
    hours, _ = _hours(before, notes)
    return hours


def _hours_of_the_boil(clause: Clause, notes: Notes) -> bool:
    """`1 gal syrup; half cord burned; 9 hrs`: hours alone, where a boil was told of."""
    alone = len(clause.items) <= 2 and bool(clause.free("hours"))
    return alone and any(noted.reading.kind in ("syrup", "fuel") for noted in notes.noted)


def _gallons_unsaid(clause: Clause, notes: Notes) -> list[Item]:
    """`got 35 gal of sap, boiled 20 of it`: the unit was said before."""
    if notes.last(Sap) is None or not clause.has("PAST") or clause.free("volume"):
        return []
    for item in clause.free("number"):
        before = clause.preceding(item, 1)
        if before and "PAST" in before[0].tags:
            clause.settle(item, "volume", "gallon")
            return [item]
    return []


def _in_so_far(clause: Clause, notes: Notes) -> list[Item]:
    """`boiling since 8, 15 gal in so far`: the pan has it, and the fire still burns."""
    before = notes.last(Boil)
    if before is None or notes.clauses[before.clause].sentence != clause.sentence:
        return []
    if not isinstance(before.reading, Boil) or before.reading.state != "start":
        return []
    return [
        item
        for item in clause.free("volume")
        if [each.text for each in clause.following(item, 2)] in (["in"], ["in so far"])
    ]


def _beside_the_hours(clause: Clause, notes: Notes) -> list[Item]:
    """`done for the night. 5 hrs, 30 gal, 3 quarts of syrup`: what was boiled in them."""
    before = notes.last(Boil)
    if before is None:
        return []
    spoken = notes.clause_before()
    said = [each for each in clause.items if each.sort != "sign"]
    if spoken is None or spoken.sentence != clause.sentence or len(said) != 1:
        return []
    told = isinstance(before.reading, Boil) and before.reading.hours is not None
    here = before.clause == notes.clause_number - 1 or spoken.items[0].sort == "hours"
    bare = said[0].sort == "volume" and said[0].unit in ("gallon", "liter", "imperial_gallon")
    fresh = isinstance(before.reading, Boil) and before.reading.gallons is None
    only_hours = all(each.sort in ("hours", "sign") for each in spoken.items)
    return said if told and here and bare and fresh and only_hours else []


def _going_on(clause: Clause, notes: Notes) -> bool:
    """`still boiling, 5 hours in`: nothing is over yet."""
    if clause.near("BOIL") and any(
        "still" in other.words() and other.has("BOIL") for other in notes.sentence(clause)
    ):
        return True
    hours = clause.of_sort("hours")
    return any([e.text for e in clause.following(i, 2)] == ["in"] for i in hours)


def _join(notes: Notes, piece: Boil, start: int, clause: Clause) -> None:
    """Puts a piece to the boil that the text already told of, or begins one."""
    before = notes.last(Boil)
    old = before.reading if before is not None else None
    if before is None or not isinstance(old, Boil) or old.on != piece.on:
        notes.add(piece, start)
        return
    if old.gallons is not None and piece.gallons is not None and old.gallons != piece.gallons:
        notes.add(piece, start)
        return
    hours = old.hours if old.hours is not None else piece.hours
    if old.hours is not None and piece.hours is not None and old.hours != piece.hours:
        if clause.joint not in ("and", "&", "plus", "+", "then"):
            notes.ask(
                f"{old.hours:g} or {piece.hours:g} hours: how long did it boil?",
                fill="boiled {} hours",
            )
            notes.noted.remove(before)
            return
        hours = old.hours + piece.hours  # "boiled 3 hr before chores and 4 hr after"
    if old.state == "end" and piece.state == "start" and "been" in clause.words():
        piece = replace(piece, state=None, at=None)  # "let her go cold, been boiling since 7"
    if old.state == "start" and piece.state == "end" and hours is None:
        if old.at is not None and piece.at is not None:
            hours = _between(old.at, piece.at)
            late = _after(old.at, hours)  # "lit at 4 pm, shut down at 9"
            if piece.on < notes.sent.date() or late <= notes.sent.time():
                piece = replace(piece, at=late)
        else:
            notes.add(piece, start)
            return
    state = piece.state or old.state
    before.reading = replace(
        old,
        hours=hours,
        state=state,
        at=piece.at or old.at,
        gallons=old.gallons if old.gallons is not None else piece.gallons,
    )


def _between(start: time, end: time) -> float:
    minutes = (end.hour * 60 + end.minute) - (start.hour * 60 + start.minute)
    return (minutes % (12 * 60) if minutes <= 0 else minutes) / 60


def _after(start: time, hours: float) -> time:
    minutes = round(start.hour * 60 + start.minute + hours * 60) % (24 * 60)
    return time(minutes // 60, minutes % 60)


def _state(clause: Clause, notes: Notes) -> str | None:
    words = clause.words()
    fire = clause.has("FIRE")
    boil = clause.has("BOIL")
    pan = clause.has("PANN")
    wood_only = "wood" in words and not fire and not boil
    if wood_only or (clause.has("BURN") and not fire and not boil):
        return None
    if clause.negated and not (clause.has("END") and notes.profile.boiling):
        return None
    if _ended(clause, notes, fire or boil) or _out_at(clause, notes):
        return "end"
    if clause.has("LIT") and clause.has("PAST") and clause.free("volume"):
        return "end"  # "cooked 4.5 gal down on the burner"
    if clause.has("LIT") and not clause.has("PORCH", "FOREIGN"):
        return "start"
    if clause.free("hours") and clause.about("END", "SHUT"):
        return "end"
    if boil and clause.has("PAST") and _SINCE.search(clause.text):
        return "start"  # "boiled since 6am, quit at 4pm"
    if boil and clause.has("PAST") and not _TILL.isdisjoint(words):
        return "end"  # "boiled till midnight"
    if clause.has("START") and not _TILL.isdisjoint(words) and (fire or boil or pan):
        return "end"  # "kept the pan going till just now"
    if clause.has("START") and (fire or boil or (pan and not notes.profile.boiling)):
        return None if clause.has("PORCH", "FOREIGN") or _temperature(clause) else "start"
    cooks = "cooking" in words and clause.has("SAP")
    if (
        ("boiling" in words or cooks)
        and not clause.has("PAST", "DRAW")
        and not clause.free("cords", "mass")
    ):
        if any(
            each.text in _TILL
            for item in clause.items
            if item.sort == "clock"
            for each in clause.preceding(item, 1)
        ):
            return "end"  # "up till 2am boiling"
        hours = clause.of_sort("hours")
        if any(_is_of_a_rate(clause, item) for item in hours):
            return None
        if hours and not clause.has("START"):
            return None if _burns_still(clause) else "end"
        if _later_today(clause, notes) or _NEAR_BOILING.search(clause.text):
            return None
        if _WHILE_BOILING.search(clause.text):
            return None
        return None if clause.has("BURN") or _temperature(clause) else "start"
    return None


# "shut her down at 9", "let it burn out at 9": said of a fire, where a time or the night follows.
_SHUT_DOWN = re.compile(
    r"\b(?:shut (?:(?:it|her|him|everything) )?(?:down|off)|let (?:it|her) (?:burn|go|die) out)"
    r"(?: (?:at|by|around|about))? (?:\d|for the night|noon|midnight|dark|last night|tonight)"
)
_SINCE = re.compile(r"\bsince (?:about )?(?:\d|noon)")
_TILL = frozenset("till til until".split())
_NEAR_BOILING = re.compile(r"\d (?:\w+ )?(?:below|under|short of|from|above|over|off) boiling")
# "sap depth in the flat pan while boiling": of any boil.
_WHILE_BOILING = re.compile(r"\b(?:while|when|during|for|of) boiling\b")
_EVENING_FROM = 16
"""Hour of the local day from which "boiling tonight" is now (our own)."""


def _later_today(clause: Clause, notes: Notes) -> bool:
    """`boiling tonight after hockey`, said in the morning: not yet begun."""
    later = any(
        item.text in ("tonight", "this evening", "later", "this afternoon") for item in clause.items
    )
    return later and notes.sent.hour < _EVENING_FROM


_BESIDE_OUT = frozenset("the it her at by around about now and then we i for fire night".split())
_OUT_WORDS = frozenset("out off done over finished quit stopped shut".split())


def _out_at(clause: Clause, notes: Notes) -> bool:
    """`lit at 7am, out at 2pm`."""
    before = notes.last(Boil)
    if before is None or before.clause != notes.clause_number - 1:
        return False
    if clause.has("DRAW", "BOTTLE", "SYRUP"):
        return False  # "lit at 8 am. drew off 3 qts at 1 pm"
    lit = isinstance(before.reading, Boil) and before.reading.state == "start"
    timed = any(
        item.sort == "clock" or (item.sort == "number" and _told_as_time(clause, item))
        for item in clause.items
    )
    words = set(clause.words())
    till = clause.has("PAST") and bool({"till", "til", "until"} & words)
    out = any(
        item.text in _OUT_WORDS
        and any(
            each.sort == "clock" or (each.sort == "number" and _told_as_time(clause, each))
            for each in clause.following(item, 3)
        )
        for item in clause.items
    )
    only = all(item.tags or item.text in _BESIDE_OUT for item in clause.of_sort("word"))
    return lit and timed and (till or (out and only))


def _ended(clause: Clause, notes: Notes, burning: bool) -> bool:
    """`fire's out`, `done boiling`, `the boil is over`, `shut her down`."""
    going = notes.profile.boiling and not _of_another_thing(clause)
    if clause.has("END", "SHUT") and (burning or going or clause.has("PANN")):
        return True
    if clause.has("SHUT", "END") and _SHUT_DOWN.search(clause.text):
        return True
    here = {"here", "there"} & set(clause.words())
    for item in clause.items:
        if item.tags & {"FIRE", "BOIL"} and "DONE" not in item.tags and not here:
            if any(
                "OVER" in each.tags and each.text != "through"
                for each in clause.following(item, 3)[:2]
            ):
                return not any(each.sort == "hours" for each in clause.following(item, 2)[:1])
            if any("DONE" in each.tags for each in clause.preceding(item, 3)[:2]):
                return True
    return (
        going
        and clause.has("DONE")
        and len(clause.items) <= 4
        and not clause.free("volume", "number")
    )


def _of_another_thing(clause: Clause) -> bool:
    """`cold out there`, `truck quit`, `the power went out`, `supper is done`: what is over is not
    the boil, though one is on."""
    ends = clause.first("END") or clause.first("SHUT") or clause.first("DONE")
    if ends is None:
        return False
    if ends.text == "cold":
        return "gone" not in clause.words()
    if not _MACHINES.isdisjoint(clause.words()) or "finish temp" in clause.text:
        return True  # "the pump quit"
    behind = [each.text for each in clause.following(ends, 2)]
    if behind[:1] == ["with"] and not clause.has("BOIL", "FIRE", "BATCH", "PANN"):
        return behind[1:] not in (["it"], ["this"], ["that"])  # "done with chores"
    if [each.text for each in clause.preceding(ends, 1)] in (["about"], ["almost"], ["nearly"]):
        return True  # "about done here"
    if ends.text == "stopped" and [e.text for e in clause.following(ends, 1)] in (["at"], ["by"]):
        return True  # "stopped at the store"
    return any(
        item.sort == "word"
        and (not item.tags or item.tags & {"SMALLTALK", "FOREIGN", "OTHERS"})
        and (item.text not in PLAIN_WORDS or item.text in _NO_FIRES)
        and not behind_a_preposition(clause, item)
        and item.text not in _GOES_ON
        for item in clause.items
    )


_MACHINES = frozenset(
    "pump battery phone truck generator lights fan blower damper feed valve door back wife".split()
)
_NO_FIRES = frozenset(
    "snow rain wind sun supper dinner lunch breakfast chores milking power school".split()
)
_GOES_ON = frozenset(
    "gonna going shes hes its she he her him let us tonite nite y'all guys".split()
)


def _temperature(clause: Clause) -> bool:
    return any(
        item.sort == "temp" or (item.sort == "number" and 150 < item.value < 260)
        for item in clause.items
    )


def _hours(clause: Clause, notes: Notes) -> tuple[float | None, bool]:
    """Hours of the boil, and whether a question had to be asked instead."""
    total: float | None = None
    for item in clause.free("hours"):
        if any(each.text in ("ago", "from") for each in clause.following(item, 1)):
            continue
        if _is_of_a_rate(clause, item):
            continue
        item.used = True
        if not clause.has("BOIL", "FIRE") and not _OTHER_HOURS.isdisjoint(clause.words()):
            continue  # "lit at four, my sister kept me on the phone forty minutes"
        part = item.value / 60 if item.unit == "minute" else item.value
        total = part if total is None else total + part
    if total is not None and not 0 < total <= MOST_HOURS:
        notes.ask(f"{total:g} hours of boiling in a day? How many was it?", fill="boiled {} hours")
        return None, True
    if total is None:
        clocks = [item for item in clause.of_sort("clock") if not item.used]
        pair = _from_to(clause)
        clocks = pair or [*clocks, *(_until(clause, clocks) or _out_behind(clause, clocks))][:2]
        if len(clocks) == 2 and clause.about("BOIL", "FIRE", "THROUGH", "LIT"):
            for item in clocks:
                item.used = True
            span = (clocks[1].value - clocks[0].value) % 24
            said = any("a" in each.text or "p" in each.text for each in clocks)
            if span > 12 and not said:
                span -= 12  # "from 10 to 2"
            notes.spans.add(notes.clause_number)
            return (span if span <= 16 else (span - 12) % 12), False
    return total, False


_OTHER_HOURS = frozenset(
    "phone nap napped slept sleep drive driving drove traffic church meeting walk walked walking "
    "shoveling shoveled shovelled".split()
)
"""What else takes hours while a fire burns."""


def _is_of_a_rate(clause: Clause, hours: Item) -> bool:
    """`8 gal an hour`."""
    before = clause.preceding(hours, 1)
    return hours.article and bool(before) and before[0].sort == "volume"


def _until(clause: Clause, clocks: list[Item]) -> list[Item]:
    """`noon to 6`: the bare hour behind a clock time."""
    if len(clocks) != 1:
        return []
    for item in clause.free("number"):
        before = clause.preceding(item, 2)
        whole = _is_an_hour(item)
        joined = len(before) > 1 and before[0].text in ("to", "til", "till", "until", "-")
        if whole and joined and before[1] is clocks[0]:
            return [item]
    return []


def _out_behind(clause: Clause, clocks: list[Item]) -> list[Item]:
    """`lit it at 10 am out at 6`, `lit yesterday at 8 out at 2`: the hours, bare or one of them."""
    hours = [item for item in clause.free("number") if _is_an_hour(item)]
    timed = [item for item in hours if _told_as_time(clause, item)]
    for item in timed:
        before = [each.text for each in clause.preceding(item, 2)]
        lit = [each for each in (*clocks, *timed) if each.start < item.start]
        if len(before) > 1 and before[1] in _OUT_WORDS and len(lit) == 1:
            return [item] if clocks else [*lit, item]
    return []


def _from_to(clause: Clause) -> list[Item]:
    """`from 9 to 3`, `from 10 to 2:30`: a bare hour, and another or a time."""
    for item in clause.free("number"):
        before = [each.text for each in clause.preceding(item, 1)]
        rest = clause.following(item, 2)
        told = before == ["from"] or _boiled_then(clause, item)
        if not told or len(rest) < 2 or rest[0].text not in ("to", "til", "till", "until"):
            continue
        pair = [item, rest[1]]
        if all(
            each.sort == "clock" or (each.sort == "number" and _is_an_hour(each)) for each in pair
        ):
            return pair
    return []


def _boiled_then(clause: Clause, item: Item) -> bool:
    """`boiled 10 to 5`, `boiled saturday 10 to 5`: behind the deed, or its day."""
    before = [each for each in clause.preceding(item, 2) if each.sort != "date"]
    bare = all(each.sort != "clock" for each in clause.items)  # "7 to 9 pm" are both in the evening
    return bare and bool(before) and {"BOIL", "PAST"} <= before[0].tags


def _is_an_hour(item: Item) -> bool:
    """`9`, `nine`."""
    return "." not in item.text and not item.part and item.value % 1 == 0 and 1 <= item.value <= 12


def _clock(clause: Clause, notes: Notes, state: str | None) -> time | None:
    """A stated time of day: `lit the fire at 9am`, `fire out at 9`."""
    for item in clause.items:
        bare = item.sort == "number" and item.value == int(item.value) and 1 <= item.value <= 12
        if item.used or not (
            item.sort == "clock" or (bare and state is not None and _told_as_time(clause, item))
        ):
            continue
        item.used = True
        if item.text == "midnight":
            return None  # of which day, the day of the boil does not say
        hours = item.value
        said_half = item.sort == "clock" and ("a" in item.text or "p" in item.text)
        if not said_half and hours < 12:
            now = notes.sent.hour + notes.sent.minute / 60
            if notes.day(clause) == notes.sent.date() and hours + 12 <= now:
                hours += 12  # the last time that the clock showed it
            elif state == "end" and hours < 8:
                hours += 12
        return time(int(hours) % 24, round(hours % 1 * 60) % 60)
    return None


_BEFORE_A_TIME = frozenset("at around since about by till til until".split())


def _told_as_time(clause: Clause, item: Item) -> bool:
    before = clause.preceding(item, 1)
    return bool(before) and before[0].text in _BEFORE_A_TIME
