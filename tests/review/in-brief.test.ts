import { describe, expect, it } from 'vitest';
import { PlanEngine } from '../../server/engine/plan-engine';
import { reviewJobs } from '../../server/review/review-files';
import type { Review } from '../../shared/review/review';
import { memoryWorkshop } from '../kit/memory-workshop';
import { goodSamples, sampleText } from '../kit/samples';
import { art, diamond, inlayRecipe } from '../kit/shop';

type Files = Readonly<Record<string, string | Uint8Array>>;

/** Reviews all recipes of two texts in brief and as a whole, by one engine each that keeps what it knows; says whether the brief one drew. */
async function bothWays(files: Files = art) {
    const { workshop, open } = await memoryWorkshop(files);
    const stages: string[] = [];
    const engines = { brief: new PlanEngine((stage) => stages.push(stage)), whole: new PlanEngine() };
    const version = async (text: string) => {
        const document = await open(text);
        return { workshop, documents: new Map([['it', document]]), label: () => 'it' };
    };
    return async (before: string, after: string) => {
        const pair = { before: 'it', after: 'it' };
        const [old, now] = [await version(before), await version(after)];
        const reviews = async (kind: 'brief' | 'whole') => {
            const found: Omit<Review, 'findingsKept'>[] = [];
            for (const job of await reviewJobs(old, now, pair, { pictures: false, brief: kind === 'brief' })) {
                for (const file of await workshop.arts.of(job.recipe)) engines[kind].setArt(file);
                const { findingsKept: _, ...review } = engines[kind].run(job).review;
                found.push(review);
            }
            return found;
        };
        stages.length = 0;
        return { brief: await reviews('brief'), whole: await reviews('whole'), isDrawn: stages.includes('plan') };
    };
}

const missed = 'pocket of walnut-12 80 % at 480 mm/s x 3 pitch 0.10 mm depth 0.90 mm';
const harmless: Readonly<Record<string, (text: string) => string>> = {
    'another issue': (text) => text.replaceAll(/^( {2}issue )(\d+)$/gm, (_, word, number) => `${word}${Number(number) + 1}`),
    'another title': (text) => text.replaceAll(/^recipe (\S+) ".*?"/gm, 'recipe $1 "Another title"'),
    'comments and places': (text) => `// moved down\n\n${text.replaceAll(/^ {2}(engrave|sand) /gm, '  // so\n  $1 ')}`,
    'a note of a run': (text) => text.replaceAll(/^ {2}note ".*"$/gm, '  note "Otherwise."'),
    nothing: (text) => text,
};

describe('a brief review of versions that are worked out alike', () => {
    // The variants stand on the heron tray.
    for (const name of goodSamples.filter((sample) => sample !== 'heron-tray')) {
        it(`says what the whole one says, and draws nothing: ${name}`, async () => {
            const [text, files] = sampleText(name);
            const review = await bothWays(files);
            for (const [what, change] of Object.entries(harmless)) {
                const { brief, whole, isDrawn } = await review(text, change(text));
                expect(brief, what).toEqual(whole);
                expect({ what, isDrawn }).toEqual({ what, isDrawn: false });
            }
        });
    }

    it('tells a finding that goes by the issue of a run', async () => {
        const run = `run tray 2026-11-20 {\n  issue 1\n  laser shed\n  ${missed}\n}`;
        const measured = `${inlayRecipe({ after: 'check pocket { depth 0.50..0.60 mm }' })}\n${run}\n`;
        const review = await bothWays();
        const { brief, whole, isDrawn } = await review(measured, measured.replace('revision 1', 'revision 2'));
        expect(brief).toEqual(whole);
        expect(brief[0]!.findings).toContainEqual(expect.objectContaining({ change: 'lost', rule: 'run-misses-check' }));
        expect(isDrawn).toBe(false);
    });

    it('draws where anything follows from the change', async () => {
        const review = await bothWays();
        const text = inlayRecipe();
        for (const [old, now] of [
            ['depth 0.55 mm', 'depth 0.60 mm'],
            ['size 200 x 150 mm', 'size 210 x 150 mm'],
            ['moisture 8 % }\nboard', 'moisture 9 % }\nboard'],
        ] as const) {
            const changed = text.replace(old, now);
            expect(changed).not.toBe(text);
            const { brief, whole, isDrawn } = await review(text, changed);
            expect(isDrawn, now).toBe(true);
            expect(brief).toEqual(whole);
        }
    });

    it('draws where the art is another', async () => {
        const text = inlayRecipe();
        const plain = await memoryWorkshop(art);
        const [recipe] = plain.workshop.recipes(await plain.open(text));
        const arts = await plain.workshop.arts.of(recipe!);
        const engine = new PlanEngine();
        for (const file of arts) engine.setArt(file);
        const side = { recipe: recipe!, from: 'it', exists: true, textFindings: [] };
        const before = {
            ...side,
            arts: arts.map((file) => ({ ...file, version: 'other', bytes: new TextEncoder().encode(diamond) })),
        };
        const { review } = engine.run({ do: 'review', ...side, before, pictures: false, brief: true });
        expect(review.art.map(({ name }) => name)).toEqual(['flag']);
    });
});
