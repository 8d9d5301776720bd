//! Serves one folder on the loopback interface, under any path prefix, with the media types that a page needs.
//!
//! Invariant: only files below the folder are ever answered, and only to this machine.

use percent_encoding::percent_decode_str;
use std::collections::BTreeMap;
use std::io::{self, Read, Write};
use std::net::{Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

/// Bytes that the head of a request may have. Browsers send well below a tenth of it.
const HEAD_LIMIT: usize = 64 * 1024;
/// Fields that the head of a request may have.
const FIELD_LIMIT: usize = 100;

/// A running server; it stops when dropped, and what was still connected is cut off.
pub struct StaticServer {
    shared: Arc<Shared>,
    accepting: Option<JoinHandle<()>>,
    port: u16,
}

/// What every connection needs.
struct Shared {
    folder: PathBuf,
    prefix: String,
    closing: AtomicBool,
    /// By number, so that each is taken out when it ends.
    open: Mutex<BTreeMap<u64, TcpStream>>,
}

impl StaticServer {
    /// Serves `folder` at `http://127.0.0.1:port/`; port 0 takes a free one.
    ///
    /// # Errors
    /// When the port is taken, with a message that says so.
    pub fn start(folder: &Path, port: u16) -> io::Result<Self> {
        Self::start_under(folder, "/", port)
    }

    /// Like [`StaticServer::start`], but the folder appears under `prefix`, such as `/tools/board/`; everything
    /// outside of it is "not found". Proves that a page works wherever it is put.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start_under(folder: &Path, prefix: &str, port: u16) -> io::Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))
            .map_err(|error| io::Error::other(format!("cannot listen on 127.0.0.1:{port}: {error}")))?;
        let port = listener.local_addr()?.port();
        let trimmed = prefix.trim_matches('/');
        let prefix = if trimmed.is_empty() {
            "/".to_owned()
        } else {
            format!("/{trimmed}/")
        };
        let shared = Arc::new(Shared {
            folder: folder.to_path_buf(),
            prefix,
            closing: AtomicBool::new(false),
            open: Mutex::default(),
        });
        let accepting = {
            let shared = Arc::clone(&shared);
            std::thread::spawn(move || accept(&listener, &shared))
        };
        Ok(Self {
            shared,
            accepting: Some(accepting),
            port,
        })
    }

    /// Port that it listens on.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.port
    }

    /// Address of the folder, ending in a slash.
    #[must_use]
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{}", self.port, self.shared.prefix)
    }

    /// Serves until the process ends.
    pub fn wait(mut self) {
        if let Some(accepting) = self.accepting.take() {
            let _ = accepting.join();
        }
    }
}

impl Drop for StaticServer {
    fn drop(&mut self) {
        self.shared.closing.store(true, Ordering::SeqCst);
        // Wakes the thread that waits for the next connection.
        let _ = TcpStream::connect(SocketAddr::from((Ipv4Addr::LOCALHOST, self.port)));
        if let Some(accepting) = self.accepting.take() {
            let _ = accepting.join();
        }
        for stream in self.shared.open().values() {
            let _ = stream.shutdown(Shutdown::Both);
        }
    }
}

