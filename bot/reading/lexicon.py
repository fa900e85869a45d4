"""Our own word list: which words do what, gathered from the shared file and from every kind.

TAGS: word or phrase (joined by spaces) -> what it does. UNITS: word -> (dimension, unit).
KNOWN: every single word that we know. CORRECTABLE: those that a misspelling may be led to.
"""

from __future__ import annotations

from collections import defaultdict
from importlib import resources

from bot.reading import dates, kinds, numbers

_VOLUMES = {
    "gallon": "gal gals gallon gallons gl gall galls g gallon's galon galons galls gln",
    "quart": "qt qts quart quarts qrt qrts",
    "pint": "pt pts pint pints pnt pnts",
    "half_pint": "halfpint halfpints",
    "cup": "cup cups",
    "fluid_ounce": "oz ozs ounce ounces floz",
    "liter": "l liter liters litre litres ltr ltrs lt",
    "milliliter": "ml mls milliliter milliliters millilitre millilitres",
    "tablespoon": "tbsp tablespoon tablespoons",
}
_OTHERS = {
    ("brix", "brix"): "brix bricks bx brx brics brick brixs percent pct %",
    ("temp", "degF"): "f fahrenheit",
    ("temp", "degC"): "c celsius centigrade",
    ("temp", ""): "deg degs degree degrees",
    ("length", "inch"): 'inch inches in. " inchs',
    ("length", "centimeter"): "cm cms centimeter centimeters centimetre centimetres",
    ("length", "millimeter"): "mm",
    ("length", "foot"): "ft foot feet",
    ("hours", "hour"): "hr hrs hour hours h",
    ("hours", "minute"): "min mins minute minutes",
    ("cords", "cord"): "cord cords",
    ("mass", "pound"): "lb lbs pound pounds #s",
    ("mass", "kilogram"): "kg kgs kilo kilos",
    ("money", "dollar"): "dollar dollars buck bucks cad usd",
}
UNITS: dict[str, tuple[str, str]] = {
    word: ("volume", unit) for unit, words in _VOLUMES.items() for word in words.split()
} | {word: unit for unit, words in _OTHERS.items() for word in words.split()}
UNIT_PHRASES: dict[tuple[str, ...], tuple[str, str]] = {
    ("half", "pint"): ("volume", "half_pint"), ("half", "pints"): ("volume", "half_pint"),
    ("hf", "pts"): ("volume", "half_pint"), ("hf", "pt"): ("volume", "half_pint"),
    ("hf", "pints"): ("volume", "half_pint"), ("half", "-", "pints"): ("volume", "half_pint"),
    ("half", "-", "pint"): ("volume", "half_pint"), ("half", "-", "gallon"): ("volume", "half_gallon"),
    ("half", "-", "gallons"): ("volume", "half_gallon"), ("half", "-", "gal"): ("volume", "half_gallon"),
    ("half", "pt"): ("volume", "half_pint"), ("half", "pts"): ("volume", "half_pint"),
    ("half", "gallon"): ("volume", "half_gallon"), ("half", "gallons"): ("volume", "half_gallon"),
    ("half", "gal"): ("volume", "half_gallon"), ("half", "gals"): ("volume", "half_gallon"),
    ("fl", "oz"): ("volume", "fluid_ounce"), ("fluid", "ounces"): ("volume", "fluid_ounce"),
    ("fluid", "oz"): ("volume", "fluid_ounce"), ("fl", ".", "oz"): ("volume", "fluid_ounce"),
    ("imperial", "gallons"): ("volume", "imperial_gallon"),
    ("imperial", "gallon"): ("volume", "imperial_gallon"),
    ("imperial", "gal"): ("volume", "imperial_gallon"), ("imp", "gal"): ("volume", "imperial_gallon"),
    ("us", "gallons"): ("volume", "gallon"), ("us", "gal"): ("volume", "gallon"),
    ("face", "cord"): ("cords", "face_cord"), ("face", "cords"): ("cords", "face_cord"),
    ("percent", "sugar"): ("brix", "brix"), ("%", "sugar"): ("brix", "brix"),
    ("deg", "f"): ("temp", "degF"), ("degrees", "f"): ("temp", "degF"), ("degree", "f"): ("temp", "degF"),
    ("degrees", "fahrenheit"): ("temp", "degF"), ("deg", "c"): ("temp", "degC"),
    ("degrees", "c"): ("temp", "degC"), ("degrees", "celsius"): ("temp", "degC"),
    ("deg", "brix"): ("brix", "brix"), ("degrees", "brix"): ("brix", "brix"), ("deg", "bx"): ("brix", "brix"),
}  # fmt: skip
SLANG = {
    "wen": "when", "shud": "should", "shld": "should", "cud": "could", "wud": "would",
    "mutch": "much", "wut": "what", "wat": "what", "wats": "what's", "u": "you", "r": "are", "ur": "your", "yr": "your",
    "thru": "through", "gonna": "gonna", "wht": "what", "hw": "how", "wich": "which",
    "teh": "the", "hte": "the", "adn": "and", "nd": "and", "w": "with", "w/": "with",
    "abt": "about", "bout": "about", "tonite": "tonight", "2day": "today", "gals": "gal",
    "srup": "syrup", "sirup": "syrup", "syurp": "syrup", "syrip": "syrup", "surup": "syrup",
    "seer": "syrup", "sapp": "sap", "spaps": "sap", "spal": "sap", "sop": "sap",
    "brics": "brix", "brick": "brix", "brex": "brix", "bris": "brix", "brx": "brix", "bricks": "brix",
    "boild": "boiled", "bioled": "boiled", "botled": "bottled", "bottld": "bottled",
    "tapt": "tapped", "taped": "tapped", "tappd": "tapped", "drwe": "drew", "drw": "drew", "drue": "drew",
    "firs": "fire", "fier": "fire", "frie": "fire", "bukets": "buckets", "bukkets": "buckets",
    "tre": "tree", "treee": "tree", "jrs": "jars", "jasr": "jars", "pluled": "pulled", "pulld": "pulled",
    "pnt": "pint", "pnts": "pints", "taht": "that", "thnks": "thanks", "thnx": "thanks", "pls": "please",
    "plz": "please", "cuz": "because", "bc": "because", "tempature": "temperature", "temp": "temperature",
    "temps": "temperature", "thermo": "thermometer", "shoudl": "should", "woudl": "would", "doin": "doing",
    "boilin": "boiling", "runnin": "running", "gettin": "getting", "goin": "going", "makin": "making",
    "pullin": "pulling", "tappin": "tapping", "evap": "evaporator", "galons": "gallons",
    "gallns": "gallons", "galllons": "gallons", "gallon's": "gallons", "maples": "maple", "mapel": "maple",
    "mable": "maple", "suger": "sugar", "sugr": "sugar", "seap": "sap", "collectd": "collected",
    "didn": "didn't", "dunno": "dunno", "kinda": "kinda", "atm": "now", "rn": "now",
    "2nite": "tonight", "yestrday": "yesterday", "bot": "bought", "bougt": "bought", "refract": "refractometer", "tookout": "tookout",
}  # fmt: skip


