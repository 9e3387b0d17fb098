import { fillColours } from '../../../shared/view/fill-colours';
import { techniques } from '../../../shared/view/techniques';
import type { CommandUsage } from './command-usage';
import { flag, format, word } from './options';
import { curveUsage, explainUsage, layUsage, stockUsage, vocabularyUsage } from './reference-usages';

const recipe = word('NAME', 'Only this recipe.');
const clean = flag('Take away what an earlier time left and this one does not write; only what Kerfbook wrote itself.');
const dryRun = flag('Only say what would be written and taken away.');
const start = word(
    'DATE',
    'When the work begins, such as 2026-11-26 or 2026-11-26T08:00; without it the days are counted from the start.',
);
const as = word('FILE', 'The text is a copy of this file: what it uses and its art lie beside that one.');
const readsInput = 'Instead of files, - reads one recipe file from standard input.';

export const newUsage = {
    name: 'new',
    forms: ['NAME --technique TECHNIQUE', '--samples'],
    brief: 'begin a recipe, or a workshop of samples',
    more: [
        'Begins a recipe from what the shop in this folder has, or from built-in woods and lasers, and tries it out before anything is written. Nothing that is there is written over.',
    ],
    options: {
        technique: { type: 'string', value: 'TECHNIQUE', choices: techniques, what: 'How the piece is made.' },
        board: word('NAME', 'The board; not needed where the shop has only one.'),
        veneer: word('NAME', 'The veneer of an inlay.'),
        laser: word('NAME', 'The laser; not needed where the shop has only one.'),
        colour: word(
            'COLOUR',
            `What a filled one is filled with: a resin of the shop, ${Object.keys(fillColours).join(', ')}, or a colour such as #1d5f7a.`,
        ),
        art: word('FILE', 'The drawing or picture; without it a drawing is written that you can draw over.'),
        size: word('SIZE', 'The blank in mm, such as 120x80.'),
        in: { type: 'string', default: '.', value: 'FOLDER', what: 'Where it is written.' },
        samples: {
            type: 'boolean',
            default: false,
            what: 'Copies the sample workshop instead: recipes, their art and a file of stock, to try things out on.',
        },
    },
    examples: [
        { line: 'kerfbook new --samples --in tryout', what: 'the sample workshop, in a folder of its own' },
        {
            line: 'kerfbook new "Tide coaster" --technique filled --board cherry-06 --laser shed --colour blue',
            what: 'a coaster with a blue fill',
        },
    ],
} as const satisfies CommandUsage;

export const checkUsage = {
    name: 'check',
    forms: ['[FILE or FOLDER ...]'],
    brief: 'what would go wrong',
    more: [
        'Says what the editor says, the gravest first: one finding a line, with the first way to mend it and what follows from it.',
        readsInput,
    ],
    options: {
        strict: flag('Warnings fail too.'),
        since: word(
            'REVISION',
            'Only files that a change since this revision reaches, also through what they use and their art.',
        ),
        gained: flag('Only findings that the revision named by --since does not have.'),
        staged: flag('Look at what is staged instead of the work tree; where no --since is given, since the last commit.'),
        'fail-on': word(
            'LIST',
            'Severities and rules that fail the check, such as error,thin-floor; errors where nothing is said.',
        ),
        allow: word('LIST', 'Rules that do not fail the check, such as stale-coupon,thin-floor. They are shown all the same.'),
        format: {
            type: 'string',
            default: 'text',
            value: 'FORMAT',
            choices: ['text', 'json', 'sarif', 'junit', 'markdown', 'annotations', 'checkstyle'],
            what: 'How it is written; annotations are workflow commands of a build service.',
        },
        as,
    },
    examples: [
        { line: 'kerfbook check', what: 'every recipe below this folder' },
        { line: 'kerfbook check --strict --since main', what: 'what this branch changes, for a build server' },
        { line: 'kerfbook check --staged --gained', what: 'what this commit would bring, for a hook' },
    ],
    codes: ['1 where something fails the check: an error, with --strict a warning, or what --fail-on names'],
} as const satisfies CommandUsage;

