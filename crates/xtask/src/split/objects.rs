//! The pieces of data of a module, and which of them a number in it can lead to.
//!
//! The linker leaves in the module where each piece lies, and of every place that takes hold of one which piece it means and
//! how far from its beginning. What optimises the module afterwards loses the places, but neither pieces nor numbers: so
//! both are noted first, in a section of our own.

use super::linked::{Linked, Symbol, unlinked};
use super::module::Module;
use std::borrow::Cow;
use std::collections::BTreeSet;
use wasm_encoder::CustomSection;
use wasmparser::Operator;

/// Name of our own section.
const SECTION: &str = "loomwright.objects";

/// Pieces of data, and the numbers that lead to them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Objects {
    /// Address of the beginning and of the end of each, in order, none over another.
    pub(crate) pieces: Vec<(u32, u32)>,
    /// Numbers that lead to a piece without lying in it: before its beginning, or from its end on. With the piece.
    outside: BTreeSet<(u32, u32)>,
}

impl Objects {
    /// The pieces that the linker told of; nothing where it was not asked to.
    pub(crate) fn of_linker(module: &[u8]) -> Result<Option<Self>, String> {
        Ok(Linked::read(module)?.map(|linked| Self::of(&linked)))
    }

    /// The pieces that a linker told of.
    pub(crate) fn of(linked: &Linked) -> Self {
        let mut this = Self::default();
        let symbols = linked.symbols.iter();
        let mut all: Vec<(u32, u32)> = symbols
            .filter_map(|it| match it {
                Symbol::Data(begin, end) => Some((*begin, *end)),
                _ => None,
            })
            .collect();
        all.sort_unstable();
        for (begin, end) in all {
            match this.pieces.last_mut() {
                // One that lies over another is of a piece with it.
                Some(last) if begin < last.1 => last.1 = last.1.max(end),
                _ => this.pieces.push((begin, end)),
            }
        }
        for place in &linked.places {
            let (Symbol::Data(begin, _), Some(addend)) = (place.to, place.addend) else {
                continue;
            };
            let Some(piece) = this.piece_at(begin) else {
                continue;
            };
            #[expect(clippy::cast_possible_truncation, reason = "as the linker counts")]
            let number = begin.wrapping_add_signed(addend as i32);
            if this.piece_at(number) != Some(piece) {
                this.outside.insert((number, piece as u32));
            }
        }
        this
    }

    /// The piece that an address lies in.
    pub(crate) fn piece_at(&self, address: u32) -> Option<usize> {
        let at = self.pieces.partition_point(|piece| piece.1 <= address);
        self.pieces
            .get(at)
            .is_some_and(|piece| piece.0 <= address)
            .then_some(at)
    }

    /// Whether all from one address to another is of one piece.
    pub(crate) fn holds(&self, (from, to): (u32, u32)) -> bool {
        self.piece_at(from)
            .and_then(|piece| self.pieces.get(piece))
            .is_some_and(|piece| to <= piece.1)
    }

    /// The pieces that a number can lead to.
    fn led_to(&self, number: u32) -> impl Iterator<Item = usize> {
        let outside = self.outside.range((number, 0)..=(number, u32::MAX));
        self.piece_at(number)
            .into_iter()
            .chain(outside.map(|it| it.1 as usize))
    }

