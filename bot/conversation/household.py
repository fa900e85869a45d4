"""One's addresses, one's helpers, how alerts come, and one's own data: done and told."""

from __future__ import annotations

import hmac
import re
import secrets
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, timedelta

from bot.conversation.addresses import normal_address
from bot.conversation.reach import EXPORT_FOR
from bot.conversation.turn import Turn
from bot.ledger import HELPER, OWNER, Code, Logged, NewText
from bot.ledger.outbox import DROPPED, OWED
from bot.messages import EMAIL_DOOR, SMS_DOOR, Kind, door_of
from bot.reading import Choice, Doubt
from bot.reading.kinds import Household
from bot.wording import amounts
from bot.wording import household as wording
from bot.wording.gsm import plain, segments
from bot.wording.style import Style

# How long a code is good, how often a wrong one may be given, and how many a person gets in a
# local day (each is a mail to an address that somebody named). Our own.
CODE_FOR = timedelta(minutes=15)
MOST_WRONG = 3
MOST_CODES_A_DAY = 5
# A code that is texted back: six digits, one in a million.
_DIGITS = 6
_IS_CODE = re.compile(r"\W*(?:(?:my |the )?code(?: is)?\W*)?(\d{3})[ -]?(\d{3})\W*", re.IGNORECASE)
# A code that is mailed may be guessed at by strangers: of letters that are not taken for others.
MAILED_LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789"
MAILED_LENGTH = 8
# A notice to somebody about what another did. Our own.
NOTICE_FOR = timedelta(days=2)
# An invitation is one message, whenever it is made again.
_ONCE = date(2000, 1, 1)
_INVITE = "invite:"


def take_code(turn: Turn) -> bool:
    """Take a text as the code that was mailed to link an address; whether it was one."""
    found = _IS_CODE.fullmatch(turn.words)
    mail, me = turn.book.mail, turn.who.person_id
    code = None if found is None else mail.code_of(me)
    if found is None or code is None or code.address is None:
        return False
    answers = turn.reply.answers
    if turn.now_utc >= code.expires_utc:
        mail.drop_code(me)
        answers.append(wording.CODE_OVER)
    elif hmac.compare_digest(code.code, found[1] + found[2]):
        mail.drop_code(me)
        if turn.book.people.find(code.address) is None:
            mail.link(me, code.address, turn.now_utc)
            answers.append(wording.linked(code.address))
        else:
            answers.append(wording.ADDRESS_TAKEN)
    elif code.tries + 1 >= MOST_WRONG:
        mail.drop_code(me)
        answers.append(wording.CODE_OVER)
    else:
        mail.wrong(me)
        answers.append(wording.CODE_WRONG)
    return True


def household(turn: Turn, reading: Household) -> None:
    """Do what a text about one's household says."""
    said = _DEEDS[reading.deed](turn, reading)
    if said:
        turn.reply.answers.append(said)


# --- addresses -----------------------------------------------------------------------------------


def _link(turn: Turn, reading: Household) -> str:
    """Mail a code to the address that is to be linked; it is texted back."""
    address = normal_address(reading.address or "")
    if turn.reach.mail_address is None:
        return wording.NO_MAIL
    if address is None or door_of(address) != EMAIL_DOOR:
        return wording.WHICH_MAIL
    if address in turn.book.people.addresses(turn.who.person_id):
        return wording.LINKED_ALREADY
    code = f"{secrets.randbelow(10**_DIGITS):0{_DIGITS}}"
    until_utc = turn.now_utc + CODE_FOR
    words = wording.code_mail(code, _minutes())
    for number in range(MOST_CODES_A_DAY):
        if _owe(turn, address, "reply", f"code:{number}", words, turn.today, until_utc):
            turn.book.mail.offer(Code(turn.who.person_id, address, code, 0, until_utc))
            return wording.code_mailed(address, _minutes())
    return wording.ENOUGH_CODES


def _link_by_mail(turn: Turn, _reading: Household) -> str:
    """Text a code that is mailed from the address to be linked."""
    if turn.reach.mail_address is None:
        return wording.NO_MAIL
    code = "".join(secrets.choice(MAILED_LETTERS) for _ in range(MAILED_LENGTH))
    turn.book.mail.offer(Code(turn.who.person_id, None, code, 0, turn.now_utc + CODE_FOR))
    half = MAILED_LENGTH // 2
    shown = f"{code[:half]}-{code[half:]}"
    return wording.code_to_mail(shown, turn.reach.mail_address, _minutes())


