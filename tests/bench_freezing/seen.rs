//! The picture of the vessel, and the map.

use super::*;

const COLOURS: Colours = Colours {
    scale: [[0, 0, 255], [0, 0, 200], [0, 200, 0], [200, 0, 0], [255, 0, 0]],
    front: [1, 2, 3],
    from: 21.0,
    to: 75.0,
};

fn painted(at: usize, width: usize, height: usize) -> Vec<u8> {
    let f = freeze(&scene().setup().unwrap(), &Detail::FINE).unwrap();
    let mut pixels = vec![9; 4 * width * height];
    paint(&f.picture, at, &COLOURS, width, height, &mut pixels);
    pixels
}

#[test]
fn the_picture_is_the_vessel() {
    let (width, height) = (120, 100);
    let pixels = painted(0, width, height);
    let at = |x: usize, y: usize| <[u8; 4]>::try_from(&pixels[4 * (y * width + x)..][..4]).unwrap();
    // 81 mm high in all on 100 pixels; 80 mm wide: 99 pixels, in the middle.
    assert_eq!(at(60, 60)[..3], [255, 0, 0], "hot wax in the middle");
    assert!(at(60, 60)[3] < 255, "liquid is drawn clearer");
    assert_eq!(at(60, 2)[3], 0, "air above the wax");
    assert_eq!(at(12, 50), [0, 0, 255, 255], "the wall is as cold as the room");
    assert_eq!(at(2, 50)[3], 0, "nothing beside the vessel");
    for y in 0..height {
        for x in 0..width / 2 {
            assert_eq!(at(x, y), at(width - 1 - x, y), "both halves are the same");
        }
    }
    // Half way through there is a line between solid and liquid, and it is one pixel wide.
    let half = painted(30, width, height);
    let line = half.as_chunks::<4>().0.iter().filter(|p| p[..3] == COLOURS.front).count();
    assert!((40..600).contains(&line), "{line}");
    let cold = painted(usize::MAX, width, height);
    assert!(cold.iter().all(|p| *p == 0), "no such picture, no pixel");
    paint(&Default::default(), 0, &COLOURS, 0, 0, &mut []);
}

#[test]
fn the_map_finds_its_least() {
    let over = Sweep::over(&scene().setup().unwrap());
    assert_eq!((over.pours.len(), over.vessels.len()), (20, 20));
    near(over.pours[0], 49.0, 1e-9);
    near(over.pours[19], 95.0, 1e-9);
    near(over.vessels[0], 21.0, 1e-9);
    assert_eq!(over.least(&[]), None);
    let rows = vec![vec![f32::NAN, 5.0, 4.0], vec![3.0, 9.0, 7.0]];
    let (pour, vessel, least, most) = over.least(&rows).unwrap();
    assert_eq!((pour, vessel, least, most), (over.pours[0], over.vessels[1], 3.0, 9.0));
    assert_eq!(over.at(0.0, 1.0), Some((over.pours[0], over.vessels[0])));
    assert_eq!(over.at(1.0, 0.0), Some((over.pours[19], over.vessels[19])));
    let mut pixels = vec![7; 4 * 3 * 2];
    Sweep::paint(&rows, [[0, 0, 0], [60, 120, 240]], 3, 2, &mut pixels);
    // The first row is the lowest line.
    assert_eq!(pixels[..4], [0, 0, 0, 255]);
    assert_eq!(pixels[4..8], [60, 120, 240, 255]);
    assert_eq!(pixels[12..16], [0, 0, 0, 0], "nothing where there is no value");
    assert_eq!(pixels[16..20], [20, 40, 80, 255]);
}
