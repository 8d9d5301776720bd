use super::StaticServer;
use std::io::{Read as _, Write as _};
use std::net::{Shutdown, TcpStream};
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
