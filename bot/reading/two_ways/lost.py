"""Sap that may be lost or kept, and how much of it."""

from __future__ import annotations

from bot.reading.two_ways.form import HOW_MUCH_SAP, VOLUME, forms

FORMS = forms(
    # "2 gal lost 10 gal saved", "dumped 2 kept 10 gal".
    (
        "saved|kept",
        rf"{VOLUME} lost\b.*{VOLUME} (?:saved|kept)|\bdumped \d+,? (?:but |and )?kept \d",
        "How many gal are in, and how many lost? Text one, then the other.",
    ),
    # "forgot to collect 12 gal", "the pigs got 6 gal", "lost a 5 gal bucket".
    (
        "forgot to|got |ate |drank |lost ",
        rf"\bforgot (?:about |to )(?:dump|collect|gather|empty)\b.*{VOLUME}"
        r"|\b(?:pigs?|raccoons?|coons?|deer|dogs?|cows?|goats?|bears?|chickens) "
        rf"(?:got(?: into)?|drank|ate) (?:about )?{VOLUME}"
        r"|\blost (?:an?|one|two|\d) \d+ ?gal\w* (?:bucket|pail|jug)",
        "Was sap lost, and how much? Text it like: poured out 2 gal.",
    ),
    # "12 gal, tossed one bucket that was cloudy".
    (
        "bucket|pail",
        rf"^{VOLUME}, (?:but )?(?:tossed|dumped) (?:one|two|three|\d|the|a)"
        r" (?:\w+ )?(?:bucket|pail)s?\b",
        "How many gal did you pour out? Text the sap first, then: poured out 2 gal.",
    ),
    (
        "the ",
        r"^(?:dumped|tossed|poured out) the (?:\w+ )?(?:buckets|pails)(?! in(?:to)?\b)\b.*\d",
        "How many gal did you pour out? Text the sap first, then: poured out 2 gal.",
    ),
    # "dumped buckets, 120 of them": emptied into the tank, or poured away?
    (
        "dumped ",
        r"\bdumped (?:the |our |my |all |all the )?(?:buckets|pails|bags)\b"
        r"(?! (?:in(?:to)?|of|full|that|because|cuz|out|on|over)\b)"
        r"(?!.*\b(?:cloudy|spoiled|sour|bad|yellow|moths|warm|rain|gone)\b)",
        "Gathered, or poured away? Text it like: got 12 gal, or: poured out 12 gal.",
    ),
    # "sled tipped, saved 6 of the 8 gal".
    (
        " of ",
        r"\b(?:saved|kept|salvaged|rescued) (?:about |only )?\d[\d.]* of (?:the |my |our )?"
        rf"{VOLUME}",
        "How many gal are in, and how many lost? Text one, then the other.",
    ),
    # "14 gal, though 3 of that was rainwater", "20 gal, about 4 of it ice".
    (
        " of it | of that | of which | of them ",
        rf"{VOLUME},? (?:but |though |and |with )?(?:about |maybe |only )?[\d.]+ of "
        r"(?:it|that|which|them) (?:was |is |were |being )?(?:rain\w*|ice|water|snow|melt)",
        "How many gal of sap did you keep? Text it like: got 12 gal.",
    ),
    # "14 gal less the one i spilled".
    (
        "less |minus |except ",
        rf"{VOLUME} (?:less|minus|except)(?: for)? .*"
        r"\b(?:spilled|dumped|lost|tossed|leaked)\b",
        "How many gal are in, and how many lost? Text one, then the other.",
    ),
    # "12 gal in the tank, spilled a little".
    (
        "spilled",
        rf"^{VOLUME} in the \w+(?: \w+)?, spilled a\b",
        "How many gal are in, and how many spilled? Text one, then the other.",
    ),
    # "dumped two 5 gal buckets": the size of a bucket.
    (
        "dumped|tossed|spilled|poured",
        r"\b(?:dumped|tossed|spilled|poured out) (?:\w+ )?(?:\d+|two|three|four|five|six) "
        r"(?:\d|one|two|three|four|five)[ -]?gal\w* (?:bucket|pail)s\b",
        "How many gal did you pour out in all? Text it like: poured out 10 gal.",
    ),
    # "6 gal went off".
    (
        "turned|off|bad|spoil|sour",
        rf"^(?:had )?{VOLUME}(?: of sap)? (?:turned on (?:me|us)|(?:went|go|gone) (?:off|bad)"
        r"|spoiled|soured|turned sour)$",
        "Did you pour it out? If so, text it like: poured out 4 gal.",
    ),
    # "should have been 15 gal but I spilled 2".
    (
        "should",
        rf"\bshould(?:'ve| have|a)? been {VOLUME},? (?:but )?(?:\w+ ){{0,3}}(?:spilled|leaked"
        r"|tipped|lost|dumped)\b",
        "How many gal are in, and how many lost? Text one, then the other.",
    ),
    # "dumped 12 gal into the head tank": into it, or away?
    (
        "dumped",
        rf"\bdumped {VOLUME} in(?:to)? the (?:\w+ )?(?:tank|barrel|drum|tote|pan|evaporator)$",
        "Gathered, or poured away? Text it like: got 12 gal, or: poured out 12 gal.",
    ),
    (
        "dumped",
        rf"^(?:i |we )?dumped (?:my|our|the) (?:buckets|pails) and got {VOLUME}",
        HOW_MUCH_SAP,
    ),
    # "nearly spilled 5 gal".
    (
        "nearly|almost|just about",
        r"\b(?:nearly|almost|just about) (?:lost|spilled|spilt|dumped|tipped|knocked|poured)\b",
        "Was any lost? If so, text it like: poured out 2 gal. If sap: got 5 gal.",
    ),
    ("nothing", rf"^nothing (?:spilled|lost|leaked)\b.*{VOLUME}", HOW_MUCH_SAP),
)
