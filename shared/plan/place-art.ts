import { painted } from '../art/painted';
import { subtract } from '../geometry/boolean';
import { grow } from '../geometry/offset';
import { emptyRegion, type Region } from '../geometry/region';
import { circle, rectangle } from '../geometry/shapes';
import { rotate, translate } from '../geometry/transform';
import type { ArtSource } from '../recipe/recipe';
import type { ArtPlacement, Boundary, Outline, Placement } from '../recipe/step';
import { contentKey } from './content-key';
import type { PlacedArt } from './laser-plan';
import type { Memo } from './memo';
import type { ArtState, BlankPlan } from './plan';

/** Everything a placement is laid out with. */
export interface PlacingTable {
    readonly memo: Memo;
    readonly arts: ReadonlyMap<string, ArtState>;
    readonly sources: ReadonlyMap<string, ArtSource>;
    readonly blank: BlankPlan;
}

/**
 * Lays one placement onto its blank. Art goes with the middle of its page onto `at` (the blank's
 * middle when absent), turned about that point; an inverse is taken within a boundary about the
 * same point. Undefined when its art could not be read or does not exist.
 */
export function place(placement: Placement, index: number, table: PlacingTable): PlacedArt | undefined {
    const centre = centreOf(placement, table.blank);
    if (placement.kind === 'shape') {
        const region = outlineAt(placement.outline, centre);
        return { index, bitmap: false, inverse: false, centre, region, figure: region };
    }
    const figure = figureOf(placement, centre, table);
    if (figure === undefined) return undefined;
    const { region: shown, artName, bitmap } = figure;
    if (placement.inverse === undefined) {
        return { index, artName, bitmap, inverse: false, centre, region: shown, figure: shown };
    }
    const within = placement.inverse.value;
    const boundaryKey = contentKey(within, centre, table.blank.size, within.kind === 'grown' ? table.memo.keyOf(shown) : '');
    const boundary = table.memo.get('boundary', boundaryKey, () => boundaryAt(within, centre, table.blank, shown));
    const key = `${table.memo.keyOf(shown)} ${table.memo.keyOf(boundary)}`;
    const region = table.memo.get('inverse', key, () => subtract(boundary, shown));
    return { index, artName, bitmap, inverse: true, centre, region, figure: shown, boundary };
}

function centreOf(placement: Placement, blank: BlankPlan): { x: number; y: number } {
    if (placement.at !== undefined) return { x: placement.at.x.value, y: placement.at.y.value };
    return { x: (blank.size?.width ?? 0) / 2, y: (blank.size?.height ?? 0) / 2 };
}

function figureOf(placement: ArtPlacement, centre: { x: number; y: number }, table: PlacingTable) {
    const name = placement.art.value;
    if (name === undefined) return undefined;
    const state = table.arts.get(name);
    if (state?.kind !== 'art') return undefined;
    const { art } = state;
    const threshold = table.sources.get(name)?.threshold?.value ?? 0.5;
    const picks = placement.picks.map((pick) => pick.value);
    const paintKey = `${table.memo.keyOf(art)} ${threshold} ${picks.join(' ')}`;
    const paint = table.memo.get('painted', paintKey, () => painted(art, picks, threshold));
    const turn = placement.turn?.value ?? 0;
    const region = table.memo.get('placed', `${table.memo.keyOf(paint)} ${centre.x} ${centre.y} ${turn}`, () => {
        const moved = translate(paint, centre.x - art.page.width / 2, centre.y - art.page.height / 2);
        return turn === 0 ? moved : rotate(moved, turn, centre.x, centre.y);
    });
    return { region, artName: name, bitmap: art.kind === 'bitmap' };
}

function boundaryAt(boundary: Boundary, centre: { x: number; y: number }, blank: BlankPlan, shown: Region): Region {
    switch (boundary.kind) {
        case 'blank':
            return blank.size === undefined ? emptyRegion : rectangle(0, 0, blank.size.width, blank.size.height);
        case 'grown':
            return grow(shown, boundary.by.value);
        default:
            return outlineAt(boundary, centre);
    }
}

function outlineAt(outline: Outline, centre: { x: number; y: number }): Region {
    if (outline.kind === 'circle') return circle(centre.x, centre.y, outline.diameter.value);
    const width = outline.size.width.value;
    const height = outline.size.height.value;
    return rectangle(centre.x - width / 2, centre.y - height / 2, width, height);
}
