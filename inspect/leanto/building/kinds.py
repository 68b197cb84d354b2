"""The words a building is described with."""

from __future__ import annotations

from enum import StrEnum


class Side(StrEnum):
    """The compass side a wall or roof slope faces."""

    NORTH = "north"
    EAST = "east"
    SOUTH = "south"
    WEST = "west"

    @property
    def opposite(self) -> Side:
        order = list(Side)
        return order[(order.index(self) + 2) % 4]


class RoofForm(StrEnum):
    GABLE = "gable"
    SHED = "shed"
    HIP = "hip"
    FLAT = "flat"


class Covering(StrEnum):
    """What sheds the water on a roof."""

    ASPHALT_SHINGLE = "asphalt shingle"
    CORRUGATED_STEEL = "corrugated steel"
    STANDING_SEAM = "standing seam"
    ROLL_ROOFING = "roll roofing"
    WOOD_SHINGLE = "wood shingle"
    SLATE = "slate"
    FIBER_CEMENT = "fiber cement"
    MEMBRANE = "membrane"


class Deck(StrEnum):
    """What the covering is fastened to."""

    BOARDS = "boards"
    GAPPED_BOARDS = "gapped boards"
    PLYWOOD = "plywood"
    PURLINS = "purlins"


class Cladding(StrEnum):
    BOARD = "board"
    BOARD_AND_BATTEN = "board and batten"
    LAP_SIDING = "lap siding"
    PLYWOOD = "plywood"
    WOOD_SHINGLE = "wood shingle"
    METAL = "metal"
    STUCCO = "stucco"
    MASONRY = "masonry"
    NONE = "none"


class Lining(StrEnum):
    """The inside face of a wall or ceiling."""

    NONE = "none"
    BEADED_BOARD = "beaded board"
    BOARD = "board"
    FIBERBOARD = "fiberboard"
    GYPSUM_BOARD = "gypsum board"
    PLASTER_ON_LATH = "plaster on lath"
    PLYWOOD = "plywood"


class Insulation(StrEnum):
    NONE = "none"
    BATTS = "batts"
    LOOSE_FILL = "loose fill"
    FOAM = "foam"
    UNKNOWN = "unknown"


class FloorKind(StrEnum):
    JOISTS = "joists"
    SLEEPERS = "sleepers"
    SLAB = "slab"
    DIRT = "dirt"


class Foundation(StrEnum):
    STONE_AND_SKIDS = "stone and skids"
    PIERS = "piers"
    MASONRY_WALL = "masonry wall"
    CONCRETE_WALL = "concrete wall"
    SLAB_EDGE = "slab edge"
    POSTS_IN_GROUND = "posts in ground"


class OpeningKind(StrEnum):
    DOOR = "door"
    BIG_DOOR = "big door"
    WINDOW = "window"
    VENT = "vent"
    SKYLIGHT = "skylight"
    FLUE = "flue"


class Use(StrEnum):
    """What the building is to become."""

    STORAGE = "storage"
    WORKSHOP = "workshop"
    STUDIO = "studio"
    OFFICE = "office"
    LIVING_SPACE = "living space"
    ANIMALS = "animals"


class Species(StrEnum):
    """Species groups that framing lumber is graded in."""

    DOUGLAS_FIR = "douglas fir"
    HEM_FIR = "hem-fir"
    SPRUCE_PINE_FIR = "spruce-pine-fir"
    SOUTHERN_PINE = "southern pine"


class Grade(StrEnum):
    """Grades of framing lumber, best first."""

    SELECT_STRUCTURAL = "select structural"
    NO_1 = "no. 1"
    NO_2 = "no. 2"
    NO_3 = "no. 3"


class Container(StrEnum):
    """What hauls the debris away."""

    TRAILER = "trailer"
    ROLL_OFF_10 = "roll-off-10"
    ROLL_OFF_15 = "roll-off-15"
    ROLL_OFF_20 = "roll-off-20"
    ROLL_OFF_30 = "roll-off-30"
    ROLL_OFF_40 = "roll-off-40"


class PlaceKind(StrEnum):
    """Where a walker stands; a checklist item names the kinds it is asked at."""

    SITE = "site"
    WALL_OUTSIDE = "wall outside"
    ROOF = "roof"
    WALL_INSIDE = "wall inside"
    CEILING = "ceiling"
    FLOOR = "floor"
    WIRING = "wiring"
    """The shut-off, the panel and the building's wiring as a whole."""
    FEED = "feed"
    """The run from the house panel to the building."""
