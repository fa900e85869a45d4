"""One's addresses, one's helpers, one's own data; and what a mail adds to that."""

from __future__ import annotations

from collections.abc import Sequence

from bot.wording.gsm import plain

NOT_OWN_WORDS = (
    "I found no words of your own in that mail. Write what you gathered on top, like 12 gal at 2.2."
)
NEUTRAL = (
    "Pailtext does not know this mail address, or could not be sure that this mail is from it,"
    " so nothing was read or changed. To link your address, text Pailtext: link, and the address."
)
LINKED_BY_MAIL = "Pailtext: this mail address is linked. What you mail counts like what you text."
HOW_ADD = (
    "Text add and their number or mail address, like: add my wife +1 555 010 0002."
    " They text join, and you share one tally."
)
HOW_REMOVE = "Text remove and their number or mail address, like: remove +1 555 010 0002."
HOW_MEND = (
    'Text "no, 14" for the last record, "the 12 gal was 14" for an older one, or "undo" to take'
    " the last one back."
)
NO_MAIL = "No mail is set up here, so I can only text."
CODE_WRONG = "That is not the code I mailed. Look again, or text link and your mail address anew."
CODE_OVER = "That code is no good any more. Text link and your mail address for a new one."
ENOUGH_CODES = "I have mailed enough codes for today. Try again tomorrow."
ADDRESS_TAKEN = "That address is linked to somebody already, so I have not linked it to you."
LINKED_ALREADY = "That address is yours already."
WHICH_MAIL = "Which mail address? Text link and the address, like link ann@maple.example."
ONLY_ADDRESS = "That is the only way I have to reach you. To leave, text forget me."
NOT_YOURS = "That address is not linked to you."
OWNER_ONLY = "Only the one who set this sugarbush up can do that."
OWNER_STAYS = "You set this sugarbush up, so you cannot leave it. To be gone, text forget me."
YOURSELF = "That is you. To be gone, text forget me."
NOT_IN = "Nobody with that address is on your sugarbush."
LEFT = (
    "You have left. What you logged stays there; what you text now counts for a tally of your own."
)
ALONE = 'Nobody helps here yet. Text "add" and their number or mail address.'
HEARS = "I text you at 7:30 pm what your helpers logged that day."
HEARS_NOT = "No more lines on what your helpers log."
BY_TEXT = "Alerts and reminders come by text."
BY_MAIL = "Alerts and reminders come by mail."
BY_BOTH = "Alerts and reminders come by text and by mail."
NO_MAIL_LINKED = "I have no mail address of yours. Text link and the address first."
NO_NUMBER_LINKED = "I have no number of yours to text to."
ATTACHED = "Your records are attached, as a CSV file that any spreadsheet opens."
NO_PAGES = "No public address is set up here, so I cannot send a file. Ask whoever hosts me."
FORGET_SURE = (
    "Forget you, your numbers, mail addresses and texts, for good? Text forget to do it, or keep."
)
FORGET_SHARED = (
    "Forget you, your numbers, addresses and texts, for good? The sugarbush keeps its totals"
    " without your name. Text forget to do it, or keep."
)
FORGOTTEN = "Done. Pailtext has forgotten you. A text from you would begin anew."
NOW_OWNER = "Pailtext: the one who set the sugarbush up has left. It is yours to run now."


def code_mailed(address: str, minutes: int) -> str:
    """To the one who asked to link an address."""
    return f"I mailed a code to {plain(address)}. Text it to me within {minutes} minutes."


def code_to_mail(code: str, own_address: str, minutes: int) -> str:
    """A code that is to be mailed from the address to be linked."""
    return (
        f"From the address to link, mail {code} to {plain(own_address, 60)}"
        f" within {minutes} minutes."
    )


def code_mail(code: str, minutes: int) -> str:
    """The mail with a code."""
    return (
        f"Your Pailtext code is {code}. Text it to Pailtext within {minutes} minutes, and this mail"
        " address is linked to your number. If you did not ask for it, do nothing."
    )


def linked(address: str) -> str:
    """To one whose code was right."""
    return f"{plain(address)} is linked: mail from there counts like a text from here."


def unlinked(address: str) -> str:
    """To one who took an address back."""
    return f"{plain(address)} is not linked any more."


def invitation(owner: str, by_mail: bool) -> str:
    """The one message to somebody who is asked in."""
    answer = "Answer" if by_mail else "Text"
    return (
        f"Pailtext: {plain(owner)} asks you to log sap for their sugarbush. {answer} join to do it,"
        " or do nothing. Rates may apply. STOP ends."
    )


def removed(address: str) -> str:
    """To the owner who took somebody off."""
    return f"{plain(address)} is off your sugarbush. What they logged stays."


def withdrawn(address: str) -> str:
    """To the owner who took an invitation back."""
    return f"{plain(address)} is not asked in any more."


def you_are_off(owner: str) -> str:
    """To the one who was taken off."""
    return (
        f"Pailtext: {plain(owner)} took you off their sugarbush."
        " What you text from now on counts for a tally of your own."
    )


def who_logged(lines: Sequence[tuple[str, int, str | None]]) -> str:
    """Who logged what in the season: name, how many records, their sap in words if any."""
    said = []
    for name, records, sap in lines:
        noun = "record" if records == 1 else "records"
        said.append(f"{name} {records} {noun}" + ("" if sap is None else f", {sap} sap"))
    return "; ".join(said) + "."


def helpers_today(lines: Sequence[tuple[str, int, str | None]], season: str) -> str:
    """The owner's line of an evening."""
    return f"Pailtext: today {who_logged(lines)} {season}"


def export_link(url: str, hours: int) -> str:
    """Where one's records can be fetched."""
    return f"Your records as a CSV file, for {hours} hours: {url}"
