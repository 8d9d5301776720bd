//! Papers against what was worked out by hand.

use lessons::WorkedJob;
use model::conductor::Material;
use model::{Job, SheetKind};
use ordered::OrderedSet;
use paperwork::*;

fn text(text: &str) -> Job {
    model::text::parse(text).unwrap_or_else(|errors| panic!("{errors}"))
}

fn hatchback() -> Job {
    WorkedJob::of("hatchback").expect("the worked job").job()
}

/// Tags of what becomes this.
fn tags(work: &Work<'_>, becomes: Becomes) -> OrderedSet<String> {
    what_becomes(work)
        .lines
        .into_iter()
        .filter(|line| line.becomes == becomes)
        .map(|line| line.tag)
        .collect()
}

fn set(tags: &str) -> OrderedSet<String> {
    tags.split_whitespace().map(str::to_owned).collect()
}

/// The two sheets were laid side by side and every line of the text was compared by hand.
#[test]
fn what_becomes_of_everything_from_found_to_built() {
    let job = hatchback();
    let work = Work::of(&job, SheetKind::Built, None).expect("both sheets");
    for (becomes, expected) in [
        (Becomes::Removed, "L1 E2 W19 W20 W21"),
        // F1 is of another rating, W2 was found corroded, W15 is nearly half a metre longer on its new way.
        (Becomes::Replaced, "F1 W2 W11 W12 W14 W15 W17 W18"),
        (Becomes::Moved, "A1 E1 W16"),
        (Becomes::Refitted, "H1 LS3"),
        (Becomes::Changed, "P2 W9"),
        (Becomes::New, "J1 F2 L2 E3 W32 W33 W34 W35"),
        (
            Becomes::Kept,
            "V1 B1 G1 P1 LS1 LS2 LS4 LS5 W1 W3 W4 W5 W6 W7 W8 W10 W22 W23 W24 W25 W26 W27 W28 W29 W30 W31",
        ),
    ] {
        assert_eq!(tags(&work, becomes), set(expected), "{becomes:?}");
    }
    let told = what_becomes(&work);
    assert_eq!(
        (told.cleared.len(), told.left.len(), told.added.len()),
        (21, 0, 0)
    );
    // 369.40 + 174.20 + 58.50 + 22.00 + 102.90 + 60.00, by hand.
    assert_eq!(told.approved, Some(model::thread::Money(78_700)));
}

#[test]
fn what_becomes_from_plan_to_built_is_only_what_came_up() {
    let job = hatchback();
    let work = Work::of(&job, SheetKind::Built, Some(SheetKind::Plan)).expect("both sheets");
    // The strap was replaced beyond the plan; W12 was measured.
    assert!(tags(&work, Becomes::New).is_empty() && tags(&work, Becomes::Removed).is_empty());
    assert!(tags(&work, Becomes::Replaced).contains("W2"));
    assert!(Work::of(&job, SheetKind::Plan, Some(SheetKind::Built)).is_none());
}

#[test]
fn nothing_that_stays_is_bought_again() {
    let job = hatchback();
    let work = Work::of(&job, SheetKind::Built, None).expect("both sheets");
    let order = order(&work, &Terms::default());
    let all: OrderedSet<String> = order
        .lines
        .iter()
        .flat_map(|line| line.tags.iter().cloned())
        .collect();
    // What is laid, what is bought, the run that is finished anew at one end, and the ground points with their screws. E1
    // moved: the screw is the only thing that it needs, and it keeps it.
    assert_eq!(
        all,
        set("F1 F2 J1 L2 W2 W9 W11 W12 W14 W15 W17 W18 W32 W33 W34 W35")
    );
    assert!(order.lacking.is_empty(), "{:?}", order.lacking);
}

