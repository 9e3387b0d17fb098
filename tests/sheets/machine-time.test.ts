import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { setUps } from '../../shared/plan/set-ups';
import { setUpRs274 } from '../../shared/sheets/setup-rs274';
import { FOCUS_BY_HAND, FOCUS_MOTION } from '../../shared/toolpath/focus';
import { CORNER_TOLERANCE } from '../../shared/toolpath/time';
import { planOf } from '../kit/plan-of';
import { goodSamples, sampleText } from '../kit/samples';
import { inlayRecipe } from '../kit/shop';
import { readProgram } from '../toolpath/rs274-reader';
import { simulate } from '../toolpath/simulate';

/** Sum of the steps' machine times in the plan, and a simulation of the written file, for each set-up. */
async function times(
    text: string,
    art: Readonly<Record<string, string | Uint8Array>> = {},
): Promise<{ planned: number; run: number }[]> {
    const plan = await planOf(text, art);
    const { topSpeed, acceleration } = plan.recipe.laser!;
    const machine = {
        topSpeed: topSpeed!.value,
        acceleration: acceleration!.value,
        cornerTolerance: CORNER_TOLERANCE,
        focus: { speed: FOCUS_MOTION.topSpeed, acceleration: FOCUS_MOTION.acceleration, stop: FOCUS_BY_HAND },
    };
    return setUps(plan).map((setUp) => {
        const file = setUpRs274(plan, setUp, new Memo());
        if ('problem' in file) throw new Error(file.problem);
        const planned = setUp.lasers.reduce((sum, { step }) => sum + plan.steps[step.index]!.times.machine, 0);
        return { planned, run: simulate(readProgram(file.text).moves, machine, 0.05) };
    });
}

describe('the machine time in the plan', () => {
    it.each([
        ['an inlay, both halves', inlayRecipe()],
        // The way from home is a good part of it here: from the wrong corner it would be a third too long.
        [
            'a short burn close to home, on a large blank',
            inlayRecipe({
                blanks: 'blank tray { of walnut-12 size 600 x 400 mm grain along width } blank bird { of maple-06 size 80 x 70 mm backing foil }',
                pocket: 'circle 1 mm at 5, 395 mm depth 0.1 mm air off',
            }),
        ],
    ])('is that of the written file within one per cent: %s', async (_, text) => {
        const all = await times(text);
        expect(all.length).toBeGreaterThan(0);
        for (const { planned, run } of all) {
            expect(run).toBeGreaterThan(0.1);
            expect(Math.abs(planned / run - 1)).toBeLessThan(0.01);
        }
    });

    it.each(goodSamples)('is that of the written file within one per cent: the sample %s', async (name) => {
        const all = await times(...sampleText(name));
        expect(all.length).toBeGreaterThan(0);
        for (const { planned, run } of all) {
            // A moon of 100 mm of edge is cut in three seconds.
            expect(run).toBeGreaterThan(name === 'quay-trivet' ? 3 : 60);
            expect(Math.abs(planned / run - 1)).toBeLessThan(0.01);
        }
    });

    it('and where the focus is lowered, by the machine or by hand', async () => {
        const deep = inlayRecipe({ pocket: 'art flag depth 2.5 mm air off' });
        const [driven] = await times(deep.replace('spot 0.15 mm', 'spot 0.15 mm focus driven'));
        const [byHand] = await times(deep.replace('spot 0.15 mm', 'spot 0.15 mm focus by-hand'));
        for (const { planned, run } of [driven!, byHand!]) expect(Math.abs(planned / run - 1)).toBeLessThan(0.01);
        expect(byHand!.planned).toBeGreaterThan(driven!.planned + 50);
    });

    it('and where a step behind a deep one has the focus brought back to the face by hand', async () => {
        const two = inlayRecipe({
            pocket: 'art flag depth 2.5 mm air off',
        }).replace('engrave relief', 'engrave tag on tray { circle 6 mm at 20, 20 mm  depth 0.4 mm  air off }\n  engrave relief');
        for (const focus of ['by-hand', 'driven']) {
            const [both] = await times(two.replace('spot 0.15 mm', `spot 0.15 mm focus ${focus}`));
            expect(Math.abs(both!.planned / both!.run - 1), focus).toBeLessThan(0.01);
        }
        const machine = async (text: string): Promise<number> => {
            const plan = await planOf(text.replace('spot 0.15 mm', 'spot 0.15 mm focus by-hand'));
            return plan.steps.find(({ step }) => step.kind === 'engrave' && step.name === 'tag')!.laser!.machine;
        };
        const alone = await machine(two.replace('depth 2.5 mm', 'depth 0.5 mm'));
        expect((await machine(two)) - alone).toBeCloseTo(FOCUS_BY_HAND, 6);
    });
});
