"""Burn rates, Student's quantiles and tests by SciPy and statsmodels, as an independent check of the burn trials.

    python burning.py > burning.tsv

The slope common to several burns, each with a level of its own, is taken another way than in the module: grams and hours
less their means in each burn, then one straight line through the origin (the within-group regression of the analysis of
covariance), with the degrees of freedom put right. And it is taken by statsmodels' ordinary least squares of grams on hours with a column
of ones and noughts for each burn: the slope, its standard error, and the ends of its 95 % range. The two ways agree, or
nothing is printed.
Made with Python 3.11, NumPy 2.4.6, SciPy 1.17.1, statsmodels 0.15.0; seed 12.
"""

import numpy as np
import pandas as pd
import scipy
import statsmodels
import statsmodels.formula.api as smf
from scipy import stats

rng = np.random.default_rng(12)
print(f"# SciPy {scipy.__version__}, statsmodels {statsmodels.__version__}; made by burning.py, which says how")
print("# quantile\tp\tfreedom\tt")
for p in (0.75, 0.9, 0.95, 0.975, 0.99, 0.995, 0.9995):
    for freedom in (1, 2, 3, 4, 5, 7, 10, 15, 30, 60, 121, 400):
        print(f"quantile\t{p}\t{freedom}\t{stats.t.ppf(p, freedom):.10g}")

print("# weighing\tcase\tburn\tminutes\tgrams; then rate\tcase\tgrams an hour\tits error\tfreedom\thalf the 95 % range")
print("# blocks\tcase\tgrams an hour\tits error\tfreedom\tleast\tmost")
for case in range(12):
    burns = int(rng.integers(1, 6)) if case else 2
    true, mass = rng.uniform(3, 9), rng.uniform(250, 600)
    hours, grams, squares, within, count, table = [], [], 0.0, 0.0, 0, []
    for burn in range(burns):
        extra = int(rng.integers(0, 4)) + (1 if burns == 1 else 0)
        minutes = [0] + sorted(rng.choice(np.arange(10, 230), extra, replace=False).tolist()) + [int(rng.integers(230, 250))]
        h = np.array(minutes) / 60
        g = np.round(mass - true * h + rng.normal(0, 0.3, len(h)), 1)
        mass = g[-1] - rng.uniform(0, 0.4)
        for m, x in zip(minutes, g):
            print(f"weighing\t{case}\t{burn}\t{m}\t{x:.1f}")
            table.append((m / 60, f"burn {burn}", x))
        hours.append(h - h.mean())
        grams.append(g - g.mean())
        count += len(h)
    h, g = np.concatenate(hours), np.concatenate(grams)
    slope = (h @ g) / (h @ h)
    freedom = count - burns - 1
    error = np.sqrt(((g - slope * h) ** 2).sum() / freedom / (h @ h))
    print(f"rate\t{case}\t{-slope:.10g}\t{error:.10g}\t{freedom}\t{error * stats.t.ppf(0.975, freedom):.10g}")
    blocks = smf.ols("grams ~ C(burn) + hours - 1", pd.DataFrame(table, columns=["hours", "burn", "grams"])).fit()
    low, high = blocks.conf_int(0.05).loc["hours"]
    assert np.allclose([blocks.params["hours"], blocks.bse["hours"], blocks.df_resid], [slope, error, freedom], rtol=1e-9)
    print(f"blocks\t{case}\t{-blocks.params['hours']:.10g}\t{blocks.bse['hours']:.10g}\t{int(blocks.df_resid)}\t{-high:.10g}\t{-low:.10g}")

print("# burn\tcase\twick\tgrams in two hours; then test\tcase\tdifference an hour\thalf the 95 % range\tit differs")
for case in range(8):
    a = np.round(rng.normal(10, 0.8, int(rng.integers(2, 7))), 2)
    b = np.round(rng.normal(10 + 0.4 * case, 0.8, int(rng.integers(2, 7))), 2)
    for wick, burned in (("A", a), ("B", b)):
        for x in burned:
            print(f"burn\t{case}\t{wick}\t{x:.2f}")
    result = stats.ttest_ind(b / 2, a / 2)
    low, high = result.confidence_interval(0.95)
    print(f"test\t{case}\t{(b.mean() - a.mean()) / 2:.10g}\t{(high - low) / 2:.10g}\t{result.pvalue < 0.05}")
