"""Wiring of a detached building: sizes, fill, depth, load, and what is condemned on sight.

Plain numbers in, frozen values out. Every answer is for a licensed electrician to confirm, and
nothing here asks a walker to open or touch anything.
"""
