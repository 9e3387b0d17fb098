import { describe, expect, it } from 'vitest';
import { wallShape } from '../../shared/burn/wall';
import { area } from '../../shared/geometry/measure';
import { isGone } from '../../shared/piece/column';
import { volumes } from '../../shared/piece/face';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import type { Hideable } from '../../shared/view/hideable';
import { leanAt } from '../../shared/view/lean-at';
import { makeRoundView } from '../../shared/view/make-round-view';
import { roundMesh, volumeOf } from '../../shared/view/round-mesh';
import type { RoundView } from '../../shared/view/round-view';
import { planOf } from '../kit/plan-of';
import { goodSamples, sampleText } from '../kit/samples';
import { coupon, shop } from '../kit/shop';

function roundOf(plan: Plan, frame: number, blank: string): RoundView {
    const view = makeRoundView(plan, frame, blank, new Memo());
    if (typeof view === 'string') throw new Error(view);
    return view;
}

const plate = (steps: string, size = 'size 100 x 80 mm grain along width'): string =>
    `${shop}\n${coupon('ash-10', 'shed')}\nrecipe thing "Thing" {\n revision 1 make 1 laser shed\n blank b { of ash-10 ${size} }\n${steps}\n}`;

const pond = 'engrave pond on b { rectangle 20 x 10 mm at 30, 40 mm depth 0.5 mm air off }';

function everyThird(values: ArrayLike<number>, from: number): number[] {
    return Array.from({ length: values.length / 3 }, (_, i) => values[3 * i + from]!);
}

/** Area in mm2 of the triangles of a surface. */
function areaOf({ points, corners }: Pick<RoundView['surfaces'][number], 'points' | 'corners'>): number {
    let sum = 0;
    for (let i = 0; i < corners.length; i += 3) {
        const [a, b, c] = [corners[i]!, corners[i + 1]!, corners[i + 2]!];
        sum +=
            ((points[2 * b]! - points[2 * a]!) * (points[2 * c + 1]! - points[2 * a + 1]!) -
                (points[2 * c]! - points[2 * a]!) * (points[2 * b + 1]! - points[2 * a + 1]!)) /
            2;
    }
    return sum;
}

