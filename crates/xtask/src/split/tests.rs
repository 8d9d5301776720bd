//! The parts of a small module, held against the rules of WebAssembly by a validator that is not ours. That they do
//! together what the whole did is what every browser test of the built page shows.

use super::write::fill;
use super::*;
use std::collections::BTreeMap;
use wasm_encoder::{
    CodeSection, ConstExpr, DataSection, ElementSection, EntityType, ExportKind, ExportSection, Function,
    FunctionSection, GlobalSection, GlobalType, ImportSection, Instruction, MemorySection, MemoryType,
    NameMap, NameSection, TableSection, TableType, TypeSection, ValType,
};
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

fn plan_with<'a>(part: &'a dyn Fn(&str) -> usize) -> Plan<'a> {
    Plan {
        part,
        references: None,
        reads_texts: &|name| name == "far::read",
        marks: ["<far", ">"],
        called: const { &BTreeMap::new() },
    }
}

/// What is called `far` in the second part, but what is pointed to in the third.
fn in_parts() -> [Vec<u8>; PARTS] {
    let part = |name: &str| match name {
        "far::pointed" => 2,
        _ => usize::from(name.starts_with("far")),
    };
    split(&whole(), &plan_with(&part)).expect("it splits")
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

/// What a module takes from outside: from where, name, kind.
fn taken(module: &[u8]) -> Vec<(String, String, ExternalKind)> {
    let mut taken = Vec::new();
    for payload in Parser::new(0).parse_all(module) {
        let Payload::ImportSection(section) = payload.expect("a module") else {
            continue;
        };
        for it in section.into_imports() {
            let it = it.expect("an import");
            let kind = match it.ty {
                wasmparser::TypeRef::Func(_) => ExternalKind::Func,
                wasmparser::TypeRef::Table(_) => ExternalKind::Table,
                wasmparser::TypeRef::Memory(_) => ExternalKind::Memory,
                wasmparser::TypeRef::Global(_) => ExternalKind::Global,
                other => panic!("{other:?}"),
            };
            taken.push((it.module.to_owned(), it.name.to_owned(), kind));
        }
    }
    taken
}

#[test]
fn all_parts_are_modules_and_each_takes_from_earlier_ones_what_these_give() {
    let parts = in_parts();
    let mut given: BTreeMap<(String, String), ExternalKind> = BTreeMap::new();
    given.insert(("glue".to_owned(), "tell".to_owned()), ExternalKind::Func);
    for (at, part) in parts.iter().enumerate() {
        Validator::new().validate_all(part).expect("a valid module");
        for (from, name, kind) in taken(part) {
            if from == PAGE {
                let later = (at + 1..PARTS).any(|later| name == load(later));
                assert!(later && kind == ExternalKind::Func, "part {at} asks for {name}");
            } else {
                assert_eq!(
                    given.get(&(from.clone(), name.clone())),
                    Some(&kind),
                    "{from} {name}"
                );
            }
        }
        let exports = &read_export_kinds(part);
        given.extend(exports.iter().map(|(it, kind)| ((name(at), it.clone()), *kind)));
    }
    assert_eq!(given.get(&(name(0), "run".to_owned())), Some(&ExternalKind::Func));
}

fn read_export_kinds(module: &[u8]) -> Vec<(String, ExternalKind)> {
    let mut all = Vec::new();
    for payload in Parser::new(0).parse_all(module) {
        if let Payload::ExportSection(section) = payload.expect("a module") {
            all.extend(section.into_iter().map(|it| {
                let it = it.expect("an export");
                (it.name.to_owned(), it.kind)
            }));
        }
    }
    all
}

#[test]
fn what_moves_has_a_stand_in_in_the_first_part_that_leads_to_it() {
    let [first, second, third] = in_parts();
    // `run` and `add`; stand-ins for `large`, which `run` calls, and for `pointed`, whose place 1 stands in `run`. Nothing
    // leads to place 2.
    assert_eq!(own(&first), 4);
    // `large`, `read`, `calls_it`, and what only that calls.
    assert_eq!(own(&second), 4);
    // `pointed`, and `add` once more.
    assert_eq!(own(&third), 2);
}

#[test]
fn a_text_moves_with_what_reads_it_and_stays_with_what_reads_it() {
    let all = memory(&[&whole()]);
    let parts = in_parts();
    assert_eq!(memory(&parts.each_ref().map(|it| it.as_slice())), all);
    let first = memory(&[&parts[0]]);
    let at = 16 + "before".len();
    assert_eq!(first[at..at + TEXT.len()], [0; TEXT.len()]);
    assert_eq!(first[..at], all[..at]);
    assert_eq!(first[at + TEXT.len()..], all[at + TEXT.len()..]);

    let part = |name: &str| usize::from(name == "far::pointed");
    let staying = split(&whole(), &plan_with(&part)).expect("it splits");
    assert_eq!(memory(&[&staying[0]]), all);
}

#[test]
fn a_module_without_names_is_refused_and_one_without_them_is_the_same_module() {
    let bare = without_names(&whole()).expect("a module");
    Validator::new().validate_all(&bare).expect("a valid module");
    assert_eq!(own(&bare), own(&whole()));
    let error = split(&bare, &plan_with(&|_| 1)).expect_err("refused");
    assert!(error.contains("no names"), "{error}");
}

#[test]
fn a_watched_module_has_a_number_for_its_functions_and_is_the_same_otherwise() {
    let (watched, functions) = watched::watched(&whole()).expect("a module");
    Validator::new().validate_all(&watched).expect("a valid module");
    assert_eq!(functions.len(), own(&whole()));
    assert_eq!(functions[0], "near::run");
    let given = read_export_kinds(&watched);
    assert_eq!(given.len(), read_export_kinds(&whole()).len() + 1);
    assert!(given.contains(&(format!("{}0", watched::RAN), ExternalKind::Global)));
}

#[test]
fn parts_are_called_by_what_is_in_all_of_them() {
    let folder = std::env::temp_dir().join(format!("loomwright-names-{}", std::process::id()));
    let named = |rest: &str| {
        std::fs::create_dir_all(&folder).expect("a folder");
        let index = "import init from '/app-1f.js'; init('/app-1f_bg.wasm')";
        for (name, text) in [
            ("index.html", index),
            ("app-1f.js", "['app-1f_more.wasm', 'app-1f_rest.wasm']"),
            ("app-1f_bg.wasm", "first"),
            ("app-1f_more.wasm", "more"),
            ("app-1f_rest.wasm", rest),
            ("beside.css", "app-1f"),
        ] {
            std::fs::write(folder.join(name), text).expect("writable");
        }
        name_by_contents(&folder).expect("named");
        let files = crate::page::files_below(&folder).expect("readable");
        let names: Vec<String> = files
            .iter()
            .map(|file| {
                file.file_name()
                    .unwrap_or_default()
                    .to_string_lossy()
                    .into_owned()
            })
            .collect();
        let text = |name: &str| std::fs::read_to_string(folder.join(name)).expect("readable");
        let stem = names
            .iter()
            .find_map(|name| name.strip_suffix("_rest.wasm"))
            .expect("it is there")
            .to_owned();
        let expected = ["_bg.wasm", "_more.wasm", "_rest.wasm", ".js"].map(|end| format!("{stem}{end}"));
        for name in &expected {
            assert!(names.contains(name), "{name} in {names:?}");
        }
        assert_eq!(names.len(), 6, "{names:?}");
        assert_eq!(text("index.html"), index.replace("app-1f", &stem));
        assert_eq!(
            text(&format!("{stem}.js")),
            format!("['{stem}_more.wasm', '{stem}_rest.wasm']")
        );
        assert_eq!(text("beside.css"), "app-1f");
        std::fs::remove_dir_all(&folder).expect("removed");
        stem
    };
    let one = named("rest");
    assert!(one.starts_with("app-") && one.len() == "app-".len() + 16, "{one}");
    assert_eq!(one, named("rest"));
    assert_ne!(one, named("another rest"));
}
