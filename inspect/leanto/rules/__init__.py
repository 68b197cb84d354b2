"""From observations to findings: facts, expressions, matching, causes."""
