import { describe, expect, it } from 'vitest';
import { area, bounds, perimeter } from '../../shared/geometry/measure';
import type { Region } from '../../shared/geometry/region';
import { circle, rectangle } from '../../shared/geometry/shapes';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { besideEdges } from '../../shared/plan/plan-cut-lines';
import { setUps } from '../../shared/plan/set-ups';
import { setUpRs274 } from '../../shared/sheets/setup-rs274';
import { setUpSvg } from '../../shared/sheets/setup-svg';
import { stepFacts } from '../../shared/sheets/step-facts';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';
import { type Move, readProgram } from '../toolpath/rs274-reader';

const known = 'power 95 % speed 8 mm/s passes 2 kerf 0.3 mm';
const recipe = (steps: string, size = '120 x 110 mm'): string =>
    `${shop} recipe r { laser shed art flag "flag.svg" blank b { of ash-10 size ${size} } ${steps} }`;

function lineOf(plan: Plan, name: string): Region {
    return plan.steps.find(({ laser }) => laser?.step.name === name)!.laser!.cutLine!.encloses;
}

/** What the machine cuts, in the blank's coordinates, read back from its file: with the air on. */
function burnt(plan: Plan, height = 110): Move[] {
    const file = setUpRs274(plan, setUps(plan)[0]!, new Memo());
    if ('problem' in file) throw new Error(file.problem);
    return readProgram(file.text)
        .moves.filter((move) => !move.rapid && move.s > 0 && move.air)
        .map((move) => ({ ...move, y0: height - move.y0, y1: height - move.y1 }));
}

function distance(moves: readonly Move[], x: number, y: number): number {
    return moves.reduce((least, { x0, y0, x1, y1 }) => {
        const square = (x1 - x0) ** 2 + (y1 - y0) ** 2;
        const at = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / square));
        return Math.min(least, Math.hypot(x - x0 - at * (x1 - x0), y - y0 - at * (y1 - y0)));
    }, Infinity);
}

