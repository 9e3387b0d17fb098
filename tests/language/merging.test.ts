import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { mergeTexts } from '../../language/merging/merge-texts';
import { conflictsIn } from '../../language/parsing/conflicts';
import { services, start } from './services';

beforeAll(() => start());

const markers = { size: 7, ours: 'ours', theirs: 'theirs' };

function merged(base: string, ours: string, theirs: string): { text: string; conflicts: number } {
    const answer = mergeTexts({ base, ours, theirs }, markers, services);
    if (answer === undefined) throw new Error('It was left to the lines.');
    return answer;
}

const tray = `// The tray of the ferry house.
use "shop.kerf"

recipe tray "Tray" {
  issue 3
  make 2
  laser shed
  art moon "moon.svg" { width 40 mm }
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }

  // The moon goes in first.
  engrave pocket on tray {
    art moon at 150, 100 mm
    depth 0.54 mm // enough
    air off
  }
  seal tray with shellac { coats 2 }
  wait 24 h "the shellac dries"
  sand tray { take 0.05 mm  grits 180, 240 }
}

run tray 2026-11-20 {
  issue 3
  pocket of walnut-12 80 % at 250 mm/s depth 0.55 mm
  note "The tip is thin."
}

board walnut-12 { wood black-walnut  thickness 12 mm }
`;

const edit = (...pairs: [from: string, to: string][]): string =>
    pairs.reduce((text, [from, to]) => {
        expect(text).toContain(from);
        return text.replace(from, () => to);
    }, tray);
const run = (day: string, note: string) => `\nrun tray ${day} {\n  issue 3\n  note "${note}"\n}\n`;
const board = 'board walnut-12 {';
const afterRun = '"The tip is thin."\n}\n';

