import { describe, expect, it } from 'vitest';
import { linePitch } from '../../shared/burn/pitch';
import { Memo } from '../../shared/plan/memo';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const recipe = (lines: string): string =>
    `${shop}\nrecipe card { laser shed  blank lid { of walnut-12  size 90 x 60 mm  grain along width }\n engrave fold on lid { rectangle 40 x 30 mm  ${lines} } }`;

async function foldOf(lines: string) {
    const plan = await planOf(recipe(lines));
    const { files } = buildSheets(plan, [], new Memo());
    const file = (ending: string): string => files.find(({ path }) => path.endsWith(ending))?.text ?? '';
    return { laser: plan.steps[0]!.laser!, machine: file('.nc'), svg: file('.svg') };
}

describe('a line that is followed to a depth', () => {
    it('is as wide as the spot, once around a pass, and nothing within it is burnt', async () => {
        const { laser, machine, svg } = await foldOf('scan along outline  depth 0.3 mm  passes 2');
        // 140 mm around by 0.15 mm; the corners inside and outside make up for each other but for the rounding outside.
        expect(laser.area).toBeGreaterThan(140 * 0.15 - 0.02);
        expect(laser.area).toBeLessThan(140 * 0.15 + 0.001);
        expect(laser.perimeter).toBeCloseTo(140, 6);
        expect(laser.outlinePasses).toBe(2);
        expect(laser.depth?.value).toBe(0.3);
        expect(svg).not.toContain('-area');
        expect(svg).toContain('fold-outline');
        // Four sides a pass, two passes, and nothing else with the beam on.
        expect(machine.split('\n').filter((line) => /^G1\b/.test(line)).length).toBeLessThanOrEqual(2 * 5);
    });

    it('is solved with the dose in the middle of a line: its settings give that depth by the law of area passes', async () => {
        const { laser } = await foldOf('scan along outline  depth 0.3 mm');
        const { settings } = laser;
        expect(settings?.pitch).toBeCloseTo(linePitch({ diameter: 0.15 } as Parameters<typeof linePitch>[0])!, 9);
        expect(settings?.reached).toBe(true);
        expect(Math.abs(settings!.gives.value - 0.3)).toBeLessThan(0.02);
        const area = await foldOf('depth 0.3 mm');
        expect(laser.machine).toBeLessThan(area.laser.machine / 5);
    });

    it('may have its settings written, or be a tone', async () => {
        const written = await foldOf('scan along outline  power 20 %  speed 100 mm/s');
        expect(written.laser.depth?.value).toBeGreaterThan(0);
        const tone = await foldOf('scan along outline  tone 60 %');
        expect(tone.laser.tone).toBe(0.6);
        expect(tone.laser.settings?.speed).toBeGreaterThan(0);
    });
});
