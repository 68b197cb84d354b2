"""What is asked on the walk: sections, items, answers, measures."""
