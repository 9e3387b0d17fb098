import type { Pressed } from '../bench/virtual-press';
import type { KerfWidth } from '../burn/kerf-width';
import { outputOf } from '../burn/output';
import { area, bounds } from '../geometry/measure';
import type { Bounds, Region } from '../geometry/region';
import type { LaserPlan } from '../plan/laser-plan';
import type { FoundPlace } from '../plan/laying';
import { zeroOf } from '../plan/origin';
import type { Cutting, InlayPlan, Plan, StepPlan } from '../plan/plan';
import type { TradePoint } from '../plan/plan-trade';
import { endOfSetUp, setUps } from '../plan/set-ups';
import { isoMoment } from '../quantity/calendar';
import type { Finding } from '../recipe/finding';
import type { Step } from '../recipe/step';
import type { Wall } from '../rules/helpers/walls';
import { besideOf, floorLeft, freedParts, thinnestFloor, thinnestWalls } from '../rules/helpers/what-is-left';
import { pathData } from './path-data';
import { pressVerdict } from './press-facts';
import { readiness } from './readiness';
import { setUpFile } from './setup-svg';

/** Version of the JSON's shape: goes up when a reader would have to change. */
export const planSchema = 1 as const;

type RegionJson = (of: Region) => { readonly bounds: Bounds | null; readonly rings: number; readonly path?: string };

export interface PlanJsonOptions {
    readonly shapes?: boolean;
    /** When the work begins, a moment of quantity/calendar. */
    readonly start?: number;
    /** Inlays pressed together, by step. */
    readonly presses?: ReadonlyMap<number, Pressed>;
    /** Ways to a depth in other numbers of passes, by step. */
    readonly trades?: ReadonlyMap<number, readonly TradePoint[]>;
}

/**
 * A plan as plain JSON: everything that was worked out, in base units (mm, mm2, mm3, s, W, g, rad),
 * without the places in the text. `shapes` adds the path data of every region; `start`, a moment of
 * quantity/calendar, the dates of the run.
 */
export function planJson(
    plan: Plan,
    findings: readonly Finding[],
    { shapes = false, start, presses, trades }: PlanJsonOptions = {},
) {
    const region = (of: Region) => ({
        bounds: bounds(of) ?? null,
        rings: of.rings.length,
        ...(shapes ? { path: pathData(of) } : {}),
    });
    return {
        schema: planSchema,
        recipe: { name: plan.recipe.name, title: plan.recipe.title, revision: plan.recipe.revision, make: plan.recipe.make },
        laser: plan.recipe.laser?.name ?? null,
        zero: zeroOf(plan.recipe.laser),
        output: outputOf(plan.recipe.laser),
        blanks: plan.blanks.map((blank) => ({
            name: blank.name,
            of: blank.blank.sheet?.name ?? null,
            wood: blank.blank.sheet?.wood?.name ?? null,
            size: blank.size ?? null,
            thickness: blank.thickness ?? null,
            backing: blank.blank.backing,
            left: leftOf(plan, blank.name, region),
        })),
        arts: [...plan.arts].map(([name, state]) => ({
            name,
            state: state.kind,
            ...(state.kind === 'art'
                ? { kind: state.art.kind, page: state.art.page, parts: state.art.parts.length }
                : { message: state.message }),
        })),
        steps: plan.steps.map((step, index) => ({
            ...stepJson(step, region),
            ...woodLeftJson(plan, step),
            ...pressJson(step, presses?.get(index)),
            ...tradeJson(trades?.get(index)),
        })),
        setUps: setUpsJson(plan),
        totals: plan.totals ?? null,
        unknown: plan.unknown ?? null,
        supplies: plan.supplies,
        schedule: plan.unknown === undefined ? scheduleJson(plan, start) : null,
        cuttings: plan.cuttings.map(cuttingJson),
        cost: plan.cost ?? null,
        cautions: plan.cautions,
        boards: plan.boards.map(({ latest, ...board }) => ({
            ...board,
            latest: latest.map(({ pocket: { where: _, ...pocket }, ...told }) => ({ ...pocket, ...told })),
        })),
        findings: findings.map(({ rule, severity, message, step, where }) => ({
            rule,
            severity,
            message,
            ...(step === undefined ? {} : { step }),
            uri: where.uri,
            offset: where.offset,
            length: where.length,
        })),
    };
}

function setUpsJson(plan: Plan) {
    return setUps(plan).map((setUp) => ({
        number: setUp.number,
        blank: setUp.blank.name,
        face: setUp.side ?? 'front',
        steps: setUp.lasers.map(({ step }) => step.index),
        files: [setUpFile(setUp, 'svg'), setUpFile(setUp, 'ngc')],
        endsAt: setUp.ends?.step.index ?? null,
        ends: endOfSetUp(setUp) ?? null,
        before: setUp.before ?? null,
        foundBy: setUp.foundBy ?? null,
        place: placeJson(setUp.place),
        keeps: setUp.keeps,
    }));
}

function placeJson(place: FoundPlace | undefined) {
    if (place === undefined) return null;
    const { by, exact, from, mark } = place;
    return { by, step: mark?.step.index ?? null, within: exact, from };
}

/** What is there of a blank when all is done; null where its size is not known or its shapes cross too often. */
function leftOf(plan: Plan, blank: string, region: RegionJson) {
    const face = plan.faces[plan.faces.length - 1]?.find((one) => one.blank === blank);
    if (face === undefined || face.unsized === true || face.unknownSince !== undefined) return null;
    const [wall] = [...thinnestWalls(plan, blank).values()].toSorted((a, b) => a.distance - b.distance);
    return {
        area: area(face.body.region),
        floor: thinnestFloor(face.cells.map(({ column }) => column)) ?? null,
        wall: wall === undefined ? null : wallJson(wall),
        parts: freedParts(plan, blank).map((part) => ({ area: area(part), ...region(part) })),
    };
}