export const planUsage = {
    name: 'plan',
    forms: ['[FILE ...]'],
    brief: 'everything that was worked out, as JSON',
    more: ['One recipe is an object, several are a list. Numbers are in base units: mm, s, W.', readsInput],
    options: { recipe, shapes: flag('With the outlines of what is burnt.'), start, as },
    examples: [{ line: 'kerfbook plan heron-tray.kerf --start 2026-11-30', what: 'the plan, its days in the calendar' }],
} as const satisfies CommandUsage;

export const buildUsage = {
    name: 'build',
    forms: ['[FILE or FOLDER ...]'],
    brief: 'write the files for the machine and the bench',
    more: [
        'Writes real-size drawings and machine files for each set-up, the job sheet, the shopping list and the plan into made/NAME beside the recipe. What you changed by hand since is kept, and the new one lies beside it.',
    ],
    options: {
        recipe,
        out: word('FOLDER', 'Write below this folder instead.'),
        force: flag('Also over what you changed by hand, and although an error is open.'),
        clean,
        'dry-run': dryRun,
        start,
    },
    examples: [
        { line: 'kerfbook build heron-tray.kerf', what: 'into made/heron-tray' },
        { line: 'kerfbook build --dry-run', what: 'what all recipes here would write' },
    ],
    codes: ['1 where something of it was not written'],
} as const satisfies CommandUsage;

export const couponUsage = {
    name: 'coupon',
    forms: ['BOARD LASER [FILE ...]'],
    brief: 'a ladder of squares to burn and measure',
    more: [
        'Writes the drawing, the machine file and the tables to fill in for a board or veneer on a laser. Squares are numbered from the gentlest dose to the strongest.',
        'With --powers or --speeds these take turns along the ladder; with both, each power is burnt at each speed.',
        'With --next the squares are chosen for the depths that your recipes ask for, beside those that are measured; it says what each brings, and when it is enough.',
    ],
    options: {
        next: flag('The few squares that tell most, instead of a ladder.'),
        rungs: word(
            'COUNT',
            'How many squares, 4 to 60; 16 where nothing is said. With --next 1 to 12 at most; 6 where nothing is said.',
        ),
        passes: word('COUNT', 'The most passes of a square; 3 where nothing is said.'),
        pitch: word('MM', 'Between scan lines.'),
        powers: word('LIST', 'Per cent, such as 20,40,60,80.'),
        speeds: word('LIST', 'In mm/s, such as 100,200,400.'),
        cuts: word('COUNT', 'Strips to cut out for the kerf, 2 to 12; none where nothing is said.'),
        fits: word('COUNT', 'Plugs to try in an opening, 3 to 12, each larger by a step; none where nothing is said.'),
        out: word('FOLDER', 'Write below this folder instead of made/ beside the board.'),
        force: flag('Also over tables that you have filled in.'),
        clean,
        'dry-run': dryRun,
    },
    examples: [
        { line: 'kerfbook coupon walnut-12 shed --rungs 24', what: '24 squares for this board' },
        { line: 'kerfbook coupon walnut-12 shed --next', what: 'the squares that narrow most what recipes ask for' },
    ],
} as const satisfies CommandUsage;

export const diffUsage = {
    name: 'diff',
    forms: ['BEFORE AFTER', 'REVISION [REVISION] [FILE ...]'],
    brief: 'what differs between two versions, and what follows from it',
    more: [
        'Two files, or revisions of a git repository. One revision is set against the work tree; main... is where this branch left main.',
    ],
    options: {
        format: format(['text', 'markdown', 'json', 'html']),
        recipe,
        as,
        'exit-code': flag('Exit with 1 where something differs.'),
    },
    examples: [
        { line: 'kerfbook diff HEAD heron-tray.kerf', what: 'the last commit against the work tree' },
        { line: 'kerfbook diff main... --format markdown', what: 'all that this branch changes, for a pull request' },
    ],
} as const satisfies CommandUsage;

