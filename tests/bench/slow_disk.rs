//! A disk whose flushes take as long as one likes: SQLite's own storage layer with a wait before every sync.
//! Source: SQLite, "The SQLite OS Interface or VFS", <https://sqlite.org/vfs.html>.

use std::{
    ffi::{c_char, c_int},
    ptr,
    sync::{
        OnceLock,
        atomic::{AtomicU64, Ordering},
    },
    thread,
    time::Duration,
};

use rusqlite::ffi::{SQLITE_OK, sqlite3_file, sqlite3_io_methods, sqlite3_vfs, sqlite3_vfs_find, sqlite3_vfs_register};

type Sync = unsafe extern "C" fn(*mut sqlite3_file, c_int) -> c_int;

static FLUSH_MICROSECONDS: AtomicU64 = AtomicU64::new(0);
static OWN_SYNC: OnceLock<Sync> = OnceLock::new();
static WAITING: OnceLock<usize> = OnceLock::new();

/// From now on a flush takes at least this long.
pub fn flush_takes(time: Duration) {
    WAITING.get_or_init(register);
    FLUSH_MICROSECONDS.store(time.as_micros() as u64, Ordering::Relaxed);
}

/// Makes the waiting layer the one by which SQLite opens every file; gives its address, which stays for good.
fn register() -> usize {
    // SAFETY: the system's layer lives as long as the process; the copy is leaked, and all but `xOpen` is the original's.
    unsafe {
        let own = sqlite3_vfs_find(ptr::null());
        let waiting = Box::leak(Box::new(*own));
        waiting.zName = c"waiting".as_ptr();
        waiting.pNext = ptr::null_mut();
        waiting.xOpen = Some(open);
        assert_eq!(sqlite3_vfs_register(waiting, 1), SQLITE_OK);
        ptr::from_mut(waiting) as usize
    }
}

unsafe extern "C" fn open(
    _: *mut sqlite3_vfs,
    name: *const c_char,
    file: *mut sqlite3_file,
    flags: c_int,
    found: *mut c_int,
) -> c_int {
    // SAFETY: the arguments are SQLite's own; an open file has methods, which are copied and leaked.
    unsafe {
        let own = sqlite3_vfs_find(c"unix".as_ptr());
        let Some(own_open) = (*own).xOpen else { return rusqlite::ffi::SQLITE_CANTOPEN };
        let done = own_open(own, name, file, flags, found);
        if done == SQLITE_OK && !(*file).pMethods.is_null() {
            let mut methods: sqlite3_io_methods = *(*file).pMethods;
            if let Some(sync) = methods.xSync {
                OWN_SYNC.get_or_init(|| sync);
                methods.xSync = Some(wait_and_sync);
                (*file).pMethods = Box::leak(Box::new(methods));
            }
        }
        done
    }
}

unsafe extern "C" fn wait_and_sync(file: *mut sqlite3_file, flags: c_int) -> c_int {
    match FLUSH_MICROSECONDS.load(Ordering::Relaxed) {
        0 => {}
        microseconds => thread::sleep(Duration::from_micros(microseconds)),
    }
    match OWN_SYNC.get() {
        // SAFETY: it is the method of this very file.
        Some(sync) => unsafe { sync(file, flags) },
        None => rusqlite::ffi::SQLITE_IOERR,
    }
}