#[test]
fn cable_adds_up_with_its_slack_and_its_waste() {
    let job = text(
        "battery B1\nload L1\nload L2\n\
         run W1 B1.+ L1.+ 2.5mm2 3.2m RD copper slack=0.3m ends=ring/spade\n\
         run W2 B1.+ L2.+ 2.5mm2 1.55m RD copper slack=0m ends=ring/spade\n\
         run W3 L1.- B1.- 2.5mm2 1.5m BK copper ends=spade/ring\n\
         run W4 L2.- B1.- 2.5mm2 1m BK copper by=maker\n",
    );
    let work = Work::latest(&job).expect("a sheet");
    let order = order(&work, &Terms::default());
    let cable: Vec<(&str, Quantity, Quantity)> = order
        .lines
        .iter()
        .filter(|line| line.section == Section::Cable)
        .map(|line| (line.article.as_str(), line.used, line.bought))
        .collect();
    let metres = |metres: f64| Quantity::Metres(model::quantity::Metres(metres));
    // Red: 3.5 + 1.55 = 5.05 m, with a tenth 5.555 m: 6 m. Black: 1.5 + 2 · 0.1 = 1.7 m, with a tenth 1.87 m: 2 m. The maker's
    // run is there.
    assert_eq!(
        cable,
        [
            ("cable copper 2.5mm2 BK 105C", metres(1.7), metres(2.0)),
            ("cable copper 2.5mm2 RD 105C", metres(5.05), metres(6.0)),
        ]
    );
    let count = |article: &str| {
        let line = order.lines.iter().find(|line| line.article == article);
        line.map(|line| line.used)
    };
    assert_eq!(count("ring 2.5mm2 M8?"), Some(Quantity::Pieces(3)));
    assert_eq!(count("spade 2.5mm2"), Some(Quantity::Pieces(3)));
    assert_eq!(count("label"), Some(Quantity::Pieces(6)));
}

#[test]
fn what_is_not_known_is_told_instead_of_guessed() {
    let job = text(
        "battery B1\nload L1\nfuse F1 strip61 rating=?\n\
         run W1 B1.+ F1.in size=? 3m RD copper ends=ring/ring\n\
         run W2 F1.out L1.+ 4mm2 length=? RD copper\n\
         run W3 L1.- loose@0,0 4mm2 1m BK material=? ends=butt/loose\n",
    );
    let work = Work::latest(&job).expect("a sheet");
    let order = order(&work, &Terms::default());
    let lacking: OrderedSet<String> = order
        .lacking
        .iter()
        .map(|lacking| format!("{}.{}", lacking.tag, lacking.property))
        .collect();
    assert_eq!(lacking, set("F1.rating W1.size W2.length W2.method"));
    // A material that nobody knows is bought as such, so that somebody asks.
    let cable = order.lines.iter().find(|line| line.section == Section::Cable);
    assert_eq!(
        cable.map(|line| line.article.as_str()),
        Some("cable ? 4mm2 BK 105C")
    );
    let cut = cut_list(&work, &Terms::default());
    let at = cut
        .columns
        .iter()
        .position(|column| column.name == "cut-length")
        .expect("a column");
    assert_eq!(cut.rows[1][at], Cell::Unknown);
}

#[test]
fn metal_is_cross_section_times_length_times_density() {
    // 8.89 g/cm³ of copper (IEC 60028), 2.703 g/cm³ of aluminium (IEC 60889).
    let job = text(
        "battery B1\nload L1\n\
         run W1 B1.+ L1.+ 16mm2 5m RD copper\n\
         run W2 L1.- B1.- 20mm2 3m BK clad10\n\
         run W3 L1.- B1.- size=? 3m BK copper\n",
    );
    let work = Work::latest(&job).expect("a sheet");
    let told = what_becomes(&work);
    let metal = told.metal.get(&Becomes::New).expect("new runs");
    // 16 mm² · 5 m = 80 cm³: 711.2 g. 20 mm² · 3 m = 60 cm³, of which 6 cm³ copper, 53.34 g, and 54 cm³ aluminium, 145.962 g.
    assert!((metal.copper - (0.7112 + 0.053_34)).abs() < 1e-9, "{metal:?}");
    assert!((metal.aluminium - 0.145_962).abs() < 1e-9, "{metal:?}");
    assert_eq!(told.metal_unknown, set("W3"));
    assert_eq!(Material::ALL.len(), 5, "a new material needs its share of copper");
}

#[test]
fn the_gain_is_set_to_the_root_of_power_times_load() {
    // 250 W into 4 Ω: √1000 = 31.62 V. ref: P = V²/R, any textbook.
    let job = hatchback();
    let sheet = job.sheet(SheetKind::Plan).expect("the plan");
    let study = circuit::study(sheet, &job.settings);
    let load = study
        .channels
        .iter()
        .find(|load| sheet.part_by_tag("A1").is_some_and(|(id, _)| id == load.part))
        .expect("the amplifier");
    let volts = target_volts(load).expect("power and load are known");
    assert!((volts.0 - 31.622_776_6).abs() < 1e-6, "{volts:?}");
    let work = Work::of(&job, SheetKind::Plan, None).expect("the plan");
    let table = settings_sheet(&work, &study);
    let target = table
        .columns
        .iter()
        .position(|column| column.name == "target")
        .expect("a column");
    assert_eq!(table.rows[0][target], Cell::Number(volts.0));
}

