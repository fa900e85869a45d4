"""Prices that may be paid or only seen, and costs in one heap."""

from __future__ import annotations

from bot.reading.two_ways.form import forms

FORMS = forms(
    # "saw an evaporator for $900", "they run about $900", "costco syrup is $15".
    (
        "$",
        r"^saw an? \w+ for \$\d[\d.]*$|\b(?:looking at|found|spotted|thinking of)\b[^.;]*\$\d"
        r"|\bthey run (?:about )?\$\d|\b(?:store|costco|walmart|market) syrup is \$\d",
        "Was that paid? If so, text it like: propane $24.",
    ),
    # "i've spent $500 already", "we're at $500".
    (
        "$",
        r"^[^$]*\$\d[\d.]* (?:already|so far)\b|\btotal cost\b.*\$\d|\bwe're at \$\d",
        "New, or the sum so far? If new, text it like: lids $6.",
    ),
    # "mom gave me $50 for supplies", "a parent sent in $25 toward jars".
    (
        "$",
        r"\b(?:gave (?:me|us)|sent in|donated|chipped in) \$\d|\$\d[\d.]* toward\b"
        r"|\bgot \$\d[\d.]* for (?:the |my |our |some |a )?(?:\w+ )?syrup",
        "Paid by you? If so, text it like: lids $6.",
    ),
    # "mike's pan was $400".
    (
        "'s ",
        r"^(?!today|it|that|there|what)[a-z]+'s \w+ (?:was|cost|ran) \$\d",
        "Paid by you? If so, text it like: pan $75.",
    ),
    ("$", r"^\$\d[\d.]*, \d+ (?:taps|spiles)$", "Text what was paid: spiles $36."),
    # "propane went up $2", "saved $20 on jars".
    (
        "$",
        r"\b(?:went up|is up|are up|gone up|went down|up to) (?:to |by )?\$\d[\d.]*"
        r"(?! (?:a|per) gal)"
        r"|\bsaved \$\d",
        "Was that paid? If so, text it like: propane $24.",
    ),
    # "bought 6 sap bags at $4", "4 buckets at $8": each, or in all?
    (
        "$",
        r"(?:^|\b(?:bought|got|picked up|ordered|grabbed) )\d+ "
        r"(?!(?:half|gal|qt|quart|pint|pt)\w*\b)(?:\w+ ){0,2}\w+s (?:at|@) ?\$\d[\d.]*"
        r"(?: each| apiece| ea| a piece)?$",
        "How many $ in all? Text it like: 6 sap bags $24.",
    ),
    # "got a $250 pan for $100", "$5 off a $20 pan", "almost bought a hydrometer for $22".
    (
        "$",
        r"(?s:^(?=.*\$).*)(?:\$\d[\d.]* (?!and\b)\w+(?: (?!and\b)\w+)? for (?:an? )?\$\d|\bcoupon\b"
        r"|\$\d[\d.]* off\b|\bmarked down\b"
        r"|\bdown on an? \$|\bof the \$\d|\bexchanged the \$|\bwith a \$\d+$|\bcancell?ed the\b"
        r"|\btook back the\b|\balmost bought\b|\bseems (?:high|steep|like a lot)\b|\bwould be"
        r" nice\b"
        r"|\bgot rid of the (?:old )?\w+ for \$|\bgot \$\d[\d.]* for (?:the|my|our) old\b)",
        "What was paid, and for what? Text it like: lids $6.",
    ),
    # "got $20 from the lady at church for two pints".
    (
        "$",
        r"^(?:i |we )?(?:got|received|took in) \$\d[\d.]* from\b",
        "What was paid, and for what? Text it like: lids $6.",
    ),
    # "3 boxes of jars at $12", "$13 x 2 on jars".
    (
        "$",
        r"^(?:\d+|two|three|four|five|six) (?:boxes|cases|packs|bags|rolls|cans|bundles)"
        r"(?: of \w+(?: \w+)?)? (?:at|@|for) ?\$\d[\d.]*$"
        r"|\$\d[\d.]* ?(?:x|times|\*) ?\d|\b\d+ ?(?:x|times|\*) ?\$\d",
        "How many $ in all? Text it like: 6 sap bags $24.",
    ),
    # "saw pint jars at the hardware store for $14 a dozen".
    (
        "saw ",
        r"^(?:i |we )?(?:just )?saw (?!an? |the |some )(?:[\w-]+ ){1,7}(?:for|at) \$\d",
        "What was paid, and for what? Text it like: lids $6.",
    ),
    # "used evaporator in the classifieds $900".
    (
        "classified|catalog|advert|for sale| ad",
        r"\b(?:classifieds?|catalogu?e?|advert\w*|for sale|(?:an|the|saw) ad)\b.*\$\d",
        "What was paid, and for what? Text it like: lids $6.",
    ),
    # "a new evaporator is listed at $1850".
    (
        "$",
        r"\b(?:listed|priced|advertised|going|selling|quoted|marked) (?:down )?(?:at|for) \$\d",
        "What was paid, and for what? Text it like: lids $6.",
    ),
    # "a case of pint jars is $19 at the store now".
    (
        "$",
        r"^(?!my |our |.*\b(?:bought|paid|spent|bill|total|costs?)\b)(?:an? |one |new )?.*"
        r"\b(?:is|are|r|runs?|go for|goes for|wants?|asks) (?:now |like |about |up to )?"
        r"\$\d[\d.]*(?:,? (?:should|worth|is that|too much|now|each|apiece|online"
        r"|these days|in town|for one|at (?:the )?\w+))",
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
    (
        "$",
        r"^(?:looked at|priced)\b.*\$\d|\bcosts \$\d"
        r"|\b(?:are|is) (?:now )?\$\d[\d.]* (?:a|per) (?:dozen|case|box)\b"
        r"|\bfound \$\d|\$\d+ bet\b|\bcould(?:'ve| have)? been \$\d|\breg\.? \$\d"
        r"|\$\d[\d.]* for \$\d",
        "What was paid, and for what? Text it like: lids $6.",
    ),
)
