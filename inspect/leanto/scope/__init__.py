"""From findings to repair items: zones united, merged, rounded, in order."""