/** Each with a piece of what comes out, or of what stands between the markers. */
describe('two edits that have nothing to do with each other both count', () => {
    it.each<[string, string, string, string]>([
        [
            'a depth and a width, in lines beside each other',
            edit(['0.54 mm', '0.56 mm']),
            edit(['air off', 'air on']),
            edit(['0.54 mm', '0.56 mm'], ['air off', 'air on']),
        ],
        [
            'two properties on one line',
            edit(['of walnut-12  size', 'of ash-10  size']),
            edit(['300 x 200 mm', '280 x 200 mm']),
            edit(['of walnut-12  size', 'of ash-10  size'], ['300 x 200 mm', '280 x 200 mm']),
        ],
        [
            'a property in either of two lines of one block on one line',
            edit(['take 0.05 mm', 'take 0.1 mm']),
            edit(['180, 240', '180, 240, 320']),
            edit(['take 0.05 mm', 'take 0.1 mm'], ['180, 240', '180, 240, 320']),
        ],
        [
            'both add a run behind the last one',
            edit([afterRun, `${afterRun}${run('2026-11-27', 'ours')}`]),
            edit([afterRun, `${afterRun}${run('2026-11-28', 'theirs')}`]),
            edit([afterRun, `${afterRun}${run('2026-11-27', 'ours')}${run('2026-11-28', 'theirs')}`]),
        ],
        [
            'both add a run of the same day',
            edit([afterRun, `${afterRun}${run('2026-11-27', 'ours')}`]),
            edit([afterRun, `${afterRun}${run('2026-11-27', 'theirs')}`]),
            edit([afterRun, `${afterRun}${run('2026-11-27', 'ours')}${run('2026-11-27', 'theirs')}`]),
        ],
        [
            'both add the same run',
            edit([afterRun, `${afterRun}${run('2026-11-27', 'both')}`]),
            edit([afterRun, `${afterRun}${run('2026-11-27', 'both')}`]),
            edit([afterRun, `${afterRun}${run('2026-11-27', 'both')}`]),
        ],
        [
            'one adds a note to a run, one adds a run',
            edit(['  note "The tip is thin."\n', '  note "The tip is thin."\n  note "Glue was old."\n']),
            edit([afterRun, `${afterRun}${run('2026-11-28', 'theirs')}`]),
            edit(
                ['  note "The tip is thin."\n', '  note "The tip is thin."\n  note "Glue was old."\n'],
                ['"Glue was old."\n}\n', `"Glue was old."\n}\n${run('2026-11-28', 'theirs')}`],
            ),
        ],
        [
            'both add a note',
            edit(['  note "The tip is thin."\n', '  note "The tip is thin."\n  note "ours"\n']),
            edit(['  note "The tip is thin."\n', '  note "The tip is thin."\n  note "theirs"\n']),
            edit(['  note "The tip is thin."\n', '  note "The tip is thin."\n  note "ours"\n  note "theirs"\n']),
        ],
        [
            'a step is renamed and says so, its depth changes elsewhere',
            edit(['engrave pocket on tray {\n', 'engrave hollow on tray {\n    was pocket\n']),
            edit(['0.54 mm', '0.56 mm']),
            edit(['engrave pocket on tray {\n', 'engrave hollow on tray {\n    was pocket\n'], ['0.54 mm', '0.56 mm']),
        ],
        [
            'a board is renamed, its thickness changes elsewhere',
            edit([board, 'board walnut-old {']),
            edit(['thickness 12 mm', 'thickness 11.8 mm']),
            edit([board, 'board walnut-old {'], ['thickness 12 mm', 'thickness 11.8 mm']),
        ],
        [
            'one step is taken away, another one changes',
            edit(['  wait 24 h "the shellac dries"\n', '']),
            edit(['coats 2', 'coats 3']),
            edit(['  wait 24 h "the shellac dries"\n', ''], ['coats 2', 'coats 3']),
        ],
        [
            'steps are put into another order, one of them changes',
            edit(
                ['  seal tray with shellac { coats 2 }\n', ''],
                ['grits 180, 240 }\n', 'grits 180, 240 }\n  seal tray with shellac { coats 2 }\n'],
            ),
            edit(['coats 2', 'coats 3']),
            edit(
                ['  seal tray with shellac { coats 2 }\n', ''],
                ['grits 180, 240 }\n', 'grits 180, 240 }\n  seal tray with shellac { coats 3 }\n'],
            ),
        ],
        [
            'declarations are put into another order, one of them changes',
            `${edit(['\nboard walnut-12 { wood black-walnut  thickness 12 mm }\n', ''])}`.replace(
                '\nrecipe tray',
                '\nboard walnut-12 { wood black-walnut  thickness 12 mm }\n\nrecipe tray',
            ),
            edit(['thickness 12 mm', 'thickness 11.8 mm']),
            edit(['\nboard walnut-12 { wood black-walnut  thickness 12 mm }\n', '']).replace(
                '\nrecipe tray',
                '\nboard walnut-12 { wood black-walnut  thickness 11.8 mm }\n\nrecipe tray',
            ),
        ],
        [
            'a comment and a line below it',
            edit(['// The moon goes in first.', '// The moon goes in before all else.']),
            edit(['art moon at 150, 100 mm', 'art moon at 140, 100 mm']),
            edit(
                ['// The moon goes in first.', '// The moon goes in before all else.'],
                ['art moon at 150, 100 mm', 'art moon at 140, 100 mm'],
            ),
        ],
        [
            'layout and a depth',
            tray.replaceAll('\n  ', '\n    '),
            edit(['0.54 mm', '0.56 mm']),
            edit(['0.54 mm', '0.56 mm']).replaceAll('\n  ', '\n    '),
        ],
        [
            'a title and the body',
            edit(['"Tray"', '"Serving tray"']),
            edit(['issue 3', 'issue 4']),
            edit(['"Tray"', '"Serving tray"'], ['issue 3', 'issue 4']),
        ],
        [
            'a file that was taken in and a recipe of its own',
            edit(['use "shop.kerf"\n', 'use "shop.kerf"\nuse "more.kerf"\n']),
            `${tray}\nrecipe other "Other" { issue 1 }\n`,
            `${edit(['use "shop.kerf"\n', 'use "shop.kerf"\nuse "more.kerf"\n'])}\nrecipe other "Other" { issue 1 }\n`,
        ],
    ])('%s', (_, ours, theirs, expected) => {
        expect(merged(tray, ours, theirs)).toEqual({ text: expected, conflicts: 0 });
        const turned = merged(tray, theirs, ours);
        expect(turned.conflicts).toBe(0);
        expect(words(turned.text)).toEqual(words(expected));
    });

    it('with the line ends of either side, and of the one that changed them', () => {
        const [ours, theirs] = [edit(['0.54 mm', '0.56 mm']), edit(['air off', 'air on'])];
        const expected = edit(['0.54 mm', '0.56 mm'], ['air off', 'air on']);
        const wide = (text: string) => text.replaceAll('\n', '\r\n');
        expect(merged(wide(tray), wide(ours), wide(theirs)).text).toBe(wide(expected));
        expect(merged(tray, wide(ours), theirs).text).toBe(wide(expected));
        expect(merged(tray, ours, wide(theirs)).text).toBe(wide(expected));
        expect(merged(wide(tray), ours, wide(theirs)).text).toBe(expected);
    });

    it('where a file ends without a line break', () => {
        const base = tray.trimEnd();
        const answer = merged(base, `${base}\n${run('2026-11-27', 'ours')}`, `${base}\n${run('2026-11-28', 'theirs')}`);
        expect(answer).toEqual({
            text: `${base}\n${run('2026-11-27', 'ours')}${run('2026-11-28', 'theirs')}`,
            conflicts: 0,
        });
    });

    it('where both begin a file', () => {
        const answer = merged('', run('2026-11-27', 'ours').trimStart(), run('2026-11-28', 'theirs').trimStart());
        expect(answer).toEqual({ text: `${run('2026-11-27', 'ours')}${run('2026-11-28', 'theirs')}`.trimStart(), conflicts: 0 });
    });

    it('a comment at the end stays one where both add behind it', () => {
        const base = `${tray}\n// Runs of the winter:\n`;
        const answer = merged(base, `${base}${run('2026-11-27', 'ours')}`, `${base}${run('2026-11-28', 'theirs')}`);
        expect(answer.conflicts).toBe(0);
        expect(answer.text.split('Runs of the winter')).toHaveLength(2);
        expect(answer.text).toContain('"ours"');
        expect(answer.text).toContain('"theirs"');
    });
});

