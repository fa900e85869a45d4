"""First stage: a text as it arrived becomes plain words. Order of work:

1. compatibility forms, curly quotes and long dashes become plain ones,
2. vulgar fractions become " 1/2", what is no letter, digit or known sign becomes a space,
3. commas inside numbers go (1,200) or become points (2,2); 12 $ becomes $12,
4. spoken punctuation ("comma", "period") becomes punctuation.
"""

from __future__ import annotations

import re
import unicodedata

from bot.reading.courtesies import without_courtesies
from bot.reading.number_words import TENS, in_figures
from bot.reading.rewrites import Rewrites
from bot.reading.signs import Sought

LONGEST = 2000
"""Characters of the longest text that is read: Twilio joins up to 1,600, and a longer one is no
note from the woods."""

_PLAIN = str.maketrans(
    {
        "\u2018": "'", "\u2019": "'", "\u02bc": "'", "\u2032": "'", "`": "'", "\u00b4": "'",
        "\u201c": '"', "\u201d": '"', "\u2033": '"',
        "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": " - ", "\u2014": " - ",
        "\u2212": "-", "\u2044": "/", "\u00d7": " x ", "\u00b0": " deg ", "\u2026": ".",
        "\u00ba": " deg ", "\t": " ", "\r": "\n", "\u00a0": " ", "\u200b": "", "\ufeff": "",
    }
)  # fmt: skip
_VULGAR = {
    "\u00bd": "1/2", "\u00bc": "1/4", "\u00be": "3/4", "\u2153": "1/3", "\u2154": "2/3",
    "\u215b": "1/8", "\u215c": "3/8", "\u215d": "5/8", "\u215e": "7/8",
}  # fmt: skip
_VULGAR_SIGN = re.compile("[" + "".join(_VULGAR) + "]")
_SPACES = re.compile(r"[ \t]{2,}")
_STRANGE = re.compile(r"[^\w\s.,;:!?/+&@#%$\"'()\-=*<>~{}\[\]]|_")
_THOUSANDS = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")
_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d{1,2}(?!\d))")
_DOLLARS_BEHIND = re.compile(
    r"(?<![\d.$/])(?<!or )(?<!to )\b(\d+(?:\.\d+)?) ?"
    r"(?:\$(?! ?\d)|dollars\b(?!(?: and)? \d\d? cents))"
)
_CENTS = re.compile(r"\b(\d+) (?:dollars|bucks) (?:and )?(\d\d?) cents\b")
_INCHES = re.compile(r"(?<=\d) ?in\.(?= ?[,;]| (?:a?round|across|diam|dbh|thick|girth|circ))")
_FEET_INCHES = re.compile(r"\b(\d{1,2}) ?(?:ft|feet|foot|') ?(\d{1,2}) ?(?:in\b|inch\w*|\")")
_WORTH = re.compile(
    r"\b(gal|gals|gallons?|l|lit(?:re|er)s?|quarts?|qts?|pints?) worth\b"
    r"(?! ?\$| ?\d| at least| about| more)"
)
_HOURS_MINUTES = re.compile(r"\b(\d{1,2})h([0-5]\d)\b")
# "lit at 7h30": the time of day, as it is written in French.
_CLOCK_H = re.compile(r"\b(at|by|from|since|till?|until|to|around) (\d{1,2})h([0-5]\d)\b")
_ZERO_CLOCK = re.compile(r"\b(at|on|by|off|out|since|til|till) 0(\d)([0-5]\d)\b(?![\d.:/-])")
# "3-11 boil 28 gal": a date where a deed follows, and no range.
_DASHED_DATE = re.compile(
    r"^(1[0-2]|0?[1-9])-([12]\d|3[01]|0?[1-9])"
    r"(?=:? (?:boil|boiled|gathered|collected|hauled|set|tapped|pulled|drew|bottled|got)\b)"
)
# "bottled 5 pints on 3-19".
_ON_A_DASHED_DATE = re.compile(r"\b(on|for) (1[0-2]|0?[1-9])-([12]\d|3[01]|0?[1-9])(?=$|[.,;:!])")
# "discarded approx. 3.5 gal": no sentence ends there.
_APPROX = re.compile(r"\bapprox\. ?")
# "haul #3 was 6 gal": no tree.
_NUMBERED_HAUL = re.compile(r"\b(haul|trip|load) # ?\d{1,2}\b")
_NUMBERED = re.compile(
    r"\b(boil|run|batch|gathering|draw|tap|bucket|pail|lot|tank|barrel|line)"
    r" (?:no\.?|number) ?(?=\d)"
    r"|\b(tree) no\.? ?(?=\d)"
)
# "boil number two is underway".
_NUMBERED_IN_WORDS = re.compile(
    r"\b(boil|run|batch|gathering|draw) (?:no\.?|number) "
    r"(one|two|three|four|five|six|seven|eight|nine|ten)\b"
)
# What a telephone hears for a number: "thirty ate", "won gallon", "too more taps".
_HEARD = re.compile(
    rf"\b({'|'.join(TENS)}) ate\b"
    r"|\b(won) (?=gal|quart|pint|cup|half|tap|jar)"
    r"|\b(too) (?=(?:more )?(?:tap|gal|pint|quart|jar|spile|bucket|pail)s?\w*\b)"
    r"|\b(\d+)ish\b|\ba (3rd|4th) of (?=a\b|the\b)"
)
# "tree 3 1/2 gal": half a gallon of that tree; "the big tree 3 1/2 gal" is of no number.
_TREE_THEN_PART = re.compile(r"(?:^|[,;.\n] ?|\band )tree (\d{1,3})(?: ?- ?| )(?=\d/\d)")
# "tree 4 half gallon": half of one, of that tree.
_TREE_THEN_HALF = re.compile(r"\btree (\d{1,3}) (?=half (?:a )?(?:gal|quart|qt|pint))")
# "b4 work": before; "b4 2 gal" is a tree.
_BEFORE = re.compile(
    r"\bb4 (?=[a-z]{2,})(?!gal|lit|qt|quart|pint|pails?\b|bucket|had|gave|was|is|did|made|got"
    r"|ran|fill|test)"
)
# "no. 4 tree 2 gal", "number 4 maple".
_NUMBER_BEFORE_TREE = re.compile(
    r"\b(?:no\.|number|#) ?(\d{1,3}) (?:tree|maple)\b|^no\. ?(\d{1,3}) (?=\d)"
)
# "slow trickle. quart and a half of sap": an amount that begins with its unit.
_AND_A_HALF = re.compile(
    r"(^|[,.;:!] ?|\btree \d{1,3} )"
    r"(gallon|gal|quart|qt|pint|litre|liter|bucket|pail|jug|hour|cord|cup) (and a half)\b"
)
# "60 L @ 2.2 deg": sugar, and no heat.
_DEGREES_OF_SUGAR = re.compile(r"(@|\bat) ?(\d(?:\.\d+)?) ?deg\b(?! ?[cf]\b)")
# "made our first gallon of syrup": one gallon, whichever it is in the row.
_NTH_GALLON = re.compile(
    r"\b(?:(?:our|my|the|a) )?(?:very )?(?:first|second|\d{1,2}(?:st|nd|rd|th)) "
    r"(gallon|quart|pint|litre|liter)\b(?! jars?\b)"
)
_GREETS = re.compile(r"\bg'(morning|mornin|night|day|evening)\b")
# "poured it all in the tank": into it.
_ALL_INTO = re.compile(r"\b(it|them|that|em) all in (?=the\b)")
_ARROW = re.compile(r"(?<=[a-z0-9]) ?[-=]+> ?(?=\d)")
# "sooo", "gooood": letters drawn out.
_DRAWN_OUT_END = re.compile(r"([a-z])\1{2,}\b")
_DRAWN_OUT = re.compile(r"([a-z])\1{2,}")
# "a gallon n a half", "3 gal yest n 5 today"; but "n side".
_N = re.compile(r"(?<=[a-z0-9]) n (?=[a-z0-9])(?!(?:side|end|lot|bush|slope|of)\b)")
_DAY_IN_FIGURES = re.compile(r"\b2(day|nite|night|morrow|moro)\b")
_DAYS = {"day": "today", "nite": "tonight", "night": "tonight"}
# "ended at seven thirty", "from seven fifteen to four": a time of day as it is dictated.
_HOUR_WORDS = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve",
)  # fmt: skip
_MINUTES = {"fifteen": "15", "thirty": "30", "forty five": "45", "forty-five": "45"}
_SPOKEN_CLOCK = re.compile(
    r"\b(at|from|since|by|til|till|until|boiled|around|about|to) "
    rf"({'|'.join(_HOUR_WORDS)}) ({'|'.join(_MINUTES)})\b"
    r"(?! ?(?:gal|lit|pint|quart|qt|tap|dollar|buck|degree|percent|point|two|three|four|five|six))"
)
_HOURS = rf"(?:{'|'.join(_HOUR_WORDS)}|\d{{1,2}})"
# "quarter to eight", "half past 7".
_PAST_OR_TO = re.compile(
    rf"\b(quarter|half|1/4|1/2) (past|after|to|till|of) ({_HOURS})\b(?! ?(?:gal|lit|of))"
)
# "fire on 6.30", "out at 4.15".
_POINT_CLOCK = re.compile(
    r"\b((?:fire|lit|on|off|out)(?: at)?) (\d{1,2})\.(00|15|30|45)\b(?! ?(?!and\b)[a-z%])"
)
# "from 7 in the morning until 2": from 7 am.
_FROM_AN_HOUR = re.compile(
    rf"\bfrom (\d{{1,2}}(?::\d\d)?|{'|'.join(_HOUR_WORDS)})"
    r" (in the|this) (morning|afternoon|evening)"
    r"(?= (?:to|till?|until)\b)"
)
# "71 gal in, 1.75 gal syrup out": sap into the pan, boiled.
_IN_AND_OUT = re.compile(
    r"\b([\d.]+ ?(?:gal\w*|l|lit\w+)) in\b(?=[,;. and]+[\d./ ]+ ?\w+ (?:of )?syrup out\b)"
)
# "poured their 4 pails together": nothing is lost.
_POURED_TOGETHER = re.compile(r"\bpoured (?=(?:\w+ ){1,4}together\b)")
# A tank of gas, where bottles are of syrup; a lie of the land, where 40 counts nothing.
_PROPANE_BOTTLE = re.compile(r"\bpropane bottle\b")
_BACK_FORTY = re.compile(r"\bback 40\b(?! (?:gal|l|lit|qt|quart|tap|tree)s?)")
# "started at 8 in the morning": a time of day; "got 8 in the morning" is of gallons.
_HOUR_OF_DAY = re.compile(
    rf"\b(at|by|since|till?|until) (\d{{1,2}}(?::\d\d)?|{'|'.join(_HOUR_WORDS)})"
    r" (in the|this) (morning|afternoon|evening)\b"
)
# "the twenty-ninth of March".
_TENS_ORDINAL = re.compile(
    r"\b(twenty|thirty)[- ](first|second|third|fourth|fifth|sixth|seventh|eighth|ninth)\b"
    r"|\b(twentieth|thirtieth)\b"
)
# "5 quarts w/ the scouts".
_WITH = re.compile(r"\bw/ ?(?=[a-z0-9])")
# "last sap of 2027": the year alone, which says nothing of how much.
_OF_THE_YEAR = re.compile(r"\b(?:of|in|for|season|spring) 20[2-9]\d(?= *(?:$|[.,;:!?]))")
# "pan is at two fifteen": 215 degrees.
_LOW_TENS = {
    word: f"2{number}"
    for number, word in enumerate(
        (
            *("ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen"),
            *("seventeen", "eighteen", "nineteen", "twenty"),
        ),
        start=10,
    )
}
_TWO_FIFTEEN = re.compile(
    r"\b((?:pan|thermometer|syrup|water)(?:'s)?(?: is| was| reads| says| hit| hits| boils| boiled)?"
    rf"(?: now)?(?: at| to)?) two ({'|'.join(_LOW_TENS)})\b"
    r"(?! ?(?:gal|lit|pint|quart|tap|jar|am\b|pm\b|o'?clock))"
)
# "twenty for dollars", "boiled fore hours", "too courts of syrup", "put in ate more taps".
_COURTS = re.compile(r"\b(to|too|two|three|four|few|\d+) courts\b")
_TENS_AND_HEARD = re.compile(
    rf"\b({'|'.join(TENS)})"
    r" (for|won|ate|too?(?= gallons)) "
    r"(?=(?:dollars|bucks|gal|taps|quarts|pints|hours|percent|degrees|spiles))"
)
_FORE = re.compile(
    r"\b(sap|got|had|made|gathered|collected|put in|set|tapped|drilled|hung|drew off|drew|boiled"
    r"|bottled|pulled|took|in|for)"
    r" (fore|ate) "
    r"(?=(?:more )?(?:taps|spiles|gal|quarts|pints|hours|hrs|cords)\w*)"
)
# "26 inches chest high": across.
_CHEST_HIGH = re.compile(r",? (?:at )?(?:chest|breast)[- ](?:high|height)\b")
# "to and a half gallons", "with a single tap", "a sixteenth of a cord", "staring the boil now".
_TO_AND_A_HALF = re.compile(r"\b(?:to|too) and a half (?=gal|quart|qt|pint|cup|hour|cord)")
_SINGLE_TAP = re.compile(r"(?:(?<=with )|(?<=has ))a single (?=(?:tap|spile|spout)\b)")
_A_TREE = re.compile(r"(?:tree|no\b|number|#|[a-z]\d)")
_PARTS = {"fifth": "1/5", "sixth": "1/6", "eighth": "1/8", "tenth": "1/10", "twelfth": "1/12"} | {
    "sixteenth": "1/16"
}
_PART_OF = re.compile(rf"\b(?:an?|one) ({'|'.join(_PARTS)}) of (?=an? (?:face |full )?cord\b)")
_STARING = re.compile(r"\bstaring (?=(?:the|to|a) (?:boil|fire)\b)")
# "drilled and hung four": tapped.
_DRILLED_AND_HUNG = re.compile(
    rf"\bdrilled and (?:hung|set) (?=(?:\d+|{'|'.join(_HOUR_WORDS)})\b"
    r"(?! (?:\w+ )?(?:buckets|pails|bags|taps|spiles|spouts|lids|covers)\b))"
)
# "tree ate gave two gallons".
_TREE_ATE = re.compile(r"\btree (ate|won) (?=(?:gave|had|made|ran|filled|is|was|tests|tested)\b)")
# "pooled all the taps": pulled.
_POOLED = re.compile(r"\bpooled (?=(?:all |out )?(?:of )?(?:the |my |our |\d+ )?(?:taps|spiles)\b)")
# "set 32 in the house lot": a lot by that name.
_HOUSE_LOT = re.compile(r"\bin the house (?=(?:lot|bush|side|grove|woods|stand|block)\b)")
# "last nite's haul".
_NITE = re.compile(r"\bnite(?='?s?\b)")
# "fifteengallons today".
_GLUED = re.compile(
    r"\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen"
    r"|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty)"
    r"(gals?|gallons?|quarts?|pints?|litres?|liters?|taps|spiles|buckets|hours|hrs)\b"
)
_GLUED_UNITS = ("gal", "quart", "pint", "lit", "taps", "spiles", "buckets", "hours", "hrs")
# "the fourth-graders": no day of the month.
_GRADERS = re.compile(r"\b(\w+)-(?=graders?\b)")
# "on 3 may": no doubt, but a day; "my 4yo".
_N_MAY = re.compile(r"\b(\d{1,2}) may\b(?! (?:be|have|not|need|go|get|come))")
_SO_OLD = re.compile(r"\b\d{1,2}[ -]?(?:yo|y/o|yr olds?|year[- ]olds?)\b")
# "4got 2 say", "b4hand", "gr8".
_FORGOT = re.compile(
    r"\b4got(?:ten)? (?:2|to|two) (?=[a-z])|\b4got(?= )|\bforgot 2 (?=[a-z])"
    r"(?!gal|qt|quart|pint|tap|bucket|pail|jar|l\b|lit|hour|hr|cord|tree|jug|bag)"
)
# "thx 4 the help", "set to pints aside": what a figure or a word stands for in writing.
_FOR_IN_A_FIGURE = re.compile(r"\b4 (?=(?:the|all|your|my|me|us|now|sure|ever) )")
_HEARD_BEFORE_A_SIZE = re.compile(
    r"\b(drew(?: off)?|got|made|bottled|filled|gathered|collected|gave|gives|threw out|dumped"
    r"|poured out|spilled|lost) (to|too|for) "
    r"(?=(?:gal\w*|quarts?|pints?|half pints?)\b)"
)
# "Ms. Tremblay": no sentence ends there.
_TITLE = re.compile(r"\b(ms|mr|mrs|dr|st|mt)\. ?(?=[a-z])")
# "sugar is too point one", "first syrup of '27".
_HEARD_POINT = re.compile(
    r"\b(too|to|won|for) (?=point (?:\d|oh|zero|one|two|three|four|five|six|seven|eight|nine)\b)"
)
_HEARD_BEHIND_POINT = re.compile(
    r"\b(one|two|three|four|five|six|\d) point (to|too|for|ate|won)\b(?! (?:gal|the|a|my|our)\b)"
)
_YEAR_CUT = re.compile(r"\b(?:of|in|for|season|spring) '2\d\b")
# "last yr": where "yr" alone is "your".
_YEAR_SHORT = re.compile(r"(?<=\b(?:last|this|next|past|each) )yr\b")
# "circumference 1.32 m".
_METERS = re.compile(r"\b([012]\.\d{1,2}) ?m(?:eters?|etres?)?\b(?= |$|[,.;])")
# "no. 27 taped at 63 in around", "from number 22": a tree by its number.
_BY_ITS_NUMBER = re.compile(
    r"(?:^no\. ?|(?:^|\b(?:from|off|on|at|in|under|tree) )number "
    r"|\b(?:from|off|on|at|in|under) no\. ?)(\d{1,3})\b(?![.:/]\d)"
    r"(?! ?(?:gal|l\b|lit|qt|quart|pint|taps?\b|hr|hour|%|cord|\$|people|of\b))"
)
# "the tree by the mailbox, number 3, gave 2 gal".
_ITS_NUMBER = re.compile(
    r"(?<=[,(]) ?(?:number|no\.?|#) ?(\d{1,3})(?=[,)]| (?:gave|had|made|ran|was|got|filled))"
)
# "SW lot": a part of the bush by its compass point.
_POINTS = {"sw": "southwest", "se": "southeast", "nw": "northwest", "ne": "northeast"}
_BY_COMPASS = re.compile(
    r"\b(sw|se|nw|ne)\b(?=$|[,.;:]| (?:lot|side|line|slope|block|bush|corner|woods|\d)\b)"
)
# "12 half-pts".
_HALF_PINTS = re.compile(r"\bhalf-?pts?\b")
# "arch lit 0645", "boiled 0800 to 1430 hrs", "in by 1600": times of day in four figures.
_OF_24 = r"(0\d|1\d|2[0-3])([0-5]\d)"
_FROM_TO_24 = re.compile(
    rf"\b(?:from )?{_OF_24} ?(?:-|to|till?|until) ?{_OF_24}\b(?: ?(?:hrs?|hours)\b)?"
)
_AT_24 = re.compile(
    rf"\b(lit(?: at)?|at|by|since|till?|until|home|around(?<!paid around)) (?!1[0-2])"
    rf"{_OF_24}\b"
    r"(?: ?(?:hrs?|hours)\b)?(?! ?(?:gal|l\b|lit|f\b"
    r"|f(?:ee)?t\b|m\b|meters?|metres?|deg|\$|taps?\b))"
)
# "1845 - stopped boil", "0730: 3 gal", "fire lit 1015 hrs".
_STARTS_AT_24 = re.compile(rf"^{_OF_24}(?: ?(?:hrs?|hours)\b)?(?:[:,]| -|-) (?=[a-z\d])")
_AT_24_HRS = re.compile(
    rf"\b(lit(?: at)?|at|by|since|till?|until|out|off) {_OF_24} ?(?:hrs?|hours)\b"
)
# "taped at 63 in around": measured.
_TAPED = re.compile(r"\btaped (?=(?:out |in )?at\b)")
# "pulled all the tops": taps, as they are heard.
_TOPS = re.compile(
    r"\b((?:pulled?|pulling|set|put in|hung|drilled)(?: all)?(?: of)?(?: the| my| our| \d+)?) "
    r"(?:tops|tabs)\b"
)
# "in ate hours".
_ATE_HOURS = re.compile(r"\b(in|for|took|about) ate (?=hours?|hrs?|gal)")
# "shut down at 1130": a time of day.
_FOUR_FIGURES = re.compile(
    r"\b((?:down|out|done|quit|off|stopped|finished|lit|started|going|until|till|til|by|fired up)"
    r"(?: at| around| about| ?@)?) (1[0-2]|[1-9])([0-5][05])\b"
    r"(?=$|[,.;!]| ?[ap]m\b| and\b| with\b| after\b| tonight\b)"
)
# "quart of sap out of the whole works": one.
_ONE_UNSAID = re.compile(r"^(quart|gallon|pint|litre|liter) of (?=sap|syrup)")
# "1) boiled 45 gal 2) 7 hours": the numbers of a list.
_LIST_MARK = re.compile(r"(?:^|(?<=[\w.,;])[ \n]+)[1-9]\) ?(?=\w)")
# "three-quarters of a gallon".
_HYPHENED_PART = re.compile(
    r"\b(one|two|three|five|seven)-(?=(?:quarter|third|half|eighth|fifth|tenth)s?\b)"
)
# "9 gal boiled over 7 hrs": within them.
_OVER_HOURS = re.compile(
    r"\b(boiled|cooked|evaporated) over (?=(?:about )?[\d.]+ ?(?:h|hrs?|hours?)\b)"
)
# "thnaks a bunch!!1".
_SHOUTED_ONE = re.compile(r"!+1+(?= |$|!)")
# "8 am - 5 pm": from one to the other.
_AM_TO_PM = re.compile(r"\b(\d{1,2}(?::\d\d)? ?(?:am|pm)?) ?- ?(\d{1,2}(?::\d\d)? ?(?:am|pm))\b")
# "put a second tap in tree 4": one more.
_ONE_MORE_TAP = re.compile(
    r"\b(?:a|another|the) (?:second|2nd|third|3rd|fourth|4th) (?=(?:tap|spile|spout)\b)"
)
# "$1.2k", "1.2 grand".
_THOUSANDS_OF = re.compile(r"\$(\d+(?:\.\d+)?) ?k\b|\b(\d+(?:\.\d+)?) grand\b")
# "20 in. sugar maple": inches, and no end of a sentence.
_INCHES_OF = re.compile(
    r"(?<=\d) ?in\. (?=(?:sugar|red|silver|black|norway|hard|soft|rock|maple|\d taps?|one tap"
    r"|two tap))"
)
# "42 gal in, 1 gal out": into the pan, and out of it.
_IN_OUT = re.compile(
    r"\b(\d[\d.]* ?(?:gal\w*|l|lit\w+))(?: of)?(?: sap)? in(?:,| and|,? -)? "
    r"(\d[\d./]* ?(?:gal\w*|qts?|quarts?|pints?|pts?|l|lit\w+)) out\b"
)
# "boiled 40 gal., 7 hrs., 1 gal. syrup": what is cut short ends no sentence.
_CUT_SHORT = re.compile(
    r"\b(gals?|qts?|pts?|hrs?|oz|lbs?|min)\.(?= ?(?:,|;|of\b"
    r"|boiled\b(?= ?(?:$|[.,;!]|in\b|today|tonight|yesterday|so far|for\b|over\b))"
    r"|(?:syrup|sap)\b(?!'| ?[:=]| \d[\d.]* ?(?:gal|l\b|lit|qt|quart|pint)"
    r"| (?:tank|barrel|storage|buckets?|pails?|ran|came|coming|tally|total|off|in the|is|was|has"
    r"|had|looks?|looked|smells?|tastes?|tests?|tested|reads?|going|went|turned|temp)\b)))"
)
# "5 gal (mon), 2 gal (A1)": the day or the tree of the amount before it.
_IN_BRACKETS = re.compile(
    r"(?<=[a-z0-9]) ?\(((?:mon|tues?|wed|thurs?|fri|sat|sun)\w*|today|yesterday|tonight|last night"
    r"|tree \w+|[a-z]\d{1,2})\)"
)
# "12. 5 gal": slipped, and no list.
_POINT_APART = re.compile(r"^(\d{1,3})\. (\d)(?= ?(?:gal|l\b|lit|qt|quart))")
# "14 gal 2.2 deg": its sugar.
_DEGREES_BEHIND = re.compile(r"(?<=gal) (\d\.\d) deg\b(?! ?[cf]\b)")
# "tree 3 full bucket": one.
_A_FULL_ONE = re.compile(r"(tree \w+:?,?|^) (full|half) (?=(?:bucket|pail|bag)\b)")
# "16 gal at 2..1".
_POINT_TWICE = re.compile(r"(?<=\d)\.\.(?=\d)")
_O_CLOCK = re.compile(rf"\b({'|'.join(_HOUR_WORDS)}|1[0-2]|[1-9]) o'?clock\b")
_ORDINAL = {
    word: f"{number}{end}"
    for number, (word, end) in enumerate(
        (
            *(("first", "st"), ("second", "nd"), ("third", "rd"), ("fourth", "th")),
            *(("fifth", "th"), ("sixth", "th"), ("seventh", "th"), ("eighth", "th")),
            *(("ninth", "th"), ("tenth", "th"), ("eleventh", "th"), ("twelfth", "th")),
            *(("thirteenth", "th"), ("fourteenth", "th"), ("fifteenth", "th")),
            *(("sixteenth", "th"), ("seventeenth", "th"), ("eighteenth", "th")),
            ("nineteenth", "th"),
        ),
        start=1,
    )
}
# "7 gal on the second": a day of the month, where nothing follows that it counts.
_ON_THE = re.compile(
    rf"\bon the ({'|'.join(_ORDINAL)})(?= *(?:$|[.,;!])| (?:i|we|it|they|got|boiled|collected"
    r"|gathered|drew|set|tapped|bottled|hauled|made)\b)"
)
# "fire lit 6", "lit at 530", "fire out 4 30": a time of day as it is typed.
_LIT_AT = re.compile(
    r"\b(lit(?: it| her| the fire)?|fire(?:'s)? (?:lit|out|on)"
    r"|(?:quit|stopped|shut(?: it| her)? down|(?:fire|arch|evaporator) (?:off|dead))"
    r"(?= at| about| around))(?: at| about| around)? "
    r"(1[0-2]|[1-9])(?: ?([0-5]\d))?(?= *(?:$|[.,;!]|am\b|pm\b|this\b|today\b|tonight\b))"
)
# "shut it down at nine": the same, as it is spoken.
_LIT_AT_A_WORD = re.compile(
    r"\b(lit(?: it| her| the fire| the arch)?|(?:fire|arch)(?:'s)? (?:is )?(?:lit|out|on|off)|out"
    rf"|quit|stopped|shut(?: it| her)? down) (?:at|about|around|by) ({'|'.join(_HOUR_WORDS)})"
    r"(?= *(?:$|[.,;!\n]|am\b|pm\b|and\b|then\b|this\b|today\b|tonight\b))"
)
# "lit teh fier 530".
_LIT_MISSPELT = re.compile(
    r"^(lit (?:teh|hte|th|the|my|a) (?:fier|fire|frie|fyre|arch|acrh)) (1[0-2]|[1-9])([0-5]\d)$"
)
_WILL = re.compile(
    r"\bill (?=(?:bottle|draw|put|light|boil|spend|burn|gather|collect|get|go|be|do|try|text|check"
    r"|set|tap|pull|haul|finish|start|add|have|need|empty|pick|run|make|drop|bring)\b)"
)
# "tree two to gallons", "tree to two gallons", "tree four for gallons".
_HEARD_BY_A_TREE = re.compile(rf"\b(tree {_HOURS}) (to|too|for) (?=gal|quart|pint)")
_HEARD_FOR_A_TREE = re.compile(
    rf"\btree (to|too|for) (?={_HOURS}\b|(?:gave|had|made|ran|filled)\b)"
)
# "de-tapped the whole bush".
_TAPPED_NO_MORE = re.compile(r"\b(?:de|un)-?tapped\b")
# "tag 22: red maple": trees are told by their tags.
_TAG = re.compile(r"(?<!price )\btag (?:#|no\.? ?|number )?(\d{1,3})\b(?! ?(?:gal|pails|buckets))")
_TREES_OWN = re.compile(rf"\b(tree {_HOURS})'s\b")
_HEARD_AS = {"won": "one ", "too": "two ", "3rd": "a third of ", "4th": "a quarter of "}
_HEARD_NUMBERS = {"to": "two", "too": "two", "for": "four", "won": "one", "ate": "eight"}
_SPOKEN = Sought(
    "comma|period|full stop|mark|point",
    r"\s+(comma|period|full stop|exclamation (?:point|mark)|question mark)(?=\s|$)",
)
# "question mark no i mean period": the second is meant.
_SPOKEN_ANEW = re.compile(
    r"\b(?:comma|period|question mark) (?:no )?(?:wait )?i mean"
    r"(?=(?: a)? (?:comma|period|question mark))"
)
_SPOKEN_SIGN = {"comma": ",", "period": ".", "full stop": ".", "question mark": "?"}


