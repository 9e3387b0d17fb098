import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import type { Finding } from '../../shared/recipe/finding';
import { slips } from './keystrokes';
import { open, services } from './services';
import { read, step, workshop, worthMending } from './slipped';

it('a slip in one recipe leaves the others as they were', async () => {
    const recipes = ['heron-tray', 'seed-box', 'tide-coaster'];
    const parts = recipes.map((name) => read(`${name}.kerf`));
    const meant = await meaningOf([workshop, ...parts].join('\n'));
    for (const [index, part] of parts.entries()) {
        for (const slip of slips(part, step, index)) {
            const found = await meaningOf([workshop, ...parts.with(index, slip.text)].join('\n'));
            const others = recipes.filter((_name, other) => other !== index);
            const changed = others.filter((name) => found.get(name) !== meant.get(name));
            expect(changed, `${slip.what} at ${slip.offset} of ${recipes[index]}`).toEqual([]);
        }
    }
}, 120_000);

/** What each recipe of a text comes to, without places and without the runs, which see the steps of theirs. */
async function meaningOf(text: string): Promise<Map<string, string>> {
    const recipes = lowerFile(await open(text, 'file:///shop/slip.kerf'), services);
    const isPlace = (value: unknown) => typeof value === 'object' && value !== null && 'offset' in value && 'uri' in value;
    // A slip behind a recipe may have been its last line, so that recipe is marked incomplete.
    const apart = new Set(['settingsWhere', 'incomplete']);
    const plain = (key: string, value: unknown) => (apart.has(key) || isPlace(value) ? undefined : value);
    return new Map(recipes.map((recipe) => [recipe.name, JSON.stringify({ ...recipe, runs: [], measured: [] }, plain)]));
}

describe('a line break in the middle of something', () => {
    const whole = `${workshop}\n${read('heron-tray.kerf')}`;
    it.each([
        ['recipe heron-tray', 're\ncipe heron-tray', 're', 'recipe'],
        ['board walnut-12', 'board wal\n  nut-12', 'wal', 'walnut-12'],
        ['engrave pocket on', 'engrave poc\n  ket on', 'poc', 'pocket'],
        ['wood sugar-maple', 'wood sugar\n-maple', 'sugar', 'sugar-maple'],
        ['power 45 W', 'power 4\n  5 W', '4', '45'],
        ['thickness 0.6 mm +- 0.03', 'thickness 0.6 mm +\n- 0.03', '+', '+-'],
        ['at 400 mm/s', 'at 400 mm\n/s', 'mm', 'mm/s'],
        ['at 400 mm/s', 'at 400 mm/\n  s', 'mm/', 'mm/s'],
        ['colour #1d5f7a', 'colour #1d5\n  f7a', '#1d5', '#1d5f7a'],
        ['offcut 330', 'off\ncut 330', 'off', 'offcut'],
    ])('%j as %j is said at its first half, mended by a fix, and means what it meant', async (right, wrong, half, joined) => {
        const text = whole.replace(right, wrong);
        expect(text).not.toBe(whole);
        const findings = await worthMending(text);
        expect(findings.map(({ message }) => message)).toEqual([`A line break stands in the middle of \`${joined}\`.`]);
        const [{ where, fixes }] = findings as [Finding];
        expect(text.slice(where.offset, where.offset + where.length)).toBe(half);
        const [change] = fixes[0]!.changes;
        if (change?.do !== 'replace') throw new Error('It is no replacement.');
        const end = change.where.offset + change.where.length;
        expect(text.slice(0, change.where.offset) + change.text + text.slice(end)).toBe(whole);
        expect(await meaningOf(text)).toEqual(await meaningOf(whole));
    });

    it.each(['  spot 0.006 in\n  to', '  power 40 W\n  0.5 mm', '  focus by-hand\n  fieldd 600 x 400 mm'])(
        '%j is two lines, of which the second is broken',
        async (lines) => {
            const [finding] = await worthMending(`laser shed {\n  beam co2\n${lines}\n}\n`);
            expect(finding?.message).not.toContain('A line break');
        },
    );
});