    /// Which pieces functions lead to, by themselves or by way of other pieces.
    pub(crate) fn reached<'a>(
        &self,
        module: &Module<'_>,
        functions: impl Iterator<Item = &'a wasmparser::FunctionBody<'a>>,
    ) -> Result<Vec<bool>, String> {
        let mut reached = vec![false; self.pieces.len()];
        let mut look = Vec::new();
        let mut reach = |number: u32, look: &mut Vec<usize>| {
            for piece in self.led_to(number) {
                if !std::mem::replace(&mut reached[piece], true) {
                    look.push(piece);
                }
            }
        };
        for body in functions {
            let operators = body.get_operators_reader().map_err(|error| error.to_string())?;
            for operator in operators {
                for number in numbers(&operator.map_err(|error| error.to_string())?) {
                    reach(number, &mut look);
                }
            }
        }
        while let Some(piece) = look.pop() {
            let (begin, end) = self.pieces[piece];
            for word in (begin.next_multiple_of(4)..end.saturating_sub(3)).step_by(4) {
                if let Some(number) = module.word(word) {
                    reach(number, &mut look);
                }
            }
        }
        Ok(reached)
    }

    fn written(&self) -> Vec<u8> {
        let counts = [self.pieces.len() as u32, self.outside.len() as u32];
        let pairs = self.pieces.iter().chain(&self.outside);
        let numbers = counts.into_iter().chain(pairs.flat_map(|it| [it.0, it.1]));
        numbers.flat_map(u32::to_le_bytes).collect()
    }

    /// The pieces as our own section notes them.
    pub(crate) fn read(section: &[u8]) -> Option<Self> {
        let mut numbers = section
            .chunks_exact(4)
            .map(|it| u32::from_le_bytes([it[0], it[1], it[2], it[3]]));
        let (pieces, outside) = (numbers.next()?, numbers.next()?);
        let mut pair = || Some((numbers.next()?, numbers.next()?));
        let pieces = (0..pieces).map(|_| pair()).collect::<Option<_>>()?;
        let outside = (0..outside).map(|_| pair()).collect::<Option<_>>()?;
        Some(Self { pieces, outside })
    }

    /// Whether a section is the one that notes them.
    pub(crate) fn is_section(name: &str) -> bool {
        name == SECTION
    }
}

/// A module with what its linker told of the data in a section of our own, in place of the linker's.
///
/// # Errors
/// When it is damaged.
pub(crate) fn noted(module: &[u8]) -> Result<Vec<u8>, String> {
    let Some(objects) = Objects::of_linker(module)? else {
        return Ok(module.to_vec());
    };
    let mut out = unlinked(module)?;
    out.section(&CustomSection {
        name: SECTION.into(),
        data: Cow::Owned(objects.written()),
    });
    Ok(out.finish())
}

/// The numbers in an instruction that may be addresses: one that is given, or what a place in the memory is counted from. The
/// optimiser writes two that stand side by side, an address and a length, as one of twice the size.
pub(crate) fn numbers(operator: &Operator<'_>) -> Vec<u32> {
    use Operator as Op;
    let counted_from = match operator {
        Op::I32Const { value } => return vec![value.cast_unsigned()],
        Op::I64Const { value } => {
            let [low, high] = [*value, value >> 32];
            #[expect(clippy::cast_possible_truncation, reason = "one half each")]
            return vec![low as u32, high as u32];
        }
        Op::I32Load { memarg }
        | Op::I64Load { memarg }
        | Op::F32Load { memarg }
        | Op::F64Load { memarg }
        | Op::I32Load8S { memarg }
        | Op::I32Load8U { memarg }
        | Op::I32Load16S { memarg }
        | Op::I32Load16U { memarg }
        | Op::I64Load8S { memarg }
        | Op::I64Load8U { memarg }
        | Op::I64Load16S { memarg }
        | Op::I64Load16U { memarg }
        | Op::I64Load32S { memarg }
        | Op::I64Load32U { memarg }
        | Op::I32Store { memarg }
        | Op::I64Store { memarg }
        | Op::F32Store { memarg }
        | Op::F64Store { memarg }
        | Op::I32Store8 { memarg }
        | Op::I32Store16 { memarg }
        | Op::I64Store8 { memarg }
        | Op::I64Store16 { memarg }
        | Op::I64Store32 { memarg } => memarg.offset,
        _ => return Vec::new(),
    };
    u32::try_from(counted_from).into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::split::linked::tests::{BEGIN, linked};

    #[test]
    fn what_is_led_to_is_found_by_way_of_other_pieces_and_from_outside_of_it() {
        let noted = noted(&linked()).expect("a module");
        let module = Module::read(&noted).expect("a module");
        let objects = module.objects.as_ref().expect("it was noted");
        assert_eq!(
            objects.pieces,
            [0, 8, 16, 24].map(|at| (BEGIN + at, BEGIN + at + 8))
        );
        let reached = objects.reached(&module, module.bodies.iter()).expect("a body");
        // The number that leads to the fourth lies in the second.
        assert_eq!(reached, [true, true, false, true]);
        assert_eq!(objects.reached(&module, std::iter::empty()), Ok(vec![false; 4]));
    }

    #[test]
    fn a_module_whose_linker_told_nothing_stays_as_it_is() {
        let bare = crate::split::without_names(&linked()).expect("a module");
        assert_eq!(noted(&bare), Ok(bare.clone()));
        assert_eq!(Module::read(&bare).expect("a module").objects, None);
    }
}
