"""Forms of words that may be read in two ways, one of them badly wrong: asked about before any
stage takes them, and nothing is recorded of the text. One entry a form: words without which it
cannot match (looked for first, which is quick), the form, and the question."""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY
from bot.reading.understanding import Doubt

_ONE_AT_A_TIME = "One at a time, please: first what should change, then the new record."
_WHICH_DAY = "I read two days. Text it once more, with the right one."
_HOW_MUCH_SAP = "How many gal of sap was that? Text it like: got 12 gal."
_HOW_MANY_TAPS = "How many taps in all? Text it like: pulled 6 taps."
_SET_TAPS = "Taps set, or what? If set, text it like: set 12 taps."
_DAY = (
    rf"(?:yesterday|today|{WEEKDAY}|last night"
    r"|(?:on )?the \d{1,2}(?:st|nd|rd|th)|(?:on )?\d{1,2}/\d{1,2}(?![\d/]| ?(?:gal|cord|full)))"
)
_VOLUME = r"\d[\d.]* ?(?:gal|gals|gallons?|qts?|quarts?|pints?|l|lit(?:er|re)s?)\b"
_DEED = (
    r"(?:boiled|drew|spent|paid|bottled|gathered|collected|lit|boiling|burned|set|put in|pulled)"
)

_FORMS = tuple(
    (tuple(hints.split("|")), re.compile(form), question)
    for hints, form, question in (
        # "12 gal yesterday, sorry, the day before".
        (
            "no|sorry|oops|well|actually|wait|mean",
            rf"\b{_DAY}[,.]? (?:no|sorry|oops|well|actually|wait|no wait|i mean)[,.]? "
            rf"(?:(?:the )?(?:day|night) before(?! last)|{_DAY})(?! (?:we|i|it|was|is|\d))",
            _WHICH_DAY,
        ),
        # "12 gal. that was yesterday".
        (
            ". that was|. it was",
            rf"\d[^.]*\. (?:that|it) was {_DAY}$",
            _WHICH_DAY,
        ),
        # "those 12 gal were from yesterday".
        (
            "were |was ",
            rf"^(?:the|those|that) {_VOLUME}(?: of \w+)?"
            r"(?: (?:that )?i (?:told you about|texted|sent"
            r"|logged|mentioned))? (?:was|were) (?:from|for|off) ",
            "New, or put right? If right, text it like: that was yesterday.",
        ),
        # "yesterday's 12 gal was really from monday".
        (
            "'s |yesterdays ",
            rf"^(?:yesterday'?s|today'?s|(?:{WEEKDAY})'?s) {_VOLUME}.* (?:was|were) (?:\w+ )?"
            r"(?:from|on|for|off) ",
            _WHICH_DAY,
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
            rf"{_VOLUME}(?: off| from| out of)?(?: (?:that|it|the last\b.*|the total|today))?$",
            "How much was it, then? Text it like: make that 10 gal.",
        ),
        # "disregard last, boiled 40 gal", "no, 14 gal. also boiled 5 hrs".
        (
            "undo|scratch|cancel|delete|ignore|disregard",
            r"^(?:undo|scratch that|cancel that|delete last|ignore last(?: text| one)?"
            rf"|disregard last(?: text| one)?)[,.;:] (?:we |i )?{_DEED}\b.*\d",
            _ONE_AT_A_TIME,
        ),
        (
            "no|sorry|oops|make",
            rf"^(?:no|sorry|oops|make that|make it)[,.]? {_VOLUME}(?:\.|, and|,? also|,? and)"
            rf" (?:also )?(?:we |i )?{_DEED}\b",
            _ONE_AT_A_TIME,
        ),
        # "12 gal, tossed one bucket that was cloudy".
        (
            "bucket|pail",
            rf"^{_VOLUME}, (?:but )?(?:tossed|dumped) (?:one|two|three|\d|the|a)"
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
            rf"{_VOLUME}",
            "How many gal are in, and how many lost? Text one, then the other.",
        ),
        # "took 30 gal to jim's to boil it": no boil of ours.
        (
            "'s",
            rf"\b(?:took|sent|drove|delivered) {_VOLUME}(?: of sap)?(?: over| up| down)? to "
            r"(?!today)\w+'s\b",
            "Is that still yours? If so, text it like: got 12 gal.",
        ),
        # "used 2 gal of sap for tea", "down to the last 10 gal".
        (
            "used |down to",
            rf"^(?:we |i )?used (?:about )?{_VOLUME}(?: of (?:the )?sap)? (?:for|to|in)\b"
            rf"|^(?:we're |i'm |now )?down to (?:the |my |our )?(?:last )?{_VOLUME}$",
            "Gathered just now? If so, text it like: got 12 gal.",
        ),
        # "14 gal less the one i spilled".
        (
            "less |minus |except ",
            rf"{_VOLUME} (?:less|minus|except)(?: for)? .*"
            r"\b(?:spilled|dumped|lost|tossed|leaked)\b",
            "How many gal are in, and how many lost? Text one, then the other.",
        ),
        # "12 gal in the tank, spilled a little".
        (
            "spilled",
            rf"^{_VOLUME} in the \w+(?: \w+)?, spilled a\b",
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
            rf"^(?:had )?{_VOLUME}(?: of sap)? (?:turned on (?:me|us)|(?:went|go|gone) (?:off|bad)"
            r"|spoiled|soured|turned sour)$",
            "Did you pour it out? If so, text it like: poured out 4 gal.",
        ),
        # "should have been 15 gal but I spilled 2".
        (
            "should",
            rf"\bshould(?:'ve| have|a)? been {_VOLUME},? (?:but )?(?:\w+ ){{0,3}}(?:spilled|leaked"
            r"|tipped|lost|dumped)\b",
            "How many gal are in, and how many lost? Text one, then the other.",
        ),
        # "dumped 12 gal into the head tank": into it, or away?
        (
            "dumped",
            rf"\bdumped {_VOLUME} in(?:to)? the (?:\w+ )?(?:tank|barrel|drum|tote|pan|evaporator)$",
            "Gathered, or poured away? Text it like: got 12 gal, or: poured out 12 gal.",
        ),
        (
            "dumped",
            rf"^(?:i |we )?dumped (?:my|our|the) (?:buckets|pails) and got {_VOLUME}",
            _HOW_MUCH_SAP,
        ),
        # "2 gal buckets were full": how many?
        (
            "full|overfl|brim",
            r"^(?:the )?\d gal\w* (?:buckets|pails) (?:were|are|was|is)? ?(?:all )?(?:full"
            r"|overflowing"
            r"|brimming)\b",
            _HOW_MUCH_SAP,
        ),
        # "put 12 taps out this morning": out in the woods, or out of the trees?
        (
            "put ",
            r"\bput \d+ (?:taps|spiles) out\b",
            "Taps set, or pulled? Text it like: set 12 taps, or: pulled 12 taps.",
        ),
        # "one tap in trees 1 through 8".
        (
            " in trees| each in",
            r"\b(?:taps?|spiles?|spouts?) (?:each )?in(?:to)? (?:trees \d|(?:the )?\d+ )",
            "How many taps in all? Text it like: set 12 taps.",
        ),
        # "took tap 3 out": one, or three?
        (
            "tap |spile ",
            r"\b(?:took|pulled|yanked|removed|lost) (?:out )?(?:tap|spile|spout) "
            r"(?:# ?|no\.? )?\d+\b",
            "How many taps in all? Text it like: pulled 1 tap.",
        ),
        # "6 taps dry, pulled them"; "pulled all the taps on tree 4".
        ("pulled", r"\b\d+ (?:taps|spiles)\b[^.]*\bpulled (?:them|em|'em)\b", _HOW_MANY_TAPS),
        (
            "pulled",
            r"\bpulled (?:all|every)(?: of)?(?: the| my| our)?(?: \d+)? (?:taps?|spiles?) "
            r"(?:(?:from|on|off|in) tree \d|(?:by|along|behind) )",
            _HOW_MANY_TAPS,
        ),
        # "set 24 taps, 14 yesterday and 10 today".
        (
            "set |put in|tapped",
            r"\b(?:set|put in|tapped) \d+ (?:taps|spiles)?,? \d+ (?:\w+ ){0,2}\w+ and \d+ ",
            "I read a total and its parts. Text each by itself, like: set 14 taps.",
        ),
        # "20 taps ready", "got 12 taps from dad", "4 taps aren't running".
        ("ready", r"\b\d+ (?:new )?(?:taps|spiles)(?: and \d+ \w+)? ready\b", _SET_TAPS),
        (
            "from|off",
            r"^(?:i |we )?got \d+ (?:new )?(?:taps|spiles) (?:from|off) \w+$",
            _SET_TAPS,
        ),
        ("new ", r"^(?:i |we )?got \d+ new (?:taps|spiles)(?: today| yesterday)?$", _SET_TAPS),
        ("$", r"^\$\d[\d.]*, \d+ (?:taps|spiles)$", "Text what was paid: spiles $36."),
        (
            "ok in a",
            r"\b\d taps? ok in a\b",
            "How thick is the tree? Text it like: taps for a 17 in tree",
        ),
        # "tapped a 20 in red maple, one tap": its girth, or a count?
        (
            "tapped",
            r"\btapped (?:a|an|the) \d+ in(?:ch)? (?:\w+ )?maple\b",
            "How many taps was that? Text it like: set 2 taps in tree 5.",
        ),
        (
            "than tree",
            r"\btree \d+ (?:is|was|looks) (?:bigger|thicker|fatter|wider"
            r"|smaller) than tree \d+ by\b",
            "How thick is each? Text it like: tree 4 is 18 in.",
        ),
        # "propane went up $2", "saved $20 on jars".
        (
            "$",
            r"\b(?:went up|is up|gone up|went down) (?:to |by )?\$\d[\d.]*(?! (?:a|per) gal)"
            r"|\bsaved \$\d",
            "Was that paid? If so, text it like: propane $24.",
        ),
        # "bought 6 sap bags at $4": each, or in all?
        (
            "bought",
            r"\bbought \d+ (?:\w+ ){0,2}\w+s (?:at|@) ?\$\d[\d.]*$",
            "How many $ in all? Text it like: 6 sap bags $24.",
        ),
        # "a case of pint jars is $19 at the store now".
        (
            "$",
            r"^(?!my |our |.*\b(?:bought|paid|spent|bill|total|costs?)\b)(?:an? |one |new )?.*"
            r"\b(?:is|are|runs?|go for|goes for|wants?|asks) (?:now |like |about |up to )?"
            r"\$\d[\d.]*(?: (?:now|each|apiece|online|these days|in town|for one|at (?:the )?\w+))",
            "What was paid, and for what? Text it like: lids $6.",
        ),
        (
            "total",
            r"\$\d[\d.]*\b.*\$\d[\d.]*,? (?:for a )?total (?:of )?\$?\d",
            "Text each cost by itself, like: lids $16.",
        ),
        (
            "paid",
            r"\bpaid \$\d[\d.]* for \w+ and \w+, \$\d[\d.]* and \$\d",
            "Text each cost by itself, like: lids $16.",
        ),
        # "a quart of syrup for every 11 gal of sap".
        (
            "every ",
            rf"\b(?:for|to|per|from|in|out of) every {_VOLUME}",
            "Is that of now? If so, text it by itself, like: drew 3 qt.",
        ),
        # "another 10 gal and i'll fire it up".
        (
            "'ll|will|can ",
            r"^(?:just )?(?:another|\d[\d.]* more|one more) ?(?:\d[\d.]* ?)?\w* and "
            r"(?:i'll|we'll|i will|we will|i can|we can)\b",
            _HOW_MUCH_SAP,
        ),
        # "ran out of wood at 35 gal".
        (
            "ran out",
            rf"\bran out of (?:wood|propane|gas|steam|daylight|time)\b.*{_VOLUME}",
            "How much of what? Text it by itself, like: boiled 35 gal.",
        ),
        # "used 1/3 cord for 30 gal".
        (
            "cord",
            rf"^(?!.*\bboil).*\bcords?\b.* (?:for|on|to do|per) {_VOLUME}",
            "Boiled? Text each by itself, like: boiled 30 gal. Then: burned 1/3 cord.",
        ),
        # "32 gal gave a gallon".
        (
            "gave|made|yielded|turned|became|down to",
            rf"{_VOLUME} (?:of sap )?(?:gave|made|yielded|turned into|became|went down to) "
            r"(?:me |us )?(?:about |just |only )?(?:(?:an?|half an?|half) )?"
            rf"(?:{_VOLUME}|\w+)(?! of sap)$",
            "Boiled? If so, text it like: boiled 30 gal in 6 hr. Then: drew 3 qt.",
        ),
        # "all dry except tree 4, half a gallon".
        (
            " tree ",
            r"\b(?:dry|nothing|empty|frozen|no sap)\b.* (?:except|but|besides|apart from) "
            r"(?:for )?tree ",
            "How much from that tree? Text it like: tree 4 half a gal.",
        ),
        # "the last of the sap, 9 gal, went in the pan".
        (
            " pan| fire| evaporator",
            rf"{_VOLUME},? (?:all )?(?:of it )?(?:went|is|goes|going) (?:in|into|on|onto|through) "
            r"(?:the |my |our )?(?:pan|fire|evaporator)",
            "Into the pan? If so, text it like: boiling 20 gal.",
        ),
        # "best year yet, 9 gal".
        (
            "best ",
            rf"\bbest (?:year|season|spring|march)\b.*{_VOLUME}",
            "Is that the sum of a season? Of today text it like: got 12 gal.",
        ),
        # "40 taps, gallon each", "got a gal from all 12 taps".
        (
            "each|all |every",
            r"^\d+ (?:taps|buckets|pails|bags|trees),? (?:about )?"
            r"(?:gal|gallon|quart|qt|pint|litre|liter)s? (?:each|apiece)$|\b(?:an?|one|half an?) (?:gal|gallon|quart|qt|pint|litre|liter)"
            r" (?:of sap )?(?:from|off|out of|in) (?:all|every)\b",
            _HOW_MUCH_SAP,
        ),
        # "tank reads 62": how warm, how full?
        (
            "tank|barrel|drum|tote",
            r"^(?:the )?(?:\w+ )?(?:tank|barrel|drum|tote) (?:reads?|is at|is|at|says) "
            r"(?:5[5-9]|[6-9]\d|\d{3})$",
            "Degrees, or gal? Text it like: tank is 38 F. Or: got 12 gal.",
        ),
        # "last batch 30 gal 6 hrs 5 pints of syrup".
        (
            "batch",
            rf"\bbatch(?: \d+)?(?: was|:| of)? ?{_VOLUME}(?! (?:of )?syrup)"
            r".*\b(?:syrup|hrs|hours)\b",
            "Boiled sap, or syrup? Text it like: boiled 30 gal in 6 hr. Then: drew 5 pints.",
        ),
        # "20 gal sap 4 hrs 3 pints syrup", "30 gal gave 3 qts of syrup".
        (
            "syrup",
            rf"^{_VOLUME}(?:,? (?:gave|made|for)|(?: of)? sap(?: in)?,? (?:{_VOLUME}|\d[\d.]* ?"
            r"(?:hrs?|hours)))[ ,].*\bsyrup\b",
            "Boiled? If so, text it like: boiled 30 gal in 6 hr. Then: drew 3 qt.",
        ),
        (
            "from|out of",
            rf"^(?:(?:i|we) )?(?:made|got) {_VOLUME}(?: of syrup)? (?:from|out of) {_VOLUME}$",
            "Boiled? If so, text it like: boiled 30 gal in 6 hr. Then: drew 3 qt.",
        ),
        (
            "ran ",
            r"\bran \d[\d.]* ?(?:gal|gallons) in \d[\d.]* ?(?:hrs?|hours)\b",
            "Sap that ran, or that you boiled? Text it like: boiled 35 gal in 5 hr.",
        ),
        # "got 12 gal at 3 and lit the fire at 4": sugar, or the clock?
        (
            " at ",
            rf"^(?!how|when|what).*{_VOLUME} at (?:[3-9]|1[0-2])"
            r"(?! ?(?:%|percent|brix|deg|\d|\.\d|:|am\b|pm\b))\b.*"
            r"\b(?:at|by) (?:\d|1[0-2])(?::\d\d)?(?![\d.:]| ?(?:%|percent|brix|deg))",
            "At what sugar, if you tested it? Text it like: 12 gal at 2.2.",
        ),
        ("clock", rf"{_VOLUME} at (?:[2-9]|1[0-2]) ?o ?'?clock\b", _HOW_MUCH_SAP),
        ("at ", rf"\bat (?:\d|1[0-2]) {_VOLUME}", _HOW_MUCH_SAP),
        # "lit the fire at 7am got 12 gal after that": not what was boiled.
        (
            "lit ",
            r"\blit (?:the |up )?(?:fire|arch|pan|evaporator)?\b[^.]*"
            rf"(?:\b(?:got|had) {_VOLUME}|{_VOLUME} when)",
            "How much of what? Text each by itself, like: got 12 gal. Or: drew 3 pints.",
        ),
        # "boiled half of it".
        (
            "boiled",
            r"\bboiled (?:about |only )?(?:half|a third|a quarter|most|some|part|1/2|1/3|1/4) of"
            r" (?:it|that|them|what)\b",
            "How many gal did you boil? Text it like: boiled 18 gal.",
        ),
        # "power went out for 3 hrs".
        (
            "power",
            r"\bpower (?:went|was) (?:out|off) for [\d.]+ (?:hrs?|hours)\b",
            "Text what you made by itself, like: bottled 5 pints.",
        ),
        # "no sap today, boiled 20 gal": which of them is the day's?
        (
            "nothing|no sap|no run",
            r"\b(?:no sap|no run|nothing)(?: ran)?(?: today)?,? (?:so )?(?:we |i )?"
            r"(?:bottled|boiled|drew|canned) .*\d",
            "No sap, I read. Text that by itself, then the rest.",
        ),
        # "my sister finished 5 L of syrup".
        (
            "my ",
            r"\bmy (?:sister|brother|cousin|uncle|aunt|friend|neighbou?r|buddy|boss)(?: \w+)?"
            r" (?:made|finished|drew|bottled|boiled)\b.*\d",
            "Theirs, or for your tally? If yours, text it like: drew 3 qt.",
        ),
        # "burned half a cord. Actually call it 0.6 cord".
        (
            "actually",
            r"\d.*\bactually,? (?:call it|make it|more like) (?:about )?\d",
            "I read two figures for one thing. Text it once more, as it should be.",
        ),
        # "poured 20 gallons in and started boiling": into the pan.
        (
            " in and ",
            rf"\b(?:dumped|poured) {_VOLUME} in and (?:started|lit|fired|got)",
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
            rf"\b(?:done|lit|out|finished),? still (?:got|have|had) {_VOLUME}",
            "Counted before? If it is new sap, text it like: got 10 gal.",
        ),
        # "shut her down at 9pm, 44 gallons": boiled, or drawn off?
        (
            "shut|quit|fire",
            rf"^(?:just )?(?:shut (?:her |it )?down|quit|fire out|fire's out)(?: at [\w: ]+)?,"
            rf" (?:got )?(?:{_VOLUME}|a gallon)$",
            "Boiled, or syrup? Text it like: boiled 44 gal. Or: drew 3 qt.",
        ),
        # What was once, or is so in general.
        (
            "ago|back in|in 20|ever|record|best|good tree",
            r"\ba year ago\b.*\d|\$\d.* back in (?:19|20)\d\d\b|\bin 20[012]\d (?:i|we)\b"
            r"|\bbest (?:day|tree|run|boil) (?:i |we )?ever\b|\b(?:record|best) (?:here )?is\b.*\d"
            r"|\ba good tree (?:gives|makes)\b",
            "Is that of now? If so, text it by itself, like: got 12 gal.",
        ),
        (
            "$",
            r"^(?:looked at|priced)\b.*\$\d|\bcosts \$\d"
            r"|\b(?:are|is) (?:now )?\$\d[\d.]* (?:a|per) (?:dozen|case|box)\b"
            r"|\bfound \$\d|\$\d+ bet\b|\bcould(?:'ve| have)? been \$\d|\breg\.? \$\d"
            r"|\$\d[\d.]* for \$\d",
            "What was paid, and for what? Text it like: lids $6.",
        ),
        # "I meant to boil 40 gal but the wind came up".
        (
            " to ",
            r"\b(?:meant|was supposed|were supposed) to (?:boil|be|gather|tap|draw)\b.* but\b",
            "What was done, then? Text it like: boiled 20 gal.",
        ),
        # "nearly spilled 5 gal".
        (
            "nearly|almost|just about",
            r"\b(?:nearly|almost|just about) (?:lost|spilled|spilt|dumped|tipped|knocked|poured)\b",
            "Was any lost? If so, text it like: poured out 2 gal. If sap: got 5 gal.",
        ),
        ("nothing", rf"^nothing (?:spilled|lost|leaked)\b.*{_VOLUME}", _HOW_MUCH_SAP),
        # "when we get to 40 gal we light it".
        (
            "when|once|as soon as",
            rf"\b(?:when|once|as soon as) (?:we|i) (?:get|have|hit|reach)(?: to)? {_VOLUME}",
            "Is that in the tank already? If so, text it like: got 12 gal.",
        ),
        (
            "yesterday",
            rf"{_VOLUME},? (?:with yesterday'?s|that's yesterday and today|thats yesterday and)",
            _WHICH_DAY,
        ),
        # "a 5 gal bucket and a half", "one bucket full, one a quarter".
        (
            "bucket|pail",
            r"\b\d+ (?:gal|l)\w* (?:bucket|pail) and a half\b"
            r"|\bbuckets? and a (?:half|quarter) (?:gal|gallon)\b"
            r"|\bbuckets? full,.*\b(?:one|two|three|\d) a (?:quarter|third)\b",
            _HOW_MUCH_SAP,
        ),
        (
            "one ",
            r"\b(?:sugar|brix|tested|tests)(?: is| was| only| at)* one "
            r"(?:two|three|four|five|six|seven|eight|nine)\b",
            "How much sugar is that? Text it in figures, like: sugar 1.4.",
        ),
        # "lit the fire at 7, should be done by 9".
        (
            "should be",
            rf"\bshould be (?:about |around )?{_VOLUME}.*\b(?:by|when|once)\b",
            "Is it there already? If so, text it like: got 14 gal.",
        ),
    )
)


def two_ways(text: str) -> Doubt | None:
    """What has to be asked about a tidy text before it is read. None if nothing."""
    for hints, form, question in _FORMS:
        for hint in hints:
            if hint in text:
                if form.search(text):
                    return Doubt(question)
                break
    return None