describe('a routine and places of a recipe', () => {
    const base = `routine wax for piece {
  mask piece
  wait 24 h "it dries"
}
recipe tray {
  blank tray { size 300 x 200 mm }
  places slots on tray 3 x 2 every 40 x 40 mm
  follow wax on tray
}
`;
    it('are merged like anything else', () => {
        const ours = base.replace('24 h', '12 h').replace('3 x 2', '4 x 2');
        const theirs = base
            .replace('  mask piece\n', '  mask piece\n  peel piece\n')
            .replace('40 x 40 mm\n', '40 x 40 mm\n  places more on tray 1 x 1 every 9 x 9 mm\n');
        const { text, conflicts } = merged(base, ours, theirs);
        expect(conflicts).toBe(0);
        expect(text).toBe(theirs.replace('24 h', '12 h').replace('3 x 2', '4 x 2'));
    });
    it('and two orders of its steps are a conflict', () => {
        const ours = base.replace('  mask piece\n', '  mask piece\n  peel piece\n');
        const theirs = base.replace('  mask piece\n', '  mask piece\n  sand piece { grits 240 }\n');
        expect(merged(base, ours, theirs).conflicts).toBe(1);
    });
});

describe('edits that meet come between markers', () => {
    it.each<[string, string, string, string, string]>([
        [
            'one line, two figures',
            edit(['0.54 mm', '0.56 mm']),
            edit(['0.54 mm', '0.50 mm']),
            '    depth 0.56 mm // enough\n',
            '    depth 0.50 mm // enough\n',
        ],
        [
            'one takes a step away, the other one changes it',
            edit(['  seal tray with shellac { coats 2 }\n', '']),
            edit(['coats 2', 'coats 3']),
            '',
            '  seal tray with shellac { coats 3 }\n',
        ],
        [
            'both add a step at one place',
            edit(['  sand tray', '  mask tray\n  sand tray']),
            edit(['  sand tray', '  peel tray\n  sand tray']),
            '  mask tray\n',
            '  peel tray\n',
        ],
        [
            'both add a board of one name',
            `${tray}\nboard oak { wood white-oak  thickness 9 mm }\n`,
            `${tray}\nboard oak { wood white-oak  thickness 12 mm }\n`,
            'board oak { wood white-oak  thickness 9 mm }\n',
            'board oak { wood white-oak  thickness 12 mm }\n',
        ],
        [
            'both add a property',
            edit(['    air off\n', '    air off\n    pitch 0.10 mm\n']),
            edit(['    air off\n', '    air off\n    pitch 0.12 mm\n']),
            '    pitch 0.10 mm\n',
            '    pitch 0.12 mm\n',
        ],
        [
            'two titles',
            edit(['"Tray"', '"Ours"']),
            edit(['"Tray"', '"Theirs"'], ['issue 3', 'issue 4']),
            'recipe tray "Ours" {\n',
            'recipe tray "Theirs" {\n',
        ],
        [
            'both change a block on one line: the block',
            edit(['take 0.05 mm', 'take 0.1 mm']),
            edit(['take 0.05 mm', 'take 0.2 mm']),
            '  sand tray { take 0.1 mm  grits 180, 240 }\n',
            '  sand tray { take 0.2 mm  grits 180, 240 }\n',
        ],
    ])('%s', (_, ours, theirs, first, second) => {
        const { text, conflicts } = merged(tray, ours, theirs);
        expect(conflicts).toBe(1);
        const [found, ...more] = conflictsIn(text);
        expect(more).toEqual([]);
        expect(found).toMatchObject({ first: { text: first, name: 'ours' }, second: { text: second, name: 'theirs' } });
        expect(text.slice(0, found!.offset).split('\n').length).toBeGreaterThan(1);
    });

    it('as long as a marker is asked to be', () => {
        const answer = mergeTexts(
            { base: tray, ours: edit(['0.54 mm', '0.56 mm']), theirs: edit(['0.54 mm', '0.50 mm']) },
            { ...markers, size: 9 },
            services,
        );
        expect(answer?.text).toMatch(/^<{9} ours\n.*\n={9}\n.*\n>{9} theirs$/m);
    });

    it('what else changed is merged beside them', () => {
        const { text, conflicts } = merged(
            tray,
            edit(['0.54 mm', '0.56 mm'], ['make 2', 'make 5']),
            edit(['0.54 mm', '0.50 mm'], ['coats 2', 'coats 3']),
        );
        expect(conflicts).toBe(1);
        expect(text).toContain('make 5');
        expect(text).toContain('coats 3');
    });
});

