import { identity, type Matrix, multiply, rotation, translation } from '../../geometry/transform';
import { parseAngle } from './angle';
import { splitLength } from './length';

const call = /^[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/;

/**
 * SVG's `transform` attribute or CSS's property of that name in the plane. Undefined if any part
 * of it cannot be read, which in SVG makes the whole of it void. `length` turns a length with a
 * unit into user units.
 */
export function parseTransform(text: string, length: ReadLength): Matrix | undefined {
    let rest = text.trim();
    if (rest === '' || rest === 'none') return identity;
    let matrix = identity;
    while (rest !== '') {
        const match = call.exec(rest);
        if (match === null) return undefined;
        const step = functionOf(match[1]!.toLowerCase(), match[2]!.trim().split(/\s*,\s*|\s+/), length);
        if (step === undefined) return undefined;
        matrix = multiply(matrix, step);
        rest = rest.slice(match[0].length).replace(/^[\s,]+/, '');
    }
    return matrix;
}

type ReadLength = (written: string, axis: 'x' | 'y') => number | undefined;

interface TransformFunction {
    /** How many arguments it can have. */
    readonly counts: readonly number[];
    readonly read: (args: readonly string[], length: ReadLength) => Matrix | undefined;
}

/** The functions of CSS Transforms 1 in the plane, in small letters, and `skew` as it was once. */
const functions: ReadonlyMap<string, TransformFunction> = new Map<string, TransformFunction>([
    ['matrix', { counts: [6], read: (args) => matrixOf(args.map(parseUserUnits)) }],
    ['translate', { counts: [1, 2], read: ([x, y], length) => shift(length(x!, 'x'), y === undefined ? 0 : length(y, 'y')) }],
    ['translatex', { counts: [1], read: ([x], length) => shift(length(x!, 'x'), 0) }],
    ['translatey', { counts: [1], read: ([y], length) => shift(0, length(y!, 'y')) }],
    ['scale', { counts: [1, 2], read: ([x, y = x]) => stretch(factor(x!), factor(y!)) }],
    ['scalex', { counts: [1], read: ([x]) => stretch(factor(x!), 1) }],
    ['scaley', { counts: [1], read: ([y]) => stretch(1, factor(y!)) }],
    [
        'rotate',
        { counts: [1, 3], read: ([turn, x = '0', y = '0']) => turned(parseAngle(turn!), parseUserUnits(x), parseUserUnits(y)) },
    ],
    ['skewx', { counts: [1], read: ([x]) => skew(parseAngle(x!), 0) }],
    ['skewy', { counts: [1], read: ([y]) => skew(0, parseAngle(y!)) }],
    ['skew', { counts: [1, 2], read: ([x, y]) => skew(parseAngle(x!), y === undefined ? 0 : parseAngle(y)) }],
]);

function functionOf(name: string, args: readonly string[], length: ReadLength): Matrix | undefined {
    const known = functions.get(name);
    return known?.counts.includes(args.length) ? known.read(args, length) : undefined;
}

function matrixOf([a, b, c, d, e, f]: readonly (number | undefined)[]): Matrix | undefined {
    if (a === undefined || b === undefined || c === undefined) return undefined;
    return d === undefined || e === undefined || f === undefined ? undefined : { a, b, c, d, e, f };
}

function turned(turn: number | undefined, x: number | undefined, y: number | undefined): Matrix | undefined {
    return turn === undefined || x === undefined || y === undefined ? undefined : rotation(turn, x, y);
}

function parseUserUnits(text: string): number | undefined {
    const length = splitLength(text);
    return length?.unit === '' || length?.unit === 'px' ? length.number : undefined;
}

function factor(text: string): number | undefined {
    const length = splitLength(text);
    return length?.unit === '' ? length.number : length?.unit === '%' ? length.number / 100 : undefined;
}

function shift(x: number | undefined, y: number | undefined): Matrix | undefined {
    return x === undefined || y === undefined ? undefined : translation(x, y);
}

function stretch(x: number | undefined, y: number | undefined): Matrix | undefined {
    return x === undefined || y === undefined ? undefined : { ...identity, a: x, d: y };
}

function skew(x: number | undefined, y: number | undefined): Matrix | undefined {
    return x === undefined || y === undefined ? undefined : { ...identity, c: Math.tan(x), b: Math.tan(y) };
}
