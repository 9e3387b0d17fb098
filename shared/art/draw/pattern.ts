import { intersect, union } from '../../geometry/boolean';
import { bounds, cornersOf, vertexCount } from '../../geometry/measure';
import type { Region } from '../../geometry/region';
import { identity, invert, type Matrix, multiply, transform, transformRing, translation } from '../../geometry/transform';
import { phrase } from '../../recipe/phrase';
import { type Axis, toPixels } from '../frame/length';
import { parseViewBox, viewBoxMatrix } from '../frame/view-box';
import { limits } from '../limits';
import type { SvgElement } from '../xml/tree';
import { boundingBox } from './bounding-box';
import { boxOfPlace, clipToBox, everywhere } from './clip-box';
import { type Drawing, type DrawnPart, lengthsOf, type Place } from './drawing';
import { ownTransform } from './gradient-shape';
import { takenOver } from './reference';
import { untangled } from './shape-regions';
import { type Visitor, walk } from './walk';

/** What a pattern is painted on. */
interface Patterned {
    readonly pattern: SvgElement;
    /** Whose box and units it goes by. */
    readonly element: SvgElement;
    readonly place: Place;
    readonly region: Region;
    readonly opacity: number;
}

/** One tile of a pattern: from its own units, with the corner at 0, to mm on the page. */
interface Tile {
    readonly frame: Matrix;
    readonly content: Matrix;
    readonly width: number;
    readonly height: number;
}

/** What a pattern paints on a region (SVG 2, 14.3): its content once, copied to all tiles. Says so where that is too much. */
export function partsOfPattern(drawing: Drawing, on: Patterned, paint: (drawing: Drawing) => Visitor): DrawnPart[] {
    const { pattern, element, place, region, opacity } = on;
    const { problems } = drawing;
    if (place.within.includes(pattern)) {
        problems.add('refused', 'pattern', phrase`A <pattern> is painted with itself.`, pattern.offset);
        return [];
    }
    const chain = takenOver(drawing.tree, drawing.problems, pattern);
    const tile = tileOf(drawing, chain, element, place);
    const content = chain.find(({ children }) => children.length > 0);
    const shifts = tile === undefined ? [] : shiftsOver(tile, region);
    if (tile === undefined || content === undefined || shifts === undefined || shifts.length === 0) {
        if (shifts === undefined) tellTooMany(drawing, on);
        else if (tile === undefined || content === undefined) {
            const message = phrase`The pattern on <${element.name}> has no size or no content; nothing is painted with it.`;
            problems.add('unsupported', 'pattern', message, element.offset);
        }
        return [];
    }
    // The tile in the middle stands for all, so that it lies on the page.
    const middle = shifts[shifts.length >> 1]!;
    const moved = translation(middle.x, middle.y);
    const clip = clipToBox(
        { box: everywhere, region: undefined },
        multiply(moved, tile.frame),
        boxOfPlace(tile.width, tile.height),
    );
    const parts: DrawnPart[] = [];
    const sub: Drawing = { ...drawing, parts, drawn: drawing.drawn, page: { width: everywhere.maxX, height: everywhere.maxY } };
    const inside: Place = {
        ...place,
        matrix: multiply(moved, tile.content),
        style: drawing.inherited.around(content.children[0]!),
        clip,
        context: undefined,
        groups: [],
        within: [...place.within, pattern],
        depth: place.depth + 1,
    };
    const visitor = paint(sub);
    for (const child of content.children) walk(sub, child, inside, visitor);
    drawing.drawn = sub.drawn;
    drawing.patterned.left -= shifts.length * parts.reduce((sum, part) => sum + vertexCount(part.region), 0);
    if (drawing.patterned.left < 0) {
        tellTooMany(drawing, on);
        return [];
    }
    const groups = opacity < 1 ? [...place.groups, { opacity }] : place.groups;
    const steps = shifts.map(({ x, y }) => translation(x - middle.x, y - middle.y));
    return parts.flatMap((part) => {
        const within: DrawnPart = { ...part, groups: [...groups, ...(part.groups ?? [])] };
        return copies(within, steps, (copy) => untangled(drawing, element, intersect(copy, region)));
    });
}

