//! A module that remembers which of its functions ran, to tell what a page needs until its first picture.

use super::module::Module;
use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{
    CodeSection, ConstExpr, ExportKind, ExportSection, GlobalSection, GlobalType, Instruction, ValType,
};
use wasmparser::{ExportSectionReader, FunctionBody, GlobalSectionReader, Parser};

/// What the numbers are called that remember it, each of [`EACH`] functions, from the first function of the module's own on. A
/// number's lowest digit in the binary system belongs to the first of its functions.
pub(crate) const RAN: &str = "~ran";
/// How many functions one number is for.
pub(crate) const EACH: u32 = 32;

struct Watch {
    /// How many numbers the module has of its own.
    globals: u32,
    /// How many functions it has of its own, and how many were written.
    functions: u32,
    written: u32,
}

impl Watch {
    fn numbers(&self) -> u32 {
        self.functions.div_ceil(EACH)
    }
}

impl Reencode for Watch {
    type Error = String;

    fn parse_global_section(
        &mut self,
        globals: &mut GlobalSection,
        section: GlobalSectionReader<'_>,
    ) -> Result<(), Error<String>> {
        utils::parse_global_section(self, globals, section)?;
        let global_type = GlobalType {
            val_type: ValType::I32,
            mutable: true,
            shared: false,
        };
        for _ in 0..self.numbers() {
            globals.global(global_type, &ConstExpr::i32_const(0));
        }
        Ok(())
    }

    fn parse_export_section(
        &mut self,
        exports: &mut ExportSection,
        section: ExportSectionReader<'_>,
    ) -> Result<(), Error<String>> {
        utils::parse_export_section(self, exports, section)?;
        for n in 0..self.numbers() {
            exports.export(&format!("{RAN}{n}"), ExportKind::Global, self.globals + n);
        }
        Ok(())
    }

    fn parse_function_body(
        &mut self,
        code: &mut CodeSection,
        body: FunctionBody<'_>,
    ) -> Result<(), Error<String>> {
        let number = self.globals + self.written / EACH;
        let sign = 1_u32 << (self.written % EACH);
        self.written += 1;
        let mut function = self.new_function_with_parsed_locals(&body)?;
        for instruction in [
            Instruction::GlobalGet(number),
            Instruction::I32Const(sign.cast_signed()),
            Instruction::I32Or,
            Instruction::GlobalSet(number),
        ] {
            function.instruction(&instruction);
        }
        let mut operators = body.get_operators_reader()?;
        while !operators.eof() {
            let instruction = self.parse_instruction(&mut operators)?;
            function.instruction(&instruction);
        }
        code.function(&function);
        Ok(())
    }
}

/// The module, remembering, and the names of its own functions in order.
///
/// # Errors
/// When it is damaged, or has no names.
pub(crate) fn watched(bytes: &[u8]) -> Result<(Vec<u8>, Vec<String>), String> {
    let module = Module::read(bytes)?;
    if module.names.is_empty() {
        return Err("the module has no names of functions to tell them by".to_owned());
    }
    let names = (module.outer as u32..).take(module.bodies.len());
    let names = names
        .map(|at| super::names::written(module.names.get(&at).copied().unwrap_or_default()))
        .collect();
    let mut watch = Watch {
        globals: module.globals.len() as u32,
        functions: module.bodies.len() as u32,
        written: 0,
    };
    let mut out = wasm_encoder::Module::new();
    watch
        .parse_core_module(&mut out, Parser::new(0), bytes)
        .map_err(|error| error.to_string())?;
    Ok((out.finish(), names))
}
