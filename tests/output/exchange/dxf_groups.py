"""Reads a DXF by its group codes (a code on a line, its value on the next), sharing no code with what wrote it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Entity:
    sort: str
    groups: tuple[tuple[int, str], ...]

    def of(self, code):
        return [value for each, value in self.groups if each == code]

    def number(self, code):
        return float(self.of(code)[0])

    @property
    def layer(self):
        return self.of(8)[0]

    @property
    def closed(self):
        return bool(int(self.of(70)[0]) & 1)

    @property
    def corners(self):
        return list(zip(map(float, self.of(10)), map(float, self.of(20)), strict=True))


def groups_of(data):
    lines = data.decode("utf-8").replace("\r\n", "\n").split("\n")
    return [(int(code), value) for code, value in zip(lines[0::2], lines[1::2], strict=False)]


def header_value(data, name):
    groups = groups_of(data)
    return groups[groups.index((9, name)) + 1][1]


def entities_of(data):
    groups = groups_of(data)
    start = groups.index((2, "ENTITIES")) + 1
    found, current = [], []
    for code, value in groups[start:]:
        if code == 0:
            if current:
                found.append(Entity(current[0][1], tuple(current[1:])))
            current = []
            if value == "ENDSEC":
                return found
        current.append((code, value))
    raise AssertionError("the entities have no end")
