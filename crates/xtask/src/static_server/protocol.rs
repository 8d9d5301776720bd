//! As much of HTTP/1.1 (RFC 9110 and 9112) as giving files takes: what is asked for, which file that is, and the answer.

use percent_encoding::percent_decode_str;
use std::io::{self, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};

/// Fields that the head of a request may have.
const FIELD_LIMIT: usize = 100;

/// What is wanted.
pub(super) struct Asked {
    /// Bytes of the request.
    pub(super) length: usize,
    /// Path below the server, percent-encoded.
    target: String,
    /// Only files are given, nothing is taken.
    allowed: bool,
    pub(super) head_only: bool,
    /// The other side wants nothing after this.
    pub(super) last: bool,
}

impl Asked {
    /// Nothing as long as the head has not come whole.
    pub(super) fn read(got: &[u8]) -> Result<Option<Self>, httparse::Error> {
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
pub(super) struct Answer {
    status: &'static str,
    media_type: &'static str,
    body: Vec<u8>,
    /// Nothing is answered after this.
    pub(super) last: bool,
}

impl Answer {
    pub(super) fn to(asked: &Asked, folder: &Path, prefix: &str) -> Self {
        if !asked.allowed {
            // What else the request carries is not read.
            return Self::refusal("405 Method Not Allowed");
        }
        let file = file_for(&asked.target, folder, prefix);
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

    pub(super) fn refusal(status: &'static str) -> Self {
        Self {
            status,
            media_type: "text/plain; charset=utf-8",
            body: format!("{status}\n").into_bytes(),
            last: true,
        }
    }

    pub(super) fn write(&self, stream: &mut TcpStream, head_only: bool) -> io::Result<()> {
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
