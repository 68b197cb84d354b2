"""The data files of one or more folders: read, collected with their faults, and hashed."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from leanto.errors import InputProblems, Problem
from leanto.library.placed import Placed
from leanto.yaml_input import read_model_with_lines

M = TypeVar("M", bound=BaseModel)
T = TypeVar("T")

_HASH_DIGITS = 12
_WHERE = (
    "Files end in .yaml and lie in walk, measures, rules, work or prices; only cautions.yaml and "
    "hidden.yaml lie beside these folders. A table in tables bears the name of a shipped one."
)


@dataclass(frozen=True, slots=True)
class DataFolder:
    """One folder of data files; ``name`` is what messages call it."""

    path: Path
    name: str

    def files(self, pattern: str) -> list[tuple[str, Path]]:
        """The files that match, by their name below the folder, sorted."""
        return sorted(
            (path.relative_to(self.path).as_posix(), path) for path in self.path.glob(pattern)
        )

    def holds(self, name: str) -> bool:
        return (self.path / name).exists()


@dataclass(slots=True)
class Reader:
    """Reads files of every folder, keeping every fault and the hash of what was read."""

    folders: Sequence[DataFolder]
    problems: list[Problem] = field(default_factory=list)
    unread: set[str] = field(default_factory=set)
    """The folder, or the file of its own, that a file which could not be read belongs to."""
    _tried: set[Path] = field(default_factory=set)

    def layers(
        self,
        pattern: str,
        model: type[M],
        entries: Callable[[M], Sequence[T]],
        key: str,
        skip: Collection[str] = (),
    ) -> list[list[Placed[T]]]:
        """The entries of all matching files, a list for each folder; ``key`` holds them."""
        layers: list[list[Placed[T]]] = []
        for folder in self.folders:
            layer: list[Placed[T]] = []
            for name, path in folder.files(pattern):
                read = None if name in skip else self._read(folder, name, path, model)
                if read is not None:
                    layer += [
                        Placed(entry, read.lines, (key, index))
                        for index, entry in enumerate(entries(read.value))
                    ]
            layers.append(layer)
        return layers

    def whole(self, pattern: str, model: type[M]) -> list[list[Placed[M]]]:
        """The matching files, each as one entry, a list for each folder."""
        return [
            [
                read
                for name, path in folder.files(pattern)
                if (read := self._read(folder, name, path, model)) is not None
            ]
            for folder in self.folders
        ]

    def last(self, name: str, model: type[M], *, needed: bool = True) -> Placed[M] | None:
        """The file of that name in the last folder that has one; a Problem when a needed one
        is in none."""
        files = [self._read(f, name, f.path / name, model) for f in self.folders if f.holds(name)]
        if files:
            return files[-1]
        if not needed:
            return None
        where = self.folders[0].name
        remedy = "Put it back, or install leanto again."
        self.problems.append(Problem(f"{where}/{name}", 0, "", "The file is missing.", remedy))
        self.unread.add(_kind(name))
        return None

    def laid_over(self, name: str, model: type[M]) -> Iterator[Placed[M]]:
        """The files of that name in the folders laid over the first one, in their order."""
        for folder in self.folders[1:]:
            if folder.holds(name):
                read = self._read(folder, name, folder.path / name, model)
                if read is not None:
                    yield read

    def version(self, *patterns: str) -> str:
        """A hash of the matching files of every folder, by name and content."""
        digest = hashlib.sha256()
        for folder in self.folders:
            for pattern in patterns:
                for name, path in folder.files(pattern):
                    content = path.read_bytes() if path.is_file() else b""
                    digest.update(b"%s\0%d\0%s" % (name.encode(), len(content), content))
        return digest.hexdigest()[:_HASH_DIGITS]

    def misplaced(self) -> list[Problem]:
        """A Problem for each YAML file of a folder laid over that nothing has tried to read."""
        return [
            Problem(f"{folder.name}/{name}", 0, "", "Nothing reads this file.", _WHERE)
            for folder in self.folders[1:]
            for name, path in (*folder.files("**/*.yaml"), *folder.files("**/*.yml"))
            if path not in self._tried
        ]

    def _read(self, folder: DataFolder, name: str, path: Path, model: type[M]) -> Placed[M] | None:
        self._tried.add(path)
        try:
            return Placed(*read_model_with_lines(path, model, name=f"{folder.name}/{name}"))
        except InputProblems as refused:
            self.problems += refused.problems
            self.unread.add(_kind(name))
            return None


def _kind(name: str) -> str:
    """The folder that the file belongs to; the prices do not hang on files of their own."""
    folder, _, file = name.partition("/")
    return name if file in ("factors.yaml", "feed-materials.yaml") else folder
