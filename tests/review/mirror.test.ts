import { inspect } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change } from '../../shared/review/change';
import type { Review } from '../../shared/review/review';
import { shop } from '../kit/shop';
import { review } from './review-kit';

const depth = fc.constantFrom('0.2 mm', '0.45 mm', '1/32 in', 'through');
const name = fc.constantFrom('pocket', 'hollow', 'edge');

/** A step of some recipe; names may come twice and lead nowhere, as in a text that is being written. */
const stepText = fc.oneof(
    fc.tuple(name, depth).map(([of, deep]) => `engrave ${of} on board { art flag depth ${deep} air off }`),
    fc.tuple(name, fc.constantFrom('shellac', 'nothing-known')).map(([, sealer]) => `seal board with ${sealer} { coats 2 }`),
    name.map((of) => `fill ${of} with tide-blue`),
    fc.constantFrom(1, 2, 24).map((hours) => `wait ${hours} h`),
    fc.constantFrom('0.1 mm', '0.3 mm').map((take) => `sand board { take ${take} grits 120, 180 }`),
    fc.constantFrom('drill two holes', 'drill three holes').map((text) => `do "${text}" for 5 min`),
    name.map((of) => `check ${of} { depth 0.4 .. 0.6 mm }`),
    name.map((of) => `cut ${of} on board { circle 30 mm power 80 % speed 10 mm/s allow air-while-engraving because "so" }`),
);

const recipeText = fc
    .record({
        steps: fc.array(stepText, { maxLength: 7 }),
        make: fc.integer({ min: 1, max: 3 }),
        width: fc.constantFrom('', '{ width 30 mm }'),
    })
    .map(
        ({ steps, make, width }) => `${shop}
recipe sign "Sign" {
  revision 1 make ${make} laser shed
  art flag "flag.svg" ${width}
  blank board { of walnut-12 size 100 x 100 mm grain along width }
  ${steps.join('\n  ')}
}`,
    );

const runs = { numRuns: 25 };

describe('comparing recipes', () => {
    it('finds nothing between a recipe and itself', async () => {
        await fc.assert(
            fc.asyncProperty(recipeText, async (text) => {
                const found = await review(text, text);
                expect(found.same).toBe(true);
                expect([...found.findings, ...found.things, ...found.art]).toEqual([]);
                expect(found.steps.every(({ status, moved }) => status === 'same' && !moved)).toBe(true);
            }),
            runs,
        );
    });

    it('finds the mirror image the other way round', async () => {
        await fc.assert(
            fc.asyncProperty(recipeText, recipeText, async (a, b) => {
                expect(sorted(await review(b, a))).toEqual(sorted(mirrored(await review(a, b))));
            }),
            runs,
        );
    });

    it('finds every step of both versions once', async () => {
        await fc.assert(
            fc.asyncProperty(recipeText, recipeText, async (a, b) => {
                const { steps } = await review(a, b);
                for (const side of ['before', 'after'] as const) {
                    const places = steps.flatMap((step) => step[side] ?? []);
                    expect(places.toSorted((x, y) => x - y)).toEqual(places.map((_, index) => index));
                }
            }),
            runs,
        );
    });
});

function turned<T extends { readonly status: string }>(of: T): T {
    return { ...of, status: of.status === 'added' ? 'removed' : of.status === 'removed' ? 'added' : of.status };
}

function back({ label, before, after, by, amounts }: Change): Change {
    return {
        label,
        ...(after !== undefined && { before: after }),
        ...(before !== undefined && { after: before }),
        ...(by !== undefined && { by: by.startsWith('+') ? by.replace('+', '−') : by.replace('−', '+') }),
        ...(amounts && {
            amounts: { ...(amounts.after && { before: amounts.after }), ...(amounts.before && { after: amounts.before }) },
        }),
    };
}

function mirrored(of: Review): Review {
    return {
        ...of,
        before: of.after,
        after: of.before,
        recipe: of.recipe.map(back),
        times: of.times.map(back),
        run: of.run.map(back),
        cost: of.cost.map(back),
        runs: of.runs.map((run) => ({ ...turned(run), changes: run.changes.map(back) })),
        supplies: of.supplies.map(back),
        things: of.things.map((thing) => ({ ...turned(thing), changes: thing.changes.map(back) })),
        art: of.art.map((art) => ({ ...turned(art), changes: art.changes.map(back), gained: art.lost, lost: art.gained })),
        steps: of.steps.map(({ before, after, titleBefore, title, ...step }) => ({
            ...turned(step),
            title: titleBefore ?? title,
            ...(titleBefore !== undefined && { titleBefore: title }),
            ...(after !== undefined && { before: after }),
            ...(before !== undefined && { after: before }),
            settings: step.settings.map(back),
            follows: step.follows.map(back),
        })),
        findings: of.findings.map(({ before, ...finding }) => ({
            ...finding,
            change: ({ gained: 'lost', lost: 'gained', changed: 'changed' } as const)[finding.change],
            ...(before && { before: { severity: finding.severity, message: finding.message }, ...before }),
        })),
        allows: of.allows.map(turned),
        guesses: { before: of.guesses.after, after: of.guesses.before },
        pinned: { before: of.pinned.after, after: of.pinned.before },
        cautions: { gained: of.cautions.lost, lost: of.cautions.gained },
    };
}

/** Which side comes first decides the order of what has none, and where the files are said to be; neither is compared. */
function sorted(of: Review): unknown {
    const byText = (list: readonly unknown[]): unknown[] =>
        list.map((each) => inspect(each, { depth: null, sorted: true })).sort();
    const changes = <
        T extends {
            readonly settings?: readonly Change[];
            readonly follows?: readonly Change[];
            readonly changes?: readonly Change[];
        },
    >(
        each: T,
    ) => ({
        ...each,
        settings: byText(each.settings ?? []),
        follows: byText(each.follows ?? []),
        changes: byText(each.changes ?? []),
    });
    const rounded = of.art.map((art) => ({
        ...changes(art),
        gained: art.gained.toFixed(1),
        lost: art.lost.toFixed(1),
        kept: art.kept.toFixed(1),
    }));
    return {
        ...of,
        before: { ...of.before, from: '' },
        after: { ...of.after, from: '' },
        recipe: byText(of.recipe),
        times: byText(of.times),
        supplies: byText(of.supplies),
        things: byText(of.things.map(changes)),
        art: byText(rounded),
        steps: byText(of.steps.map(changes)),
        findings: byText(
            of.findings.map(({ step, ...finding }) => ({ ...finding, step: step === undefined ? '' : of.steps[step]!.title })),
        ),
        allows: byText(of.allows.map(({ step, ...allow }) => allow)),
        guesses: of.guesses,
    };
}
