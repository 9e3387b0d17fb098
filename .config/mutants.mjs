/**
 * Slips of the pen that are made on purpose, one at a time, to see whether a test notices. Texts and objects are left as they are: a
 * test that only repeats a message is worth little.
 */
import { parseSync } from 'vite';

const SWAPPED = {
    ...{ '+': ['-'], '-': ['+'], '*': ['/'], '/': ['*'], '%': ['*'], '**': ['*'] },
    ...{ '<': ['<=', '>='], '<=': ['<', '>'], '>': ['>=', '<='], '>=': ['>', '<'] },
    ...{ '===': ['!=='], '!==': ['==='], '&&': ['||'], '||': ['&&'], '??': ['&&'] },
    ...{ '+=': ['-='], '-=': ['+='], '*=': ['/='], '/=': ['*='], '++': ['--'], '--': ['++'] },
};
const METHODS = {
    ...{ some: 'every', every: 'some', min: 'max', max: 'min', floor: 'ceil', ceil: 'floor', startsWith: 'endsWith' },
    ...{ endsWith: 'startsWith', find: 'findLast', findLast: 'find', sin: 'cos', cos: 'sin', unshift: 'push' },
};
/** Calls that are left out, so that what they were made on stays. */
const LEFT_OUT = new Set(['filter', 'sort', 'toSorted', 'reverse', 'toReversed', 'slice', 'trim']);

/**
 * Every mutant of a text: what stands between `start` and `end` becomes `text`.
 * @returns in the order of the text
 */
export function mutantsOf(file, source) {
    const found = [];
    const add = (start, end, text) => found.push({ file, start, end, text, line: source.slice(0, start).split('\n').length });
    const { program } = parseSync(file, source, { astType: 'ts' });
    walk(program, (node) => mutate(node, source, add));
    return found.sort((a, b) => a.start - b.start || a.end - b.end);
}

function walk(node, visit) {
    if (node === null || typeof node !== 'object') return;
    if (Array.isArray(node)) {
        for (const each of node) walk(each, visit);
        return;
    }
    // Types are gone before anything runs.
    if (typeof node.type !== 'string' || isType(node)) return;
    visit(node);
    for (const [key, value] of Object.entries(node)) if (key !== 'typeAnnotation' && key !== 'returnType') walk(value, visit);
}

function isType({ type, declare, importKind }) {
    const wrappers = ['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression', 'TSParameterProperty'];
    return (type.startsWith('TS') && !wrappers.includes(type)) || declare === true || importKind === 'type';
}

function mutate(node, source, add) {
    const whole = (text) => add(node.start, node.end, text);
    switch (node.type) {
        case 'BinaryExpression':
        case 'LogicalExpression':
        case 'AssignmentExpression': {
            if (node.operator.startsWith('+') && (isText(node.left) || isText(node.right))) return;
            const at = source.indexOf(node.operator, node.left.end);
            for (const other of SWAPPED[node.operator] ?? []) add(at, at + node.operator.length, other);
            return;
        }
        case 'UpdateExpression': {
            const at = node.prefix ? node.start : node.end - 2;
            for (const other of SWAPPED[node.operator]) add(at, at + 2, other);
            return;
        }
        case 'UnaryExpression':
            if (node.operator === '-' || node.operator === '!') whole(source.slice(node.argument.start, node.argument.end));
            return;
        case 'ConditionalExpression':
        case 'IfStatement':
            for (const text of ['true', 'false']) add(node.test.start, node.test.end, text);
            return;
        case 'WhileStatement':
        case 'ForStatement':
            if (node.test !== null) add(node.test.start, node.test.end, 'false');
            return;
        case 'Literal':
            if (typeof node.value === 'boolean') whole(String(!node.value));
            return;
        case 'BlockStatement':
            if (node.body.length > 0) whole('{}');
            return;
        case 'CallExpression':
            method(node, add);
    }
}

function method({ callee, end }, add) {
    if (callee.type !== 'MemberExpression' || callee.computed) return;
    const { name, start, end: nameEnd } = callee.property;
    if (METHODS[name] !== undefined) add(start, nameEnd, METHODS[name]);
    if (LEFT_OUT.has(name)) add(callee.object.end, end, '');
}

function isText(node) {
    return node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string');
}

/** So many of a list, drawn by a seed; the same seed draws the same. Mulberry32 and Fisher-Yates. */
export function drawn(all, count, seed) {
    const rest = [...all];
    let state = seed >>> 0;
    const roll = () => {
        state = (state + 0x6d2b79f5) >>> 0;
        let t = Math.imul(state ^ (state >>> 15), 1 | state);
        t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
        return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
    };
    return Array.from({ length: Math.min(count, rest.length) }, (_, i) => {
        const at = i + Math.floor(roll() * (rest.length - i));
        [rest[i], rest[at]] = [rest[at], rest[i]];
        return rest[i];
    });
}

/** The score interval of Wilson (1927) for a share, at 95 %. */
export function wilson(hits, count) {
    if (count === 0) return { low: 0, high: 1 };
    const z = 1.959963984540054;
    const share = hits / count;
    const middle = share + z ** 2 / (2 * count);
    const half = z * Math.sqrt((share * (1 - share)) / count + z ** 2 / (4 * count ** 2));
    return { low: (middle - half) / (1 + z ** 2 / count), high: (middle + half) / (1 + z ** 2 / count) };
}
