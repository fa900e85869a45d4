"""Corrections and new records in one breath, and a day that is said twice."""

from __future__ import annotations

from bot.reading.dates import WEEKDAY
from bot.reading.two_ways.form import DAY, DEED, VOLUME, forms

_ONE_AT_A_TIME = "One at a time, please: first what should change, then the new record."
_WHICH_DAY = "I read two days. Text it once more, with the right one."

FORMS = forms(
    # "12 gal yesterday, sorry, the day before".
    (
        "no|sorry|oops|well|actually|wait|mean",
        rf"\b{DAY}[,.]? (?:no|sorry|oops|well|actually|wait|no wait|i mean)[,.]? "
        rf"(?:(?:the )?(?:day|night) before(?! last)|{DAY})(?! (?:we|i|it|was|is|\d))",
        _WHICH_DAY,
    ),
    # "12 gal. that was yesterday".
    (
        ". that was|. it was",
        rf"\d[^.]*\. (?:that|it) was {DAY}$",
        _WHICH_DAY,
    ),
    # "those 12 gal were from yesterday".
    (
        "were |was ",
        rf"^(?:the|those|that) {VOLUME}(?: of \w+)?"
        r"(?: (?:that )?i (?:told you about|texted|sent"
        r"|logged|mentioned))? (?:was|were) (?:from|for|off) ",
        "New, or put right? If right, text it like: that was yesterday.",
    ),
    # "yesterday's 12 gal was really from monday".
    (
        "'s |yesterdays ",
        rf"^(?:yesterday'?s|today'?s|(?:{WEEKDAY})'?s) {VOLUME}.* (?:was|were) (?:\w+ )?"
        r"(?:from|on|for|off) ",
        _WHICH_DAY,
    ),
    # "scratch that 12 gal": away with it, or that is the figure?
    (
        "scratch|strike|forget|cancel",
        rf"^(?:scratch|strike|forget|cancel) that {VOLUME}(?: at [\d.]+)?$",
        "Take it back, or put it right? Text: undo. Or: no, 14 gal.",
    ),
    # "brix on the last one is 2.6": of what was told.
    (
        "last ",
        r"\b(?:brix|sugar|gallons|amount|date)\b.* (?:the|that|my) last "
        r"(?:one|entry|record|text)\b.*\d",
        "New, or put right? If right, text it like: make that 2.6 brix.",
    ),
    # "take 2 gal off that": less, and no syrup.
    (
        "take |subtract|minus",
        r"^(?:please |can you )?(?:take|subtract|minus) (?:off )?"
        rf"{VOLUME}(?: off| from| out of)?(?: (?:that|it|the last\b.*|the total|today))?$",
        "How much was it, then? Text it like: make that 10 gal.",
    ),
    # "disregard last, boiled 40 gal", "no, 14 gal. also boiled 5 hrs".
    (
        "undo|scratch|cancel|delete|ignore|disregard",
        r"^(?:undo|scratch that|cancel that|delete last|ignore last(?: text| one)?"
        rf"|disregard last(?: text| one)?)[,.;:] (?:we |i )?{DEED}\b.*\d",
        _ONE_AT_A_TIME,
    ),
    (
        "no|sorry|oops|make",
        rf"^(?:no|sorry|oops|make that|make it)[,.]? {VOLUME}(?:\.|, and|,? also|,? and)"
        rf" (?:also )?(?:we |i )?{DEED}\b",
        _ONE_AT_A_TIME,
    ),
    # "burned half a cord. Actually call it 0.6 cord".
    (
        "actually",
        r"\d.*\bactually,? (?:call it|make it|more like) (?:about )?\d",
        "I read two figures for one thing. Text it once more, as it should be.",
    ),
    (
        "yesterday",
        rf"{VOLUME},? (?:with yesterday'?s|that's yesterday and today|thats yesterday and)",
        _WHICH_DAY,
    ),
)
