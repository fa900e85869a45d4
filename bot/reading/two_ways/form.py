"""A form of words that may be read in two ways, and the parts that forms are made of."""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY

Form = tuple[tuple[str, ...], re.Pattern[str], str]
"""Words without which it cannot match, one of which is looked for first (that is quick); the form,
of a tidy text; and the question."""

DAY = (
    rf"(?:yesterday|today|{WEEKDAY}|last night"
    r"|(?:on )?the \d{1,2}(?:st|nd|rd|th)|(?:on )?\d{1,2}/\d{1,2}(?![\d/]| ?(?:gal|cord|full)))"
)
VOLUME = r"\d[\d.]* ?(?:gal|gals|gallons?|qts?|quarts?|pints?|l|lit(?:er|re)s?)\b"
DEED = r"(?:boiled|drew|spent|paid|bottled|gathered|collected|lit|boiling|burned|set|put in|pulled)"
HOW_MUCH_SAP = "How many gal of sap was that? Text it like: got 12 gal."


def forms(*table: tuple[str, str, str]) -> tuple[Form, ...]:
    """Each of a table's rows: its words, split by |, the form as an expression, the question."""
    return tuple(
        (tuple(words.split("|")), re.compile(form), question) for words, form, question in table
    )