def _unlink(turn: Turn, reading: Household) -> str:
    address = normal_address(reading.address or "")
    mine = turn.book.people.addresses(turn.who.person_id)
    if address is None or address not in mine:
        return wording.NOT_YOURS
    if len(mine) == 1 or address == turn.who.address:
        return wording.ONLY_ADDRESS
    turn.book.mail.unlink(turn.who.person_id, address)
    return wording.unlinked(address)


def _by(way: str) -> Callable[[Turn, Household], str]:
    """How unasked texts come."""

    def choose(turn: Turn, _reading: Household) -> str:
        mine = turn.book.people.addresses(turn.who.person_id)
        mails = [one for one in mine if door_of(one) == EMAIL_DOOR]
        if way != "text" and not mails:
            return wording.NO_MAIL_LINKED
        if way != "mail" and len(mails) == len(mine):
            return wording.NO_NUMBER_LINKED
        turn.book.mail.route(turn.who.person_id, way)
        if way != "text":
            for mail in mails:
                turn.book.mail.mute(mail, None)
        return {"text": wording.BY_TEXT, "mail": wording.BY_MAIL, "both": wording.BY_BOTH}[way]

    return choose


# --- helpers -------------------------------------------------------------------------------------


def invite(turn: Turn, address: str) -> None:
    """The one message to somebody who is asked in; nothing to one who has said STOP."""
    words = wording.invitation(turn.who.address, by_mail=door_of(address) == EMAIL_DOOR)
    if door_of(address) == EMAIL_DOOR and turn.reach.mail_address is None:
        return
    _notify(turn, address, f"{_INVITE}{address}", words, _ONCE)


def drop_invitation(turn: Turn, address: str) -> None:
    """The message that asks somebody in need not go any more."""
    outbox = turn.book.outbox
    persons = {mate.person_id for mate in turn.book.members.of(turn.who.sugarbush_id)}
    invited = turn.book.people.find(address)
    if invited is not None:
        persons.add(invited.person_id)
    for each in turn.book.mail.owed_ids(persons, f"{_INVITE}{address}", address):
        owed = outbox.lock(each)
        if owed is not None and owed.state == OWED:
            outbox.change(each, state=DROPPED, reason="nobody is asked in any more")


def _remove(turn: Turn, reading: Household) -> str:
    """Take somebody off the sugarbush; what they logged stays."""
    address = normal_address(reading.address or "")
    people, bush = turn.book.people, turn.who.sugarbush_id
    if not turn.is_owner:
        return wording.OWNER_ONLY
    if address is None:
        return wording.NOT_IN
    if people.is_invited(bush, address):
        people.withdraw(bush, address, turn.now_utc)
        drop_invitation(turn, address)
        return wording.withdrawn(address)
    if not people.is_member(bush, address):
        return wording.NOT_IN
    other = people.find(address)
    assert other is not None, "a member is somebody"
    if other.person_id == turn.who.person_id:
        return wording.YOURSELF
    turn.book.members.move_out(other.person_id, address, turn.now_utc)
    words = wording.you_are_off(turn.who.address)
    _notify(turn, address, f"off:{turn.text.id}", words, turn.today)
    return wording.removed(address)


def _leave(turn: Turn, _reading: Household) -> str:
    if turn.is_owner:
        return wording.OWNER_STAYS
    bush = turn.book.members.move_out(turn.who.person_id, turn.who.address, turn.now_utc)
    turn.who = replace(turn.who, sugarbush_id=bush, role=OWNER)
    turn.forget()
    return wording.LEFT


def _members(turn: Turn, _reading: Household) -> str:
    """Who is in, and what each logged this season."""
    mates = turn.book.members.of(turn.who.sugarbush_id)
    if len(mates) == 1:
        return wording.ALONE
    logged = turn.book.members.logged(turn.who.sugarbush_id, turn.season)
    names = {
        mate.person_id: "You" if mate.person_id == turn.who.person_id else plain(mate.address)
        for mate in mates
    }
    counts = {one.person_id: one for one in logged}
    counts |= {number: Logged(number, 0, None) for number in names if number not in counts}
    lines = logged_lines(list(counts.values()), names, turn.style)
    return wording.who_logged(lines)


