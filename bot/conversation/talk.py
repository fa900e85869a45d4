"""One text answered, from who sent it to the reply."""

from __future__ import annotations

from datetime import timedelta
from functools import partial

from bot.answers import Answer
from bot.answers.answer import shortened
from bot.clock import season_of
from bot.consent import Consent
from bot.conversation.amending import amend_chosen
from bot.conversation.handling import handle, said_back
from bot.conversation.household import take_code
from bot.conversation.in_all import ask_if_in_all
from bot.conversation.notes import add_notes
from bot.conversation.pending import WhereAsked
from bot.conversation.reach import Reach
from bot.conversation.recording import entry_of
from bot.conversation.retelling import ask_which_it_is
from bot.conversation.told_before import told_before, told_by_another
from bot.conversation.turn import Senses, Turn
from bot.conversation.understanding import Meant, logged_too, meant, said_already
from bot.conversation.words import units_spoken
from bot.ledger import Book, KeptText
from bot.outdoors import Looked, Skies, WeatherWantedError
from bot.reading import Choice, Doubt, Understanding
from bot.reading.kinds import (
    Boil,
    Chat,
    Cost,
    Fuel,
    Help,
    Jars,
    PouredOut,
    Question,
    Reading,
    Sap,
    Start,
    Stop,
    Syrup,
    TapsPulled,
    TapsSet,
)
from bot.standing.known import told_of, zone_of
from bot.standing.memory import Memories
from bot.wording import meeting, questions, receipts
from bot.wording.compose import Part, fit
from bot.wording.gsm import JOINED_SEPTETS, segments
from bot.wording.household import FORGOTTEN, NOT_OWN_WORDS
from bot.wording.know_how import ALL_TOLD

# Kinds that add up, so that the same words twice are asked about. Saying again where the
# trees are, or how warm the barrel is, changes nothing.
_ADDS_UP = (Sap, Syrup, Jars, PouredOut, Cost, Fuel, TapsPulled)
_CARRIER_WORDS = {"STOP": Stop(), "START": Start(), "HELP": Help()}
# The introduction matters more than any note, an aside less.
_INTRODUCTION, _ASIDE = 1, 5
_PLAIN_SEGMENTS, _MOST_SEGMENTS = 1, 2
# In a mail nothing has to be left out; it is measured as if it were texts all the same.
_MAIL_SEGMENTS = 20