function copies(part: DrawnPart, steps: readonly Matrix[], cut: (copy: Region) => Region): DrawnPart[] {
    const { shading } = part;
    if (shading === undefined) {
        const region = cut(union(steps.map((step) => transform(part.region, step))));
        return region.rings.length === 0 ? [] : [{ ...part, region }];
    }
    // A gradient begins again in every tile.
    return steps.flatMap((step) => {
        const region = cut(transform(part.region, step));
        const shape = { ...shading.shape, matrix: multiply(step, shading.shape.matrix) };
        return region.rings.length === 0 ? [] : [{ ...part, region, shading: { ...shading, shape } }];
    });
}

function tellTooMany({ problems }: Drawing, { pattern, element }: Patterned): void {
    const message = phrase`The pattern on <${element.name}> has more than the ${limits.patterned} corners that are drawn; nothing is painted with it. Make its tiles larger or simpler.`;
    problems.add('too-large', 'pattern', message, pattern.offset);
}

/** Undefined where the tiles have no size, or there is no box that they could be measured by. */
function tileOf(drawing: Drawing, chain: readonly SvgElement[], element: SvgElement, place: Place): Tile | undefined {
    const written = (name: string): string | undefined => chain.find((one) => name in one.attributes)?.attributes[name];
    const ofBox = written('patternUnits') !== 'userSpaceOnUse';
    const contentOfBox = written('patternContentUnits') === 'objectBoundingBox';
    const context = { ...lengthsOf(drawing, place), fontSize: place.style.fontSize, ...(ofBox ? { width: 1, height: 1 } : {}) };
    const length = (name: string, axis: Axis): number => toPixels(written(name) ?? '0', axis, context) ?? 0;
    const box = ofBox || contentOfBox ? boundingBox(drawing, element, place) : undefined;
    const [across, down] = box === undefined ? [0, 0] : [box.maxX - box.minX, box.maxY - box.minY];
    if ((ofBox || contentOfBox) && !(across > 0 && down > 0)) return undefined;
    const [unitX, unitY] = ofBox ? [across, down] : [1, 1];
    const width = unitX * length('width', 'x');
    const height = unitY * length('height', 'y');
    if (!(width > 0 && height > 0)) return undefined;
    const x = unitX * length('x', 'x') + (ofBox ? box!.minX : 0);
    const y = unitY * length('y', 'y') + (ofBox ? box!.minY : 0);
    const own = ownTransform(written('patternTransform'), context) ?? identity;
    const frame = multiply(multiply(place.matrix, own), translation(x, y));
    const view = parseViewBox(written('viewBox'));
    if (view !== undefined) {
        const fitted = viewBoxMatrix(view, width, height, written('preserveAspectRatio'));
        return { frame, content: multiply(frame, fitted), width, height };
    }
    const scaled: Matrix = { a: across, b: 0, c: 0, d: down, e: 0, f: 0 };
    return { frame, content: contentOfBox ? multiply(frame, scaled) : frame, width, height };
}

/** How far in mm the tile at its own place has to be moved to every place where it meets a region; undefined for too many. */
function shiftsOver({ frame, width, height }: Tile, region: Region): { x: number; y: number }[] | undefined {
    const back = invert(frame);
    const box = bounds(region);
    if (back === undefined || box === undefined) return [];
    const corners = transformRing(cornersOf(box), back);
    const [xs, ys] = [0, 1].map((first) => [0, 2, 4, 6].map((i) => corners[i + first]! / (first === 0 ? width : height)));
    const [left, right] = [Math.floor(Math.min(...xs!)), Math.ceil(Math.max(...xs!))];
    const [top, bottom] = [Math.floor(Math.min(...ys!)), Math.ceil(Math.max(...ys!))];
    if (!((right - left) * (bottom - top) < limits.patterned / 4)) return undefined;
    const shifts: { x: number; y: number }[] = [];
    for (let row = top; row < bottom; row++) {
        for (let column = left; column < right; column++) {
            const [dx, dy] = [column * width, row * height];
            shifts.push({ x: frame.a * dx + frame.c * dy, y: frame.b * dx + frame.d * dy });
        }
    }
    return shifts;
}
