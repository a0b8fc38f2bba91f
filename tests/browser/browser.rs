//! Starting, killing and restarting browsers; only ever processes that the test itself started.

use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::net::{Ipv4Addr, TcpListener};
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Engine {
    Chromium,
    Firefox,
    WebKit,
}

/// A process of this test, killed with it and with all that it started.
struct Process(Child);

impl Process {
    /// Sends a signal to the process group that this process leads.
    fn signal(&self, name: &str) {
        let kill = format!("kill -{name} -{} 2>/dev/null", self.0.id());
        let _ = Command::new("sh").args(["-c", &kill]).status();
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // Asked first: xvfb-run has files of its own to remove.
        self.signal("TERM");
        let start = Instant::now();
        while matches!(self.0.try_wait(), Ok(None)) && start.elapsed() < Duration::from_secs(3) {
            std::thread::sleep(Duration::from_millis(20));
        }
        self.signal("KILL");
        let _ = self.0.wait();
    }
}

/// A browser with a profile of its own, and the WebDriver session in it.
pub(crate) struct Browser {
    pub(crate) client: Client,
    pub(crate) engine: Engine,
    profile: PathBuf,
    /// Chromium is started by the test, so that it can be killed as a dead battery would.
    chromium: Option<Process>,
    _driver: Process,
}

fn free_port() -> u16 {
    TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap().local_addr().unwrap().port()
}

fn on_path(names: &[&str]) -> PathBuf {
    let path = std::env::var_os("PATH").unwrap();
    let found =
        std::env::split_paths(&path).flat_map(|d| names.iter().map(move |n| d.join(n))).find(|f| f.is_file());
    found.unwrap_or_else(|| panic!("none of {names:?} is on PATH: run tools/setup test"))
}

fn quiet(command: &mut Command) -> Process {
    let command = command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    Process(command.process_group(0).spawn().unwrap())
}

/// With the server gone the look for a new version fails, and the browser says so.
pub(crate) const GONE: Option<&str> = Some("sw.js");

/// What is to happen is waited for so long before it counts as not happening: how long it takes is the machine's affair.
pub(crate) const PATIENCE: Duration = Duration::from_secs(60);