class Conversation:
    """Answers texts. Knows no door and no clock: a text brings its time along.

    default_zone: the time zone of people whose place is not known yet. skies: the weather, None
    where no source is set. reach: the other ways out.
    """

    def __init__(
        self,
        senses: Senses,
        default_zone: str,
        skies: Skies | None = None,
        reach: Reach | None = None,
    ) -> None:
        self._senses = senses
        self._default_zone = default_zone
        self._skies = skies
        self._reach = reach
        self._memories = Memories()

    def answer(self, book: Book, text: KeptText, looked: Looked | None = None) -> str | None:
        """Record what a text says and give the reply, None where nothing may or need be said.

        1. Who is it? Somebody new gets a sugarbush of their own.
        2. What does it mean, also as the answer to what was asked last?
        3. Every reading is recorded or done, in the order of the text.
        4. The reply: receipts, where they stand, the one next step, answers, one question.

        After STOP all but the reply goes on: facts are kept, nothing is sent. Raises
        WeatherWantedError where an answer wants weather that is not in `looked`.
        """
        turn = self._turn(book, text, looked)
        muted = not Consent(book).may_text(turn.who.person_id)
        self._act(turn)
        self._remember(turn)
        if turn.is_silent or (muted and not Consent(book).may_text(turn.who.person_id)):
            book.questions.drop(turn.who.person_id)
            return None
        return self._said(turn)

    def look(self, wanted: WeatherWantedError) -> Looked:
        """Look the weather up that an answer wants, outside of any transaction."""
        assert self._skies is not None, "nobody wants weather where there is none"
        return self._skies.look(wanted)

    def zone(self, book: Book, address: str) -> str | None:
        """The time zone of the sugarbush that an address belongs to, None until it is known."""
        who = book.people.find(address)
        return None if who is None else zone_of(book, who.sugarbush_id)

    # --- who, and what is meant ------------------------------------------------------------

    def _turn(self, book: Book, text: KeptText, looked: Looked | None) -> Turn:
        incoming = text.incoming
        who = book.sender(incoming.sender)
        is_new = who is None
        if who is None:
            who = book.people.meet(incoming.sender, incoming.arrived_utc)
            Consent(book).met(who.person_id, text)
        # Nowhere is it earlier than a day before.
        earliest = season_of(incoming.arrived_utc.date() - timedelta(days=1))
        told = self._memories.told.of(book.edition(who.sugarbush_id), earliest)
        if told is None:
            told = told_of(book, who.sugarbush_id, earliest)
        place = told.place
        country = None if place is None else place.detail.get("country")
        units = units_spoken(incoming.text, who.units, country)
        if units is not None and units != who.units:
            who = book.people.speaks(who, units)
        zone = (None if place is None else place.detail.get("zone")) or self._default_zone
        return Turn(
            book,
            who,
            text,
            self._senses,
            zone,
            is_new=is_new,
            told=told,
            skies=self._skies,
            looked=looked,
            reach=self._reach,
            memories=self._memories,
        )

    def _act(self, turn: Turn) -> None:
        carrier = _CARRIER_WORDS.get(turn.text.incoming.opt_out or "")
        if carrier is not None:
            handle(turn, carrier)
            return
        if not turn.words.strip():
            media = turn.text.incoming.media
            empty = NOT_OWN_WORDS if turn.is_mail else meeting.EMPTY
            turn.reply.answers.append(meeting.NO_PICTURES if media else empty)
            return
        if take_code(turn):
            return
        said = meant(turn)
        if said.repeat is not None:
            turn.ask(said.repeat.question, said.repeat)
            return
        turn.book.questions.drop(turn.who.person_id)
        turn.words, turn.is_settled, turn.drops_question = said.words, said.settled, said.drops
        if said.left:
            turn.reply.answers.append(questions.LEFT_IT)
            return
        if said.wants_more:
            self._say_more(turn, said.rest)
            return
        if said.chosen is not None:
            if not amend_chosen(turn, *said.chosen):
                turn.reply.answers.append(questions.nothing_to_change(None))
        elif not said.settled and self._twice(turn, said):
            self._ask_again(turn, said.understanding)
            return
        elif not said.settled and (
            ask_if_in_all(turn, said.understanding)
            or self._is_anothers(turn, said.understanding)
            or ask_which_it_is(turn, said.understanding)
        ):
            return
        self._do(turn, said.understanding)

    def _do(self, turn: Turn, understanding: Understanding) -> None:
        # What is told counts before what is asked is answered.
        for reading in sorted(understanding.readings, key=_is_question):
            handle(turn, reading)
        if understanding.doubt is not None:
            doubt = understanding.doubt
            answerable = bool(doubt.choices or doubt.fill)
            turn.ask(doubt.question, doubt if answerable else None)

    def _say_more(self, turn: Turn, rest: tuple[str, ...]) -> None:
        """The next text of the last answer, and how to ask for the one after it."""
        turn.rest = rest[1:]
        said = Answer(rest[0], rest[1:]).opening if rest else ALL_TOLD
        turn.reply.answers.append(said)

    def _twice(self, turn: Turn, said: Meant) -> bool:
        if not any(map(_adds_up, said.understanding.readings)):
            return False
        return said_already(turn) or told_before(turn, said.understanding)

    def _is_anothers(self, turn: Turn, understanding: Understanding) -> bool:
        """Asks where somebody else of the sugarbush logged as much; whether it had to."""
        sap = logged_too(turn, understanding)
        other = None if sap is not None else told_by_another(turn, understanding)
        if sap is not None:
            question = questions.logged_too(*sap, turn.style)
        elif other is not None:
            question = questions.told_too(other[0], receipts.short(other[1], turn.style))
        else:
            return False
        same = Choice(("same", "the same", "ok", "yes", "y", "yep"), "")
        both = Choice(("both", "no", "n", "nope", "different", "count both"), turn.words)
        turn.ask(question, Doubt(question, (same, both)))
        return True

    def _ask_again(self, turn: Turn, understanding: Understanding) -> None:
        entries = [entry_of(one, turn.sent) for one in understanding.readings if _is_kept(one)]
        shown = "; ".join(receipts.short(entry, turn.style) for entry in entries)
        question = questions.again(shown)
        turn.ask(
            question,
            Doubt(
                question,
                (
                    Choice(("again", "twice", "both", "count it", "yes", "y", "yep"), turn.words),
                    Choice(("ok", "no", "n", "nope", "leave it", "leave", "once"), ""),
                ),
            ),
        )

    def _remember(self, turn: Turn) -> None:
        """Spare the next text of the sugarbush the look at what was told of it."""
        bush = turn.who.sugarbush_id
        if turn.is_forgotten:
            turn.book.afterwards(partial(self._memories.drop, bush))
            return
        edition = turn.book.edition(bush)
        if edition is not None:
            turn.book.afterwards(partial(self._memories.told.keep, edition, turn.season, turn.told))

    # --- the reply -------------------------------------------------------------------------

    def _said(self, turn: Turn) -> str | None:
        reply = turn.reply
        if turn.is_forgotten:
            return FORGOTTEN
        shown = [said_back(turn, entry) for entry in turn.recorded]
        recorded = receipts.lines(shown, turn.style)
        changed = receipts.lines([said_back(turn, one) for one in turn.changed], turn.style)
        reply.receipts[:0] = [*recorded, *(questions.changed(line) for line in changed)]
        add_notes(turn, [*turn.undone, *turn.changed, *turn.recorded])
        self._introduce(turn)
        short = reply.is_plain or turn.is_new
        most = _PLAIN_SEGMENTS if short else _MOST_SEGMENTS
        most = _MAIL_SEGMENTS if turn.is_mail else most
        said = fit(reply.parts(), most)
        if turn.is_new and reply.answers and segments(said) > _MOST_SEGMENTS:
            said = self._make_room(turn)
        if isinstance(turn.asked, WhereAsked) and turn.hints.get(_WHERE, said) not in said:
            turn.asked = None
        turn.close(said)
        return "\n\n".join(filter(None, (said, *reply.tables))) or None

    def _make_room(self, turn: Turn) -> str:
        """A long answer to somebody new, cut so that the first words to them fit too."""
        reply = turn.reply
        others = len(fit(reply.parts(), _MOST_SEGMENTS)) - len(reply.answers[-1])
        cut = shortened(reply.answers[-1], turn.rest, _MOST_SEGMENTS * JOINED_SEPTETS - others)
        reply.answers[-1], turn.rest = cut.opening, cut.more
        return fit(reply.parts(), _MOST_SEGMENTS)

    def _introduce(self, turn: Turn) -> None:
        """First words to somebody new; where the trees are, as long as nobody has told."""
        closing = turn.reply.closing
        unplaced = turn.known.place is None and turn.is_owner
        asks = turn.reply.question is not None
        if turn.is_new:
            said_anything = turn.reply.parts()
            if unplaced and not asks:
                first = meeting.FIRST_RECORD if said_anything else meeting.FIRST_CONTACT
                closing.append(Part(first, _INTRODUCTION, meeting.FIRST_AT_LEAST, stays=True))
                self._ask_where(turn, first)
            else:
                first = meeting.FIRST_QUESTION
                closing.append(Part(first, _INTRODUCTION, meeting.FIRST_AT_LEAST, stays=True))
            self._mention_invitation(turn)
            return
        may_ask = unplaced and not asks and not turn.undone and not turn.is_carrier_word
        if may_ask and turn.may_hint(_WHERE):
            closing.append(Part(meeting.ASK_WHERE, _ASIDE))
            self._ask_where(turn, meeting.ASK_WHERE)

    def _ask_where(self, turn: Turn, words: str) -> None:
        turn.hints[_WHERE] = words
        turn.asked = WhereAsked()

    def _mention_invitation(self, turn: Turn) -> None:
        invitation = turn.book.people.invitation(turn.who.address)
        if invitation is not None:
            turn.reply.closing.insert(0, Part(meeting.may_join(invitation.by)))


_WHERE = "where"


def _is_question(reading: Reading) -> bool:
    return isinstance(reading, Question)


def _adds_up(reading: Reading) -> bool:
    if isinstance(reading, TapsSet):
        return reading.manner == "add"
    if isinstance(reading, Boil):
        return reading.gallons is not None or reading.hours is not None
    if isinstance(reading, Sap):
        return reading.gallons > 0
    return isinstance(reading, _ADDS_UP)


def _is_kept(reading: Reading) -> bool:
    return not isinstance(reading, Chat) and "on" in reading.as_dict()
