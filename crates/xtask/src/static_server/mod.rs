//! Serves one folder on the loopback interface, under any path prefix, with the media types that a page needs.
//!
//! Invariant: only files below the folder are ever answered, and only to this machine.

mod protocol;
#[cfg(test)]
mod tests;

use protocol::{Answer, Asked};
use std::collections::BTreeMap;
use std::io::{self, Read};
use std::net::{Ipv4Addr, Shutdown, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;

/// Bytes that the head of a request may have. Browsers send well below a tenth of it.
const HEAD_LIMIT: usize = 64 * 1024;

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
                let answer = Answer::to(&asked, &shared.folder, &shared.prefix);
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
