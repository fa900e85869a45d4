"""Addresses in one form: phone numbers in E.164, e-mail in lower case."""

from __future__ import annotations

# Where a number without a country code is dialled (the United States and Canada share one plan).
_HOME = "US"


def normal_address(words: str, *, like: str = "") -> str | None:
    """A phone number in E.164 or an e-mail address in lower case, None if it is neither.

    Fictional 555 numbers count: a number has to be possible, not assigned. Names without a
    number ("sam") are only taken where the inviter's own address, `like`, is of that sort.
    """
    said = words.strip()
    if "@" in said:
        local, _, host = said.rpartition("@")
        return said.casefold() if local and "." in host.strip(".") and " " not in said else None
    import phonenumbers

    try:
        number = phonenumbers.parse(said, _HOME)
    except phonenumbers.NumberParseException:
        number = None
    if number is not None and phonenumbers.is_possible_number(number):
        return str(phonenumbers.format_number(number, phonenumbers.PhoneNumberFormat.E164))
    by_name = like and not like.startswith("+") and "@" not in like
    return said if by_name and said.isalnum() and not said.isdigit() else None