/// Waits until there is something.
pub(crate) async fn until<T>(what: &str, mut get: impl FnMut() -> Option<T>) -> T {
    let start = Instant::now();
    loop {
        if let Some(found) = get() {
            return found;
        }
        assert!(start.elapsed() < PATIENCE, "waited in vain for {what}");
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
}

/// The bytes of the first file of this kind that is whole in a folder. A browser gives a file its name once it is.
pub(crate) async fn downloaded(folder: &Path, kind: &str) -> Vec<u8> {
    let whole = || {
        let files = std::fs::read_dir(folder).unwrap().filter_map(|f| Some(f.ok()?.path()));
        let whole = files.into_iter().find(|f| f.extension().is_some_and(|e| e == kind))?;
        let bytes = std::fs::read(&whole).unwrap();
        std::fs::remove_file(whole).unwrap();
        Some(bytes)
    };
    until(&format!("a download of {kind}"), whole).await
}

async fn listening(port: u16) {
    until("the driver", || std::net::TcpStream::connect((Ipv4Addr::LOCALHOST, port)).ok()).await;
}

/// Flags that keep Chromium from reaching for the network or a display.
const CHROMIUM: &[&str] = &[
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--touch-events=enabled",
    "--remote-debugging-port=0",
    "about:blank",
];

fn start_chromium(profile: &Path) -> Process {
    let _ = std::fs::remove_file(profile.join("DevToolsActivePort"));
    let program = on_path(&["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]);
    quiet(Command::new(program).args(CHROMIUM).arg(format!("--user-data-dir={}", profile.display())))
}

async fn chromium_session(driver_port: u16, profile: &Path) -> Client {
    let port = until("Chromium", || {
        std::fs::read_to_string(profile.join("DevToolsActivePort")).ok()?.lines().next()?.parse::<u16>().ok()
    })
    .await;
    let options = json!({
        "goog:chromeOptions": { "debuggerAddress": format!("127.0.0.1:{port}") },
        "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
    });
    session(driver_port, options).await
}

async fn session(port: u16, capabilities: Value) -> Client {
    let mut builder = ClientBuilder::new(HttpConnector::new());
    builder.capabilities(capabilities.as_object().unwrap().clone());
    builder.connect(&format!("http://127.0.0.1:{port}")).await.unwrap()
}

impl Browser {
    pub(crate) async fn start(engine: Engine, name: &str) -> Self {
        let profile = std::env::temp_dir().join(format!("potside-{name}-{}", std::process::id()));
        let _ = std::fs::remove_dir_all(&profile);
        std::fs::create_dir_all(&profile).unwrap();
        let chromium = (engine == Engine::Chromium).then(|| start_chromium(&profile));
        let (client, driver) = Self::connect(engine, &profile).await;
        Self { client, engine, profile, chromium, _driver: driver }
    }

    async fn connect(engine: Engine, profile: &Path) -> (Client, Process) {
        let port = free_port();
        match engine {
            Engine::Chromium => {
                let driver = quiet(Command::new(on_path(&["chromedriver"])).arg(format!("--port={port}")));
                listening(port).await;
                (chromium_session(port, profile).await, driver)
            }
            Engine::Firefox => {
                let driver =
                    quiet(Command::new(on_path(&["geckodriver"])).arg("--port").arg(port.to_string()));
                listening(port).await;
                let binary = on_path(&["firefox-esr", "firefox"]);
                let profile = profile.display().to_string();
                let options = json!({ "moz:firefoxOptions": {
                    "binary": binary, "args": ["-headless", "-profile", profile],
                }});
                (session(port, options).await, driver)
            }
            Engine::WebKit => {
                // It keeps its data under these folders.
                let driver = quiet(
                    Command::new(on_path(&["xvfb-run"]))
                        .args(["-a", "WebKitWebDriver", &format!("--port={port}")])
                        .env("XDG_DATA_HOME", profile.join("data"))
                        .env("XDG_CACHE_HOME", profile.join("cache"))
                        .env("WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS", "1"),
                );
                listening(port).await;
                let options = json!({ "webkitgtk:browserOptions": { "binary": mini_browser(), "args": ["--automation"] } });
                (session(port, options).await, driver)
            }
        }
    }

    /// Ends Chromium at once, as a dead battery would, and starts it again on the same profile.
    pub(crate) async fn kill_and_restart(&mut self) {
        let mut dead = self.chromium.take().expect("only Chromium is killed");
        dead.0.kill().unwrap();
        dead.0.wait().unwrap();
        drop(dead);
        self.start_again().await;
    }

    /// Closes Chromium as a person would and starts it again on the same profile.
    pub(crate) async fn close_and_restart(&mut self) {
        let _ = self.cdp("Browser.close", json!({})).await;
        let mut old = self.chromium.take().expect("only Chromium is restarted");
        until("Chromium to close", || old.0.try_wait().ok().flatten()).await;
        self.start_again().await;
    }

    /// Waits until Chromium has written this into the files of the small texts that pages keep: it does every few seconds.
    pub(crate) async fn written(&self, text: &str) {
        let folder = self.profile.join("Default/Local Storage/leveldb");
        let holds = |file: std::fs::DirEntry| {
            let bytes = std::fs::read(file.path()).unwrap_or_default();
            bytes.windows(text.len()).any(|some| some == text.as_bytes())
        };
        let any = || std::fs::read_dir(&folder).ok()?.filter_map(Result::ok).any(holds).then_some(());
        until(&format!("“{text}” to be written"), any).await;
    }

    async fn start_again(&mut self) {
        let chromium = Some(start_chromium(&self.profile));
        let (client, driver) = Self::connect(self.engine, &self.profile).await;
        self.client = client;
        self._driver = driver;
        self.chromium = chromium;
    }

    /// A command of Chromium's own protocol.
    pub(crate) async fn cdp(
        &self,
        method: &str,
        params: Value,
    ) -> Result<Value, fantoccini::error::CmdError> {
        self.client
            .issue_cmd(Extra { path: "goog/cdp/execute", body: json!({ "cmd": method, "params": params }) })
            .await
    }

    /// Chromium's log since the last call: "browser" is its console, "performance" its network and more.
    pub(crate) async fn log(&self, kind: &str) -> Vec<Value> {
        let log =
            self.client.issue_cmd(Extra { path: "se/log", body: json!({ "type": kind }) }).await.unwrap();
        log.as_array().cloned().unwrap_or_default()
    }

    /// The errors in it since the last call, but for those that have this in them.
    pub(crate) async fn errors(&self, but: Option<&str>) -> Vec<String> {
        let log = self.log("browser").await.into_iter().filter(|said| said["level"] == "SEVERE");
        let said = log.map(|said| said["message"].to_string());
        said.filter(|said| but.is_none_or(|but| !said.contains(but))).collect()
    }

    pub(crate) async fn end(self) {
        let _ = self.client.clone().close().await;
        let profile = self.profile.clone();
        drop(self);
        let _ = std::fs::remove_dir_all(profile);
    }
}

fn mini_browser() -> PathBuf {
    let folders = ["/usr/lib/x86_64-linux-gnu", "/usr/lib/aarch64-linux-gnu", "/usr/lib", "/usr/libexec"];
    let versions = ["webkit2gtk-4.1", "webkit2gtk-4.0", "webkitgtk-6.0"];
    let mut all =
        folders.iter().flat_map(|f| versions.iter().map(move |v| Path::new(f).join(v).join("MiniBrowser")));
    all.find(|p| p.is_file()).expect("WebKitGTK's MiniBrowser: run tools/setup test")
}

/// A command outside the standard.
#[derive(Debug)]
struct Extra {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Extra {
    fn endpoint(&self, base: &url::Url, session: Option<&str>) -> Result<url::Url, url::ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }
    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}
