//! Photos in the browser: shrunk on a canvas, and kept in a database of their own, by their names, so that neither the
//! journal nor what is folded of it grows with them. A photo is stored before the entry that names it.

use super::bundle::piece;
use super::database::Database;
use super::local;
use super::opened::{Mode, entries};
use super::request::{complete, result, store_error};
use super::workshop::{DEMO_PHOTOS, Which};
use crate::book::{Store, StoreError, Stray, leave_unsaid, overdue, strays};
use crate::photo::{LONG_SIDE, MOST_FILE, Photo, PhotoError, check, from_base64, pack};
use crate::wire;
use js_sys::{Array, Reflect};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, HtmlInputElement, ImageBitmap};

thread_local! {
    static OWN: Rc<Database> = Rc::new(Database::new("potside-photos"));
    static DEMO: Rc<Database> = Rc::new(Database::new(DEMO_PHOTOS));
}

fn database(which: Which) -> Rc<Database> {
    match which {
        Which::Own => OWN.with(Rc::clone),
        Which::Demo => DEMO.with(Rc::clone),
    }
}

/// How it is tried to make a picture small enough: parts of the longest side, and how good it is (our own choice).
const TRIES: [(f64, f64); 5] = [(1.0, 0.8), (1.0, 0.6), (1.0, 0.4), (0.75, 0.4), (0.5, 0.3)];

/// The picture that was chosen as a photo: its name and its bytes as text. None where none was chosen.
pub async fn taken(input: &HtmlInputElement) -> Option<Result<(String, String), PhotoError>> {
    let file = input.files()?.get(0)?;
    if file.size() > f64::from(MOST_FILE) {
        input.set_value("");
        return Some(Err(PhotoError::TooLarge));
    }
    let shown = match web_sys::window().and_then(|w| w.create_image_bitmap_with_blob(&file).ok()) {
        Some(promise) => JsFuture::from(promise).await.ok(),
        None => None,
    };
    // So that choosing the same file again is a new choice.
    input.set_value("");
    let packed = shown.and_then(|picture| {
        let picture: ImageBitmap = picture.unchecked_into();
        let packed = shrink(&picture);
        picture.close();
        packed
    });
    Some(packed.ok_or(PhotoError::NoPicture))
}

fn shrink(picture: &ImageBitmap) -> Option<(String, String)> {
    let (wide, high) = (f64::from(picture.width()), f64::from(picture.height()));
    let canvas = web_sys::window()?.document()?.create_element("canvas").ok()?;
    let canvas: HtmlCanvasElement = canvas.unchecked_into();
    TRIES.into_iter().find_map(|(part, good)| {
        let scale = (part * f64::from(LONG_SIDE) / wide.max(high)).min(1.0);
        let [w, h] = [wide, high].map(|side| (side * scale).round().max(1.0));
        canvas.set_width(w as u32);
        canvas.set_height(h as u32);
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.unchecked_into();
        // What is clear in the picture would come out black.
        context.set_fill_style_str("#fff");
        context.fill_rect(0.0, 0.0, w, h);
        context.draw_image_with_image_bitmap_and_dw_and_dh(picture, 0.0, 0.0, w, h).ok()?;
        let made = canvas.to_data_url_with_type_and_encoder_options("image/jpeg", &good.into()).ok()?;
        pack(&from_base64(made.strip_prefix(HEAD)?)?).ok()
    })
}

/// What the text of a photo stands behind in an address.
const HEAD: &str = "data:image/jpeg;base64,";

/// Keeps photos, pairs of name and text; durable once it resolves.
///
/// # Errors
/// See [`StoreError`].
pub async fn keep_photos(which: Which, photos: &[(String, String)]) -> Result<(), StoreError> {
    let database = database(which);
    match database.append(photos).await {
        // What was in it is nowhere else: there is nothing to wait for.
        Err(StoreError::Cleared) => {
            database.bring_back(&mut |_, _| None).await?;
            database.append(photos).await
        }
        other => other,
    }
}

