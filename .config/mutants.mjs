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
    __proto__: null,
    ...{ some: 'every', every: 'some', min: 'max', max: 'min', floor: 'ceil', ceil: 'floor', startsWith: 'endsWith' },
    ...{ endsWith: 'startsWith', find: 'findLast', findLast: 'find', sin: 'cos', cos: 'sin', unshift: 'push' },
};
/** Calls that are left out, so that what they were made on stays. */
const LEFT_OUT = new Set(['filter', 'sort', 'toSorted', 'reverse', 'toReversed', 'slice', 'trim']);

/**
 * Every mutant of a text: the expression or block from `start` to `end` becomes `text`; `was` and `becomes` are for reading.
 * @returns in the order of the text
 */
export function mutantsOf(file, source) {
    const found = [];
    const { program } = parseSync(file, source, { astType: 'ts' });
    walk(program, [], (node, parents) => {
        const add = ({ start, end }, text, was, becomes) => {
            const line = source.slice(0, start).split('\n').length;
            found.push({ file, line, start, end, text, was, becomes, block: node.type === 'BlockStatement' });
        };
        mutate(node, parents, source, add);
    });
    return found.sort((a, b) => a.start - b.start || b.end - a.end);
}

function walk(node, parents, visit) {
    if (node === null || typeof node !== 'object') return;
    if (Array.isArray(node)) {
        for (const each of node) walk(each, parents, visit);
        return;
    }
    // Types are gone before anything runs.
    if (typeof node.type !== 'string' || isType(node)) return;
    visit(node, parents);
    const inside = [node, ...parents];
    for (const [key, value] of Object.entries(node))
        if (key !== 'typeAnnotation' && key !== 'returnType') walk(value, inside, visit);
}

function isType({ type, declare, importKind }) {
    const wrappers = ['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression', 'TSParameterProperty'];
    return (type.startsWith('TS') && !wrappers.includes(type)) || declare === true || importKind === 'type';
}

function mutate(node, parents, source, add) {
    const textOf = ({ start, end }) => source.slice(start, end);
    switch (node.type) {
        case 'BinaryExpression':
        case 'LogicalExpression':
        case 'AssignmentExpression': {
            const { left, right, operator } = node;
            if (operator.startsWith('+') && (isText(left) || isText(right))) return;
            const to = node.type === 'AssignmentExpression' ? textOf(left) : `(${textOf(left)})`;
            for (const other of SWAPPED[operator] ?? []) add(node, `${to} ${other} (${textOf(right)})`, operator, other);
            return;
        }
        case 'UpdateExpression': {
            const [other] = SWAPPED[node.operator];
            const place = textOf(node.argument);
            add(node, node.prefix ? other + place : place + other, node.operator, other);
            return;
        }
        case 'UnaryExpression':
            if (node.operator === '-' || node.operator === '!') add(node, textOf(node.argument), node.operator, 'nothing');
            return;
        case 'ConditionalExpression':
        case 'IfStatement':
            for (const text of ['true', 'false']) add(node.test, text, textOf(node.test), text);
            return;
        case 'WhileStatement':
        case 'ForStatement':
            if (node.test !== null) add(node.test, 'false', textOf(node.test), 'false');
            return;
        case 'Literal':
            if (typeof node.value === 'boolean') add(node, String(!node.value), String(node.value), String(!node.value));
            return;
        case 'BlockStatement':
            if (node.body.length > 0) add(node, '{}', textOf(node), '{}');
            return;
        case 'CallExpression':
            mutateCall(node, parents, source, add);
    }
}

function mutateCall(call, parents, source, add) {
    const { callee, end } = call;
    if (callee.type !== 'MemberExpression' || callee.computed) return;
    const whole = chainAround(call, parents);
    const replaced = (from, to, by) => source.slice(whole.start, from) + by + source.slice(to, whole.end);
    const { property, object } = callee;
    const other = METHODS[property.name];
    if (other !== undefined) add(whole, replaced(property.start, property.end, other), property.name, other);
    // What a link of a chain stood for goes on behind it: `a?.filter(b).c` becomes `a?.c`.
    const link = callee.optional && source[end] === '.' ? '?' : '';
    if (LEFT_OUT.has(property.name)) add(whole, replaced(object.end, end, link), source.slice(object.end, end), 'nothing');
}

/** What stops all of `a?.b().c` at once cannot be cut in two: where a call is a link of such a chain, the whole chain is exchanged. */
function chainAround(call, parents) {
    let node = call;
    for (const parent of parents) {
        if (parent.type === 'ChainExpression') return parent;
        if (parent.object !== node && parent.callee !== node && parent.type !== 'TSNonNullExpression') return call;
        node = parent;
    }
    return call;
}

function isText(node) {
    return node.type === 'TemplateLiteral' || (node.type === 'Literal' && typeof node.value === 'string');
}

/**
 * A text with all of the given mutants in it, each asleep until `globalThis.kerfMutants.on` is its number. That a mutant's place was
 * come by is noted in `reached`. So what is compiled once serves them all.
 * @param mutants of this text, each with its number `id`
 */
export function withSwitches(source, mutants) {
    const places = Map.groupBy(mutants, ({ start, end }) => `${start}:${end}`);
    const inOrder = [...places.values()].sort(([a], [b]) => a.start - b.start || b.end - a.end);
    const render = (from, to) => {
        let text = '';
        let at = from;
        while (inOrder[0]?.[0].start < to) {
            const here = inOrder.shift();
            const [{ start, end }] = here;
            text += source.slice(at, start) + exchange(here, render(start, end));
            at = end;
        }
        return text + source.slice(at, to);
    };
    return `const __mutants = globalThis.kerfMutants;${render(0, source.length)}`;
}

function exchange([first, ...others], kept) {
    const reached = `__mutants.reached[${first.id}] = 1`;
    if (first.block) return `{ if ((${reached}, __mutants.on !== ${first.id})) ${kept} }`;
    const rest = others.map(({ id, text }) => `__mutants.on === ${id} ? (${text}) : `).join('');
    return `((${reached}, __mutants.on === ${first.id}) ? (${first.text}) : ${rest}(${kept}))`;
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