describe('the line of a cut', () => {
    it('runs half the kerf outside of a disc and inside of a hole, which come out as drawn', async () => {
        const plan = await planOf(
            recipe(`cut hole on b { circle 10 mm ${known} } engrave e on b { art flag depth 0.3 mm }
            cut rim on b { circle 96 mm ${known} }`),
        );
        expect(area(lineOf(plan, 'rim'))).toBeGreaterThan(0.9997 * (Math.PI / 4) * 96.3 ** 2);
        expect(area(lineOf(plan, 'hole'))).toBeCloseTo((Math.PI / 4) * 9.7 ** 2, 0);
        for (const move of burnt(plan)) {
            const [from, to] = [Math.hypot(move.x0 - 60, move.y0 - 55), Math.hypot(move.x1 - 60, move.y1 - 55)];
            for (const radius of [from, to])
                expect(Math.min(Math.abs(radius - 48.15), Math.abs(radius - 4.85))).toBeLessThan(0.012);
        }
    });

    it('leaves parts and holes as drawn, or half a kerf smaller and larger where the drawn line itself is followed', async () => {
        const bodies = async (how: string) => {
            const plan = await planOf(
                recipe(`cut hole on b { circle 10 mm ${known} ${how} } engrave e on b { art flag depth 0.3 mm }
                cut rim on b { circle 96 mm ${known} ${how} }`).replaceAll(how === '' ? '@' : 'kerf 0.3 mm', ''),
            );
            const kerf = plan.steps.find(({ laser }) => laser?.step.name === 'rim')!.laser!.kerf!.face.value;
            return { kerf, left: area(plan.faces.at(-1)![0]!.body.region) };
        };
        const disc = (across: number) => (Math.PI / 4) * across ** 2;
        expect((await bodies('')).left / (disc(96) - disc(10))).toBeCloseTo(1, 3);
        const { kerf, left } = await bodies('without kerf');
        expect(left / (disc(96 - kerf) - disc(10 + kerf))).toBeCloseTo(1, 3);
        expect(left / (disc(96) - disc(10))).toBeLessThan(0.995);
    });

    it('is the closed form of a square with rounded corners', () => {
        const { encloses } = besideEdges({ parts: [rectangle(10, 10, 40, 40)], openings: [] }, 0.15)!;
        expect(perimeter(encloses)).toBeCloseTo(4 * 40 + 2 * Math.PI * 0.15, 2);
        expect(area(encloses)).toBeCloseTo(40 * 40 + 4 * 40 * 0.15 + Math.PI * 0.15 ** 2, 2);
    });

    it('leaves exactly the drawn part between the cuts of the machine file', async () => {
        const plan = await planOf(
            recipe(`engrave e on b { circle 20 mm at 40, 40 mm depth 0.3 mm }
            cut slots on b { rectangle 12 x 3 mm at 40, 60 mm ${known} }
            cut plate on b { rectangle 60 x 50 mm at 40, 50 mm ${known} }`),
        );
        const moves = burnt(plan);
        const half = 0.15;
        const [near, clear] = [0.02, 0.02];
        const around = (x: number, y: number, width: number, height: number, beside: number) => {
            const places: [number, number][] = [];
            for (let i = 0; i <= 40; i++) {
                const [u, v] = [x - width / 2 + (width * i) / 40, y - height / 2 + (height * i) / 40];
                places.push([u, y - height / 2 - beside], [u, y + height / 2 + beside]);
                places.push([x - width / 2 - beside, v], [x + width / 2 + beside, v]);
            }
            return places;
        };
        // Just inside of the plate and around the slot there is wood; just beyond there is none.
        for (const [x, y] of around(40, 50, 60, 50, -near)) expect(distance(moves, x, y)).toBeGreaterThan(half);
        for (const [x, y] of around(40, 50, 60, 50, clear)) expect(distance(moves, x, y)).toBeLessThan(half);
        for (const [x, y] of around(40, 60, 12, 3, near)) expect(distance(moves, x, y)).toBeGreaterThan(half);
        for (const [x, y] of around(40, 60, 11.6, 2.6, 0.2 - clear)) expect(distance(moves, x, y)).toBeLessThan(half);
    });

    it('begins in the waste: outside of a part, inside of a hole', async () => {
        const plan = await planOf(
            recipe(`cut hole on b { circle 20 mm lead-in 3 mm ${known} }
            engrave e on b { art flag at 60, 20 mm depth 0.3 mm } cut rim on b { circle 96 mm lead-in 3 mm ${known} }`),
        );
        const starts = burnt(plan).map(({ x0, y0 }) => Math.hypot(x0 - 60, y0 - 55));
        expect(Math.max(...starts)).toBeGreaterThan(49.5);
        expect(Math.min(...starts)).toBeLessThan(8.5);
        expect(starts.filter((radius) => radius > 10.01 && radius < 47.99)).toEqual([]);
    });

    it('follows what is narrower than the kerf along its middle', () => {
        const { encloses, lines } = besideEdges(
            { parts: [], openings: [rectangle(0, 0, 20, 0.1), rectangle(0, 5, 20, 5)] },
            0.15,
        )!;
        expect(lines.rings).toHaveLength(1);
        const box = bounds({ rings: [encloses.rings[0]!] })!;
        expect(box.maxY - box.minY).toBeLessThan(0.03);
        expect((box.maxY + box.minY) / 2).toBeCloseTo(0.05, 3);
        expect(box.maxX - box.minX).toBeGreaterThan(19.8);
    });

    it('goes round each of two parts that are nearer than the kerf, so that both come free', () => {
        const { encloses } = besideEdges({ parts: [circle(10, 10, 10), circle(20.1, 10, 10)], openings: [] }, 0.15)!;
        expect(encloses.rings).toHaveLength(2);
    });

    it('is the drawn one without kerf, in the machine file, the drawing and in words', async () => {
        const text = recipe(`cut rim on b { circle 96 mm ${known} }`);
        const [moved, drawn] = [await planOf(text), await planOf(text.replace('kerf 0.3 mm', 'without kerf'))];
        const radii = (plan: Plan): number[] => burnt(plan).map(({ x0, y0 }) => Math.hypot(x0 - 60, y0 - 55));
        expect(Math.max(...radii(drawn))).toBeCloseTo(48, 1);
        expect(Math.min(...radii(moved))).toBeGreaterThan(48.1);
        const said = (plan: Plan): string => stepFacts(plan.steps[0]!).find(({ label }) => label === 'kerf')!.value;
        expect(said(moved)).toContain('the beam runs 0.15 mm beside the line, in the waste');
        expect(said(drawn)).toContain('follows the drawn line');
        const svg = (plan: Plan): string => setUpSvg(plan, setUps(plan)[0]!, new Memo()).text;
        expect(svg(moved)).toContain('0.15 mm beside the line for a kerf of 0.3 mm');
        expect(svg(drawn)).not.toContain('kerf');
        expect(moved.steps[0]!.laser!.machine).toBeGreaterThan(drawn.steps[0]!.laser!.machine);
    });
});
