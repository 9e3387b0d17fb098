import { describe, expect, it } from 'vitest';
import { type Face, volumes } from '../../shared/piece/face';
import type { Plan } from '../../shared/plan/plan';
import type { SpanView } from '../../shared/view/bench-view';
import { sectionView } from '../../shared/view/section-view';
import { planOf } from '../kit/plan-of';
import { coupon, shop } from '../kit/shop';

// Pappus's second theorem (a body of revolution has the area of its half section times the way of that area's centroid) and the
// prismoidal formula h/6 (A0 + 4 Am + A1) stand in every table of mensuration, as in the CRC Standard Mathematical Tables (from memory).

/** Corners of a circle; so many that its area is right to 1.3e-5. */
const corners = 720;
const circle = (radius: number): string => {
    const points = Array.from({ length: corners }, (_, i) => {
        const turn = (2 * Math.PI * i) / corners;
        return `${20 + radius * Math.cos(turn)} ${20 + radius * Math.sin(turn)}`;
    });
    return `M${points.join('L')}Z`;
};
const drawing = (path: string): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><path fill-rule="evenodd" d="${path}"/></svg>`;
const art = {
    'disc.svg': drawing(circle(16)),
    'moat.svg': drawing(circle(19) + circle(12)),
    'kite.svg': drawing('M3 5 L31 2 L37 33 L12 38 Z'),
    'bar.svg': drawing('M1 14 L39 20 L38 27 L2 23 Z'),
};

/** A veneer let into walnut, dug across with a second shape that is filled and sanded flush: wood, veneer, glue and resin in layers. */
const layered = (laid: string, dug: string): string =>
    `${shop}\n${coupon('maple-06', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed
 art laid "${laid}" art dug "${dug}"
 blank b { of walnut-12 size 100 x 100 mm grain along width }
 blank leaf { of maple-06 size 80 x 80 mm grain along width backing foil }
 engrave pocket on b { art laid at 50, 50 mm depth 0.45 mm air off }
 engrave relief on leaf { art laid inverse within grown 6 mm mirror depth through air off }
 inlay relief into pocket { clearance 0.05 mm glue wood-glue }
 wait 24 h
 peel leaf
 sand b { flush then 0.05 mm grits 120 }
 engrave moat on b { art dug at 50, 50 mm depth 0.9 mm air off }
 seal b with shellac { coats 1 }
 wait 2 h
 fill moat with tide-blue
}`;

type Sized = Pick<SpanView, 'from' | 'to' | 'bottom' | 'top'>;
const solid = ['wood', 'inlay', 'glue', 'resin'] as const;
type Solid = (typeof solid)[number];

interface Piece {
    readonly plan: Plan;
    readonly face: Face;
    /** Volumes that the piece itself has, mm3. */
    readonly own: Readonly<Record<Solid, number>>;
    section(y: number, kind: Solid): readonly Sized[];
}

async function pieceOf(text: string): Promise<Piece> {
    const plan = await planOf(text, art);
    const face = plan.faces.at(-1)!.find(({ blank }) => blank === 'b')!;
    const all = volumes(face);
    const own = { wood: all.get('wood walnut-12')!, inlay: all.get('wood maple-06')!, glue: 0, resin: 0 };
    for (const [name, volume] of all) {
        if (name.startsWith('glue')) own.glue += volume;
        if (name.startsWith('resin')) own.resin += volume;
    }
    return {
        plan,
        face,
        own,
        section: (y, kind) => sectionView(plan, face, plan.blanks[0]!, y).spans.filter((span) => span.kind === kind),
    };
}

const areaOf = (spans: readonly Sized[]): number =>
    spans.reduce((sum, { from, to, bottom, top }) => sum + (to - from) * (top - bottom), 0);

describe('the layers of a section have the volumes of the piece', () => {
    it('of a turned shape, by Pappus', async () => {
        const { face, own, section } = await pieceOf(layered('disc.svg', 'moat.svg'));
        const [middle, reach] = [50, 25];
        for (const kind of solid) {
            expect(own[kind], kind).toBeGreaterThan(1);
            // The half section right of the axis, as far as the piece is turned.
            const half = section(middle, kind).flatMap((span) => {
                const [from, to] = [Math.max(span.from, middle), Math.min(span.to, middle + reach)];
                return to > from ? [{ ...span, from, to }] : [];
            });
            const moment = half.reduce((sum, span) => sum + areaOf([span]) * ((span.from + span.to) / 2 - middle), 0);
            // Around it the board is a square with a hole.
            const square = kind === 'wood' ? (100 * 100 - Math.PI * reach ** 2) * (12 - face.level.value) : 0;
            expect((2 * Math.PI * moment + square) / own[kind], kind).toBeCloseTo(1, 3);
        }
    });

    it('of straight edges, by the prismoidal formula between all corners', async () => {
        const { face, own, section } = await pieceOf(layered('kite.svg', 'bar.svg'));
        const heights = new Set([0, 100]);
        for (const { region } of face.cells)
            for (const ring of region.rings) for (let i = 1; i < ring.length; i += 2) heights.add(ring[i]!);
        const ys = [...heights].toSorted((a, b) => a - b);
        for (const kind of solid) {
            expect(own[kind], kind).toBeGreaterThan(1);
            let sum = 0;
            for (let i = 0; i + 1 < ys.length; i++) {
                const [from, to] = [ys[i]!, ys[i + 1]!];
                const inside = (to - from) * 1e-6;
                const [a, m, z] = [from + inside, (from + to) / 2, to - inside].map((y) => areaOf(section(y, kind)));
                sum += ((to - from) / 6) * (a! + 4 * m! + z!);
            }
            expect(sum / own[kind], kind).toBeCloseTo(1, 3);
        }
    });
});