def _meant(heard: re.Match[str]) -> str:
    if heard[1]:
        return f"{heard[1]} eight"
    return heard[4] or _HEARD_AS[heard[2] or heard[3] or heard[5]]


def _in_inches(said: re.Match[str]) -> str:
    """`5 ft 3 in` as inches."""
    return f"{12 * int(said[1]) + int(said[2])} inches"


def _past_or_to(said: re.Match[str]) -> str:
    """`quarter to eight` as 7:45."""
    hour = int(said[3]) if said[3].isdigit() else _HOUR_WORDS.index(said[3]) + 1
    part = 15 if said[1] in ("quarter", "1/4") else 30
    if said[2] in ("past", "after"):
        return f"{hour}:{part}"
    return f"{hour - 1 or 12}:{60 - part}"


_STORED = re.compile(r"\b(?:tank|barrel|tote|drum|vat|cooler|stored|storage)\b")


def _degrees(said: re.Match[str]) -> str:
    """`60 L @ 2.2 deg` as Brix; but `sap barrel at 6.5 deg` is how warm it is."""
    stored = _STORED.search(said.string[: said.start()]) is not None
    return said[0] if stored else f"{said[1]} {said[2]} brix"


def _hour_of_day(said: re.Match[str]) -> str:
    """`at 8 in the morning` as at 8 am."""
    today = "today " if said[3] == "this" and said[1] in ("at", "by", "since") else ""
    return f"{today}{said[1]} {_in_figures(said[2])} {'am' if said[4] == 'morning' else 'pm'}"


