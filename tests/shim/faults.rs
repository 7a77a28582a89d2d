//! Stands between a program and its files, preloaded by the dynamic linker: counts the calls that touch one folder, and
//! lets the n-th of a sort fail, come out short, or be the last thing that the program does.
//!
//! Compiled by the fault tests themselves with `rustc --crate-type cdylib`, so that nothing of it is in any program.
//! `FAULT_FOLDER` names the folder, `FAULT_SORT` the sort of call (`open`, `read`, `write`, `sync`, `name`, `any`),
//! `FAULT_AT` its number from one, `FAULT_WHAT` an error number, `short` or `kill`; `FAULT_COUNT` a file that is given the
//! number of calls of the sort when the program ends. `CLOCK_SHIFT` moves the clock by so many seconds.

use std::ffi::{CStr, c_char, c_int, c_long, c_uint, c_void};
use std::sync::atomic::{AtomicBool, AtomicI64, AtomicU64, Ordering::SeqCst};

unsafe extern "C" {
    fn dlsym(handle: *mut c_void, name: *const c_char) -> *mut c_void;
    fn getenv(name: *const c_char) -> *const c_char;
    fn getpid() -> c_int;
    fn kill(process: c_int, signal: c_int) -> c_int;
    fn __errno_location() -> *mut c_int;
}

const NEXT: *mut c_void = usize::MAX as *mut c_void;
const KILL: c_int = 9;
const MANY: usize = 4096;

static CALLS: AtomicU64 = AtomicU64::new(0);
/// Which descriptors are of files in the folder.
static OURS: [AtomicBool; MANY] = [const { AtomicBool::new(false) }; MANY];
static SHIFT: AtomicI64 = AtomicI64::new(i64::MIN);

fn variable(name: &CStr) -> Option<&'static str> {
    // SAFETY: the environment is not changed by the programs that this is loaded into.
    unsafe {
        let text = getenv(name.as_ptr());
        if text.is_null() { None } else { CStr::from_ptr(text).to_str().ok() }
    }
}

fn next(name: &CStr) -> *mut c_void {
    // SAFETY: asks the linker for the function that this one hides.
    unsafe { dlsym(NEXT, name.as_ptr()) }
}

/// What becomes of a call.
enum Fate {
    Goes,
    Fails,
    Short,
}

fn fate(sort: &str) -> Fate {
    let Some(asked) = variable(c"FAULT_SORT") else { return Fate::Goes };
    if asked != sort && asked != "any" {
        return Fate::Goes;
    }
    let call = CALLS.fetch_add(1, SeqCst) + 1;
    if variable(c"FAULT_AT").and_then(|at| at.parse().ok()) != Some(call) {
        return Fate::Goes;
    }
    match variable(c"FAULT_WHAT") {
        Some("kill") => {
            // SAFETY: ends this process at once, as a power cut of the program alone does.
            unsafe { kill(getpid(), KILL) };
            Fate::Fails
        }
        Some("short") => Fate::Short,
        Some(error) => {
            // SAFETY: the error number is the calling thread's own.
            unsafe { *__errno_location() = error.parse().unwrap_or(5) };
            Fate::Fails
        }
        None => Fate::Goes,
    }
}

fn is_ours(path: *const c_char) -> bool {
    // SAFETY: a caller of the C library hands over a text that ends.
    let path = unsafe { CStr::from_ptr(path) };
    variable(c"FAULT_FOLDER").is_some_and(|folder| path.to_bytes().starts_with(folder.as_bytes()))
}

fn slot(descriptor: c_int) -> Option<&'static AtomicBool> {
    usize::try_from(descriptor).ok().and_then(|at| OURS.get(at))
}

fn has(descriptor: c_int) -> bool {
    slot(descriptor).is_some_and(|ours| ours.load(SeqCst))
}

macro_rules! opens {
    ($($name:ident),+) => {$(
        /// # Safety
        /// As the function of that name.
        #[unsafe(no_mangle)]
        pub unsafe extern "C" fn $name(path: *const c_char, flags: c_int, mode: c_uint) -> c_int {
            let ours = is_ours(path);
            if ours && !matches!(fate("open"), Fate::Goes) {
                return -1;
            }
            let name = concat!(stringify!($name), "\0");
            // SAFETY: the function that this one hides has this shape; the mode is passed where a C caller puts it.
            unsafe {
                let real: unsafe extern "C" fn(*const c_char, c_int, c_uint) -> c_int =
                    std::mem::transmute(next(CStr::from_ptr(name.as_ptr().cast())));
                let descriptor = real(path, flags, mode);
                if let Some(slot) = slot(descriptor) {
                    slot.store(ours, SeqCst);
                }
                descriptor
            }
        }
    )+};
}
opens!(open, open64);