def _shared_lines() -> list[tuple[str, str]]:
    text = resources.files("bot.reading").joinpath("lexicon.txt").read_text(encoding="utf-8")
    lines = (line.split("#")[0].strip() for line in text.splitlines())
    return [
        (tag.strip(), words) for tag, _, words in (line.partition(":") for line in lines if line)
    ]


def _gathered() -> dict[str, frozenset[str]]:
    tags: defaultdict[str, set[str]] = defaultdict(set)
    lists = _shared_lines()
    for family in kinds.FAMILY:
        lists += list(getattr(family, "CUES", {}).items())
    for tag, words in lists:
        for word in words.split():
            tags[word.replace("_", " ")].add(tag)
    return {word: frozenset(names) for word, names in tags.items()}


TAGS: dict[str, frozenset[str]] = _gathered()
PHRASES: dict[str, list[tuple[tuple[str, ...], frozenset[str]]]] = defaultdict(list)
for _words, _tags in TAGS.items():
    _parts = tuple(_words.split())
    if len(_parts) > 1:
        PHRASES[_parts[0]].append((_parts, _tags))
for _list in PHRASES.values():
    _list.sort(key=lambda entry: -len(entry[0]))


def _words_of(name: str) -> frozenset[str]:
    text = resources.files("bot.reading").joinpath(name).read_text(encoding="utf-8")
    return frozenset(
        word for line in text.splitlines() if not line.startswith("#") for word in line.split()
    )


LOOKALIKES = _words_of("lookalikes.txt")
"""Plain English words that must never be taken for a misspelling of one of ours."""

_singles = {part for words in TAGS for part in words.split()}
CORRECTABLE = sorted(
    word
    for word in _singles
    | set(UNITS)
    | {"yesterday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday",
       "morning", "evening", "tonight", "february", "january", "april", "diameter", "temperature",
       "syrup", "gallons", "maple", "season", "should", "much", "twelve", "eleven", "fifteen",
       "twenty", "thirty", "quarter", "quarters", "dozen"}
    if len(word) >= 4 and word.isalpha()
)  # fmt: skip
KNOWN = (
    _singles
    | set(UNITS)
    | numbers.NUMBER_WORDS
    | set(dates.WEEKDAYS)
    | set(dates.MONTHS)
    | set(CORRECTABLE)
)
