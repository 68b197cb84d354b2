"""The pictures of the demo, drawn by rule: the same name gives the same pixels."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from leanto.demo.pictures import frame, pests, roofs, wet, wiring
from leanto.demo.pictures.canvas import Canvas
from leanto.demo.pictures.marks import plate

Subject = Callable[[Canvas], None]

PICTURES: Mapping[str, Subject] = {
    "stain-on-boards": wet.stain_on_boards,
    "second-stain": wet.second_stain,
    "ring-on-ceiling": wet.ring_on_ceiling,
    "sagging-seam": wet.sagging_seam,
    "tide-line": wet.tide_line,
    "mold-in-corner": wet.mold_in_corner,
    "meter-in-framing": wet.meter_in_framing,
    "curled-shingles": roofs.curled_shingles,
    "two-layers": roofs.two_layers,
    "open-flue-flashing": roofs.open_flue_flashing,
    "rusty-steel": roofs.rusty_steel,
    "open-roof-to-wall": roofs.open_roof_to_wall,
    "wet-rafter": roofs.wet_rafter,
    "rotten-sill": frame.rotten_sill,
    "soft-stud-feet": frame.soft_stud_feet,
    "soft-floor": frame.soft_floor,
    "rotten-window-sill": frame.rotten_window_sill,
    "high-ground": frame.high_ground,
    "splash-trench": frame.splash_trench,
    "sound-wall": frame.sound_wall,
    "ant-shavings": pests.ant_shavings,
    "ant-galleries": pests.ant_galleries,
    "droppings": pests.droppings,
    "gnawed-cable": wiring.gnawed_cable,
    "fuse-box": wiring.fuse_box,
    "joint-in-the-air": wiring.joint_in_the_air,
    "old-receptacle": wiring.old_receptacle,
    "cable-from-soil": wiring.cable_from_soil,
}
"""What is drawn, by the name that the walk uses."""

JPEG_QUALITY = 88


def draw_picture(name: str, folder: Path) -> Path:
    """The file ``<name>.jpg`` in the folder, newly drawn; KeyError for an unknown name."""
    canvas = Canvas(name, (200, 196, 188))
    PICTURES[name](canvas)
    canvas.grain(0.07, (2, 2))
    plate(canvas)
    path = folder / f"{name}.jpg"
    canvas.image.save(path, "JPEG", quality=JPEG_QUALITY)
    return path
