import type { AstNode, Reference } from 'langium';
import type { Where, Written } from '../../shared/quantity/where';
import type {
    ArtPlacement,
    Boundary,
    Outline,
    Placement,
    PlacesUse,
    Point,
    Ref,
    Repeat,
    Scan,
    ShapePlacement,
} from '../../shared/recipe/step';
import * as ast from '../generated/ast';
import { isGrid } from './items';
import { whereOf, whereOfPart, whereOfReference, written } from './places';
import { extentOf, pointOf, quantityOf } from './quantity';
import { present } from './stock';

/** A reference as it was written; the name is kept only where it leads somewhere. */
export function refOf(reference: Reference<AstNode> | undefined, fallback: Where): Ref {
    const target = reference?.ref as { name?: string } | undefined;
    const where = (reference && whereOfReference(reference)) ?? fallback;
    return target?.name === undefined ? { where } : { value: target.name, where };
}

/** The places of a recipe by their names, each as a variant leaves it. */
export type PlacesByName = ReadonlyMap<string, ast.Places>;

/** What a step burns, in the order in which it is written. A place or a size that cannot be read drops the line. */
export function placementsOf(items: readonly AstNode[], places: PlacesByName): Placement[] {
    return items.flatMap((item) => {
        if (ast.isArtUse(item)) return artPlacement(item, places) ?? [];
        if (ast.isShape(item)) return shapePlacement(item, places) ?? [];
        return [];
    });
}

type Laid = Pick<ArtPlacement, 'at' | 'places' | 'repeat'>;

/** Where a line lies: what it says itself, or what the places say that it names. Undefined where that cannot be read. */
function laidOf(node: ast.ArtUse | ast.Shape, places: PlacesByName): Laid | undefined {
    const at = pointOf(node.at);
    const repeat = repeatOf(node.repeat);
    if ((node.at && !at) || (node.repeat && !repeat)) return undefined;
    if (node.places === undefined) return present({ at, repeat });
    const named = node.places.ref && places.get(node.places.ref.name);
    const points = named?.at.map(pointOf).filter((point) => point !== undefined) ?? [];
    if (named === undefined || points.length < named.at.length) return undefined;
    const use: PlacesUse = refOf(node.places, whereOf(node));
    if (named.grid === undefined) return points.length === 0 ? undefined : { places: { ...use, points } };
    const grid = repeatOf(named.grid);
    const [middle] = points as readonly (Point | undefined)[];
    return grid && { places: use, repeat: grid, ...present({ at: middle }) };
}

function artPlacement(node: ast.ArtUse, places: PlacesByName): ArtPlacement | undefined {
    const inverse = node.boundary && boundaryOf(node.boundary);
    const turn = quantityOf(node.turn);
    const laid = laidOf(node, places);
    if ((node.boundary && !inverse) || (node.turn && !turn) || laid === undefined || node.art === undefined) return undefined;
    return {
        kind: 'art',
        art: refOf(node.art, whereOf(node)),
        picks: node.picks.map((pick, index) => written(pick, whereOfPart(node, 'picks', index))),
        ...(node.leaves.length === 0
            ? {}
            : { leaves: node.leaves.map((pick, index) => written(pick, whereOfPart(node, 'leaves', index))) }),
        ...laid,
        ...present({ inverse, turn }),
        where: whereOf(node),
    };
}

function shapePlacement(node: ast.Shape, places: PlacesByName): ShapePlacement | undefined {
    const outline = node.outline && outlineOf(node.outline);
    const turn = quantityOf(node.turn);
    const laid = laidOf(node, places);
    if (outline === undefined || laid === undefined || (node.turn && !turn)) return undefined;
    return { kind: 'shape', outline, ...laid, ...present({ turn }), where: whereOf(node) };
}

function repeatOf(node: ast.Repeat | undefined): Repeat | undefined {
    const step = extentOf(node?.step);
    if (node === undefined || step === undefined || !isGrid(node)) return undefined;
    return { columns: node.columns, rows: node.rows, step, where: whereOf(node) };
}

function boundaryOf(node: ast.Boundary): Written<Boundary> | undefined {
    const boundary = boundaryShape(node);
    return boundary && written(boundary, whereOf(node));
}

function boundaryShape(node: ast.Boundary): Boundary | undefined {
    if (ast.isWholeBlank(node)) return { kind: 'blank' };
    if (!ast.isGrown(node)) return outlineOf(node);
    const by = quantityOf(node.by);
    return by && { kind: 'grown', by };
}

function outlineOf(node: ast.Outline): Outline | undefined {
    if (ast.isCircle(node)) {
        const diameter = quantityOf(node.diameter);
        return diameter && { kind: 'circle', diameter };
    }
    const size = extentOf(node.size);
    return size && { kind: 'rectangle', size };
}

export function scanOf(node: ast.Scan): Scan | undefined {
    const along = node.grain && (node.along === 'across' || node.along === 'along') ? node.along : undefined;
    const direction = node.outline ? 'outline' : (along ?? quantityOf(node.angle));
    if (direction === undefined) return undefined;
    return { direction, bothWays: node.way !== 'one', where: whereOf(node) };
}