#[test]
fn the_meter_sheet_says_what_to_read_again_where_contact_comes_and_goes() {
    let job = text(
        "sheet built\nbattery B1\nfuse F1 strip61 60A\nload L1 5A\nground E1 bare\nrun W1 B1.+ F1.in 16mm2 1m RD\n\
         run W2 F1.out L1.+ 2.5mm2 3m RD opens-when=doors-open\nrun W3 L1.- E1.stud 2.5mm2 1m BK\n",
    );
    let work = Work::of(&job, SheetKind::Built, None).expect("a sheet");
    let told = |list: List| {
        let tables = lists(&work, &Terms::default(), &[list]);
        let notes = tables.iter().flat_map(|table| &table.notes);
        notes.map(ToString::to_string).collect::<Vec<_>>()
    };
    let again: Vec<String> = told(List::Meter)
        .into_iter()
        .filter(|note| note.contains("loses contact"))
        .collect();
    assert_eq!(
        again,
        [
            "W2 loses contact with: doors open. Read again in that state, at F1.out and at L1.+, and watch the display."
        ]
    );
}

#[test]
fn a_filled_in_order_list_is_a_price_list() {
    let job = hatchback();
    let work = Work::of(&job, SheetKind::Built, None).expect("both sheets");
    let english = words::Words::english();
    let mut terms = Terms::default();
    let table = order(&work, &terms).table(&work, &terms);
    // The shop fills in two prices, as its spreadsheet writes them: with a decimal comma, one of them in quotes.
    let filled: String = csv(&table, &english)
        .lines()
        .map(|line| match line {
            line if line.starts_with("cable copper 16mm2 RD") => line.replace(",,,", ",\"3,40\",,") + "\n",
            line if line.starts_with("fuse strip61 60A") => line.replace(",,,", ",6.50,,0.1") + "\n",
            line => format!("{line}\n"),
        })
        .collect();
    terms.prices = PriceList::read(&filled, &english);
    assert!(terms.prices.unread.is_empty());
    assert_eq!(terms.prices.by_article.len(), 2);
    let order = order(&work, &terms);
    // 6 m · 3.40 + 6.50 = 26.90.
    let (sum, missing) = order.cost(&terms);
    assert_eq!(
        (sum, missing),
        (model::thread::Money(2_690), order.lines.len() - 2)
    );
}

/// A shop's list stays the same when its reader changes: whatever language it was printed in, each reads the same of it.
#[test]
fn a_price_list_of_any_language_is_read_in_any() {
    let readers = [words::Language::English, words::Language::German].map(|language| {
        words::Words::of(words::Reader {
            language,
            ..words::Reader::default()
        })
    });
    let job = hatchback();
    let work = Work::of(&job, SheetKind::Built, None).expect("both sheets");
    for printed in &readers {
        let terms = Terms::read_by(printed);
        let blank = csv(&paperwork::price_sheet(&work, &terms), printed);
        // Price and hours come last.
        let filled: Vec<String> = blank
            .lines()
            .map(|line| {
                line.strip_suffix(",,")
                    .map_or_else(|| line.to_owned(), |line| format!("{line},3.40,"))
            })
            .collect();
        assert!(filled.len() > 20, "{blank}");
        let [one, other] = readers
            .each_ref()
            .map(|reader| PriceList::read(&filled.join("\r\n"), reader));
        assert!(one.by_article.len() + 1 >= filled.len(), "{filled:?}");
        assert!(one.unread.is_empty(), "{:?}", one.unread);
        assert_eq!(one, other);
    }
}

