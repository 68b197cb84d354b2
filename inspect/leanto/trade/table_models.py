"""Which model each table under checklists/tables/ is read as."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from pydantic import BaseModel

from leanto.trade.coverings import CoveringsTable
from leanto.trade.debris_table import DebrisTable
from leanto.trade.design_values import DesignTable
from leanto.trade.loads import LoadTable
from leanto.trade.moisture_meter import SpeciesTable
from leanto.trade.mold import MoldTable
from leanto.trade.pest_table import PestTable
from leanto.trade.r_values import RTable
from leanto.trade.sawn_size import SawnSizes
from leanto.trade.wetting import WaterTable
from leanto.trade.wiring.box_fill import BoxTable
from leanto.trade.wiring.burial import CoverTable
from leanto.trade.wiring.condemned import CondemnedTable
from leanto.trade.wiring.conductor import AmpacityTable, ResistanceTable
from leanto.trade.wiring.conduit import ConduitTable
from leanto.trade.wiring.equipment_ground import GroundingTable
from leanto.trade.wiring.load import UseTable
from leanto.trade.wiring.overcurrent import OvercurrentTable

TABLE_MODELS: Final[Mapping[str, type[BaseModel]]] = {
    "coverings.yaml": CoveringsTable,
    "debris.yaml": DebrisTable,
    "design_values.yaml": DesignTable,
    "electrical_ampacity.yaml": AmpacityTable,
    "electrical_boxes.yaml": BoxTable,
    "electrical_burial.yaml": CoverTable,
    "electrical_condemned.yaml": CondemnedTable,
    "electrical_conduit.yaml": ConduitTable,
    "electrical_grounding.yaml": GroundingTable,
    "electrical_overcurrent.yaml": OvercurrentTable,
    "electrical_resistance.yaml": ResistanceTable,
    "electrical_uses.yaml": UseTable,
    "loads.yaml": LoadTable,
    "mold.yaml": MoldTable,
    "pests.yaml": PestTable,
    "r_values.yaml": RTable,
    "water.yaml": WaterTable,
    "wood_sawn_sizes.yaml": SawnSizes,
    "wood_species_correction.yaml": SpeciesTable,
}
