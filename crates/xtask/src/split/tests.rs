//! The two halves of a small module, held against the rules of WebAssembly by a validator that is not ours. That they do
//! together what the whole did is what every browser test of the built page shows.

use super::*;
use wasm_encoder::{GlobalType, MemoryType, NameMap, NameSection, TableType, ValType};
use wasmparser::{Parser, Payload, Validator};

/// A text that moves, between its marks.
const TEXT: &str = "<far away>";

/// `near::run` calls `near::add` and `far::large` and, through the table, `far::pointed`; `far::large` calls `far::read`.
/// Each is given by what comes before its end.
fn whole() -> Vec<u8> {
    let unary = |types: &mut TypeSection| {
        types.ty().function([ValType::I32], [ValType::I32]);
    };
    let mut types = TypeSection::new();
    unary(&mut types);
    let mut imports = ImportSection::new();
    imports.import("glue", "tell", EntityType::Function(0));
    let call = |function: u32| vec![Instruction::LocalGet(0), Instruction::Call(function)];
    let bodies = [
        ("near::run", {
            let mut run = call(2);
            run.extend([Instruction::Call(3), Instruction::I32Const(1)]);
            run.push(Instruction::CallIndirect {
                type_index: 0,
                table_index: 0,
            });
            run
        }),
        (
            "near::add",
            vec![
                Instruction::LocalGet(0),
                Instruction::I32Const(7),
                Instruction::I32Add,
            ],
        ),
        ("far::large", [call(5), vec![Instruction::Call(0)]].concat()),
        ("far::pointed", call(2)),
        (
            "far::read",
            vec![
                Instruction::LocalGet(0),
                Instruction::GlobalGet(0),
                Instruction::I32Add,
            ],
        ),
        ("near::only_far_calls_it", vec![Instruction::LocalGet(0)]),
        ("far::calls_it", call(6)),
    ];
    let (mut functions, mut code, mut names) = (FunctionSection::new(), CodeSection::new(), NameMap::new());
    for (index, (name, body)) in bodies.iter().enumerate() {
        functions.function(0);
        let mut function = Function::new([]);
        for instruction in body {
            function.instruction(instruction);
        }
        function.instruction(&Instruction::End);
        code.function(&function);
        names.append(index as u32 + 1, name);
    }
    let mut tables = TableSection::new();
    tables.table(TableType {
        element_type: wasm_encoder::RefType::FUNCREF,
        minimum: 3,
        maximum: Some(3),
        table64: false,
        shared: false,
    });
    let mut memories = MemorySection::new();
    memories.memory(MemoryType {
        minimum: 1,
        maximum: None,
        memory64: false,
        shared: false,
        page_size_log2: None,
    });
    let mut globals = GlobalSection::new();
    let global = GlobalType {
        val_type: ValType::I32,
        mutable: true,
        shared: false,
    };
    globals.global(global, &ConstExpr::i32_const(5));
    let mut exports = ExportSection::new();
    exports.export("memory", ExportKind::Memory, 0);
    exports.export("run", ExportKind::Func, 1);
    let mut elements = ElementSection::new();
    fill(&mut elements, 0, &[(1, vec![4, 7])]);
    let mut data = DataSection::new();
    data.active(0, &ConstExpr::i32_const(16), format!("before{TEXT}after").bytes());
    let mut section = NameSection::new();
    section.functions(&names);
    let mut out = wasm_encoder::Module::new();
    out.section(&types)
        .section(&imports)
        .section(&functions)
        .section(&tables)
        .section(&memories);
    out.section(&globals)
        .section(&exports)
        .section(&elements)
        .section(&code)
        .section(&data);
    out.section(&section);
    out.finish()
}

fn plan_with<'a>(moves: &'a dyn Fn(&str, usize) -> bool) -> Plan<'a> {
    Plan {
        moves,
        reads_texts: &|name| name == "far::read",
        marks: ["<far", ">"],
    }
}

fn halves() -> Halves {
    let moves = |name: &str, _| name.starts_with("far");
    split(&whole(), &plan_with(&moves)).expect("it splits")
}

