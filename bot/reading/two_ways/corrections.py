"""Corrections and new records in one breath, and a day that is said twice."""

from __future__ import annotations

from bot.reading.dates import WEEKDAY
from bot.reading.two_ways.form import DAY, DEED, VOLUME, forms

_ONE_AT_A_TIME = "One at a time, please: first what should change, then the new record."
_SAYS_IT_WAS = (
    r"(?:^|, )(?:the |my |our )?"
    r"(?:receipt|dipstick|bill|invoice|sales slip|slip|notebook|ledger|log)"
    r" (?:(?:actually|really|in fact) (?:says|said|reads|shows|is)|should (?:say|show|read)"
    r"|(?:says|said|reads|shows) (?:it was |actually |really ))"
)
_WHICH_DAY = "I read two days. Text it once more, with the right one."

FORMS = forms(
    # "last one was 5 gal", "you're wrong, it's 5 gal", "change camp to 5 gal".
    (
        "last one was|last text was|last entry was|wrong|change |make |correct |fix ",
        r"\b(?:last (?:one|text|entry) was|you're wrong)[, ]+(?:wrong,? )?(?:it's "
        rf"|it was )?{VOLUME}"
        r"|^(?:change|make|correct|fix) (?:the )?(?!that|it\b|last"
        rf"|sap)\w+(?: lot)? (?:to )?{VOLUME}$",
        "New, or put right? If right, text it like: no, 14 gal.",
    ),
    # "drop 2 gal from that", "delete tree 4", "take off 2 gal, that was ice", "disregard 5 gal".
    (
        "drop |deduct|subtract|delete |remove |take |disregard|ignore ",
        rf"^(?:drop|deduct|subtract) {VOLUME} (?:from|off)|^(?:delete|remove) (?:tree|the tap)\b"
        rf"|^take (?:off {VOLUME}|that {VOLUME} off)|^(?:disregard|ignore) {VOLUME}$",
        "Undo, or put right? Text it like: undo. Or: no, 14 gal.",
    ),
    # "actually 5 more gal just came in", "sorry, got 5 gal yesterday too".
    (
        "actually|sorry|wait",
        r"^(?:actually|sorry|wait),? (?!.*(?:bought|\$))[^.]*\d[^.]*\b(?:more|too|also)\b"
        r"|^(?:actually|sorry|wait),? (?!.*(?:bought|\$))[^.]*\b(?:another|too|also)\b[^.]*\d",
        "More, or instead? Text it like: 5 gal more. Or: no, 14 gal.",
    ),
    # "should be 217 soon".
    (
        "should be",
        r"\bshould be \d[\d.]* (?:soon|by\b|in an?\b)|^(?:syrup"
        r"|it) should be \d[\d.]* then$",
        "Not yet? Text it when it is so.",
    ),
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
    # "got back monday, 9 gal": gathered then, or now?
    (
        "back|home",
        r"^(?:we |i |finally |just )*(?:got|came|drove|flew|made it) (?:back|home)"
        rf"(?: from [\w ]+?)? (?:on )?{DAY}(?: night| morning| evening)?(?:,|:| to| and found)? "
        rf"(?:about )?{VOLUME}",
        "Which day was that? Text it like: saturday 12 gal.",
    ),
    # "burned half a cord this weekend": which day?
    (
        "weekend",
        r"^(?:we |i |the )?(?:\w+ )?(?:got|gathered|collected|boiled|made|burned|drew|bottled"
        r"|hauled|spent|paid|used)\b[^.,;!?]* (?:this|over the|on the|all) weekend$",
        "Which day was that? Text it like: saturday 12 gal.",
    ),
    # "the 12 gal I told you about was yesterday", "the 12 gal from this morning came from the
    # hill": told before.
    (
        "the |that |those ",
        rf"^(?:the|those|that) {VOLUME}(?: of \w+)? (?:(?:that )?(?:i|we) (?:told|texted|sent|gave"
        r"|logged|mentioned|reported|put down|said)\b.*"
        rf"|(?:from|of) (?:{DAY}|this morning|this afternoon|earlier)"
        r" (?:came|was|were) (?:from|off|out of)\b.*)$",
        "New, or put right? If right, text it like: that was yesterday.",
    ),
    # "receipt actually says $17.60", "the dipstick really shows 14 gal".
    (
        "receipt|dipstick|bill|invoice|slip|notebook|ledger|log ",
        rf"{_SAYS_IT_WAS}.*\$\d",
        "New, or put right? If right, text it like: no, $17.60.",
    ),
    (
        "receipt|dipstick|bill|invoice|slip|notebook|ledger|log ",
        rf"{_SAYS_IT_WAS}.*\d",
        "New, or put right? If right, text it like: no, 14 gal.",
    ),
    # "my husband says it was 14 gal".
    (
        "it was |insists|swears|reminds|corrects|corrected",
        r"^(?:and |but )?(?:my |the )?(?!i |we )\w+ (?:(?:says|said|thinks|tells me|told me)"
        r"(?: that)?:? it was |(?:insists|swears|reminds me|corrects me|corrected me)(?: that)?:? "
        rf"(?:it was |its |it's )?)(?:about )?{VOLUME}",
        "New, or put right? If right, text it like: no, 14 gal.",
    ),
    # "yesterday's 12 gal was really from monday".
    (
        "'s |days ",
        rf"^(?:yesterday'?s|today'?s|(?:{WEEKDAY})'?s) {VOLUME}.* (?:was|were) (?:\w+ )?"
        rf"(?:from|on|for) (?:last |the )?(?:{DAY}|\d|day before)",
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
    # "never mind the 12 gal".
    (
        "mind|disregard|ignore|forget|nvm",
        r"^(?:never ?mind|nvm|disregard|ignore|forget)(?: about)? (?:the|those|my) \d[\d.]* ?"
        r"(?:gal\w*|taps|pints?|quarts?|qts?|l|lit\w+)$",
        "Take it back, or put it right? Text: undo. Or: no, 14 gal.",
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
