"""Taps that may be set, pulled or only counted, and trees that are no taps."""

from __future__ import annotations

from bot.reading.two_ways.form import DAY, forms

_SET_TAPS = "Taps set, or what? If set, text it like: set 12 taps."
_HOW_MANY_TAPS = "How many taps in all? Text it like: pulled 6 taps."

FORMS = forms(
    # "tapped 10 of 22 trees", "9 of 50 tapped".
    (
        " of ",
        r"\b(?:tapped|drilled) \d+ of (?:the |our |my )?\d+\b"
        r"|^\d+ of (?:the )?\d+ (?:are )?tapped\b",
        "How many taps are in? Text it like: put in 20 taps.",
    ),
    # "took the taps out of tree 4", "pulled the taps on the reds".
    (
        "taps|spiles|spouts",
        r"^(?!.*\d.*\bof them)(?:we |i )?(?:pulled|took|yanked) (?:the|my|our) "
        r"(?:taps|spiles|spouts)(?: out)? (?:in|on|of|out of|from|at)"
        r" (?!(?:the )?(?:trees|maples|all|woods|bush|noon|dark|last|first)\b|\d)"
        rf"(?!{DAY})\w+",
        "How many taps did you pull? Text it like: pulled 6 taps.",
    ),
    # "maxed out at 40 taps", "drilled out 6 old holes".
    (
        " out ",
        r"\btapped out at\b|\b(?:maxed|topped|levell?ed) out at \d+ (?:taps|spiles)"
        r"|\b(?:drilled|reamed) out \d+\b",
        _SET_TAPS,
    ),
    # "started with 40 taps, pulled 6, so 34".
    (
        "pulled",
        r"\bpulled \d+(?: of them| taps| spiles)?,? (?:so|leaves|that leaves|leaving|and now|now)"
        r"(?: that's| we have| i have)? \d+",
        _HOW_MANY_TAPS,
    ),
    # "tapped 30 trees, two taps on the big ones".
    (
        " big| large| old| fat",
        r"\b\d+ (?:trees|maples),? (?:and |with )?(?:two|2|three|3) (?:taps |spiles )?(?:on"
        r"|in|for) "
        r"(?:the |each )?(?:big|large|old|fat)",
        "How many taps are in? Text it like: put in 20 taps.",
    ),
    # "boiled 40 spiles", "made 20 spiles from sumac", "reseated 5 taps".
    (
        "taps|spiles|spouts|holes",
        r"\b(?:boiled|made|whittled|reseated|re-?drilled|washed|sterilized|sanitized|cleaned) \d+ "
        r"(?:\w+ )?(?:taps|spiles|spouts|holes)\b",
        _SET_TAPS,
    ),
    # "6 taps stopped".
    (
        "taps|spiles|spouts",
        r"^\d+ (?:taps|spiles|spouts) (?:have |just )?(?:stopped|quit|died|plugged|popped|fell"
        r"|came loose|broke|healed|closed|shut)\b",
        "Pulled, or only dry? If pulled, text it like: pulled 6 taps.",
    ),
    # "pulled the camp taps except the three by the pole"; "took out every spile but the two on the
    # old tree".
    (
        "except|but not",
        r"\b(?:pulled|took out|took|yanked|removed)\b.*\b(?:taps|spiles|spouts)\b"
        r".*\b(?:except|but not)\b",
        _HOW_MANY_TAPS,
    ),
    (
        "every|all ",
        r"\b(?:every|all)(?: of)?(?: the| my| our)? (?:spile|tap|spout)s?\b.*"
        r"\b(?:but|except|save for|besides)\b(?! the (?:bill|cost))",
        _HOW_MANY_TAPS,
    ),
    # "put taps in today", "we put the taps in! whole family out there": how many?
    (
        "taps|spiles|spouts",
        r"^(?:we |i |finally |just )*(?:put|set|got|hammered|pounded) (?:all )?(?:the |our |my )?"
        r"(?:taps|spiles|spouts)(?: in)?(?: today| yesterday| this morning| this afternoon)?"
        r"(?:[.!]+ [^\d]*|[.!]*)$",
        "How many taps are in? Text it like: put in 20 taps.",
    ),
    # "put 12 taps out this morning": out in the woods, or out of the trees?
    (
        "put ",
        r"\bput \d+ (?:taps|spiles) out\b",
        "Taps set, or pulled? Text it like: set 12 taps, or: pulled 12 taps.",
    ),
    # "one tap in trees 1 through 8".
    (
        " trees| each in",
        r"\b(?:taps?|spiles?|spouts?)"
        r" (?:(?:each )?in(?:to)? trees \d|each in(?:to)? (?:the )?\d+ )",
        "How many taps in all? Text it like: set 12 taps.",
    ),
    # "took tap 3 out": one, or three?
    (
        "tap |spile |spout ",
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
)
