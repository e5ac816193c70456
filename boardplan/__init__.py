"""Plan, check and print the equipment board of an off-grid power system."""

__version__ = "0.1.0"