describe('a piece in the round', () => {
    it('has a pocket with its floor at its depth and walls all around it', async () => {
        const plan = await planOf(plate(pond));
        const view = roundOf(plan, 1, 'b');
        const floor = view.surfaces.find(({ look, down }) => down !== true && view.looks[look]!.kind === 'char')!;
        const laser = plan.steps[0]!.laser!;
        expect(floor.z).toBeCloseTo(view.thickness - laser.depth!.value, 4);
        expect(areaOf(floor)).toBeCloseTo(laser.area, 1);
        const inner = view.walls.filter(({ look }) => view.looks[look]!.kind === 'char');
        const heights = inner.flatMap(({ bands }) => bands.filter((_, i) => i % 6 > 3));
        expect([...new Set(heights)].sort()).toEqual([view.thickness, floor.z].sort());
        const length = inner.flatMap(({ bands }) =>
            Array.from({ length: bands.length / 6 }, (_, i) =>
                Math.hypot(bands[6 * i + 2]! - bands[6 * i]!, bands[6 * i + 3]! - bands[6 * i + 1]!),
            ),
        );
        expect(length.reduce((sum, one) => sum + one, 0)).toBeCloseTo(laser.perimeter, 2);
    });

    it('shows end grain at its ends and no soot on what was sawn', async () => {
        const view = roundOf(await planOf(plate(pond)), 0, 'b');
        expect(view.looks.map(({ kind }) => kind)).toEqual(['wood']);
        expect(view.looks[0]!.grain).toMatchObject({ along: 'width', name: 'b' });
        expect(view.walls[0]!.bands).toHaveLength(4 * 6);
    });

    it('is open where a hole was cut, burnt on its edge, and shows the tape that is behind it', async () => {
        const cut = (backing: string): Promise<Plan> =>
            planOf(plate('cut hole on b { circle 10 mm at 50, 40 mm air on }', `size 100 x 80 mm grain along width ${backing}`));
        const bare = roundOf(await cut(''), 1, 'b');
        expect(bare.surfaces.filter(({ down }) => down !== true)).toHaveLength(1);
        expect(bare.looks.map(({ kind }) => kind).sort()).toEqual(['char', 'wood']);
        expect(areaOf(bare.surfaces[0]!)).toBeLessThan(100 * 80 - 75);
    });

    it('shows the backing behind what is burnt through', async () => {
        const burnt = (backing: string): Promise<Plan> =>
            planOf(
                plate(
                    'engrave gap on b { rectangle 20 x 10 mm at 30, 40 mm depth through air off }',
                    `size 100 x 80 mm grain along width ${backing}`,
                ),
            );
        const kinds = (view: RoundView): string[] =>
            view.surfaces.filter(({ down }) => down !== true).map(({ look, z }) => `${view.looks[look]!.kind} ${z}`);
        expect(kinds(roundOf(await burnt(''), 1, 'b'))).toEqual(['wood 10']);
        expect(kinds(roundOf(await burnt('backing tape'), 1, 'b'))).toEqual(['foil 0', 'wood 10']);
    });

    it('says why there is nothing to show', async () => {
        expect(makeRoundView(await planOf(plate(pond, '')), 1, 'b', new Memo())).toMatch(/has no size/);
    });

    it('leans as the beam makes a wall lean, and no further than its foot', async () => {
        const view = roundOf(await planOf(plate(pond)), 1, 'b');
        const lean = view.walls.find(({ lean }) => lean !== undefined)!.lean!;
        const insets = lean.profile.filter((_, i) => i % 2 === 1);
        expect(insets).toEqual([...insets].sort((a, b) => a - b));
        expect(insets.at(-1)!).toBeGreaterThan(0.02);
        const { places } = roundMesh(view);
        const foot = Math.min(...everyThird(places, 2).filter((z) => z > 9));
        const xs = everyThird(places, 0).filter((_, i) => places[3 * i + 2] === foot && places[3 * i]! < 25);
        // From the rim of the pocket to the foot of its wall: the pocket's edge is grown by the beam.
        expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(insets.at(-1)! - insets[0]!, 3);
    });

    it('is cut open with the lean of its walls', async () => {
        const plan = await planOf(plate(pond));
        const view = roundOf(plan, 1, 'b');
        const cuts = leanAt(view, 41.3);
        expect(cuts.map(({ rim }) => Math.round(rim * 10) / 10).sort()).toEqual([20, 40]);
        const wall = wallShape(plan.steps[0]!.laser!.wall!);
        for (const { rim, steps } of cuts) {
            const inner = rim < 30 ? 1 : -1;
            // It runs out into the pocket, as far as the wall's shape says.
            for (const { x, z } of steps) expect(inner * (x - rim)).toBeCloseTo(wall(view.thickness - z), 3);
            expect(inner * (steps.at(-1)!.x - rim)).toBeGreaterThan(0.01);
        }
        expect(leanAt(view, 20)).toEqual([]);
    });

    it('tells in words what a person would see', async () => {
        expect(roundOf(await planOf(plate(pond)), 1, 'b').words).toMatch(
            /^ash-10, 100 mm × 80 mm × 10 mm\. bare wood, 78 cm², level with the face; floor of pond, 200 mm², 0\.5 mm below the face\.$/,
        );
    });

    const levels = (plan: Plan, frame: number, hidden: readonly Hideable[]): [string, number][] => {
        const view = makeRoundView(plan, frame, 'b', new Memo(), { hidden });
        if (typeof view === 'string') throw new Error(view);
        return view.surfaces
            .filter(({ down }) => down !== true)
            .map(({ look, z }): [string, number] => [view.looks[look]!.kind, Math.round((view.thickness - z) * 100) / 100])
            .sort();
    };

    it('shows what is below a fill and a tape that are hidden, and wood where char is', async () => {
        const plan = await planOf(plate(`mask b\n${pond}\nfill pond with tide-blue`));
        expect(levels(plan, 3, [])).toEqual([
            ['resin', -0.05],
            ['tape', 0],
        ]);
        expect(levels(plan, 3, ['fill'])).toEqual([
            ['char', 0.5],
            ['tape', 0],
        ]);
        expect(levels(plan, 3, ['fill', 'tape'])).toEqual([
            ['char', 0.5],
            ['wood', 0],
        ]);
        expect(levels(plan, 3, ['fill', 'tape', 'char'])).toEqual([
            ['wood', 0],
            ['wood', 0.5],
        ]);
        expect(levels(plan, 3, ['veneer', 'coat'])).toEqual(levels(plan, 3, []));
    });

    it('is given up when it is asked to be', async () => {
        const plan = await planOf(plate(pond));
        const stop = () => {
            throw new Error('given up');
        };
        expect(() => makeRoundView(plan, 1, 'b', new Memo(), { checkpoint: stop })).toThrow('given up');
    });
});