impl Shared {
    fn open(&self) -> MutexGuard<'_, BTreeMap<u64, TcpStream>> {
        // Nothing is left half done in the map by a thread that panics.
        self.open.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Gives each connection a thread of its own: browsers open several and hold each for what they may want later, so one that
/// had to wait for another to end would wait for ever.
fn accept(listener: &TcpListener, shared: &Arc<Shared>) {
    for (number, stream) in (0..).zip(listener.incoming()) {
        if shared.closing.load(Ordering::SeqCst) {
            return;
        }
        let Ok(stream) = stream else { continue };
        let Ok(twin) = stream.try_clone() else { continue };
        shared.open().insert(number, twin);
        let shared = Arc::clone(shared);
        std::thread::spawn(move || {
            // A browser that went away in the middle of an answer is no error of the server.
            let _ = talk(stream, &shared);
            shared.open().remove(&number);
        });
    }
}

/// Answers one request after the other, until the other side wants no more.
fn talk(mut stream: TcpStream, shared: &Shared) -> io::Result<()> {
    // The head and the body of an answer are two writes; the second must not wait for the first to be acknowledged.
    stream.set_nodelay(true)?;
    let mut got = Vec::new();
    let mut piece = [0; 4096];
    loop {
        match Asked::read(&got) {
            Ok(Some(asked)) => {
                got.drain(..asked.length);
                let answer = Answer::to(&asked, shared);
                answer.write(&mut stream, asked.head_only)?;
                if answer.last || asked.last {
                    return Ok(());
                }
            }
            Ok(None) if got.len() < HEAD_LIMIT => match stream.read(&mut piece)? {
                0 => return Ok(()),
                read => got.extend_from_slice(&piece[..read]),
            },
            Ok(None) | Err(_) => return Answer::refusal("400 Bad Request").write(&mut stream, false),
        }
    }
}

/// What is wanted.
struct Asked {
    /// Bytes of the request.
    length: usize,
    /// Path below the server, percent-encoded.
    target: String,
    /// Only files are given, nothing is taken.
    allowed: bool,
    head_only: bool,
    /// The other side wants nothing after this.
    last: bool,
}

impl Asked {
    /// Nothing as long as the head has not come whole.
    fn read(got: &[u8]) -> Result<Option<Self>, httparse::Error> {
        let mut fields = [httparse::EMPTY_HEADER; FIELD_LIMIT];
        let mut request = httparse::Request::new(&mut fields);
        let httparse::Status::Complete(length) = request.parse(got)? else {
            return Ok(None);
        };
        let method = request.method.unwrap_or_default();
        let closes = |field: &httparse::Header| {
            field.name.eq_ignore_ascii_case("connection") && field.value.eq_ignore_ascii_case(b"close")
        };
        Ok(Some(Self {
            length,
            target: request.path.unwrap_or_default().to_owned(),
            allowed: matches!(method, "GET" | "HEAD"),
            head_only: method == "HEAD",
            last: request.version == Some(0) || request.headers.iter().any(closes),
        }))
    }
}

/// What is given.
struct Answer {
    status: &'static str,
    media_type: &'static str,
    body: Vec<u8>,
    /// Nothing is answered after this.
    last: bool,
}

impl Answer {
    fn to(asked: &Asked, shared: &Shared) -> Self {
        if !asked.allowed {
            // What else the request carries is not read.
            return Self::refusal("405 Method Not Allowed");
        }
        let file = file_for(&asked.target, &shared.folder, &shared.prefix);
        let Some((media_type, Ok(body))) = file.map(|file| (media_type(&file), std::fs::read(&file))) else {
            return Self {
                last: false,
                ..Self::refusal("404 Not Found")
            };
        };
        Self {
            status: "200 OK",
            media_type,
            body,
            last: false,
        }
    }

    fn refusal(status: &'static str) -> Self {
        Self {
            status,
            media_type: "text/plain; charset=utf-8",
            body: format!("{status}\n").into_bytes(),
            last: true,
        }
    }

