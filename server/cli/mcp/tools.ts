import { techniques } from '../../../shared/view/techniques';

/** What an assistant may ask for, and the command line that answers it. */
export interface Tool {
    readonly name: string;
    readonly title: string;
    readonly description: string;
    /** JSON Schema of what it takes. */
    readonly properties: Readonly<Record<string, Field>>;
    readonly required: readonly string[];
    /** Only where the server was started with leave to write. */
    readonly writes: boolean;
    readonly command: (given: Given) => Command;
}

export type Given = Readonly<Record<string, unknown>>;

/** A command line and what it reads from standard input. */
export interface Command {
    readonly args: readonly string[];
    /** Files and folders, held to the server's folder. */
    readonly files: readonly string[];
    readonly input?: string;
}

interface Field {
    readonly type: 'string' | 'boolean' | 'integer' | 'array';
    readonly items?: { readonly type: 'string' };
    readonly enum?: readonly string[];
    readonly description: string;
}

const text = (description: string): Field => ({ type: 'string', description });
const yes = (description: string): Field => ({ type: 'boolean', description });
const list = (description: string): Field => ({ type: 'array', items: { type: 'string' }, description });

const files = list('Recipe files or folders below the server’s folder; everything there where nothing is said.');
const draft = {
    text: text('Text of a recipe file that is not saved, instead of files.'),
    as: text('Name of a file beside whose stock and art the text is read, such as drafts/lid.kerf.'),
};
const json = '--format=json';

export const tools: readonly Tool[] = [
    tool(
        'check',
        'Check recipes',
        'What would ruin a piece: findings with place, severity, rule, message and ways to mend them.',
        {
            properties: {
                files,
                ...draft,
                since: text('Git revision: only what a change since then reaches.'),
                gained: yes('With since: only findings that this revision does not have.'),
            },
            command: (given) =>
                withDraft(given, ['check', json, ...option('since', given.since), ...flag('gained', given.gained)]),
        },
    ),
    tool(
        'plan',
        'Plan recipes',
        'Everything that is worked out of recipes: settings, depths with ranges, stack, fill, times, cost. mm, s, W.',
        {
            properties: {
                files,
                ...draft,
                recipe: text('Only the recipe of this name.'),
                start: text('Day on which the work begins, such as 2026-12-07.'),
            },
            command: (given) => withDraft(given, ['plan', ...option('recipe', given.recipe), ...option('start', given.start)]),
        },
    ),
    tool('diff', 'Compare two versions', 'What differs between two versions of recipes, and what follows from it.', {
        properties: {
            before: text('Git revision; the last commit where nothing is said.'),
            after: text('Git revision; the work tree where nothing is said.'),
            files,
        },
        command: (given) => ({
            args: ['diff', json, revision(given.before) ?? 'HEAD', ...many(revision(given.after))],
            files: words(given.files),
        }),
    }),
    tool('history', 'Runs beside plans', 'The last runs of each recipe beside the plans that they followed.', {
        properties: { files },
        command: (given) => ({ args: ['history', json], files: named(given.files) }),
    }),
    tool(
        'week',
        'Plan the week',
        'All that is ordered, in one book: who does what when, what is late and why, what to cut and buy.',
        {
            properties: { start: text('First day, such as 2026-12-07.'), files },
            required: ['start'],
            command: (given) => ({ args: ['week', json, ...option('start', given.start)], files: named(given.files) }),
        },
    ),
    tool(
        'explain_rule',
        'Explain a rule',
        'What a rule looks at, why it matters, how it is mended and where it comes from; without a name all of them.',
        {
            properties: { rule: text('Name of the rule, such as thin-floor.') },
            command: (given) => ({ args: ['explain', json], files: many(word(given.rule)) }),
        },
    ),
    tool(
        'stock',
        'Built-in stock',
        'Woods, resins, glues, sealers and finishes that are built in; with sources how each line is known.',
        {
            properties: { names: list('Names, such as black-walnut.'), sources: yes('How each line is known, with its source.') },
            command: (given) => ({ args: ['stock', ...flag('sources', given.sources)], files: words(given.names) }),
        },
    ),
    tool('vocabulary', 'Words of the language', 'Words of the recipe language with place, meaning, units, and an example.', {
        properties: { words: list('Only these words.') },
        command: (given) => ({ args: ['vocabulary', json], files: words(given.words) }),
    }),
    tool(
        'depth_curve',
        'Depth curve of a coupon',
        'What the squares of a coupon say: facts of the fit, and depth by dose with its range.',
        {
            properties: { board: text('Board or veneer.'), laser: text('Laser.'), files },
            required: ['board', 'laser'],
            command: (given) => ({
                args: ['curve', json],
                files: [...many(word(given.board)), ...many(word(given.laser)), ...named(given.files)],
            }),
        },
    ),
    tool('format', 'Lay a text out', 'The text of a recipe file as the editor lays it out.', {
        properties: draft,
        required: ['text'],
        command: (given) => withDraft(given, ['format']),
    }),
    tool(
        'new_recipe',
        'Begin a recipe',
        'Begins a recipe from what the shop has and tries it out before it is written. Nothing that is there is written over.',
        {
            properties: {
                name: text('Title of the piece.'),
                technique: { ...text('How it is made.'), enum: techniques },
                board: text('The board.'),
                veneer: text('The veneer of an inlay.'),
                laser: text('The laser.'),
                colour: text('What a filled one is filled with.'),
                size: text('The blank in mm, such as 120x80.'),
            },
            required: ['name', 'technique'],
            writes: true,
            command: (given) => ({
                args: [
                    'new',
                    ...['technique', 'board', 'veneer', 'laser', 'colour', 'size'].flatMap((name) => option(name, given[name])),
                ],
                files: many(word(given.name)),
            }),
        },
    ),
    tool(
        'write_files',
        'Write files for machine and bench',
        'Writes the files of recipes into made/ beside them. What somebody changed there by hand is kept.',
        {
            properties: { files },
            required: ['files'],
            writes: true,
            command: (given) => ({ args: ['build'], files: named(given.files) }),
        },
    ),
    tool('format_files', 'Lay files out', 'Lays recipe files out in place.', {
        properties: { files },
        required: ['files'],
        writes: true,
        command: (given) => ({ args: ['format', '--write'], files: named(given.files) }),
    }),
];

