import { expect, it } from 'vitest';
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
