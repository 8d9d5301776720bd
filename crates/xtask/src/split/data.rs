//! The data of the parts: what only a later one leads to moves, and texts between marks.

use super::module::Module;
use super::{PARTS, Plan, Standing};
use wasm_encoder::{ConstExpr, DataSection};

/// Address and bytes.
pub(crate) type Run = (u32, Vec<u8>);

/// Up to so many noughts in a row are written rather than left out: a run of its own costs as much.
const NOUGHTS: u32 = 24;

/// The data of each part.
pub(crate) fn cut(
    module: &Module<'_>,
    standing: &Standing,
    plan: &Plan<'_>,
) -> Result<[Vec<Run>; PARTS], String> {
    let going = going(module, standing, plan)?;
    let mut parts: [Vec<Run>; PARTS] = Default::default();
    for &(address, bytes) in &module.data {
        let end = address + bytes.len() as u32;
        let within = |from: u32, to: u32| &bytes[(from - address) as usize..(to - address) as usize];
        let mut at = address;
        let first = going.partition_point(|it| it.1 <= address);
        for &(from, to, part) in going[first..].iter().take_while(|it| it.0 < end) {
            let (from, to) = (from.max(at), to.min(end));
            if from < to {
                put(&mut parts[0], at, within(at, from), NOUGHTS);
                put(&mut parts[part], from, within(from, to), 0);
                at = to;
            }
        }
        put(&mut parts[0], at, within(at, end), NOUGHTS);
    }
    Ok(parts)
}

/// Adds bytes at an address, to the last run where no more than so many noughts lie between.
fn put(runs: &mut Vec<Run>, address: u32, bytes: &[u8], noughts: u32) {
    if bytes.is_empty() {
        return;
    }
    match runs.last_mut() {
        Some((from, run)) if address - *from - run.len() as u32 <= noughts => {
            run.resize((address - *from) as usize, 0);
            run.extend_from_slice(bytes);
        }
        _ => runs.push((address, bytes.to_vec())),
    }
}

/// What does not stay: where it begins and ends, and the part that it goes into.
fn going(
    module: &Module<'_>,
    standing: &Standing,
    plan: &Plan<'_>,
) -> Result<Vec<(u32, u32, usize)>, String> {
    let mut going = Vec::new();
    // Without knowing what leads where, nothing but texts goes.
    if let Some(objects) = &module.objects {
        let mut part_of = vec![PARTS - 1; objects.pieces.len()];
        for part in (0..PARTS - 1).rev() {
            let functions = module.bodies.iter().zip(&standing.part[module.outer..]);
            let functions = functions.filter(|it| *it.1 <= part).map(|it| it.0);
            let reached = objects.reached(module, functions)?;
            for (own, _) in part_of.iter_mut().zip(reached).filter(|it| it.1) {
                *own = part;
            }
        }
        let pieces = objects.pieces.iter().zip(part_of);
        going.extend(
            pieces
                .filter(|it| it.1 > 0)
                .map(|(piece, part)| (piece.0, piece.1, part)),
        );
    }
    // A text follows with what reads it, if not later.
    let reader = module
        .names
        .iter()
        .find(|(_, name)| (plan.reads_texts)(name))
        .map_or(0, |(function, _)| standing.part[*function as usize]);
    if reader > 0 {
        for (from, to) in texts(module, plan.marks.map(str::as_bytes)) {
            let goes_later = |it: &(u32, u32, usize)| it.0 <= from && to <= it.1 && it.2 >= reader;
            if !going.iter().any(goes_later) {
                going.retain(|it| it.1 <= from || to <= it.0);
                going.push((from, to, reader));
            }
        }
    }
    going.sort_unstable();
    Ok(going)
}

/// Where texts between marks lie, with their marks.
fn texts(module: &Module<'_>, [begin, end]: [&[u8]; 2]) -> Vec<(u32, u32)> {
    let mut texts = Vec::new();
    for &(address, bytes) in &module.data {
        let mut at = 0;
        while let Some(from) = find(&bytes[at..], begin).map(|it| at + it) {
            let Some(to) = find(&bytes[from..], end).map(|it| from + it + end.len()) else {
                break;
            };
            let text = (address + from as u32, address + to as u32);
            // The marks stand alone as well, for who takes them off: what lies between those is no text.
            let is_one = module.objects.as_ref().is_none_or(|it| it.holds(text));
            if is_one {
                texts.push(text);
            }
            at = if is_one { to } else { from + begin.len() };
        }
    }
    texts
}

fn find(bytes: &[u8], what: &[u8]) -> Option<usize> {
    bytes.windows(what.len()).position(|it| it == what)
}

pub(crate) fn section(runs: &[Run]) -> DataSection {
    let mut section = DataSection::new();
    for (address, bytes) in runs {
        section.active(
            0,
            &ConstExpr::i32_const(address.cast_signed()),
            bytes.iter().copied(),
        );
    }
    section
}
