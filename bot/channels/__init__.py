"""Channels: the ways a text comes in and goes out. One file each."""
