"""Wicks compared by a mixed model of statsmodels: burns nested in candles, candles in wicks, the candle a random effect.

    python wicks.py > wicks.tsv

A wick cannot change within a candle, so the candle is no block to take out of the difference, as the burns are of the
burn rate: what differs from candle to candle is what two wicks are told apart by. Fitted by restricted maximum
likelihood; where each candle of a case was burned as often, its error of the difference is that of the candles' means,
which is how the module has it. Fits whose variance of the candles came out as nothing are left out: there it is the
burns' alone, and the module's range is the wider.
Made with Python 3.11, NumPy 2.4.6, SciPy 1.17.1, statsmodels 0.15.0; seed 31.
"""

import numpy as np
import pandas as pd
import statsmodels
import statsmodels.formula.api as smf
from scipy import stats

rng = np.random.default_rng(31)
print(f"# statsmodels {statsmodels.__version__}; made by wicks.py, which says how")
print("# nested\tcase\twick\tcandle\tgrams in two hours")
print("# mixed\tcase\tdifference an hour\tits error\tcandles less two\thalf the 95 % range")
case = 0
while case < 8:
    candles, burns = 2 + case % 3, 2 + case // 2
    rows = []
    for wick in "AB":
        for candle in range(candles):
            level = rng.normal(10 if wick == "A" else 10 + 0.5 * case, 0.6)
            for grams in np.round(rng.normal(level, 0.35, burns), 2):
                rows.append((wick, f"{wick}{candle}", grams / 2))
    table = pd.DataFrame(rows, columns=["wick", "candle", "rate"])
    model = smf.mixedlm("rate ~ wick", table, groups=table["candle"])
    try:
        fit = model.fit(reml=True, method=["lbfgs", "powell"])
    except np.linalg.LinAlgError:
        continue
    if float(fit.cov_re.iloc[0, 0]) < 1e-3:
        continue
    for wick, candle, rate in rows:
        print(f"nested\t{case}\t{wick}\t{candle}\t{2 * rate:.2f}")
    error, freedom = fit.bse["wick[T.B]"], 2 * candles - 2
    half = error * stats.t.ppf(0.975, freedom)
    print(f"mixed\t{case}\t{fit.params['wick[T.B]']:.10g}\t{error:.10g}\t{freedom}\t{half:.10g}")
    case += 1