describe('what the mesh encloses is what the model of the piece holds', () => {
    it.each(goodSamples)('%s', async (name) => {
        const plan = await planOf(...sampleText(name));
        const compared = new Set<object>();
        for (const [frame, faces] of plan.faces.entries()) {
            for (const face of faces) {
                if (
                    face.unsized ||
                    face.inside !== undefined ||
                    plan.blanks.find(({ name: of }) => of === face.blank)?.thickness === undefined
                )
                    continue;
                const view = roundOf(plan, frame, face.blank);
                const held = [...volumes(face)].reduce((sum, [, volume]) => sum + volume, 0);
                const hollow = face.cells.reduce((sum, { region, column }) => {
                    let upper = column.top.value;
                    let air = 0;
                    for (const { kind, down } of column.layers) {
                        if (kind === 'air') air += down.value - upper;
                        upper = down.value;
                    }
                    return sum + air * area(region);
                }, 0);
                const slots = slotsOf(face, view);
                const enclosed = volumeOf(roundMesh(view, false), 'z');
                expect(Math.abs(enclosed - held - hollow + slots), `${face.blank} ${frame}`).toBeLessThan(2e-5 * held + 1e-2);
                expect(Math.abs(volumeOf(roundMesh(view, false), 'x') - enclosed), `${face.blank} ${frame}`).toBeLessThan(
                    2e-5 * held + 1e-2,
                );
                const up = view.surfaces.filter(({ down }) => down !== true).reduce((sum, surface) => sum + areaOf(surface), 0);
                const gone = face.backed
                    ? 0
                    : face.cells.filter(({ column }) => isGone(column)).reduce((sum, { region }) => sum + area(region), 0);
                expect(up).toBeGreaterThan(0);
                if (face.kerfs.length === 0 && face.marks.length === 0)
                    expect(Math.abs(up + gone - area(face.body.region))).toBeLessThan(0.05);
                compared.add(face);
            }
        }
        expect(compared.size).toBeGreaterThan(0);
    });
});

/** What slots of cuts and holes of marks take, which the model keeps beside its cells. */
function slotsOf(face: Plan['faces'][number][number], view: RoundView): number {
    if (face.kerfs.length === 0 && face.marks.every(({ through }) => !through)) return 0;
    const shown = view.surfaces.reduce((sum, surface) => sum + (surface.down ? -1 : 1) * areaOf(surface) * surface.z, 0);
    const whole = [...face.cells, { region: face.body.region, column: face.bare }];
    const cells = whole.slice(0, -1).reduce((sum, { region, column }) => sum + area(region) * heightOf(column, view), 0);
    const rest = area(face.body.region) - whole.slice(0, -1).reduce((sum, { region }) => sum + area(region), 0);
    return cells + rest * heightOf(face.bare, view) - shown;
}

function heightOf(column: Plan['faces'][number][number]['bare'], { thickness }: RoundView): number {
    return isGone(column) ? 0 : Math.min(thickness, column.layers.at(-1)!.down.value) - column.top.value;
}
