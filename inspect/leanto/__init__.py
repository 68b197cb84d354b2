"""leanto: walk an old outbuilding once; leave with a condition report and a repair scope.

The way of the data: building + walk + library -> assess() -> Assessment -> screens and reports.
"""

__version__ = "0.1.0"
