/**
 * What stands behind each sentence of README.md.
 *
 * A new or changed sentence needs a line here: the test or measurement that
 * fails, or would be other, if it were not so; or a place among those that
 * claim nothing.
 */

/** A file of the project, and words in it: a test's title, or a result. */
export type Evidence = readonly [file: string, words: string];

const test = (name: string, title: string): Evidence => [
  `tests/${name}_test.ts`,
  title,
];

const PAGES = test(
  "documentation/pages",
  "the blocks of every page run, say what stands below them, and change no file that they are given",
);
const COMMANDS = test(
  "documentation/commands",
  "every command in the documents names a task and flags that its help names",
);

/** Sentence of README.md to what shows it. */
export const CLAIMS: Readonly<Record<string, readonly Evidence[]>> = {
  "Sagbook turns such a page of readings into the radius of curvature and how sure it is, a verdict on whether the surface is a sphere, and what to do next.":
    [
      test(
        "tasks/report",
        "task report writes page, notebook and results, and prints the answer and the path",
      ),
      [
        "tests/studies/RESULTS.md",
        "Intervals of zone differences cover, and verdicts err in no more than 5 %",
      ],
    ],
  "It says what it could not read, and what three feet cannot see.": [
    test(
      "records/readers_property",
      "readFinishedPieces() reads used plus reported whatever it is given",
    ),
    test(
      "zones/unseen",
      "unseenBy() names astigmatism first for three feet, always",
    ),
  ],
  "With Node on the machine, these two commands fetch the rest by themselves:":
    [
      [".ci/run", "npx -y deno@2.9.6 task test"],
      ["DEVELOPERS.md", "fresh clone with empty caches"],
    ],
  "The first makes a page for each invented piece in `data/` and prints each answer; the second runs the tests.":
    [
      test(
        "tasks/report_index",
        "task report over a folder of pieces lists each with its answer, date and link, and why one has none",
      ),
      COMMANDS,
    ],
  "With [Deno](https://deno.com) installed say `deno task report`; `deno task` alone lists all tasks, and each explains itself with `--help`.":
    [
      test(
        "documentation/commands",
        "deno task lists every task with what it does, also after a slip in its name",
      ),
      test(
        "tasks/tools_help",
        "every task says by --help how it is called, changes nothing and ends with 0",
      ),
    ],
  "`deno task new my-mirror` asks a few questions (flags may say all) and makes a folder: the piece, your bench (gauge, rings, flat), and empty sheets.":
    [
      test(
        "tasks/new",
        "newFolder() asks at the terminal, and again when an answer cannot be used",
      ),
      test("tasks/new", "newFolder() makes from flags what the check passes"),
    ],
  'Every length is a number with a unit: `"300 mm"`, `"11 13/16 in"`.': [
    test(
      "records/piece_file",
      "readPieceFolder() reads lengths as text or as value and unit",
    ),
  ],
  "One line of `readings.csv` is one reading; only `session, zeroing, zone, reading` are required.":
    [PAGES],
  "Or fill in a bench sheet under `sheets/`: a row for each diameter, a column for each zone.":
    [test(
      "records/scan_readings",
      "scanReadings() reads bench sheets with zones on either side, settings and no zeroing",
    )],
  "What a spreadsheet makes of it (semicolons, decimal commas, units in the cell) is read; what could mean two things is refused with its line, never guessed.":
    [
      test(
        "records/scan_readings_siblings",
        "scanReadings() reads every delimiter with decimal commas, and an instruction to the spreadsheet above",
      ),
      test(
        "records/read_piece_folder",
        "readPieceFolder() reads unit suffixes, mends inch quotes and refuses two units",
      ),
      test(
        "records/scan_readings",
        "scanReadings() asks about 1,234 and 1.234 unless the file or the user settles it",
      ),
    ],
  "`deno task check my-mirror` names every problem at once: file, line, value, what to do.":
    [test(
      "tasks/check",
      "check() tells every refusal of every file at once and ends with 1",
    )],
  "`deno task report my-mirror` writes `my-mirror/report/session.html`, the notebook as run, and `results.json` with units.":
    [test(
      "tasks/report",
      "task report writes page, notebook and results, and prints the answer and the path",
    )],
  "It changes none of your own files.": [PAGES],
  'If it says "measure more", it also says how many sets would probably decide.':
    [
      test(
        "narrative/session_report",
        "sessionReport() advises reading, never a stroke, while the verdict is open",
      ),
      [
        "tests/studies/RESULTS.md",
        "The stated number of sets decides in 80 % of fresh sessions",
      ],
    ],
  'What does this one reading say? | `deno task radius "0.715 mm" --folder my-mirror`':
    [
      test(
        "tasks/radius",
        "task radius answers a reading with R, focal length, power, whole sag and depth",
      ),
      COMMANDS,
    ],
  "Will you write down what I read, as I read? | `deno task record my-mirror`":
    [
      test(
        "tasks/record",
        "task record keeps each reading with its place, answers R and the difference from the centre of the set",
      ),
      test(
        "tasks/record_kill",
        "task record loses no answered reading and tears no line when killed at ten random moments",
      ),
    ],
  "How good is the gauge, and what would decide? | `deno task gauge my-mirror`":
    [test(
      "narrative/gauge_report",
      "openGaugeStudy() finds the warm hands of one person and what a plan needs",
    )],
  "Which ring, how many sets, in what order? | `deno task plan my-mirror`": [
    test(
      "narrative/plan_report",
      "openPlan() says how sure the radius is, from what, and names a ring for each question",
    ),
    test(
      "tasks/gauge_plan",
      "task gauge writes page, notebook, results and a plan that the readers read back once it is filled in",
    ),
  ],
  "How fast does it go, and when do I stop? | `deno task history my-mirror`": [
    test(
      "tasks/history",
      "task history writes page, notebook and results, looking back to a session",
    ),
    [
      "tests/studies/RESULTS.md",
      "Forecasts of work cover, and the risk of passing the target holds",
    ],
  ],
  "What focal length will this radius become? | `deno task focal my-mirror --shop SHOP`":
    [test(
      "narrative/focal_report",
      "openFocal() foretells by a dozen pieces, with the chance of landing and where to leave",
    )],
  "How do all my pieces stand? | `deno task report SHOP`": [
    test(
      "tasks/report_index",
      "task report over a folder of pieces lists each with its answer, date and link, and why one has none",
    ),
  ],
  "Can I use figures and tables elsewhere? | `deno task export my-mirror`": [
    test(
      "tasks/export",
      "task export writes every figure and table of every report, and all results as one JSON",
    ),
  ],
  "What can I teach it with? | `deno task teach`, `deno task handout my-mirror`, `deno task exercise --seed 7 --students 12`":
    [
      test(
        "tasks/teach",
        "task teach writes the class as one page with live figures, and its notebook",
      ),
      test(
        "tasks/handout",
        "task handout writes a sheet and a card for each ring, and touches nothing else",
      ),
      test(
        "tasks/exercise",
        "task exercise makes folders that check and report take, the key apart, the same bytes for a seed",
      ),
    ],
  "The radius is given as R ± U, 95 % sure, from everything you gave a figure for: repeating, display step, gauge scale, ring, balls, flat.":
    [
      test(
        "uncertainty/radius_budget",
        "radiusBudget() has the sensitivities of the closed form, each source alone",
      ),
      [
        "tests/studies/RESULTS.md",
        "Intervals of zone differences cover, and verdicts err in no more than 5 %",
      ],
    ],
  "What nobody gave a figure for is named.": [
    test(
      "narrative/session_report",
      "budgetReasons() ranks the sources and says what was not counted",
    ),
  ],
  'WITHIN tolerance means that every pair of zones was shown to agree; "no difference shows" is never called a sphere.':
    [[
      "tests/studies/RESULTS.md",
      "Intervals of zone differences cover, and verdicts err in no more than 5 %",
    ]],
  'Identical readings are "limited by the display", not certain.': [
    test(
      "narrative/session_report",
      "limitSentences() calls identical readings limited by the display",
    ),
    PAGES,
  ],
  "Three feet cannot see astigmatism, however large.": [
    test(
      "geometry/contact_consequences",
      "exact contact does not see astigmatism at any offset and rotation",
    ),
  ],
  "Two feet out cannot see a narrow edge fault.": [
    test(
      "zones/unseen",
      "unseenBy() finds the rim that two feet out leave untouched, and that one would reach it",
    ),
  ],
  "Whether pits are gone is for the loupe.": [
    test(
      "narrative/history_report",
      "historyPits() reads allowance, thickness and the loupe, and never clears from sag",
    ),
  ],
  "Slurry that dries is silica dust, blanks are heavy and their edges cut, and a polished or wet mirror must never face the Sun: see the last part of each page, and your local rules first.":
    [test(
      "narrative/history_report",
      "workSafety() names the cautions that the log calls for",
    )],
  "`deno task kernel` installs a notebook kernel for Jupyter: Stop keeps the variables, and inches where millimetres belong are refused before a cell runs.":
    [
      test(
        "kernel/install_kernel",
        "task kernel proves itself, installs, serves a notebook anywhere by its spec alone, and goes away",
      ),
      test(
        "kernel/interrupt",
        "Kernel() stops every endless cell, keeps the variables and goes on, five times running",
      ),
      test(
        "kernel/checked",
        "Kernel() refuses inches where millimetres belong before the cell does anything, in words",
      ),
    ],
  "The pages above are notebooks run on it.": [
    test(
      "tasks/limits",
      "every notebook of the project runs within the limits of a report",
    ),
  ],
  "A notebook is code: run by these tasks it may read the piece's folder, this project's lib, notebooks and data, and the runtime's own cache, and do nothing else; on Windows its reads are not limited.":
    [
      test(
        "tasks/limits",
        "task report refuses network, environment, program, write and foreign read, each with its cell, and does none of it",
      ),
      test(
        "tasks/limits",
        "task report leaves a notebook no side door: workers, require, packages, stores, native code, its own permissions",
      ),
    ],
  "**In Jupyter it may do all that you may do.**": [
    test(
      "kernel/install_kernel",
      "task kernel proves itself, installs, serves a notebook anywhere by its spec alone, and goes away",
    ),
  ],
  "[Your files](notebooks/guide/your-files.md): every file and column, to copy.":
    [
      PAGES,
      test(
        "documentation/guide",
        "your-files.md names every column and every key that the readers know",
      ),
    ],
  "[What the numbers mean](notebooks/guide/what-the-numbers-mean.md), without statistics; [all words](notebooks/guide/glossary.md).":
    [
      test(
        "documentation/pages",
        "what-the-numbers-mean.md types no number with a unit that no block prints",
      ),
      test(
        "documentation/glossary",
        "glossary.md is the glossary of the reports, word for word",
      ),
    ],
  "[When something goes wrong](notebooks/guide/when-something-goes-wrong.md).":
    [test(
      "documentation/guide",
      "when-something-goes-wrong.md quotes nothing that the program does not print",
    )],
  "[How often intervals and verdicts are right](tests/studies/RESULTS.md), by simulation; [speed](tests/benchmarks/RESULTS.md), side by side.":
    [
      [
        "tests/studies/RESULTS.md",
        "Intervals of zone differences cover, and verdicts err in no more than 5 %",
      ],
      ["tests/benchmarks/RESULTS.md", "nbconvert"],
    ],
  "All data in `data/` is invented by a seeded simulation and says so.": [
    test(
      "tasks/demo_data",
      "demoFiles() makes the committed demo pieces again, byte by byte",
    ),
    test(
      "tasks/demo_data",
      "every demo piece says that it is invented, and is read without a refusal",
    ),
  ],
  "MIT licence.": [["LICENSE", "MIT License"]],
};

/** Sentences that claim nothing of the program. */
export const NO_CLAIM: readonly string[] = [
  "You grind a telescope mirror or a lens and measure it with a three-ball gauge: zero on a flat, read near the centre, half way out and at the edge, zero again, take another diameter.",
  "Read the work.",
  "Read the first three sentences.",
  "[DEVELOPERS.md](DEVELOPERS.md): a program of your own, first change, layers.",
];