/// One foot is 0.3048 m, exactly (international yard and pound agreement, 1959).
#[test]
fn prices_by_the_foot_and_by_the_metre_come_to_what_each_says() {
    let job = hatchback();
    let work = Work::of(&job, SheetKind::Built, None).expect("both sheets");
    let feet = words::Words::of(words::Reader {
        lengths: words::Lengths::Feet,
        ..words::Reader::default()
    });
    let english = words::Words::english();
    const CABLE: &str = "cable copper 16mm2 RD 105C";
    let list = |price: &str, unit: &str| {
        PriceList::read(
            &format!("Article,Unit,Price,Hours\r\n{CABLE},{unit},{price},0.1\r\n"),
            &english,
        )
    };
    // Quantity, unit, price and sum of the line, as its reader has them.
    let line = |words: &words::Words, prices: PriceList| {
        let terms = Terms {
            prices,
            ..Terms::read_by(words)
        };
        let table = order(&work, &terms).table(&work, &terms);
        let notes = table
            .notes
            .iter()
            .map(|note| words.say(note))
            .collect::<Vec<_>>()
            .join(" ");
        let row = csv(&table, words)
            .lines()
            .find(|line| line.starts_with(CABLE))
            .map(str::to_owned);
        let row = row.expect("the cable");
        let end = row.rsplit_once('"').map_or(row.as_str(), |(_, end)| end);
        (end.trim_start_matches(',').to_owned(), notes, csv(&table, words))
    };
    // 5.30 m and a tenth of waste are 5.83 m: 6 m, or 19.13 ft: 20 ft, of which 5.30 m = 17.39 ft are used.
    let (row, notes, _) = line(&english, list("3.40", "m"));
    assert_eq!(row, "6,m,5.30,W11 W12,3.40,20.40,0.10");
    assert!(!notes.contains("by the foot"), "{notes}");
    let (row, notes, _) = line(&feet, list("0.98", "ft"));
    assert_eq!(row, "20,ft,17.39,W11 W12,0.98,19.60,0.10");
    assert!(!notes.contains("by the metre"), "{notes}");
    // By the metre, read in feet: 3.40 · 0.3048 = 1.03632 a foot; 20 ft = 6.096 m, 6.096 · 3.40 = 20.7264.
    let (row, notes, table) = line(&feet, list("3.40", "m"));
    assert_eq!(row, "20,ft,17.39,W11 W12,1.0363,20.73,0.0305");
    assert!(
        notes.contains("by the metre; here prices stand by the foot"),
        "{notes}"
    );
    // Handed out and taken in again it is a list by the foot, and comes to the same.
    let (row, notes, _) = line(&feet, PriceList::read(&table, &feet));
    assert_eq!(row, "20,ft,17.39,W11 W12,1.0363,20.73,0.0305");
    assert!(!notes.contains("here prices stand"), "{notes}");
    // By the foot, read in metres: 0.98 / 0.3048 = 3.21522… a metre, 6 m of it 19.2913.
    let (row, notes, _) = line(&english, list("0.98", "ft"));
    assert_eq!(row, "6,m,5.30,W11 W12,3.2152,19.29,0.3281");
    assert!(
        notes.contains("by the foot; here prices stand by the metre"),
        "{notes}"
    );
    // Sizes are weighed by the list's own price: 0.0467 / 0.3048 = 0.153215… a metre, and not 0.15. 4.8 m of it are 0.7354.
    let sheet = job.sheet(SheetKind::Built).expect("a sheet");
    let prices = list("0.0467", "ft");
    let ask = assist::sizing::Ask {
        by: assist::sizing::By::Cost(&prices),
        ..assist::sizing::Ask::default()
    };
    let sizing = assist::sizing::size(sheet, &job.settings, &ask);
    let (id, run) = sheet.run_by_tag("W12").expect("the main feed");
    assert_eq!(run.wire.length.value(), Some(model::quantity::Metres(4.8)));
    let feed = sizing.runs.iter().find(|line| line.run == id).expect("its line");
    assert_eq!(feed.cost[0], Some(model::thread::Money(74)));
    // A price for one of what nobody knows is none, and is told; one by the piece prices no length.
    assert_eq!(list("3.40", "reel").unread, [2]);
    assert!(list("3.40", "reel").by_article.is_empty());
    let (row, notes, _) = line(&english, list("3.40", "pcs"));
    assert_eq!(row, "6,m,5.30,W11 W12,,,");
    assert!(!notes.contains("Every line has its price"), "{notes}");
    assert_eq!(
        list("3.40", "").by_article.get(CABLE).map(|price| price.per),
        Some(paperwork::Per::Metre)
    );
    assert_eq!(list("1.00001", "m").unread, [2], "finer than a list is read");
}

#[test]
fn steps_come_in_their_order_and_keep_their_names() {
    let mut job = hatchback();
    let name_of = |job: &Job| {
        let work = Work::of(job, SheetKind::Built, None).expect("both sheets");
        let out: Vec<Step> = strip_out(&work).steps;
        let built: Vec<Step> = build(&work, &Terms::default()).steps;
        (out, built)
    };
    let (out, built) = name_of(&job);
    // Isolate first; ground and protection before what hangs on them; the battery last, and then the proof.
    assert_eq!(out.first().map(|step| step.phase), Some(Phase::Isolate));
    assert!(out.first().is_some_and(|step| step.done), "the job says so");
    assert!(out.is_sorted_by_key(|step| step.phase));
    assert!(built.is_sorted_by_key(|step| step.phase));
    let at = |name: &str| {
        built
            .iter()
            .position(|step| step.name == name)
            .unwrap_or_else(|| panic!("{name}"))
    };
    // By ids: p13 is E1, r23 its lead, p11 is F1, r22 the main feed, r21 the run at the battery.
    let order = [
        "build/part/p13",
        "build/run/r23",
        "build/part/p11",
        "build/run/r22",
        "build/run/r21",
    ];
    assert!(order.is_sorted_by_key(|name| at(name)));
    assert!(
        at("build/battery/p2") < at("build/fuse/p11"),
        "its own fuse goes in last"
    );
    let names = |steps: &[Step]| {
        steps
            .iter()
            .map(|step| step.name.clone())
            .collect::<OrderedSet<_>>()
    };
    assert_eq!(names(&built).len(), built.len(), "no two steps have one name");
    // Another tag changes no name.
    for sheet in job.sheets.values_mut() {
        for part in sheet.parts.values_mut() {
            part.tag = format!("X{}", part.tag);
        }
    }
    let (out_again, built_again) = name_of(&job);
    assert_eq!(
        (names(&out), names(&built)),
        (names(&out_again), names(&built_again))
    );
}

