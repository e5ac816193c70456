"""What every test finds: no screen, quick Hypothesis by default, the sample plans."""

import os

import pytest
from boards import library_bus, lookout_cabin
from hypothesis import HealthCheck, settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

settings.register_profile("everyone", max_examples=50, deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.register_profile("thorough", max_examples=1000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "everyone"))


@pytest.fixture
def bus_plan():
    return library_bus()


@pytest.fixture
def cabin_plan():
    return lookout_cabin()
