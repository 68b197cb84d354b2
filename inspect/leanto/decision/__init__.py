"""Gut or keep, surface by surface."""
