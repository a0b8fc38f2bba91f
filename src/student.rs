//! Student's t: how far what was measured may lie from what is.

/// Student's quantile: the value below which the share `p` lies, 0.5 ≤ p < 1, with `freedom` degrees of freedom, one at
/// the least. From the finite sums for the distribution (Abramowitz & Stegun 26.7.3 and 26.7.4), halved down to its last
/// digits.
pub fn student(p: f64, freedom: u32) -> f64 {
    let wanted = 2.0 * p.clamp(0.5, 1.0 - 1e-9) - 1.0;
    let (mut low, mut high) = (0.0, 1.0);
    while inside(high, freedom) < wanted {
        (low, high) = (high, 2.0 * high);
    }
    for _ in 0..60 {
        let mid = 0.5 * (low + high);
        if inside(mid, freedom) < wanted { low = mid } else { high = mid }
    }
    0.5 * (low + high)
}

/// The share between −t and t.
fn inside(t: f64, freedom: u32) -> f64 {
    let freedom = freedom.max(1);
    let n = f64::from(freedom);
    let root = (n + t * t).sqrt();
    let (sine, cosine) = (t / root, n.sqrt() / root);
    let odd = freedom % 2;
    let (mut term, mut sum) = (1.0, 0.0);
    for k in 0..freedom / 2 {
        sum += term;
        let two = f64::from(2 * k + 1 + odd);
        term *= cosine * cosine * two / (two + 1.0);
    }
    if odd == 0 {
        sine * sum
    } else {
        std::f64::consts::FRAC_2_PI * ((t / n.sqrt()).atan() + sine * cosine * sum)
    }
}
