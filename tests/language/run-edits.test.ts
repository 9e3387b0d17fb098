import { URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { runEdits, runFile } from '../../language/run-edits';
import { textFindings } from '../../language/text-findings';
import { makeChecklist } from '../../shared/view/make-checklist';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';
import { open, services } from './services';

const recipe = `recipe plate "Plate" {
  revision 2
  laser shed
  blank b { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on b { circle 30 mm  depth 0.5 mm  air off }
  check pocket { depth 0.45 .. 0.55 mm }
}
`;
const run = {
    recipe: 'plate',
    date: '2026-11-20',
    revision: 2,
    laser: 'shed',
    lines: ['pocket of walnut-12 80 % at 300 mm/s x 2 pitch 0.1 mm depth 0.53 mm'],
    notes: ['a "good" \\ one\nand more'],
};

async function written(text: string, what = run): Promise<string | undefined> {
    const edits = runEdits(await open(text), what, services);
    const [edit] = edits ?? [];
    return edit && text.slice(0, edit.offset) + edit.text + text.slice(edit.offset + edit.length);
}

describe('a finished run', () => {
    it('stands below the recipe and is read back as it was meant', async () => {
        const text = await written(`${shop}${recipe}`);
        const [lowered] = lowerFile(await open(text ?? ''), services);
        expect(lowered?.runs).toHaveLength(1);
        expect(lowered?.runs[0]).toMatchObject({ revision: 2, notes: ['a "good" \\ one and more'] });
        expect(lowered?.runs[0]?.burnt[0]).toMatchObject({ sheet: 'walnut-12', passes: 2, depth: { value: 0.53 } });
    });
    it('comes behind the last run of its recipe, with the line breaks of the file', async () => {
        const before = `${shop}${recipe}\nrun plate 2026-11-01 { revision 1 }\n\nboard oak { wood white-oak thickness 9 mm }\n`;
        const text = (await written(before.replaceAll('\n', '\r\n'))) ?? '';
        expect(text).toMatch(/run plate 2026-11-01 \{ (?:revision|issue) 1 \}\r\nrun plate 2026-11-20 \{\r\n/);
        expect(text.replaceAll('\r\n', '')).not.toContain('\n');
        expect(text.trimEnd()).toMatch(/board oak .*\}$/);
    });
    it('that could not be read back is not written', async () => {
        const text = `${shop}${recipe}`;
        expect(await written(text, { ...run, lines: ['pocket } board x {'] })).toBeUndefined();
        expect(await written(text, { ...run, lines: ['pocket depth'] })).toBeUndefined();
        expect(await written(text, { ...run, date: '2026-02-30' })).toBeUndefined();
        expect(await written(text, { ...run, revision: Number.NaN })).toBeUndefined();
    });
});

describe('a run in a file of its own', () => {
    const place = (at: string) => URI.parse(`${at}/runs/2026-11-20-plate-k7f3q.kerf`);

    it('is the run alone, with the mark of its recipe and the line breaks of that one’s file, and counts without a use', async () => {
        const home = await open(`${shop}${recipe}`.replaceAll('\n', '\r\n'), 'file:///own-1/plate.kerf');
        const text = runFile(home, place('file:///own-1'), run, services) ?? '';
        expect(text).toMatch(/^run plate 2026-11-20 \{\r\n {2}of plan [0-9a-f]{8}\r\n {2}issue 2\r\n/);
        const file = await open(text, place('file:///own-1').toString());
        expect(textFindings(file, services)).toEqual([]);
        const [lowered] = lowerFile(home, services);
        expect(lowered?.runs[0]).toMatchObject({ revision: 2, plan: { value: expect.stringMatching(/^[0-9a-f]{8}$/) } });
        expect(lowered?.runs[0]?.burnt[0]).toMatchObject({ depth: { value: 0.53 } });
    });
    it('says which file is meant where another one has a recipe of that name', async () => {
        const home = await open(`${shop}${recipe}`, 'file:///own-2/plate.kerf');
        await open(`${shop}${recipe}`, 'file:///own-2/a-copy.kerf');
        const text = runFile(home, place('file:///own-2'), run, services) ?? '';
        expect(text).toMatch(/^use "\.\.\/plate\.kerf"\n\nrun plate /);
        const file = await open(text, place('file:///own-2').toString());
        expect(textFindings(file, services)).toEqual([]);
        expect(lowerFile(home, services)[0]?.runs).toHaveLength(1);
    });
    it('that could not be read back is not written', async () => {
        const home = await open(`${shop}${recipe}`, 'file:///own-3/plate.kerf');
        expect(runFile(home, place('file:///own-3'), { ...run, lines: ['pocket } board x {'] }, services)).toBeUndefined();
    });
});

describe('the checklist', () => {
    it('has for each step what it is burnt in and with, and what is to be measured', async () => {
        const checklist = makeChecklist(await planOf(`${shop}${recipe}`));
        expect(checklist.laser).toBe('shed');
        const [pocket, check] = checklist.items;
        expect(pocket?.burnt?.words).toMatch(/^of walnut-12 80 % at \d+ mm\/s x \d pitch 0\.1 mm planned 0\.5 mm \+- 0\.\d+ mm$/);
        expect(check?.measures).toEqual([
            {
                step: 'pocket',
                what: 'depth',
                wish: '0.5 ± 0.05 mm',
                unit: 'mm',
                low: expect.closeTo(0.45),
                high: expect.closeTo(0.55),
            },
        ]);
        const text = await written(`${shop}${recipe}`, { ...run, lines: [`pocket ${pocket?.burnt?.words}`] });
        expect(text).toContain(`  pocket ${pocket?.burnt?.words}\n`);
        const [lowered] = lowerFile(await open(text ?? ''), services);
        expect(lowered?.runs[0]?.burnt[0]?.planned).toMatchObject({ value: 0.5, tolerance: expect.closeTo(0.11, 2) });
    });
});