/// Those of these photos that are not kept any more. Which are shown on the page are kept again.
///
/// # Errors
/// See [`StoreError`].
pub async fn bring_back(which: Which, named: &[String]) -> Result<usize, StoreError> {
    let known = names(which).await?;
    let mut lacking: Vec<&String> = named.iter().filter(|name| !known.contains(name)).collect();
    let mut here = Vec::new();
    let document = web_sys::window().and_then(|w| w.document());
    let images = document.and_then(|d| Reflect::get(&d, &"images".into()).ok());
    for image in images.map(|images| Array::from(&images)).unwrap_or_default() {
        let source = Reflect::get(&image, &"src".into()).ok().and_then(|source| source.as_string());
        let source = source.unwrap_or_default();
        let Some(text) = source.strip_prefix(HEAD) else { continue };
        if let Some(place) = lacking.iter().position(|name| check(name, text).is_ok()) {
            here.push((lacking.remove(place).clone(), text.to_owned()));
        }
    }
    if !here.is_empty() {
        keep_photos(which, &here).await?;
    }
    Ok(lacking.len())
}

/// The photo of this name, once it has proven itself.
pub async fn photo(which: Which, name: &str) -> Result<Photo, PhotoError> {
    let text = stored(which, name).await.ok().flatten().ok_or(PhotoError::Missing)?;
    check(name, &text)?;
    Ok(Photo { name: name.to_owned(), jpeg: text })
}

async fn stored(which: Which, name: &str) -> Result<Option<String>, StoreError> {
    let transaction = database(which).transaction(Mode::Read).await?;
    let request = entries(&transaction)?.get(&name.into()).map_err(|e| store_error(&e))?;
    Ok(result(&request).await?.as_string())
}

/// The photo as an address that an image shows.
pub fn address(photo: &Photo) -> String {
    [HEAD, &photo.jpeg].concat()
}

/// So many lines are looked through at once.
const LINES: u32 = 200;

/// The names of all photos in the book; none where it is not open any more.
pub type Named<'a> = &'a dyn Fn() -> Option<Vec<String>>;

/// Takes away the photos whose entry never came: unnamed in the book for a day, and in none of the stored lines. What
/// stands there unnamed is noted beside it. Gives the names of those taken away.
///
/// # Errors
/// See [`StoreError`]; then nothing is taken away.
pub async fn sweep(which: Which, named: Named<'_>, now: u64) -> Result<Vec<String>, StoreError> {
    let note = match which {
        Which::Own => "potside-strays",
        Which::Demo => "potside-demo-strays",
    };
    let noted = local::kept(note);
    let known: Vec<Stray> = noted.as_ref().and_then(|text| wire::read(text).ok()).unwrap_or_default();
    let Some(here) = named() else { return Ok(Vec::new()) };
    let found = strays(&known, names(which).await?, &here, now);
    let mut over = overdue(&found, now);
    if !found.is_empty() {
        local::keep(note, &wire::write(&found));
    } else if noted.is_some() {
        local::forget(note);
    }
    let mut after = None;
    while !over.is_empty() {
        let (keys, lines) = piece(which, after.as_ref(), LINES).await?;
        if keys.length() == 0 {
            break;
        }
        leave_unsaid(&mut over, &lines);
        after = Some(keys.get(keys.length() - 1));
    }
    if !over.is_empty() {
        remove(which, &mut over, named).await?;
    }
    Ok(over)
}

async fn names(which: Which) -> Result<Vec<String>, StoreError> {
    let keys = database(which).keys().await?;
    Ok(keys.iter().filter_map(|key| key.as_string()).collect())
}

/// Leaves those that are not named still, and takes them out.
async fn remove(which: Which, names: &mut Vec<String>, named: Named<'_>) -> Result<(), StoreError> {
    let transaction = database(which).transaction(Mode::Write).await?;
    let store = entries(&transaction)?;
    // Whoever was storing before has stored once this is answered, and named it; whoever comes after stores it again.
    result(&store.count().map_err(|e| store_error(&e))?).await?;
    let here = named();
    names.retain(|name| here.as_ref().is_some_and(|here| !here.contains(name)));
    for name in names.iter() {
        store.delete(&name.into()).map_err(|e| store_error(&e))?;
    }
    complete(&transaction).await
}
