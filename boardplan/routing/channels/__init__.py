"""Cables in channels: which stretches a way runs in, how full each is, how the cables lie in it."""
