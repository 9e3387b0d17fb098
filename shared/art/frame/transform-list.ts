import { identity, type Matrix, multiply, rotation, translation } from '../../geometry/transform';
import { parseAngle } from './angle';
import { splitLength } from './length';

const call = /^[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/;

/**
 * SVG's `transform` attribute or CSS's property of that name in the plane. Undefined if any part
 * of it cannot be read, which in SVG makes the whole of it void. `length` turns a length with a
 * unit into user units.
 */
export function parseTransform(
    text: string,
    length: (written: string, axis: 'x' | 'y') => number | undefined,
): Matrix | undefined {
    let rest = text.trim();
    if (rest === '' || rest === 'none') return identity;
    let matrix = identity;
    while (rest !== '') {
        const match = call.exec(rest);
        if (match === null) return undefined;
        const step = one(match[1]!, match[2]!.trim().split(/\s*,\s*|\s+/), length);
        if (step === undefined) return undefined;
        matrix = multiply(matrix, step);
        rest = rest.slice(match[0].length).replace(/^[\s,]+/, '');
    }
    return matrix;
}

function one(
    name: string,
    args: readonly string[],
    length: (written: string, axis: 'x' | 'y') => number | undefined,
): Matrix | undefined {
    const count = args.length;
    switch (name.toLowerCase()) {
        case 'matrix': {
            const [a, b, c, d, e, f] = args.map(plain);
            if (count !== 6 || a === undefined || b === undefined || c === undefined) return undefined;
            return d === undefined || e === undefined || f === undefined ? undefined : { a, b, c, d, e, f };
        }
        case 'translate':
            return count > 2 ? undefined : shift(length(args[0]!, 'x'), count === 2 ? length(args[1]!, 'y') : 0);
        case 'translatex':
            return count > 1 ? undefined : shift(length(args[0]!, 'x'), 0);
        case 'translatey':
            return count > 1 ? undefined : shift(0, length(args[0]!, 'y'));
        case 'scale':
            return count > 2 ? undefined : stretch(factor(args[0]!), factor(args[count - 1]!));
        case 'scalex':
            return count > 1 ? undefined : stretch(factor(args[0]!), 1);
        case 'scaley':
            return count > 1 ? undefined : stretch(1, factor(args[0]!));
        case 'rotate': {
            const turn = parseAngle(args[0]!);
            const [x, y] = count === 3 ? [plain(args[1]!), plain(args[2]!)] : [0, 0];
            if (count === 2 || count > 3 || turn === undefined || x === undefined || y === undefined) return undefined;
            return rotation(turn, x, y);
        }
        case 'skewx':
            return count > 1 ? undefined : skew(parseAngle(args[0]!), 0);
        case 'skewy':
            return count > 1 ? undefined : skew(0, parseAngle(args[0]!));
        case 'skew':
            return count > 2 ? undefined : skew(parseAngle(args[0]!), count === 2 ? parseAngle(args[1]!) : 0);
        default:
            return undefined;
    }
}

function plain(text: string): number | undefined {
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
