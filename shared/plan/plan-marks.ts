import { intersect, subtract, union } from '../geometry/boolean';
import { apartWhenTurned, type Point, registrationMarks, type Turning } from '../geometry/marks';
import { area, centroid } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { circle, rectangle } from '../geometry/shapes';
import { mirror, translate } from '../geometry/transform';
import { isSameLie } from '../piece/lie';
import type { LaserPlan, MarkWork } from './laser-plan';
import { lieOf, seenFrom } from './lies';
import { machineWork } from './machine-work';
import type { Memo } from './memo';
import type { InlayMarks, InlayPlan, StepPlan } from './plan';
import { boundariesOf, turningOf } from './plan-inlay';
import type { Bench } from './plan-step';
import { solveTone } from './solve-settings';
import { stepTimes } from './step-times';
import { burningsOf } from './toolpaths';

/** A needle goes through it and its middle is still seen, mm. @commonPractice */
const diameter = 1;
/** From art, boundary and edges, mm, the best first. @commonPractice */
const distances = [8, 5, 3, 2] as const;
/** Light enough to lie in the face only, dark enough to be found. */
const tone = 0.25;

/**
 * Lays out the marks of every inlay that asks for them and puts them into the work of both halves.
 * Comes after all steps are planned: a half is burnt before the inlay that says where its marks go.
 */
export function layMarks(steps: StepPlan[], bench: Bench): void {
    for (const [index, plan] of steps.entries()) {
        const { step, inlay } = plan;
        const wanted = step.kind === 'inlay' ? (step.marks?.value ?? 0) : 0;
        const reliefBlank = bench.blanks.get(inlay?.reliefLaser.blank ?? '');
        const pocketBlank = bench.blanks.get(inlay?.pocketLaser.blank ?? '');
        if (
            inlay === undefined ||
            inlay.relief.kind === 'cut' ||
            wanted < 1 ||
            reliefBlank === undefined ||
            pocketBlank === undefined
        )
            continue;
        if (reliefBlank.size === undefined || pocketBlank.size === undefined) continue;
        const sheets = { relief: { x: 0, y: 0, ...reliefBlank.size }, pocket: { x: 0, y: 0, ...pocketBlank.size } };
        const found = findMarks({ inlay, index, wanted, sheets }, steps, bench.memo);
        const { marks, points } = found;
        const settings = solveTone(tone, pocketBlank, bench.recipe, bench.memo);
        if (marks.placed > 0) {
            const through = steps[inlay.relief.index]!.laser!.settings;
            burn(steps, bench, inlay.relief.index, {
                inlay: index,
                region: marks.relief,
                points: points.relief,
                ...(through === undefined ? {} : { settings: through }),
            });
            burn(steps, bench, inlay.pocket.index, {
                inlay: index,
                region: marks.pocket,
                points: points.pocket,
                tone,
                ...(settings === undefined ? {} : { settings }),
            });
        }
        steps[index] = { ...plan, inlay: { ...inlay, marks } };
    }
    for (const [index, plan] of steps.entries()) {
        if (plan.inlay === undefined) continue;
        // The halves as they are now, marks and all.
        const reliefLaser = steps[plan.inlay.relief.index]!.laser!;
        const pocketLaser = steps[plan.inlay.pocket.index]!.laser!;
        steps[index] = { ...plan, inlay: { ...plan.inlay, reliefLaser, pocketLaser } };
    }
}

function burn(steps: StepPlan[], bench: Bench, at: number, marks: MarkWork): void {
    const plan = steps[at]!;
    const laser = { ...plan.laser!, marks: [...(plan.laser!.marks ?? []), marks] };
    const { size } = bench.blanks.get(laser.blank) ?? {};
    const work = machineWork(burningsOf(laser, bench.recipe.laser), size, bench.memo);
    steps[at] = { ...plan, laser: { ...laser, ...work }, times: stepTimes(plan.step, work.machine) };
}

interface Found {
    readonly marks: InlayMarks;
    readonly points: { readonly relief: readonly Point[]; readonly pocket: readonly Point[] };
}

/** A blank's outline in its own coordinates, mm. */
interface Sheet {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
}

interface Asked {
    readonly inlay: InlayPlan;
    /** Index of the inlay step, whose own marks are not in the way. */
    readonly index: number;
    readonly wanted: number;
    readonly sheets: { readonly relief: Sheet; readonly pocket: Sheet };
}

