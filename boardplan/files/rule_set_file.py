"""Rule set file: assets/rules/*.toml to rule sets."""

from functools import cache
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field

from boardplan.bundled import data_dir
from boardplan.files.load_out_file import bundled_load_out
from boardplan.files.record_types import COLOUR_PATTERN, Id, Record, Text
from boardplan.files.toml_file import read_toml
from boardplan.model.rule_set import BendRule, Limit, RuleSet, SlackRule


class LimitRecord(Record):
    """A limit and where it comes from."""

    value: float
    unit: Text
    severity: Literal["stop", "warn", "note"]
    source: Annotated[str, Field(min_length=3)]


class SlackRecord(Record):
    """Slack of a class of cables."""

    slack: float
    share: float = 0.0
    step: float
    minus: float
    plus: float
    source: Annotated[str, Field(min_length=3)]


class BendRecord(Record):
    """Bend radius as multiples of the outside diameter, at the centre line."""

    prefer: float
    least: float


class FastenerChoiceRecord(Record):
    """Which fastener is used for a purpose, by its id, and who says so."""

    fastener: Id
    source: Annotated[str, Field(min_length=3)]


class RuleSetRecord(Record):
    """A rule set file."""

    id: Id
    edition: Text
    name: Text
    load_out: Id | None = None
    limits: dict[str, LimitRecord]
    slack: dict[Literal["jumper", "large", "small", "off-board", "signal"], SlackRecord]
    bends: dict[Literal["fine-strand", "stiff", "sheathed", "data"], BendRecord]
    colours: dict[str, Annotated[str, Field(pattern=COLOUR_PATTERN)]]
    fasteners: dict[Literal["clamp"], FastenerChoiceRecord] = Field(default_factory=dict)


@cache
def rule_sets() -> tuple[RuleSet, ...]:
    """Return all rule sets that come with the program; read once."""
    return tuple(read_rule_set(path) for path in sorted((data_dir("assets") / "rules").glob("*.toml")))


def find_rule_set(rule_set_id: str, edition: str) -> RuleSet | None:
    """Return a rule set by id and edition, none where there is no such one."""
    return next((each for each in rule_sets() if (each.id, each.edition) == (rule_set_id, edition)), None)


def read_rule_set(path: Path) -> RuleSet:
    """Return the rule set of a file. Raises BadFile."""
    record = read_toml(path, RuleSetRecord)
    return RuleSet(
        id=record.id,
        edition=record.edition,
        name=record.name,
        limits={key: Limit(each.value, each.unit, each.severity, each.source) for key, each in record.limits.items()},
        slack={
            key: SlackRule(each.slack, each.share, each.step, each.minus, each.plus, each.source)
            for key, each in record.slack.items()
        },
        bends={key: BendRule(each.prefer, each.least) for key, each in record.bends.items()},
        colours=record.colours,
        fasteners={key: each.fastener for key, each in record.fasteners.items()},
        load_out=bundled_load_out(record.load_out) if record.load_out else None,
    )
