"""The owner's invitation and conditions: a file in the job folder, or the shipped one."""

from __future__ import annotations

from leanto.bids.bidding import Bidding
from leanto.errors import JobError
from leanto.job.bidding_text import NAME, bidding_file
from leanto.places import JobPlaces, checklists_dir
from leanto.record.kept_file import keep_new_file
from leanto.yaml_input import read_model


def read_bidding(places: JobPlaces) -> Bidding:
    """The job's own file, else the shipped one; InputProblems with every fault of it."""
    own = bidding_file(places)
    if own.is_file():
        return read_model(own, Bidding, name=NAME)
    return shipped_bidding()


def shipped_bidding() -> Bidding:
    """The file that comes with the program; InputProblems with every fault of it."""
    return read_model(checklists_dir() / NAME, Bidding, name=f"checklists/{NAME}")


def lay_out_bidding(places: JobPlaces) -> bool:
    """Puts a copy of the shipped file into the job folder for the owner to edit.

    True when it was not there before. Raises JobError when the folder refuses.
    """
    own = bidding_file(places)
    if own.exists():
        return False
    try:
        keep_new_file(own, (checklists_dir() / NAME).read_bytes())
    except OSError as error:
        reason = error.strerror or str(error)
        raise JobError(f"{own} cannot be written: {reason}.", "Check the folder.") from error
    return True
