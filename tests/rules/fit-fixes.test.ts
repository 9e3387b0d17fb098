import { describe, expect, it } from 'vitest';
import { pressFit } from '../../shared/bench/press-fit';
import { wallInset } from '../../shared/burn/wall';
import { lengthWithin } from '../../shared/rules/helpers/length-within';
import { jamsBeforeFloor } from '../../shared/rules/inlay/jams-before-floor';
import { planOf } from '../kit/plan-of';
import { inlayRecipe } from '../kit/shop';
import { expectMended, one, silent, words, workshop } from './harness';

/** A blade with a bridge of 0.14 mm to a square, and a loose hair of 0.16 mm. */
const thin = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M2 2h14v10h5v-3h10v12h-9v-8.86h-6v10.86h-14z"/><path d="M34 4h0.16v20h-0.16z"/></svg>`;
/** The same bridge as a hair of a twentieth of a millimetre. */
const hair = thin.replace('M34 4h0.16v20h-0.16z', 'M34 4h0.05v20h-0.05z');
workshop({ 'thin.svg': thin, 'hair.svg': hair });

interface Halves {
    readonly art?: string;
    readonly pocket?: string;
    readonly relief?: string;
    readonly inlay?: string;
    readonly after?: string;
}

const text = ({ art = 'flag', pocket = '', relief = '', inlay = 'clearance 0.15 mm', after }: Halves = {}) =>
    inlayRecipe({
        head: 'art thin "thin.svg" art hair "hair.svg"',
        pocket: `art ${art} depth 0.55 mm ${pocket} air off`,
        relief: `art ${art} inverse within grown 6 mm mirror depth through ${relief} air off`,
        inlay: `${inlay} glue wood-glue`,
        ...(after === undefined ? {} : { after }),
    });

const titles = (finding: { fixes: readonly { title: string }[] }) => finding.fixes.map(({ title }) => title);

describe('wide-seam', () => {
    it('says how wide, how much is enough, and gives it', async () => {
        const wide = text({ inlay: 'clearance 0.5 mm' });
        const finding = await one(wide, 'wide-seam');
        expect(finding.message).toMatch(
            /^With 0\.5 mm of clearance a seam of 0\.\d+ mm stays open along every edge after sanding/,
        );
        expect(finding.message).toMatch(/These walls need 0\.\d+ mm; (0\.\d+ mm) is enough\.$/);
        const enough = /(0\.\d+ mm) is enough/.exec(finding.message)![1]!;
        expect(titles(finding)).toEqual([`Give ${enough} of clearance`]);
        await silent(await expectMended(wide, finding), 'jams-before-floor');
    });
    it('answers in the unit of the maker', async () => {
        const finding = await one(text({ inlay: 'clearance 20 thou' }), 'wide-seam');
        expect(titles(finding)[0]).toMatch(/^Give \d(\.5)? thou of clearance$/);
    });
    it('counts a written offset, points at it and can leave it out', async () => {
        const wide = text({ pocket: 'offset 0.3 mm' });
        const finding = await one(wide, 'wide-seam');
        expect(finding.message).toContain('With 0.15 mm of clearance and 0.3 mm of offset');
        expect(words(wide, finding)).toBe('0.3 mm');
        expect(titles(finding)).toEqual(['Leave the offset of pocket out']);
        const after = await expectMended(wide, finding);
        expect(after).not.toContain('offset');
        await silent(after, 'jams-before-floor');
    });
    it('is judged at the face as sanded', async () => {
        const seamAfter = async (sanded: string) =>
            (await planOf(text({ after: `sand tray { flush then ${sanded} mm grits 120 }` }))).steps.find((step) => step.inlay)!
                .inlay!;
        const [little, much] = [await seamAfter('0.05'), await seamAfter('0.30')];
        const taken = ({ pocketLaser, reliefLaser, fit }: typeof little, sanded: number) =>
            wallInset(pocketLaser.wall!, sanded) + wallInset(reliefLaser.wall!, fit!.insertion - sanded);
        const wider = taken(little, 0.05) - taken(much, 0.3);
        expect(Math.abs(wider)).toBeGreaterThan(0.001);
        expect(much.fit!.seam - little.fit!.seam).toBeCloseTo(wider, 9);
    });
});

describe('jams-before-floor', () => {
    it('counts an offset that takes the clearance away, and mends either', async () => {
        const tight = text({ relief: 'offset -0.12 mm' });
        const finding = await one(tight, 'jams-before-floor');
        expect(finding.message).toContain('With 0.15 mm of clearance and -0.12 mm of offset');
        expect(finding.fixes).toHaveLength(2);
        await expectMended(tight, finding, 0);
        await expectMended(tight, finding, 1);
    });
});

