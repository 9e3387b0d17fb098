import type { BitmapArt } from '../art/bitmap';
import { subtract } from '../geometry/boolean';
import { grow } from '../geometry/offset';
import { emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { copiesAt, repeat } from '../geometry/repeat';
import { circle, rectangle } from '../geometry/shapes';
import { rotate, translate } from '../geometry/transform';
import type { ArtSource } from '../recipe/recipe';
import type { ArtPlacement, Boundary, Outline, Placement } from '../recipe/step';
import type { BlankPoint } from '../toolpath/place';
import { contentKey } from './content-key';
import type { PlacedArt } from './laser-plan';
import type { Memo } from './memo';
import { ditheredArt, paintOf } from './paint-of';
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
 * same point. Copies lie on a grid that has its middle there, or on places of a list about their middle, each with a boundary of
 * its own. Undefined when its art could not be read or does not exist,
 * `tangled` when its shapes cross one another too often to be worked out.
 */
export function place(placement: Placement, index: number, table: PlacingTable): PlacedArt | 'tangled' | undefined {
    const centre = centreOf(placement, table.blank);
    if (placement.kind === 'shape') {
        const turn = placement.turn?.value ?? 0;
        const upright = outlineAt(placement.outline, centre);
        const region = copies(turn === 0 ? upright : rotate(upright, turn, centre.x, centre.y), placement, centre);
        return { index, bitmap: false, inverse: false, centre, region, figure: region };
    }
    const figure = figureOf(placement, centre, table);
    if (figure === undefined) return undefined;
    if (figure === 'tangled') return 'tangled';
    const { region: shown, artName, bitmap, dithered, grid } = figure;
    const told = { ...(dithered === undefined ? {} : { dithered }), ...(grid === undefined ? {} : { grid }) };
    const base = { index, artName, bitmap, ...told, centre, figure: shown };
    if (placement.inverse === undefined) {
        return { ...base, inverse: false, region: shown };
    }
    const within = placement.inverse.value;
    const grown = within.kind === 'grown' ? table.memo.keyOf(shown) : '';
    const boundaryKey = contentKey(within, centre, table.blank.size, grown, placement.repeat, pointsOf(placement));
    const boundary = table.memo.get('boundary', boundaryKey, () => boundaryAt(within, centre, table.blank, shown, placement));
    // A picture's white burns and its black stays, so anything within the boundary may.
    if (dithered !== undefined) return { ...base, inverse: true, region: boundary, boundary };
    const key = `${table.memo.keyOf(shown)} ${table.memo.keyOf(boundary)}`;
    const region = table.memo.get('inverse', key, () => subtract(boundary, shown));
    return boundary === tangledRegion || region === tangledRegion ? 'tangled' : { ...base, inverse: true, region, boundary };
}

function centreOf(placement: Placement, blank: BlankPlan): BlankPoint {
    const points = pointsOf(placement);
    if (points.length > 0) return middleOf(points);
    if (placement.at !== undefined) return { x: placement.at.x.value, y: placement.at.y.value };
    return { x: (blank.size?.width ?? 0) / 2, y: (blank.size?.height ?? 0) / 2 };
}

/** The places of a list, mm; none where one copy or a grid is laid down. */
export function pointsOf({ places }: Placement): BlankPoint[] {
    return (places?.points ?? []).map(({ x, y }) => ({ x: x.value, y: y.value }));
}

/** The middle of what places take up together. */
function middleOf(points: readonly BlankPoint[]): BlankPoint {
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
}

interface Figure {
    readonly region: Region;
    readonly artName: string;
    readonly bitmap: boolean;
    readonly dithered: BitmapArt | undefined;
    readonly grid: number | undefined;
}

function figureOf(placement: ArtPlacement, centre: BlankPoint, table: PlacingTable): Figure | 'tangled' | undefined {
    const name = placement.art.value;
    if (name === undefined) return undefined;
    const state = table.arts.get(name);
    if (state?.kind !== 'art') return undefined;
    const { art } = state;
    const source = table.sources.get(name);
    const picks = placement.picks.map((pick) => pick.value);
    const leaves = (placement.leaves ?? []).map((pick) => pick.value);
    const paint = paintOf(art, source, picks, table.memo, leaves);
    if (paint === tangledRegion) return 'tangled';
    const turn = placement.turn?.value ?? 0;
    const placedKey = `${table.memo.keyOf(paint)} ${contentKey(centre, turn, placement.repeat, pointsOf(placement))}`;
    const region = table.memo.get('placed', placedKey, () => {
        const moved = translate(paint, centre.x - art.page.width / 2, centre.y - art.page.height / 2);
        return copies(turn === 0 ? moved : rotate(moved, turn, centre.x, centre.y), placement, centre);
    });
    const dithered = picks.length + leaves.length === 0 ? ditheredArt(art, source) : undefined;
    return { region, artName: name, bitmap: art.kind === 'bitmap', dithered, grid: paint.grid };
}

/** The copies of what lies about the middle of the grid, or of the places of a list. */
function copies(region: Region, placement: Placement, centre: BlankPoint): Region {
    const points = pointsOf(placement);
    if (points.length > 0) {
        return copiesAt(
            region,
            points.map(({ x, y }) => ({ x: x - centre.x, y: y - centre.y })),
        );
    }
    const grid = placement.repeat;
    if (grid === undefined) return region;
    const { columns, rows } = grid;
    const stepX = grid.step.width.value;
    const stepY = grid.step.height.value;
    const first = translate(region, (-(columns - 1) * stepX) / 2, (-(rows - 1) * stepY) / 2);
    return repeat(first, { columns, rows, stepX, stepY });
}

function boundaryAt(boundary: Boundary, centre: BlankPoint, blank: BlankPlan, shown: Region, placement: Placement): Region {
    switch (boundary.kind) {
        case 'blank':
            return blank.size === undefined ? emptyRegion : rectangle(0, 0, blank.size.width, blank.size.height);
        case 'grown':
            return grow(shown, boundary.by.value);
        default:
            return copies(outlineAt(boundary, centre), placement, centre);
    }
}

function outlineAt(outline: Outline, centre: BlankPoint): Region {
    if (outline.kind === 'circle') return circle(centre.x, centre.y, outline.diameter.value);
    const width = outline.size.width.value;
    const height = outline.size.height.value;
    return rectangle(centre.x - width / 2, centre.y - height / 2, width, height);
}