/** Whether what stands behind the options of a command are files rather than names. */
export function takesFiles(command: string): boolean {
    return !['explain', 'stock', 'vocabulary', 'new'].includes(command);
}

function tool(
    name: string,
    title: string,
    description: string,
    of: Pick<Tool, 'properties' | 'command'> & Partial<Pick<Tool, 'required' | 'writes'>>,
): Tool {
    return { required: [], writes: false, ...of, name, title, description };
}

function withDraft(given: Given, args: readonly string[]): Command {
    if (typeof given.text !== 'string') return { args, files: named(given.files) };
    const as = typeof given.as === 'string' && given.as !== '' ? given.as : 'draft.kerf';
    return { args: [...args, `--as=${as}`], files: ['-'], input: given.text };
}

function option(name: string, value: unknown): string[] {
    return typeof value === 'string' && value !== '' ? [`--${name}=${value}`] : [];
}

function flag(name: string, value: unknown): string[] {
    return value === true ? [`--${name}`] : [];
}

function word(value: unknown): string | undefined {
    return typeof value === 'string' && value !== '' ? value : undefined;
}

/** A revision is no option and no file. */
function revision(value: unknown): string | undefined {
    const name = word(value);
    if (name === undefined) return undefined;
    if (name.startsWith('-') || /\.kerf$|[\s:]/.test(name)) throw new Error(`${name} is no revision.`);
    return name;
}

function many(value: string | undefined): string[] {
    return value === undefined ? [] : [value];
}

function words(value: unknown): string[] {
    return Array.isArray(value) ? value.filter((each): each is string => typeof each === 'string') : [];
}

function named(value: unknown): string[] {
    const all = words(value);
    return all.length === 0 ? ['.'] : all;
}