/// How many functions a module has of its own.
fn own(module: &[u8]) -> usize {
    Parser::new(0)
        .parse_all(module)
        .filter(|payload| matches!(payload, Ok(Payload::CodeSectionEntry(_))))
        .count()
}

/// What a module's data are, as one memory of a hundred bytes.
fn memory(modules: &[&[u8]]) -> Vec<u8> {
    let mut memory = vec![0; 100];
    for module in modules {
        for payload in Parser::new(0).parse_all(module) {
            let Payload::DataSection(section) = payload.expect("a module") else {
                continue;
            };
            for it in section {
                let it = it.expect("data");
                let wasmparser::DataKind::Active { offset_expr, .. } = it.kind else {
                    panic!("passive data")
                };
                let Operator::I32Const { value } =
                    offset_expr.get_operators_reader().read().expect("a place")
                else {
                    panic!("no number")
                };
                let from = value as usize;
                memory[from..from + it.data.len()].copy_from_slice(it.data);
            }
        }
    }
    memory
}

#[test]
fn both_halves_are_modules_and_the_rest_takes_from_the_first_what_that_gives() {
    let halves = halves();
    for half in [&halves.first, &halves.rest] {
        Validator::new().validate_all(half).expect("a valid module");
    }
    let first = Module::read(&halves.first).expect("a module");
    let given: BTreeMap<&str, ExternalKind> = first.exports.iter().map(|it| (it.name, it.kind)).collect();
    let mut taken = 0;
    for payload in Parser::new(0).parse_all(&halves.rest) {
        let Payload::ImportSection(section) = payload.expect("a module") else {
            continue;
        };
        for it in section.into_imports() {
            let it = it.expect("an import");
            assert_eq!(it.module, FIRST);
            let kind = match it.ty {
                wasmparser::TypeRef::Func(_) => ExternalKind::Func,
                wasmparser::TypeRef::Table(_) => ExternalKind::Table,
                wasmparser::TypeRef::Memory(_) => ExternalKind::Memory,
                wasmparser::TypeRef::Global(_) => ExternalKind::Global,
                other => panic!("{other:?}"),
            };
            assert_eq!(given.get(it.name), Some(&kind), "{}", it.name);
            taken += 1;
        }
    }
    // Memory, table, global, and the function from outside; what the rest calls of the first half is small and stands in both.
    assert_eq!(taken, 4);
    assert_eq!(given.get("run"), Some(&ExternalKind::Func));
    let asks = first
        .imports
        .iter()
        .filter(|it| (it.module, it.name) == (PAGE, LOAD))
        .count();
    assert_eq!(asks, 1);
}

#[test]
fn what_moves_has_a_stand_in_where_the_first_half_can_reach_it() {
    let halves = halves();
    // `run` and `add`, and stand-ins for `large`, `pointed` and `calls_it`; `read` is reached from the rest alone.
    assert_eq!(own(&halves.first), 5);
    // The four that move, what only they call, and `add` once more.
    assert_eq!(own(&halves.rest), 6);
}

#[test]
fn a_text_moves_with_what_reads_it_and_stays_with_what_reads_it() {
    let all = memory(&[&whole()]);
    let halves = halves();
    assert_eq!(memory(&[&halves.first, &halves.rest]), all);
    let first = memory(&[&halves.first]);
    let at = 16 + "before".len();
    assert_eq!(first[at..at + TEXT.len()], [0; TEXT.len()]);
    assert_eq!(first[..at], all[..at]);
    assert_eq!(first[at + TEXT.len()..], all[at + TEXT.len()..]);

    let moves = |name: &str, _| name == "far::pointed";
    let staying = split(&whole(), &plan_with(&moves)).expect("it splits");
    assert_eq!(memory(&[&staying.first]), all);
}

#[test]
fn a_module_without_names_is_refused_and_one_without_them_is_the_same_module() {
    let bare = without_names(&whole()).expect("a module");
    Validator::new().validate_all(&bare).expect("a valid module");
    assert_eq!(own(&bare), own(&whole()));
    let moves = |_: &str, _| true;
    let error = split(&bare, &plan_with(&moves)).err().expect("refused");
    assert!(error.contains("no names"), "{error}");
}
