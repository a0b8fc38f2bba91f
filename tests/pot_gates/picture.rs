//! The picture of the readings, the curve and the gates.

use crate::shared::{at, before_fig, points};
use potside::pot::WIDE;

#[test]
fn the_picture_shows_what_is_told() {
    let run = before_fig(&[(0, 1880), (4, 1840), (8, 1801)]);
    let chart = at(&run, 600).unwrap().chart.unwrap();
    // From one degree Celsius above the first reading to one below the lowest gate: 189.8 to 166.2 °F over 216 units;
    // 188 °F stands at 16, 184 at 53, 180.1 at 89; 180 to 175 °F from 90 on 45 high, 175 to 168 °F from 135 on 65 high.
    let downs: Vec<i32> = chart.dots.iter().map(|(_, y, _)| *y).collect();
    assert_eq!(downs, [16, 53, 89]);
    assert_eq!(chart.strips, [(90, 45), (135, 65)]);
    assert_eq!(chart.dots[0].0, 0);
    // It ends a tenth past the last gate: 1.1 · 21.5 min = 23.7 min; now is at 10/23.7 of the width.
    let end = chart.words.last().unwrap();
    assert_eq!((end.text.as_str(), end.x, end.anchor), ("23 min", WIDE, "end"));
    let now: i32 =
        chart.at.strip_prefix('M').and_then(|at| at.strip_suffix(" 0V216")).unwrap().parse().unwrap();
    assert!((now - 203).abs() <= 2, "{now}");
    assert!(chart.curve.starts_with("M0 1"), "{}", chart.curve);
    assert_eq!(
        chart.said,
        "Picture of 3 readings and the curve through them, now at 178 °F. Add Fig leaf, 175–180 °F: now; too cool in \
         about 3 min (0 to 10). Pour, 168–175 °F: in about 3 min (0 to 10); too cool in about 11 min (6 to 22)."
    );
}

/// The words of a picture: where, on which side, and what.
fn words(readings: &[(u64, i128)], second: u64) -> Vec<(i32, i32, &'static str, String)> {
    let chart = at(&before_fig(readings), second).unwrap().chart.unwrap();
    chart.words.into_iter().map(|w| (w.x, w.y, w.anchor, w.text)).collect()
}

/// The last line is 5 above the foot; `now` keeps a quarter of 110 from either side, and the first and the last time stand
/// where they have 110.
#[test]
fn the_words_of_the_picture_do_not_lie_on_each_other() {
    let fig = |x, y, anchor| (x, y, anchor, "Add Fig leaf, 175–180 °F".to_owned());
    let pour = |x, y, anchor| (x, y, anchor, "Pour, 168–175 °F".to_owned());
    let foot = |x, anchor, text: &str| (x, 235, anchor, text.to_owned());
    let (now, start) = (|x| foot(x, "middle", "now"), || foot(0, "start", "0 min"));
    // The middle of 90 and 45 high is 112, of 135 and 65 high 167, and 6 lower stands a line of words: the first beside the
    // right edge, where the curve is lower, the second beside the left.
    let named = [fig(474, 118, "end"), pour(6, 173, "start")];
    let with = |foot: Vec<_>| [named.to_vec(), foot].concat();
    // 1.1 · 21.57 min is 1423.7 s.
    let two = [(0, 1880), (4, 1840)];
    assert_eq!(words(&two, 0), with(vec![now(27), foot(480, "end", "23 min")]));
    assert_eq!(words(&two, 326), with(vec![now(110), foot(480, "end", "23 min")]));
    assert_eq!(words(&two, 330), with(vec![now(111), start(), foot(480, "end", "23 min")]));
    assert_eq!(words(&two, 1096), with(vec![now(370), start()]));
    // Past the last gate it ends a tenth after now; four hours later, at now.
    assert_eq!(words(&two, 1300), with(vec![now(436), start()]));
    assert_eq!(words(&two, 14_400), with(vec![now(453), start()]));
    // At least ten minutes, at most three hours.
    assert_eq!(words(&[(0, 1700), (1, 1690)], 60)[2..], [now(48), foot(480, "end", "10 min")]);
    assert_eq!(
        words(&[(0, 1880), (60, 1870)], 3600),
        with(vec![now(160), start(), foot(480, "end", "180 min")])
    );
    // From 191.6 to 166.2 °F over 216 the first gate is 99 to 141 from the top, with its middle in that of the picture.
    assert_eq!(words(&[(0, 1898), (4, 1860)], 240)[0], fig(6, 126, "start"));
    // From 251.8 °F: 181 to 194 to 211; the middles are 193 and 208, too near for two lines.
    assert_eq!(words(&[(0, 2500), (4, 2400)], 240)[..2], [fig(6, 193, "start"), pour(6, 211, "start")]);
    // From 181.8 to 88.2 °F: 4 to 16 to 32, so near the top that the first would not be whole.
    assert_eq!(words(&[(0, 900), (4, 899)], 240)[..2], [fig(474, 18, "end"), pour(474, 36, "end")]);
}

#[test]
fn the_curve_is_newtons_law_in_its_band() {
    let chart = at(&before_fig(&[(0, 1880), (4, 1840)]), 600).unwrap().chart.unwrap();
    // Newton's law by hand, 72 °F: 72 + 116·exp(−k·t), k = ln(116/112)/240 s, until 1.1 times ln(116/96)/k; from 189.8 °F at
    // the top to 166.2 °F at 216.
    let k = (116.0f64 / 112.0).ln() / 240.0;
    let end = 1.1 * (116.0f64 / 96.0).ln() / k;
    let curve = points(&chart.curve);
    assert_eq!(
        curve.iter().map(|(x, _)| *x).collect::<Vec<_>>(),
        (0..=32).map(|i| 15 * i).collect::<Vec<_>>()
    );
    for (x, y) in &curve {
        let law = 72.0 + 116.0 * (-k * f64::from(*x) / 480.0 * end).exp();
        assert!((f64::from(*y) - (189.8 - law) / 23.6 * 216.0).abs() < 1.0, "{x} {y}");
    }
    // The band goes out above it and comes back below it.
    let band = points(&chart.band);
    assert!(chart.band.ends_with('Z') && band.len() == 66);
    for (index, (x, y)) in curve.iter().enumerate() {
        let (above, below) = (band[index], band[65 - index]);
        assert!(above.0 == *x && below.0 == *x && above.1 < *y && (*y < below.1 || below.1 == 216));
    }
    // What is colder than the picture is not drawn, and the band only as far as it is in it.
    let later = at(&before_fig(&[(0, 1880), (4, 1840)]), 14_400).unwrap().chart.unwrap();
    assert_eq!(points(&later.curve).len(), 4);
    assert_eq!(points(&later.band).len(), 52);
}
