//! Serves one folder on the loopback interface, under any path prefix, with the media types that a page needs.
//!
//! Invariant: only files below the folder are ever answered, and only to this machine.

use percent_encoding::percent_decode_str;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread::JoinHandle;
use tiny_http::{Header, Method, Request, Response, Server};

/// A browser opens up to six connections to a host; a slow one must not hold up the others.
const WORKERS: usize = 6;

/// A running server; it stops when dropped.
pub struct StaticServer {
    server: Arc<Server>,
    workers: Vec<JoinHandle<()>>,
    port: u16,
    prefix: String,
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
        let server = Server::http(("127.0.0.1", port))
            .map_err(|error| io::Error::other(format!("cannot listen on 127.0.0.1:{port}: {error}")))?;
        let port = server
            .server_addr()
            .to_ip()
            .map_or(port, |address| address.port());
        let server = Arc::new(server);
        let trimmed = prefix.trim_matches('/');
        let prefix = if trimmed.is_empty() {
            "/".to_owned()
        } else {
            format!("/{trimmed}/")
        };
        let workers = (0..WORKERS)
            .map(|_| {
                let (server, folder, prefix) = (Arc::clone(&server), folder.to_path_buf(), prefix.clone());
                std::thread::spawn(move || {
                    while let Ok(request) = server.recv() {
                        // A browser that went away in the middle of an answer is no error of the server.
                        let _ = answer(request, &folder, &prefix);
                    }
                })
            })
            .collect();
        Ok(Self {
            server,
            workers,
            port,
            prefix,
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
        format!("http://127.0.0.1:{}{}", self.port, self.prefix)
    }

    /// Serves until the process ends.
    pub fn wait(mut self) {
        for worker in self.workers.drain(..) {
            let _ = worker.join();
        }
    }
}

impl Drop for StaticServer {
    fn drop(&mut self) {
        // One call wakes one worker; a woken worker gets an error from `recv` and ends.
        for _ in &self.workers {
            self.server.unblock();
        }
        for worker in self.workers.drain(..) {
            let _ = worker.join();
        }
    }
}

fn answer(request: Request, folder: &Path, prefix: &str) -> io::Result<()> {
    if !matches!(request.method(), Method::Get | Method::Head) {
        return request.respond(Response::from_string("only GET and HEAD\n").with_status_code(405));
    }
    let Some(file) = file_for(request.url(), folder, prefix) else {
        return request.respond(Response::from_string("not found\n").with_status_code(404));
    };
    let Ok(bytes) = std::fs::read(&file) else {
        return request.respond(Response::from_string("not found\n").with_status_code(404));
    };
    let mut response = Response::from_data(bytes).with_chunked_threshold(usize::MAX);
    // A rebuilt page must show at the next reload; the files that matter carry a hash in their name anyway.
    for (name, value) in [("Content-Type", media_type(&file)), ("Cache-Control", "no-cache")] {
        if let Ok(header) = Header::from_bytes(name, value) {
            response.add_header(header);
        }
    }
    request.respond(response)
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
    use std::io::{Read, Write};
    use std::net::TcpStream;

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
}
