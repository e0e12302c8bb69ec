//! A PDF as others read it: its words and what is known of it by poppler's programs, which only a build server has to have.

use std::{
    env, fs,
    path::PathBuf,
    process::{Command, Output},
};

/// Whether poppler's programs are here.
pub fn has_poppler() -> bool {
    let is_there = Command::new("pdftotext").arg("-v").output().is_ok();
    if !is_there {
        assert!(env::var_os("CI").is_none(), "poppler-utils is needed on a build server");
        println!("not run: poppler-utils is not installed");
    }
    is_there
}

/// Runs one of poppler's programs on a PDF.
fn run(program: &str, pdf: &[u8], before: &[&str], after: &[&str]) -> Output {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("paper.pdf");
    fs::write(&file, pdf).expect("a file");
    let done = Command::new(program).args(before).arg(&file).args(after).output().expect("poppler");
    assert!(done.status.success() && done.stderr.is_empty(), "{}", String::from_utf8_lossy(&done.stderr));
    done
}

/// Its lines, with one space for several, and without empty ones.
pub fn lines(pdf: &[u8]) -> Vec<String> {
    let text = String::from_utf8(run("pdftotext", pdf, &["-layout", "-nopgbrk"], &["-"]).stdout).expect("UTF-8");
    text.lines().map(words_of).filter(|line| !line.is_empty()).collect()
}

/// Words with one plain space between them.
pub fn words_of(line: &str) -> String {
    line.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What is known of it: `Title`, `Pages`, `Page size`.
pub fn known(pdf: &[u8], what: &str) -> String {
    let all = String::from_utf8(run("pdfinfo", pdf, &[], &[]).stdout).expect("UTF-8");
    let found = all.lines().find_map(|line| line.strip_prefix(what)?.strip_prefix(':'));
    found.unwrap_or_else(|| panic!("no {what} in {all}")).trim().to_owned()
}

/// The language that it says it is in (ISO 32000-1, section 14.9.2.2: `Lang` of the catalogue).
pub fn language(pdf: &[u8]) -> String {
    let text = String::from_utf8_lossy(pdf);
    let after = text.split_once("/Lang").expect("no language is set").1.trim_start();
    let code = after.strip_prefix('(').and_then(|rest| rest.split_once(')'));
    code.unwrap_or_else(|| panic!("/Lang{}", &after[..20])).0.to_owned()
}

/// A line for each typeface in it.
pub fn typefaces(pdf: &[u8]) -> Vec<String> {
    let all = String::from_utf8(run("pdffonts", pdf, &[], &[]).stdout).expect("UTF-8");
    all.lines().skip(2).map(words_of).collect()
}

/// What a scanner reads on a page, drawn as a printer does it, at 200 dots to the inch.
pub fn scanned(pdf: &[u8], page: u32) -> Vec<String> {
    let page = page.to_string();
    let grey = run("pdftoppm", pdf, &["-r", "200", "-gray", "-png", "-f", &page, "-l", &page], &[]).stdout;
    let picture = image::load_from_memory(&grey).expect("a picture").into_luma8();
    let pixel = |x: usize, y: usize| picture.get_pixel(x as u32, y as u32).0[0];
    codes_in(picture.width() as usize, picture.height() as usize, pixel)
}

/// What another library reads in a grey picture.
pub fn codes_in(width: usize, height: usize, pixel: impl FnMut(usize, usize) -> u8) -> Vec<String> {
    let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(width, height, pixel);
    prepared.detect_grids().iter().map(|grid| grid.decode().expect("a code that can be read").1).collect()
}

/// Keeps a picture of each page in a folder, if one is named.
pub fn keep_picture(pdf: &[u8], name: &str) {
    let Some(folder) = env::var_os("CHATELAINE_SHOTS").map(PathBuf::from) else { return };
    fs::create_dir_all(&folder).expect("a folder");
    let to = folder.join(name);
    run("pdftoppm", pdf, &["-r", "90", "-png"], &[to.to_str().expect("a name")]);
}

/// A page in shades of grey, drawn with so many dots to the inch.
pub fn drawn(pdf: &[u8], page: usize, dots: u32) -> image::GrayImage {
    let (page, dots) = (page.to_string(), dots.to_string());
    let grey = run("pdftoppm", pdf, &["-r", &dots, "-gray", "-png", "-f", &page, "-l", &page], &[]).stdout;
    image::load_from_memory(&grey).expect("a picture").into_luma8()
}

/// The words of a page that stand upright or on their heads, each with the box around it in points: left, top, right, bottom.
pub fn boxes(pdf: &[u8], page: usize) -> Vec<(String, [f64; 4])> {
    let page = page.to_string();
    let text = run("pdftotext", pdf, &["-bbox", "-f", &page, "-l", &page], &["-"]).stdout;
    let text = String::from_utf8(text).expect("UTF-8");
    let word = |line: &str| {
        let (at, rest) = line.trim().strip_prefix("<word ")?.split_once('>')?;
        let sides: Vec<f64> = at.split('"').filter_map(|part| part.parse().ok()).collect();
        Some((rest.strip_suffix("</word>")?.to_owned(), sides.try_into().ok()?))
    };
    text.lines().filter_map(word).collect()
}