export const tableUsage = {
    name: 'table',
    forms: ['[FILE ...]'],
    brief: 'a recipe and its variants side by side',
    more: ['Shows what differs between a recipe and all that are based on it, or between the recipes named.'],
    options: {
        base: word('NAME', 'The family of this recipe.'),
        recipes: word('LIST', 'Any recipes, such as tide-coaster,slack-water.'),
        all: flag('Also what does not differ.'),
        format: format(['text', 'markdown', 'csv', 'json', 'html']),
    },
    examples: [{ line: 'kerfbook table tray-variants.kerf', what: 'the trays, a column each' }],
} as const satisfies CommandUsage;

export const weekUsage = {
    name: 'week',
    forms: ['[FILE or FOLDER ...] --start DATE'],
    brief: 'one book over all that is to be made: who does what when, what is late, what to cut and buy',
    more: [
        'Plans all that is ordered in these files and not made yet (order 2026-12-03 "…" { heron-tray 6 due 2026-12-18 }); without an order, every recipe for as many pieces as it makes. Hands and lasers are shared, waits are filled with other work, sheets are cut for all at once, and everything is bought once. Names of customers stay on your machine.',
        'The plan is a list schedule, not the best there is: it says what no plan can beat, and how far it is from that.',
    ],
    options: {
        start: word(
            'DATE',
            'When the first working day begins, such as 2026-11-26 or 2026-11-26T07:30; a date alone means eight in the morning.',
        ),
        makers: { type: 'string', default: '1', value: 'COUNT', what: 'Pairs of hands.' },
        closed: word('DAYS', 'Days of the week on which nobody works, such as sat,sun; without it every day is worked.'),
        format: {
            type: 'string',
            default: 'text',
            value: 'FORMAT',
            choices: ['text', 'json', 'html', 'icalendar', 'orders-csv', 'jobs-csv', 'shopping-csv'],
            what: 'How it is written; icalendar has the sittings and waits for a calendar, without customers.',
        },
    },
    examples: [
        { line: 'kerfbook week --start 2026-12-01 --closed sat,sun', what: 'all recipes below this folder' },
        {
            line: 'kerfbook week --start 2026-12-01 --makers 2 --format shopping-csv',
            what: 'what two people need for it, for a spreadsheet',
        },
    ],
} as const satisfies CommandUsage;

export const seasonUsage = {
    name: 'season',
    forms: ['[FILE or FOLDER ...]'],
    brief: 'what runs made, spoiled, took and cost, by recipe and in all',
    more: [
        'Sums the runs of these files that say what came of them: made 11, spoiled 1, took 5 h 20 min, by "Ida". Hours and cost are those that the recipe plans for the pieces that were begun.',
    ],
    options: {
        from: word('DATE', 'Only runs from this day on.'),
        to: word('DATE', 'Only runs up to this day.'),
        format: format(['text', 'csv', 'json', 'html']),
    },
    examples: [{ line: 'kerfbook season --from 2026-09-01 --to 2026-11-30', what: 'the autumn' }],
} as const satisfies CommandUsage;

export const historyUsage = {
    name: 'history',
    forms: ['[FILE ...]'],
    brief: 'the runs that are written down, beside the plans they followed',
    more: ['Tells what was planned by the version that was followed, what was measured, and whether depths drift over time.'],
    options: {
        recipe,
        last: { type: 'string', default: '5', value: 'COUNT', what: 'How many runs.' },
        format: format(['text', 'markdown', 'csv', 'json', 'html']),
    },
    examples: [{ line: 'kerfbook history --recipe heron-tray --last 10', what: 'the last ten runs of the tray' }],
} as const satisfies CommandUsage;

export const showUsage = {
    name: 'show',
    forms: ['FILE'],
    brief: 'a file as plain lines, for tools that compare lines',
    more: ['Says what is written and what follows for fit and depth; git diff can use it as a text filter.', readsInput],
    options: { all: flag('Also settings, amounts, times and money.'), as },
    examples: [{ line: 'kerfbook show heron-tray.kerf', what: 'the tray, one fact a line' }],
} as const satisfies CommandUsage;

