"""What may be boiled, drawn off or gathered, and a boil that may be on or over."""

from __future__ import annotations

from bot.reading.two_ways.form import VOLUME, forms

FORMS = forms(
    # "skip boiling today", "too late to light the fire".
    (
        "boiling|too ",
        r"^(?:hold off|skip|skipping|stop|put off)(?: on)? boiling\b"
        r"|^(?:it's |its |way |just )*too (?:late|cold|early|tired|windy|wet) to (?:light|boil"
        r"|start)\b(?!\?)",
        "Not yet? Text it when it is done.",
    ),
    # "fire almost went out", "lost my boil when I added cold sap".
    (
        "fire |lost ",
        r"\bfire (?:almost|nearly) (?:went out|died)|\bfire died down (?:some|a bit|a little)"
        r"|\bfire went out\b.*\b(?:going again|relit|lit it again)|\blost (?:the|my|our) boil\b",
        "Is the boil over? If so, text: fire out.",
    ),
    # "split a half cord while boiling": nothing is burned yet.
    (
        "cord",
        r"^(?!.*\b(?:burn|next))(?!.*\bfor\b).*\b(?:split|splitting|stacked|stacking|hauled|delivered"
        r"|bucked)\b[^.;$]*\bcords?\b",
        "Burned? If so, text it like: burned 1/3 cord.",
    ),
    # "burnt the batch, 1 gal lost".
    (
        "burnt|burned|scorched",
        rf"\b(?:burnt|burned|scorched) (?:the |a |that )?(?:batch|syrup|it)\b.*(?:{VOLUME} (?:lost"
        r"|gone)"
        rf"|lost {VOLUME})",
        "Sap, or syrup? Text it like: spilled 2 gal of sap.",
    ),
    # "lit a candle", "lit the woodstove, house is cold".
    (
        "lit ",
        r"\blit (?:a|an|the|my|our|up the) (?:candles?|lantern|lamp|wood ?stove|cigar|cigarette"
        r"|grill|pipe"
        r"|furnace|heater|bonfire)\b",
        "Boiling sap? If so, text: lit the fire.",
    ),
    # "dumped the last 5 gal in".
    (
        " in",
        r"^(?:dumped|poured|tipped|threw) (?:the |another )?(?:last "
        rf"|other )?{VOLUME}(?: of sap)? in$"
        r"|^(?:dumped|poured) the last (?:bucket|pail) in(?:to)? the pan$",
        "Into the pan? If so, text it like: boiling 20 gal.",
    ),
    # "25 gal down, 15 to go", "boiling off 5 gallons an hour".
    (
        "down|so far|to go|per h|an h|/h|/ h",
        rf"^{VOLUME} (?:down|in so far|in),? (?:and )?\d+ (?:more )?to go$|^{VOLUME} (?:down"
        r"|in so far)$"
        rf"|^(?:boiling |running |doing |cooking )?(?:off |down |at )?(?:about )?{VOLUME} ?(?:an "
        r"|/|per )h",
        "Text it at the end, like: boiled 30 gal in 6 hr.",
    ),
    # "a quart of syrup for every 11 gal of sap".
    (
        "every ",
        rf"\b(?:for|to|per|from|in|out of) every {VOLUME}",
        "Is that of now? If so, text it by itself, like: drew 3 qt.",
    ),
    # "boiled all but 5 gal", "20 gal is enough to boil", "8am to 4 with a 1 hour break".
    (
        "all but|to be boiled|to boil|rate| break",
        rf"\bboiled all but {VOLUME}|{VOLUME} (?:waiting to be boiled|is enough to boil)"
        r"|\bboil(?:ing)? rate\b.*\d|\bwith an? (?:[\d.]+ ?hours?|half hour|hour) break\b",
        "How much was boiled, and how long? Text it like: boiled 30 gal in 6 hr.",
    ),
    # "burned 1 of the 2 cords", "needs half a cord to finish", "the propane tank is at 20 lb".
    (
        "cord|propane",
        r"\bburned \d+ of (?:the|my|our) \d+ cords|\bneeds? (?:about )?(?:half|an?"
        r"|\d)[^.;]*\bcords? to (?:finish|go|boil)"
        r"|\bpropane tank (?:is at|ran out|reads)|^filled the propane\b",
        "How much was burned? Text it like: burned 1/3 cord. Or: used 20 lb propane.",
    ),
    # "boiled 3 hrs today 14 hrs so far".
    (
        "so far|total|for the season|altogether",
        r"\bboil\w*\b.*\b[\d.]+ ?(?:hrs?|hours?)\b.*\b[\d.]+ ?(?:hrs?|hours?) (?:\w+ )?(?:so far"
        r"|total|for the season|altogether)\b",
        "How many hours today? Text it by itself, like: boiled 3 hr.",
    ),
    # "6 hrs in, 30 gal down".
    (
        " in",
        rf"^[\d.]+ ?(?:hrs?|hours?) in\b,? .*{VOLUME}",
        "Boiled so far? Text it at the end, like: boiled 30 gal in 6 hr.",
    ),
    # "ran out of wood at 35 gal".
    (
        "ran out",
        rf"\bran out of (?:wood|propane|gas|steam|daylight|time)\b.*{VOLUME}",
        "How much of what? Text it by itself, like: boiled 35 gal.",
    ),
    # "used 1/3 cord for 30 gal".
    (
        "cord",
        rf"^(?!.*\bboil).*\bcords?\b.* (?:for|on|to do|per) {VOLUME}",
        "Boiled? Text each by itself, like: boiled 30 gal. Then: burned 1/3 cord.",
    ),
    # "32 gal gave a gallon".
    (
        "gave|made|yielded|turned|became|down to",
        rf"{VOLUME} (?:of sap )?(?:gave|made|yielded|turned into|became|went down to) "
        r"(?:me |us )?(?:about |just |only )?(?:(?:an?|half an?|half) )?"
        rf"(?:{VOLUME}|\w+)(?! of sap)$",
        "Boiled? If so, text it like: boiled 30 gal in 6 hr. Then: drew 3 qt.",
    ),
    # "the last of the sap, 9 gal, went in the pan".
    (
        " pan| fire| evaporator",
        rf"{VOLUME},? (?:all )?(?:of it )?(?:went|is|goes|going) (?:in|into|on|onto|through) "
        r"(?:the |my |our )?(?:pan|fire|evaporator)",
        "Into the pan? If so, text it like: boiling 20 gal.",
    ),
    # "last batch 30 gal 6 hrs 5 pints of syrup".
    (
        "batch",
        rf"\bbatch(?: \d+)?(?: was|:| of)? ?{VOLUME}(?! (?:of )?syrup)"
        r".*\b(?:syrup|hrs|hours)\b",
        "Boiled sap, or syrup? Text it like: boiled 30 gal in 6 hr. Then: drew 5 pints.",
    ),
    # "20 gal sap 4 hrs 3 pints syrup", "30 gal gave 3 qts of syrup".
    (
        "syrup",
        rf"^{VOLUME}(?:,? (?:gave|made|for)|(?: of)? sap(?: in)?,? (?:{VOLUME}|\d[\d.]* ?"
        r"(?:hrs?|hours)))[ ,].*\bsyrup\b",
        "Boiled? If so, text it like: boiled 30 gal in 6 hr. Then: drew 3 qt.",
    ),
    (
        "from|out of",
        rf"^(?:(?:i|we) )?(?:made|got|ended with) "
        rf"(?:{VOLUME}|(?:an?|half an?|one) \w+(?: and a half)?)"
        rf"(?: of syrup)? (?:from|out of) {VOLUME}(?: of sap)?$",
        "Boiled? If so, text it like: boiled 30 gal in 6 hr. Then: drew 3 qt.",
    ),
    (
        "ran ",
        r"\bran \d[\d.]* ?(?:gal|gallons) in \d[\d.]* ?(?:hrs?|hours)\b",
        "Sap that ran, or that you boiled? Text it like: boiled 35 gal in 5 hr.",
    ),
    # "lit the fire at 7am got 12 gal after that": not what was boiled.
    (
        "lit ",
        r"\blit (?:the |up )?(?:fire|arch|pan|evaporator)?\b[^.]*"
        rf"(?:\b(?:got|had) {VOLUME}|{VOLUME} when)",
        "How much of what? Text each by itself, like: got 12 gal. Or: drew 3 pints.",
    ),
    # "boiled half of it".
    (
        "boiled",
        r"\bboiled (?:about |only )?(?:half|a third|a quarter|most|some|part|1/2|1/3|1/4) of"
        r" (?:it|that|them|what)\b",
        "How many gal did you boil? Text it like: boiled 18 gal.",
    ),
    # "no sap today, boiled 20 gal": which of them is the day's?
    (
        "nothing|no sap|no run",
        r"\b(?:no sap|no run|nothing)(?: ran)?(?: today)?,? (?:so )?(?:we |i )?"
        r"(?:bottled|boiled|drew|canned) .*\d",
        "No sap, I read. Text that by itself, then the rest.",
    ),
    # "poured 20 gallons in and started boiling": into the pan.
    (
        " in and ",
        rf"\b(?:dumped|poured) {VOLUME} in and (?:started|lit|fired|got)",
        "Into the pan? If so, text it like: boiling 20 gal.",
    ),
    (
        "going|tried to",
        r"\bfire keeps going out\b|\bnever got (?:it|the fire) going\b"
        r"|\btried to (?:light|start)\b",
        "Is the boil on? Text: fire lit. Or: fire out.",
    ),
    # "boil's done, still got 10 gal": counted before?
    (
        "still ",
        rf"\b(?:done|lit|out|finished),? still (?:got|have|had) {VOLUME}",
        "Counted before? If it is new sap, text it like: got 10 gal.",
    ),
    # "shut her down at 9pm, 44 gallons": boiled, or drawn off?
    (
        "shut|quit|fire",
        rf"^(?:just )?(?:shut (?:her |it )?down|quit|fire out|fire's out)(?: at [\w: ]+)?,"
        rf" (?:got )?(?:{VOLUME}|a gallon)$",
        "Boiled, or syrup? Text it like: boiled 44 gal. Or: drew 3 qt.",
    ),
    # "I meant to boil 40 gal but the wind came up".
    (
        " to ",
        r"\b(?:meant|was supposed|were supposed) to (?:boil|be|gather|tap|draw)\b.* but\b",
        "What was done, then? Text it like: boiled 20 gal.",
    ),
    # "lit the fire at 7, should be done by 9".
    (
        "should be",
        rf"\bshould be (?:about |around )?{VOLUME}.*\b(?:by|when|once)\b",
        "Is it there already? If so, text it like: got 14 gal.",
    ),
)