def _in_figures(hour: str) -> str:
    """`nine` as 9."""
    return str(_HOUR_WORDS.index(hour) + 1) if hour in _HOUR_WORDS else hour


def _in_dollars(said: re.Match[str]) -> str:
    """`$1.2k` as $1200."""
    return f"${float(said[1] or said[2]) * 1000:g}"


def _a_full_one(said: re.Match[str]) -> str:
    """`tree 3 full bucket` as one of them."""
    return f"{said[1]} {'1 full' if said[2] == 'full' else 'half a'} "


def _tens_ordinal(said: re.Match[str]) -> str:
    """`twenty-ninth` as 29th."""
    if said[3]:
        return "20th" if said[3] == "twentieth" else "30th"
    tens = 20 if said[1] == "twenty" else 30
    digits = _ORDINAL[said[2]]
    return f"{tens + int(digits[:-2])}{digits[-2:]}"


def _number_heard(heard: re.Match[str]) -> str:
    """`drew off to pints` as two pints, `twenty for dollars` as twenty four."""
    return f"{heard[1]} {_HEARD_NUMBERS[heard[2]]} "


def _ahead_of_number(said: str) -> str:
    """`from number 22`: its `from `."""
    first = said.split()[0]
    return "" if first.startswith(("no", "number", "tree")) else f"{first} "


