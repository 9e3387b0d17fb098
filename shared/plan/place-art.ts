import type { BitmapArt } from '../art/bitmap';
import { subtract } from '../geometry/boolean';
import { grow } from '../geometry/offset';
import { emptyRegion, type Region, tangledRegion } from '../geometry/region';
import { repeat } from '../geometry/repeat';
import { circle, rectangle } from '../geometry/shapes';
import { rotate, translate } from '../geometry/transform';
import type { ArtSource } from '../recipe/recipe';
import type { ArtPlacement, Boundary, Outline, Placement, Repeat } from '../recipe/step';
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
 * same point. Copies lie on a grid that has its middle there, each with a boundary of its own. Undefined when its art could not be read or does not exist,
 * `tangled` when its shapes cross one another too often to be worked out.
 */
export function place(placement: Placement, index: number, table: PlacingTable): PlacedArt | 'tangled' | undefined {
    const centre = centreOf(placement, table.blank);
    if (placement.kind === 'shape') {
        const turn = placement.turn?.value ?? 0;
        const upright = outlineAt(placement.outline, centre);
        const region = copies(turn === 0 ? upright : rotate(upright, turn, centre.x, centre.y), placement.repeat);
        return { index, bitmap: false, inverse: false, centre, region, figure: region };
    }
    const figure = figureOf(placement, centre, table);
    if (figure === undefined) return undefined;
    if (figure === 'tangled') return 'tangled';
    const { region: shown, artName, bitmap, dithered } = figure;
    const base = { index, artName, bitmap, ...(dithered === undefined ? {} : { dithered }), centre, figure: shown };
    if (placement.inverse === undefined) {
        return { ...base, inverse: false, region: shown };
    }
    const within = placement.inverse.value;
    const grown = within.kind === 'grown' ? table.memo.keyOf(shown) : '';
    const boundaryKey = contentKey(within, centre, table.blank.size, grown, placement.repeat);
    const boundary = table.memo.get('boundary', boundaryKey, () =>
        boundaryAt(within, centre, table.blank, shown, placement.repeat),
    );
    // A picture's white burns and its black stays, so anything within the boundary may.
    if (dithered !== undefined) return { ...base, inverse: true, region: boundary, boundary };
    const key = `${table.memo.keyOf(shown)} ${table.memo.keyOf(boundary)}`;
    const region = table.memo.get('inverse', key, () => subtract(boundary, shown));
    return boundary === tangledRegion || region === tangledRegion ? 'tangled' : { ...base, inverse: true, region, boundary };
}

function centreOf(placement: Placement, blank: BlankPlan): { x: number; y: number } {
    if (placement.at !== undefined) return { x: placement.at.x.value, y: placement.at.y.value };
    return { x: (blank.size?.width ?? 0) / 2, y: (blank.size?.height ?? 0) / 2 };
}

interface Figure {
    readonly region: Region;
    readonly artName: string;
    readonly bitmap: boolean;
    readonly dithered: BitmapArt | undefined;
}

function figureOf(
    placement: ArtPlacement,
    centre: { x: number; y: number },
    table: PlacingTable,
): Figure | 'tangled' | undefined {
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
    const placedKey = `${table.memo.keyOf(paint)} ${contentKey(centre, turn, placement.repeat)}`;
    const region = table.memo.get('placed', placedKey, () => {
        const moved = translate(paint, centre.x - art.page.width / 2, centre.y - art.page.height / 2);
        return copies(turn === 0 ? moved : rotate(moved, turn, centre.x, centre.y), placement.repeat);
    });
    const dithered = picks.length + leaves.length === 0 ? ditheredArt(art, source) : undefined;
    return { region, artName: name, bitmap: art.kind === 'bitmap', dithered };
}

/** The copies of what lies about the middle of the grid. */
function copies(region: Region, grid: Repeat | undefined): Region {
    if (grid === undefined) return region;
    const { columns, rows } = grid;
    const stepX = grid.step.width.value;
    const stepY = grid.step.height.value;
    const first = translate(region, (-(columns - 1) * stepX) / 2, (-(rows - 1) * stepY) / 2);
    return repeat(first, { columns, rows, stepX, stepY });
}

function boundaryAt(
    boundary: Boundary,
    centre: { x: number; y: number },
    blank: BlankPlan,
    shown: Region,
    grid: Repeat | undefined,
): Region {
    switch (boundary.kind) {
        case 'blank':
            return blank.size === undefined ? emptyRegion : rectangle(0, 0, blank.size.width, blank.size.height);
        case 'grown':
            return grow(shown, boundary.by.value);
        default:
            return copies(outlineAt(boundary, centre), grid);
    }
}

function outlineAt(outline: Outline, centre: { x: number; y: number }): Region {
    if (outline.kind === 'circle') return circle(centre.x, centre.y, outline.diameter.value);
    const width = outline.size.width.value;
    const height = outline.size.height.value;
    return rectangle(centre.x - width / 2, centre.y - height / 2, width, height);
}
