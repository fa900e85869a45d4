"""Answers, and what each of them must say."""
