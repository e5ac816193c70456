"""Refused: the one way an edit says no, in a sentence a person can act on."""


class EditRefused(Exception):  # noqa: N818 - names what happened, as its readers do
    """An edit that makes no sense; `sentence` says why and what to do instead."""

    def __init__(self, sentence: str) -> None:
        """Keep the sentence."""
        self.sentence = sentence
        super().__init__(sentence)