export const mergeUsage = {
    name: 'merge',
    forms: ['BASE OURS THEIRS'],
    brief: "git's merge driver for recipes",
    more: ['Merges statement by statement instead of line by line. OURS becomes the merge, whole or not at all.'],
    options: {
        'marker-size': { type: 'string', default: '7', value: 'COUNT', what: 'How long conflict markers are.' },
        path: word('FILE', 'What the file is called in messages.'),
    },
    examples: [{ line: 'kerfbook merge %O %A %B --marker-size %L --path %P', what: 'as git calls it' }],
    codes: ['0 merged; 1 to 127 conflicts are left between markers; 129 it could not be done'],
} as const satisfies CommandUsage;

export const upgradeUsage = {
    name: 'upgrade',
    forms: ['[FILE or FOLDER ...]'],
    brief: 'write words of earlier editions as they are spelled today',
    more: ['Nothing else of a file changes. Files of a later edition are left alone.'],
    options: { 'dry-run': flag('Only say what it would rewrite.') },
    examples: [{ line: 'kerfbook upgrade --dry-run', what: 'what would change below this folder' }],
} as const satisfies CommandUsage;

export const formatUsage = {
    name: 'format',
    forms: ['[FILE or FOLDER ...]'],
    brief: 'lay recipes out as the editor does',
    more: [
        `Only blanks, line breaks and the order of clauses in a line change. Without --check or --write one file is laid out, onto standard output. ${readsInput}`,
    ],
    options: {
        check: flag('Only name the files that are not laid out.'),
        write: flag('Write them.'),
        as,
    },
    examples: [
        { line: 'kerfbook format --write', what: 'every recipe below this folder' },
        { line: 'kerfbook format --check', what: 'for a hook or a build server' },
    ],
    codes: ['1 with --check, where a file is not laid out'],
} as const satisfies CommandUsage;

export const mcpUsage = {
    name: 'mcp',
    forms: ['[FOLDER]'],
    brief: 'a server for assistants that speak the Model Context Protocol',
    more: [
        'Speaks over standard input and output, needs no network, and answers about the files of FOLDER or this folder alone, with what the other commands say. It only reads unless it is started with --write.',
    ],
    options: {
        write: flag('Recipes may be begun, laid out and upgraded, and files for machine and bench written, in this folder.'),
    },
    examples: [{ line: 'kerfbook mcp ~/workshop', what: 'the command to give to an assistant' }],
} as const satisfies CommandUsage;

export const serveUsage = {
    name: 'serve',
    forms: [''],
    brief: 'the language server, for any editor',
    more: ['Speaks over standard input and output. What an editor adds to the line, such as --stdio, is taken and ignored.'],
    options: {},
    examples: [{ line: 'kerfbook serve', what: 'the command to give to an editor' }],
} as const satisfies CommandUsage;

export const completionUsage = {
    name: 'completion',
    forms: ['SHELL'],
    brief: 'a script with which your shell completes commands and options',
    more: ['SHELL is bash, zsh or fish. The script is written to standard output; what to do with it stands in its first lines.'],
    options: {},
    examples: [{ line: 'source <(kerfbook completion bash)', what: 'for this terminal' }],
} as const satisfies CommandUsage;

/** In the order in which somebody meets them. */
export const usages: readonly CommandUsage[] = [
    newUsage,
    checkUsage,
    planUsage,
    buildUsage,
    couponUsage,
    diffUsage,
    tableUsage,
    weekUsage,
    seasonUsage,
    historyUsage,
    showUsage,
    mergeUsage,
    upgradeUsage,
    stockUsage,
    explainUsage,
    vocabularyUsage,
    curveUsage,
    layUsage,
    formatUsage,
    serveUsage,
    mcpUsage,
    completionUsage,
];