def _twelve(hour: str, minute: str) -> str:
    """`15`, `40` as 3:40 pm."""
    return f"{int(hour) % 12 or 12}:{minute} {'am' if int(hour) < 12 else 'pm'}"


def _starts_at(hit: re.Match[str]) -> str:
    """`1845 - stopped boil`: when it was; of sap it says nothing."""
    fired = re.search(r"\b(?:boil\w*|fire|lit|arch)\b", hit.string) is not None
    return f"at {_twelve(hit[1], hit[2])} " if fired else ""


def _from_to_24(hit: re.Match[str]) -> str:
    """`0800 to 1430` as from 8:00 am to 2:30 pm."""
    return f"from {_twelve(hit[1], hit[2])} to {_twelve(hit[3], hit[4])}"


def _half_said(hit: re.Match[str]) -> str:
    """`from 7 in the morning until`: 7 am."""
    today = "today " if hit[2] == "this" else ""
    return f"{today}from {_in_figures(hit[1])} {'am' if hit[3] == 'morning' else 'pm'}"


def _each_digit(sign: str) -> tuple[str, ...]:
    """A sign that a digit is part of."""
    return tuple(sign.format(digit) for digit in range(10))


_EVERY_FIVE = tuple(f"{minutes:02d}" for minutes in range(0, 60, 5))
_HOURS_24 = tuple(f"{hour:02d}" for hour in range(24))


