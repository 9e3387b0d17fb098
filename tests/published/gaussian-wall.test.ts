/**
 * The wall that a beam of Gaussian width leaves against a closed form, derived here from two facts of the normal distribution (from memory): its
 * density φ is the slope of Φ, and x·φ(x) that of −φ'(x). Across an edge the dose is F·Φ(x/σ), and what exceeds the part r of it digs in
 * proportion. So the wall begins at a = Φ⁻¹(r), and as ∫ₐ^∞ (1 − Φ) dx = φ(a) − a·(1 − r), what the wall takes off an upright one at the drawn
 * edge is σ·φ(a)/(1 − r) of the depth for each length of edge. Pockets are counted with upright walls: this says what that leaves out.
 */
import { describe, expect, it } from 'vitest';
import { wallInset, wallOf } from '../../shared/burn/wall';

const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
/** Φ by Simpson's rule, so that nothing of ours is its own witness. */
const cumulative = (x: number): number => {
    const steps = 2000;
    const h = x / steps;
    let sum = density(0) + density(x);
    for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * density(i * h);
    return 0.5 + (sum * h) / 3;
};
const quantile = (part: number): number => {
    let [low, high] = [-9, 9];
    for (let i = 0; i < 60; i++)
        if (cumulative((low + high) / 2) < part) low = (low + high) / 2;
        else high = (low + high) / 2;
    return (low + high) / 2;
};

describe.each([
    { threshold: 0.05, dose: 1.4, sigma: 0.0375 },
    { threshold: 0.15, dose: 1.4, sigma: 0.0375 },
    { threshold: 0.15, dose: 0.5, sigma: 0.05 },
    { threshold: 0.3, dose: 0.45, sigma: 0.05 },
])('a threshold of $threshold J/mm2 under $dose J/mm2, a beam of $sigma mm', ({ threshold, dose, sigma }) => {
    const wall = wallOf({ threshold, energy: 3.4, fade: 1 }, dose, sigma, 1)!;
    const rim = threshold / dose;

    it('begins where the dose reaches the threshold', () => expect(wall.growth).toBeCloseTo(-sigma * quantile(rim), 6));
    it('lies as far in on the mean as the closed form says', () => {
        const layers = 4000;
        let sum = 0;
        for (let i = 0; i < layers; i++) sum += wallInset(wall.profile, ((i + 0.5) / layers) * wall.depth) - wall.growth;
        const expected = (sigma * density(quantile(rim))) / (1 - rim);
        // Its foot is cut off 5 um above the floor: nothing below it reaches further in than to where that is left.
        const part = 1 - 0.005 / wall.depth;
        const least = quantile(rim + part * (1 - rim));
        const foot = sigma * ((density(least) - least * (1 - cumulative(least))) / (1 - rim)) + 1e-5;
        expect(Math.abs(sum / layers - expected)).toBeLessThan(foot);
        expect(expected / sigma).toBeGreaterThan(10 * (foot / sigma));
    });
});