describe('a name that is declared wrong', () => {
    it.each([
        ['laser shed', 'laser shd', 'laser'],
        ['board walnut-12', 'board walnut-21', 'board or veneer'],
        ['engrave pocket', 'engrave pockte', 'step'],
        ['blank tray', 'blank try', 'blank'],
    ])('%s as %s is said once, and mended where it stands', async (right, wrong, kind) => {
        const whole = `${workshop}\n${read('heron-tray.kerf')}`;
        const text = whole.replace(`${right} `, `${wrong} `);
        const name = right.split(' ')[1];
        const [finding, ...others] = await worthMending(text);
        expect(others).toEqual([]);
        expect(finding?.message).toMatch(new RegExp(`^There is no ${kind} called \`${name}\`, and \\d+ places name it\\.`));
        expect(finding?.related.at(-1)?.message).toContain('Declared here');
        const [fix] = finding!.fixes;
        expect(fix).toMatchObject({ title: `Call it \`${name}\` where it is declared`, preferred: true });
        const [change] = fix!.changes;
        if (change?.do !== 'replace') throw new Error('It is no replacement.');
        const { offset, length } = change.where;
        expect(text.slice(0, offset) + change.text + text.slice(offset + length)).toBe(whole);
        const hints = textFindings(await open(text), services).filter(({ rule }) => rule === 'unused-name');
        expect(hints.map(({ message }) => message)).toEqual([expect.stringContaining('and declared nowhere')]);
    });

    it('in the workshop file is told with that file wherever it is missed, and mended there', async () => {
        const stock = workshop.replace('board walnut-12 ', 'board walnut-21 ').replace(/coupon walnut-12[^}]*\}/, '');
        const shop = await open(stock, 'file:///shop/workshop.kerf');
        for (const name of ['heron-tray', 'other-tray']) {
            const text = `use "../workshop.kerf"\n${read('heron-tray.kerf')}`;
            const found = textFindings(await open(text, `file:///shop/recipes/${name}.kerf`), services);
            const errors = found.filter(({ severity }) => severity === 'error');
            expect(errors).toHaveLength(1);
            const [{ message, related, fixes }] = errors as [Finding];
            expect(message).toContain('../workshop.kerf has `walnut-21`: did you mean that, or is it mistyped there?');
            expect(related.at(-1)).toMatchObject({
                message: '`walnut-21` is declared here.',
                where: { uri: shop.uri.toString() },
            });
            const there = fixes.find(({ title }) => title === 'Call it `walnut-12` in ../workshop.kerf');
            expect(there?.changes).toMatchObject([
                { do: 'replace', text: 'walnut-12', where: { uri: shop.uri.toString(), length: 9 } },
            ]);
        }
    });

    it('is told with the file that has the likely one, also where that is used', async () => {
        await open(workshop.replaceAll('walnut-12', 'walnut-21'), 'file:///shop/workshop.kerf');
        const text = `use "workshop.kerf"\n${read('heron-tray.kerf')}`;
        const [finding] = textFindings(await open(text, 'file:///shop/heron-tray.kerf'), services);
        expect(finding?.message).toContain('Did you mean `walnut-21` of workshop.kerf?');
        expect(finding?.related.at(-1)?.where.uri).toBe('file:///shop/workshop.kerf');
    });

    it('is told apart from a name of its own', async () => {
        const text = 'recipe a "A" {\n  blank oak { of walnut-12 size 9 x 9 mm }\n  sand lid { take 0.1 mm }\n}\n';
        const findings = textFindings(await open(`${workshop}${text}`), services);
        expect(findings.find(({ rule }) => rule === 'unused-name')?.message).toContain('No step uses');
    });
});

describe('what follows from a slip is left unsaid', () => {
    const said = async (text: string) => (await worthMending(text)).map(({ message }) => message);
    const whole = `${workshop}\n${read('heron-tray.kerf')}`;

    it('names that the broken line would have declared', async () => {
        expect(await said(whole.replace('laser shed {', 'laaser shed {'))).toEqual([
            expect.stringContaining('There is no `laaser`'),
        ]);
        expect(await said(whole.replace('blank bird {', 'blankb ird {'))).toEqual([
            expect.stringContaining('There is no `blankb`'),
        ]);
    });
    it('steps of a recipe that a run does not find', async () => {
        expect(await said(whole.replace('run heron-tray 2026-11', 'run heron-trap 2026-11'))).toHaveLength(1);
    });
    it('what a variant lacks whose base is not there', async () => {
        const variant = 'recipe large based on heron-trap {\n  blank tray { size 360 x 206 mm }\n  without peel bird\n}\n';
        expect(await said(whole + variant)).toHaveLength(1);
    });
    it('the lines of a block whose head stands behind a comment', async () => {
        const text = whole.replace(/\nrecipe heron-tray/, 'recipe heron-tray');
        const findings = await worthMending(text);
        expect(findings.map(({ message }) => message)).toEqual([expect.stringContaining('`recipe` stands in a comment')]);
        expect(findings[0]?.fixes[0]?.changes).toMatchObject([{ do: 'replace', text: '\n' }]);
    });
    it('the lines of a block whose head has a word too many', async () => {
        const found = await said(whole.replace('engrave pocket on tray', 'engrave pocket onn tray'));
        expect(found).toEqual(['After `pocket` comes `on`, not `onn`.']);
    });
    it('the rest of a line of a run that has a word mistyped', async () => {
        expect(await said(whole.replace('depth 0.50 mm', 'dpeth 0.50 mm'))).toEqual([
            'There is no `dpeth` in a run. Did you mean `depth`?',
        ]);
    });
});