def _its_number(hit: re.Match[str]) -> str:
    """`3 gal (#7)`, of trees alone."""
    of_trees = "tree" in hit.string or "maple" in hit.string
    return f" tree {hit[1]}" if of_trees else hit[0]


# What is written anew, in this order (see `rewrites`).
_REWRITES = Rewrites(
    (_each_digit("{}h"), _CLOCK_H, r"\1 \2:\3"),
    (_each_digit("{}h"), _HOURS_MINUTES, r"\1 h \2 min"),
    ((" 0",), _ZERO_CLOCK, r"\1 \2:\3 am"),
    (("approx.",), _APPROX, "about "),
    (("-",), _DASHED_DATE, r"\1/\2"),
    (_each_digit("-{}"), _ON_A_DASHED_DATE, r"\1 \2/\3"),
    (("ft", "feet", "foot", "'"), _FEET_INCHES, _in_inches),
    (("worth",), _WORTH, r"\1"),
    (("#",), _NUMBERED_HAUL, r"\1"),
    (("no", "number"), _NUMBERED, lambda hit: f"{hit[1] or hit[2]} # "),
    (("no", "number"), _NUMBERED_IN_WORDS, lambda hit: f"{hit[1]} # {_in_figures(hit[2])} "),
    ((" n ",), _N, " and "),
    (
        ("2day", "2nite", "2night", "2mor"),
        _DAY_IN_FIGURES,
        lambda hit: _DAYS.get(hit[1], "tomorrow"),
    ),
    (("g'",), _GREETS, r"good \1"),
    ((" all in ",), _ALL_INTO, r"\1 all into "),
    (
        (
            "first ",
            "second ",
            *_each_digit("{}st "),
            *_each_digit("{}nd "),
            *_each_digit("{}rd "),
            *_each_digit("{}th "),
        ),
        _NTH_GALLON,
        r"a \1",
    ),
    (("deg",), _DEGREES_OF_SUGAR, _degrees),
    ((".00", ".15", ".30", ".45"), _POINT_CLOCK, r"\1 \2:\3"),
    (("quarter", "half", "1/"), _PAST_OR_TO, _past_or_to),
    (("morning", "afternoon", "evening"), _HOUR_OF_DAY, _hour_of_day),
    (("twent", "thirt"), _TENS_ORDINAL, _tens_ordinal),
    (("w/",), _WITH, "with "),
    ((" 20",), _OF_THE_YEAR, ""),
    (("'2",), _YEAR_CUT, ""),
    ((" tap", " spi", " spo"), _ONE_MORE_TAP, "1 more "),
    (("$", "grand"), _THOUSANDS_OF, _in_dollars),
    (("in.",), _INCHES_OF, " in "),
    ((" out",), _IN_OUT, r"boiled \1, drew off \2 of syrup"),
    (("l.", "s.", "t.", "r.", "z.", "b.", "n."), _CUT_SHORT, r"\1"),
    (("(",), _IN_BRACKETS, r" \1"),
    ((". ",), _POINT_APART, r"\1..\2"),
    (("deg",), _DEGREES_BEHIND, r" at \1"),
    (("bucket", "pail", "bag"), _A_FULL_ONE, _a_full_one),
    (("-",), _HYPHENED_PART, r"\1 "),
    (("pm", "am"), _AM_TO_PM, r"from \1 to \2"),
    ((" over ",), _OVER_HOURS, r"\1 in "),
    (("!1",), _SHOUTED_ONE, "!"),
    (("s.", "r.", "t."), _TITLE, r"\1 "),
    (("point",), _HEARD_POINT, lambda hit: f"{_HEARD_NUMBERS[hit[1]]} "),
    (("point",), _HEARD_BEHIND_POINT, lambda hit: f"{hit[1]} point {_HEARD_NUMBERS[hit[2]]}"),
    (_each_digit("{})"), _LIST_MARK, lambda hit: ", " if "2)" in hit.string else hit[0]),
    (("of s",), _ONE_UNSAID, r"a \1 of "),
    (("no", "number", "#"), _ITS_NUMBER, _its_number),
    (("sw", "se", "nw", "ne"), _BY_COMPASS, lambda hit: _POINTS[hit[1]]),
    (("half",), _HALF_PINTS, "half pints"),
    (_HOURS_24, _FROM_TO_24, _from_to_24),
    (_HOURS_24, _STARTS_AT_24, _starts_at),
    (("hr", "hours"), _AT_24_HRS, lambda hit: f"{hit[1]} {_twelve(hit[2], hit[3])}"),
    (_HOURS_24, _AT_24, lambda hit: f"{hit[1]} {_twelve(hit[2], hit[3])}"),
    (("taped",), _TAPED, "measured "),
    ((" tops", " tabs"), _TOPS, r"\1 taps"),
    (("ate ",), _ATE_HOURS, r"\1 eight "),
    (_EVERY_FIVE, _FOUR_FIGURES, r"\1 \2:\3"),
    ((" yr",), _YEAR_SHORT, "year"),
    ((" m", *_each_digit("{}m")), _METERS, lambda hit: f"{100 * float(hit[1]):g} cm"),
    (("no.", "number"), _BY_ITS_NUMBER, lambda hit: f"{_ahead_of_number(hit[0])}tree {hit[1]}"),
    (
        (" two ",),
        _TWO_FIFTEEN,
        lambda hit: f"{hit[1]} {_LOW_TENS[hit[2]]}",
    ),
    (("courts",), _COURTS, r"\1 quarts"),
    ((" for ", " to ", " too ", " won ", " ate "), _TENS_AND_HEARD, _number_heard),
    (("fore ", "ate "), _FORE, lambda hit: f"{hit[1]} {'four' if hit[2] == 'fore' else 'eight'} "),
    (("chest", "breast"), _CHEST_HIGH, " across"),
    (("and a half",), _TO_AND_A_HALF, "2 and a half "),
    (("single",), _SINGLE_TAP, lambda hit: "1 " if _A_TREE.match(hit.string) else hit[0]),
    (("th of ",), _PART_OF, lambda hit: f"{_PARTS[hit[1]]} of "),
    (("staring",), _STARING, "starting "),
    (("drilled and",), _DRILLED_AND_HUNG, "tapped "),
    (("tree ",), _TREE_ATE, lambda hit: f"tree {8 if hit[1] == 'ate' else 1} "),
    (("pooled",), _POOLED, "pulled "),
    (("nite",), _NITE, "night"),
    (("in the house",), _HOUSE_LOT, "at the house "),
    (
        tuple(f"{end}{unit}" for end in "eorxnty" for unit in _GLUED_UNITS),
        _GLUED,
        r"\1 \2",
    ),
    (("-grader",), _GRADERS, r"\1 "),
    ((" may",), _N_MAY, r"may \1"),
    (("yo", "y/o", "old"), _SO_OLD, "kid"),
    (("4got", "forgot 2"), _FORGOT, lambda hit: "forgot " + "to " * hit[0].endswith(" ")),
    (("4 ",), _FOR_IN_A_FIGURE, "for "),
    ((" to ", " too ", " for "), _HEARD_BEFORE_A_SIZE, _number_heard),
    (("..",), _POINT_TWICE, "."),
    (("i mean",), _SPOKEN_ANEW, ""),
    (
        ("ing to", "ing til", "ing until", "noon to", "noon til", "noon until"),
        _FROM_AN_HOUR,
        _half_said,
    ),
    ((" in",), _IN_AND_OUT, r"boiled \1"),
    (("together",), _POURED_TOGETHER, "combined "),
    (("propane bottle",), _PROPANE_BOTTLE, "propane tank"),
    (("back 40",), _BACK_FORTY, "back lot"),
    (("clock",), _O_CLOCK, lambda hit: f"{_in_figures(hit[1])}:00"),
    (
        ("fifteen", "thirty", "forty"),
        _SPOKEN_CLOCK,
        lambda hit: f"{hit[1]} {_HOUR_WORDS.index(hit[2]) + 1}:{_MINUTES[hit[3]]}",
    ),
    (("b4",), _BEFORE, "before "),
    (("and a half",), _AND_A_HALF, r"\1a \2 \3"),
    (("tree", "maple", "no."), _NUMBER_BEFORE_TREE, lambda hit: f"tree {hit[1] or hit[2]}: "),
    (("tree",), _TREE_THEN_HALF, r"tree \1: "),
    (("tree",), _TREE_THEN_PART, lambda hit: f"{hit[0].rstrip(' -')}: "),
    (("on the ",), _ON_THE, lambda hit: f"on the {_ORDINAL[hit[1]]}"),
    (
        ("lit", "fire", "quit", "stopped", "shut", "arch", "evaporator"),
        _LIT_AT,
        lambda hit: f"{hit[1]} at {hit[2]}:{hit[3] or '00'}",
    ),
    (
        ("lit", "out", "on", "off", "quit", "stopped", "down"),
        _LIT_AT_A_WORD,
        lambda hit: f"{hit[1]} at {_in_figures(hit[2])}:00",
    ),
    (("tree",), _TREES_OWN, r"\1"),
    (("tree",), _HEARD_BY_A_TREE, lambda hit: f"{hit[1]} {_HEARD_NUMBERS[hit[2]]} "),
    (("tree",), _HEARD_FOR_A_TREE, lambda hit: f"tree {_HEARD_NUMBERS[hit[1]]} "),
    (("ate", "won", "too", "ish", "3rd", "4th"), _HEARD, _meant),
    (("tapp",), _TAPPED_NO_MORE, "untapped"),
    (("tag",), _TAG, r"tree \1"),
    (("lit ",), _LIT_MISSPELT, r"\1 at \2:\3"),
    (("ill ",), _WILL, "i'll "),
    (("cents",), _CENTS, lambda hit: f"${hit[1]}.{int(hit[2]):02d}"),
)


