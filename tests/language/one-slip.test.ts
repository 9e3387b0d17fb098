import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import type { Finding } from '../../shared/recipe/finding';
import { slips } from './keystrokes';
import { mark } from './marked';
import { open, services } from './services';

const samples = new URL('../../samples/', import.meta.url);
const read = (file: string) => readFileSync(new URL(file, samples), 'utf8').replaceAll(/^use .*$/gm, '');
const workshop = read('workshop.kerf');
/** Every sample whose own text is without fault, each with the workshop below it. */
const texts = readdirSync(samples)
    .filter((file) => file.endsWith('.kerf') && !/faulty|variants/.test(file))
    .map((file) => (file === 'workshop.kerf' ? workshop + read('heron-tray.kerf') : `${read(file)}\n${workshop}`));

/** One of so many characters slips; SLIP_STEP=1 tries every one. */
const step = Number(process.env.SLIP_STEP ?? 97);

async function worthMending(text: string): Promise<readonly Finding[]> {
    const findings = textFindings(await open(text, 'file:///shop/slip.kerf'), services);
    return findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
}

it('one keystroke that goes wrong is one thing to mend', async () => {
    const counts: number[] = [];
    let worst = { count: 0, shown: '' };
    for (const [index, text] of texts.entries()) {
        const before = (await worthMending(text)).length;
        for (const slip of slips(text, step, index)) {
            const findings = await worthMending(slip.text);
            const count = findings.length - before;
            counts.push(count);
            if (count > worst.count) worst = { count, shown: `${slip.what}:\n${mark(slip.text, findings)}` };
        }
    }
    const share = (most: number) => counts.filter((count) => count <= most).length / counts.length;
    expect(share(1), `${counts.length} slips, at worst ${worst.shown}`).toBeGreaterThanOrEqual(0.975);
    expect(share(2), worst.shown).toBeGreaterThanOrEqual(0.995);
    expect(worst.count, worst.shown).toBeLessThanOrEqual(4);
}, 120_000);

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
    const plain = (key: string, value: unknown) => (key === 'settingsWhere' || isPlace(value) ? undefined : value);
    return new Map(recipes.map((recipe) => [recipe.name, JSON.stringify({ ...recipe, runs: [] }, plain)]));
}

describe('a name that is declared wrong', () => {
    it.each([
        ['laser shed', 'laser shd', 'laser'],
        ['board walnut-12', 'board walnut-21', 'board or veneer'],
        ['engrave pocket', 'engrave pockte', 'engraving'],
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
