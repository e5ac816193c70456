"""Which way currents flow and which cables carry that of a battery."""
