//! Quantiles for the ranges: normal and Student.

/// The standard normal quantile, for 0.5 ≤ p < 1: Abramowitz & Stegun 26.2.23, error below 4.5·10⁻⁴.
pub(crate) fn normal(p: f64) -> f64 {
    let t = (-2.0 * (1.0 - p).max(1e-12).ln()).sqrt();
    let above = 2.515517 + t * (0.802853 + t * 0.010328);
    let below = 1.0 + t * (1.432788 + t * (0.189269 + t * 0.001308));
    t - above / below
}

/// Student's quantile with `freedom` degrees of freedom: Abramowitz & Stegun 26.7.5, good to 1 % for p ≤ 0.99 from
/// four degrees on, which is the fewest used here.
pub(crate) fn student(p: f64, freedom: f64) -> f64 {
    let z = normal(p);
    let s = z * z;
    let g1 = z * (s + 1.0) / 4.0;
    let g2 = z * ((5.0 * s + 16.0) * s + 3.0) / 96.0;
    let g3 = z * (((3.0 * s + 19.0) * s + 17.0) * s - 15.0) / 384.0;
    let g4 = z * ((((79.0 * s + 776.0) * s + 1482.0) * s - 1920.0) * s - 945.0) / 92160.0;
    let n = freedom.max(1.0);
    z + (g1 + (g2 + (g3 + g4 / n) / n) / n) / n
}