describe('what cannot be read is left to the lines', () => {
    it.each<[string, string, string, string]>([
        ['a broken line', tray, edit(['0.54 mm', '0.54 mm {']), edit(['air off', 'air on'])],
        [
            'a text with the markers of a merge',
            tray,
            `${tray}<<<<<<< a\n=======\nrecipe b { issue 1 }\n>>>>>>> b\n`,
            tray.replace('off', 'on'),
        ],
        ['a later edition', tray, `edition 2031\n${tray}`, edit(['air off', 'air on'])],
        ['no recipe at all', 'a\n', 'b\n', 'c\n'],
    ])('%s', (_, base, ours, theirs) => {
        expect(mergeTexts({ base, ours, theirs }, markers, services)).toBeUndefined();
    });
});

function words(text: string): string[] {
    return (text.match(/\S+/g) ?? []).toSorted();
}

/** Places of the recipe, each with what can become of it; no two are the same statement. */
const places: readonly (readonly [from: string, ...to: string[]])[] = [
    ['// The tray of the ferry house.\n', '// The tray of the old ferry house.\n'],
    ['"Tray"', '"Serving tray"'],
    ['  issue 3\n  make', '  issue 4\n  make'],
    ['  make 2\n', '  make 5\n', ''],
    ['{ width 40 mm }', '{ width 42 mm }', '{ width 40 mm  threshold 50 % }'],
    ['of walnut-12  size', 'of ash-10  size'],
    ['  // The moon goes in first.\n', '  // The moon comes first.\n', ''],
    ['art moon at 150, 100 mm', 'art moon at 140, 100 mm'],
    ['depth 0.54 mm', 'depth 0.56 mm', 'tone 60 %'],
    ['    air off\n', '    air off\n    pitch 0.10 mm\n', ''],
    ['coats 2', 'coats 3'],
    [
        '  wait 24 h "the shellac dries"\n',
        '  wait 12 h "the shellac dries"\n',
        '  wait 24 h "the shellac dries"\n  mask tray\n',
        '',
    ],
    ['180, 240', '180, 240, 320'],
    ['depth 0.55 mm', 'depth 0.57 mm', 'depth 0.55 mm width 3 mm'],
    [afterRun, `${afterRun}${run('2026-11-27', 'a')}`, `"The tip is thin."\n  note "Glue was old."\n}\n`],
    ['thickness 12 mm', 'thickness 11.8 mm'],
];

