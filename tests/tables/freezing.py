"""The freezing of one vessel by the method of lines, as an independent check of the heat module.

    python freezing.py [cell in mm] > freezing.tsv

Enthalpy in each ring as unknown, conduction by finite volumes on an even grid, integrated by SciPy's BDF with a
sparse Jacobian. It shares no code and no time stepping with the module, and no grading of the grid.
Made with Python 3.11, NumPy 2.4.6, SciPy 1.17.1; cell 1 mm, rtol 1e-5.
"""

import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.sparse import coo_matrix

CELL = float(sys.argv[1]) * 1e-3 if len(sys.argv) > 1 else 1e-3
RADIUS, FILL, RIM, WALL, BASE = 0.030, 0.050, 0.010, 0.003, 0.005
SIDE, TOP, BOTTOM = 10.0, 9.0, 6.0
ROOM, POUR, VESSEL = 21.0, 75.0, 21.0
GLASS = dict(rho=2500.0, c=750.0, k=1.0)
# solidus, liquidus, latent, c solid, c liquid, k solid, k liquid, density of the liquid at the pour
WAXES = {
    "paraffin": (50.0, 57.0, 200e3, 2200.0, 2300.0, 0.25, 0.17, 775.0 / (1 + 8.0e-4 * (POUR - 80))),
    "vegetable": (34.0, 48.0, 130e3, 2000.0, 2150.0, 0.20, 0.165, 870.0 / (1 + 7.5e-4 * (POUR - 80))),
}
SECONDS = [60, 300, 900, 1800, 3600, 5400, 7200, 9000, 10800, 14400, 18000, 21600]


def edges(*lengths):
    out = [0.0]
    for length in lengths:
        n = max(1, round(length / CELL))
        out += list(out[-1] + length * np.arange(1, n + 1) / n)
    return np.array(out)


def run(wax):
    ts, tl, latent, cs, cl, ks, kl, rho = wax
    re, ze = edges(RADIUS, WALL), edges(BASE, FILL, RIM)
    nr, nz = len(re) - 1, len(ze) - 1
    rc, zc = 0.5 * (re[1:] + re[:-1]), 0.5 * (ze[1:] + ze[:-1])
    iswax = (rc[None, :] < RADIUS) & (zc[:, None] > BASE) & (zc[:, None] < BASE + FILL)
    isair = (rc[None, :] < RADIUS) & (zc[:, None] > BASE + FILL)
    volume = np.pi * (re[1:] ** 2 - re[:-1] ** 2)[None, :] * np.diff(ze)[:, None]
    mass = np.where(iswax, rho, GLASS["rho"]) * volume
    whole = latent + 0.5 * (cs + cl) * (tl - ts)

    def temperature(e):
        solid, liquid = ts + e / cs, tl + (e - whole) / cl
        melting = ts + e * (tl - ts) / whole
        wax = np.where(e < 0, solid, np.where(e <= whole, melting, liquid))
        return np.where(iswax, wax, ROOM + e / GLASS["c"])

    def share(e):
        return np.clip(1 - e / whole, 0, 1)

    start = np.where(iswax, whole + cl * (POUR - tl), (VESSEL - ROOM) * GLASS["c"])
    start = np.where(isair, 0.0, start)
    face = np.pi * (re[1:] ** 2 - re[:-1] ** 2)
    dz, dr = np.diff(ze), np.diff(re)

    def rhs(_, y):
        e = y.reshape(nz, nr)
        t = temperature(e)
        resist = np.where(iswax, 1 / kl + (1 / ks - 1 / kl) * share(e), 1 / GLASS["k"])
        flow = np.zeros((nz, nr))
        # radial faces: the half rings in series
        half = 0.5 * dr[None, :] * resist
        g = 2 * np.pi * re[1:-1][None, :] * dz[:, None] / (half[:, :-1] + half[:, 1:])
        g = np.where(isair[:, :-1] | isair[:, 1:], 0, g)
        q = g * (t[:, :-1] - t[:, 1:])
        flow[:, :-1] -= q
        flow[:, 1:] += q
        # axial faces
        half = 0.5 * dz[:, None] * resist
        g = face[None, :] / (half[:-1] + half[1:])
        g = np.where(isair[:-1] | isair[1:], 0, g)
        q = g * (t[:-1] - t[1:])
        flow[:-1] -= q
        flow[1:] += q
        # the room
        out = t - ROOM
        flow[:, -1] -= 2 * np.pi * re[-1] * dz * out[:, -1] / (1 / SIDE + 0.5 * dr[-1] * resist[:, -1])
        flow[0] -= face * out[0] / (1 / BOTTOM + 0.5 * dz[0] * resist[0])
        r0 = int(np.argmax(rc > RADIUS))
        z0 = int(np.argmax(zc > BASE + FILL))
        flow[z0:, r0] -= 2 * np.pi * RADIUS * dz[z0:] * out[z0:, r0] / (1 / TOP + 0.5 * dr[r0] * resist[z0:, r0])
        top = face / (1 / TOP + 0.5 * dz[z0 - 1] * resist[z0 - 1])
        flow[z0 - 1, :r0] -= (top * out[z0 - 1])[:r0]
        flow[-1, r0:] -= (face * out[-1] / (1 / TOP + 0.5 * dz[-1] * resist[-1]))[r0:]
        return np.where(isair, -e, flow / mass).ravel()  # air: nothing, but not singular

    index = np.arange(nz * nr).reshape(nz, nr)
    pairs = [(index, index)]
    for a, b in ((index[:, :-1], index[:, 1:]), (index[:-1], index[1:])):
        pairs += [(a, b), (b, a)]
    rows = np.concatenate([a.ravel() for a, _ in pairs])
    cols = np.concatenate([b.ravel() for _, b in pairs])
    sparsity = coo_matrix((np.ones(len(rows)), (rows, cols)))
    began = time.perf_counter()
    # The curve has kinks: keep the steps short of them.
    sol = solve_ivp(
        rhs, (0, SECONDS[-1]), start.ravel(), method="BDF", t_eval=SECONDS,
        rtol=1e-5, atol=1.0, jac_sparsity=sparsity, max_step=60.0, first_step=1e-3,
    )
    took = time.perf_counter() - began
    assert sol.success, sol.message
    wax_mass = (mass * iswax).sum()
    # temperatures straight between the middles of the rings, at half the fill
    probe = lambda t, r: np.interp(BASE + 0.5 * FILL, zc, [np.interp(r, rc, row) for row in t])
    lines = []
    for s, y in zip(sol.t, sol.y.T):
        e = y.reshape(nz, nr)
        t = temperature(e)
        liquid = (mass * iswax * (1 - share(e))).sum() / wax_mass
        lines.append((s, probe(t, 0.0), probe(t, RADIUS - 0.002), liquid))
    return lines, took, nz * nr


print(f"# SciPy {scipy.__version__} BDF, cell {CELL * 1e3:g} mm; made by freezing.py, which holds the inputs")
print("# wax\tseconds\tcentre °C\t2 mm from the wall °C\tliquid share")
for name, wax in WAXES.items():
    lines, took, cells = run(wax)
    for s, centre, wall, liquid in lines:
        print(f"{name}\t{s:.0f}\t{centre:.3f}\t{wall:.3f}\t{liquid:.5f}")
    print(f"{name}: {cells} cells, {took:.1f} s", file=sys.stderr)
