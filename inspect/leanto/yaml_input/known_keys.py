"""Which keys a model knows at a place in its data, to offer the nearest spelling."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches
from typing import Any, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from leanto.yaml_input.lines import Step

_MOST_LISTED = 12


def known_keys(model: type[BaseModel], loc: Sequence[Step]) -> list[str]:
    """The keys of the model or models that a pydantic location leads to; empty for none.

    Steps that name a branch of a union choose among its models; other steps that lead nowhere,
    such as the name of a validator, are passed over.
    """
    models = _models_in(model)
    for step in loc:
        branch = [found for found in models if _is_branch(found, step)]
        below = [found for outer in models for found in _below(outer, step)]
        models = (branch if len(models) > 1 else []) or below or models
    keys = (key for found in models if _is_model(found) for key in _keys(found))
    return list(dict.fromkeys(keys))


def spelling_remedy(word: str, known: Iterable[str], taken: Iterable[object] = ()) -> str:
    """``Did you mean "answers"?`` for a near miss, else the list of what is known."""
    used = set(taken)
    free = [key for key in known if key not in used]
    near = get_close_matches(word, free, n=1)
    if near:
        return f'Did you mean "{near[0]}"?'
    if 0 < len(free) <= _MOST_LISTED:
        return f"Known here: {', '.join(free)}."
    return "Remove it, or check its spelling."


def _is_model(found: Any) -> bool:
    return isinstance(found, type) and not get_args(found) and issubclass(found, BaseModel)


def _is_branch(found: Any, step: Step) -> bool:
    """Whether the step is the model's name, or a word by which a tagged union knows it."""
    if not _is_model(found):
        return False
    words = (get_args(info.annotation) for info in found.model_fields.values())
    return step == found.__name__ or any(step in choices for choices in words)


def _keys(model: type[BaseModel]) -> list[str]:
    return [_key(name, info) for name, info in model.model_fields.items()]


def _key(name: str, info: FieldInfo) -> str:
    if isinstance(info.validation_alias, str):
        return info.validation_alias
    return info.alias or name


def _below(outer: Any, step: Step) -> list[Any]:
    """Models that lie at the step below a model, or below a list or mapping's type."""
    if _is_model(outer):
        for name, info in outer.model_fields.items():
            if step in (name, _key(name, info)):
                return _models_in(info.annotation)
        return []
    arguments = [argument for argument in get_args(outer) if argument is not Ellipsis]
    if isinstance(step, str):
        return _models_in(arguments[-1]) if arguments else []
    return [found for argument in arguments for found in _models_in(argument)]


def _models_in(annotation: Any) -> list[Any]:
    """The models of an annotation and its lists and mappings, with unions taken apart."""
    if _is_model(annotation):
        root = annotation.model_fields.get("root")
        is_root = bool(getattr(annotation, "__pydantic_root_model__", False))
        return _models_in(root.annotation) if is_root and root else [annotation]
    if hasattr(annotation, "__metadata__"):
        return _models_in(get_args(annotation)[0])
    origin = get_origin(annotation)
    if isinstance(origin, type) and hasattr(origin, "__iter__"):
        return [annotation]
    return [found for argument in get_args(annotation) for found in _models_in(argument)]
