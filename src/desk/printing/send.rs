//! Bytes to a printer, within a time: in the network, into a device file, or into a file of its own.

use std::{
    fs,
    io::{self, ErrorKind, Read, Write},
    net::{Shutdown, SocketAddr, TcpStream},
    path::Path,
    thread,
    time::{Duration, Instant},
};

use crate::{catalog::Printer, disk::durable::NewFile};

/// So long a printer in the network may take to answer at all.
const TO_ANSWER: Duration = Duration::from_secs(3);
/// So long it may take for all of a print.
const FOR_ALL: Duration = Duration::from_secs(10);
/// So often a device that takes nothing just now is asked again.
const ASKED_AGAIN: Duration = Duration::from_millis(20);
/// So many files of one name there may be.
const MOST_FILES: u32 = 1000;

/// Why something is not printed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::desk) enum Fault {
    /// Nobody answers where the printer should be.
    Silent,
    /// It takes nothing more.
    Jammed,
    /// It ended the line before all was sent.
    BrokeOff,
    /// There is no room for it.
    Full,
    /// Its device or folder is not there.
    Missing,
    /// It has taken everything and does not say that it is done.
    Unsure,
    /// Too much waits already.
    Busy,
    /// Something else, in the system's words.
    Other(String),
}

/// Sends a print; `name` is for a printer that is a folder.
pub(super) fn send(printer: &Printer, name: &str, bytes: &[u8]) -> Result<(), Fault> {
    match printer {
        Printer::Network(at) => to_network(*at, bytes, Instant::now() + FOR_ALL),
        Printer::Device(path) => to_device(path, bytes, Instant::now() + FOR_ALL),
        Printer::Folder(path) => to_folder(path, name, bytes),
    }
}

/// How much of the time is left; none of it is a jam.
fn left(until: Instant) -> Result<Duration, Fault> {
    until.checked_duration_since(Instant::now()).filter(|left| !left.is_zero()).ok_or(Fault::Jammed)
}

fn is_late(error: &io::Error) -> bool {
    matches!(error.kind(), ErrorKind::WouldBlock | ErrorKind::TimedOut)
}

fn to_network(at: SocketAddr, bytes: &[u8], until: Instant) -> Result<(), Fault> {
    let mut line = TcpStream::connect_timeout(&at, TO_ANSWER).map_err(|_| Fault::Silent)?;
    let other = |error: io::Error| Fault::Other(error.to_string());
    let mut rest = bytes;
    while !rest.is_empty() {
        line.set_write_timeout(Some(left(until)?)).map_err(other)?;
        match line.write(rest) {
            Ok(0) => return Err(Fault::BrokeOff),
            Ok(taken) => rest = &rest[taken..],
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) if is_late(&error) => return Err(Fault::Jammed),
            Err(_) => return Err(Fault::BrokeOff),
        }
    }
    // A printer that has ended the line before it was told that this is all has not read all of it.
    line.set_nonblocking(true).map_err(other)?;
    if matches!(line.read(&mut [0; 64]), Ok(0)) {
        return Err(Fault::BrokeOff);
    }
    line.set_nonblocking(false).map_err(other)?;
    line.shutdown(Shutdown::Write).map_err(|_| Fault::BrokeOff)?;
    is_taken(&mut line, until)
}

/// What was sent may lie in the network or in the printer's memory. It ends the line when it has taken all of it; until then
/// it may tell how it is, which says nothing about this print.
fn is_taken(line: &mut TcpStream, until: Instant) -> Result<(), Fault> {
    loop {
        let left = left(until).map_err(|_| Fault::Unsure)?;
        line.set_read_timeout(Some(left)).map_err(|error| Fault::Other(error.to_string()))?;
        match line.read(&mut [0; 64]) {
            Ok(0) if matches!(line.take_error(), Ok(None)) => return Ok(()),
            Ok(0) => return Err(Fault::BrokeOff),
            Ok(_) => {}
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) if is_late(&error) => return Err(Fault::Unsure),
            Err(_) => return Err(Fault::BrokeOff),
        }
    }
}

fn to_device(path: &Path, bytes: &[u8], until: Instant) -> Result<(), Fault> {
    let mut device = open_device(path).map_err(|error| not_there(&error))?;
    let sent = fill(&mut device, bytes, until);
    // A serial line may keep whoever closes it until it has sent what it took; the next print need not wait for that.
    let _ = thread::Builder::new().name("closing a printer".into()).spawn(move || drop(device));
    sent
}

/// Opened so that no write waits: a device that takes nothing says so.
fn open_device(path: &Path) -> io::Result<fs::File> {
    let mut options = fs::OpenOptions::new();
    options.write(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::custom_flags(&mut options, libc::O_NONBLOCK | libc::O_NOCTTY);
    options.open(path)
}

fn fill(device: &mut fs::File, bytes: &[u8], until: Instant) -> Result<(), Fault> {
    let mut rest = bytes;
    while !rest.is_empty() {
        match device.write(rest) {
            Ok(0) => return Err(Fault::BrokeOff),
            Ok(taken) => rest = &rest[taken..],
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) if is_late(&error) => {
                left(until)?;
                thread::sleep(ASKED_AGAIN);
            }
            Err(error) if error.kind() == ErrorKind::StorageFull => return Err(Fault::Full),
            Err(_) => return Err(Fault::BrokeOff),
        }
    }
    Ok(())
}

