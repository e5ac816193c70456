"""Held cables: the clamps and retainers that lists of cables count."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import TypeAlias

from boardplan.routing.supports.clamp import Clamp
from boardplan.routing.supports.retainers import Retainer

Clamps: TypeAlias = Mapping[str, tuple[Clamp, ...]]
Retainers: TypeAlias = Mapping[str, tuple[Retainer, ...]]
NO_CLAMPS: Clamps = MappingProxyType({})
"""For lists of lengths alone."""
NO_RETAINERS: Retainers = MappingProxyType({})
