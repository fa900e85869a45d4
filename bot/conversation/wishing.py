"""How somebody wants to be texted unasked: kept as a record of theirs, and told back."""

from __future__ import annotations

from bot.consent import HOURS
from bot.conversation.turn import Turn
from bot.entry import Entry
from bot.reading import Doubt
from bot.reading.kinds import Wish
from bot.standing.wishes import EVERY, NEVER, RUN_DAYS, WISH, Wishes, wishes_of
from bot.wording import wishes as wording


def wish(turn: Turn, reading: Wish) -> None:
    """Keep a wish and say what holds now. An hour at which no alert may come is asked about; to
    name an hour is to want alerts again."""
    hours = HOURS["alert"]
    assert hours is not None, "alerts keep hours"
    opens, closes = hours
    if reading.alert_at is not None and not opens <= reading.alert_at < closes:
        question = wording.which_hour(opens, closes)
        turn.ask(question, Doubt(question, (), "text me at {}", number_only=True))
        return
    told: dict[str, object] = {}
    if reading.alert_at is not None:
        told["alert_at"] = reading.alert_at.isoformat(timespec="minutes")
    mornings = reading.mornings
    if mornings is None and reading.alert_at is not None and standing(turn).mornings == NEVER:
        mornings = RUN_DAYS
    if mornings is not None:
        told["mornings"] = mornings
    if reading.weekly is not None:
        told["weekly"] = reading.weekly
    if not told:
        return
    turn.add(Entry(kind=WISH, on=turn.today, at_local=turn.sent, detail=told))
    # What was planned for this morning is planned anew, as they wish now.
    turn.book.outbox.take_back(turn.who.person_id, "alert", turn.now_utc)
    turn.reply.answers.append(_said(turn, reading))


def standing(turn: Turn) -> Wishes:
    """How the sender wants to be texted, as of the last record."""
    told = turn.book.roll.of_kinds((turn.who.sugarbush_id,), (WISH,))
    return wishes_of(
        one.entry
        for one in told.get(turn.who.sugarbush_id, ())
        if one.person_id == turn.who.person_id
    )


def carry_over(turn: Turn, wishes: Wishes) -> None:
    """Keep somebody's wishes in the sugarbush that they have just joined."""
    if wishes == Wishes():
        return
    told = {
        "alert_at": wishes.alert_at.isoformat(timespec="minutes"),
        "mornings": wishes.mornings,
        "weekly": wishes.weekly,
    }
    turn.add(Entry(kind=WISH, on=turn.today, at_local=turn.sent, detail=told))


def _said(turn: Turn, reading: Wish) -> str:
    now = standing(turn)
    said = []
    if reading.alert_at is not None or reading.mornings is not None:
        said.append(
            {NEVER: wording.NOTHING, EVERY: wording.every(now.alert_at)}.get(
                now.mornings, wording.run_days(now.alert_at)
            )
        )
        if turn.skies is None and now.mornings != NEVER:
            said.append(wording.NO_SOURCE)
    if reading.weekly is not None:
        said.append(wording.WEEKLY if reading.weekly else wording.NO_WEEKLY)
    return " ".join(said)