fn not_there(error: &io::Error) -> Fault {
    #[cfg(unix)]
    if matches!(error.raw_os_error(), Some(libc::ENXIO | libc::ENODEV)) {
        return Fault::Missing;
    }
    match error.kind() {
        ErrorKind::NotFound => Fault::Missing,
        ErrorKind::StorageFull => Fault::Full,
        _ => Fault::Other(error.to_string()),
    }
}

/// A new file each time, whole or not at all; another program takes them from there.
fn to_folder(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), Fault> {
    for number in 1..MOST_FILES {
        let number = if number == 1 { String::new() } else { format!("-{number}") };
        let written = NewFile::begin(&folder.join(format!("{name}{number}.bin"))).and_then(|file| {
            fs::write(file.unfinished(), bytes)?;
            file.keep()
        });
        match written {
            Ok(()) => return Ok(()),
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {}
            Err(error) => return Err(not_there(&error)),
        }
    }
    Err(Fault::Busy)
}

#[cfg(test)]
mod tests {
    use std::{net::TcpListener, sync::mpsc};

    use super::*;

    fn soon() -> Instant {
        Instant::now() + Duration::from_millis(400)
    }

    /// What a printer that does `act` makes of a print.
    fn fake(bytes: &[u8], act: impl FnOnce(TcpStream) + Send + 'static) -> Result<(), Fault> {
        let printer = TcpListener::bind("127.0.0.1:0").unwrap();
        let at = printer.local_addr().unwrap();
        let (tell, is_there) = mpsc::channel();
        let printing = thread::spawn(move || {
            let (line, _) = printer.accept().unwrap();
            tell.send(()).unwrap();
            act(line);
        });
        let sent = to_network(at, bytes, soon());
        is_there.recv().unwrap();
        printing.join().unwrap();
        sent
    }

    #[test]
    fn a_printer_that_reads_to_the_end_has_printed() {
        let (tell, told) = mpsc::channel();
        let sent = fake(b"a receipt", move |mut line| {
            line.write_all(&[0x16]).unwrap();
            let mut all = Vec::new();
            line.read_to_end(&mut all).unwrap();
            tell.send(all).unwrap();
        });
        assert_eq!((sent, told.recv().unwrap()), (Ok(()), b"a receipt".to_vec()));
    }

    #[test]
    fn what_comes_in_the_way_is_told_apart() {
        let wait = || thread::sleep(Duration::from_millis(700));
        let long = vec![b'x'; 64 << 20];
        assert_eq!(fake(&long, move |_line| wait()), Err(Fault::Jammed), "it takes nothing");
        assert_eq!(fake(b"a receipt", move |_line| wait()), Err(Fault::Unsure), "nobody knows what became of it");
        let hangs_up = fake(&long, |mut line| {
            let _ = line.read(&mut [0; 1000]);
        });
        assert_eq!(hangs_up, Err(Fault::BrokeOff));
        let nobody = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap();
        assert_eq!(to_network(nobody, b"a receipt", soon()), Err(Fault::Silent));
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_device_is_full_gone_or_jammed() {
        assert_eq!(to_device(Path::new("/dev/full"), b"a receipt", soon()), Err(Fault::Full));
        assert_eq!(to_device(Path::new("/dev/null"), b"a receipt", soon()), Ok(()));
        let folder = tempfile::tempdir().unwrap();
        assert_eq!(to_device(&folder.path().join("lp0"), b"a receipt", soon()), Err(Fault::Missing));
        assert!(matches!(to_device(folder.path(), b"a receipt", soon()), Err(Fault::Other(_))));
        // A pipe without a reader is a device that nobody has switched on; with one that does not read, it jams.
        let pipe = folder.path().join("pipe");
        assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
        assert_eq!(to_device(&pipe, b"a receipt", soon()), Err(Fault::Missing));
        let reader = fs::OpenOptions::new().read(true).write(true).open(&pipe).unwrap();
        let began = Instant::now();
        assert_eq!(to_device(&pipe, &vec![b'x'; 1 << 20], soon()), Err(Fault::Jammed));
        assert!(began.elapsed() < Duration::from_secs(3), "it holds nothing up");
        drop(reader);
    }

    #[test]
    fn every_print_into_a_folder_is_a_file_of_its_own() {
        let folder = tempfile::tempdir().unwrap();
        for bytes in [b"first", b"other"] {
            assert_eq!(to_folder(folder.path(), "receipt-3-042-6", bytes), Ok(()));
        }
        let read = |name| fs::read(folder.path().join(name)).unwrap();
        assert_eq!(read("receipt-3-042-6.bin"), b"first");
        assert_eq!(read("receipt-3-042-6-2.bin"), b"other");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2, "nothing half written");
        assert_eq!(to_folder(&folder.path().join("gone"), "receipt", b"x"), Err(Fault::Missing));
    }
}
