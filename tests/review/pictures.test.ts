import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FilmRow, ReviewPictures } from '../../shared/review/film-strip';
import { reviewHtml } from '../../shared/review/html/as-html';
import { heightsOf } from '../../shared/review/html/piece';
import { goodSamples, sampleText } from '../kit/samples';
import { fillRecipe, inlayRecipe, shop } from '../kit/shop';
import { answer } from './review-kit';

async function pictures(before: string, after: string): Promise<ReviewPictures> {
    return (await answer({ text: before }, { text: after }, true)).pictures!;
}

function row({ rows }: ReviewPictures, title: string): FilmRow {
    return rows.find(({ step }) => step?.title === title)!;
}

const pocket = (depth: string, at = '50, 50 mm'): string => fillRecipe({ pocket: `art flag at ${at} depth ${depth} air off` });

describe('both film strips side by side', () => {
    it('a moment for the blanks and one for each step, with frames of both versions', async () => {
        const { rows, before, after } = await pictures(inlayRecipe(), inlayRecipe({ after: 'wait 1 h' }));
        expect(rows[0]).toEqual({ before: 0, after: 0, differs: [] });
        const gone = rows.find(({ step }) => step?.title === 'Sand tray')!;
        expect(gone.after).toBeUndefined();
        expect(before.frames[gone.before!]?.step).toBe(gone.step!.before);
        const fresh = rows.find(({ step }) => step?.title === 'Wait 1 h')!;
        expect(fresh.before).toBeUndefined();
        expect(after.frames[fresh.after!]?.step).toBe(fresh.step!.after);
    });

    it('nothing is marked where nothing differs', async () => {
        const { rows } = await pictures(pocket('1.2 mm'), pocket('1.2 mm'));
        expect(rows.flatMap(({ differs }) => differs)).toEqual([]);
    });

    it.each(goodSamples)('%s: nothing is marked where only the count of pieces changes', async (name) => {
        const [text, art] = sampleText(name);
        const own = text.slice(0, text.indexOf('blank '));
        const more = / make \d/.test(own)
            ? text.replace(/ make \d+/, ' make 17')
            : text.replace(/ issue \d+/, (issue) => `${issue} make 17`);
        expect(more).not.toBe(text);
        const { rows } = (await answer({ text, art }, { text: more, art }, true)).pictures!;
        expect(rows.filter(({ step: done }) => done !== undefined).length).toBeGreaterThan(0);
        expect(rows.flatMap(({ differs }) => differs)).toEqual([]);
    });

    it('an inlay’s marks that are moved are marked, and nothing else of the step that burns them', async () => {
        const marked = (count: number): string => inlayRecipe({ inlay: `clearance 0.15 mm glue wood-glue marks ${count}` });
        const found = await pictures(marked(3), marked(4));
        expect(row(found, 'Engrave pocket').differs).toEqual([expect.objectContaining({ blank: 'tray', words: ['shape'] })]);
    });

    it('another depth marks the whole pocket, from the step that makes it on', async () => {
        const found = await pictures(pocket('1.2 mm'), pocket('1.4 mm'));
        const { differs } = row(found, 'Engrave hollow');
        expect(differs).toEqual([expect.objectContaining({ blank: 'disc', words: ['depth'] })]);
        // The flag: a pole of 3 by 26 mm and a cloth of 22 by 12 mm less the triangle of 12 by 6 mm.
        expect(differs[0]!.area).toBeCloseTo(3 * 26 + 22 * 12 - (12 * 6) / 2, 0);
        expect(found.paths[differs[0]!.path!]).toMatch(/^M/);
        expect(row(found, 'Fill hollow with tide-blue').differs[0]!.words).toEqual(expect.arrayContaining(['depth']));
    });

    it('the same pocket in another place marks where it was and where it is', async () => {
        const { differs } = row(await pictures(pocket('1.2 mm', '25, 50 mm'), pocket('1.2 mm', '75, 50 mm')), 'Engrave hollow');
        expect(differs[0]!.words).toEqual(['shape']);
        expect(differs[0]!.area).toBeCloseTo(2 * 306, 0);
    });

    it('a step that is left out marks what it would have burnt', async () => {
        const text = pocket('1.2 mm');
        const found = await pictures(text, text.replace(/engrave hollow[^}]*\}/, '').replace(/fill hollow.*/, ''));
        expect(row(found, 'Sand disc').differs[0]).toMatchObject({
            blank: 'disc',
            words: expect.arrayContaining(['burnt before']),
        });
    });

    it('sections lie at one height and are drawn to one scale', async () => {
        const found = await pictures(pocket('1.2 mm', '50, 30 mm'), pocket('1.4 mm', '50, 70 mm'));
        const last = (view: ReviewPictures['before']) => view.frames.at(-1)!.pieces[0]!.section;
        expect(last(found.before).y).toBe(last(found.after).y);
        const { low, high } = heightsOf([last(found.before), last(found.after)]);
        expect(low).toBeGreaterThan(0);
        expect(low).toBeLessThan(10 - 1.4);
        expect(high).toBeGreaterThanOrEqual(10 - 0.3);
    });
});

describe('a page is made of any two recipes', () => {
    const figure = fc.constantFrom('0', '0.4', '-3', '1e308', '12', '99999999999');
    const text = fc
        .record({
            width: figure,
            depth: figure,
            at: figure,
            take: figure,
            steps: fc.subarray(['engrave', 'sand', 'fill', 'cut']),
        })
        .map(({ width, depth, at, take, steps }) => {
            const lines: Readonly<Record<string, string>> = {
                engrave: `engrave pocket on board { art flag at ${at}, 20 mm depth ${depth} mm air off }`,
                sand: `sand board { take ${take} mm }`,
                fill: 'fill pocket with tide-blue',
                cut: `cut edge on board { circle ${width} mm power 80 % speed 10 mm/s }`,
            };
            return `${shop}\nrecipe sign "Sign" { laser shed art flag "flag.svg"
                blank board { of walnut-12 size ${width} x 60 mm grain along width } ${steps.map((step) => lines[step]).join('\n')} }`;
        });

    it('without an end in any number', async () => {
        await fc.assert(
            fc.asyncProperty(text, text, async (a, b) => {
                const html = reviewHtml([await answer({ text: a }, { text: b }, true)]);
                expect(html).toContain('</html>');
                expect(html).not.toMatch(/="[^"]*(?:NaN|Infinity|undefined)/);
            }),
            { numRuns: 40 },
        );
    });
});
