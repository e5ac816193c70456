"""Paper option: the papers of a pack that a person names on the command line, and what there is to name."""

from boardplan.cli.shell import WrongUse


def papers_named(names: str | None) -> tuple[str, ...]:
    """Return the keys of the papers named, with commas between; none where none is named. Raises WrongUse."""
    from boardplan.output.papers import ALL_PAPERS  # noqa: PLC0415

    if names is None:
        return ()
    known = [paper.key for paper in ALL_PAPERS]
    chosen = tuple(dict.fromkeys(name.strip() for name in names.split(",")))
    for name in chosen:
        if name not in known:
            raise WrongUse(f"--only: there is no paper '{name}'; expected some of {', '.join(known)}")
    return chosen


def paper_lines() -> list[str]:
    """Return all papers of a pack, a line each: the key, the name, what a crew does with it."""
    from boardplan.cli.text import columns  # noqa: PLC0415
    from boardplan.output.papers import ALL_PAPERS  # noqa: PLC0415

    rows = [(paper.key, paper.name, paper.use) for paper in ALL_PAPERS]
    return list(columns(("key", "paper", "what for"), rows))
