"""First words, carrier words, and who may write in whose tally."""

from __future__ import annotations

from collections.abc import Sequence

from bot.wording.gsm import plain

ASK_WHERE = "Where are your trees, ZIP or town?"
CARRIER_LINE = "Rates may apply. STOP ends."

FIRST_CONTACT = (
    'Pailtext here: text what you gather, like "12 gal at 2.2", and I keep the season\'s tally.'
    f" {ASK_WHERE} {CARRIER_LINE}"
)
# After the receipt of a first text that was a record already.
FIRST_RECORD = f"Pailtext here, keeping your season's tally. {ASK_WHERE} {CARRIER_LINE}"
# After the question that a first text raised, or when the place is known already.
FIRST_QUESTION = f"Pailtext here, keeping your season's sap tally. {CARRIER_LINE}"

# Where all else has to be said first.
FIRST_AT_LEAST = f"Pailtext here. {CARRIER_LINE}"

HELP = (
    'Pailtext keeps your sugaring tally: text "12 gal at 2.2", ask "how much so far" or "will it'
    ' run", or undo. Weather: NWS, MET Norway. Rates may apply. STOP ends.'
)

NO_PICTURES = "I can't see pictures, only words. Text what you gathered, like 12 gal at 2.2."
EMPTY = "That text was empty. Text what you gathered, like 12 gal at 2.2."
TROUBLE = (
    "Pailtext: your text is safe, but I could not work it out just now."
    " I will take it up again, no need to send it twice."
)

NOTHING_INVITED = (
    "Nobody has asked this number to join yet. They text: add, and then your number."
    " Or keep a tally of your own: text what you gather."
)
OWNER_ONLY = "Only the one who set this sugarbush up can add people."
YOURSELF = "That is your own number. Text the number of the one to add."


def unknown_place(words: str) -> str:
    """A place that could not be found: asks again."""
    return (
        f'I can\'t place "{plain(words, 30)}". Which ZIP or postal code,'
        " or town and state, like Orwell VT?"
    )


def which_place(names: Sequence[str]) -> str:
    """A town that is in several states, or is spelt nearly so."""
    if len(names) == 1:
        return f"Do you mean {plain(names[0])}? Text ok, or a ZIP or postal code."
    said = [plain(name) for name in names]
    return f"Which one: {', '.join(said[:-1])} or {said[-1]}?"


def back_on(standing: str) -> str:
    """To one who texted START after STOP."""
    return f"Pailtext is back on, your records are kept. {standing} STOP ends."


def invited(address: str) -> str:
    """To the owner, after inviting somebody."""
    return f"{plain(address)} may join. Ask them to text join to this number."


def already_member(address: str) -> str:
    """To the owner, who invited somebody that is in already."""
    return f"{plain(address)} is on your sugarbush already."


def bad_address(words: str) -> str:
    """Asks for an address that can be used."""
    return (
        f'I can\'t use "{plain(words, 30)}". Which number or e-mail, with area code,'
        " like add +1 555 010 0123?"
    )


def joined(owner: str, standing: str) -> str:
    """To one who joined a sugarbush."""
    return f"You are in: what you text counts for the sugarbush of {plain(owner)}. {standing}"


def may_join(owner: str) -> str:
    """To one who is invited but has not joined."""
    return f"{plain(owner)} asks you in: text join to count for their sugarbush."


def already_in(owner_is_self: bool) -> str:
    """To one who texts join without need."""
    if owner_is_self:
        return NOTHING_INVITED
    return "You are in already: what you text counts for the shared sugarbush."


def own_records_first(mine: str) -> str:
    """To one who keeps a tally already and texts join."""
    return (
        f"You keep a tally of your own ({mine}), and one person has one tally,"
        " so I have not moved you. Undo yours, then text join."
    )
