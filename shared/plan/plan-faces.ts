import { lineWidth } from '../burn/beam';
import { predict } from '../burn/law';
import { emptyRegion, type Region } from '../geometry/region';
import { afterDeed, type Deed } from '../piece/after-deed';
import { type Face, settledFace, startFace } from '../piece/face';
import { firstLie, regionAs, turnedLie } from '../piece/lie';
import type { Remembered } from '../piece/partition';
import { add, exactly, type Interval } from '../quantity/interval';
import type { Recipe } from '../recipe/recipe';
import type { Fill, Finish, Flip, Inlay, Seal } from '../recipe/step';
import type { Coat, Sealer } from '../recipe/stock';
import { contentKey } from './content-key';
import { depthLaw } from './depth-law';
import { type CutOutcome, cutOutcome } from './freed-parts';
import { type HeldParts, openings, release, turnHeld } from './held-parts';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { BlankPlan, InlayPlan, StepPlan } from './plan';
import { planFill, pouredHeight } from './plan-fill';
import { onPocket, stackAndFit } from './plan-inlay';
import { hollowIn, seatIn } from './receiving-place';
import { stepKey } from './step-key';
import { fillTimes } from './step-times';
import { halfOn } from './veneer-half';

/**
 * Carries the steps out one after the other on the faces of all blanks. What a step meets there completes what is planned of it:
 * how much a pocket takes, on which floor a veneer lies. Each face is remembered by what it followed from, so that an edit of one
 * step leaves those before it alone, and what later steps cut where it does not reach.
 * @returns the steps so completed; and the faces before the first step and after each one
 */
export function workThrough(
    recipe: Recipe,
    blanks: readonly BlankPlan[],
    drawn: readonly StepPlan[],
    memo: Memo,
): { readonly steps: StepPlan[]; readonly faces: readonly (readonly Face[])[] } {
    const outcomes = new Map<number, CutOutcome>(drawn.flatMap((step) => outcomeOf(step, blanks, drawn, memo)));
    const held: HeldParts = new Map();
    const faces: (readonly Face[])[] = [blanks.map((blank) => begin(blank, memo))];
    const steps: StepPlan[] = [];
    for (const one of drawn) {
        const before = faces[faces.length - 1]!;
        const plan = completed(one, recipe, faces, memo);
        const kept = rememberedFor(plan, memo);
        steps.push(plan);
        faces.push(
            before.map((face) => {
                const deeds = deedsOf(plan, face, { recipe, blanks, steps: drawn, outcomes, held, faces, memo });
                return deeds.reduce((now, deed) => remembered(now, deed, kept), settledFace(face));
            }),
        );
    }
    return { steps, faces };
}

function begin({ name, size, blank, thickness }: BlankPlan, memo: Memo): Face {
    const sheet = blank.sheet?.name ?? name;
    const backed = blank.backing !== 'none';
    const sized = size !== undefined && size.width > 0 && size.height > 0;
    return memo.get('face', contentKey(name, size, sheet, thickness, backed), () =>
        startFace({
            blank: name,
            sheet,
            backed,
            ...(sized ? { size } : {}),
            ...(thickness === undefined ? {} : { thickness }),
        }),
    );
}

/** A fill and an inlay with what the face says of the place that takes them in. */
function completed(plan: StepPlan, recipe: Recipe, faces: readonly (readonly Face[])[], memo: Memo): StepPlan {
    const { step, fill, inlay } = plan;
    if (step.kind === 'fill' && fill !== undefined) {
        const hollow = hollowIn(faces, plan.blank, fill.pocket.index);
        if (hollow === undefined) return plan;
        const made = planFill(step, fill.pocket, hollow, recipe);
        return { ...plan, fill: made, times: fillTimes(made) };
    }
    if (step.kind === 'inlay' && inlay !== undefined) {
        const seat = seatIn(faces, inlay, memo);
        const { reliefLaser: relief, pocketLaser: pocket, below, standing } = inlay;
        const face = faces.at(-1)?.find(({ blank }) => blank === relief.blank);
        const half = halfOn(face, relief, standing, memo) ?? inlay.half;
        return { ...plan, inlay: { ...inlay, ...stackAndFit(step, { relief, pocket, half, below, memo }, seat?.depth) } };
    }
    return plan;
}

/** Each step has a shelf of its own, so that a long recipe does not push its own answers out. */
function rememberedFor({ step }: StepPlan, memo: Memo): Remembered {
    const shelf = stepKey(step);
    return {
        get: (stage, key, compute) => memo.get(`${stage} ${shelf}`, key, compute),
        keyOf: (thing) => memo.keyOf(thing),
    };
}