def tidy(text: str) -> str:
    """The text in lower case, in plain signs. Never raises."""
    if not text.isascii():
        text = _VULGAR_SIGN.sub(lambda hit: " " + _VULGAR[hit.group()] + " ", text)
        text = unicodedata.normalize("NFKC", text.translate(_PLAIN))
    text = text.translate(_PLAIN).lower()
    if ">" in text:
        text = _ARROW.sub(" to ", text)
    text = _STRANGE.sub(" ", text).replace("h2o", "water")
    if "  " in text or "\t" in text:
        text = _SPACES.sub(" ", text)
    if "," in text:
        text = _DECIMAL_COMMA.sub(".", _THOUSANDS.sub("", text))
    if "$" in text or "dollars" in text:
        text = _DOLLARS_BEHIND.sub(r"$\1", text)
    if "in." in text:
        text = _INCHES.sub(" in ", text)
    text = text.replace("howmuch", "how much").replace("howmany", "how many")
    if _DRAWN_OUT.search(text) is not None:
        text = _DRAWN_OUT.sub(r"\1\1", _DRAWN_OUT_END.sub(r"\1", text))
    text = in_figures(_REWRITES.of(without_courtesies(text.strip(" \n"))))
    return _SPOKEN.sub(lambda hit: _SPOKEN_SIGN.get(hit.group(1), "!"), text)
