"""Our figures against other people's: one source a file, named at its head.

A tolerance is always argued beside its test. Where sources disagree, a test shows both: the
disagreement is part of what is known, and is not averaged away.
"""
