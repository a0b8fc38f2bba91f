"""Plans of pours by a general solver of mixed-integer programmes, as an independent check of the planner.

    python planning.py > planning.json
    python planning.py SEED GOODS ORDERS SCARCE FIRST     one of them, with its time

The workshops are drawn as in tests/planning_shared, and each is solved measure by measure in the order of the goals: the
best value of one is a bound for the next. It shares no method with the planner: batches, lines on time and late lines are
whole numbers of one programme. Every solution is reckoned again in whole numbers.
Made with Python 3.11, NumPy 2.4.6, SciPy 1.17.1 (HiGHS); no gap allowed, 150 s at most for each workshop.
"""

import json
import sys
import time

import numpy as np
import scipy
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_matrix

WAXES, VESSELS, DYES = 3, 5, 8
FILLS = [118_350_000, 163_200_000, 171_417_000, 226_796_185, 311_844_754]
GOALS = [["late", "unmet"], ["short"], ["pours"], ["surplus"], ["changes"]]
LIMIT = 150.0


def workshop(seed, goods_n, orders, scarce):
    state = seed

    def below(end):
        nonlocal state
        state = (state * 1_664_525 + 1_013_904_223) % 2**32
        return (state >> 8) % end

    fragrances = -(-goods_n // 2)
    wicks, dyes = WAXES + VESSELS, WAXES + 2 * VESSELS
    scents = dyes + DYES
    used = [0] * (scents + fragrances)
    goods, lines = [], []
    for _ in range(goods_n):
        wax, vessel, scent, dye = below(WAXES), below(VESSELS), below(fragrances), below(DYES + 3)
        load, drops = 60 + below(5) * 10, 10 + below(30)
        sizes = []
        for number in (4, 8, 16, 24):
            if number == 24 and vessel == VESSELS - 1:
                continue
            whole = FILLS[vessel] * number + 5_000_000
            oil = whole * load // 1000
            uses = [(wax, whole - oil), (WAXES + vessel, number), (wicks + vessel, number)]
            if dye < DYES:
                uses.append((dyes + dye, (number * drops + 5) // 10))
            uses.append((scents + scent, oil))
            sizes.append((number, uses))
        takes = 2 + below(14)
        stock = [(below(12), 1 + below(8)) for _ in range(below(3))]
        spare = below(5)
        goods.append((takes, stock, spare, sizes, scent * (DYES + 1) + min(dye, DYES)))
    for _ in range(orders):
        wanted = below(40)
        wanted = wanted - 3 if wanted > 3 else None
        in_parts, wholesale = below(5) == 0, below(8) == 0
        for _ in range(below(3) + 1):
            good = below(goods_n)
            number = 6 * (1 + below(3)) if wholesale else 1 + below(4)
            for supply, use in goods[good][3][0][1]:
                used[supply] += use * number // 4
            lines.append((good, number, wanted, in_parts))
    supplies = []
    for use in used:
        short = below(100) < scarce
        percent = 30 + below(60) if short else 130 + below(200)
        supplies.append(use * percent // 100)
    return goods, lines, supplies


class Programme:
    def __init__(self):
        self.upper, self.whole, self.rows = [], [], []

    def variable(self, upper, whole=True):
        self.upper.append(upper)
        self.whole.append(whole)
        return len(self.upper) - 1

    def at_most(self, terms, bound):
        self.rows.append((terms, bound))


def build(goods, lines, supplies):
    p = Programme()
    measures = {name: ([], 0) for names in GOALS for name in names}

    def measure(name, terms, constant=0):
        old, c = measures[name]
        measures[name] = (old + terms, c + constant)

    pours, kinds = [], {}
    for good, (takes, stock, spare, sizes, kind) in enumerate(goods):
        mine = [line for line in lines if line[0] == good]
        need = sum(line[1] for line in mine) + spare
        counts = [p.variable(-(-need // number)) for number, _ in sizes]
        pours.append(counts)
        measure("pours", [(v, 1) for v in counts])
        poured = [(v, number) for v, (number, _) in zip(counts, sizes)]
        kinds.setdefault(kind, p.variable(1))
        for v in counts:
            p.at_most([(v, 1), (kinds[kind], -p.upper[v])], 0)
        held = sum(number for _, number in stock)
        on_time, served = [], []
        for _, number, wanted, in_parts in sorted(mine, key=lambda line: (line[2] is None, line[2])):
            size = 1 if in_parts else number
            on = p.variable(number // size)
            terms = [(on, size)]
            if wanted is not None:
                late = p.variable(number // size)
                terms.append((late, size))
                p.at_most([(on, 1), (late, 1)], number // size)
            measure("late", [(on, -size)], number)
            measure("unmet", [(v, -s) for v, s in terms], number)
            on_time.append((on, size))
            served += terms
            ready = sum(n for day, n in stock if wanted is None or day <= wanted)
            in_time = wanted is None or takes <= wanted
            p.at_most(on_time + ([(v, -n) for v, n in poured] if in_time else []), ready)
        p.at_most(served + [(v, -n) for v, n in poured], held)
        # left = held + poured - served
        short, surplus = p.variable(spare), p.variable(held + need + 24 * len(counts) * need)
        p.at_most([(short, -1)] + served + [(v, -n) for v, n in poured], held - spare)
        p.at_most([(surplus, -1)] + [(v, -s) for v, s in served] + poured, spare - held)
        measure("short", [(short, 1)])
        measure("surplus", [(surplus, 1)])
    changes = p.variable(len(kinds))
    p.at_most([(v, 1) for v in kinds.values()] + [(changes, -1)], 1)
    measure("changes", [(changes, 1)])
    for supply, there in enumerate(supplies):
        scale = max(there, 1)
        terms = [(v, use / scale) for counts, good in zip(pours, goods) for v, (_, uses) in zip(counts, good[3])
                 for s, use in uses if s == supply]
        if terms:
            p.at_most(terms, there / scale)
    return p, measures, pours


def solve(seed, goods_n, orders, scarce, first):
    goods, lines, supplies = workshop(seed, goods_n, orders, scarce)
    p, measures, pours = build(goods, lines, supplies)
    order = GOALS[first] + [name for at, names in enumerate(GOALS) for name in names if at != first]
    n, best, start = len(p.upper), {}, time.perf_counter()
    for name in order:
        terms, constant = measures[name]
        cost = np.zeros(n)
        for v, c in terms:
            cost[v] += c
        entries = [(row, v, c) for row, (terms_, _) in enumerate(p.rows) for v, c in terms_]
        rows, columns, values = zip(*entries)
        matrix = coo_matrix((values, (rows, columns)), shape=(len(p.rows), n)).tocsr()
        left = LIMIT - (time.perf_counter() - start)
        result = milp(cost, integrality=np.array(p.whole, dtype=int), bounds=Bounds(0, p.upper),
                      constraints=LinearConstraint(matrix, -np.inf, [bound for _, bound in p.rows]),
                      options={"time_limit": max(left, 1.0), "mip_rel_gap": 0.0})
        if result.status != 0:
            return None, time.perf_counter() - start
        value = round(result.fun + constant)
        best[name] = value
        p.at_most(terms, value - constant)
        x = np.round(result.x).astype(int)
        for supply, there in enumerate(supplies):
            used = sum(int(x[v]) * use for counts, good in zip(pours, goods) for v, (_, uses) in zip(counts, good[3])
                       for s, use in uses if s == supply)
            assert used <= there, f"supply {supply} is overdrawn"
        assert all(sum(int(x[v]) * c for v, c in terms_) <= bound for terms_, bound in p.rows
                   if all(isinstance(c, int) for _, c in terms_)), "a whole row is broken"
    return best, time.perf_counter() - start


def shapes():
    for at in range(36):
        goods, orders = [(3, 6), (6, 15), (12, 40), (20, 80), (30, 140), (40, 200)][at % 6]
        yield 1000 + 77 * at, goods, orders, [0, 15, 30, 45, 20, 10][at // 6], [0, 0, 1, 3, 2, 4, 0][at % 7]


if __name__ == "__main__":
    if len(sys.argv) > 5:
        best, seconds = solve(*map(int, sys.argv[1:6]))
        print(json.dumps(best))
        print(f"{seconds:.3f} s", file=sys.stderr)
        sys.exit()
    out = []
    for seed, goods, orders, scarce, first in shapes():
        best, seconds = solve(seed, goods, orders, scarce, first)
        print(seed, goods, orders, scarce, first, best, f"{seconds:.2f} s", file=sys.stderr, flush=True)
        out.append({"seed": seed, "goods": goods, "orders": orders, "scarce": scarce, "first": first, "best": best})
    print(f'{{"made": "SciPy {scipy.__version__}, planning.py; null: not solved in {LIMIT:.0f} s", "workshops": [')
    print(",\n".join(json.dumps(workshop) for workshop in out))
    print("]}")
