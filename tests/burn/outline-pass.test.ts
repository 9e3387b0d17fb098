import { describe, expect, it } from 'vitest';
import { normalCumulative } from '../../shared/burn/distributions';
import { depthOf } from '../../shared/burn/dose';
import { depthAtShare, doseToFloor, doseToTone, lineDose, lineEnergy } from '../../shared/burn/outline-pass';
import { wallInset, wallOf } from '../../shared/burn/wall';

const law = { threshold: 0.2, energy: 2.5, fade: 0.9 };
const sigma = 0.04;
const dose = 0.8;
const passes = 3;
const floor = depthOf(law, dose, passes);

/** Depth (mm) at x mm inside of a straight edge, summed by itself: scan lines a hundredth of a sigma apart, then a line on the edge. */
function summed(x: number, line: number, linePasses: number): number {
    let area = 0;
    const step = sigma / 100;
    for (let u = step / 2; u < 12 * sigma; u += step)
        area += (dose * step * Math.exp(-((x - u) ** 2) / (2 * sigma ** 2))) / (sigma * Math.sqrt(2 * Math.PI));
    const along = line * Math.exp(-(x ** 2) / (2 * sigma ** 2));
    let depth = 0;
    for (let pass = 0; pass < passes + linePasses; pass++)
        depth += (Math.max(0, (pass < passes ? area : along) - law.threshold) / law.energy) * law.fade ** pass;
    return depth;
}

describe('an outline pass along the edge of a pocket', () => {
    for (const linePasses of [1, 2, 4]) {
        const line = { dose: doseToFloor({ law, dose, passes }, linePasses), passes: linePasses };

        it(`is nowhere deeper than the floor, and as strong as that allows: ${linePasses}`, () => {
            const depths = Array.from({ length: 401 }, (_, k) => summed((k - 200) / 1000, line.dose, linePasses));
            expect(Math.max(...depths)).toBeLessThan(floor * 1.003);
            expect(Math.max(...depths)).toBeGreaterThan(floor * 0.997);
            const stronger = Array.from({ length: 401 }, (_, k) => summed((k - 200) / 1000, line.dose * 1.05, linePasses));
            expect(Math.max(...stronger)).toBeGreaterThan(floor * 1.01);
        });

        it(`depth, rim and lean are those of passes summed one by one: ${linePasses}`, () => {
            for (const x of [-0.08, -0.04, -0.01, 0, 0.02, 0.05, 0.1])
                expect(depthAtShare({ law, dose, passes, line }, normalCumulative(x / sigma))).toBeCloseTo(
                    summed(x, line.dose, linePasses),
                    4,
                );
            const wall = wallOf(law, dose, sigma, passes, line)!;
            expect(summed(-wall.growth - 5e-4, line.dose, linePasses)).toBe(0);
            expect(summed(-wall.growth + 5e-4, line.dose, linePasses)).toBeGreaterThan(0);
            for (const part of [0.25, 0.5, 0.75]) {
                const x = -wall.growth + wallInset(wall.profile, part * floor);
                expect(summed(x, line.dose, linePasses) / floor).toBeCloseTo(part, 1);
                expect(summed(x - 2 * 0.02 * sigma, line.dose, linePasses)).toBeLessThan(part * floor);
            }
            const plain = wallOf(law, dose, sigma, passes)!;
            expect(wall.taper).toBeLessThan(plain.taper);
            expect(wall.growth).toBeGreaterThan(plain.growth);
        });
    }

    it('without one the wall is as it was', () => {
        const wall = wallOf(law, dose, sigma, passes)!;
        expect(wall.profile.line).toBeUndefined();
        expect(summed(-wall.growth - 5e-4, 0, 0)).toBe(0);
        expect(summed(-wall.growth + 5e-4, 0, 0)).toBeGreaterThan(0);
    });
});

describe('an outline pass along the edge of a coloured area', () => {
    const tint = { law, dose: 0.12, passes: 1 };

    it('makes up for the half that the edge loses, where the wood bears it', () => {
        expect(doseToTone(tint, 1, 0.2)).toBeCloseTo(0.06, 6);
        expect(doseToTone(tint, 2, 0.2)).toBeCloseTo(0.03, 6);
    });

    it('stays below the threshold where several weak passes add up to more', () => {
        const line = doseToTone({ ...tint, dose: 0.15, passes: 4 }, 1, 0.7);
        expect(line).toBeLessThan(law.threshold);
        expect(line).toBeGreaterThan(0.9 * law.threshold);
    });
    it('is nowhere darker than the darkest tone, and digs nowhere', () => {
        for (const [darkest, area] of [
            [0.2, 0.19],
            [0.16, 0.16],
            [0.2, 0.2],
        ] as const) {
            const line = doseToTone({ ...tint, dose: area }, 1, darkest);
            expect(line).toBeLessThan(law.threshold);
            for (let x = -3; x <= 3; x += 0.01)
                expect(area * normalCumulative(x) + line * Math.exp((-x * x) / 2)).toBeLessThan(Math.max(area, darkest) * 1.001);
        }
    });
});

it('energy per length is the integral of the profile across a line', () => {
    let sum = 0;
    for (let x = -0.4; x < 0.4; x += 1e-4) sum += 0.7 * Math.exp(-(x ** 2) / (2 * sigma ** 2)) * 1e-4;
    expect(lineEnergy(0.7, sigma)).toBeCloseTo(sum, 6);
    expect(lineDose(lineEnergy(0.7, sigma), sigma)).toBeCloseTo(0.7, 12);
});