/**
 * Where the marks of an inlay go: outside of the relief's boundary and of all that is engraved, on both
 * blanks as they lie on each other, and on wood that no cut has taken away before the halves meet.
 */
export function findMarks({ inlay, index, wanted, sheets }: Asked, steps: readonly StepPlan[], memo: Memo): Found {
    const turning = turningOf(inlay.reliefLaser, inlay.pocketLaser);
    const over = (region: Region): Region => translate(mirror(region, turning.axis), turning.x, turning.y);
    // What is engraved on the other face is in nobody's way here.
    const takenBeside = (half: LaserPlan): Region[] =>
        steps.flatMap(({ laser }) =>
            laser?.blank === half.blank && laser.step.kind === 'engrave' && isSameLie(lieOf(laser), lieOf(half))
                ? occupied(laser, index, memo)
                : [],
        );
    const onPocket = takenBeside(inlay.pocketLaser);
    const onRelief = takenBeside(inlay.reliefLaser);
    const cutFrom = (half: LaserPlan, sheet: Sheet): Region[] =>
        steps.flatMap(({ laser }, at) =>
            laser?.step.kind === 'cut' && laser.blank === half.blank && at < index ? [seenFrom(laser, half, sheet, memo)] : [],
        );
    const cuts = { pocket: cutFrom(inlay.pocketLaser, sheets.pocket), relief: cutFrom(inlay.reliefLaser, sheets.relief) };
    const same = turningsOf(inlay, memo);
    const names = (regions: readonly Region[]): string[] => regions.map((region) => memo.keyOf(region));
    const key = JSON.stringify([wanted, sheets, turning, same, ...[onPocket, onRelief, cuts.pocket, cuts.relief].map(names)]);
    const marks = memo.get('marks', key, () => {
        const board = whatIsLeft(outlineOf(sheets.pocket), cuts.pocket, inlay.pocketLaser.region);
        const veneer = whatIsLeft(outlineOf(sheets.relief), cuts.relief, inlay.standing);
        const room = intersect(board, over(veneer));
        const art = union([...onPocket, ...onRelief.map(over)]);
        let best = registrationMarks(art, room, wanted, diameter, distances[0], same);
        for (const distance of distances.slice(1)) {
            if (best.points.length >= wanted) break;
            best = registrationMarks(art, room, wanted, diameter, distance, same);
        }
        return best;
    });
    const apart = apartWhenTurned(marks.points, same);
    const back = ({ x, y }: Point): Point => ({ x: 2 * turning.axis - (x - turning.x), y: y - turning.y });
    const points = { relief: marks.points.map(back), pocket: marks.points };
    return {
        points,
        marks: {
            wanted,
            placed: marks.points.length,
            diameter,
            asymmetry: marks.asymmetry,
            ...(Number.isFinite(apart) ? { apart } : {}),
            relief: discs(points.relief),
            pocket: marks.region,
        },
    };
}

/** The turns of the pocket's art that could be mistaken for each other. */
function turningsOf({ symmetry, pocketLaser }: InlayPlan, memo: Memo): Turning | undefined {
    const drawn = pocketLaser.placed.map(({ region }) => region);
    const key = drawn.map((region) => memo.keyOf(region)).join(' ');
    const middle = memo.get('middle', key, () => centroid(drawn.length === 1 ? drawn[0]! : union(drawn)));
    return middle === undefined ? undefined : { middle, turns: symmetry.turns };
}

/** What of a sheet is still there after cuts: the inside of one that holds the half, the outside of any other. */
function whatIsLeft(sheet: Region, cuts: readonly Region[], half: Region): Region {
    return cuts.reduce((left, cut) => {
        const holds = area(intersect(half, cut)) > area(half) / 2;
        return holds ? intersect(left, cut) : subtract(left, cut);
    }, sheet);
}

/** All that a step takes up of its blank: what it burns, what it leaves standing within its boundary, and marks of other inlays. */
function occupied(laser: LaserPlan, index: number, memo: Memo): Region[] {
    const others = (laser.marks ?? []).filter(({ inlay }) => inlay !== index);
    return [laser.region, ...boundariesOf(laser, memo), ...others.map(({ region }) => region)];
}

function outlineOf({ x, y, width, height }: Sheet): Region {
    return rectangle(x, y, width, height);
}

function discs(points: readonly Point[]): Region {
    return union(points.map(({ x, y }) => circle(x, y, diameter)));
}
