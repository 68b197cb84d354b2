"""The checklist items whose answers the computations read, in one place.

A checklist may leave an item out: the computation then knows less, and says so.
"""

from __future__ import annotations

SLAB = ("slab",)
FLOOR_JOISTS = ("floor-joists",)
ROOF_TIES = ("roof-ties",)
COVERING = (
    "shingle-brittle",
    "metal-rust",
    "membrane-splits",
    "hard-covering",
    "missing-pieces",
)
ROOF_LAYERS = ("roof-layers",)
DECK_BELOW = ("roof-deck",)
DECK_EDGE = ("deck-edge",)
MOLD = ("mold",)
WET_LINING = ("wet-lining",)
WALL_BASE = ("wall-base",)
FEED_SIZE = ("feed-size",)
FEED_ROUTE = ("buried-run",)
LEAD_PAINT = ("lead-paint",)
SUSPECT_LINING = ("suspect-lining",)
SUSPECT_FILL = ("loose-fill",)
WINDOWS = ("window-wood",)
SOIL_GAP = ("soil-gap",)
CRAWL_SPACE = ("crawl-space",)
LINING = ("lining-state", *WET_LINING, *MOLD)
OUTSIDE_FACE = ("cladding", "wall-paint", "hard-cladding")

STUDS = ("stud-feet",)
RAFTERS = ("rafters", "oval-holes")
PLATES = ("top-plate",)
POSTS = ("post-feet",)
FACING = ("pick-test", "pin-holes")
"""Items about whatever frames the surface that the walker faces."""
CUT_MEMBERS = ("cut-members",)
SILL = ("sill",)
FRAME_WOOD = (*SILL, *STUDS, *RAFTERS, *PLATES, *POSTS, *FACING, *FLOOR_JOISTS, *ROOF_TIES)
"""Items about the framing lumber, whose kind the building may name."""

PESTS: dict[str, str] = {
    "soil-tubes": "subterranean-termite",
    "pellets": "drywood-termite",
    "ants": "carpenter-ant",
    "bee-holes": "carpenter-bee",
    "oval-holes": "old-house-borer",
}
"""Items whose question names the kind already."""
BEETLES = ("pin-holes",)
RODENTS = ("rodents",)
FILL_NESTS = ("fill-nests",)

ALL = (
    *SLAB,
    *FLOOR_JOISTS,
    *ROOF_TIES,
    *COVERING,
    *ROOF_LAYERS,
    *DECK_BELOW,
    *DECK_EDGE,
    *LINING,
    *WALL_BASE,
    *FEED_SIZE,
    *FEED_ROUTE,
    *LEAD_PAINT,
    *SUSPECT_LINING,
    *SUSPECT_FILL,
    *WINDOWS,
    *SOIL_GAP,
    *CRAWL_SPACE,
    *OUTSIDE_FACE,
    *FRAME_WOOD,
    *CUT_MEMBERS,
    *PESTS,
    *RODENTS,
    *FILL_NESTS,
)