type Edit = readonly [place: number, choice: number];
const someEdits = fc.uniqueArray(
    fc.tuple(fc.nat(places.length - 1), fc.nat(2)).map(([place, choice]): Edit => [place, choice % (places[place]!.length - 1)]),
    { selector: ([place]) => place, maxLength: 6 },
);

function edited(edits: readonly Edit[]): string {
    return edits.reduce((text, [place, choice]) => text.replace(places[place]![0], () => places[place]![1 + choice]!), tray);
}

describe('whatever is edited', () => {
    it('unlike edits of either side are both there, and in the same words whichever comes first', () => {
        fc.assert(
            fc.property(someEdits, fc.func(fc.boolean()), (edits, isOurs) => {
                const mine = edits.filter((each) => isOurs(each));
                const theirs = edits.filter((each) => !isOurs(each));
                const answer = merged(tray, edited(mine), edited(theirs));
                expect(answer).toEqual({ text: edited(edits), conflicts: 0 });
                expect(words(merged(tray, edited(theirs), edited(mine)).text)).toEqual(words(edited(edits)));
            }),
            { numRuns: 60, seed: 15 },
        );
    });

    it('merge(x, x, y) and merge(x, y, x) are y, and so is merge(x, y, y)', () => {
        fc.assert(
            fc.property(someEdits, someEdits, (first, second) => {
                const [x, y] = [edited(first), edited(second)];
                for (const [base, ours, theirs] of [
                    [x, x, y],
                    [x, y, x],
                    [x, y, y],
                ] as const)
                    expect(merged(base, ours, theirs)).toEqual({ text: y, conflicts: 0 });
            }),
            { numRuns: 30, seed: 15 },
        );
    });

    it('no word of either side is lost, whether they meet or not', () => {
        fc.assert(
            fc.property(someEdits, someEdits, (first, second) => {
                const [ours, theirs] = [edited(first), edited(second)];
                const answer = mergeTexts({ base: tray, ours, theirs }, markers, services);
                if (answer === undefined) return;
                const before = new Set(words(tray));
                const now = new Set(words(answer.text));
                for (const word of [...words(ours), ...words(theirs)]) if (!before.has(word)) expect(now).toContain(word);
                expect(conflictsIn(answer.text)).toHaveLength(answer.conflicts);
            }),
            { numRuns: 60, seed: 15 },
        );
    });
});