macro_rules! hides {
    ($($sort:literal $name:ident ($first:ident: $of:ty $(, $arg:ident: $type:ty)*) -> $back:ty, ours $ours:expr, fails $fails:expr;)+) => {$(
        /// # Safety
        /// As the function of that name.
        #[unsafe(no_mangle)]
        pub unsafe extern "C" fn $name($first: $of $(, $arg: $type)*) -> $back {
            if $ours && !matches!(fate($sort), Fate::Goes) {
                return $fails;
            }
            let name = concat!(stringify!($name), "\0");
            // SAFETY: the function that this one hides has this shape.
            unsafe {
                let real: unsafe extern "C" fn($of $(, $type)*) -> $back =
                    std::mem::transmute(next(CStr::from_ptr(name.as_ptr().cast())));
                real($first $(, $arg)*)
            }
        }
    )+};
}
hides! {
    "sync" fsync(file: c_int) -> c_int, ours has(file), fails -1;
    "sync" fdatasync(file: c_int) -> c_int, ours has(file), fails -1;
    "write" ftruncate(file: c_int, size: c_long) -> c_int, ours has(file), fails -1;
    "write" ftruncate64(file: c_int, size: c_long) -> c_int, ours has(file), fails -1;
    "name" rename(from: *const c_char, to: *const c_char) -> c_int, ours is_ours(to), fails -1;
    "name" linkat(a: c_int, from: *const c_char, b: c_int, to: *const c_char, flags: c_int) -> c_int, ours is_ours(to), fails -1;
    "name" unlink(path: *const c_char) -> c_int, ours is_ours(path), fails -1;
}

macro_rules! moves {
    ($($sort:literal $name:ident ($file:ident, $bytes:ident: $pointer:ty, $size:ident $(, $arg:ident: $type:ty)?);)+) => {$(
        /// # Safety
        /// As the function of that name.
        #[unsafe(no_mangle)]
        pub unsafe extern "C" fn $name($file: c_int, $bytes: $pointer, $size: usize $(, $arg: $type)?) -> isize {
            let size = match if has($file) { fate($sort) } else { Fate::Goes } {
                Fate::Goes => $size,
                Fate::Short => $size / 2,
                Fate::Fails => return -1,
            };
            let name = concat!(stringify!($name), "\0");
            // SAFETY: the function that this one hides has this shape.
            unsafe {
                let real: unsafe extern "C" fn(c_int, $pointer, usize $(, $type)?) -> isize =
                    std::mem::transmute(next(CStr::from_ptr(name.as_ptr().cast())));
                real($file, $bytes, size $(, $arg)?)
            }
        }
    )+};
}
moves! {
    "read" read(file, bytes: *mut c_void, size);
    "read" pread(file, bytes: *mut c_void, size, at: c_long);
    "read" pread64(file, bytes: *mut c_void, size, at: c_long);
    "write" write(file, bytes: *const c_void, size);
    "write" pwrite(file, bytes: *const c_void, size, at: c_long);
    "write" pwrite64(file, bytes: *const c_void, size, at: c_long);
}

/// # Safety
/// As the function of that name.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn close(file: c_int) -> c_int {
    if let Some(slot) = slot(file) {
        slot.store(false, SeqCst);
    }
    // SAFETY: the function that this one hides has this shape.
    unsafe {
        let real: unsafe extern "C" fn(c_int) -> c_int = std::mem::transmute(next(c"close"));
        real(file)
    }
}

/// # Safety
/// As the function of that name.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn clock_gettime(clock: c_int, time: *mut [i64; 2]) -> c_int {
    if SHIFT.load(SeqCst) == i64::MIN {
        let shift = variable(c"CLOCK_SHIFT").and_then(|text| text.parse().ok());
        SHIFT.store(shift.unwrap_or(0), SeqCst);
    }
    // SAFETY: the function that this one hides has this shape, and fills what the caller hands over.
    unsafe {
        let real: unsafe extern "C" fn(c_int, *mut [i64; 2]) -> c_int = std::mem::transmute(next(c"clock_gettime"));
        let back = real(clock, time);
        // The clock of the day alone, not those that measure how long something takes.
        if back == 0 && clock == 0 {
            (*time)[0] += SHIFT.load(SeqCst);
        }
        back
    }
}

extern "C" fn tell() {
    let (Some(path), Some(_)) = (variable(c"FAULT_COUNT"), variable(c"FAULT_SORT")) else { return };
    let calls = CALLS.load(SeqCst);
    let _ = std::fs::write(path, calls.to_string());
}

#[used]
#[unsafe(link_section = ".fini_array")]
static TELL: extern "C" fn() = tell;