function remembered(face: Face, deed: Deed, memo: Remembered): Face {
    const key = Object.entries(deed).map(([name, value]) => `${name} ${isRegion(value) ? memo.keyOf(value) : contentKey(value)}`);
    return memo.get('face', `${memo.keyOf(face)} ${key.join(' ')}`, () => afterDeed(face, deed, memo));
}

function isRegion(value: unknown): value is Region {
    return typeof value === 'object' && value !== null && 'rings' in value;
}

interface Doing {
    readonly recipe: Recipe;
    readonly blanks: readonly BlankPlan[];
    readonly steps: readonly StepPlan[];
    readonly outcomes: ReadonlyMap<number, CutOutcome>;
    /** Parts and waste that tabs or a backing still hold in the sheet, by blank. */
    readonly held: HeldParts;
    readonly faces: readonly (readonly Face[])[];
    readonly memo: Memo;
}

function outcomeOf(plan: StepPlan, blanks: readonly BlankPlan[], steps: readonly StepPlan[], memo: Memo): [number, CutOutcome][] {
    if (plan.laser?.step.kind !== 'cut') return [];
    const size = blanks.find(({ name }) => name === plan.blank)?.size;
    return size === undefined ? [] : [[plan.step.index, cutOutcome(plan.laser, size, steps, memo)]];
}

/** What a step does to one face, in order. */
function deedsOf(plan: StepPlan, face: Face, doing: Doing): Deed[] {
    const { step, inlay } = plan;
    if (plan.blank === face.blank) return deedsHere(plan, face, doing);
    switch (step.kind) {
        case 'inlay':
            return inlay?.reliefLaser.blank === face.blank ? [{ do: 'join', into: inlay.pocketLaser.blank }] : [];
        case 'peel':
            return [{ do: 'peel', blank: step.blank.value ?? '' }];
        case 'do':
            return release(face.blank, doing.held);
        default:
            return [];
    }
}

/** What a step does to the face that it is done on. */
function deedsHere(plan: StepPlan, face: Face, doing: Doing): Deed[] {
    const { step, laser, inlay, sand } = plan;
    switch (step.kind) {
        case 'engrave':
            return laser === undefined ? [] : burns(laser, face, doing);
        case 'cut':
            return laser === undefined ? [] : [cutDeed(laser, face, doing)];
        case 'fill':
            return pour(step, plan);
        case 'inlay':
            return inlay === undefined ? [] : letIn(step, inlay, face, doing);
        case 'sand':
            return sand === undefined ? [] : [{ do: 'sand', below: sand.below, flush: step.flush }];
        case 'seal':
        case 'finish':
            return [{ do: 'coat', step: step.index, name: fluidOf(step)?.name ?? step.kind }];
        case 'mask':
            return [{ do: 'mask', step: step.index }];
        case 'flip':
            return turning(step, face, doing);
        case 'peel':
            return [{ do: 'peel', blank: step.blank.value ?? '' }, ...release(face.blank, doing.held)];
        case 'do':
            return release(face.blank, doing.held);
        default:
            return [];
    }
}

function fluidOf(step: Seal | Finish): Sealer | Coat | undefined {
    return step.kind === 'seal' ? step.sealer : step.coat;
}

function pour(step: Fill, { fill }: StepPlan): Deed[] {
    const { resin } = step;
    if (fill === undefined || resin === undefined) return [];
    const metal = (resin.powder?.value ?? 0) > 0;
    return [
        {
            do: 'fill',
            step: step.index,
            pocket: fill.pocket.index,
            resin: resin.name,
            metal,
            ...pouredHeight(step, fill.layer),
        },
    ];
}

/** The veneer half comes into the pocket, with what was burnt into its underside. */
function letIn(step: Inlay, inlay: InlayPlan, face: Face, doing: Doing): Deed[] {
    const { reliefLaser, pocketLaser, veneer = exactly(0), film, half, fit } = inlay;
    const relief = doing.blanks.find(({ name }) => name === reliefLaser.blank);
    const backed = relief !== undefined && relief.blank.backing !== 'none';
    const floor = seatIn(doing.faces, inlay, doing.memo)?.floor;
    const isOpening = inlay.pocket.kind === 'cut';
    // In an opening a part that is thinner than the board is held level with its face.
    const isHeld = isOpening && fit !== undefined && floor !== undefined && veneer.value < floor.value - face.level.value;
    const isStopped = fit !== undefined && (!fit.bottoms || isHeld);
    const stopped = isStopped ? add(face.level, add(exactly(fit.insertion), film)) : undefined;
    return [
        // What is let into an opening has its waste out of the way.
        ...(isOpening ? openings(face.blank, doing.held) : []),
        {
            do: 'lay',
            step: step.index,
            pocket: inlay.pocket.index,
            region: inlay.fits,
            floor: stopped ?? floor ?? add(face.level, pocketLaser.depth ?? exactly(0)),
            sheet: relief?.blank.sheet?.name ?? reliefLaser.blank,
            veneer,
            glue: step.glue?.name ?? 'glue',
            film,
            ...(isOpening ? { opening: true } : {}),
            ...(backed ? { foil: reliefLaser.blank } : {}),
        },
        ...half.hollows.map(
            ({ region, more }) =>
                ({
                    do: 'undercut',
                    step: step.index,
                    region: onPocket(region, inlay, doing.memo),
                    more,
                    ...(inlay.turnedOver ? {} : { above: true as const }),
                }) as const,
        ),
    ];
}

