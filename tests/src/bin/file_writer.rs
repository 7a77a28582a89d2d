//! Writes one file of the user's over the one that is there, as an export, an order or a drawing does.

use lapwright::store::{Overwrite, write_file};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let path = std::env::args_os().nth(1).ok_or("name a file")?;
    Ok(write_file(path, b"new", Overwrite::PlainFiles)?)
}
