import { bendTones } from '../art/raster/tone';
import { lineWidth, spotOf } from '../burn/beam';
import type { Wall } from '../burn/wall';
import { subtract, union } from '../geometry/boolean';
import { area, perimeter } from '../geometry/measure';
import { grow } from '../geometry/offset';
import { emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { mirror } from '../geometry/transform';
import { followsOutline } from '../recipe/follows-outline';
import type { Recipe } from '../recipe/recipe';
import type { Cut, Engrave, Inlay } from '../recipe/step';
import { dotGain } from '../toolpath/dot-gain';
import { contentKey } from './content-key';
import { depthLaw } from './depth-law';
import { type DotScan, dotsOf } from './halftone';
import type { DottedPicture, LaserPlan, PlacedArt } from './laser-plan';
import { machineWork, noWork } from './machine-work';
import { type PlacingTable, place } from './place-art';
import { focusOfPasses } from './plan-focus';
import { lineOf, strongestOfLine } from './plan-outline';
import { shownTones } from './shown-tones';
import { type Solved, solveSettings } from './solve-settings';
import { outlineOfStep, wallOfStep, wallParts } from './step-edges';

/** Why a step could not be worked out, in a maker's words. */
export interface Unplanned {
    readonly unplanned: string;
}

/** Why a step of tangled art could not be worked out. */
export const tooTangled =
    'its shapes cross one another too often (more than some 2 million times; 100,000 for a million points) to be worked out';
const tangled: Unplanned = { unplanned: tooTangled };

/**
 * Works out one laser step: what it burns on its blank, how deep, with which settings and how long.
 * The edges of an inlay's halves are drawn so that the clearance is what comes out: each half gives
 * half of it, less what the width of the beam adds by itself.
 */
export function planLaser(step: Engrave | Cut, recipe: Recipe, table: PlacingTable): LaserPlan | Unplanned {
    const placed = placeArt(step, table);
    if ('unplanned' in placed) return placed;
    const axis = step.mirror.length % 2 === 1 ? axisOf(placed) : undefined;
    const solved = solveSettings(step, table.blank, recipe, table.memo);
    const { memo } = table;
    const pictured = (one: PlacedArt): boolean => step.kind === 'engrave' && one.dithered !== undefined;
    const outline = outlineOfStep(
        step,
        solved,
        burntRegion(
            placed.filter((one) => !pictured(one)),
            axis,
            0,
            table,
        ),
        recipe,
        table,
    );
    const wall = step.kind === 'cut' ? undefined : wallOfStep(solved, recipe, { ...table, line: lineOf(outline) });
    const edge = (step.offset?.value ?? 0) + halfClearance(step, recipe, wall);
    const scanAngle = scanAngleOf(step, table.blank.grain);
    const pictures = picturesOf(
        step,
        placed,
        { pitch: pitchOf(step, solved), angle: scanAngle, axis, spot: spotOf(recipe.laser)?.diameter },
        table,
    );
    const whole = burntRegion(
        placed.filter(({ index }) => !pictures.some(({ placement }) => placement === index)),
        axis,
        edge,
        table,
    );
    if (whole === tangledRegion) return tangled;
    if (followsOutline(step)) return planLine(step, whole, { solved, placed, axis, edge }, recipe, table);
    const dotted = placed.filter(({ index }) => pictures.some(({ placement }) => placement === index));
    const region = dotted.length === 0 ? whole : withPictures(whole, dotted, axis, table);
    const outlinePasses = step.kind === 'cut' ? (solved.settings?.passes ?? step.passes?.value ?? 1) : (step.outline?.value ?? 0);
    const focus = focusOfPasses(step, solved, recipe.laser);
    const wholeKey = memo.keyOf(whole);
    return {
        step,
        blank: table.blank.name,
        region,
        ...(pictures.length === 0 ? {} : { whole, pictures }),
        area: memo.get('area', wholeKey, () => area(whole)) + dottedArea(pictures),
        perimeter: memo.get('perimeter', wholeKey, () => perimeter(whole)),
        placed,
        ...(axis === undefined ? {} : { mirrorAxis: axis }),
        ...solved,
        scanAngle,
        outlinePasses,
        ...(outline === undefined ? {} : { outline }),
        ...(focus === undefined ? {} : { focus }),
        taper: wall?.taper ?? taperOfCut(solved),
        growth: wall?.growth ?? 0,
        ...wallParts(wall),
        edge,
        // How long a cut takes is said where its line is laid.
        ...(step.kind === 'cut'
            ? noWork
            : machineWork(
                  [
                      {
                          region: whole,
                          pictures,
                          step,
                          scanAngle,
                          outlinePasses,
                          outline,
                          focus,
                          settings: solved.settings,
                          laser: recipe.laser,
                      },
                  ],
                  table.blank.size,
                  memo,
              )),
    };
}

/** The art of a step where it lies on the blank. */
function placeArt(step: Engrave | Cut, table: PlacingTable): PlacedArt[] | Unplanned {
    const placed: PlacedArt[] = [];
    for (const [index, placement] of step.placements.entries()) {
        const one = place(placement, index, table);
        if (one === undefined) return { unplanned: 'its art could not be read' };
        if (one === 'tangled') return tangled;
        placed.push(one);
    }
    return placed.length === 0 ? { unplanned: 'it has no art' } : placed;
}

/** A step that follows its outline: as wide as the spot, as often as it has passes. */
function planLine(
    step: Engrave | Cut,
    line: Region,
    { solved, placed, axis, edge }: { solved: Solved; placed: readonly PlacedArt[]; axis: number | undefined; edge: number },
    recipe: Recipe,
    table: PlacingTable,
): LaserPlan {
    const { laser } = recipe;
    const { blank, memo } = table;
    const key = memo.keyOf(line);
    const width = lineWidth(laser);
    const region = memo.get('followed', `${key} ${width}`, () => subtract(grow(line, width / 2), grow(line, -width / 2)));
    const outlinePasses = solved.settings?.passes ?? step.passes?.value ?? 1;
    return {
        step,
        blank: blank.name,
        region,
        line,
        area: memo.get('area', memo.keyOf(region), () => area(region)),
        perimeter: memo.get('perimeter', key, () => perimeter(line)),
        placed,
        ...(axis === undefined ? {} : { mirrorAxis: axis }),
        ...solved,
        scanAngle: 0,
        outlinePasses,
        ...strongestAlong(line, solved, recipe, table),
        taper: 0,
        growth: 0,
        edge,
        ...machineWork(
            [{ region: line, step, scanAngle: 0, outlinePasses, focus: undefined, settings: solved.settings, laser }],
            blank.size,
            memo,
        ),
    };
}

function strongestAlong(
    line: Region,
    { settings, tone }: Solved,
    recipe: Recipe,
    { blank, memo }: Pick<PlacingTable, 'blank' | 'memo'>,
): Pick<LaserPlan, 'strongest'> {
    if (settings === undefined || tone !== undefined) return {};
    return strongestOfLine(line, settings, depthLaw(recipe, blank.blank.sheet, memo), recipe.laser, memo);
}

/** The same step with other figures: settings, depth and walls, with everything drawn left where it is. */
export function laserFigures(
    laser: LaserPlan,
    step: Engrave | Cut,
    recipe: Recipe,
    table: Pick<PlacingTable, 'blank' | 'memo'>,
): LaserPlan {
    const {
        settings: _settings,
        depth: _depth,
        breakthrough: _through,
        tone: _tone,
        focus: _focus,
        finest: _finest,
        wall: _wall,
        deepWall: _deepWall,
        outline: _outline,
        strongest: _strongest,
        goesOn: _goesOn,
        ...drawn
    } = laser;
    const solved = solveSettings(step, table.blank, recipe, table.memo);
    if (followsOutline(step))
        return { ...drawn, step, ...solved, ...strongestAlong(laser.line ?? laser.region, solved, recipe, table) };
    const outline = outlineOfStep(step, solved, laser.whole ?? laser.region, recipe, table);
    const wall = step.kind === 'cut' ? undefined : wallOfStep(solved, recipe, { ...table, line: lineOf(outline) });
    const focus = focusOfPasses(step, solved, recipe.laser);
    return {
        ...drawn,
        step,
        ...solved,
        ...(outline === undefined ? {} : { outline }),
        ...(focus === undefined ? {} : { focus }),
        taper: wall?.taper ?? taperOfCut(solved),
        growth: wall?.growth ?? 0,
        ...wallParts(wall),
    };
}

/** Distance of the scan lines (mm); a usual one while the settings are not known. @commonPractice */
function pitchOf(step: Engrave | Cut, { settings }: Solved): number {
    return settings?.pitch ?? (step.kind === 'engrave' ? step.pitch?.value : undefined) ?? 0.1;
}

function picturesOf(
    step: Engrave | Cut,
    placed: readonly PlacedArt[],
    scan: DotScan & { spot: number | undefined },
    { memo, sources }: PlacingTable,
): DottedPicture[] {
    return placed.flatMap((one) => {
        const placement = step.placements[one.index];
        const source = sources.get(one.artName ?? '');
        const art = one.dithered;
        if (step.kind !== 'engrave' || placement?.kind !== 'art' || art === undefined || source === undefined) return [];
        const { dither, curve } = source;
        const key = contentKey(memo.keyOf(art), dither, curve, placement, one.centre, memo.keyOf(one.region), scan);
        const dotted = memo.get('dots', key, () => {
            const made = dotsOf(art, source, placement, one, scan, memo);
            if (made === undefined) return undefined;
            const { grid, greys } = made;
            const gain = scan.spot === undefined ? undefined : dotGain(grid, scan.spot, greys.darkness);
            const seen = gain === undefined ? greys : bendTones(greys, gain.curve);
            return {
                grid,
                dots: grid.dots.reduce((sum, dot) => sum + dot, 0),
                ...(gain === undefined ? {} : { covered: gain.covered }),
                tones: shownTones(seen, grid),
            };
        });
        return dotted === undefined ? [] : [{ placement: one.index, artName: source.name, ...dotted }];
    });
}

function dottedArea(pictures: readonly DottedPicture[]): number {
    return pictures.reduce((sum, { dots, grid }) => sum + dots * grid.pitch ** 2, 0);
}

function withPictures(whole: Region, dotted: readonly PlacedArt[], axis: number | undefined, table: PlacingTable): Region {
    const where = burntRegion(dotted, axis, 0, table);
    if (whole.rings.length === 0) return where;
    const { memo } = table;
    return memo.get('united', `${memo.keyOf(whole)} ${memo.keyOf(where)}`, () => union([whole, where]));
}

function burntRegion(placed: readonly PlacedArt[], axis: number | undefined, edge: number, { memo }: PlacingTable): Region {
    if (placed.length === 0) return emptyRegion;
    const regions = placed.map((one) => one.region);
    const whole =
        regions.length === 1
            ? regions[0]!
            : memo.get('united', regions.map((region) => memo.keyOf(region)).join(' '), () => union(regions));
    if (whole === tangledRegion) return tangledRegion;
    const grown = edge === 0 ? whole : memo.get('grown', `${memo.keyOf(whole)} ${edge}`, () => grow(whole, edge));
    return axis === undefined || grown === tangledRegion
        ? grown
        : memo.get('mirrored', `${memo.keyOf(grown)} ${axis}`, () => mirror(grown, axis));
}

/** A step mirrors about the upright through the middle of its placements, so that its art stays where it was put. */
function axisOf(placed: readonly PlacedArt[]): number {
    const xs = placed.map((one) => one.centre.x);
    return (Math.min(...xs) + Math.max(...xs)) / 2;
}

/** How far the edge of an inlay's half is drawn outwards for its clearance, mm: what the beam takes by itself counts. */
function halfClearance(step: Engrave | Cut, recipe: Recipe, wall: Wall | undefined): number {
    const clearance = clearanceOf(step, recipe);
    return clearance === undefined ? 0 : shareOf(step, clearance, recipe) - (wall?.growth ?? 0);
}

/** Lean of the walls of a cut, whose kerf narrows towards the back; rad. Of what is no cut none is known. */
function taperOfCut({ kerf, depth }: Solved): number {
    return kerf === undefined || depth === undefined ? 0 : Math.atan2((kerf.face.value - kerf.back.value) / 2, depth.value);
}

/** What a half gives of the clearance, outwards from what is drawn of it: a part that is cut out becomes smaller by it. */
function shareOf({ kind, name }: Engrave | Cut, clearance: number, { steps }: Recipe): number {
    const isPart = kind === 'cut' && steps.some((step) => step.kind === 'inlay' && step.relief.value === name);
    return isPart ? -clearance / 2 : clearance / 2;
}

/** The clearance that an inlay asks of this half; undefined for a step that no inlay uses. */
function clearanceOf(step: Engrave | Cut, recipe: Recipe): number | undefined {
    const inlay = recipe.steps.find(
        (other): other is Inlay =>
            other.kind === 'inlay' && (other.relief.value === step.name || other.pocket.value === step.name),
    );
    return inlay === undefined ? undefined : Math.max(0, inlay.clearance?.value ?? 0);
}

/** Across the grain when nothing else is said; along the width when there is no grain to go by. */
function scanAngleOf(step: Engrave | Cut, grain: number | undefined): number {
    const direction = step.kind === 'engrave' ? step.scan?.direction : undefined;
    if (direction === 'outline') return 0;
    if (typeof direction === 'object') return direction.value;
    if (grain === undefined) return 0;
    return direction === 'along' ? grain : grain + Math.PI / 2;
}