/** A blank is turned over, with what tabs or a backing hold of it. */
function turning({ axis }: Flip, { blank, lie = firstLie }: Face, { blanks, held }: Doing): Deed[] {
    const of = blanks.find(({ name }) => name === blank);
    if (of === undefined) return [];
    const { size, thickness } = of;
    if (size !== undefined) turnHeld(held, blank, (region) => regionAs(region, lie, turnedLie(lie, axis), size));
    const sheet = of.blank.sheet?.name ?? blank;
    return [{ do: 'turn', axis, sheet, ...(size && { size }), ...(thickness && { thickness }) }];
}

function burns(laser: LaserPlan, face: Face, { recipe, steps, blanks, memo }: Doing): Deed[] {
    const { step, tone, settings, pictures = [] } = laser;
    // What the laser has not the power for leaves a skin.
    const isShort = laser.through && settings?.reached === false;
    const through = laser.through && !isShort;
    const whole = laser.whole ?? laser.region;
    const depths: Record<string, Interval> = {};
    const own = blanks.find(({ name }) => name === face.blank)?.blank.sheet?.name ?? face.blank;
    if (laser.depth !== undefined) depths[own] = isShort ? settings.gives : laser.depth;
    for (const { inlay, step: earlier } of steps) {
        if (inlay === undefined || inlay.pocketLaser.blank !== face.blank || earlier.index > step.index) continue;
        const sheet = blanks.find(({ name }) => name === inlay.reliefLaser.blank)?.blank.sheet;
        const depth = sheet && laser.settings && predict(depthLaw(recipe, sheet, memo), laser.settings);
        if (sheet !== undefined && sheet.name !== own && depth !== undefined) depths[sheet.name] = depth;
    }
    const burn = {
        do: 'burn',
        step: step.index,
        depths,
        through,
        toneOnly: tone !== undefined || laser.depth === undefined,
        foilStops: recipe.laser?.beam?.foilStops ?? true,
    } as const;
    const dotted = pictures.flatMap(({ tones }) => tones[0] ?? []);
    return [
        ...(whole.rings.length === 0 ? [] : [{ ...burn, region: whole }]),
        // Dots are told by their tone: what they dig is no floor.
        ...dotted.map((region) => ({ ...burn, region, toneOnly: true, through: false })),
        ...(laser.marks ?? []).map(
            (mark) => ({ do: 'mark', step: step.index, region: mark.region, through: mark.tone === undefined }) as const,
        ),
    ];
}

function cutDeed(laser: LaserPlan, face: Face, { recipe, blanks, outcomes, held }: Doing): Deed {
    const { blank } = face;
    const outcome = outcomes.get(laser.step.index);
    const kerf = laser.kerf?.face.value ?? lineWidth(recipe.laser);
    const tabs = laser.step.kind === 'cut' && (laser.step.tabs?.value ?? 0) > 0;
    const of = blanks.find(({ name }) => name === blank);
    const backed = of?.blank.backing !== 'none';
    const { settings, step, region } = laser;
    const line = laser.cutLine?.encloses ?? region;
    // What the laser surely has not the power for leaves a groove, and all keeps its place.
    if (settings?.reached === false && of?.thickness !== undefined && settings.gives.high < of.thickness.low) {
        const own = of.blank.sheet?.name ?? blank;
        return { do: 'cut', step: step.index, region, line, kerf, holes: emptyRegion, depths: { [own]: settings.gives } };
    }
    const { holes = emptyRegion, keeps } = outcome ?? {};
    const isHeld = tabs || backed;
    if (isHeld) {
        const before = held.get(blank);
        held.set(blank, {
            ...before,
            ...(keeps && { keeps }),
            holes: [...(before?.holes ?? []), ...(isEmpty(holes) ? [] : [holes])],
        });
    }
    return {
        do: 'cut',
        step: step.index,
        region,
        line,
        kerf,
        // Tabs hold the waste of a hole as they hold a part.
        holes: tabs ? emptyRegion : holes,
        ...(backed ? { held: true } : {}),
        ...(keeps !== undefined && !isHeld ? { keeps } : {}),
    };
}

function isEmpty({ rings }: Region): boolean {
    return rings.length === 0;
}
