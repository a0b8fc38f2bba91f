//! The small server that tools/serve and the browser tests use, and the zip that tools/release makes.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

#[path = "../tools/host.rs"]
mod host;
#[path = "../tools/zip.rs"]
mod zip;

use std::io::{Read, Write};
use std::net::TcpStream;
use std::path::PathBuf;

/// A folder with a secret beside it, removed when dropped.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Folder {
        let root = std::env::temp_dir().join(format!("potside-{name}-{}", std::process::id()));
        let dist = root.join("dist");
        std::fs::create_dir_all(dist.join("deep")).unwrap();
        for (file, text) in [
            ("index.html", "<title>home</title>"),
            ("boot-0123456789abcdef.js", "start()"),
            ("app-0123456789abcdef_bg.wasm", "\0asm"),
            ("sw.js", "worker"),
            ("deep/a b.txt", "spaced"),
        ] {
            std::fs::write(dist.join(file), text).unwrap();
        }
        std::fs::write(root.join("secret.txt"), "secret").unwrap();
        Folder(root)
    }

    fn dist(&self) -> PathBuf {
        self.0.join("dist")
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        std::fs::remove_dir_all(&self.0).ok();
    }
}

fn port(host: &host::Host) -> u16 {
    host.address().split(['/', ':']).nth(4).unwrap().parse().unwrap()
}

fn ask(host: &host::Host, request: &str) -> String {
    let mut stream = TcpStream::connect(("127.0.0.1", port(host))).unwrap();
    write!(stream, "{request} HTTP/1.1\r\nHost: localhost\r\n\r\n").unwrap();
    let mut text = String::new();
    stream.read_to_string(&mut text).unwrap();
    text
}

#[track_caller]
fn check(host: &host::Host, request: &str, status: &str, holds: &[&str]) -> String {
    let reply = ask(host, request);
    assert!(reply.starts_with(&format!("HTTP/1.1 {status} ")), "{request}: {reply}");
    for piece in holds {
        assert!(reply.contains(piece), "{request} lacks {piece}: {reply}");
    }
    reply
}

#[test]
fn files_come_with_their_kind_and_keeping() {
    let folder = Folder::new("kinds");
    let host = host::Host::start(&folder.dist(), 0, "/").unwrap();
    check(&host, "GET /", "200", &["text/html", "no-cache", "\r\n\r\n<title>home</title>"]);
    check(&host, "GET /boot-0123456789abcdef.js", "200", &["text/javascript", "immutable"]);
    check(&host, "GET /app-0123456789abcdef_bg.wasm", "200", &["application/wasm", "immutable"]);
    check(&host, "GET /sw.js?x=1", "200", &["text/javascript", "no-cache"]);
    check(&host, "GET /deep/a%20b.txt", "200", &["text/plain", "spaced"]);
}

#[test]
fn every_answer_carries_the_policies() {
    let folder = Folder::new("policies");
    let host = host::Host::start(&folder.dist(), 0, "/").unwrap();
    for (request, status) in [("GET /", "200"), ("GET /none", "404"), ("POST /", "405")] {
        let policies =
            ["default-src 'none'", "frame-ancestors 'none'", "nosniff", "no-referrer", "Permissions-Policy"];
        check(&host, request, status, &policies);
    }
}

#[test]
fn the_page_says_the_same_policy_as_the_header() {
    let page = include_str!("../index.html");
    let (common, _) = host::POLICY.split_once("; frame-ancestors").unwrap();
    assert!(page.contains(&format!("content=\"{common}\"")), "index.html and tools/host.rs differ");
}

#[test]
fn head_sends_no_body() {
    let folder = Folder::new("head");
    let host = host::Host::start(&folder.dist(), 0, "/").unwrap();
    let reply = check(&host, "HEAD /", "200", &["Content-Length: 19"]);
    assert!(reply.ends_with("\r\n\r\n"), "{reply}");
}

#[test]
fn nothing_outside_the_folder_is_served() {
    let folder = Folder::new("outside");
    let host = host::Host::start(&folder.dist(), 0, "/").unwrap();
    let outside = folder.0.join("secret.txt");
    for path in [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/deep/../../secret.txt",
        "/..%2fsecret.txt",
        "/..%5csecret.txt",
        &format!("/{}", outside.display()),
        "/%00",
        "/%zz",
        "/deep",
        "/none.txt",
    ] {
        let reply = check(&host, &format!("GET {path}"), "404", &[]);
        assert!(!reply.contains("secret"), "{path}: {reply}");
    }
    check(&host, "GET /", "200", &[]);
}

#[test]
fn a_sub_path_is_all_there_is() {
    let folder = Folder::new("under");
    let host = host::Host::start(&folder.dist(), 0, "some/path").unwrap();
    assert!(host.address().ends_with("/some/path/"), "{}", host.address());
    check(&host, "GET /some/path/", "200", &["home"]);
    check(&host, "GET /some/path/sw.js", "200", &["worker"]);
    check(&host, "GET /some/path", "301", &["Location: /some/path/"]);
    check(&host, "GET /", "404", &[]);
    check(&host, "GET /sw.js", "404", &[]);
}

#[test]
fn a_stopped_server_refuses_and_frees_its_port() {
    let folder = Folder::new("stop");
    let mut host = host::Host::start(&folder.dist(), 0, "/").unwrap();
    check(&host, "GET /", "200", &[]);
    let port = port(&host);
    host.stop();
    assert!(TcpStream::connect(("127.0.0.1", port)).is_err(), "still listening on {port}");
    host::Host::start(&folder.dist(), port, "/").unwrap();
}

#[test]
fn crc_of_the_standard_check_string() {
    // The check value of CRC-32/ISO-HDLC in the Catalogue of Parametrised CRC Algorithms.
    assert_eq!(zip::crc(b"123456789"), 0xCBF4_3926);
}

#[test]
fn the_zip_holds_every_file_once_and_is_the_same_each_time() {
    let folder = Folder::new("zip");
    let zip = zip::pack(&folder.dist()).unwrap();
    assert_eq!(zip, zip::pack(&folder.dist()).unwrap());
    // Read back through the directory at its end, as every reader of zips does.
    let word = |at: usize| u32::from_le_bytes(zip[at..at + 4].try_into().unwrap()) as usize;
    let half = |at: usize| u16::from_le_bytes(zip[at..at + 2].try_into().unwrap()) as usize;
    let end = zip.len() - 22;
    assert_eq!(&zip[end..end + 4], b"PK\x05\x06");
    assert_eq!(word(end + 16) + word(end + 12), end);
    let (mut at, mut found) = (word(end + 16), Vec::new());
    for _ in 0..half(end + 10) {
        assert_eq!(&zip[at..at + 4], b"PK\x01\x02");
        let (size, name_size, local) = (word(at + 24), half(at + 28), word(at + 42));
        let name = std::str::from_utf8(&zip[at + 46..at + 46 + name_size]).unwrap();
        assert_eq!(&zip[local..local + 4], b"PK\x03\x04");
        let body = local + 30 + name_size;
        assert_eq!(zip[body..body + size], std::fs::read(folder.dist().join(name)).unwrap(), "{name}");
        assert_eq!(word(local + 14), zip::crc(&zip[body..body + size]) as usize, "{name}");
        found.push(name.to_string());
        at += 46 + name_size;
    }
    assert_eq!(at, end);
    let names =
        ["app-0123456789abcdef_bg.wasm", "boot-0123456789abcdef.js", "deep/a b.txt", "index.html", "sw.js"];
    assert_eq!(found, names);
}
