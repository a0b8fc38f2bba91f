//! A small server of static files for this machine alone: what `tools/serve` runs and the browser tests start and stop.

use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::JoinHandle;
use std::time::Duration;

/// The page's own policy (index.html), and what only a header can say.
pub(crate) const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; \
    form-action 'none'; frame-ancestors 'none'";

const HEADERS: &[(&str, &str)] = &[
    ("Content-Security-Policy", POLICY),
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    (
        "Permissions-Policy",
        "camera=(), microphone=(), geolocation=(), payment=(), usb=(), screen-wake-lock=(self)",
    ),
];

const KINDS: &[(&str, &str)] = &[
    ("html", "text/html; charset=utf-8"),
    ("js", "text/javascript; charset=utf-8"),
    ("css", "text/css; charset=utf-8"),
    ("wasm", "application/wasm"),
    ("webmanifest", "application/manifest+json"),
    ("json", "application/json"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("txt", "text/plain; charset=utf-8"),
];

/// Longest request head taken, bytes.
const HEAD_LIMIT: u64 = 16 * 1024;

struct Place {
    folder: PathBuf,
    under: String,
}

/// A running server. It listens on 127.0.0.1 only; [`stop`](Host::stop) or dropping it frees the port.
pub(crate) struct Host {
    at: SocketAddr,
    under: String,
    stopped: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
}

impl Host {
    /// Serves `folder` under the path `under` (`/`, or `/some/path/`). Port 0 takes any free one.
    pub(crate) fn start(folder: &Path, port: u16, under: &str) -> io::Result<Host> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        let at = listener.local_addr()?;
        let bare = under.trim_matches('/');
        let under = if bare.is_empty() { "/".to_string() } else { format!("/{bare}/") };
        let place = Arc::new(Place { folder: folder.canonicalize()?, under: under.clone() });
        let stopped = Arc::new(AtomicBool::new(false));
        let stop = Arc::clone(&stopped);
        let thread = std::thread::spawn(move || {
            for stream in listener.incoming() {
                if stop.load(Ordering::SeqCst) {
                    break;
                }
                let Ok(stream) = stream else { continue };
                let place = Arc::clone(&place);
                // A browser that leaves in the middle is no fault of ours.
                std::thread::spawn(move || answer(&place, stream).ok());
            }
        });
        Ok(Host { at, under, stopped, thread: Some(thread) })
    }

    /// The address to open, with `localhost`, which browsers trust as they trust https.
    pub(crate) fn address(&self) -> String {
        format!("http://localhost:{}{}", self.at.port(), self.under)
    }

    /// Stops listening: from here on a connection is refused, as with no network.
    pub(crate) fn stop(&mut self) {
        if let Some(thread) = self.thread.take() {
            self.stopped.store(true, Ordering::SeqCst);
            // Wakes the listener so that it sees the flag.
            TcpStream::connect(self.at).ok();
            thread.join().ok();
        }
    }
}

impl Drop for Host {
    fn drop(&mut self) {
        self.stop();
    }
}

fn answer(place: &Place, stream: TcpStream) -> io::Result<()> {
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    stream.set_write_timeout(Some(Duration::from_secs(30)))?;
    let mut reader = BufReader::new(stream.try_clone()?.take(HEAD_LIMIT));
    let mut first = String::new();
    reader.read_line(&mut first)?;
    let mut line = String::new();
    while reader.read_line(&mut line)? > 2 {
        line.clear();
    }
    let reply = reply(place, &first);
    let mut stream = stream;
    stream.write_all(&reply)?;
    stream.flush()?;
    stream.shutdown(Shutdown::Write)
}

/// The whole answer to a request whose first line is `first`.
fn reply(place: &Place, first: &str) -> Vec<u8> {
    let mut words = first.split_whitespace();
    let (Some(method), Some(target)) = (words.next(), words.next()) else {
        return message("400 Bad Request", &[], b"What came was not a request.", true);
    };
    let body = match method {
        "GET" => true,
        "HEAD" => false,
        _ => {
            return message("405 Method Not Allowed", &[("Allow", "GET, HEAD")], b"Only GET and HEAD.", true);
        }
    };
    let path = target.split(['?', '#']).next().unwrap_or(target);
    if place.under != "/" && path == place.under.trim_end_matches('/') {
        return message("301 Moved Permanently", &[("Location", &place.under)], b"", body);
    }
    let found = path.strip_prefix(place.under.as_str()).and_then(|rest| file(&place.folder, rest));
    let Some((name, bytes)) = found else {
        return message(
            "404 Not Found",
            &[("Content-Type", "text/plain; charset=utf-8")],
            b"No such file here.",
            body,
        );
    };
    let ending = name.rsplit('.').next().unwrap_or_default();
    let kind =
        KINDS.iter().find(|(known, _)| *known == ending).map_or("application/octet-stream", |(_, kind)| kind);
    let keep = if hashed(&name) { "public, max-age=31536000, immutable" } else { "no-cache" };
    message("200 OK", &[("Content-Type", kind), ("Cache-Control", keep)], &bytes, body)
}

fn message(status: &str, more: &[(&str, &str)], bytes: &[u8], body: bool) -> Vec<u8> {
    let mut text = format!("HTTP/1.1 {status}\r\nContent-Length: {}\r\nConnection: close\r\n", bytes.len());
    for (name, value) in HEADERS.iter().chain(more) {
        text.push_str(&format!("{name}: {value}\r\n"));
    }
    text.push_str("\r\n");
    let mut message = text.into_bytes();
    if body {
        message.extend_from_slice(bytes);
    }
    message
}

/// The file asked for: its name and bytes, or nothing when it is missing or lies outside the folder.
fn file(folder: &Path, asked: &str) -> Option<(String, Vec<u8>)> {
    let name = if asked.is_empty() { "index.html".to_string() } else { decode(asked)? };
    if name.contains('\\') || name.contains('\0') {
        return None;
    }
    // Resolved before it is compared, so neither `..` nor a link leads out.
    let path = folder.join(&name).canonicalize().ok()?;
    if !path.starts_with(folder) || !path.is_file() {
        return None;
    }
    std::fs::read(path).ok().map(|bytes| (name, bytes))
}

fn decode(text: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let pair = [rest.next()?, rest.next()?];
            let pair = std::str::from_utf8(&pair).ok()?;
            bytes.push(u8::from_str_radix(pair, 16).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

/// Whether the build put a hash of the content into the name (`boot-0123456789abcdef.js`): such a file never changes.
fn hashed(name: &str) -> bool {
    name.split(['-', '.', '_'])
        .any(|piece| piece.len() == 16 && piece.bytes().all(|byte| byte.is_ascii_hexdigit()))
}
