import { expect, it } from 'vitest';
import { area } from '../../shared/geometry/measure';
import { examine } from '../../shared/rules/examine';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

/** Combs of thin teeth, one upright and one lying on it: each is simple, together they cross 36 million times. */
function combs(): string {
    const teeth = Array.from({ length: 6000 }, (_, i) => i / 100);
    const upright = teeth.map((at) => `M${at} 0h.004v60h-.004z`).join('');
    const lying = teeth.map((at) => `M0 ${at}h60v.004h-60z`).join('');
    return `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path d="${upright}"/><path fill="#fff" d="${lying}"/></svg>`;
}

it('art too tangled to be worked out leaves its step unplanned, and says so', { timeout: 60_000 }, async () => {
    const plan = await planOf(
        `${shop}
recipe thing "Thing" {
  laser shed
  art comb "comb.svg"
  blank tray { of walnut-12 size 200 x 150 mm grain along width }
  engrave face on tray { art comb tone 80 % }
  engrave round on tray { circle 20 mm tone 80 % }
}`,
        { 'comb.svg': combs() },
    );
    expect(plan.steps[0]).toMatchObject({ unplanned: expect.stringContaining('cross one another too often') });
    expect(examine(plan).filter(({ rule }) => rule === 'tangled-art')).toMatchObject([{ severity: 'error', step: 0 }]);
    expect(plan.steps[1]!.laser).toBeDefined();
});

/** Translucent discs on one another, each elsewhere: as many shades as there are places. */
function discs(count: number, least: number): string {
    const any = (i: number, of: number) => (i * 7919 + 13 * ((i * i) % 97)) % of;
    const drawn = Array.from({ length: count }, (_, i) => {
        const fill = `fill="${i % 2 === 0 ? '#000' : '#fff'}" fill-opacity="${least + any(i, 7) / 50}"`;
        return `<circle cx="${20 + any(i, 61)}" cy="${20 + any(3 * i + 1, 59)}" r="${8 + any(i, 11)}" ${fill}/>`;
    });
    return `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${drawn.join('')}</svg>`;
}

for (const [count, least, told] of [
    [30, 0.25, []],
    [600, 0.05, [{ severity: 'info', step: 0, message: expect.stringContaining('in points 0.05 mm apart') }]],
] as const) {
    it(`${count} translucent discs on one another: ${told.length === 0 ? 'nothing' : 'the grid on which they were looked at'} is said`, async () => {
        const plan = await planOf(
            `${shop}
recipe thing "Thing" {
  laser shed
  art discs "discs.svg"
  blank tray { of walnut-12 size 200 x 150 mm grain along width }
  engrave face on tray { art discs tone 80 % }
}`,
            { 'discs.svg': discs(count, least) },
        );
        expect(examine(plan).filter(({ rule }) => rule === 'tangled-art')).toMatchObject(told);
        expect(area(plan.steps[0]!.laser!.region)).toBeGreaterThan(count);
    });
}
