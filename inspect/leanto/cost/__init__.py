"""From repair items to allowances: price lines, build-up, ranges."""