describe('jams-before-floor, in the extreme', () => {
    it('offers no clearance with which a part would vanish, and says so', async () => {
        const finding = await one(text({ art: 'hair', inlay: 'clearance 0.02 mm' }), 'jams-before-floor');
        expect(finding.fixes).toEqual([]);
        expect(finding.message).toMatch(/More clearance is no way out: parts 0\.05 mm wide would vanish\./);
    });
    it('keeps within what the parts bear where that is enough', async () => {
        const tight = text({ art: 'thin', inlay: 'clearance 0.02 mm' });
        const after = await expectMended(tight, await one(tight, 'jams-before-floor'));
        await silent(after, 'parts-vanish');
        await silent(after, 'wide-seam');
    });
    it('offers no offset of the veneer half either, but one of the pocket, which takes nothing from it', async () => {
        const both = text({ art: 'hair', inlay: 'clearance 0.02 mm', pocket: 'offset -0.01 mm', relief: 'offset 0.005 mm' });
        expect(titles(await one(both, 'jams-before-floor'))).toEqual([
            expect.stringMatching(/^Give pocket an offset of 0\.\d+ mm$/),
        ]);
    });
    it('offers no clearance that leaves a seam which shows, and says how wide it would be', async () => {
        const plan = await planOf(text({ inlay: 'clearance 0.02 mm' }));
        const [now] = jamsBeforeFloor.examine(plan);
        expect(now!.fixes).toHaveLength(1);
        const leaning = {
            ...plan,
            steps: plan.steps.map((step) => {
                if (step.inlay === undefined) return step;
                const fit = pressFit(
                    step.inlay.gap,
                    { seat: 0.45 },
                    { pocket: (depth) => depth * Math.tan(0.45), veneer: (depth) => depth * Math.tan(0.02) },
                );
                return { ...step, inlay: { ...step.inlay, fit } };
            }),
        };
        const [finding] = jamsBeforeFloor.examine(leaning);
        expect(finding!.fixes).toEqual([]);
        expect(finding!.message).toMatch(/More clearance is no way out: with it a seam of 0\.21 mm would stay open\./);
    });
});

describe('parts-vanish', () => {
    it('gives the most clearance that keeps them', async () => {
        const lost = text({ art: 'thin', inlay: 'clearance 0.2 mm' });
        const finding = await one(lost, 'parts-vanish');
        expect(titles(finding)).toEqual(['Give 0.13 mm of clearance']);
        const after = await expectMended(lost, finding);
        await silent(after, 'jams-before-floor');
        await silent(after, 'wide-seam');
    });
    it('lessens or leaves out an offset of the veneer half', async () => {
        const lost = text({ art: 'thin', relief: 'offset 0.08 mm', inlay: 'clearance 0.12 mm' });
        const finding = await one(lost, 'parts-vanish');
        expect(titles(finding)).toContain('Leave the offset of relief out');
        await expectMended(lost, finding, titles(finding).indexOf('Leave the offset of relief out'));
    });
    it('says so where the walls need more than the parts bear', async () => {
        const finding = await one(text({ art: 'hair' }), 'parts-vanish');
        expect(finding.fixes).toEqual([]);
        expect(finding.message).toMatch(/Less clearance is no way out: the walls need 0\.\d+ mm to reach the floor/);
    });
});

describe('a length between two bounds', () => {
    it('is round, in the unit asked for, and finer only where it has to be', () => {
        expect(lengthWithin({ low: 0.071, high: 0.2, best: 0.076 }, 'mm')).toEqual({ mm: 0.08, text: '0.08 mm' });
        expect(lengthWithin({ low: 0.071, high: 0.079, best: 0.075 }, 'mm')?.text).toBe('0.075 mm');
        expect(lengthWithin({ low: 0.1, high: 0.2, best: 0.15 }, 'thou')?.text).toBe('6 thou');
        expect(lengthWithin({ low: 0.1, high: 0.2, best: 0.5 }, 'um')?.text).toBe('200 um');
        expect(lengthWithin({ low: 0.1, high: 0.09, best: 0.1 }, 'mm')).toBeUndefined();
        expect(lengthWithin({ low: -0.1, high: 0.09, best: -0.05 }, 'in')?.text).toBe('-0.002 in');
    });
});
