//! A printed page: made by the browser, turned to a picture by pdftoppm, and measured.

use crate::browser::Browser;
use fantoccini::wd::{PrintConfigurationBuilder, PrintMargins, PrintSize};
use std::path::{Path, PathBuf};
use std::process::Command;

/// A grey picture of a part of a page.
pub(crate) struct Picture {
    pub(crate) width: usize,
    pub(crate) height: usize,
    grey: Vec<u8>,
    dots_per_mm: f64,
}

/// Prints what is open onto A4 at full size; the file, and how many pages it has.
pub(crate) async fn print(b: &Browser, name: &str) -> (PathBuf, usize) {
    let margins = PrintMargins { top: 0.0, bottom: 0.0, left: 0.0, right: 0.0 };
    let page = PrintConfigurationBuilder::default()
        .size(PrintSize { width: 21.0, height: 29.7 })
        .margins(margins)
        .shrink_to_fit(false)
        .background(true)
        .build()
        .unwrap();
    let pdf = b.client.print(page).await.unwrap();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("out/screens");
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(format!("{name}.pdf"));
    std::fs::write(&file, pdf).unwrap();
    let info = Command::new("pdfinfo").arg(&file).output().expect("pdfinfo comes with pdftoppm");
    let info = String::from_utf8_lossy(&info.stdout).into_owned();
    let pages = info.lines().find_map(|line| line.strip_prefix("Pages:")).unwrap().trim().parse().unwrap();
    (file, pages)
}

/// A part of the first page, in millimetres from its corner, at so many dots an inch.
pub(crate) fn part(pdf: &Path, dots: u32, (x, y, width, height): (f64, f64, f64, f64)) -> Picture {
    let dots_per_mm = f64::from(dots) / 25.4;
    let px = |mm: f64| ((mm * dots_per_mm).round() as u32).to_string();
    let out = pdf.with_extension("");
    let done = Command::new("pdftoppm")
        .args([
            "-gray",
            "-singlefile",
            "-r",
            &dots.to_string(),
            "-x",
            &px(x),
            "-y",
            &px(y),
            "-W",
            &px(width),
            "-H",
            &px(height),
        ])
        .args([pdf, &out])
        .status()
        .expect("pdftoppm: tools/setup test says where it comes from");
    assert!(done.success());
    let file = std::fs::read(out.with_extension("pgm")).unwrap();
    // P5, width, height, 255, then the dots.
    let mut from = 0;
    let mut numbers = Vec::new();
    while numbers.len() < 4 {
        let end = from + file[from..].iter().position(u8::is_ascii_whitespace).unwrap();
        numbers.push(String::from_utf8_lossy(&file[from..end]).into_owned());
        from = end + 1;
    }
    let (width, height) = (numbers[1].parse().unwrap(), numbers[2].parse().unwrap());
    Picture { width, height, grey: file[from..].to_vec(), dots_per_mm }
}

impl Picture {
    fn is_dark(&self, x: usize, y: usize) -> bool {
        self.grey[y * self.width + x] < 128
    }

    /// The text of the code in it.
    pub(crate) fn code(&self) -> Option<String> {
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(self.width, self.height, |x, y| {
            self.grey[y * self.width + x]
        });
        image.detect_grids().first()?.decode().ok().map(|found| found.1)
    }

    /// Runs of lines of dots that have ink, from the top.
    fn lines(&self) -> Vec<(usize, usize)> {
        runs(self.height, |y| (0..self.width).any(|x| self.is_dark(x, y)))
    }

    /// The height in millimetres of the last letter of the line of text that is the `from_foot`th from the foot.
    pub(crate) fn last_letter(&self, from_foot: usize) -> f64 {
        let lines = self.lines();
        let (top, bottom) = lines[lines.len() - 1 - from_foot];
        let columns = runs(self.width, |x| (top..bottom).any(|y| self.is_dark(x, y)));
        let (left, right) = *columns.last().unwrap();
        let letter =
            runs(self.height, |y| y >= top && y < bottom && (left..right).any(|x| self.is_dark(x, y)));
        (letter.last().unwrap().1 - letter[0].0) as f64 / self.dots_per_mm
    }

    /// The height in millimetres of the lowest letter of such a line; points and commas, which are less than half as high
    /// as the highest, are none.
    pub(crate) fn lowest_letter(&self, from_foot: usize) -> f64 {
        let lines = self.lines();
        let (top, bottom) = lines[lines.len() - 1 - from_foot];
        let ink = |left: usize, right: usize| {
            let rows: Vec<usize> =
                (top..bottom).filter(|y| (left..right).any(|x| self.is_dark(x, *y))).collect();
            rows[rows.len() - 1] + 1 - rows[0]
        };
        let letters = runs(self.width, |x| (top..bottom).any(|y| self.is_dark(x, y)));
        let heights: Vec<usize> = letters.into_iter().map(|(left, right)| ink(left, right)).collect();
        let highest = heights.iter().copied().max().unwrap();
        heights.into_iter().filter(|height| height * 2 >= highest).min().unwrap() as f64 / self.dots_per_mm
    }
}

impl Picture {
    /// Top and bottom of the line of ink that is the `from_foot`th from the foot, in millimetres from the top.
    pub(crate) fn line(&self, from_foot: usize) -> (f64, f64) {
        let lines = self.lines();
        let (top, bottom) = lines[lines.len() - 1 - from_foot];
        (top as f64 / self.dots_per_mm, bottom as f64 / self.dots_per_mm)
    }

    /// Left, top, right and bottom of all ink for which `within` holds, in millimetres; none without any.
    pub(crate) fn ink(&self, within: impl Fn(f64, f64) -> bool) -> Option<(f64, f64, f64, f64)> {
        let mut found: Option<(f64, f64, f64, f64)> = None;
        for y in 0..self.height {
            for x in 0..self.width {
                let (left, top) = (x as f64 / self.dots_per_mm, y as f64 / self.dots_per_mm);
                if !self.is_dark(x, y) || !within(left, top) {
                    continue;
                }
                let (right, bottom) = ((x + 1) as f64 / self.dots_per_mm, (y + 1) as f64 / self.dots_per_mm);
                found = Some(found.map_or((left, top, right, bottom), |f| {
                    (f.0.min(left), f.1.min(top), f.2.max(right), f.3.max(bottom))
                }));
            }
        }
        found
    }
}

/// The words of the first page, in the order in which they are read.
pub(crate) fn words(pdf: &Path) -> String {
    let out = Command::new("pdftotext").args(["-l", "1"]).arg(pdf).arg("-").output();
    let text = out.expect("pdftotext comes with pdftoppm").stdout;
    String::from_utf8_lossy(&text).split_whitespace().collect::<Vec<_>>().join(" ")
}

fn runs(count: usize, ink: impl Fn(usize) -> bool) -> Vec<(usize, usize)> {
    let mut runs = Vec::new();
    let mut began = None;
    for n in 0..=count {
        match (n < count && ink(n), began) {
            (true, None) => began = Some(n),
            (false, Some(from)) => {
                runs.push((from, n));
                began = None;
            }
            _ => {}
        }
    }
    runs
}