    fn write(&self, stream: &mut TcpStream, head_only: bool) -> io::Result<()> {
        // A rebuilt page must show at the next reload; the files that matter carry a hash in their name anyway.
        let close = if self.last { "Connection: close\r\n" } else { "" };
        write!(
            stream,
            "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n{close}\r\n",
            self.status,
            self.media_type,
            self.body.len()
        )?;
        if !head_only {
            stream.write_all(&self.body)?;
        }
        stream.flush()
    }
}

/// The file that a request target names, or nothing when it lies outside of the prefix or of the folder.
fn file_for(target: &str, folder: &Path, prefix: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let inside = path.strip_prefix(prefix)?;
    let decoded = percent_decode_str(inside).decode_utf8().ok()?;
    let mut file = folder.to_path_buf();
    for piece in decoded.split('/').filter(|piece| !piece.is_empty()) {
        // Also refuses `..` that was hidden by encoding, drive letters and backslashes.
        if piece == "." || piece == ".." || piece.contains(['\\', ':', '\0']) {
            return None;
        }
        file.push(piece);
    }
    if file.is_dir() {
        file.push("index.html");
    }
    file.is_file().then_some(file)
}

/// Media type by the ending of the name. Browsers compile wasm while it streams in only under its own type.
fn media_type(file: &Path) -> &'static str {
    match file
        .extension()
        .and_then(|ending| ending.to_str())
        .unwrap_or_default()
    {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "json" | "map" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "txt" | "md" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::Duration;

    fn get(server: &StaticServer, target: &str) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", server.port())).expect("connects");
        write!(
            stream,
            "GET {target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n"
        )
        .expect("writes");
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).expect("reads");
        String::from_utf8_lossy(&answer).into_owned()
    }

    #[test]
    fn files_are_served_under_a_prefix_and_nothing_outside_the_folder_is() {
        let around = tempfile::tempdir().expect("a folder");
        let folder = around.path().join("page");
        std::fs::create_dir(&folder).expect("a folder in it");
        std::fs::write(around.path().join("secret.txt"), "not for the page").expect("a file outside");
        std::fs::write(folder.join("index.html"), "<p>hello</p>").expect("an index");
        std::fs::write(folder.join("a b.wasm"), b"\0asm").expect("a module");
        let server = StaticServer::start_under(&folder, "deep/er", 0).expect("a free port");

        let index = get(&server, "/deep/er/?job=1");
        assert!(
            index.starts_with("HTTP/1.1 200") && index.ends_with("<p>hello</p>"),
            "{index}"
        );
        // Media type from the WebAssembly Web API, section on streaming: `application/wasm`, no parameters.
        assert!(get(&server, "/deep/er/a%20b.wasm").contains("Content-Type: application/wasm\r\n"));
        for outside in [
            "/",
            "/index.html",
            "/deep/er/../secret.txt",
            "/deep/er/%2e%2e/secret.txt",
            "/deep/er/none",
        ] {
            let answer = get(&server, outside);
            assert!(answer.starts_with("HTTP/1.1 404"), "{outside}: {answer}");
        }
    }

    #[test]
    fn only_the_giving_of_files_is_answered_and_each_answer_has_its_length() {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("index.html"), "<p>hello</p>").expect("an index");
        let server = StaticServer::start(folder.path(), 0).expect("a free port");
        let ask = |request: &str| {
            let mut stream = TcpStream::connect(("127.0.0.1", server.port())).expect("connects");
            stream.write_all(request.as_bytes()).expect("writes");
            stream.shutdown(Shutdown::Write).expect("says that it is all");
            let mut answer = Vec::new();
            stream.read_to_end(&mut answer).expect("reads");
            String::from_utf8_lossy(&answer).into_owned()
        };
        // RFC 9110, 9.3.2: the same fields as for GET and no content.
        let head = ask("HEAD / HTTP/1.1\r\nHost: localhost\r\n\r\n");
        assert!(
            head.contains("Content-Length: 12\r\n") && head.ends_with("\r\n\r\n"),
            "{head}"
        );
        // Two requests in one go are answered in their order.
        let two = ask("GET / HTTP/1.1\r\n\r\nGET /none HTTP/1.1\r\n\r\n");
        assert!(
            two.starts_with("HTTP/1.1 200") && two.contains("</p>HTTP/1.1 404"),
            "{two}"
        );
        assert!(ask("POST / HTTP/1.1\r\nContent-Length: 2\r\n\r\nhi").starts_with("HTTP/1.1 405"));
        assert!(ask("what is this?\r\n\r\n").starts_with("HTTP/1.1 400"));
        assert_eq!(ask("GET / HTTP/1.1\r\nHost: cut off"), "");
    }

    /// A browser opens several connections at once and keeps each for what it may want later. None of them may wait for another
    /// to be closed: a page whose files come only in part waits for ever.
    #[test]
    fn connections_that_are_held_open_keep_no_other_waiting() {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("index.html"), "<p>hello</p>").expect("an index");
        for round in 0..100 {
            let server = StaticServer::start(folder.path(), 0).expect("a free port");
            let mut held: Vec<TcpStream> = (0..8)
                .map(|_| TcpStream::connect(("127.0.0.1", server.port())).expect("connects"))
                .collect();
            // The first one says nothing yet, as one that a browser opened in advance.
            for stream in &mut held[1..] {
                stream
                    .set_read_timeout(Some(Duration::from_secs(10)))
                    .expect("a limit");
                write!(stream, "GET / HTTP/1.1\r\nHost: localhost\r\n\r\n").expect("writes");
            }
            for (place, stream) in held[1..].iter_mut().enumerate() {
                let mut start = [0; 12];
                let read = stream.read_exact(&mut start);
                assert!(read.is_ok(), "round {round}, connection {place}: {read:?}");
                assert_eq!(&start, b"HTTP/1.1 200");
            }
        }
    }
}
