"""Pailtext: text it what you gather, and it keeps the sugaring season's tally."""