/** The thinnest wood that a step leaves below what it digs, and beside what it burns. */
function woodLeftJson(plan: Plan, step: StepPlan) {
    if (step.laser === undefined || step.blank === undefined) return {};
    const wall = thinnestWalls(plan, step.blank).get(step.step.index);
    return {
        ...(step.step.kind === 'engrave' ? { floor: floorLeft(plan, step) ?? null } : {}),
        ...(wall === undefined ? {} : { wall: wallJson(wall) }),
    };
}

function wallJson(wall: Wall) {
    const { distance, x, y, kind, later } = wall;
    return { width: distance, x, y, between: later.step.name, and: besideOf(wall), kind };
}

/** Times in s from the start; dates only where the start is known. */
function scheduleJson(plan: Plan, start: number | undefined) {
    const { schedule, recipe } = plan;
    const { ready, attended, machine, idle, workday, scaled, spans, sittings } = schedule;
    return {
        pieces: recipe.make,
        workday: workday ?? null,
        ready,
        attended,
        machine,
        idle,
        scaled,
        ...(start === undefined ? {} : { start: isoMoment(start), readyAt: isoMoment(start + ready) }),
        steps: spans,
        sittings,
        notBefore: readiness(plan).map((each) => ({ ...each, from: each.from ?? null })),
    };
}

function cuttingJson({ sheet, size, yielded, consumed }: Cutting) {
    return { sheet: sheet.name, size, ...yielded, consumed };
}

function stepJson(plan: StepPlan, region: RegionJson) {
    const { step, title, times, blank, unplanned, laser, fill, inlay, sand, wood, cautions, advice } = plan;
    return {
        index: step.index,
        kind: step.kind,
        name: nameOf(step),
        title,
        blank: blank ?? null,
        times,
        ...(unplanned === undefined ? {} : { unplanned }),
        ...(cautions === undefined ? {} : { cautions }),
        ...(advice === undefined ? {} : { advice }),
        ...(laser === undefined ? {} : { laser: laserJson(laser, region) }),
        ...(fill === undefined ? {} : { fill: { ...fill, pocket: fill.pocket.name } }),
        ...(inlay === undefined ? {} : { inlay: inlayJson(inlay, region) }),
        ...(sand === undefined ? {} : { sand }),
        ...(wood === undefined ? {} : { wood }),
    };
}

function laserJson(laser: LaserPlan, region: RegionJson) {
    const marks = laser.marks?.map(({ inlay: of, points, tone, settings }) => {
        return { inlay: of, points, tone: tone ?? null, settings: settings ?? null };
    });
    return {
        area: laser.area,
        perimeter: laser.perimeter,
        depth: laser.depth ?? null,
        through: laser.through,
        breakthrough: laser.breakthrough ?? null,
        tone: laser.tone ?? null,
        settings: laser.settings ?? null,
        scanAngle: laser.scanAngle,
        outlinePasses: laser.outlinePasses,
        outline: laser.outline ?? null,
        strongest: laser.strongest ?? null,
        kerf: laser.kerf === undefined ? null : kerfJson(laser, laser.kerf, region),
        focus: laser.focus ?? null,
        reach: laser.reach ?? null,
        taper: laser.taper,
        ...(laser.deepWall === undefined ? {} : { deepWall: laser.deepWall }),
        mirrored: laser.mirrorAxis !== undefined,
        region: region(laser.region),
        ...(marks === undefined ? {} : { marks }),
    };
}

/** How wide a cut is, and where its beam runs: `shift` beside the drawn edge, 0 along it. */
function kerfJson({ cutLine: line, fits }: LaserPlan, kerf: KerfWidth, region: RegionJson) {
    return {
        ...kerf,
        ...(fits !== undefined && { fits }),
        shift: line?.shift ?? 0,
        line: line === undefined ? null : region(line.encloses),
    };
}

function inlayJson(inlay: InlayPlan, region: RegionJson) {
    const { marks } = inlay;
    return {
        relief: inlay.relief.name,
        pocket: inlay.pocket.name,
        turnedOver: inlay.turnedOver,
        clearance: inlay.clearance,
        film: inlay.film,
        veneer: inlay.veneer ?? null,
        stack: inlay.stack ?? null,
        fit: inlay.fit ?? null,
        aside: inlay.aside?.most ?? null,
        symmetry: inlay.symmetry,
        fits: region(inlay.fits),
        collides: region(inlay.collides),
        empty: region(inlay.empty),
        ...(marks === undefined
            ? {}
            : {
                  marks: {
                      wanted: marks.wanted,
                      placed: marks.placed,
                      diameter: marks.diameter,
                      asymmetry: marks.asymmetry,
                      apart: marks.apart ?? null,
                  },
              }),
    };
}

function pressJson({ inlay }: StepPlan, pressed: Pressed | undefined) {
    if (inlay === undefined || pressed === undefined) return {};
    const { insertion, seat, bottoms, gapVolume, contact, open, stops, coarse } = pressed;
    const { sentence } = pressVerdict(inlay, pressed);
    return {
        press: { verdict: sentence, insertion, seat, bottoms, gapVolume, contact, open, stops: stops.slice(0, 10), coarse },
    };
}

/** Time, range and dose of each number of passes that gives the depth. */
function tradeJson(trade: readonly TradePoint[] | undefined) {
    return trade === undefined ? {} : { trade };
}

function nameOf(step: Step): string | null {
    return step.kind === 'engrave' || step.kind === 'cut' ? step.name : null;
}
