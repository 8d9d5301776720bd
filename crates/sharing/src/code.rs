//! A link as a printed code (QR code, ISO/IEC 18004) that a telephone reads from paper.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write;

/// Longest link that is printed as a code, in characters: what a symbol of 137 by 137 modules (version 30) holds at error
/// correction level M. Printed 60 mm wide its modules are 0.44 mm, which telephones still read from paper (common practice).
pub const LONGEST_CODE: usize = 1370;

/// Modules of clear paper around a symbol, as ISO/IEC 18004 asks for.
const QUIET: usize = 4;

/// A printed code.
#[derive(Clone)]
pub struct Code(QrCode);

impl Code {
    /// The code of a link, or nothing where the link is longer than [`LONGEST_CODE`] bytes: then it is passed on as a link
    /// or as a page file.
    #[must_use]
    pub fn of(link: &str) -> Option<Self> {
        if link.len() > LONGEST_CODE {
            return None;
        }
        let segments = QrSegment::make_segments(link);
        let least = Version::MIN;
        QrCode::encode_segments_advanced(&segments, QrCodeEcc::Medium, least, Version::new(30), None, true)
            .ok()
            .map(Self)
    }

    /// Modules a side, without the clear paper around.
    #[must_use]
    pub fn side(&self) -> usize {
        usize::try_from(self.0.size()).unwrap_or(0)
    }

    /// Whether a module is dark; outside the symbol none is.
    #[must_use]
    pub fn dark(&self, x: usize, y: usize) -> bool {
        match (i32::try_from(x), i32::try_from(y)) {
            (Ok(x), Ok(y)) => self.0.get_module(x, y),
            _ => false,
        }
    }

    /// Modules a side with the clear paper around: the side of the box that [`Code::path`] is drawn in.
    #[must_use]
    pub fn box_side(&self) -> usize {
        self.side() + 2 * QUIET
    }

    /// The dark modules as the path of an SVG, one unit a module.
    #[must_use]
    pub fn path(&self) -> String {
        let mut path = String::new();
        for y in 0..self.side() {
            let mut x = 0;
            while x < self.side() {
                let from = x;
                while self.dark(x, y) {
                    x += 1;
                }
                if x > from {
                    let _ = write!(
                        path,
                        "M{} {}h{}v1h-{}z",
                        from + QUIET,
                        y + QUIET,
                        x - from,
                        x - from
                    );
                }
                x += 1;
            }
        }
        path
    }

    /// The code as a whole SVG drawing, 60 mm wide, dark on white paper whatever the page's colours.
    #[must_use]
    pub fn svg(&self) -> String {
        let side = self.box_side();
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" width=\"60mm\" height=\"60mm\" shape-rendering=\"crispEdges\"><rect width=\"{side}\" height=\"{side}\" fill=\"#fff\"/><path d=\"{}\" fill=\"#000\"/></svg>\n",
            self.path()
        )
    }
}