def logged_lines(
    logged: list[Logged], names: dict[int, str], style: Style
) -> list[tuple[str, int, str | None]]:
    """Who, how many records, and the sap in words; those who have left have no name."""
    return [
        (
            names.get(one.person_id, "One who left"),
            one.records,
            None if one.sap_gallons is None else amounts.volume(one.sap_gallons, style),
        )
        for one in logged
    ]


def _hear(turn: Turn, reading: Household) -> str:
    if not turn.is_owner:
        return wording.OWNER_ONLY
    wished = reading.deed == "hear"
    turn.book.members.hear(turn.who.person_id, wished)
    return wording.HEARS if wished else wording.HEARS_NOT


# --- one's own data ------------------------------------------------------------------------------


def export(turn: Turn) -> str:
    """One's records: attached to the answer of a mail, else behind a link."""
    if turn.text.incoming.door == EMAIL_DOOR:
        turn.book.mail.attach(turn.text.id, "export")
        return wording.ATTACHED
    if turn.reach.export_url is None:
        return wording.NO_PAGES
    until_utc = turn.now_utc + EXPORT_FOR
    url = turn.reach.export_url(turn.who.person_id, until_utc)
    return wording.export_link(url, round(EXPORT_FOR / timedelta(hours=1)))


def _forget(turn: Turn, _reading: Household) -> str:
    """Ask once, then remove the person."""
    mates = turn.book.members.of(turn.who.sugarbush_id)
    if not turn.is_settled:
        question = wording.FORGET_SHARED if len(mates) > 1 else wording.FORGET_SURE
        sure = Choice(("forget", "forget me", "do it", "sure"), "forget me")
        turn.ask(question, Doubt(question, (sure, Choice(("keep", "no", "n", "nope"), ""))))
        return ""
    others = [mate for mate in mates if mate.person_id != turn.who.person_id]
    if turn.is_owner and others:
        heir = next((one for one in others if one.role == HELPER), others[0])
        turn.book.members.make_owner(heir.person_id, turn.who.sugarbush_id)
        _notify(turn, heir.address, f"owner:{turn.text.id}", wording.NOW_OWNER, turn.today)
    turn.book.own_data.forget(turn.who.person_id, turn.text.id)
    turn.is_forgotten = True
    return wording.FORGOTTEN


# --- texts to others -----------------------------------------------------------------------------


def _notify(turn: Turn, address: str, key: str, words: str, on: date) -> None:
    """A notice to somebody, as theirs where they are known, so that their STOP is minded."""
    other = turn.book.people.find(address)
    person_id = turn.who.person_id if other is None else other.person_id
    until_utc = turn.now_utc + NOTICE_FOR
    _owe(turn, address, "notice", key, words, on, until_utc, person_id)


def _owe(
    turn: Turn,
    address: str,
    kind: Kind,
    key: str,
    words: str,
    on: date,
    until_utc: datetime,
    person_id: int | None = None,
) -> bool:
    """Owe a text from this transaction on; whether it was not owed before."""
    incoming = turn.text.incoming
    is_same_door = incoming.door == door_of(address) == SMS_DOOR
    text = NewText(
        person_id=turn.who.person_id if person_id is None else person_id,
        door=door_of(address),
        address=address,
        kind=kind,
        key=key,
        local_date=on,
        body=words,
        segments=segments(words),
        due_utc=turn.now_utc,
        useless_after_utc=until_utc,
        sent_from=incoming.to if is_same_door else "",
    )
    return turn.book.outbox.owe([text], turn.now_utc) == 1


def _minutes() -> int:
    return round(CODE_FOR / timedelta(minutes=1))


def _told(words: str) -> Callable[[Turn, Household], str]:
    """What only has to be said."""
    return lambda _turn, _reading: words


_DEEDS: dict[str, Callable[[Turn, Household], str]] = {
    "link": _link,
    "link_by_mail": _link_by_mail,
    "unlink": _unlink,
    "by_text": _by("text"),
    "by_mail": _by("mail"),
    "by_both": _by("both"),
    "remove": _remove,
    "leave": _leave,
    "members": _members,
    "hear": _hear,
    "hush": _hear,
    "forget": _forget,
    "how_add": _told(wording.HOW_ADD),
    "how_remove": _told(wording.HOW_REMOVE),
    "how_mend": _told(wording.HOW_MEND),
}