#[test]
fn open_ends_of_the_worked_job_are_the_two_complaints_that_wait_to_be_closed() {
    let open = open_ends(&hatchback());
    let closed = |tag: &str| OpenEnd::NotClosed {
        complaint: tag.to_owned(),
    };
    assert_eq!(open, [closed("C1"), closed("C3")]);
}

/// The articles of a job's order list: written name, and what is used.
fn articles(job: &Job) -> Vec<(String, Quantity)> {
    let work = Work::latest(job).expect("a sheet");
    let order = order(&work, &Terms::default());
    order.lines.into_iter().map(|it| (it.article, it.used)).collect()
}

/// Rings have the hole of the stud that they land on: of a fuse by its form (ISO 8820-5), of other parts as told, else the usual
/// one with a sign that it is to be measured, else none. Common practice.
#[test]
fn rings_are_ordered_by_size_and_stud() {
    let job = text(
        "battery B1 agm\nfuse F1 strip30 40A\nbus X1 M6\nground E1 bare stud=?\nload L1\n\
         run W1 B1.+ F1.in 10mm2 0.3m RD ends=ring/ring\n\
         run W2 F1.out X1.1 10mm2 1m RD ends=ring/ring\n\
         run W3 X1.2 L1.+ 10mm2 1m RD ends=ring/ring\n\
         run W4 L1.- E1.stud 10mm2 1m BK ends=ring/ring",
    );
    let rings: Vec<(String, Quantity)> = articles(&job)
        .into_iter()
        .filter(|(article, _)| article.starts_with("ring"))
        .collect();
    let pieces = |count| Quantity::Pieces(count);
    assert_eq!(
        rings,
        [
            // L1 has no stud that is known of, and E1 is to be measured.
            ("ring 10mm2".to_owned(), pieces(3)),
            // Two on the fuse.
            ("ring 10mm2 M5".to_owned(), pieces(2)),
            // Two on the bar.
            ("ring 10mm2 M6".to_owned(), pieces(2)),
            // The battery's bolts are usually M8.
            ("ring 10mm2 M8?".to_owned(), pieces(1)),
        ]
    );
}

/// The plan's own grommet is 0.7 m to 0.8 m long in a hatchback; 0.1 m is added for a hand's breadth at either side.
#[test]
fn sleeves_and_tubes_that_guard_a_passage_are_ordered_by_the_metre() {
    let job = text(
        "body hatchback left-hand front-battery\nbattery B1 agm place=battery-tray\nload L1 place=footwell-left\n\
         run W1 B1.+ L1.+ 4mm2 2m RD ends=ring/ring route=battery-bulkhead/bulkhead-grommet-left \
         guards=battery-bulkhead:tube/bulkhead-grommet-left:sleeve",
    );
    let plan = body::Plan::of(&job.settings.body).expect("a hatchback");
    for (article, passage) in [
        ("sleeve 4mm2", "bulkhead-grommet-left"),
        ("tube 4mm2", "battery-bulkhead"),
    ] {
        let used = articles(&job)
            .into_iter()
            .find(|(it, _)| it == article)
            .map(|(_, used)| used);
        let long = plan.passage(passage).expect("a passage of it").metres().0 + 0.1;
        match used {
            Some(Quantity::Metres(metres)) => {
                assert!((metres.0 - long).abs() < 1e-9, "{article}: {metres:?}")
            }
            other => panic!("{article}: {other:?}"),
        }
    }
    // Without a body nobody knows how long it is: a piece that is measured there.
    let mut bare = job.clone();
    bare.settings.body = model::body::Body::default();
    let pieces = articles(&bare);
    assert!(
        pieces.contains(&(
            "sleeve-piece bulkhead-grommet-left".to_owned(),
            Quantity::Pieces(1)
        )),
        "{pieces:?}"
    );
}
