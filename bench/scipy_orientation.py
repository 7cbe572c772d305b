#!/usr/bin/env python3
"""SciPy's integrators on the plant that the table's other rows run, for orientation: each call of the right-hand side
goes through Python, which is most of what they take.

usage: scipy_orientation.py LIBRARY TEE_PRESSURE_PA LEVEL_M   the last two at the end, by the reference
Exit code 1 where SciPy is absent."""
import ctypes
import sys
import time

try:
    import numpy as np
    from scipy.integrate import solve_ivp
except ImportError:
    sys.exit(1)


def main():
    plant = ctypes.CDLL(sys.argv[1])
    pressure_pa, level_m = float(sys.argv[2]), float(sys.argv[3])
    doubles = ctypes.POINTER(ctypes.c_double)
    for name in ("plant_duration_s", "plant_valve", "plant_tee_pressure_pa", "plant_level_m"):
        getattr(plant, name).restype = ctypes.c_double
    count = plant.plant_states()

    def of(array):
        return array.ctypes.data_as(doubles)

    start = np.zeros(count)
    plant.plant_start(of(start))

    def rates(_, y):
        found = np.empty(count)
        plant.plant_rates(of(np.ascontiguousarray(y)), of(found))
        return found

    def valve(_, y):
        return plant.plant_valve(of(np.ascontiguousarray(y))) + 1e-9  # at the start nothing flows yet

    valve.terminal = True
    valve.direction = -1
    bound = np.maximum(np.abs(start), 1e-3)
    for method, tolerance in (("LSODA", 1e-6), ("Radau", 1e-4), ("BDF", 1e-4)):
        began = time.process_time()
        end = solve_ivp(rates, (0, plant.plant_duration_s()), start, method=method, rtol=tolerance,
                        atol=tolerance * bound * 1e-2, events=valve)
        took = time.process_time() - began
        y = np.ascontiguousarray(end.y[:, -1])
        print(f"SciPy {method} at {tolerance:<17.0e} {1e3 * took:9.1f} ms  "
              f"error {abs(plant.plant_tee_pressure_pa(of(y)) - pressure_pa) / 1e5:8.1e} bar "
              f"{abs(plant.plant_level_m(of(y)) - level_m):8.1e} m"
              f"{'' if end.status == 0 else '  (stopped early)'}", flush=True)


main()
