"""Amounts that may be sap of now, of once, of others or of each."""

from __future__ import annotations

from bot.reading.dates import WEEKDAY
from bot.reading.two_ways.form import DAY, HOW_MUCH_SAP, VOLUME, forms

_ONE_DAY = rf"(?:yesterday|today|{WEEKDAY}|mon|tues?|wed|thurs?|fri|sat|sun)"
_GOT = r"(?:(?:got|gathered|collected|hauled) )?"

FORMS = forms(
    # "hit 50 gallons today!", "my record was 12 gal in a day", "2026: 85 gal".
    (
        "hit |passed |broke |topped |reached |crossed |record |20",
        rf"^(?!(?:have|has|did|are|will|can|when|how)\b)[^?]*\b(?:hit|passed|broke|topped|reached"
        rf"|crossed) (?:over )?{VOLUME}(?! so far| today)"
        rf"|\bmy record (?:was|is) (?:about )?{VOLUME}|^20\d\d: .*\d",
        "Gathered today? If so, text it like: got 12 gal.",
    ),
    # "haven't collected yet, maybe 10 gal", "buckets have about 10 gal", "sitting on 30 gal".
    (
        "haven't|havent|have |there's|sitting on|in storage|pumped ",
        rf"\b(?:haven't|havent) (?:collected|gathered|emptied)\b.*{VOLUME}"
        rf"|\b(?:buckets|pails|bags) have (?:about |maybe )?{VOLUME}|\bsitting on {VOLUME}"
        rf"|\bthere's (?:about |maybe )?{VOLUME} in the (?:buckets|pails|bags)"
        rf"|{VOLUME} in storage\b"
        rf"|\bpumped {VOLUME} (?:from|out of) the (?:tank|barrel)\b",
        HOW_MUCH_SAP,
    ),
    # "3 gallons less than yesterday, 8 gal", "tree 4 is ahead by 2 gal".
    (
        " than| as much|ahead by|behind by",
        rf"^(?:tree \w+ (?:gave|had|got) )?{VOLUME} (?:less|more|better|worse) than\b"
        rf"|\b(?:ahead|behind) by {VOLUME}"
        rf"|\b(?:twice|half|double|three times) as much\b.*{VOLUME}",
        HOW_MUCH_SAP,
    ),
    # "made a gallon of hot chocolate".
    (
        "made ",
        r"\bmade (?:about )?(?:an?|\d[\d.]*) ?(?:gal\w*|quarts?|qts?|pints?|cups?|litres?"
        r"|liters?) of "
        r"(?:hot |iced |maple )?(?:chocolate|cocoa|tea|coffee|jam|jelly|butter|candy|cream|soup"
        r"|chili|broth"
        r"|fudge|taffy|beer|wine|vinegar|lemonade|cider)\b",
        "Of syrup? If so, text it like: drew off 3 qt.",
    ),
    # "dumped 2 buckets of ashes", "dumped 2 gal of rain".
    (
        "dumped|poured|tossed|threw",
        r"\b(?:dumped|poured|tossed|threw)\b[^.;]*\b(?:of (?:ashes|ash|rain|rainwater|slush"
        r"|wash water)"
        r"|wash water)\b",
        "Sap? If so, text it like: dumped 4 gal.",
    ),
    # "collected 40 gal for ed", "on tv they collected 500 gal".
    (
        " for | tv| youtube",
        rf"\b(?:gathered|collected|hauled|boiled) {VOLUME} for (?!us|me|the|today|a |an |this|now)"
        r"[a-z]+$|\bon (?:tv|youtube)\b.*\d",
        "Is that yours? If so, text it like: got 12 gal.",
    ),
    # "dad says 12 gal. pretty sure he made that up".
    (
        "made that up|made it up|kidding|joking",
        r"\d.*\b(?:made (?:that|it) up|kidding|joking)\b",
        HOW_MUCH_SAP,
    ),
    # "6 gal after a 9 hour shift".
    (
        "hour ",
        rf"{VOLUME}.*\b\d+ hour (?:shift|drive|walk|hike|day|class|nap)\b",
        HOW_MUCH_SAP,
    ),
    # "saturday and sunday 12 gal": how much on each?
    (
        " and | & ",
        rf"^(?:we |i )?{_GOT}(?:on )?{_ONE_DAY} (?:and|&) {_ONE_DAY}(?: (?:we|i))?[,:]? ?{_GOT}"
        rf"(?:about )?{VOLUME}(?!.* each\b)",
        "How much was it on each of the two days? Text one day at a time.",
    ),
    # "12 gal 3/4": three quarters more, or the 4th of March?
    (
        "1/2|1/4|3/4",
        rf"\b{VOLUME} (?:1/2|1/4|3/4)(?=$|[,.;])",
        "How much was that in all? Text it like: 12.75 gal.",
    ),
    # "12 gal yesterday and 9 the day before".
    (
        "day before",
        rf"\d.*(?:\band|,) (?:the )?day before (?:that )?(?:about )?(?:\d|{VOLUME})"
        r"|\d.*(?:\band|,) \d[\d.]* (?:\w+ )?the day before\b(?! yesterday)",
        "One day at a time, please, like: yesterday 12 gal.",
    ),
    # "12 gal north, same from the pond".
    (
        "same ",
        rf"{VOLUME}.*\b(?:the )?same (?:amount )?(?:from|off|at|on|in) (?!tree|{DAY})",
        "How much was it from each? Text them one by one, like: north lot 8 gal.",
    ),
    # "took 30 gal to jim's to boil it": no boil of ours.
    (
        "'s",
        rf"\b(?:took|sent|drove|delivered) {VOLUME}(?: of sap)?(?: over| up| down)? to "
        r"(?!today)\w+'s\b",
        "Is that still yours? If so, text it like: got 12 gal.",
    ),
    # "used 2 gal of sap for tea", "down to the last 10 gal".
    (
        "used |down to",
        rf"^(?:we |i )?used (?:about )?{VOLUME}(?: of (?:the )?sap)? (?:for|to|in)\b"
        rf"|^(?:we're |i'm |now )?down to (?:the |my |our )?(?:last )?{VOLUME}$",
        "Gathered just now? If so, text it like: got 12 gal.",
    ),
    # "2 gal buckets were full": how many?
    (
        "full|overfl|brim",
        r"^(?:the )?\d gal\w* (?:buckets|pails) (?:were|are|was|is)? ?(?:all )?(?:full"
        r"|overflowing"
        r"|brimming)\b",
        HOW_MUCH_SAP,
    ),
    # "another 10 gal and i'll fire it up".
    (
        "'ll|will|can",
        r"^(?:just )?(?:another|\d[\d.]* more|one more) ?(?:\d[\d.]* ?)?\w* and "
        r"(?:i'll|we'll|i will|we will|i can|we can)\b",
        HOW_MUCH_SAP,
    ),
    # "all dry except tree 4, half a gallon".
    (
        " tree ",
        r"\b(?:dry|nothing|empty|frozen|no sap)\b.* (?:except|but|besides|apart from) "
        r"(?:for )?tree ",
        "How much from that tree? Text it like: tree 4 half a gal.",
    ),
    # "the sap weighs 84 lb".
    (
        "weigh",
        r"\bsap weigh(?:s|ed) (?:about )?[\d.]+ ?(?:lbs?|pounds|kgs?|kilos?)\b",
        HOW_MUCH_SAP,
    ),
    # "missed a row, about 20 gal".
    (
        "missed|skipped",
        r"\b(?:missed|skipped) (?:an?|one|the|two|that|our) (?:\w+ ){0,2}"
        r"(?:rows?|lots?|lines?|trees?|buckets?|pails?),? (?:so |maybe |about |probably )*"
        rf"{VOLUME}$",
        "Gathered, or still out there? If gathered, text it like: got 12 gal.",
    ),
    # "best year yet, 9 gal".
    (
        "best ",
        rf"\bbest (?:year|season|spring|march)\b.*{VOLUME}",
        "Is that the sum of a season? Of today text it like: got 12 gal.",
    ),
    # "filled a pail and then half of another".
    (
        "another",
        r"\b(?:half|a quarter|a third|most) of another(?: one| pail| bucket)?\b",
        HOW_MUCH_SAP,
    ),
    # "8 gal at noon, 14 gal now": a level, twice.
    (
        "now",
        rf"{VOLUME}\b[^.;]*\b(?:now {VOLUME}|{VOLUME} now)\b",
        "How many gal came in since? Text it like: got 12 gal.",
    ),
    # "down 4 gal from yesterday", "9 gal added to the 21 gal from yesterday", "half of yesterday's
    # 12 gal", "the tank went from 21 gal to 30 gal".
    (
        "from|add|half |after |since|old record",
        rf"^(?:up|down) {VOLUME} from\b|\badd(?:ed|ing)? (?:\w+ )?{VOLUME} to (?:the |my |our"
        rf" )?{VOLUME}"
        rf"|\bhalf (?:of )?(?:{DAY}|{WEEKDAY})'?s? {VOLUME}|\bhalf (?:of )?that$"
        rf"|\bwent from {VOLUME} to {VOLUME}|{VOLUME} after {VOLUME} {DAY}"
        rf"|\bold record (?:was |is )?{VOLUME}|{VOLUME} since$",
        HOW_MUCH_SAP,
    ),
    # "12 gal with 2 gal of rain in it", "threw out 2 gal ice kept 10 gal".
    (
        "rain|ice",
        rf"{VOLUME},? (?:with|including|incl|plus|minus|less) (?:about )?{VOLUME} (?:of"
        rf" )?(?:rain|ice)"
        rf"|\bout {VOLUME} (?:of )?ice\b(?!,)[^,]*{VOLUME}|\bfull of rain",
        "How many gal of sap did you keep? Text it like: got 12 gal.",
    ),
    # "each of the 6 buckets had a gallon", "half filled a 5 gal bucket".
    (
        "each of|half|halfway",
        r"^each of (?:the |my |our )?\d+ (?:buckets|pails|trees|taps|maples)\b.*\b(?:had|gave)\b"
        r"|\bhalf[- ]filled an? \d|\bfilled an? \d+ ?gal\w* \w+ (?:halfway|half way)"
        r"|\btank \d+ ?gal\w* half full",
        HOW_MUCH_SAP,
    ),
    # "got a quart of syrup from jim", "made candy from a quart of syrup".
    (
        "syrup",
        r"\b(?:got|picked up|received|found) (?:an?|half an?|one|\d[\d.]*) ?\w+ of (?:\w+"
        r" ){0,2}syrup"
        r" (?:from|off) (?!(?:the|this|that|our|my|today|yesterday|last|first|all|tree|\d|an?\b))"
        r"|\b(?:candy|sugar|cream|taffy|fudge|caramels?) (?:from|out of) .*\bsyrup"
        r"|\bsyrup (?:in)?to (?:candy|sugar|cream|taffy|fudge)\b",
        "Of your own making? If so, text it like: drew 3 qt.",
    ),
    # "bob pulled all his taps", "boiled 60 gal at my brothers sugarhouse".
    (
        "his |their |sugarhouse|place|watched",
        r"^(?!.*\b(?:i|we|my|our|me|us|neighbou?rs?|friends?|uncle|cousin)\b)\w+"
        r" (?:\w+ ){0,4}(?:his|their) (?:\w+ )?"
        r"(?:taps|fire|arch|buds|pan|spiles|maples|syrup|sap|lines|buckets)\b"
        rf"|\bboil(?:ed|ing) {VOLUME}(?: of \w+)? at (?:my )?\w+'?s "
        r"(?:sugarhouse|place)"
        rf"|\bwatched \w+ (?:\w+ ){{0,3}}boil\w* {VOLUME}",
        "Theirs, or for your tally? If yours, text it like: got 12 gal.",
    ),
    # "filled 2 five gallon jugs", "12 pints in the cellar", "have 24 pint jars ready".
    (
        "jug|in the |jars",
        r"\bfilled (?:\d+|two|three|four) (?:\d+|five|six|seven|three)[ -]?gal\w* jugs?\b"
        r"|^(?:put )?\d+ (?:pints|quarts|half pints)(?: are)? in the "
        r"(?:fridge|cellar|pantry|freezer)\b"
        r"|^(?:have|got) \d+ (?:empty |new )?(?:pint|quart|half pint) jars(?: ready)?$",
        "Sap, or syrup put up? Text it like: got 12 gal. Or: bottled 6 pints.",
    ),
    # "helped carl gather 40 gal": whose?
    (
        "helped ",
        r"^(?:i |we )?helped (?!us\b|me\b|(?:my |the )?neighbou?r)(?:\w+ ){1,3}(?:to )?"
        r"(?:gather|collect|boil|haul|bottle|tap|set|draw)\b.*\d",
        "Theirs, or for your tally? If yours, text it like: got 12 gal.",
    ),
    # "bought a gallon of syrup", "traded 12 gal of sap for 2 pints".
    (
        "bought|ordered|traded|swapped|exchanged",
        r"\b(?:bought|ordered) (?:an?|half an?|one|\d[\d.]*) ?"
        r"(?:gal|gallon|quart|qt|pint|jug|bottle)s? of (?:maple )?syrup\b"
        rf"|\b(?:traded|swapped|exchanged) (?:them |him |her )?{VOLUME}(?: of (?:sap|syrup))?"
        r" (?:for|with)\b",
        "Of your own making? If so, text it like: drew 3 qt. Or: got 12 gal.",
    ),
    # "3 half gallon jugs".
    (
        "half",
        r"^\d+ half[ -]gal\w* (?:jugs?|pails?|buckets?|bags?)$",
        "Sap, or syrup? Text it like: got 12 gal. Or: bottled 6 pints.",
    ),
    # "39 gal of sap makes a gallon", "should be good for 12 gal": what is so, or will be.
    (
        "make|gives|good for|equals|=| is ",
        rf"^(?:it takes |about )?{VOLUME}(?:(?: of)? sap)?(?: at [\d.]+%?)?"
        r" (?:makes?|gives|equals|is|=) "
        r"(?:about )?(?:an?|one|1) (?:gal|gallon|quart|pint|litre|liter)\b"
        rf"|\b(?:should be|ought to be|is|are|be) good for (?:about |another )?{VOLUME}",
        "Gathered already? If so, text it by itself, like: got 12 gal.",
    ),
    # "40 taps, gallon each", "got a gal from all 12 taps".
    (
        "each|apiece|all|every",
        r"^\d+ (?:taps|buckets|pails|bags|trees),? (?:about )?"
        r"(?:gal|gallon|quart|qt|pint|litre|liter)s? (?:each|apiece)$"
        r"|\b(?:an?|one|half an?) (?:gal|gallon|quart|qt|pint|litre|liter)"
        r" (?:of sap )?(?:from|off|out of|in) (?:all|every)\b",
        HOW_MUCH_SAP,
    ),
    # "tank reads 62": how warm, how full?
    (
        "tank|barrel|drum|tote",
        r"^(?:the )?(?:\w+ )?(?:tank|barrel|drum|tote) (?:reads?|is at|is|at|says) "
        r"(?:5[5-9]|[6-9]\d|\d{3})$",
        "Degrees, or gal? Text it like: tank is 38 F. Or: got 12 gal.",
    ),
    # "holding tank reads 6.5": how warm, how sweet?
    (
        "tank|barrel|drum|tote",
        r"^(?:the )?(?:\w+ )?(?:tank|barrel|drum|tote) (?:reads?|is at|is|at|says) "
        r"(?:4\.[5-9]|[5-9](?:\.\d)?)(?![\d.:]| ?(?:%|percent|brix|deg|c\b|f\b|gal|l\b))",
        "How warm, or how sweet? Text it like: tank is 4 C. Or: sugar 2.2.",
    ),
    # "got 12 gal at 3 and lit the fire at 4": sugar, or the clock?
    (
        " at ",
        rf"^(?!how|when|what).*{VOLUME} at (?:[3-9]|1[0-2])"
        r"(?! ?(?:%|percent|brix|deg|\d|\.\d|:|am\b|pm\b))\b.*"
        r"\b(?:at|by) (?:\d|1[0-2])(?::\d\d)?(?![\d.:]| ?(?:%|percent|brix|deg))",
        "At what sugar, if you tested it? Text it like: 12 gal at 2.2.",
    ),
    ("at ", rf"\bat (?:\d|1[0-2]) {VOLUME}", HOW_MUCH_SAP),
    # "power went out for 3 hrs".
    (
        "power",
        r"\bpower (?:went|was) (?:out|off) for [\d.]+ (?:hrs?|hours)\b",
        "Text what you made by itself, like: bottled 5 pints.",
    ),
    # "my sister finished 5 L of syrup".
    (
        "my ",
        r"\bmy (?:sister|brother|cousin|uncle|aunt|friend|neighbou?r|buddy|boss)(?: \w+)?"
        r" (?:made|finished|drew|bottled|boiled)\b.*\d",
        "Theirs, or for your tally? If yours, text it like: drew 3 qt.",
    ),
    # What was once, or is so in general.
    (
        "ago|back in|in 20|ever|record|best|good tree",
        r"\ba year ago\b.*\d|\$\d.* back in (?:19|20)\d\d\b|\bin 20[012]\d (?:i|we)\b"
        r"|\bbest (?:day|tree|run|boil) (?:i |we )?ever\b|\b(?:record|best) (?:here )?is\b.*\d"
        r"|\ba good tree (?:gives|makes)\b",
        "Is that of now? If so, text it by itself, like: got 12 gal.",
    ),
    # "when we get to 40 gal we light it".
    (
        "when|once|as soon as",
        rf"\b(?:when|once|as soon as) (?:we|i) (?:get|have|hit|reach)(?: to)? {VOLUME}",
        "Is that in the tank already? If so, text it like: got 12 gal.",
    ),
    # "a 5 gal bucket and a half", "one bucket full, one a quarter".
    (
        "bucket|pail",
        r"\b\d+ (?:gal|l)\w* (?:bucket|pail) and a half\b"
        r"|\bbuckets? and a (?:half|quarter) (?:gal|gallon)\b"
        r"|\bbuckets? full,.*\b(?:one|two|three|\d) a (?:quarter|third)\b",
        HOW_MUCH_SAP,
    ),
    (
        "one ",
        r"\b(?:sugar|brix|tested|tests)(?: is| was| only| at)* one "
        r"(?:two|three|four|five|six|seven|eight|nine)\b",
        "How much sugar is that? Text it in figures, like: sugar 1.4.",
    ),
)
